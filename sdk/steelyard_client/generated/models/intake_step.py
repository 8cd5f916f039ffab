from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="IntakeStep")


@_attrs_define
class IntakeStep:
    """An intake that stays the same for some weeks.

    Attributes:
        carbohydrate_g (int): Carbohydrate a day, to 5 g.
        fat_g (int): Fat a day, to 5 g.
        fibre_g (int): Fibre a day, within the carbohydrate.
        intake_kcal (int): Energy a day, to 10 kcal.
        protein_g (int): Protein a day, to 5 g.
        start_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        weeks (int): How long.
    """

    carbohydrate_g: int
    fat_g: int
    fibre_g: int
    intake_kcal: int
    protein_g: int
    start_date: datetime.date
    weeks: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        carbohydrate_g = self.carbohydrate_g

        fat_g = self.fat_g

        fibre_g = self.fibre_g

        intake_kcal = self.intake_kcal

        protein_g = self.protein_g

        start_date = self.start_date.isoformat()

        weeks = self.weeks

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "carbohydrate_g": carbohydrate_g,
                "fat_g": fat_g,
                "fibre_g": fibre_g,
                "intake_kcal": intake_kcal,
                "protein_g": protein_g,
                "start_date": start_date,
                "weeks": weeks,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        carbohydrate_g = d.pop("carbohydrate_g")

        fat_g = d.pop("fat_g")

        fibre_g = d.pop("fibre_g")

        intake_kcal = d.pop("intake_kcal")

        protein_g = d.pop("protein_g")

        start_date = datetime.date.fromisoformat(d.pop("start_date"))

        weeks = d.pop("weeks")

        intake_step = cls(
            carbohydrate_g=carbohydrate_g,
            fat_g=fat_g,
            fibre_g=fibre_g,
            intake_kcal=intake_kcal,
            protein_g=protein_g,
            start_date=start_date,
            weeks=weeks,
        )

        intake_step.additional_properties = d
        return intake_step

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
