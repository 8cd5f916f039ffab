from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="WeekFollowed")


@_attrs_define
class WeekFollowed:
    """A week as planned; copy it from the plan's answer.

    Attributes:
        intake_kcal (float): Energy per day, kilocalories.
        protein_g (float): Protein a day, grams.
        carbohydrate_g (float | None | Unset): Carbohydrate a day; half of the energy by default.
        is_break (bool | Unset): Whether the week is a break at maintenance, which is never corrected. `false` if
            absent.
    """

    intake_kcal: float
    protein_g: float
    carbohydrate_g: float | None | Unset = UNSET
    is_break: bool | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        intake_kcal = self.intake_kcal

        protein_g = self.protein_g

        carbohydrate_g: float | None | Unset
        if isinstance(self.carbohydrate_g, Unset):
            carbohydrate_g = UNSET
        else:
            carbohydrate_g = self.carbohydrate_g

        is_break = self.is_break

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "intake_kcal": intake_kcal,
                "protein_g": protein_g,
            }
        )
        if carbohydrate_g is not UNSET:
            field_dict["carbohydrate_g"] = carbohydrate_g
        if is_break is not UNSET:
            field_dict["is_break"] = is_break

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        intake_kcal = d.pop("intake_kcal")

        protein_g = d.pop("protein_g")

        def _parse_carbohydrate_g(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        carbohydrate_g = _parse_carbohydrate_g(d.pop("carbohydrate_g", UNSET))

        is_break = d.pop("is_break", UNSET)

        week_followed = cls(
            intake_kcal=intake_kcal,
            protein_g=protein_g,
            carbohydrate_g=carbohydrate_g,
            is_break=is_break,
        )

        return week_followed
