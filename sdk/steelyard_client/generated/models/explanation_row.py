from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="ExplanationRow")


@_attrs_define
class ExplanationRow:
    """An explanation and its probability.

    Attributes:
        cause (str): `as_logged`: weight did what log and equations lead to expect; `logging`: more, or less, was eaten
            than the usual share that is logged; `maintenance`: the body spends more, or less, than the equations say
            (logged steps speak for it or against it); `water`: carried mass moved without intake as its cause. Extensible.
        probability (float): 0 to 1; all of them add up to 1.
    """

    cause: str
    probability: float
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        cause = self.cause

        probability = self.probability

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "cause": cause,
                "probability": probability,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        cause = d.pop("cause")

        probability = d.pop("probability")

        explanation_row = cls(
            cause=cause,
            probability=probability,
        )

        explanation_row.additional_properties = d
        return explanation_row

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
