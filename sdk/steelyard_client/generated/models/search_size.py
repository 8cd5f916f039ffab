from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="SearchSize")


@_attrs_define
class SearchSize:
    """How much was searched.

    Attributes:
        strategies (int): Strategies lived to the horizon.
        strategy_weeks (int): Strategies times weeks.
        within_limits (int): How many of them keep every limit.
    """

    strategies: int
    strategy_weeks: int
    within_limits: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        strategies = self.strategies

        strategy_weeks = self.strategy_weeks

        within_limits = self.within_limits

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "strategies": strategies,
                "strategy_weeks": strategy_weeks,
                "within_limits": within_limits,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        strategies = d.pop("strategies")

        strategy_weeks = d.pop("strategy_weeks")

        within_limits = d.pop("within_limits")

        search_size = cls(
            strategies=strategies,
            strategy_weeks=strategy_weeks,
            within_limits=within_limits,
        )

        search_size.additional_properties = d
        return search_size

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
