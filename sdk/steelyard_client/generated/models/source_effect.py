from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="SourceEffect")


@_attrs_define
class SourceEffect:
    """How much one source of uncertainty moves the forecast.

    Attributes:
        fat_kg (float): One-SD effect on the change of fat mass at the end, kilograms.
        source (str): The source. Extensible.
    """

    fat_kg: float
    source: str
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        fat_kg = self.fat_kg

        source = self.source

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "fat_kg": fat_kg,
                "source": source,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        fat_kg = d.pop("fat_kg")

        source = d.pop("source")

        source_effect = cls(
            fat_kg=fat_kg,
            source=source,
        )

        source_effect.additional_properties = d
        return source_effect

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
