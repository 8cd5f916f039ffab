from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="Said")


@_attrs_define
class Said:
    """A message: a stable code and its text.

    Attributes:
        code (str): Stable code, as in `/v1/messages`.
        text (str): The message in English.
    """

    code: str
    text: str

    def to_dict(self) -> dict[str, Any]:
        code = self.code

        text = self.text

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "code": code,
                "text": text,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        code = d.pop("code")

        text = d.pop("text")

        said = cls(
            code=code,
            text=text,
        )

        return said
