from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..models.finding import Finding

T = TypeVar("T", bound="SettledQuestion")


@_attrs_define
class SettledQuestion:
    """The answer to the question that an earlier review of this phase asked.

    Attributes:
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        found (Finding): What came out of a question.
    """

    date: datetime.date
    found: Finding

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        found = self.found.value

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
                "found": found,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        found = Finding(d.pop("found"))

        settled_question = cls(
            date=date,
            found=found,
        )

        return settled_question
