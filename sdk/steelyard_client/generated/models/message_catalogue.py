from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.language import Language
    from ..models.message_code import MessageCode


T = TypeVar("T", bound="MessageCatalogue")


@_attrs_define
class MessageCatalogue:
    """Every text that answers say to people, in every language there is.

    Attributes:
        contract_version (str): Version of this contract.
        languages (list[Language]): English first: answers carry it.
        messages (list[MessageCode]): Sorted by code.
    """

    contract_version: str
    languages: list[Language]
    messages: list[MessageCode]
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        contract_version = self.contract_version

        languages = []
        for languages_item_data in self.languages:
            languages_item = languages_item_data.to_dict()
            languages.append(languages_item)

        messages = []
        for messages_item_data in self.messages:
            messages_item = messages_item_data.to_dict()
            messages.append(messages_item)

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "contract_version": contract_version,
                "languages": languages,
                "messages": messages,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.language import Language  # noqa: PLC0415
        from ..models.message_code import MessageCode  # noqa: PLC0415

        d = dict(src_dict)
        contract_version = d.pop("contract_version")

        languages = []
        _languages = d.pop("languages")
        for languages_item_data in _languages:
            languages_item = Language.from_dict(languages_item_data)

            languages.append(languages_item)

        messages = []
        _messages = d.pop("messages")
        for messages_item_data in _messages:
            messages_item = MessageCode.from_dict(messages_item_data)

            messages.append(messages_item)

        message_catalogue = cls(
            contract_version=contract_version,
            languages=languages,
            messages=messages,
        )

        message_catalogue.additional_properties = d
        return message_catalogue

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
