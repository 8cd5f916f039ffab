from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="BrokenLimit")


@_attrs_define
class BrokenLimit:
    """A limit that the season does not keep.

    Attributes:
        allowed (float): What was allowed.
        found (float): The nearest that was found.
        limit (str): `weeks_above_band`, `weeks_dieting`, `event_fat_fraction` (by how much body fat is over the target
            of an event), or `final_fat_fraction` (body fat at the horizon). Extensible.
    """

    allowed: float
    found: float
    limit: str
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        allowed = self.allowed

        found = self.found

        limit = self.limit

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "allowed": allowed,
                "found": found,
                "limit": limit,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        allowed = d.pop("allowed")

        found = d.pop("found")

        limit = d.pop("limit")

        broken_limit = cls(
            allowed=allowed,
            found=found,
            limit=limit,
        )

        broken_limit.additional_properties = d
        return broken_limit

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
