from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..models.body_fat_method import BodyFatMethod

T = TypeVar("T", bound="BodyFat")


@_attrs_define
class BodyFat:
    """A body-fat reading and how it was taken (the method sets its error).

    Attributes:
        fat_fraction (float): Body fat as a fraction of body mass, 0 to 1.
        method (BodyFatMethod): How a body-fat reading was taken, which sets its error.
    """

    fat_fraction: float
    method: BodyFatMethod

    def to_dict(self) -> dict[str, Any]:
        fat_fraction = self.fat_fraction

        method = self.method.value

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "fat_fraction": fat_fraction,
                "method": method,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        fat_fraction = d.pop("fat_fraction")

        method = BodyFatMethod(d.pop("method"))

        body_fat = cls(
            fat_fraction=fat_fraction,
            method=method,
        )

        return body_fat
