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

if TYPE_CHECKING:
    from ..models.intake_stretch import IntakeStretch


T = TypeVar("T", bound="PathQuestion")


@_attrs_define
class PathQuestion:
    """Where does this schedule of intakes lead?

    Attributes:
        kind (Literal['path']):
        schedule (list[IntakeStretch]): Stretches in order, 156 weeks in all.
    """

    kind: Literal["path"]
    schedule: list[IntakeStretch]

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        schedule = []
        for schedule_item_data in self.schedule:
            schedule_item = schedule_item_data.to_dict()
            schedule.append(schedule_item)

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
                "schedule": schedule,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.intake_stretch import IntakeStretch  # noqa: PLC0415

        d = dict(src_dict)
        kind = cast(Literal["path"], d.pop("kind"))
        if kind != "path":
            raise ValueError(f"kind must match const 'path', got '{kind}'")

        schedule = []
        _schedule = d.pop("schedule")
        for schedule_item_data in _schedule:
            schedule_item = IntakeStretch.from_dict(schedule_item_data)

            schedule.append(schedule_item)

        path_question = cls(
            kind=kind,
            schedule=schedule,
        )

        return path_question
