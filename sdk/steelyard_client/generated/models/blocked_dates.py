from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="BlockedDates")


@_attrs_define
class BlockedDates:
    """Days on which no cut may run: travel, exams, a competition. A week touched by them is blocked.

    Attributes:
        first_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        last_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    """

    first_date: datetime.date
    last_date: datetime.date

    def to_dict(self) -> dict[str, Any]:
        first_date = self.first_date.isoformat()

        last_date = self.last_date.isoformat()

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "first_date": first_date,
                "last_date": last_date,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        first_date = datetime.date.fromisoformat(d.pop("first_date"))

        last_date = datetime.date.fromisoformat(d.pop("last_date"))

        blocked_dates = cls(
            first_date=first_date,
            last_date=last_date,
        )

        return blocked_dates
