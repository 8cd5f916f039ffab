from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="SeasonOutcome")


@_attrs_define
class SeasonOutcome:
    """What a season comes to for the expected body.

    Attributes:
        cuts (int): Cuts started.
        days_dieting (int): Days in a deficit.
        fat_gained_kg (float): Change of fat mass.
        final_fat_fraction (float): Body fat at the horizon.
        lean_gained_kg (float): Change of lean tissue.
        mean_fat_kg (float): Fat mass carried, mean of all weeks.
        peak_fat_fraction (float): Highest body fat at the end of a week.
        weeks_above_band (int): Weeks that end above the band.
    """

    cuts: int
    days_dieting: int
    fat_gained_kg: float
    final_fat_fraction: float
    lean_gained_kg: float
    mean_fat_kg: float
    peak_fat_fraction: float
    weeks_above_band: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        cuts = self.cuts

        days_dieting = self.days_dieting

        fat_gained_kg = self.fat_gained_kg

        final_fat_fraction = self.final_fat_fraction

        lean_gained_kg = self.lean_gained_kg

        mean_fat_kg = self.mean_fat_kg

        peak_fat_fraction = self.peak_fat_fraction

        weeks_above_band = self.weeks_above_band

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
        d = dict(src_dict)
        cuts = d.pop("cuts")

        days_dieting = d.pop("days_dieting")

        fat_gained_kg = d.pop("fat_gained_kg")

        final_fat_fraction = d.pop("final_fat_fraction")

        lean_gained_kg = d.pop("lean_gained_kg")

        mean_fat_kg = d.pop("mean_fat_kg")

        peak_fat_fraction = d.pop("peak_fat_fraction")

        weeks_above_band = d.pop("weeks_above_band")

        season_outcome = cls(
            cuts=cuts,
            days_dieting=days_dieting,
            fat_gained_kg=fat_gained_kg,
            final_fat_fraction=final_fat_fraction,
            lean_gained_kg=lean_gained_kg,
            mean_fat_kg=mean_fat_kg,
            peak_fat_fraction=peak_fat_fraction,
            weeks_above_band=weeks_above_band,
        )

        season_outcome.additional_properties = d
        return season_outcome

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
