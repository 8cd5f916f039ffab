from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define

if TYPE_CHECKING:
    from ..models.interval_passed import IntervalPassed


T = TypeVar("T", bound="PointPassed")


@_attrs_define
class PointPassed:
    """A forecast point of an answer, as it comes back.

    Attributes:
        carried_kg (IntervalPassed): An interval of an answer, as it comes back.
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        fat_fraction (IntervalPassed): An interval of an answer, as it comes back.
        fat_kg (IntervalPassed): An interval of an answer, as it comes back.
        lean_kg (IntervalPassed): An interval of an answer, as it comes back.
        maintenance_kcal (IntervalPassed): An interval of an answer, as it comes back.
        weight_kg (IntervalPassed): An interval of an answer, as it comes back.
    """

    carried_kg: IntervalPassed
    date: datetime.date
    fat_fraction: IntervalPassed
    fat_kg: IntervalPassed
    lean_kg: IntervalPassed
    maintenance_kcal: IntervalPassed
    weight_kg: IntervalPassed

    def to_dict(self) -> dict[str, Any]:
        carried_kg = self.carried_kg.to_dict()

        date = self.date.isoformat()

        fat_fraction = self.fat_fraction.to_dict()

        fat_kg = self.fat_kg.to_dict()

        lean_kg = self.lean_kg.to_dict()

        maintenance_kcal = self.maintenance_kcal.to_dict()

        weight_kg = self.weight_kg.to_dict()

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "carried_kg": carried_kg,
                "date": date,
                "fat_fraction": fat_fraction,
                "fat_kg": fat_kg,
                "lean_kg": lean_kg,
                "maintenance_kcal": maintenance_kcal,
                "weight_kg": weight_kg,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval_passed import IntervalPassed  # noqa: PLC0415

        d = dict(src_dict)
        carried_kg = IntervalPassed.from_dict(d.pop("carried_kg"))

        date = datetime.date.fromisoformat(d.pop("date"))

        fat_fraction = IntervalPassed.from_dict(d.pop("fat_fraction"))

        fat_kg = IntervalPassed.from_dict(d.pop("fat_kg"))

        lean_kg = IntervalPassed.from_dict(d.pop("lean_kg"))

        maintenance_kcal = IntervalPassed.from_dict(d.pop("maintenance_kcal"))

        weight_kg = IntervalPassed.from_dict(d.pop("weight_kg"))

        point_passed = cls(
            carried_kg=carried_kg,
            date=date,
            fat_fraction=fat_fraction,
            fat_kg=fat_kg,
            lean_kg=lean_kg,
            maintenance_kcal=maintenance_kcal,
            weight_kg=weight_kg,
        )

        return point_passed
