from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="DayPassed")


@_attrs_define
class DayPassed:
    """A day of an answer, as it comes back.

    Attributes:
        alcohol_g (float): As in a plan's week.
        carbohydrate_g (float): As in a plan's week.
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        fat_g (float): As in a plan's week.
        intake_kcal (float): As in a plan's week.
        protein_g (float): As in a plan's week.
        training_kcal (float): As in a plan's week.
        training_minutes (float): As in a plan's week.
        weekday (str): As in a plan's week.
        flexible (None | str | Unset): As in a plan's week.
        meals_protein_g (list[float] | Unset): As in a plan's week. `[]` if absent.
    """

    alcohol_g: float
    carbohydrate_g: float
    date: datetime.date
    fat_g: float
    intake_kcal: float
    protein_g: float
    training_kcal: float
    training_minutes: float
    weekday: str
    flexible: None | str | Unset = UNSET
    meals_protein_g: list[float] | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        alcohol_g = self.alcohol_g

        carbohydrate_g = self.carbohydrate_g

        date = self.date.isoformat()

        fat_g = self.fat_g

        intake_kcal = self.intake_kcal

        protein_g = self.protein_g

        training_kcal = self.training_kcal

        training_minutes = self.training_minutes

        weekday = self.weekday

        flexible: None | str | Unset
        if isinstance(self.flexible, Unset):
            flexible = UNSET
        else:
            flexible = self.flexible

        meals_protein_g: list[float] | Unset = UNSET
        if not isinstance(self.meals_protein_g, Unset):
            meals_protein_g = self.meals_protein_g

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "alcohol_g": alcohol_g,
                "carbohydrate_g": carbohydrate_g,
                "date": date,
                "fat_g": fat_g,
                "intake_kcal": intake_kcal,
                "protein_g": protein_g,
                "training_kcal": training_kcal,
                "training_minutes": training_minutes,
                "weekday": weekday,
            }
        )
        if flexible is not UNSET:
            field_dict["flexible"] = flexible
        if meals_protein_g is not UNSET:
            field_dict["meals_protein_g"] = meals_protein_g

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        alcohol_g = d.pop("alcohol_g")

        carbohydrate_g = d.pop("carbohydrate_g")

        date = datetime.date.fromisoformat(d.pop("date"))

        fat_g = d.pop("fat_g")

        intake_kcal = d.pop("intake_kcal")

        protein_g = d.pop("protein_g")

        training_kcal = d.pop("training_kcal")

        training_minutes = d.pop("training_minutes")

        weekday = d.pop("weekday")

        def _parse_flexible(data: object) -> None | str | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(None | str | Unset, data)

        flexible = _parse_flexible(d.pop("flexible", UNSET))

        meals_protein_g = cast(list[float], d.pop("meals_protein_g", UNSET))

        day_passed = cls(
            alcohol_g=alcohol_g,
            carbohydrate_g=carbohydrate_g,
            date=date,
            fat_g=fat_g,
            intake_kcal=intake_kcal,
            protein_g=protein_g,
            training_kcal=training_kcal,
            training_minutes=training_minutes,
            weekday=weekday,
            flexible=flexible,
            meals_protein_g=meals_protein_g,
        )

        return day_passed
