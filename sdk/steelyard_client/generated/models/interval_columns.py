from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

from ..types import UNSET, Unset

T = TypeVar("T", bound="IntervalColumns")


@_attrs_define
class IntervalColumns:
    """Intervals of many rows, in columns of equal length: a third of the bytes of as many ``Interval``.

    Attributes:
        lower (list[float]): Lower ends of the intervals.
        mean (list[float]): Central values.
        upper (list[float]): Upper ends of the intervals.
        coverage (float | Unset): Probability each is meant to hold. Default: 0.8.
    """

    lower: list[float]
    mean: list[float]
    upper: list[float]
    coverage: float | Unset = 0.8
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        lower = self.lower

        mean = self.mean

        upper = self.upper

        coverage = self.coverage

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
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
        lower = cast(list[float], d.pop("lower"))

        mean = cast(list[float], d.pop("mean"))

        upper = cast(list[float], d.pop("upper"))

        coverage = d.pop("coverage", UNSET)

        interval_columns = cls(
            lower=lower,
            mean=mean,
            upper=upper,
            coverage=coverage,
        )

        interval_columns.additional_properties = d
        return interval_columns

    @property
    def additional_keys(self) -> list[str]:
        return list(self.additional_properties.keys())

    def __getitem__(self, key: str) -> Any:
        return self.additional_properties[key]

    def __setitem__(self, key: str, value: Any) -> None:
        self.additional_properties[key] = value

    def __delitem__(self, key: str) -> None:
        del self.additional_properties[key]

    def __contains__(self, key: str) -> bool:
        return key in self.additional_properties
