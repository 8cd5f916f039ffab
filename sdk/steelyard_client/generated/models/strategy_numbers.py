from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="StrategyNumbers")


@_attrs_define
class StrategyNumbers:
    """A strategy as it was followed. Cut numbers are null where it never cuts.

    Attributes:
        cut_at_fat_fraction (float | None): Body fat at which a gain ends; null for never.
        cut_to_fat_fraction (float | None): Body fat at which a cut ends.
        deficit_kcal (float | None): Daily deficit of a cut, before rails.
        longest_cut_weeks (int | None): Most weeks that a cut of it may last; null where it has none.
        maintenance_weeks (int | None): Maintenance after each cut.
        surplus_kcal (float): Daily surplus of a gain, before rails.
    """

    cut_at_fat_fraction: float | None
    cut_to_fat_fraction: float | None
    deficit_kcal: float | None
    longest_cut_weeks: int | None
    maintenance_weeks: int | None
    surplus_kcal: float
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        cut_at_fat_fraction: float | None
        cut_at_fat_fraction = self.cut_at_fat_fraction

        cut_to_fat_fraction: float | None
        cut_to_fat_fraction = self.cut_to_fat_fraction

        deficit_kcal: float | None
        deficit_kcal = self.deficit_kcal

        longest_cut_weeks: int | None
        longest_cut_weeks = self.longest_cut_weeks

        maintenance_weeks: int | None
        maintenance_weeks = self.maintenance_weeks

        surplus_kcal = self.surplus_kcal

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "cut_at_fat_fraction": cut_at_fat_fraction,
                "cut_to_fat_fraction": cut_to_fat_fraction,
                "deficit_kcal": deficit_kcal,
                "longest_cut_weeks": longest_cut_weeks,
                "maintenance_weeks": maintenance_weeks,
                "surplus_kcal": surplus_kcal,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)

        def _parse_cut_at_fat_fraction(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        cut_at_fat_fraction = _parse_cut_at_fat_fraction(d.pop("cut_at_fat_fraction"))

        def _parse_cut_to_fat_fraction(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        cut_to_fat_fraction = _parse_cut_to_fat_fraction(d.pop("cut_to_fat_fraction"))

        def _parse_deficit_kcal(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        deficit_kcal = _parse_deficit_kcal(d.pop("deficit_kcal"))

        def _parse_longest_cut_weeks(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        longest_cut_weeks = _parse_longest_cut_weeks(d.pop("longest_cut_weeks"))

        def _parse_maintenance_weeks(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        maintenance_weeks = _parse_maintenance_weeks(d.pop("maintenance_weeks"))

        surplus_kcal = d.pop("surplus_kcal")

        strategy_numbers = cls(
            cut_at_fat_fraction=cut_at_fat_fraction,
            cut_to_fat_fraction=cut_to_fat_fraction,
            deficit_kcal=deficit_kcal,
            longest_cut_weeks=longest_cut_weeks,
            maintenance_weeks=maintenance_weeks,
            surplus_kcal=surplus_kcal,
        )

        strategy_numbers.additional_properties = d
        return strategy_numbers

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
