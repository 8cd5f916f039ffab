from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="RuleOfThumb")


@_attrs_define
class RuleOfThumb:
    """What simple rules say beside the forecast.

    Attributes:
        fat_loss_common_practice_kg (list[float]): Loss commonly quoted, lower and upper.
        fat_loss_static_kg (float): Loss by 7,700 kcal a kilogram at a deficit that stays as it begins: half of it while
            easing in, none in breaks.
        first_week_drop_common_practice_kg (list[float]): Scale drop of the first days commonly quoted.
        first_week_drop_forecast_kg (float): What the forecast has for that drop, kilograms.
    """

    fat_loss_common_practice_kg: list[float]
    fat_loss_static_kg: float
    first_week_drop_common_practice_kg: list[float]
    first_week_drop_forecast_kg: float
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        fat_loss_common_practice_kg = self.fat_loss_common_practice_kg

        fat_loss_static_kg = self.fat_loss_static_kg

        first_week_drop_common_practice_kg = self.first_week_drop_common_practice_kg

        first_week_drop_forecast_kg = self.first_week_drop_forecast_kg

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "fat_loss_common_practice_kg": fat_loss_common_practice_kg,
                "fat_loss_static_kg": fat_loss_static_kg,
                "first_week_drop_common_practice_kg": first_week_drop_common_practice_kg,
                "first_week_drop_forecast_kg": first_week_drop_forecast_kg,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        fat_loss_common_practice_kg = cast(
            list[float], d.pop("fat_loss_common_practice_kg")
        )

        fat_loss_static_kg = d.pop("fat_loss_static_kg")

        first_week_drop_common_practice_kg = cast(
            list[float], d.pop("first_week_drop_common_practice_kg")
        )

        first_week_drop_forecast_kg = d.pop("first_week_drop_forecast_kg")

        rule_of_thumb = cls(
            fat_loss_common_practice_kg=fat_loss_common_practice_kg,
            fat_loss_static_kg=fat_loss_static_kg,
            first_week_drop_common_practice_kg=first_week_drop_common_practice_kg,
            first_week_drop_forecast_kg=first_week_drop_forecast_kg,
        )

        rule_of_thumb.additional_properties = d
        return rule_of_thumb

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
