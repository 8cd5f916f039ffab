from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.attention import Attention


T = TypeVar("T", bound="RosterPlace")


@_attrs_define
class RosterPlace:
    """A member and their place.

    Attributes:
        attention (Attention): How much somebody needs to be looked at, why, what to do, and since when.
        change (str): Against last week: `new`, `worse`, `better` or `same`. Extensible.
        days_silent (int | None): Days since the last entry; null where there is none.
        priority (float): The order goes by it, largest first; rosters are merged by it.
        rank (int): Place in the order, from 1: whom to look at first.
        reference (str): The member's reference.
    """

    attention: Attention
    change: str
    days_silent: int | None
    priority: float
    rank: int
    reference: str
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        attention = self.attention.to_dict()

        change = self.change

        days_silent: int | None
        days_silent = self.days_silent

        priority = self.priority

        rank = self.rank

        reference = self.reference

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "attention": attention,
                "change": change,
                "days_silent": days_silent,
                "priority": priority,
                "rank": rank,
                "reference": reference,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.attention import Attention  # noqa: PLC0415

        d = dict(src_dict)
        attention = Attention.from_dict(d.pop("attention"))

        change = d.pop("change")

        def _parse_days_silent(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        days_silent = _parse_days_silent(d.pop("days_silent"))

        priority = d.pop("priority")

        rank = d.pop("rank")

        reference = d.pop("reference")

        roster_place = cls(
            attention=attention,
            change=change,
            days_silent=days_silent,
            priority=priority,
            rank=rank,
            reference=reference,
        )

        roster_place.additional_properties = d
        return roster_place

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
