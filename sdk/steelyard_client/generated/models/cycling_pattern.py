from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval
    from ..models.note import Note


T = TypeVar("T", bound="CyclingPattern")


@_attrs_define
class CyclingPattern:
    """Repeated fast gain and cut, against a slow gain on the same body through the same weeks.

    Attributes:
        cycles (int): Cuts from the first fast gain on.
        fat_cost_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        lean_cost_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        notes (list[Note]):
        phases_assumed (int): Phases without figures, taken at their usual size.
        slow_weeks_dieting (int): Weeks of dieting that the slow gain needs to come to the same fat.
        weeks (int): Weeks of all these phases.
        weeks_dieting (int): Weeks of them in a deficit.
        weeks_lost (int | None): How much sooner the slow gain has the same lean tissue; null where it never has.
    """

    cycles: int
    fat_cost_kg: Interval
    lean_cost_kg: Interval
    notes: list[Note]
    phases_assumed: int
    slow_weeks_dieting: int
    weeks: int
    weeks_dieting: int
    weeks_lost: int | None
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        cycles = self.cycles

        fat_cost_kg = self.fat_cost_kg.to_dict()

        lean_cost_kg = self.lean_cost_kg.to_dict()

        notes = []
        for notes_item_data in self.notes:
            notes_item = notes_item_data.to_dict()
            notes.append(notes_item)

        phases_assumed = self.phases_assumed

        slow_weeks_dieting = self.slow_weeks_dieting

        weeks = self.weeks

        weeks_dieting = self.weeks_dieting

        weeks_lost: int | None
        weeks_lost = self.weeks_lost

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "cycles": cycles,
                "fat_cost_kg": fat_cost_kg,
                "lean_cost_kg": lean_cost_kg,
                "notes": notes,
                "phases_assumed": phases_assumed,
                "slow_weeks_dieting": slow_weeks_dieting,
                "weeks": weeks,
                "weeks_dieting": weeks_dieting,
                "weeks_lost": weeks_lost,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415

        d = dict(src_dict)
        cycles = d.pop("cycles")

        fat_cost_kg = Interval.from_dict(d.pop("fat_cost_kg"))

        lean_cost_kg = Interval.from_dict(d.pop("lean_cost_kg"))

        notes = []
        _notes = d.pop("notes")
        for notes_item_data in _notes:
            notes_item = Note.from_dict(notes_item_data)

            notes.append(notes_item)

        phases_assumed = d.pop("phases_assumed")

        slow_weeks_dieting = d.pop("slow_weeks_dieting")

        weeks = d.pop("weeks")

        weeks_dieting = d.pop("weeks_dieting")

        def _parse_weeks_lost(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        weeks_lost = _parse_weeks_lost(d.pop("weeks_lost"))

        cycling_pattern = cls(
            cycles=cycles,
            fat_cost_kg=fat_cost_kg,
            lean_cost_kg=lean_cost_kg,
            notes=notes,
            phases_assumed=phases_assumed,
            slow_weeks_dieting=slow_weeks_dieting,
            weeks=weeks,
            weeks_dieting=weeks_dieting,
            weeks_lost=weeks_lost,
        )

        cycling_pattern.additional_properties = d
        return cycling_pattern

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
