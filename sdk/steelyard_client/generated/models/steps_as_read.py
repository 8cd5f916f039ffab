from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="StepsAsRead")


@_attrs_define
class StepsAsRead:
    """What was counted of steps so far.

    Attributes:
        days (int): Days counted.
        first (float): Steps a day when their mean was first known.
        kcal_per_step (float): Energy of a step above rest, kilocalories.
        mean (float): Running mean over a week.
        settled (float): Running mean over four weeks.
    """

    days: int
    first: float
    kcal_per_step: float
    mean: float
    settled: float

    def to_dict(self) -> dict[str, Any]:
        days = self.days

        first = self.first

        kcal_per_step = self.kcal_per_step

        mean = self.mean

        settled = self.settled

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "days": days,
                "first": first,
                "kcal_per_step": kcal_per_step,
                "mean": mean,
                "settled": settled,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        days = d.pop("days")

        first = d.pop("first")

        kcal_per_step = d.pop("kcal_per_step")

        mean = d.pop("mean")

        settled = d.pop("settled")

        steps_as_read = cls(
            days=days,
            first=first,
            kcal_per_step=kcal_per_step,
            mean=mean,
            settled=settled,
        )

        return steps_as_read
