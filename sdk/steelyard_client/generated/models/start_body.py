from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define

from ..models.body_fat_method import BodyFatMethod

if TYPE_CHECKING:
    from ..models.mass_figure import MassFigure


T = TypeVar("T", bound="StartBody")


@_attrs_define
class StartBody:
    """The body on the phase's first morning.

    Attributes:
        fat_is_measured (bool): Whether a reading is behind it, rather than height and weight.
        fat_kg (MassFigure): A mass with its error.
        fat_method (BodyFatMethod): How a body-fat reading was taken, which sets its error.
        weight_kg (MassFigure): A mass with its error.
    """

    fat_is_measured: bool
    fat_kg: MassFigure
    fat_method: BodyFatMethod
    weight_kg: MassFigure

    def to_dict(self) -> dict[str, Any]:
        fat_is_measured = self.fat_is_measured

        fat_kg = self.fat_kg.to_dict()

        fat_method = self.fat_method.value

        weight_kg = self.weight_kg.to_dict()

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "fat_is_measured": fat_is_measured,
                "fat_kg": fat_kg,
                "fat_method": fat_method,
                "weight_kg": weight_kg,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.mass_figure import MassFigure  # noqa: PLC0415

        d = dict(src_dict)
        fat_is_measured = d.pop("fat_is_measured")

        fat_kg = MassFigure.from_dict(d.pop("fat_kg"))

        fat_method = BodyFatMethod(d.pop("fat_method"))

        weight_kg = MassFigure.from_dict(d.pop("weight_kg"))

        start_body = cls(
            fat_is_measured=fat_is_measured,
            fat_kg=fat_kg,
            fat_method=fat_method,
            weight_kg=weight_kg,
        )

        return start_body
