from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="SeasonEvent")


@_attrs_define
class SeasonEvent:
    """A day to arrive at with the last cut ended and carried mass settled.

    Attributes:
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        most_fat_fraction (float | None | Unset): Body fat wanted at the event, or less; none by default.
    """

    date: datetime.date
    most_fat_fraction: float | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        most_fat_fraction: float | None | Unset
        if isinstance(self.most_fat_fraction, Unset):
            most_fat_fraction = UNSET
        else:
            most_fat_fraction = self.most_fat_fraction

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
            }
        )
        if most_fat_fraction is not UNSET:
            field_dict["most_fat_fraction"] = most_fat_fraction

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        def _parse_most_fat_fraction(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        most_fat_fraction = _parse_most_fat_fraction(d.pop("most_fat_fraction", UNSET))

        season_event = cls(
            date=date,
            most_fat_fraction=most_fat_fraction,
        )

        return season_event
