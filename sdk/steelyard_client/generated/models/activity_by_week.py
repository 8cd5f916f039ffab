from __future__ import annotations

from collections.abc import Mapping
from typing import (
    TYPE_CHECKING,
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.training_session import TrainingSession


T = TypeVar("T", bound="ActivityByWeek")


@_attrs_define
class ActivityByWeek:
    """Activity composed of steps and sessions. Steps exclude those made in sessions.

    Attributes:
        kind (Literal['week']):
        steps_per_day (float): Steps a day outside the sessions.
        sessions (list[TrainingSession] | Unset): All training of the week. `[]` if absent.
    """

    kind: Literal["week"]
    steps_per_day: float
    sessions: list[TrainingSession] | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        steps_per_day = self.steps_per_day

        sessions: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.sessions, Unset):
            sessions = []
            for sessions_item_data in self.sessions:
                sessions_item = sessions_item_data.to_dict()
                sessions.append(sessions_item)

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
                "steps_per_day": steps_per_day,
            }
        )
        if sessions is not UNSET:
            field_dict["sessions"] = sessions

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.training_session import TrainingSession  # noqa: PLC0415

        d = dict(src_dict)
        kind = cast(Literal["week"], d.pop("kind"))
        if kind != "week":
            raise ValueError(f"kind must match const 'week', got '{kind}'")

        steps_per_day = d.pop("steps_per_day")

        _sessions = d.pop("sessions", UNSET)
        sessions: list[TrainingSession] | Unset = UNSET
        if _sessions is not UNSET:
            sessions = []
            for sessions_item_data in _sessions:
                sessions_item = TrainingSession.from_dict(sessions_item_data)

                sessions.append(sessions_item)

        activity_by_week = cls(
            kind=kind,
            steps_per_day=steps_per_day,
            sessions=sessions,
        )

        return activity_by_week
