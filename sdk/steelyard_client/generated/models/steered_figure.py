from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="SteeredFigure")


@_attrs_define
class SteeredFigure:
    """What weight taught of the maintenance of somebody who hardly logs food, as told, in the reviews by a day.

    Attributes:
        date (datetime.date): The day of the review that showed it.
        mean_kcal (float): Kilocalories a day, as told.
        standard_deviation_kcal (float): Its standard deviation.
    """

    date: datetime.date
    mean_kcal: float
    standard_deviation_kcal: float

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        mean_kcal = self.mean_kcal

        standard_deviation_kcal = self.standard_deviation_kcal

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
                "mean_kcal": mean_kcal,
                "standard_deviation_kcal": standard_deviation_kcal,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        mean_kcal = d.pop("mean_kcal")

        standard_deviation_kcal = d.pop("standard_deviation_kcal")

        steered_figure = cls(
            date=date,
            mean_kcal=mean_kcal,
            standard_deviation_kcal=standard_deviation_kcal,
        )

        return steered_figure
