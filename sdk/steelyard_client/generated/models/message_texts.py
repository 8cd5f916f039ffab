from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.message_texts_texts import MessageTextsTexts


T = TypeVar("T", bound="MessageTexts")


@_attrs_define
class MessageTexts:
    """A code and its text in each language, with the same parameters.

    Attributes:
        code (str): The code that answers carry.
        params (list[str]): Names of its parameters.
        texts (MessageTextsTexts): Text by language tag. A parameter stands as `{name}` or `{name:form}`.
    """

    code: str
    params: list[str]
    texts: MessageTextsTexts
    additional_properties: dict[str, Any] = _attrs_field(init=False, factory=dict)

    def to_dict(self) -> dict[str, Any]:
        code = self.code

        params = self.params

        texts = self.texts.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "code": code,
                "params": params,
                "texts": texts,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.message_texts_texts import MessageTextsTexts  # noqa: PLC0415

        d = dict(src_dict)
        code = d.pop("code")

        params = cast(list[str], d.pop("params"))

        texts = MessageTextsTexts.from_dict(d.pop("texts"))

        message_texts = cls(
            code=code,
            params=params,
            texts=texts,
        )

        message_texts.additional_properties = d
        return message_texts

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
