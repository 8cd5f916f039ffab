from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.said import Said


T = TypeVar("T", bound="Attention")


@_attrs_define
class Attention:
    """How much somebody needs to be looked at, why, what to do, and since when.

    Attributes:
        action (Said): A message: a stable code and its text.
        as_of_date (datetime.date): The day of the review.
        level (int): 0 nothing to do, 1 look at the log, 2 something to agree on, 3 a sign or a guard rail: today.
        reason (Said): A message: a stable code and its text.
        since_date (datetime.date): The review from which on it has been for this reason.
        verdict (str): The review's verdict.
        change_kcal (float | Unset): What the review changes of the daily intake. `0` if absent.
        last_entry_date (datetime.date | None | Unset): The day of the last entry of the log.
    """

    action: Said
    as_of_date: datetime.date
    level: int
    reason: Said
    since_date: datetime.date
    verdict: str
    change_kcal: float | Unset = UNSET
    last_entry_date: datetime.date | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        action = self.action.to_dict()

        as_of_date = self.as_of_date.isoformat()

        level = self.level

        reason = self.reason.to_dict()

        since_date = self.since_date.isoformat()

        verdict = self.verdict

        change_kcal = self.change_kcal

        last_entry_date: None | str | Unset
        if isinstance(self.last_entry_date, Unset):
            last_entry_date = UNSET
        elif isinstance(self.last_entry_date, datetime.date):
            last_entry_date = self.last_entry_date.isoformat()
        else:
            last_entry_date = self.last_entry_date

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "action": action,
                "as_of_date": as_of_date,
                "level": level,
                "reason": reason,
                "since_date": since_date,
                "verdict": verdict,
            }
        )
        if change_kcal is not UNSET:
            field_dict["change_kcal"] = change_kcal
        if last_entry_date is not UNSET:
            field_dict["last_entry_date"] = last_entry_date

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.said import Said  # noqa: PLC0415

        d = dict(src_dict)
        action = Said.from_dict(d.pop("action"))

        as_of_date = datetime.date.fromisoformat(d.pop("as_of_date"))

        level = d.pop("level")

        reason = Said.from_dict(d.pop("reason"))

        since_date = datetime.date.fromisoformat(d.pop("since_date"))

        verdict = d.pop("verdict")

        change_kcal = d.pop("change_kcal", UNSET)

        def _parse_last_entry_date(data: object) -> datetime.date | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                last_entry_date_type_0 = datetime.date.fromisoformat(data)

                return last_entry_date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None | Unset, data)

        last_entry_date = _parse_last_entry_date(d.pop("last_entry_date", UNSET))

        attention = cls(
            action=action,
            as_of_date=as_of_date,
            level=level,
            reason=reason,
            since_date=since_date,
            verdict=verdict,
            change_kcal=change_kcal,
            last_entry_date=last_entry_date,
        )

        return attention
