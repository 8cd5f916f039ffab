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

T = TypeVar("T", bound="OwnStrategy")


@_attrs_define
class OwnStrategy:
    """A strategy in numbers. Rails cap what is too much of any.

    Attributes:
        kind (Literal['own']):
        surplus_kcal (float): Daily surplus of a gain; 0 for none.
        cut_at_fat_fraction (float | None | Unset): Body fat at which a gain ends and a cut starts, where one may. By
            default there is no cut, and a gain ends at the upper end of the band.
        cut_to_fat_fraction (float | None | Unset): Body fat at which a cut ends. Without it a gain stops at
            `cut_at_fat_fraction`, uncut.
        deficit_kcal (float | None | Unset): Daily deficit at the start of a cut; as plans size it by default.
        label (str | Unset): A name for the answer. `"own"` if absent.
        longest_cut_weeks (int | Unset): Longest cut; up to 6 is a mini-cut. `6` if absent.
        maintenance_weeks (int | Unset): Maintenance after each cut. `1` if absent.
    """

    kind: Literal["own"]
    surplus_kcal: float
    cut_at_fat_fraction: float | None | Unset = UNSET
    cut_to_fat_fraction: float | None | Unset = UNSET
    deficit_kcal: float | None | Unset = UNSET
    label: str | Unset = UNSET
    longest_cut_weeks: int | Unset = UNSET
    maintenance_weeks: int | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        surplus_kcal = self.surplus_kcal

        cut_at_fat_fraction: float | None | Unset
        if isinstance(self.cut_at_fat_fraction, Unset):
            cut_at_fat_fraction = UNSET
        else:
            cut_at_fat_fraction = self.cut_at_fat_fraction

        cut_to_fat_fraction: float | None | Unset
        if isinstance(self.cut_to_fat_fraction, Unset):
            cut_to_fat_fraction = UNSET
        else:
            cut_to_fat_fraction = self.cut_to_fat_fraction

        deficit_kcal: float | None | Unset
        if isinstance(self.deficit_kcal, Unset):
            deficit_kcal = UNSET
        else:
            deficit_kcal = self.deficit_kcal

        label = self.label

        longest_cut_weeks = self.longest_cut_weeks

        maintenance_weeks = self.maintenance_weeks

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
                "surplus_kcal": surplus_kcal,
            }
        )
        if cut_at_fat_fraction is not UNSET:
            field_dict["cut_at_fat_fraction"] = cut_at_fat_fraction
        if cut_to_fat_fraction is not UNSET:
            field_dict["cut_to_fat_fraction"] = cut_to_fat_fraction
        if deficit_kcal is not UNSET:
            field_dict["deficit_kcal"] = deficit_kcal
        if label is not UNSET:
            field_dict["label"] = label
        if longest_cut_weeks is not UNSET:
            field_dict["longest_cut_weeks"] = longest_cut_weeks
        if maintenance_weeks is not UNSET:
            field_dict["maintenance_weeks"] = maintenance_weeks

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = cast(Literal["own"], d.pop("kind"))
        if kind != "own":
            raise ValueError(f"kind must match const 'own', got '{kind}'")

        surplus_kcal = d.pop("surplus_kcal")

        def _parse_cut_at_fat_fraction(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        cut_at_fat_fraction = _parse_cut_at_fat_fraction(
            d.pop("cut_at_fat_fraction", UNSET)
        )

        def _parse_cut_to_fat_fraction(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        cut_to_fat_fraction = _parse_cut_to_fat_fraction(
            d.pop("cut_to_fat_fraction", UNSET)
        )

        def _parse_deficit_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        deficit_kcal = _parse_deficit_kcal(d.pop("deficit_kcal", UNSET))

        label = d.pop("label", UNSET)

        longest_cut_weeks = d.pop("longest_cut_weeks", UNSET)

        maintenance_weeks = d.pop("maintenance_weeks", UNSET)

        own_strategy = cls(
            kind=kind,
            surplus_kcal=surplus_kcal,
            cut_at_fat_fraction=cut_at_fat_fraction,
            cut_to_fat_fraction=cut_to_fat_fraction,
            deficit_kcal=deficit_kcal,
            label=label,
            longest_cut_weeks=longest_cut_weeks,
            maintenance_weeks=maintenance_weeks,
        )

        return own_strategy
