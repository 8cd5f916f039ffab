from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="Nearest")


@_attrs_define
class Nearest:
    """The nearest a safe plan comes on each axis, the others kept as asked. Absent where none exists.

    Attributes:
        deficit_kcal (float | None): Largest deficit inside every guard rail.
        fat_loss_kg (float | None): Most fat that can be lost in the time asked.
        target_weight_kg (float | None): Of a gain to a weight: the settled weight that it gets to in its weeks, or at
            its ceiling.
        weeks (int | None): Fewest weeks for the goal asked, 0 where it is met; without a goal the most that leave a
            deficit worth it. Of the kind `weeks_kind`, which may be another than asked.
        weeks_kind (None | str): Kind of phase that so many weeks are: `gain`, `mini_cut` up to 6 in all, those done
            included, else `cut`; null where `weeks` names none. Extensible.
    """

    deficit_kcal: float | None
    fat_loss_kg: float | None
    target_weight_kg: float | None
    weeks: int | None
    weeks_kind: None | str
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        deficit_kcal: float | None
        deficit_kcal = self.deficit_kcal

        fat_loss_kg: float | None
        fat_loss_kg = self.fat_loss_kg

        target_weight_kg: float | None
        target_weight_kg = self.target_weight_kg

        weeks: int | None
        weeks = self.weeks

        weeks_kind: None | str
        weeks_kind = self.weeks_kind

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "deficit_kcal": deficit_kcal,
                "fat_loss_kg": fat_loss_kg,
                "target_weight_kg": target_weight_kg,
                "weeks": weeks,
                "weeks_kind": weeks_kind,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)

        def _parse_deficit_kcal(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        deficit_kcal = _parse_deficit_kcal(d.pop("deficit_kcal"))

        def _parse_fat_loss_kg(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        fat_loss_kg = _parse_fat_loss_kg(d.pop("fat_loss_kg"))

        def _parse_target_weight_kg(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        target_weight_kg = _parse_target_weight_kg(d.pop("target_weight_kg"))

        def _parse_weeks(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        weeks = _parse_weeks(d.pop("weeks"))

        def _parse_weeks_kind(data: object) -> None | str:
            if data is None:
                return data
            return cast(None | str, data)

        weeks_kind = _parse_weeks_kind(d.pop("weeks_kind"))

        nearest = cls(
            deficit_kcal=deficit_kcal,
            fat_loss_kg=fat_loss_kg,
            target_weight_kg=target_weight_kg,
            weeks=weeks,
            weeks_kind=weeks_kind,
        )

        nearest.additional_properties = d
        return nearest

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
