from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="VerdictProbabilities")


@_attrs_define
class VerdictProbabilities:
    """Where the change of tissue lies against what counts as planned; they add up to 1.

    Attributes:
        faster (float): Beyond it, towards the purpose; at maintenance, above.
        slower (float): Short of it; at maintenance, below.
        within_interval (float): Inside the interval.
    """

    faster: float
    slower: float
    within_interval: float
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        faster = self.faster

        slower = self.slower

        within_interval = self.within_interval

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "faster": faster,
                "slower": slower,
                "within_interval": within_interval,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        faster = d.pop("faster")

        slower = d.pop("slower")

        within_interval = d.pop("within_interval")

        verdict_probabilities = cls(
            faster=faster,
            slower=slower,
            within_interval=within_interval,
        )

        verdict_probabilities.additional_properties = d
        return verdict_probabilities

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
