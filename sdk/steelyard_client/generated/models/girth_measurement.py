from __future__ import annotations

from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="GirthMeasurement")


@_attrs_define
class GirthMeasurement:
    """Girths by tape. Men: neck and abdomen. Women: neck, waist and hip. Unspecified sex: all four.

    Attributes:
        kind (Literal['girths']):
        neck_cm (float): Neck just under the larynx, centimetres.
        abdomen_cm (float | None | Unset): Abdomen at the navel, centimetres; for men.
        hip_cm (float | None | Unset): Hip at its widest, centimetres; for women.
        waist_cm (float | None | Unset): Waist at its narrowest, centimetres; for women.
    """

    kind: Literal["girths"]
    neck_cm: float
    abdomen_cm: float | None | Unset = UNSET
    hip_cm: float | None | Unset = UNSET
    waist_cm: float | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        neck_cm = self.neck_cm

        abdomen_cm: float | None | Unset
        if isinstance(self.abdomen_cm, Unset):
            abdomen_cm = UNSET
        else:
            abdomen_cm = self.abdomen_cm

        hip_cm: float | None | Unset
        if isinstance(self.hip_cm, Unset):
            hip_cm = UNSET
        else:
            hip_cm = self.hip_cm

        waist_cm: float | None | Unset
        if isinstance(self.waist_cm, Unset):
            waist_cm = UNSET
        else:
            waist_cm = self.waist_cm

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
                "neck_cm": neck_cm,
            }
        )
        if abdomen_cm is not UNSET:
            field_dict["abdomen_cm"] = abdomen_cm
        if hip_cm is not UNSET:
            field_dict["hip_cm"] = hip_cm
        if waist_cm is not UNSET:
            field_dict["waist_cm"] = waist_cm

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = cast(Literal["girths"], d.pop("kind"))
        if kind != "girths":
            raise ValueError(f"kind must match const 'girths', got '{kind}'")

        neck_cm = d.pop("neck_cm")

        def _parse_abdomen_cm(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        abdomen_cm = _parse_abdomen_cm(d.pop("abdomen_cm", UNSET))

        def _parse_hip_cm(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        hip_cm = _parse_hip_cm(d.pop("hip_cm", UNSET))

        def _parse_waist_cm(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        waist_cm = _parse_waist_cm(d.pop("waist_cm", UNSET))

        girth_measurement = cls(
            kind=kind,
            neck_cm=neck_cm,
            abdomen_cm=abdomen_cm,
            hip_cm=hip_cm,
            waist_cm=waist_cm,
        )

        return girth_measurement
