from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..models.pause_reason import PauseReason
from ..types import UNSET, Unset

T = TypeVar("T", bound="Pause")


@_attrs_define
class Pause:
    """Weeks at maintenance before the phase starts or resumes.

    Attributes:
        weeks (int): Length of the pause in weeks.
        reason (PauseReason | Unset): Why a phase waits.
    """

    weeks: int
    reason: PauseReason | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        weeks = self.weeks

        reason: str | Unset = UNSET
        if not isinstance(self.reason, Unset):
            reason = self.reason.value

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "weeks": weeks,
            }
        )
        if reason is not UNSET:
            field_dict["reason"] = reason

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        weeks = d.pop("weeks")

        _reason = d.pop("reason", UNSET)
        reason: PauseReason | Unset
        if isinstance(_reason, Unset):
            reason = UNSET
        else:
            reason = PauseReason(_reason)

        pause = cls(
            weeks=weeks,
            reason=reason,
        )

        return pause
