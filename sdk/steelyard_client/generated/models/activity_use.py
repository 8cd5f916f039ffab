from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.guard_rail import GuardRail
    from ..models.interval import Interval


T = TypeVar("T", bound="ActivityUse")


@_attrs_define
class ActivityUse:
    """A way to use a lever. Inside every guard rail, with the activity counted.

    Attributes:
        availability_kcal_per_kg (float): Energy left for the body a day, per kg of fat-free mass, at the start.
        end_weight_kg (float): Expected on the scale on the last day.
        fat_change_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        guard_rails (list[GuardRail]): Rails that warn of it.
        intake_kcal (int): Energy a day in the first full week.
        last_intake_kcal (int): Energy a day in the last week.
    """

    availability_kcal_per_kg: float
    end_weight_kg: float
    fat_change_kg: Interval
    guard_rails: list[GuardRail]
    intake_kcal: int
    last_intake_kcal: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        availability_kcal_per_kg = self.availability_kcal_per_kg

        end_weight_kg = self.end_weight_kg

        fat_change_kg = self.fat_change_kg.to_dict()

        guard_rails = []
        for guard_rails_item_data in self.guard_rails:
            guard_rails_item = guard_rails_item_data.to_dict()
            guard_rails.append(guard_rails_item)

        intake_kcal = self.intake_kcal

        last_intake_kcal = self.last_intake_kcal

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "availability_kcal_per_kg": availability_kcal_per_kg,
                "end_weight_kg": end_weight_kg,
                "fat_change_kg": fat_change_kg,
                "guard_rails": guard_rails,
                "intake_kcal": intake_kcal,
                "last_intake_kcal": last_intake_kcal,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.guard_rail import GuardRail  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        availability_kcal_per_kg = d.pop("availability_kcal_per_kg")

        end_weight_kg = d.pop("end_weight_kg")

        fat_change_kg = Interval.from_dict(d.pop("fat_change_kg"))

        guard_rails = []
        _guard_rails = d.pop("guard_rails")
        for guard_rails_item_data in _guard_rails:
            guard_rails_item = GuardRail.from_dict(guard_rails_item_data)

            guard_rails.append(guard_rails_item)

        intake_kcal = d.pop("intake_kcal")

        last_intake_kcal = d.pop("last_intake_kcal")

        activity_use = cls(
            availability_kcal_per_kg=availability_kcal_per_kg,
            end_weight_kg=end_weight_kg,
            fat_change_kg=fat_change_kg,
            guard_rails=guard_rails,
            intake_kcal=intake_kcal,
            last_intake_kcal=last_intake_kcal,
        )

        activity_use.additional_properties = d
        return activity_use

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
