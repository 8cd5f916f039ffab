from __future__ import annotations

from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

from ..models.activity_level import ActivityLevel

T = TypeVar("T", bound="ActivityByLevel")


@_attrs_define
class ActivityByLevel:
    """Whole-day activity as a band of the physical activity level (PAL). Training is included: do not add it again.

    Attributes:
        kind (Literal['level']):
        level (ActivityLevel): Whole-day activity, training included (bands of the physical activity level).
    """

    kind: Literal["level"]
    level: ActivityLevel

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        level = self.level.value

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
                "level": level,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = cast(Literal["level"], d.pop("kind"))
        if kind != "level":
            raise ValueError(f"kind must match const 'level', got '{kind}'")

        level = ActivityLevel(d.pop("level"))

        activity_by_level = cls(
            kind=kind,
            level=level,
        )

        return activity_by_level
