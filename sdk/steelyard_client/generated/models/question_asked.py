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
        times (int | Unset): How often it was asked by then. `1` if absent.
    """

    date: datetime.date
    test: SettlingTest
    times: int | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        test = self.test.value

        times = self.times

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
                "test": test,
            }
        )
        if times is not UNSET:
            field_dict["times"] = times

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        test = SettlingTest(d.pop("test"))

        times = d.pop("times", UNSET)

        question_asked = cls(
            date=date,
            test=test,
            times=times,
        )

        return question_asked
