from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.note import Note
    from ..models.phase_totals import PhaseTotals
    from ..models.plan_week import PlanWeek


T = TypeVar("T", bound="Phase")


@_attrs_define
class Phase:
    """One phase of the plan.

    Attributes:
        cautions (list[Note]):
        change (PhaseTotals): What a phase is expected to do from its first to its last day.
        end_date (datetime.date): Last day of the phase.
        ends_early_when (list[Note]): What ends the phase before its last day.
        guidance (list[Note]): Training and eating reminders.
        kind (str): `mini_cut`, `cut`, `gain` or `maintenance`. Extensible.
        reasons (list[Note]):
        start_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        weeks (list[PlanWeek]):
    """

    cautions: list[Note]
    change: PhaseTotals
    end_date: datetime.date
    ends_early_when: list[Note]
    guidance: list[Note]
    kind: str
    reasons: list[Note]
    start_date: datetime.date
    weeks: list[PlanWeek]
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        cautions = []
        for cautions_item_data in self.cautions:
            cautions_item = cautions_item_data.to_dict()
            cautions.append(cautions_item)

        change = self.change.to_dict()

        end_date = self.end_date.isoformat()

        ends_early_when = []
        for ends_early_when_item_data in self.ends_early_when:
            ends_early_when_item = ends_early_when_item_data.to_dict()
            ends_early_when.append(ends_early_when_item)

        guidance = []
        for guidance_item_data in self.guidance:
            guidance_item = guidance_item_data.to_dict()
            guidance.append(guidance_item)

        kind = self.kind

        reasons = []
        for reasons_item_data in self.reasons:
            reasons_item = reasons_item_data.to_dict()
            reasons.append(reasons_item)

        start_date = self.start_date.isoformat()

        weeks = []
        for weeks_item_data in self.weeks:
            weeks_item = weeks_item_data.to_dict()
            weeks.append(weeks_item)

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "cautions": cautions,
                "change": change,
                "end_date": end_date,
                "ends_early_when": ends_early_when,
                "guidance": guidance,
                "kind": kind,
                "reasons": reasons,
                "start_date": start_date,
                "weeks": weeks,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.note import Note  # noqa: PLC0415
        from ..models.phase_totals import PhaseTotals  # noqa: PLC0415
        from ..models.plan_week import PlanWeek  # noqa: PLC0415

        d = dict(src_dict)
        cautions = []
        _cautions = d.pop("cautions")
        for cautions_item_data in _cautions:
            cautions_item = Note.from_dict(cautions_item_data)

            cautions.append(cautions_item)

        change = PhaseTotals.from_dict(d.pop("change"))

        end_date = datetime.date.fromisoformat(d.pop("end_date"))

        ends_early_when = []
        _ends_early_when = d.pop("ends_early_when")
        for ends_early_when_item_data in _ends_early_when:
            ends_early_when_item = Note.from_dict(ends_early_when_item_data)

            ends_early_when.append(ends_early_when_item)

        guidance = []
        _guidance = d.pop("guidance")
        for guidance_item_data in _guidance:
            guidance_item = Note.from_dict(guidance_item_data)

            guidance.append(guidance_item)

        kind = d.pop("kind")

        reasons = []
        _reasons = d.pop("reasons")
        for reasons_item_data in _reasons:
            reasons_item = Note.from_dict(reasons_item_data)

            reasons.append(reasons_item)

        start_date = datetime.date.fromisoformat(d.pop("start_date"))

        weeks = []
        _weeks = d.pop("weeks")
        for weeks_item_data in _weeks:
            weeks_item = PlanWeek.from_dict(weeks_item_data)

            weeks.append(weeks_item)

        phase = cls(
            cautions=cautions,
            change=change,
            end_date=end_date,
            ends_early_when=ends_early_when,
            guidance=guidance,
            kind=kind,
            reasons=reasons,
            start_date=start_date,
            weeks=weeks,
        )

        phase.additional_properties = d
        return phase

    @property
    def additional_keys(self) -> list[str]:
        return list(self.additional_properties.keys())

    def __getitem__(self, key: str) -> Any:
        return self.additional_properties[key]

    def __setitem__(self, key: str, value: Any) -> None:
        self.additional_properties[key] = value

    def __delitem__(self, key: str) -> None:
        del self.additional_properties[key]

    def __contains__(self, key: str) -> bool:
        return key in self.additional_properties
