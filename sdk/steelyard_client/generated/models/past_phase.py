from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.phase_kind import PhaseKind
from ..types import UNSET, Unset

T = TypeVar("T", bound="PastPhase")


@_attrs_define
class PastPhase:
    """A phase that is over. Weights, or else body fat, at both ends say how fast it was.

    Attributes:
        kind (PhaseKind): What a phase is for.
        start_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        weeks (int): Length in weeks.
        end_fat_fraction (float | None | Unset): Body fat as a fraction of body mass, 0 to 1.
        end_weight_kg (float | None | Unset): Body mass in kilograms.
        start_fat_fraction (float | None | Unset): Body fat as a fraction of body mass, 0 to 1.
        start_weight_kg (float | None | Unset): Body mass in kilograms.
    """

    kind: PhaseKind
    start_date: datetime.date
    weeks: int
    end_fat_fraction: float | None | Unset = UNSET
    end_weight_kg: float | None | Unset = UNSET
    start_fat_fraction: float | None | Unset = UNSET
    start_weight_kg: float | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind.value

        start_date = self.start_date.isoformat()

        weeks = self.weeks

        end_fat_fraction: float | None | Unset
        if isinstance(self.end_fat_fraction, Unset):
            end_fat_fraction = UNSET
        else:
            end_fat_fraction = self.end_fat_fraction

        end_weight_kg: float | None | Unset
        if isinstance(self.end_weight_kg, Unset):
            end_weight_kg = UNSET
        else:
            end_weight_kg = self.end_weight_kg

        start_fat_fraction: float | None | Unset
        if isinstance(self.start_fat_fraction, Unset):
            start_fat_fraction = UNSET
        else:
            start_fat_fraction = self.start_fat_fraction

        start_weight_kg: float | None | Unset
        if isinstance(self.start_weight_kg, Unset):
            start_weight_kg = UNSET
        else:
            start_weight_kg = self.start_weight_kg

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
                "start_date": start_date,
                "weeks": weeks,
            }
        )
        if end_fat_fraction is not UNSET:
            field_dict["end_fat_fraction"] = end_fat_fraction
        if end_weight_kg is not UNSET:
            field_dict["end_weight_kg"] = end_weight_kg
        if start_fat_fraction is not UNSET:
            field_dict["start_fat_fraction"] = start_fat_fraction
        if start_weight_kg is not UNSET:
            field_dict["start_weight_kg"] = start_weight_kg

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = PhaseKind(d.pop("kind"))

        start_date = datetime.date.fromisoformat(d.pop("start_date"))

        weeks = d.pop("weeks")

        def _parse_end_fat_fraction(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        end_fat_fraction = _parse_end_fat_fraction(d.pop("end_fat_fraction", UNSET))

        def _parse_end_weight_kg(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        end_weight_kg = _parse_end_weight_kg(d.pop("end_weight_kg", UNSET))

        def _parse_start_fat_fraction(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        start_fat_fraction = _parse_start_fat_fraction(
            d.pop("start_fat_fraction", UNSET)
        )

        def _parse_start_weight_kg(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        start_weight_kg = _parse_start_weight_kg(d.pop("start_weight_kg", UNSET))

        past_phase = cls(
            kind=kind,
            start_date=start_date,
            weeks=weeks,
            end_fat_fraction=end_fat_fraction,
            end_weight_kg=end_weight_kg,
            start_fat_fraction=start_fat_fraction,
            start_weight_kg=start_weight_kg,
        )

        return past_phase
