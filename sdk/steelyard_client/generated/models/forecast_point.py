from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval


T = TypeVar("T", bound="ForecastPoint")


@_attrs_define
class ForecastPoint:
    """The body expected at the end of a week.

    Central values are of a body that eats what is told (of a member who is known to keep to clearly less of a deficit:
    as much as that). Intervals hold that and, in a deficit, what people in general come to who are given it, or this
    member as their state knows them: reaching further towards eating more. Without `adherence` among the sources of
    uncertainty they are of the plan being eaten, alone.

        Attributes:
            carried_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
            date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
            fat_fraction (Interval): A central value with the interval that holds the truth with probability ``coverage``.
            fat_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
            lean_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
            maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
                ``coverage``.
            weight_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
    """

    carried_kg: Interval
    date: datetime.date
    fat_fraction: Interval
    fat_kg: Interval
    lean_kg: Interval
    maintenance_kcal: Interval
    weight_kg: Interval
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        carried_kg = self.carried_kg.to_dict()

        date = self.date.isoformat()

        fat_fraction = self.fat_fraction.to_dict()

        fat_kg = self.fat_kg.to_dict()

        lean_kg = self.lean_kg.to_dict()

        maintenance_kcal = self.maintenance_kcal.to_dict()

        weight_kg = self.weight_kg.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
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
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        carried_kg = Interval.from_dict(d.pop("carried_kg"))

        date = datetime.date.fromisoformat(d.pop("date"))

        fat_fraction = Interval.from_dict(d.pop("fat_fraction"))

        fat_kg = Interval.from_dict(d.pop("fat_kg"))

        lean_kg = Interval.from_dict(d.pop("lean_kg"))

        maintenance_kcal = Interval.from_dict(d.pop("maintenance_kcal"))

        weight_kg = Interval.from_dict(d.pop("weight_kg"))

        forecast_point = cls(
            carried_kg=carried_kg,
            date=date,
            fat_fraction=fat_fraction,
            fat_kg=fat_kg,
            lean_kg=lean_kg,
            maintenance_kcal=maintenance_kcal,
            weight_kg=weight_kg,
        )

        forecast_point.additional_properties = d
        return forecast_point

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
