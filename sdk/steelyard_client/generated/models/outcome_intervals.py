from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval


T = TypeVar("T", bound="OutcomeIntervals")


@_attrs_define
class OutcomeIntervals:
    """Median and 80 % interval over the draws of those who follow the strategy.

    Attributes:
        cuts (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        days_dieting (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        fat_gained_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        final_fat_fraction (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        lean_gained_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        mean_fat_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        peak_fat_fraction (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        weeks_above_band (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
    """

    cuts: Interval
    days_dieting: Interval
    fat_gained_kg: Interval
    final_fat_fraction: Interval
    lean_gained_kg: Interval
    mean_fat_kg: Interval
    peak_fat_fraction: Interval
    weeks_above_band: Interval
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        cuts = self.cuts.to_dict()

        days_dieting = self.days_dieting.to_dict()

        fat_gained_kg = self.fat_gained_kg.to_dict()

        final_fat_fraction = self.final_fat_fraction.to_dict()

        lean_gained_kg = self.lean_gained_kg.to_dict()

        mean_fat_kg = self.mean_fat_kg.to_dict()

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
                "peak_fat_fraction": peak_fat_fraction,
                "weeks_above_band": weeks_above_band,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        cuts = Interval.from_dict(d.pop("cuts"))

        days_dieting = Interval.from_dict(d.pop("days_dieting"))

        fat_gained_kg = Interval.from_dict(d.pop("fat_gained_kg"))

        final_fat_fraction = Interval.from_dict(d.pop("final_fat_fraction"))

        lean_gained_kg = Interval.from_dict(d.pop("lean_gained_kg"))

        mean_fat_kg = Interval.from_dict(d.pop("mean_fat_kg"))

        peak_fat_fraction = Interval.from_dict(d.pop("peak_fat_fraction"))

        weeks_above_band = Interval.from_dict(d.pop("weeks_above_band"))

        outcome_intervals = cls(
            cuts=cuts,
            days_dieting=days_dieting,
            fat_gained_kg=fat_gained_kg,
            final_fat_fraction=final_fat_fraction,
            lean_gained_kg=lean_gained_kg,
            mean_fat_kg=mean_fat_kg,
            peak_fat_fraction=peak_fat_fraction,
            weeks_above_band=weeks_above_band,
        )

        outcome_intervals.additional_properties = d
        return outcome_intervals

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
