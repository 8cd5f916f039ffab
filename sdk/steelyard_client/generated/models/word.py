from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.word_texts import WordTexts


T = TypeVar("T", bound="Word")


@_attrs_define
class Word:
    """A word or phrase that is the value of a parameter, in the other languages.

    Attributes:
        text (str): As answers carry it; `{number}` stands for any number.
        texts (WordTexts): The same by language tag.
    """

    text: str
    texts: WordTexts
    additional_properties: dict[str, Any] = _attrs_field(init=False, factory=dict)

    def to_dict(self) -> dict[str, Any]:
        text = self.text

        texts = self.texts.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "text": text,
                "texts": texts,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.word_texts import WordTexts  # noqa: PLC0415

        d = dict(src_dict)
        text = d.pop("text")

        texts = WordTexts.from_dict(d.pop("texts"))

        word = cls(
            text=text,
            texts=texts,
        )

        word.additional_properties = d
        return word

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
