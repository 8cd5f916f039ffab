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
from ..models.pace import Pace
from ..types import UNSET, Unset

T = TypeVar("T", bound="Gain")


@_attrs_define
class Gain:
    """A measured surplus: for some weeks (12 by default), or until a settled weight is reached.

    Attributes:
        kind (Literal['gain']):
        carbohydrate_preference (CarbohydratePreference | Unset): How the energy left after protein is shared between
            carbohydrate and fat.
        fat_ceiling_fraction (float | None | Unset): Body fat at which to stop and consider a cut: the weeks left are a
            hold. A common value by default.
        pace (Pace | Unset): How fast somebody would like to go, where the size of a phase is left open.
        surplus_kcal (float | None | Unset): Daily surplus; set by training status, lean mass and `pace` by default.
        target_weight_kg (float | None | Unset): Weight to reach once carried mass has settled, kilograms.
        weeks (int | None | Unset): Length in weeks.
    """

    kind: Literal["gain"]
    carbohydrate_preference: CarbohydratePreference | Unset = UNSET
    fat_ceiling_fraction: float | None | Unset = UNSET
    pace: Pace | Unset = UNSET
    surplus_kcal: float | None | Unset = UNSET
    target_weight_kg: float | None | Unset = UNSET
    weeks: int | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        carbohydrate_preference: str | Unset = UNSET
        if not isinstance(self.carbohydrate_preference, Unset):
            carbohydrate_preference = self.carbohydrate_preference.value

        fat_ceiling_fraction: float | None | Unset
        if isinstance(self.fat_ceiling_fraction, Unset):
            fat_ceiling_fraction = UNSET
        else:
            fat_ceiling_fraction = self.fat_ceiling_fraction

        pace: str | Unset = UNSET
        if not isinstance(self.pace, Unset):
            pace = self.pace.value

        surplus_kcal: float | None | Unset
        if isinstance(self.surplus_kcal, Unset):
            surplus_kcal = UNSET
        else:
            surplus_kcal = self.surplus_kcal

        target_weight_kg: float | None | Unset
        if isinstance(self.target_weight_kg, Unset):
            target_weight_kg = UNSET
        else:
            target_weight_kg = self.target_weight_kg

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
        if fat_ceiling_fraction is not UNSET:
            field_dict["fat_ceiling_fraction"] = fat_ceiling_fraction
        if pace is not UNSET:
            field_dict["pace"] = pace
        if surplus_kcal is not UNSET:
            field_dict["surplus_kcal"] = surplus_kcal
        if target_weight_kg is not UNSET:
            field_dict["target_weight_kg"] = target_weight_kg
        if weeks is not UNSET:
            field_dict["weeks"] = weeks

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = cast(Literal["gain"], d.pop("kind"))
        if kind != "gain":
            raise ValueError(f"kind must match const 'gain', got '{kind}'")

        _carbohydrate_preference = d.pop("carbohydrate_preference", UNSET)
        carbohydrate_preference: CarbohydratePreference | Unset
        if isinstance(_carbohydrate_preference, Unset):
            carbohydrate_preference = UNSET
        else:
            carbohydrate_preference = CarbohydratePreference(_carbohydrate_preference)

        def _parse_fat_ceiling_fraction(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        fat_ceiling_fraction = _parse_fat_ceiling_fraction(
            d.pop("fat_ceiling_fraction", UNSET)
        )

        _pace = d.pop("pace", UNSET)
        pace: Pace | Unset
        if isinstance(_pace, Unset):
            pace = UNSET
        else:
            pace = Pace(_pace)

        def _parse_surplus_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        surplus_kcal = _parse_surplus_kcal(d.pop("surplus_kcal", UNSET))

        def _parse_target_weight_kg(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        target_weight_kg = _parse_target_weight_kg(d.pop("target_weight_kg", UNSET))

        def _parse_weeks(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        weeks = _parse_weeks(d.pop("weeks", UNSET))

        gain = cls(
            kind=kind,
            carbohydrate_preference=carbohydrate_preference,
            fat_ceiling_fraction=fat_ceiling_fraction,
            pace=pace,
            surplus_kcal=surplus_kcal,
            target_weight_kg=target_weight_kg,
            weeks=weeks,
        )

        return gain
