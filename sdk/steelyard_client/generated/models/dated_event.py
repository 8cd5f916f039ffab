from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.event_kind import EventKind
from ..types import UNSET, Unset

T = TypeVar("T", bound="DatedEvent")


@_attrs_define
class DatedEvent:
    """Something that moves weight without moving tissue, or makes a verdict worthless for a while.

    Attributes:
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        kind (EventKind): What happened.
        until_date (datetime.date | None | Unset): Its last day; that day where absent.
    """

    date: datetime.date
    kind: EventKind
    until_date: datetime.date | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        kind = self.kind.value

        until_date: None | str | Unset
        if isinstance(self.until_date, Unset):
            until_date = UNSET
        elif isinstance(self.until_date, datetime.date):
            until_date = self.until_date.isoformat()
        else:
            until_date = self.until_date

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
                "kind": kind,
            }
        )
        if until_date is not UNSET:
            field_dict["until_date"] = until_date

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        kind = EventKind(d.pop("kind"))

        def _parse_until_date(data: object) -> datetime.date | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                until_date_type_0 = datetime.date.fromisoformat(data)

                return until_date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None | Unset, data)

        until_date = _parse_until_date(d.pop("until_date", UNSET))

        dated_event = cls(
            date=date,
            kind=kind,
            until_date=until_date,
        )

        return dated_event
