from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.note_params import NoteParams


T = TypeVar("T", bound="Note")


@_attrs_define
class Note:
    """A reason, caution or note: a stable code, its parameters, and the text made from both.

    Attributes:
        code (str): Stable code, UPPER_SNAKE, as in `/v1/messages`. Extensible.
        params (NoteParams): Every number of the text, units in the names.
        text (str): The message in English.
    """

    code: str
    params: NoteParams
    text: str
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        code = self.code

        params = self.params.to_dict()

        text = self.text

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "code": code,
                "params": params,
                "text": text,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.note_params import NoteParams  # noqa: PLC0415

        d = dict(src_dict)
        code = d.pop("code")

        params = NoteParams.from_dict(d.pop("params"))

        text = d.pop("text")

        note = cls(
            code=code,
            params=params,
            text=text,
        )

        note.additional_properties = d
        return note

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
