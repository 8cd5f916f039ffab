from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define

if TYPE_CHECKING:
    from ..models.roster_member import RosterMember


T = TypeVar("T", bound="RosterRequest")


@_attrs_define
class RosterRequest:
    """Up to 500 members; of more, make several rosters and merge them by `priority`.

    Attributes:
        as_of_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        members (list[RosterMember]): Whom to put in order.
    """

    as_of_date: datetime.date
    members: list[RosterMember]

    def to_dict(self) -> dict[str, Any]:
        as_of_date = self.as_of_date.isoformat()

        members = []
        for members_item_data in self.members:
            members_item = members_item_data.to_dict()
            members.append(members_item)

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "as_of_date": as_of_date,
                "members": members,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.roster_member import RosterMember  # noqa: PLC0415

        d = dict(src_dict)
        as_of_date = datetime.date.fromisoformat(d.pop("as_of_date"))

        members = []
        _members = d.pop("members")
        for members_item_data in _members:
            members_item = RosterMember.from_dict(members_item_data)

            members.append(members_item)

        roster_request = cls(
            as_of_date=as_of_date,
            members=members,
        )

        return roster_request
