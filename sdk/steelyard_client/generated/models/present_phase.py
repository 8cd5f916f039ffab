from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..models.phase_kind import PhaseKind

T = TypeVar("T", bound="PresentPhase")


@_attrs_define
class PresentPhase:
    """The phase under way.

    Attributes:
        kind (PhaseKind): What a phase is for.
        weeks_done (int): Whole weeks done of it.
    """

    kind: PhaseKind
    weeks_done: int

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind.value

        weeks_done = self.weeks_done

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
                "weeks_done": weeks_done,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = PhaseKind(d.pop("kind"))

        weeks_done = d.pop("weeks_done")

        present_phase = cls(
            kind=kind,
            weeks_done=weeks_done,
        )

        return present_phase
