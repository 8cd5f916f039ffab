from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="DayKind")


@_attrs_define
class DayKind:
    """What to eat on one kind of day of a week.

    Attributes:
        carbohydrate_g (int): Carbohydrate of such a day.
        days_per_week (int): How many such days.
        fat_g (int): Fat of such a day.
        intake_kcal (int): Energy of such a day.
        kind (str): `higher_carbohydrate` or `lower_carbohydrate`. Extensible.
        protein_g (int): Protein of such a day.
    """

    carbohydrate_g: int
    days_per_week: int
    fat_g: int
    intake_kcal: int
    kind: str
    protein_g: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        carbohydrate_g = self.carbohydrate_g

        days_per_week = self.days_per_week

        fat_g = self.fat_g

        intake_kcal = self.intake_kcal

        kind = self.kind

        protein_g = self.protein_g

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
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

        day_kind = cls(
            carbohydrate_g=carbohydrate_g,
            days_per_week=days_per_week,
            fat_g=fat_g,
            intake_kcal=intake_kcal,
            kind=kind,
            protein_g=protein_g,
        )

        day_kind.additional_properties = d
        return day_kind

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
