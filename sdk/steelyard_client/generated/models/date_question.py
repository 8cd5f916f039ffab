from __future__ import annotations

from collections.abc import Mapping
from typing import (
    TYPE_CHECKING,
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.target import Target


T = TypeVar("T", bound="DateQuestion")


@_attrs_define
class DateQuestion:
    """When does a constant intake reach a target?

    Attributes:
        intake_kcal (float): Energy per day, kilocalories.
        kind (Literal['date_for_target']):
        target (Target): A value to reach.
        protein_g_per_kg (float | Unset): Protein, grams per kilogram of body mass. `1.6` if absent.
    """

    intake_kcal: float
    kind: Literal["date_for_target"]
    target: Target
    protein_g_per_kg: float | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        intake_kcal = self.intake_kcal

        kind = self.kind

        target = self.target.to_dict()

        protein_g_per_kg = self.protein_g_per_kg

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "intake_kcal": intake_kcal,
                "kind": kind,
                "target": target,
            }
        )
        if protein_g_per_kg is not UNSET:
            field_dict["protein_g_per_kg"] = protein_g_per_kg

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.target import Target  # noqa: PLC0415

        d = dict(src_dict)
        intake_kcal = d.pop("intake_kcal")

        kind = cast(Literal["date_for_target"], d.pop("kind"))
        if kind != "date_for_target":
            raise ValueError(f"kind must match const 'date_for_target', got '{kind}'")

        target = Target.from_dict(d.pop("target"))

        protein_g_per_kg = d.pop("protein_g_per_kg", UNSET)

        date_question = cls(
            intake_kcal=intake_kcal,
            kind=kind,
            target=target,
            protein_g_per_kg=protein_g_per_kg,
        )

        return date_question
