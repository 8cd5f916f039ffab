from __future__ import annotations

from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

from ..models.ready_made import ReadyMade

T = TypeVar("T", bound="ReadyMadeStrategy")


@_attrs_define
class ReadyMadeStrategy:
    """A ready-made strategy, sized to the person.

    Attributes:
        kind (Literal['ready_made']):
        name (ReadyMade): The ready-made strategies.
    """

    kind: Literal["ready_made"]
    name: ReadyMade

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        name = self.name.value

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
                "name": name,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = cast(Literal["ready_made"], d.pop("kind"))
        if kind != "ready_made":
            raise ValueError(f"kind must match const 'ready_made', got '{kind}'")

        name = ReadyMade(d.pop("name"))

        ready_made_strategy = cls(
            kind=kind,
            name=name,
        )

        return ready_made_strategy
