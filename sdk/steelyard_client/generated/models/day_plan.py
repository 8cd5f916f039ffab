from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="DayPlan")


@_attrs_define
class DayPlan:
    """What to eat on a day. 4 protein + 4 carbohydrate + 9 fat + 7.1 alcohol is its energy, within rounding.

    Attributes:
        alcohol_g (int): Pure alcohol allowed for.
        carbohydrate_g (int): Carbohydrate, to 5 g.
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        fat_g (int): Fat, to 5 g.
        flexible (None | str): Why it has more: `party`, `eating_out`, `higher_day` or `other`; null on a usual day.
            Extensible.
        intake_kcal (int): Energy, alcohol included, to 10 kcal.
        meals_protein_g (list[int]): Protein of each meal, grams.
        protein_g (int): Protein, to 5 g.
        training_kcal (float): What its training burns beyond rest, as burnt and not as logged.
        training_minutes (float): Length of its training.
        weekday (str): `monday` to `sunday`.
    """

    alcohol_g: int
    carbohydrate_g: int
    date: datetime.date
    fat_g: int
    flexible: None | str
    intake_kcal: int
    meals_protein_g: list[int]
    protein_g: int
    training_kcal: float
    training_minutes: float
    weekday: str
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        alcohol_g = self.alcohol_g

        carbohydrate_g = self.carbohydrate_g

        date = self.date.isoformat()

        fat_g = self.fat_g

        flexible: None | str
        flexible = self.flexible

        intake_kcal = self.intake_kcal

        meals_protein_g = self.meals_protein_g

        protein_g = self.protein_g

        training_kcal = self.training_kcal

        training_minutes = self.training_minutes

        weekday = self.weekday

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "alcohol_g": alcohol_g,
                "carbohydrate_g": carbohydrate_g,
                "date": date,
                "fat_g": fat_g,
                "flexible": flexible,
                "intake_kcal": intake_kcal,
                "meals_protein_g": meals_protein_g,
                "protein_g": protein_g,
                "training_kcal": training_kcal,
                "training_minutes": training_minutes,
                "weekday": weekday,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        alcohol_g = d.pop("alcohol_g")

        carbohydrate_g = d.pop("carbohydrate_g")

        date = datetime.date.fromisoformat(d.pop("date"))

        fat_g = d.pop("fat_g")

        def _parse_flexible(data: object) -> None | str:
            if data is None:
                return data
            return cast(None | str, data)

        flexible = _parse_flexible(d.pop("flexible"))

        intake_kcal = d.pop("intake_kcal")

        meals_protein_g = cast(list[int], d.pop("meals_protein_g"))

        protein_g = d.pop("protein_g")

        training_kcal = d.pop("training_kcal")

        training_minutes = d.pop("training_minutes")

        weekday = d.pop("weekday")

        day_plan = cls(
            alcohol_g=alcohol_g,
            carbohydrate_g=carbohydrate_g,
            date=date,
            fat_g=fat_g,
            flexible=flexible,
            intake_kcal=intake_kcal,
            meals_protein_g=meals_protein_g,
            protein_g=protein_g,
            training_kcal=training_kcal,
            training_minutes=training_minutes,
            weekday=weekday,
        )

        day_plan.additional_properties = d
        return day_plan

    @property
    def additional_keys(self) -> list[str]:
        return list(self.additional_properties.keys())

    def __getitem__(self, key: str) -> Any:
        return self.additional_properties[key]

    def __setitem__(self, key: str, value: Any) -> None:
        self.additional_properties[key] = value

    def __delitem__(self, key: str) -> None:
        del self.additional_properties[key]

    def __contains__(self, key: str) -> bool:
        return key in self.additional_properties
