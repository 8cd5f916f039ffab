from __future__ import annotations

from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

from ..models.density_conversion import DensityConversion
from ..models.skinfold_method import SkinfoldMethod
from ..types import UNSET, Unset

T = TypeVar("T", bound="SkinfoldMeasurement")


@_attrs_define
class SkinfoldMeasurement:
    """Skinfolds by caliper at the sites that the equation needs.

    `jackson_pollock_3`: chest, abdomen, thigh (men), triceps, suprailiac, thigh (women). `jackson_pollock_7`: chest,
    midaxillary, triceps, subscapular, abdomen, suprailiac, thigh. `durnin_womersley_4`: biceps, triceps,
    subscapular, suprailiac.

        Attributes:
            equation (SkinfoldMethod): Which equation, hence which sites.
            kind (Literal['skinfolds']):
            abdomen_mm (float | None | Unset): Skinfold at this site, millimetres.
            biceps_mm (float | None | Unset): Skinfold at this site, millimetres.
            chest_mm (float | None | Unset): Skinfold at this site, millimetres.
            conversion (DensityConversion | Unset): How body density becomes body fat.
            midaxillary_mm (float | None | Unset): Skinfold at this site, millimetres.
            subscapular_mm (float | None | Unset): Skinfold at this site, millimetres.
            suprailiac_mm (float | None | Unset): Skinfold at this site, millimetres.
            thigh_mm (float | None | Unset): Skinfold at this site, millimetres.
            triceps_mm (float | None | Unset): Skinfold at this site, millimetres.
    """

    equation: SkinfoldMethod
    kind: Literal["skinfolds"]
    abdomen_mm: float | None | Unset = UNSET
    biceps_mm: float | None | Unset = UNSET
    chest_mm: float | None | Unset = UNSET
    conversion: DensityConversion | Unset = UNSET
    midaxillary_mm: float | None | Unset = UNSET
    subscapular_mm: float | None | Unset = UNSET
    suprailiac_mm: float | None | Unset = UNSET
    thigh_mm: float | None | Unset = UNSET
    triceps_mm: float | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        equation = self.equation.value

        kind = self.kind

        abdomen_mm: float | None | Unset
        if isinstance(self.abdomen_mm, Unset):
            abdomen_mm = UNSET
        else:
            abdomen_mm = self.abdomen_mm

        biceps_mm: float | None | Unset
        if isinstance(self.biceps_mm, Unset):
            biceps_mm = UNSET
        else:
            biceps_mm = self.biceps_mm

        chest_mm: float | None | Unset
        if isinstance(self.chest_mm, Unset):
            chest_mm = UNSET
        else:
            chest_mm = self.chest_mm

        conversion: str | Unset = UNSET
        if not isinstance(self.conversion, Unset):
            conversion = self.conversion.value

        midaxillary_mm: float | None | Unset
        if isinstance(self.midaxillary_mm, Unset):
            midaxillary_mm = UNSET
        else:
            midaxillary_mm = self.midaxillary_mm

        subscapular_mm: float | None | Unset
        if isinstance(self.subscapular_mm, Unset):
            subscapular_mm = UNSET
        else:
            subscapular_mm = self.subscapular_mm

        suprailiac_mm: float | None | Unset
        if isinstance(self.suprailiac_mm, Unset):
            suprailiac_mm = UNSET
        else:
            suprailiac_mm = self.suprailiac_mm

        thigh_mm: float | None | Unset
        if isinstance(self.thigh_mm, Unset):
            thigh_mm = UNSET
        else:
            thigh_mm = self.thigh_mm

        triceps_mm: float | None | Unset
        if isinstance(self.triceps_mm, Unset):
            triceps_mm = UNSET
        else:
            triceps_mm = self.triceps_mm

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "equation": equation,
                "kind": kind,
            }
        )
        if abdomen_mm is not UNSET:
            field_dict["abdomen_mm"] = abdomen_mm
        if biceps_mm is not UNSET:
            field_dict["biceps_mm"] = biceps_mm
        if chest_mm is not UNSET:
            field_dict["chest_mm"] = chest_mm
        if conversion is not UNSET:
            field_dict["conversion"] = conversion
        if midaxillary_mm is not UNSET:
            field_dict["midaxillary_mm"] = midaxillary_mm
        if subscapular_mm is not UNSET:
            field_dict["subscapular_mm"] = subscapular_mm
        if suprailiac_mm is not UNSET:
            field_dict["suprailiac_mm"] = suprailiac_mm
        if thigh_mm is not UNSET:
            field_dict["thigh_mm"] = thigh_mm
        if triceps_mm is not UNSET:
            field_dict["triceps_mm"] = triceps_mm

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        equation = SkinfoldMethod(d.pop("equation"))

        kind = cast(Literal["skinfolds"], d.pop("kind"))
        if kind != "skinfolds":
            raise ValueError(f"kind must match const 'skinfolds', got '{kind}'")

        def _parse_abdomen_mm(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        abdomen_mm = _parse_abdomen_mm(d.pop("abdomen_mm", UNSET))

        def _parse_biceps_mm(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        biceps_mm = _parse_biceps_mm(d.pop("biceps_mm", UNSET))

        def _parse_chest_mm(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        chest_mm = _parse_chest_mm(d.pop("chest_mm", UNSET))

        _conversion = d.pop("conversion", UNSET)
        conversion: DensityConversion | Unset
        if isinstance(_conversion, Unset):
            conversion = UNSET
        else:
            conversion = DensityConversion(_conversion)

        def _parse_midaxillary_mm(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        midaxillary_mm = _parse_midaxillary_mm(d.pop("midaxillary_mm", UNSET))

        def _parse_subscapular_mm(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        subscapular_mm = _parse_subscapular_mm(d.pop("subscapular_mm", UNSET))

        def _parse_suprailiac_mm(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        suprailiac_mm = _parse_suprailiac_mm(d.pop("suprailiac_mm", UNSET))

        def _parse_thigh_mm(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        thigh_mm = _parse_thigh_mm(d.pop("thigh_mm", UNSET))

        def _parse_triceps_mm(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        triceps_mm = _parse_triceps_mm(d.pop("triceps_mm", UNSET))

        skinfold_measurement = cls(
            equation=equation,
            kind=kind,
            abdomen_mm=abdomen_mm,
            biceps_mm=biceps_mm,
            chest_mm=chest_mm,
            conversion=conversion,
            midaxillary_mm=midaxillary_mm,
            subscapular_mm=subscapular_mm,
            suprailiac_mm=suprailiac_mm,
            thigh_mm=thigh_mm,
            triceps_mm=triceps_mm,
        )

        return skinfold_measurement
