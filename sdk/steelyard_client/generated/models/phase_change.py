from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.change_kind import ChangeKind
from ..types import UNSET, Unset

T = TypeVar("T", bound="PhaseChange")


@_attrs_define
class PhaseChange:
    """A dated change of a phase: of its intake, a pause at maintenance, or another end.

    Attributes:
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        kind (ChangeKind): What was changed of a phase.
        change_kcal (float | Unset): Change of the daily intake; changes add up. `0` if absent.
        reason (None | str | Unset): Why, in a word.
        until_date (datetime.date | None | Unset): Last day of a pause.
    """

    date: datetime.date
    kind: ChangeKind
    change_kcal: float | Unset = UNSET
    reason: None | str | Unset = UNSET
    until_date: datetime.date | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        kind = self.kind.value

        change_kcal = self.change_kcal

        reason: None | str | Unset
        if isinstance(self.reason, Unset):
            reason = UNSET
        else:
            reason = self.reason

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
        if change_kcal is not UNSET:
            field_dict["change_kcal"] = change_kcal
        if reason is not UNSET:
            field_dict["reason"] = reason
        if until_date is not UNSET:
            field_dict["until_date"] = until_date

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        kind = ChangeKind(d.pop("kind"))

        change_kcal = d.pop("change_kcal", UNSET)

        def _parse_reason(data: object) -> None | str | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(None | str | Unset, data)

        reason = _parse_reason(d.pop("reason", UNSET))

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

        phase_change = cls(
            date=date,
            kind=kind,
            change_kcal=change_kcal,
            reason=reason,
            until_date=until_date,
        )

        return phase_change
