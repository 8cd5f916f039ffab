from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="KnownMaintenance")


@_attrs_define
class KnownMaintenance:
    """A maintenance estimate to plan from, such as an earlier answer of `/v1/maintenance`.

    Attributes:
        kcal_per_day (float): Energy per day, kilocalories.
        standard_deviation_kcal (float): Its standard deviation, kilocalories a day.
    """

    kcal_per_day: float
    standard_deviation_kcal: float

    def to_dict(self) -> dict[str, Any]:
        kcal_per_day = self.kcal_per_day

        standard_deviation_kcal = self.standard_deviation_kcal

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kcal_per_day": kcal_per_day,
                "standard_deviation_kcal": standard_deviation_kcal,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kcal_per_day = d.pop("kcal_per_day")

        standard_deviation_kcal = d.pop("standard_deviation_kcal")

        known_maintenance = cls(
            kcal_per_day=kcal_per_day,
            standard_deviation_kcal=standard_deviation_kcal,
        )

        return known_maintenance
