from __future__ import annotations

from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

from ..models.carbohydrate_preference import CarbohydratePreference
from ..types import UNSET, Unset

T = TypeVar("T", bound="MiniCut")


@_attrs_define
class MiniCut:
    """A short, brisk fat-loss phase of 2 to 6 weeks. Give fat, weeks or both; the rest is solved.

    Attributes:
        kind (Literal['mini_cut']):
        carbohydrate_preference (CarbohydratePreference | Unset): How the energy left after protein is shared between
            carbohydrate and fat.
        deficit_kcal (float | None | Unset):
        easing_in_weeks (int | Unset): How many of the first weeks run at half the deficit, to limit hunger; none by
            default. Default: 0.
        fat_loss_kg (float | None | Unset):
        protein_g_per_kg (float | None | Unset):
        weeks (int | None | Unset):
    """

    kind: Literal["mini_cut"]
    carbohydrate_preference: CarbohydratePreference | Unset = UNSET
    deficit_kcal: float | None | Unset = UNSET
    easing_in_weeks: int | Unset = 0
    fat_loss_kg: float | None | Unset = UNSET
    protein_g_per_kg: float | None | Unset = UNSET
    weeks: int | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        carbohydrate_preference: str | Unset = UNSET
        if not isinstance(self.carbohydrate_preference, Unset):
            carbohydrate_preference = self.carbohydrate_preference.value

        deficit_kcal: float | None | Unset
        if isinstance(self.deficit_kcal, Unset):
            deficit_kcal = UNSET
        else:
            deficit_kcal = self.deficit_kcal

        easing_in_weeks = self.easing_in_weeks

        fat_loss_kg: float | None | Unset
        if isinstance(self.fat_loss_kg, Unset):
            fat_loss_kg = UNSET
        else:
            fat_loss_kg = self.fat_loss_kg

        protein_g_per_kg: float | None | Unset
        if isinstance(self.protein_g_per_kg, Unset):
            protein_g_per_kg = UNSET
        else:
            protein_g_per_kg = self.protein_g_per_kg

        weeks: int | None | Unset
        if isinstance(self.weeks, Unset):
            weeks = UNSET
        else:
            weeks = self.weeks

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
            }
        )
        if carbohydrate_preference is not UNSET:
            field_dict["carbohydrate_preference"] = carbohydrate_preference
        if deficit_kcal is not UNSET:
            field_dict["deficit_kcal"] = deficit_kcal
        if easing_in_weeks is not UNSET:
            field_dict["easing_in_weeks"] = easing_in_weeks
        if fat_loss_kg is not UNSET:
            field_dict["fat_loss_kg"] = fat_loss_kg
        if protein_g_per_kg is not UNSET:
            field_dict["protein_g_per_kg"] = protein_g_per_kg
        if weeks is not UNSET:
            field_dict["weeks"] = weeks

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = cast(Literal["mini_cut"], d.pop("kind"))
        if kind != "mini_cut":
            raise ValueError(f"kind must match const 'mini_cut', got '{kind}'")

        _carbohydrate_preference = d.pop("carbohydrate_preference", UNSET)
        carbohydrate_preference: CarbohydratePreference | Unset
        if isinstance(_carbohydrate_preference, Unset):
            carbohydrate_preference = UNSET
        else:
            carbohydrate_preference = CarbohydratePreference(_carbohydrate_preference)

        def _parse_deficit_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        deficit_kcal = _parse_deficit_kcal(d.pop("deficit_kcal", UNSET))

        easing_in_weeks = d.pop("easing_in_weeks", UNSET)

        def _parse_fat_loss_kg(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        fat_loss_kg = _parse_fat_loss_kg(d.pop("fat_loss_kg", UNSET))

        def _parse_protein_g_per_kg(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        protein_g_per_kg = _parse_protein_g_per_kg(d.pop("protein_g_per_kg", UNSET))

        def _parse_weeks(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        weeks = _parse_weeks(d.pop("weeks", UNSET))

        mini_cut = cls(
            kind=kind,
            carbohydrate_preference=carbohydrate_preference,
            deficit_kcal=deficit_kcal,
            easing_in_weeks=easing_in_weeks,
            fat_loss_kg=fat_loss_kg,
            protein_g_per_kg=protein_g_per_kg,
            weeks=weeks,
        )

        return mini_cut
