from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="MassFigure")


@_attrs_define
class MassFigure:
    """A mass with its error.

    Attributes:
        mean (float): Mass, kg.
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

        mass_figure = cls(
            mean=mean,
            standard_deviation=standard_deviation,
        )

        return mass_figure
