from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="StepsEntry")


@_attrs_define
class StepsEntry:
    """Steps counted on a day, by phone or watch. A missing day is an absent entry, not a zero.

    Attributes:
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        steps (int): Steps of the whole day. A number that nobody walks, or that says that the counter was not carried,
            is set aside and named.
    """

    date: datetime.date
    steps: int

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        steps = self.steps

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
                "steps": steps,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        steps = d.pop("steps")

        steps_entry = cls(
            date=date,
            steps=steps,
        )

        return steps_entry
