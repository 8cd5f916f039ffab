from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="ScoreParts")


@_attrs_define
class ScoreParts:
    """Why an alternative scores as it does, in kilograms of lean tissue over the horizon.

    Attributes:
        dieting_price_kg (float): Price of the weeks in a deficit.
        lean_kg (float): Lean tissue expected to be gained.
        leanness_price_kg (float): Price of the weeks with body fat over the line of the motive.
        total_kg (float): The first less the other two.
    """

    dieting_price_kg: float
    lean_kg: float
    leanness_price_kg: float
    total_kg: float
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        dieting_price_kg = self.dieting_price_kg

        lean_kg = self.lean_kg

        leanness_price_kg = self.leanness_price_kg

        total_kg = self.total_kg

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "dieting_price_kg": dieting_price_kg,
                "lean_kg": lean_kg,
                "leanness_price_kg": leanness_price_kg,
                "total_kg": total_kg,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        dieting_price_kg = d.pop("dieting_price_kg")

        lean_kg = d.pop("lean_kg")

        leanness_price_kg = d.pop("leanness_price_kg")

        total_kg = d.pop("total_kg")

        score_parts = cls(
            dieting_price_kg=dieting_price_kg,
            lean_kg=lean_kg,
            leanness_price_kg=leanness_price_kg,
            total_kg=total_kg,
        )

        score_parts.additional_properties = d
        return score_parts

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
