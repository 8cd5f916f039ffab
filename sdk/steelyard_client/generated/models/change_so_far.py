from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval


T = TypeVar("T", bound="ChangeSoFar")


@_attrs_define
class ChangeSoFar:
    """Change since the phase's start. Tissue is fat and lean; carried mass is glycogen, water and gut content.

    Attributes:
        carried_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        fat_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        lean_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        planned_tissue_kg (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        since_date (datetime.date): The start, or the first weighing after it.
        tissue_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        weight_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
    """

    carried_kg: Interval
    fat_kg: Interval
    lean_kg: Interval
    planned_tissue_kg: Interval
    since_date: datetime.date
    tissue_kg: Interval
    weight_kg: Interval
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        carried_kg = self.carried_kg.to_dict()

        fat_kg = self.fat_kg.to_dict()

        lean_kg = self.lean_kg.to_dict()

        planned_tissue_kg = self.planned_tissue_kg.to_dict()

        since_date = self.since_date.isoformat()

        tissue_kg = self.tissue_kg.to_dict()

        weight_kg = self.weight_kg.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "carried_kg": carried_kg,
                "fat_kg": fat_kg,
                "lean_kg": lean_kg,
                "planned_tissue_kg": planned_tissue_kg,
                "since_date": since_date,
                "tissue_kg": tissue_kg,
                "weight_kg": weight_kg,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        carried_kg = Interval.from_dict(d.pop("carried_kg"))

        fat_kg = Interval.from_dict(d.pop("fat_kg"))

        lean_kg = Interval.from_dict(d.pop("lean_kg"))

        planned_tissue_kg = Interval.from_dict(d.pop("planned_tissue_kg"))

        since_date = datetime.date.fromisoformat(d.pop("since_date"))

        tissue_kg = Interval.from_dict(d.pop("tissue_kg"))

        weight_kg = Interval.from_dict(d.pop("weight_kg"))

        change_so_far = cls(
            carried_kg=carried_kg,
            fat_kg=fat_kg,
            lean_kg=lean_kg,
            planned_tissue_kg=planned_tissue_kg,
            since_date=since_date,
            tissue_kg=tissue_kg,
            weight_kg=weight_kg,
        )

        change_so_far.additional_properties = d
        return change_so_far

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
