from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="AdherenceFigure")


@_attrs_define
class AdherenceFigure:
    """How well deficits are kept to, learned from the log by reviews: the share of a planned deficit that is really
    followed, 1 for all of it.

        Attributes:
            mean (float): The share, as a fraction.
            standard_deviation (float): Its standard deviation.
            weeks (float): Weeks in a deficit that showed it.
    """

    mean: float
    standard_deviation: float
    weeks: float

    def to_dict(self) -> dict[str, Any]:
        mean = self.mean

        standard_deviation = self.standard_deviation

        weeks = self.weeks

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "mean": mean,
                "standard_deviation": standard_deviation,
                "weeks": weeks,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        mean = d.pop("mean")

        standard_deviation = d.pop("standard_deviation")

        weeks = d.pop("weeks")

        adherence_figure = cls(
            mean=mean,
            standard_deviation=standard_deviation,
            weeks=weeks,
        )

        return adherence_figure
