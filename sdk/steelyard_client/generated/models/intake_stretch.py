from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.training_session import TrainingSession


T = TypeVar("T", bound="IntakeStretch")


@_attrs_define
class IntakeStretch:
    """An intake held for some weeks. What is not given stays as usual.

    Attributes:
        intake_kcal (float): Energy a day.
        weeks (int): How long, in weeks.
        added_sessions (list[TrainingSession] | Unset): Training added to the usual; it raises expenditure. `[]` if
            absent.
        carbohydrate_g (float | None | Unset): Carbohydrate a day; half of the energy by default.
        protein_g_per_kg (float | Unset): Protein, grams per kilogram of body mass. `1.6` if absent.
        sodium_change_mg (float | Unset): Sodium a day against the usual. `0.0` if absent.
    """

    intake_kcal: float
    weeks: int
    added_sessions: list[TrainingSession] | Unset = UNSET
    carbohydrate_g: float | None | Unset = UNSET
    protein_g_per_kg: float | Unset = UNSET
    sodium_change_mg: float | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        intake_kcal = self.intake_kcal

        weeks = self.weeks

        added_sessions: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.added_sessions, Unset):
            added_sessions = []
            for added_sessions_item_data in self.added_sessions:
                added_sessions_item = added_sessions_item_data.to_dict()
                added_sessions.append(added_sessions_item)

        carbohydrate_g: float | None | Unset
        if isinstance(self.carbohydrate_g, Unset):
            carbohydrate_g = UNSET
        else:
            carbohydrate_g = self.carbohydrate_g

        protein_g_per_kg = self.protein_g_per_kg

        sodium_change_mg = self.sodium_change_mg

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "intake_kcal": intake_kcal,
                "weeks": weeks,
            }
        )
        if added_sessions is not UNSET:
            field_dict["added_sessions"] = added_sessions
        if carbohydrate_g is not UNSET:
            field_dict["carbohydrate_g"] = carbohydrate_g
        if protein_g_per_kg is not UNSET:
            field_dict["protein_g_per_kg"] = protein_g_per_kg
        if sodium_change_mg is not UNSET:
            field_dict["sodium_change_mg"] = sodium_change_mg

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.training_session import TrainingSession  # noqa: PLC0415

        d = dict(src_dict)
        intake_kcal = d.pop("intake_kcal")

        weeks = d.pop("weeks")

        _added_sessions = d.pop("added_sessions", UNSET)
        added_sessions: list[TrainingSession] | Unset = UNSET
        if _added_sessions is not UNSET:
            added_sessions = []
            for added_sessions_item_data in _added_sessions:
                added_sessions_item = TrainingSession.from_dict(
                    added_sessions_item_data
                )

                added_sessions.append(added_sessions_item)

        def _parse_carbohydrate_g(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        carbohydrate_g = _parse_carbohydrate_g(d.pop("carbohydrate_g", UNSET))

        protein_g_per_kg = d.pop("protein_g_per_kg", UNSET)

        sodium_change_mg = d.pop("sodium_change_mg", UNSET)

        intake_stretch = cls(
            intake_kcal=intake_kcal,
            weeks=weeks,
            added_sessions=added_sessions,
            carbohydrate_g=carbohydrate_g,
            protein_g_per_kg=protein_g_per_kg,
            sodium_change_mg=sodium_change_mg,
        )

        return intake_stretch
