from __future__ import annotations

from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

T = TypeVar("T", bound="BmiMeasurement")


@_attrs_define
class BmiMeasurement:
    """Body fat from the height and weight of the request: the last resort.

    Attributes:
        kind (Literal['bmi']):
    """

    kind: Literal["bmi"]

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = cast(Literal["bmi"], d.pop("kind"))
        if kind != "bmi":
            raise ValueError(f"kind must match const 'bmi', got '{kind}'")

        bmi_measurement = cls(
            kind=kind,
        )

        return bmi_measurement
