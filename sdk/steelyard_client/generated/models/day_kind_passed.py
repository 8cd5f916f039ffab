from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="DayKindPassed")


@_attrs_define
class DayKindPassed:
    """A kind of day of an answer, as it comes back.

    Attributes:
        carbohydrate_g (float): As in a plan's week.
        days_per_week (int): As in a plan's week.
        fat_g (float): As in a plan's week.
        intake_kcal (float): As in a plan's week.
        kind (str): As in a plan's week.
        protein_g (float): As in a plan's week.
    """

    carbohydrate_g: float
    days_per_week: int
    fat_g: float
    intake_kcal: float
    kind: str
    protein_g: float

    def to_dict(self) -> dict[str, Any]:
        carbohydrate_g = self.carbohydrate_g

        days_per_week = self.days_per_week

        fat_g = self.fat_g

        intake_kcal = self.intake_kcal

        kind = self.kind

        protein_g = self.protein_g

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "carbohydrate_g": carbohydrate_g,
                "days_per_week": days_per_week,
                "fat_g": fat_g,
                "intake_kcal": intake_kcal,
                "kind": kind,
                "protein_g": protein_g,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        carbohydrate_g = d.pop("carbohydrate_g")

        days_per_week = d.pop("days_per_week")

        fat_g = d.pop("fat_g")

        intake_kcal = d.pop("intake_kcal")

        kind = d.pop("kind")

        protein_g = d.pop("protein_g")

        day_kind_passed = cls(
            carbohydrate_g=carbohydrate_g,
            days_per_week=days_per_week,
            fat_g=fat_g,
            intake_kcal=intake_kcal,
            kind=kind,
            protein_g=protein_g,
        )

        return day_kind_passed
