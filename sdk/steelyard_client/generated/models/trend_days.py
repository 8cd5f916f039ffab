from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval_columns import IntervalColumns


T = TypeVar("T", bound="TrendDays")


@_attrs_define
class TrendDays:
    """Every day from the first entry to the day read at, in columns of equal length: row `i` of each is `date[i]`.

    `weight_kg` uses only the past; all else also what came after.

        Attributes:
            carried_kg (IntervalColumns): Intervals of many rows, in columns of equal length: a third of the bytes of as
                many ``Interval``.
            date (list[datetime.date]): The days, one after the other.
            is_outlier (list[bool]): Whether the day's weight stands out and counts for less.
            maintenance_kcal (IntervalColumns): Intervals of many rows, in columns of equal length: a third of the bytes of
                as many ``Interval``.
            observed_weight_kg (list[float | None]): Mean of the day's weighings; null on days without.
            smoothed_weight_kg (IntervalColumns): Intervals of many rows, in columns of equal length: a third of the bytes
                of as many ``Interval``.
            tissue_kg (IntervalColumns): Intervals of many rows, in columns of equal length: a third of the bytes of as many
                ``Interval``.
            weekly_rate_kg (IntervalColumns): Intervals of many rows, in columns of equal length: a third of the bytes of as
                many ``Interval``.
            weight_kg (IntervalColumns): Intervals of many rows, in columns of equal length: a third of the bytes of as many
                ``Interval``.
    """

    carried_kg: IntervalColumns
    date: list[datetime.date]
    is_outlier: list[bool]
    maintenance_kcal: IntervalColumns
    observed_weight_kg: list[float | None]
    smoothed_weight_kg: IntervalColumns
    tissue_kg: IntervalColumns
    weekly_rate_kg: IntervalColumns
    weight_kg: IntervalColumns
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        carried_kg = self.carried_kg.to_dict()

        date = []
        for date_item_data in self.date:
            date_item = date_item_data.isoformat()
            date.append(date_item)

        is_outlier = self.is_outlier

        maintenance_kcal = self.maintenance_kcal.to_dict()

        observed_weight_kg = []
        for observed_weight_kg_item_data in self.observed_weight_kg:
            observed_weight_kg_item: float | None
            observed_weight_kg_item = observed_weight_kg_item_data
            observed_weight_kg.append(observed_weight_kg_item)

        smoothed_weight_kg = self.smoothed_weight_kg.to_dict()

        tissue_kg = self.tissue_kg.to_dict()

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
        from ..models.interval_columns import IntervalColumns  # noqa: PLC0415

        d = dict(src_dict)
        carried_kg = IntervalColumns.from_dict(d.pop("carried_kg"))

        date = []
        _date = d.pop("date")
        for date_item_data in _date:
            date_item = datetime.date.fromisoformat(date_item_data)

            date.append(date_item)

        is_outlier = cast(list[bool], d.pop("is_outlier"))

        maintenance_kcal = IntervalColumns.from_dict(d.pop("maintenance_kcal"))

        observed_weight_kg = []
        _observed_weight_kg = d.pop("observed_weight_kg")
        for observed_weight_kg_item_data in _observed_weight_kg:

            def _parse_observed_weight_kg_item(data: object) -> float | None:
                if data is None:
                    return data
                return cast(float | None, data)

            observed_weight_kg_item = _parse_observed_weight_kg_item(
                observed_weight_kg_item_data
            )

            observed_weight_kg.append(observed_weight_kg_item)

        smoothed_weight_kg = IntervalColumns.from_dict(d.pop("smoothed_weight_kg"))

        tissue_kg = IntervalColumns.from_dict(d.pop("tissue_kg"))

        weekly_rate_kg = IntervalColumns.from_dict(d.pop("weekly_rate_kg"))

        weight_kg = IntervalColumns.from_dict(d.pop("weight_kg"))

        trend_days = cls(
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

        trend_days.additional_properties = d
        return trend_days

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
