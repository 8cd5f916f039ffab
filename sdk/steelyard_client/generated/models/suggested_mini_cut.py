from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="SuggestedMiniCut")


@_attrs_define
class SuggestedMiniCut:
    """A mini-cut to ask for.

    Attributes:
        event_date (datetime.date | None): The day to be ready for, where the event sets the time.
        kind (Literal['mini_cut']):
        target_fat_fraction (float | None): Body fat at which to end, 0 to 1.
        weeks (int | None): Length in weeks; null where the planner finds it.
        weeks_done (int): Weeks already done of it.
    """

    event_date: datetime.date | None
    kind: Literal["mini_cut"]
    target_fat_fraction: float | None
    weeks: int | None
    weeks_done: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        event_date: None | str
        if isinstance(self.event_date, datetime.date):
            event_date = self.event_date.isoformat()
        else:
            event_date = self.event_date

        kind = self.kind

        target_fat_fraction: float | None
        target_fat_fraction = self.target_fat_fraction

        weeks: int | None
        weeks = self.weeks

        weeks_done = self.weeks_done

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "event_date": event_date,
                "kind": kind,
                "target_fat_fraction": target_fat_fraction,
                "weeks": weeks,
                "weeks_done": weeks_done,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)

        def _parse_event_date(data: object) -> datetime.date | None:
            if data is None:
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                event_date_type_0 = datetime.date.fromisoformat(data)

                return event_date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None, data)

        event_date = _parse_event_date(d.pop("event_date"))

        kind = cast(Literal["mini_cut"], d.pop("kind"))
        if kind != "mini_cut":
            raise ValueError(f"kind must match const 'mini_cut', got '{kind}'")

        def _parse_target_fat_fraction(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        target_fat_fraction = _parse_target_fat_fraction(d.pop("target_fat_fraction"))

        def _parse_weeks(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        weeks = _parse_weeks(d.pop("weeks"))

        weeks_done = d.pop("weeks_done")

        suggested_mini_cut = cls(
            event_date=event_date,
            kind=kind,
            target_fat_fraction=target_fat_fraction,
            weeks=weeks,
            weeks_done=weeks_done,
        )

        suggested_mini_cut.additional_properties = d
        return suggested_mini_cut

    @property
    def additional_keys(self) -> list[str]:
        return list(self.additional_properties.keys())

    def __getitem__(self, key: str) -> Any:
        return self.additional_properties[key]

    def __setitem__(self, key: str, value: Any) -> None:
        self.additional_properties[key] = value

    def __delitem__(self, key: str) -> None:
        del self.additional_properties[key]

    def __contains__(self, key: str) -> bool:
        return key in self.additional_properties
