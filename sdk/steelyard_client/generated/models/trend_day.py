from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval


T = TypeVar("T", bound="TrendDay")


@_attrs_define
class TrendDay:
    """One day of the trend. `weight_kg` uses only the past; `smoothed_weight_kg` also what came after.

    Attributes:
        carried_kg (float): Glycogen, water and gut content against what they were before the log, with steps of water.
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        is_outlier (bool): Whether the day's weight stands out and counts for less.
        maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        observed_weight_kg (float | None): Mean of the day's weighings.
        smoothed_weight_kg (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        tissue_kg (float): Smoothed weight less carried mass: fat and lean tissue.
        weekly_rate_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        weight_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
    """

    carried_kg: float
    date: datetime.date
    is_outlier: bool
    maintenance_kcal: Interval
    observed_weight_kg: float | None
    smoothed_weight_kg: Interval
    tissue_kg: float
    weekly_rate_kg: Interval
    weight_kg: Interval
    additional_properties: dict[str, Any] = _attrs_field(init=False, factory=dict)

    def to_dict(self) -> dict[str, Any]:
        carried_kg = self.carried_kg

        date = self.date.isoformat()

        is_outlier = self.is_outlier

        maintenance_kcal = self.maintenance_kcal.to_dict()

        observed_weight_kg: float | None
        observed_weight_kg = self.observed_weight_kg

        smoothed_weight_kg = self.smoothed_weight_kg.to_dict()

        tissue_kg = self.tissue_kg

        weekly_rate_kg = self.weekly_rate_kg.to_dict()

        weight_kg = self.weight_kg.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "carried_kg": carried_kg,
                "date": date,
                "is_outlier": is_outlier,
                "maintenance_kcal": maintenance_kcal,
                "observed_weight_kg": observed_weight_kg,
                "smoothed_weight_kg": smoothed_weight_kg,
                "tissue_kg": tissue_kg,
                "weekly_rate_kg": weekly_rate_kg,
                "weight_kg": weight_kg,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        carried_kg = d.pop("carried_kg")

        date = datetime.date.fromisoformat(d.pop("date"))

        is_outlier = d.pop("is_outlier")

        maintenance_kcal = Interval.from_dict(d.pop("maintenance_kcal"))

        def _parse_observed_weight_kg(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        observed_weight_kg = _parse_observed_weight_kg(d.pop("observed_weight_kg"))

        smoothed_weight_kg = Interval.from_dict(d.pop("smoothed_weight_kg"))

        tissue_kg = d.pop("tissue_kg")

        weekly_rate_kg = Interval.from_dict(d.pop("weekly_rate_kg"))

        weight_kg = Interval.from_dict(d.pop("weight_kg"))

        trend_day = cls(
            carried_kg=carried_kg,
            date=date,
            is_outlier=is_outlier,
            maintenance_kcal=maintenance_kcal,
            observed_weight_kg=observed_weight_kg,
            smoothed_weight_kg=smoothed_weight_kg,
            tissue_kg=tissue_kg,
            weekly_rate_kg=weekly_rate_kg,
            weight_kg=weight_kg,
        )

        trend_day.additional_properties = d
        return trend_day

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
