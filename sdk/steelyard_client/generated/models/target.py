from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..models.target_quantity import TargetQuantity

T = TypeVar("T", bound="Target")


@_attrs_define
class Target:
    """A value to reach.

    Attributes:
        quantity (TargetQuantity): What a target is set in.
        value (float): Its value, in the unit of the quantity.
    """

    quantity: TargetQuantity
    value: float

    def to_dict(self) -> dict[str, Any]:
        quantity = self.quantity.value

        value = self.value

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "quantity": quantity,
                "value": value,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        quantity = TargetQuantity(d.pop("quantity"))

        value = d.pop("value")

        target = cls(
            quantity=quantity,
            value=value,
        )

        return target
