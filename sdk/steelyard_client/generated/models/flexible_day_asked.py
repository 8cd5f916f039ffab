from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.flexible_kind import FlexibleKind
from ..models.weekday import Weekday
from ..types import UNSET, Unset

T = TypeVar("T", bound="FlexibleDayAsked")


@_attrs_define
class FlexibleDayAsked:
    """A day with more: a weekday of every week, or one date. The other days of its week pay for it.

    Attributes:
        alcohol_g (float | Unset): Pure alcohol on top, grams, at 7.1 kcal a gram. Half a litre of beer has about 20.
            `0` if absent.
        date (datetime.date | None | Unset): One day; or set `weekday`.
        extra_kcal (float | Unset): Food beyond a usual day, kilocalories. `0` if absent.
        kind (FlexibleKind | Unset): Why a day has more.
        weekday (None | Unset | Weekday): Day of every week; or set `date`.
    """

    alcohol_g: float | Unset = UNSET
    date: datetime.date | None | Unset = UNSET
    extra_kcal: float | Unset = UNSET
    kind: FlexibleKind | Unset = UNSET
    weekday: None | Unset | Weekday = UNSET

    def to_dict(self) -> dict[str, Any]:
        alcohol_g = self.alcohol_g

        date: None | str | Unset
        if isinstance(self.date, Unset):
            date = UNSET
        elif isinstance(self.date, datetime.date):
            date = self.date.isoformat()
        else:
            date = self.date

        extra_kcal = self.extra_kcal

        kind: str | Unset = UNSET
        if not isinstance(self.kind, Unset):
            kind = self.kind.value

        weekday: None | str | Unset
        if isinstance(self.weekday, Unset):
            weekday = UNSET
        elif isinstance(self.weekday, Weekday):
            weekday = self.weekday.value
        else:
            weekday = self.weekday

        field_dict: dict[str, Any] = {}

        field_dict.update({})
        if alcohol_g is not UNSET:
            field_dict["alcohol_g"] = alcohol_g
        if date is not UNSET:
            field_dict["date"] = date
        if extra_kcal is not UNSET:
            field_dict["extra_kcal"] = extra_kcal
        if kind is not UNSET:
            field_dict["kind"] = kind
        if weekday is not UNSET:
            field_dict["weekday"] = weekday

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        alcohol_g = d.pop("alcohol_g", UNSET)

        def _parse_date(data: object) -> datetime.date | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                date_type_0 = datetime.date.fromisoformat(data)

                return date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None | Unset, data)

        date = _parse_date(d.pop("date", UNSET))

        extra_kcal = d.pop("extra_kcal", UNSET)

        _kind = d.pop("kind", UNSET)
        kind: FlexibleKind | Unset
        if isinstance(_kind, Unset):
            kind = UNSET
        else:
            kind = FlexibleKind(_kind)

        def _parse_weekday(data: object) -> None | Unset | Weekday:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                weekday_type_0 = Weekday(data)

                return weekday_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | Unset | Weekday, data)

        weekday = _parse_weekday(d.pop("weekday", UNSET))

        flexible_day_asked = cls(
            alcohol_g=alcohol_g,
            date=date,
            extra_kcal=extra_kcal,
            kind=kind,
            weekday=weekday,
        )

        return flexible_day_asked
