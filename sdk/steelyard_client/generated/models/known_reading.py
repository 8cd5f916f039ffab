from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..models.body_fat_method import BodyFatMethod

T = TypeVar("T", bound="KnownReading")


@_attrs_define
class KnownReading:
    """A reading of body fat with its error.

    Attributes:
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        fat_fraction (float): Body fat as a fraction of body mass, 0 to 1.
        method (BodyFatMethod): How a body-fat reading was taken, which sets its error.
        standard_deviation (float): Its error, 1 SD, as a fraction of body mass.
    """

    date: datetime.date
    fat_fraction: float
    method: BodyFatMethod
    standard_deviation: float

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        fat_fraction = self.fat_fraction

        method = self.method.value

        standard_deviation = self.standard_deviation

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
                "fat_fraction": fat_fraction,
                "method": method,
                "standard_deviation": standard_deviation,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        fat_fraction = d.pop("fat_fraction")

        method = BodyFatMethod(d.pop("method"))

        standard_deviation = d.pop("standard_deviation")

        known_reading = cls(
            date=date,
            fat_fraction=fat_fraction,
            method=method,
            standard_deviation=standard_deviation,
        )

        return known_reading
