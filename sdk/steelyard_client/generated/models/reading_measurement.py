from __future__ import annotations

from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

from ..models.body_fat_method import BodyFatMethod

T = TypeVar("T", bound="ReadingMeasurement")


@_attrs_define
class ReadingMeasurement:
    """Body fat as a device or a person gave it, and how (the method sets its error).

    Attributes:
        fat_fraction (float): Body fat as a fraction of body mass, 0 to 1.
        kind (Literal['reading']):
        method (BodyFatMethod): How a body-fat reading was taken, which sets its error.
    """

    fat_fraction: float
    kind: Literal["reading"]
    method: BodyFatMethod

    def to_dict(self) -> dict[str, Any]:
        fat_fraction = self.fat_fraction

        kind = self.kind

        method = self.method.value

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "fat_fraction": fat_fraction,
                "kind": kind,
                "method": method,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        fat_fraction = d.pop("fat_fraction")

        kind = cast(Literal["reading"], d.pop("kind"))
        if kind != "reading":
            raise ValueError(f"kind must match const 'reading', got '{kind}'")

        method = BodyFatMethod(d.pop("method"))

        reading_measurement = cls(
            fat_fraction=fat_fraction,
            kind=kind,
            method=method,
        )

        return reading_measurement
