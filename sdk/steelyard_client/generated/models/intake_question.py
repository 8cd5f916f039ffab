from __future__ import annotations

import datetime
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


T = TypeVar("T", bound="IntakeQuestion")


@_attrs_define
class IntakeQuestion:
    """Which constant intake reaches a target by a date?

    Attributes:
        by_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        kind (Literal['intake_for_target']):
        target (Target): A value to reach.
        protein_g_per_kg (float | Unset): Protein, grams per kilogram of body mass. `1.6` if absent.
    """

    by_date: datetime.date
    kind: Literal["intake_for_target"]
    target: Target
    protein_g_per_kg: float | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        by_date = self.by_date.isoformat()

        kind = self.kind

        target = self.target.to_dict()

        protein_g_per_kg = self.protein_g_per_kg

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "by_date": by_date,
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
        by_date = datetime.date.fromisoformat(d.pop("by_date"))

        kind = cast(Literal["intake_for_target"], d.pop("kind"))
        if kind != "intake_for_target":
            raise ValueError(f"kind must match const 'intake_for_target', got '{kind}'")

        target = Target.from_dict(d.pop("target"))

        protein_g_per_kg = d.pop("protein_g_per_kg", UNSET)

        intake_question = cls(
            by_date=by_date,
            kind=kind,
            target=target,
            protein_g_per_kg=protein_g_per_kg,
        )

        return intake_question
