from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.season_outcome import SeasonOutcome
    from ..models.strategy_numbers import StrategyNumbers


T = TypeVar("T", bound="OtherSeason")


@_attrs_define
class OtherSeason:
    """Another strategy of the search and what it comes to.

    Attributes:
        expected (SeasonOutcome): What a season comes to for the expected body.
        strategy (StrategyNumbers): A strategy as it was followed. Cut numbers are null where it never cuts.
    """

    expected: SeasonOutcome
    strategy: StrategyNumbers
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        expected = self.expected.to_dict()

        strategy = self.strategy.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "expected": expected,
                "strategy": strategy,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.season_outcome import SeasonOutcome  # noqa: PLC0415
        from ..models.strategy_numbers import StrategyNumbers  # noqa: PLC0415

        d = dict(src_dict)
        expected = SeasonOutcome.from_dict(d.pop("expected"))

        strategy = StrategyNumbers.from_dict(d.pop("strategy"))

        other_season = cls(
            expected=expected,
            strategy=strategy,
        )

        other_season.additional_properties = d
        return other_season

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
