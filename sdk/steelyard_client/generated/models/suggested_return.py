from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="SuggestedReturn")


@_attrs_define
class SuggestedReturn:
    """What follows.

    Attributes:
        fat_ceiling_fraction (float | None): Body fat at which that gain is to stop: the band's upper end.
        gain_weeks (int): Weeks of gain after it.
        maintenance_weeks (int): Weeks at maintenance.
        surplus_kcal (float | None): Daily surplus; null: as training experience has it.
    """

    fat_ceiling_fraction: float | None
    gain_weeks: int
    maintenance_weeks: int
    surplus_kcal: float | None
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        fat_ceiling_fraction: float | None
        fat_ceiling_fraction = self.fat_ceiling_fraction

        gain_weeks = self.gain_weeks

        maintenance_weeks = self.maintenance_weeks

        surplus_kcal: float | None
        surplus_kcal = self.surplus_kcal

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "fat_ceiling_fraction": fat_ceiling_fraction,
                "gain_weeks": gain_weeks,
                "maintenance_weeks": maintenance_weeks,
                "surplus_kcal": surplus_kcal,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)

        def _parse_fat_ceiling_fraction(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        fat_ceiling_fraction = _parse_fat_ceiling_fraction(
            d.pop("fat_ceiling_fraction")
        )

        gain_weeks = d.pop("gain_weeks")

        maintenance_weeks = d.pop("maintenance_weeks")

        def _parse_surplus_kcal(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        surplus_kcal = _parse_surplus_kcal(d.pop("surplus_kcal"))

        suggested_return = cls(
            fat_ceiling_fraction=fat_ceiling_fraction,
            gain_weeks=gain_weeks,
            maintenance_weeks=maintenance_weeks,
            surplus_kcal=surplus_kcal,
        )

        suggested_return.additional_properties = d
        return suggested_return

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
