from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..models.settling_test import SettlingTest
from ..types import UNSET, Unset

T = TypeVar("T", bound="QuestionAsked")


@_attrs_define
class QuestionAsked:
    """The question that reviews last asked in the phase under way; one that is open is not asked anew every week.

    Attributes:
        date (datetime.date): The day on which it was asked.
        test (SettlingTest): What settles a contradiction.
        asked_count (int | Unset): How often it was asked by then. `1` if absent.
    """

    date: datetime.date
    test: SettlingTest
    asked_count: int | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        test = self.test.value

        asked_count = self.asked_count

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
                "test": test,
            }
        )
        if asked_count is not UNSET:
            field_dict["asked_count"] = asked_count

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        test = SettlingTest(d.pop("test"))

        asked_count = d.pop("asked_count", UNSET)

        question_asked = cls(
            date=date,
            test=test,
            asked_count=asked_count,
        )

        return question_asked
