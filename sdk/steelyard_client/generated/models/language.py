from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="Language")


@_attrs_define
class Language:
    """A language in which every message is there.

    Attributes:
        decimal_mark (str): What stands before the decimals of a number.
        name (str): Its name for itself.
        tag (str): Language tag (BCP 47).
    """

    decimal_mark: str
    name: str
    tag: str
    additional_properties: dict[str, Any] = _attrs_field(init=False, factory=dict)

    def to_dict(self) -> dict[str, Any]:
        decimal_mark = self.decimal_mark

        name = self.name

        tag = self.tag

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "decimal_mark": decimal_mark,
                "name": name,
                "tag": tag,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        decimal_mark = d.pop("decimal_mark")

        name = d.pop("name")

        tag = d.pop("tag")

        language = cls(
            decimal_mark=decimal_mark,
            name=name,
            tag=tag,
        )

        language.additional_properties = d
        return language

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
