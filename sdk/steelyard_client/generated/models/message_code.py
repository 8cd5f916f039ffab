from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="MessageCode")


@_attrs_define
class MessageCode:
    """A code that answers carry: for whom it is, and its parameters.

    Attributes:
        audience (str): For whom it is: `member` may be read out to them as it is; `coach` and `developer` hold terms of
            the trade or names of fields. Extensible.
        code (str): The code that answers carry.
        params (list[str]): Names of its text's parameters.
    """

    audience: str
    code: str
    params: list[str]
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        audience = self.audience

        code = self.code

        params = self.params

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "audience": audience,
                "code": code,
                "params": params,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        audience = d.pop("audience")

        code = d.pop("code")

        params = cast(list[str], d.pop("params"))

        message_code = cls(
            audience=audience,
            code=code,
            params=params,
        )

        message_code.additional_properties = d
        return message_code

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
