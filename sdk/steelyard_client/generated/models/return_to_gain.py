from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="ReturnToGain")


@_attrs_define
class ReturnToGain:
    """What follows a fat-loss phase or a hold: maintenance, then a measured surplus.

    Attributes:
        fat_ceiling_fraction (float | None | Unset): Body fat at which to stop the gain and consider a cut: the weeks
            left are a hold. A common value by default.
        gain_weeks (int | Unset): Weeks of gain to forecast. `12` if absent.
        maintenance_weeks (int | Unset): Weeks at the new maintenance. `1` if absent.
        surplus_kcal (float | None | Unset): Daily surplus; set by training status and lean mass by default.
    """

    fat_ceiling_fraction: float | None | Unset = UNSET
    gain_weeks: int | Unset = UNSET
    maintenance_weeks: int | Unset = UNSET
    surplus_kcal: float | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        fat_ceiling_fraction: float | None | Unset
        if isinstance(self.fat_ceiling_fraction, Unset):
            fat_ceiling_fraction = UNSET
        else:
            fat_ceiling_fraction = self.fat_ceiling_fraction

        gain_weeks = self.gain_weeks

        maintenance_weeks = self.maintenance_weeks

        surplus_kcal: float | None | Unset
        if isinstance(self.surplus_kcal, Unset):
            surplus_kcal = UNSET
        else:
            surplus_kcal = self.surplus_kcal

        field_dict: dict[str, Any] = {}

        field_dict.update({})
        if fat_ceiling_fraction is not UNSET:
            field_dict["fat_ceiling_fraction"] = fat_ceiling_fraction
        if gain_weeks is not UNSET:
            field_dict["gain_weeks"] = gain_weeks
        if maintenance_weeks is not UNSET:
            field_dict["maintenance_weeks"] = maintenance_weeks
        if surplus_kcal is not UNSET:
            field_dict["surplus_kcal"] = surplus_kcal

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)

        def _parse_fat_ceiling_fraction(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        fat_ceiling_fraction = _parse_fat_ceiling_fraction(
            d.pop("fat_ceiling_fraction", UNSET)
        )

        gain_weeks = d.pop("gain_weeks", UNSET)

        maintenance_weeks = d.pop("maintenance_weeks", UNSET)

        def _parse_surplus_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        surplus_kcal = _parse_surplus_kcal(d.pop("surplus_kcal", UNSET))

        return_to_gain = cls(
            fat_ceiling_fraction=fat_ceiling_fraction,
            gain_weeks=gain_weeks,
            maintenance_weeks=maintenance_weeks,
            surplus_kcal=surplus_kcal,
        )

        return return_to_gain
