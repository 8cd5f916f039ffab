from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="IntervalPassed")


@_attrs_define
class IntervalPassed:
    """An interval of an answer, as it comes back.

    Attributes:
        lower (float): As in the interval of an answer.
        mean (float): As in the interval of an answer.
        upper (float): As in the interval of an answer.
        coverage (float | Unset): Probability it is meant to hold. `0.8` if absent.
    """

    lower: float
    mean: float
    upper: float
    coverage: float | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        lower = self.lower

        mean = self.mean

        upper = self.upper

        coverage = self.coverage

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "lower": lower,
                "mean": mean,
                "upper": upper,
            }
        )
        if coverage is not UNSET:
            field_dict["coverage"] = coverage

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        lower = d.pop("lower")

        mean = d.pop("mean")

        upper = d.pop("upper")

        coverage = d.pop("coverage", UNSET)

        interval_passed = cls(
            lower=lower,
            mean=mean,
            upper=upper,
            coverage=coverage,
        )

        return interval_passed
