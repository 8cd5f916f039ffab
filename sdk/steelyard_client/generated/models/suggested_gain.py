from __future__ import annotations

from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="SuggestedGain")


@_attrs_define
class SuggestedGain:
    """A gain to ask for.

    Attributes:
        fat_ceiling_fraction (float | None): Body fat at which to stop and ask again.
        kind (Literal['gain']):
        surplus_kcal (float | None): Daily surplus; null: as training experience has it.
        weeks (int | None): Length in weeks; null where the planner finds it.
    """

    fat_ceiling_fraction: float | None
    kind: Literal["gain"]
    surplus_kcal: float | None
    weeks: int | None
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        fat_ceiling_fraction: float | None
        fat_ceiling_fraction = self.fat_ceiling_fraction

        kind = self.kind

        surplus_kcal: float | None
        surplus_kcal = self.surplus_kcal

        weeks: int | None
        weeks = self.weeks

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "fat_ceiling_fraction": fat_ceiling_fraction,
                "kind": kind,
                "surplus_kcal": surplus_kcal,
                "weeks": weeks,
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

        kind = cast(Literal["gain"], d.pop("kind"))
        if kind != "gain":
            raise ValueError(f"kind must match const 'gain', got '{kind}'")

        def _parse_surplus_kcal(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        surplus_kcal = _parse_surplus_kcal(d.pop("surplus_kcal"))

        def _parse_weeks(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        weeks = _parse_weeks(d.pop("weeks"))

        suggested_gain = cls(
            fat_ceiling_fraction=fat_ceiling_fraction,
            kind=kind,
            surplus_kcal=surplus_kcal,
            weeks=weeks,
        )

        suggested_gain.additional_properties = d
        return suggested_gain

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
