from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.broken_limit import BrokenLimit
    from ..models.guard_rail import GuardRail
    from ..models.note import Note
    from ..models.outcome_intervals import OutcomeIntervals
    from ..models.season_outcome import SeasonOutcome
    from ..models.strategy_numbers import StrategyNumbers


T = TypeVar("T", bound="ComparedStrategy")


@_attrs_define
class ComparedStrategy:
    """One strategy of a comparison.

    Attributes:
        broken_limits (list[BrokenLimit]): Limits that are not kept.
        expected (SeasonOutcome): What a season comes to for the expected body.
        feasible (bool): Whether every limit is kept for the expected body.
        guard_rails (list[GuardRail]): Rails that capped or warned.
        intervals (OutcomeIntervals): Median and 80 % interval over the draws of those who follow the strategy.
        label (str): Name of a ready-made strategy, or the label given.
        strategy (StrategyNumbers): A strategy as it was followed. Cut numbers are null where it never cuts.
        reasons (list[Note] | Unset): Why it holds where it would gain, and its cuts.
    """

    broken_limits: list[BrokenLimit]
    expected: SeasonOutcome
    feasible: bool
    guard_rails: list[GuardRail]
    intervals: OutcomeIntervals
    label: str
    strategy: StrategyNumbers
    reasons: list[Note] | Unset = UNSET
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        broken_limits = []
        for broken_limits_item_data in self.broken_limits:
            broken_limits_item = broken_limits_item_data.to_dict()
            broken_limits.append(broken_limits_item)

        expected = self.expected.to_dict()

        feasible = self.feasible

        guard_rails = []
        for guard_rails_item_data in self.guard_rails:
            guard_rails_item = guard_rails_item_data.to_dict()
            guard_rails.append(guard_rails_item)

        intervals = self.intervals.to_dict()

        label = self.label

        strategy = self.strategy.to_dict()

        reasons: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.reasons, Unset):
            reasons = []
            for reasons_item_data in self.reasons:
                reasons_item = reasons_item_data.to_dict()
                reasons.append(reasons_item)

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "broken_limits": broken_limits,
                "expected": expected,
                "feasible": feasible,
                "guard_rails": guard_rails,
                "intervals": intervals,
                "label": label,
                "strategy": strategy,
            }
        )
        if reasons is not UNSET:
            field_dict["reasons"] = reasons

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.broken_limit import BrokenLimit  # noqa: PLC0415
        from ..models.guard_rail import GuardRail  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.outcome_intervals import OutcomeIntervals  # noqa: PLC0415
        from ..models.season_outcome import SeasonOutcome  # noqa: PLC0415
        from ..models.strategy_numbers import StrategyNumbers  # noqa: PLC0415

        d = dict(src_dict)
        broken_limits = []
        _broken_limits = d.pop("broken_limits")
        for broken_limits_item_data in _broken_limits:
            broken_limits_item = BrokenLimit.from_dict(broken_limits_item_data)

            broken_limits.append(broken_limits_item)

        expected = SeasonOutcome.from_dict(d.pop("expected"))

        feasible = d.pop("feasible")

        guard_rails = []
        _guard_rails = d.pop("guard_rails")
        for guard_rails_item_data in _guard_rails:
            guard_rails_item = GuardRail.from_dict(guard_rails_item_data)

            guard_rails.append(guard_rails_item)

        intervals = OutcomeIntervals.from_dict(d.pop("intervals"))

        label = d.pop("label")

        strategy = StrategyNumbers.from_dict(d.pop("strategy"))

        _reasons = d.pop("reasons", UNSET)
        reasons: list[Note] | Unset = UNSET
        if _reasons is not UNSET:
            reasons = []
            for reasons_item_data in _reasons:
                reasons_item = Note.from_dict(reasons_item_data)

                reasons.append(reasons_item)

        compared_strategy = cls(
            broken_limits=broken_limits,
            expected=expected,
            feasible=feasible,
            guard_rails=guard_rails,
            intervals=intervals,
            label=label,
            strategy=strategy,
            reasons=reasons,
        )

        compared_strategy.additional_properties = d
        return compared_strategy

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
