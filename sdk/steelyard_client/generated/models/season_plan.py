from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.guard_rail import GuardRail
    from ..models.note import Note
    from ..models.season_phase import SeasonPhase
    from ..models.season_totals import SeasonTotals
    from ..models.season_week import SeasonWeek
    from ..models.strategy_numbers import StrategyNumbers


T = TypeVar("T", bound="SeasonPlan")


@_attrs_define
class SeasonPlan:
    """A season laid out.

    Attributes:
        guard_rails (list[GuardRail]): Rails that capped, warned or refused.
        phases (list[SeasonPhase]):
        reasons (list[Note]):
        strategy (StrategyNumbers): A strategy as it was followed. Cut numbers are null where it never cuts.
        totals (SeasonTotals): What the season as planned comes to, with 80 % intervals.
        weeks (list[SeasonWeek]):
    """

    guard_rails: list[GuardRail]
    phases: list[SeasonPhase]
    reasons: list[Note]
    strategy: StrategyNumbers
    totals: SeasonTotals
    weeks: list[SeasonWeek]
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        guard_rails = []
        for guard_rails_item_data in self.guard_rails:
            guard_rails_item = guard_rails_item_data.to_dict()
            guard_rails.append(guard_rails_item)

        phases = []
        for phases_item_data in self.phases:
            phases_item = phases_item_data.to_dict()
            phases.append(phases_item)

        reasons = []
        for reasons_item_data in self.reasons:
            reasons_item = reasons_item_data.to_dict()
            reasons.append(reasons_item)

        strategy = self.strategy.to_dict()

        totals = self.totals.to_dict()

        weeks = []
        for weeks_item_data in self.weeks:
            weeks_item = weeks_item_data.to_dict()
            weeks.append(weeks_item)

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "guard_rails": guard_rails,
                "phases": phases,
                "reasons": reasons,
                "strategy": strategy,
                "totals": totals,
                "weeks": weeks,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.guard_rail import GuardRail  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.season_phase import SeasonPhase  # noqa: PLC0415
        from ..models.season_totals import SeasonTotals  # noqa: PLC0415
        from ..models.season_week import SeasonWeek  # noqa: PLC0415
        from ..models.strategy_numbers import StrategyNumbers  # noqa: PLC0415

        d = dict(src_dict)
        guard_rails = []
        _guard_rails = d.pop("guard_rails")
        for guard_rails_item_data in _guard_rails:
            guard_rails_item = GuardRail.from_dict(guard_rails_item_data)

            guard_rails.append(guard_rails_item)

        phases = []
        _phases = d.pop("phases")
        for phases_item_data in _phases:
            phases_item = SeasonPhase.from_dict(phases_item_data)

            phases.append(phases_item)

        reasons = []
        _reasons = d.pop("reasons")
        for reasons_item_data in _reasons:
            reasons_item = Note.from_dict(reasons_item_data)

            reasons.append(reasons_item)

        strategy = StrategyNumbers.from_dict(d.pop("strategy"))

        totals = SeasonTotals.from_dict(d.pop("totals"))

        weeks = []
        _weeks = d.pop("weeks")
        for weeks_item_data in _weeks:
            weeks_item = SeasonWeek.from_dict(weeks_item_data)

            weeks.append(weeks_item)

        season_plan = cls(
            guard_rails=guard_rails,
            phases=phases,
            reasons=reasons,
            strategy=strategy,
            totals=totals,
            weeks=weeks,
        )

        season_plan.additional_properties = d
        return season_plan

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
