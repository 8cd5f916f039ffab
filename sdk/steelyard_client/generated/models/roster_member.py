from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.attention import Attention


T = TypeVar("T", bound="RosterMember")


@_attrs_define
class RosterMember:
    """Somebody on a roster: the `attention` of their last review, and of the one a week before.

    Attributes:
        attention (Attention): How much somebody needs to be looked at, why, what to do, and since when.
        reference (str): Comes back with the answer.
        before (Attention | None | Unset): That of last week, where there is one.
    """

    attention: Attention
    reference: str
    before: Attention | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.attention import Attention  # noqa: PLC0415

        attention = self.attention.to_dict()

        reference = self.reference

        before: dict[str, Any] | None | Unset
        if isinstance(self.before, Unset):
            before = UNSET
        elif isinstance(self.before, Attention):
            before = self.before.to_dict()
        else:
            before = self.before

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "attention": attention,
                "reference": reference,
            }
        )
        if before is not UNSET:
            field_dict["before"] = before

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.attention import Attention  # noqa: PLC0415

        d = dict(src_dict)
        attention = Attention.from_dict(d.pop("attention"))

        reference = d.pop("reference")

        def _parse_before(data: object) -> Attention | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                before_type_0 = Attention.from_dict(data)

                return before_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Attention | None | Unset, data)

        before = _parse_before(d.pop("before", UNSET))

        roster_member = cls(
            attention=attention,
            reference=reference,
            before=before,
        )

        return roster_member
