from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="HealthyRange")


@_attrs_define
class HealthyRange:
    """The healthy range for age and sex, and where this body fat stands. For an unspecified sex it spans both.

    Attributes:
        above_probability (float): Probability of more than the range.
        below_probability (float): Probability of less than the range.
        lower_fraction (float): Lower end, 0 to 1.
        standing (str): Of the mean: `below`, `within` or `above`. Extensible.
        upper_fraction (float): Upper end, 0 to 1.
        within_probability (float): Probability of the range.
    """

    above_probability: float
    below_probability: float
    lower_fraction: float
    standing: str
    upper_fraction: float
    within_probability: float
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        above_probability = self.above_probability

        below_probability = self.below_probability

        lower_fraction = self.lower_fraction

        standing = self.standing

        upper_fraction = self.upper_fraction

        within_probability = self.within_probability

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "above_probability": above_probability,
                "below_probability": below_probability,
                "lower_fraction": lower_fraction,
                "standing": standing,
                "upper_fraction": upper_fraction,
                "within_probability": within_probability,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        above_probability = d.pop("above_probability")

        below_probability = d.pop("below_probability")

        lower_fraction = d.pop("lower_fraction")

        standing = d.pop("standing")

        upper_fraction = d.pop("upper_fraction")

        within_probability = d.pop("within_probability")

        healthy_range = cls(
            above_probability=above_probability,
            below_probability=below_probability,
            lower_fraction=lower_fraction,
            standing=standing,
            upper_fraction=upper_fraction,
            within_probability=within_probability,
        )

        healthy_range.additional_properties = d
        return healthy_range

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
