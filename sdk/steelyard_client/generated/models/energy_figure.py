from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="EnergyFigure")


@_attrs_define
class EnergyFigure:
    """An energy a day with its error.

    Attributes:
        mean (float): Kilocalories a day.
        standard_deviation (float): Its standard deviation.
    """

    mean: float
    standard_deviation: float

    def to_dict(self) -> dict[str, Any]:
        mean = self.mean

        standard_deviation = self.standard_deviation

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "mean": mean,
                "standard_deviation": standard_deviation,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        mean = d.pop("mean")

        standard_deviation = d.pop("standard_deviation")

        energy_figure = cls(
            mean=mean,
            standard_deviation=standard_deviation,
        )

        return energy_figure
