from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="ChosenBand")


@_attrs_define
class ChosenBand:
    """The body fat between which the person wants to stay.

    Attributes:
        lower_fat_fraction (float): Body fat as a fraction of body mass, 0 to 1.
        upper_fat_fraction (float): Body fat as a fraction of body mass, 0 to 1.
    """

    lower_fat_fraction: float
    upper_fat_fraction: float

    def to_dict(self) -> dict[str, Any]:
        lower_fat_fraction = self.lower_fat_fraction

        upper_fat_fraction = self.upper_fat_fraction

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "lower_fat_fraction": lower_fat_fraction,
                "upper_fat_fraction": upper_fat_fraction,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        lower_fat_fraction = d.pop("lower_fat_fraction")

        upper_fat_fraction = d.pop("upper_fat_fraction")

        chosen_band = cls(
            lower_fat_fraction=lower_fat_fraction,
            upper_fat_fraction=upper_fat_fraction,
        )

        return chosen_band
