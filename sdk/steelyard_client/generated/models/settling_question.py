from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.explanation_row import ExplanationRow
    from ..models.note import Note


T = TypeVar("T", bound="SettlingQuestion")


@_attrs_define
class SettlingQuestion:
    """One question that settles what scale and log say against each other.

    Attributes:
        ask (Note): A reason, caution or note: a stable code, its parameters, and the text made from both.
        asked_count (int): How often, unanswered ones included.
        asked_date (datetime.date): The day on which it was asked: with the `state` handed on an open one keeps it.
        causes (list[ExplanationRow]): What may explain it, the likeliest first.
        conclusions (list[Note]): What is concluded from either answer.
        test (str): `weigh_food`, `oil_and_alcohol`, `water` (creatine, salt, new training, another hour, illness,
            travel), `cycle` or, where no weighing is asked of the person, `clinician`. Extensible.
        until_date (datetime.date): Until then nothing is changed for its sake; what a guard rail or two readings a week
            apart ask for does not wait. Unanswered by then it is left out, and asked again four weeks after it was asked.
    """

    ask: Note
    asked_count: int
    asked_date: datetime.date
    causes: list[ExplanationRow]
    conclusions: list[Note]
    test: str
    until_date: datetime.date
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        ask = self.ask.to_dict()

        asked_count = self.asked_count

        asked_date = self.asked_date.isoformat()

        causes = []
        for causes_item_data in self.causes:
            causes_item = causes_item_data.to_dict()
            causes.append(causes_item)

        conclusions = []
        for conclusions_item_data in self.conclusions:
            conclusions_item = conclusions_item_data.to_dict()
            conclusions.append(conclusions_item)

        test = self.test

        until_date = self.until_date.isoformat()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "ask": ask,
                "asked_count": asked_count,
                "asked_date": asked_date,
                "causes": causes,
                "conclusions": conclusions,
                "test": test,
                "until_date": until_date,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.explanation_row import ExplanationRow  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415

        d = dict(src_dict)
        ask = Note.from_dict(d.pop("ask"))

        asked_count = d.pop("asked_count")

        asked_date = datetime.date.fromisoformat(d.pop("asked_date"))

        causes = []
        _causes = d.pop("causes")
        for causes_item_data in _causes:
            causes_item = ExplanationRow.from_dict(causes_item_data)

            causes.append(causes_item)

        conclusions = []
        _conclusions = d.pop("conclusions")
        for conclusions_item_data in _conclusions:
            conclusions_item = Note.from_dict(conclusions_item_data)

            conclusions.append(conclusions_item)

        test = d.pop("test")

        until_date = datetime.date.fromisoformat(d.pop("until_date"))

        settling_question = cls(
            ask=ask,
            asked_count=asked_count,
            asked_date=asked_date,
            causes=causes,
            conclusions=conclusions,
            test=test,
            until_date=until_date,
        )

        settling_question.additional_properties = d
        return settling_question

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
