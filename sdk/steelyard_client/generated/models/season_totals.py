from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval


T = TypeVar("T", bound="SeasonTotals")


@_attrs_define
class SeasonTotals:
    """What the season as planned comes to, with 80 % intervals.

    Attributes:
        cuts (int): Cuts planned.
        days_dieting (int): Days in a deficit, as planned.
        fat_gained_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        final_fat_fraction (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        lean_gained_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        mean_fat_kg (float): Fat mass carried, mean of all weeks.
        peak_date (datetime.date): End of the week of highest body fat.
        peak_fat_fraction (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        weeks_above_band (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
    """

    cuts: int
    days_dieting: int
    fat_gained_kg: Interval
    final_fat_fraction: Interval
    lean_gained_kg: Interval
    mean_fat_kg: float
    peak_date: datetime.date
    peak_fat_fraction: Interval
    weeks_above_band: Interval
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        cuts = self.cuts

        days_dieting = self.days_dieting

        fat_gained_kg = self.fat_gained_kg.to_dict()

        final_fat_fraction = self.final_fat_fraction.to_dict()

        lean_gained_kg = self.lean_gained_kg.to_dict()

        mean_fat_kg = self.mean_fat_kg

        peak_date = self.peak_date.isoformat()

        peak_fat_fraction = self.peak_fat_fraction.to_dict()

        weeks_above_band = self.weeks_above_band.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "cuts": cuts,
                "days_dieting": days_dieting,
                "fat_gained_kg": fat_gained_kg,
                "final_fat_fraction": final_fat_fraction,
                "lean_gained_kg": lean_gained_kg,
                "mean_fat_kg": mean_fat_kg,
                "peak_date": peak_date,
                "peak_fat_fraction": peak_fat_fraction,
                "weeks_above_band": weeks_above_band,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        cuts = d.pop("cuts")

        days_dieting = d.pop("days_dieting")

        fat_gained_kg = Interval.from_dict(d.pop("fat_gained_kg"))

        final_fat_fraction = Interval.from_dict(d.pop("final_fat_fraction"))

        lean_gained_kg = Interval.from_dict(d.pop("lean_gained_kg"))

        mean_fat_kg = d.pop("mean_fat_kg")

        peak_date = datetime.date.fromisoformat(d.pop("peak_date"))

        peak_fat_fraction = Interval.from_dict(d.pop("peak_fat_fraction"))

        weeks_above_band = Interval.from_dict(d.pop("weeks_above_band"))

        season_totals = cls(
            cuts=cuts,
            days_dieting=days_dieting,
            fat_gained_kg=fat_gained_kg,
            final_fat_fraction=final_fat_fraction,
            lean_gained_kg=lean_gained_kg,
            mean_fat_kg=mean_fat_kg,
            peak_date=peak_date,
            peak_fat_fraction=peak_fat_fraction,
            weeks_above_band=weeks_above_band,
        )

        season_totals.additional_properties = d
        return season_totals

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
