from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

from ..types import UNSET, Unset

T = TypeVar("T", bound="Interval")


@_attrs_define
class Interval:
    """A central value with the interval that holds the truth with probability ``coverage``.

    Attributes:
        lower (float): Lower end of the interval.
        mean (float): Central value.
        upper (float): Upper end of the interval.
        coverage (float | Unset): Probability the interval is meant to hold. Default: 0.8.
    """

    lower: float
    mean: float
    upper: float
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
        lower = d.pop("lower")

        mean = d.pop("mean")

        upper = d.pop("upper")

        coverage = d.pop("coverage", UNSET)

        interval = cls(
            lower=lower,
            mean=mean,
            upper=upper,
            coverage=coverage,
        )

        interval.additional_properties = d
        return interval

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
