from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="DaySplit")


@_attrs_define
class DaySplit:
    """Eat more carbohydrate on some days of the week and less on the others; the weekly total stays the same.

    Attributes:
        higher_days_per_week (int): Days with more carbohydrate: training days, for example.
        carbohydrate_shift (float | Unset): How much more on those days, as a share of the mean. `0.2` if absent.
    """

    higher_days_per_week: int
    carbohydrate_shift: float | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        higher_days_per_week = self.higher_days_per_week

        carbohydrate_shift = self.carbohydrate_shift

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "higher_days_per_week": higher_days_per_week,
            }
        )
        if carbohydrate_shift is not UNSET:
            field_dict["carbohydrate_shift"] = carbohydrate_shift

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        higher_days_per_week = d.pop("higher_days_per_week")

        carbohydrate_shift = d.pop("carbohydrate_shift", UNSET)

        day_split = cls(
            higher_days_per_week=higher_days_per_week,
            carbohydrate_shift=carbohydrate_shift,
        )

        return day_split
