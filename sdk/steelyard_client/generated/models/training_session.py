from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="TrainingSession")


@_attrs_define
class TrainingSession:
    """A bout repeated every week.

    Attributes:
        met (float): Intensity in METs (vigorous resistance training is 6).
        minutes (float): Minutes a bout.
        times_per_week (float): Bouts a week.
    """

    met: float
    minutes: float
    times_per_week: float

    def to_dict(self) -> dict[str, Any]:
        met = self.met

        minutes = self.minutes

        times_per_week = self.times_per_week

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "met": met,
                "minutes": minutes,
                "times_per_week": times_per_week,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        met = d.pop("met")

        minutes = d.pop("minutes")

        times_per_week = d.pop("times_per_week")

        training_session = cls(
            met=met,
            minutes=minutes,
            times_per_week=times_per_week,
        )

        return training_session
