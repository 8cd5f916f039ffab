from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.forecast_point import ForecastPoint
    from ..models.guard_rail import GuardRail
    from ..models.note import Note
    from ..models.phase_totals import PhaseTotals


T = TypeVar("T", bound="PhaseSize")


@_attrs_define
class PhaseSize:
    """The phase at one size, with its price: a goal is kept, else the weeks. Inside every guard rail.

    Attributes:
        at_end (ForecastPoint): The body expected at the end of a week.

            Central values are of a body that eats what is told (of a member who is known to keep to clearly less of a
            deficit:
            as much as that). Intervals hold that and, in a deficit, what people in general come to who are given it, or
            this
            member as their state knows them: reaching further towards eating more. Without `adherence` among the sources of
            uncertainty they are of the plan being eaten, alone.
        change (PhaseTotals): What a phase is expected to do from its first to its last day.
        deficit_kcal (float | None): Daily deficit at the start.
        end_date (datetime.date): Last day of the phase.
        guard_rails (list[GuardRail]): Rails that warn of this size.
        intake_kcal (int): Energy a day in the first full week.
        is_planned (bool): Whether `phases` is planned at this size.
        last_intake_kcal (int): Energy a day in the last week; a longer phase sets it anew.
        reasons (list[Note]):
        size (str): `gentle`, `steady` or `brisk`; `own`: as asked or solved for; `largest`: the most that the guard
            rails allow. Extensible.
        surplus_kcal (float | None): Daily surplus of a gain.
        tissue_rate_percent (float): Fat and lean tissue gained a week outside breaks, percent of body mass; negative
            where lost.
        weeks (int): Length of the phase.
    """

    at_end: ForecastPoint
    change: PhaseTotals
    deficit_kcal: float | None
    end_date: datetime.date
    guard_rails: list[GuardRail]
    intake_kcal: int
    is_planned: bool
    last_intake_kcal: int
    reasons: list[Note]
    size: str
    surplus_kcal: float | None
    tissue_rate_percent: float
    weeks: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        at_end = self.at_end.to_dict()

        change = self.change.to_dict()

        deficit_kcal: float | None
        deficit_kcal = self.deficit_kcal

        end_date = self.end_date.isoformat()

        guard_rails = []
        for guard_rails_item_data in self.guard_rails:
            guard_rails_item = guard_rails_item_data.to_dict()
            guard_rails.append(guard_rails_item)

        intake_kcal = self.intake_kcal

        is_planned = self.is_planned

        last_intake_kcal = self.last_intake_kcal

        reasons = []
        for reasons_item_data in self.reasons:
            reasons_item = reasons_item_data.to_dict()
            reasons.append(reasons_item)

        size = self.size

        surplus_kcal: float | None
        surplus_kcal = self.surplus_kcal

        tissue_rate_percent = self.tissue_rate_percent

        weeks = self.weeks

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "at_end": at_end,
                "change": change,
                "deficit_kcal": deficit_kcal,
                "end_date": end_date,
                "guard_rails": guard_rails,
                "intake_kcal": intake_kcal,
                "is_planned": is_planned,
                "last_intake_kcal": last_intake_kcal,
                "reasons": reasons,
                "size": size,
                "surplus_kcal": surplus_kcal,
                "tissue_rate_percent": tissue_rate_percent,
                "weeks": weeks,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.forecast_point import ForecastPoint  # noqa: PLC0415
        from ..models.guard_rail import GuardRail  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.phase_totals import PhaseTotals  # noqa: PLC0415

        d = dict(src_dict)
        at_end = ForecastPoint.from_dict(d.pop("at_end"))

        change = PhaseTotals.from_dict(d.pop("change"))

        def _parse_deficit_kcal(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        deficit_kcal = _parse_deficit_kcal(d.pop("deficit_kcal"))

        end_date = datetime.date.fromisoformat(d.pop("end_date"))

        guard_rails = []
        _guard_rails = d.pop("guard_rails")
        for guard_rails_item_data in _guard_rails:
            guard_rails_item = GuardRail.from_dict(guard_rails_item_data)

            guard_rails.append(guard_rails_item)

        intake_kcal = d.pop("intake_kcal")

        is_planned = d.pop("is_planned")

        last_intake_kcal = d.pop("last_intake_kcal")

        reasons = []
        _reasons = d.pop("reasons")
        for reasons_item_data in _reasons:
            reasons_item = Note.from_dict(reasons_item_data)

            reasons.append(reasons_item)

        size = d.pop("size")

        def _parse_surplus_kcal(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        surplus_kcal = _parse_surplus_kcal(d.pop("surplus_kcal"))

        tissue_rate_percent = d.pop("tissue_rate_percent")

        weeks = d.pop("weeks")

        phase_size = cls(
            at_end=at_end,
            change=change,
            deficit_kcal=deficit_kcal,
            end_date=end_date,
            guard_rails=guard_rails,
            intake_kcal=intake_kcal,
            is_planned=is_planned,
            last_intake_kcal=last_intake_kcal,
            reasons=reasons,
            size=size,
            surplus_kcal=surplus_kcal,
            tissue_rate_percent=tissue_rate_percent,
            weeks=weeks,
        )

        phase_size.additional_properties = d
        return phase_size

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
