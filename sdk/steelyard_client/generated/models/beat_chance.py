from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="BeatChance")


@_attrs_define
class BeatChance:
    """How probable it is that one strategy beats another. Equal outcomes count half.

    Attributes:
        fewer_days_dieting (float): Probability of fewer days in a deficit.
        label (str): Label of the strategy whose chances these are.
        less_fat (float): Probability of less fat carried on average.
        more_lean (float): Probability of more lean tissue gained.
        more_lean_is_clear (bool): Whether one of the two clearly gains more; else there is no order to tell.
        over (str): Label of the strategy that it is held against.
    """

    fewer_days_dieting: float
    label: str
    less_fat: float
    more_lean: float
    more_lean_is_clear: bool
    over: str
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        fewer_days_dieting = self.fewer_days_dieting

        label = self.label

        less_fat = self.less_fat

        more_lean = self.more_lean

        more_lean_is_clear = self.more_lean_is_clear

        over = self.over

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "fewer_days_dieting": fewer_days_dieting,
                "label": label,
                "less_fat": less_fat,
                "more_lean": more_lean,
                "more_lean_is_clear": more_lean_is_clear,
                "over": over,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        fewer_days_dieting = d.pop("fewer_days_dieting")

        label = d.pop("label")

        less_fat = d.pop("less_fat")

        more_lean = d.pop("more_lean")

        more_lean_is_clear = d.pop("more_lean_is_clear")

        over = d.pop("over")

        beat_chance = cls(
            fewer_days_dieting=fewer_days_dieting,
            label=label,
            less_fat=less_fat,
            more_lean=more_lean,
            more_lean_is_clear=more_lean_is_clear,
            over=over,
        )

        beat_chance.additional_properties = d
        return beat_chance

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
