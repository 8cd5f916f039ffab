from __future__ import annotations

from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="SuggestedHold")


@_attrs_define
class SuggestedHold:
    """A hold to ask for.

    Attributes:
        kind (Literal['maintenance']):
        weeks (int): Length in weeks.
    """

    kind: Literal["maintenance"]
    weeks: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        weeks = self.weeks

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "kind": kind,
                "weeks": weeks,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = cast(Literal["maintenance"], d.pop("kind"))
        if kind != "maintenance":
            raise ValueError(f"kind must match const 'maintenance', got '{kind}'")

        weeks = d.pop("weeks")

        suggested_hold = cls(
            kind=kind,
            weeks=weeks,
        )

        suggested_hold.additional_properties = d
        return suggested_hold

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
