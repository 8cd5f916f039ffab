from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval


T = TypeVar("T", bound="CompositionOverLog")


@_attrs_define
class CompositionOverLog:
    """The change of tissue over the log, split into fat and lean. Without readings the body model speaks alone.

    Attributes:
        fat_change_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        fat_fraction (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        fat_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        lean_change_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        reading_count (int): How many readings entered, that of the profile included.
    """

    fat_change_kg: Interval
    fat_fraction: Interval
    fat_kg: Interval
    lean_change_kg: Interval
    reading_count: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        fat_change_kg = self.fat_change_kg.to_dict()

        fat_fraction = self.fat_fraction.to_dict()

        fat_kg = self.fat_kg.to_dict()

        lean_change_kg = self.lean_change_kg.to_dict()

        reading_count = self.reading_count

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "fat_change_kg": fat_change_kg,
                "fat_fraction": fat_fraction,
                "fat_kg": fat_kg,
                "lean_change_kg": lean_change_kg,
                "reading_count": reading_count,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        fat_change_kg = Interval.from_dict(d.pop("fat_change_kg"))

        fat_fraction = Interval.from_dict(d.pop("fat_fraction"))

        fat_kg = Interval.from_dict(d.pop("fat_kg"))

        lean_change_kg = Interval.from_dict(d.pop("lean_change_kg"))

        reading_count = d.pop("reading_count")

        composition_over_log = cls(
            fat_change_kg=fat_change_kg,
            fat_fraction=fat_fraction,
            fat_kg=fat_kg,
            lean_change_kg=lean_change_kg,
            reading_count=reading_count,
        )

        composition_over_log.additional_properties = d
        return composition_over_log

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
