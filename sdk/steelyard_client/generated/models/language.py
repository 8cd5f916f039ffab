from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="Language")


@_attrs_define
class Language:
    """A language in which every message is there, with its texts.

    Attributes:
        fluent (str): Its texts as one Fluent resource (syntax 1.0): a message for each code.
        locale (str): Locale of its numbers, dates and plurals (BCP 47).
        name (str): Its name for itself.
        tag (str): Language tag (BCP 47).
    """

    fluent: str
    locale: str
    name: str
    tag: str
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        fluent = self.fluent

        locale = self.locale

        name = self.name

        tag = self.tag

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "fluent": fluent,
                "locale": locale,
                "name": name,
                "tag": tag,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        fluent = d.pop("fluent")

        locale = d.pop("locale")

        name = d.pop("name")

        tag = d.pop("tag")

        language = cls(
            fluent=fluent,
            locale=locale,
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
