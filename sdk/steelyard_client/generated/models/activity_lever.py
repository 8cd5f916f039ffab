from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.activity_use import ActivityUse
    from ..models.guard_rail import GuardRail
    from ..models.interval import Interval
    from ..models.note import Note


T = TypeVar("T", bound="ActivityLever")


@_attrs_define
class ActivityLever:
    """More activity beside a fat loss: what it burns, what of that counts, and what it is good for.

    Attributes:
        burnt_kcal (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        guard_rails (list[GuardRail]): Rails that refuse a use that is null.
        instead (ActivityUse | None): More is eaten, never over maintenance, for about the same fat; null where that is
            unsafe.
        kept_kcal (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        kind (str): `steps` or `cycling`. Extensible.
        minutes_per_week (float | None): Beyond those done now.
        planned_availability_kcal_per_kg (float): Energy left for the body as planned, per kg of fat-free mass.
        reasons (list[Note]):
        steps_per_day (float | None): Beyond those taken now.
        together (ActivityUse | None): Eaten as planned, for more fat; null if unsafe.
    """

    burnt_kcal: Interval
    guard_rails: list[GuardRail]
    instead: ActivityUse | None
    kept_kcal: Interval
    kind: str
    minutes_per_week: float | None
    planned_availability_kcal_per_kg: float
    reasons: list[Note]
    steps_per_day: float | None
    together: ActivityUse | None
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.activity_use import ActivityUse  # noqa: PLC0415

        burnt_kcal = self.burnt_kcal.to_dict()

        guard_rails = []
        for guard_rails_item_data in self.guard_rails:
            guard_rails_item = guard_rails_item_data.to_dict()
            guard_rails.append(guard_rails_item)

        instead: dict[str, Any] | None
        if isinstance(self.instead, ActivityUse):
            instead = self.instead.to_dict()
        else:
            instead = self.instead

        kept_kcal = self.kept_kcal.to_dict()

        kind = self.kind

        minutes_per_week: float | None
        minutes_per_week = self.minutes_per_week

        planned_availability_kcal_per_kg = self.planned_availability_kcal_per_kg

        reasons = []
        for reasons_item_data in self.reasons:
            reasons_item = reasons_item_data.to_dict()
            reasons.append(reasons_item)

        steps_per_day: float | None
        steps_per_day = self.steps_per_day

        together: dict[str, Any] | None
        if isinstance(self.together, ActivityUse):
            together = self.together.to_dict()
        else:
            together = self.together

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "burnt_kcal": burnt_kcal,
                "guard_rails": guard_rails,
                "instead": instead,
                "kept_kcal": kept_kcal,
                "kind": kind,
                "minutes_per_week": minutes_per_week,
                "planned_availability_kcal_per_kg": planned_availability_kcal_per_kg,
                "reasons": reasons,
                "steps_per_day": steps_per_day,
                "together": together,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.activity_use import ActivityUse  # noqa: PLC0415
        from ..models.guard_rail import GuardRail  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415

        d = dict(src_dict)
        burnt_kcal = Interval.from_dict(d.pop("burnt_kcal"))

        guard_rails = []
        _guard_rails = d.pop("guard_rails")
        for guard_rails_item_data in _guard_rails:
            guard_rails_item = GuardRail.from_dict(guard_rails_item_data)

            guard_rails.append(guard_rails_item)

        def _parse_instead(data: object) -> ActivityUse | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                instead_type_0 = ActivityUse.from_dict(data)

                return instead_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(ActivityUse | None, data)

        instead = _parse_instead(d.pop("instead"))

        kept_kcal = Interval.from_dict(d.pop("kept_kcal"))

        kind = d.pop("kind")

        def _parse_minutes_per_week(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        minutes_per_week = _parse_minutes_per_week(d.pop("minutes_per_week"))

        planned_availability_kcal_per_kg = d.pop("planned_availability_kcal_per_kg")

        reasons = []
        _reasons = d.pop("reasons")
        for reasons_item_data in _reasons:
            reasons_item = Note.from_dict(reasons_item_data)

            reasons.append(reasons_item)

        def _parse_steps_per_day(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        steps_per_day = _parse_steps_per_day(d.pop("steps_per_day"))

        def _parse_together(data: object) -> ActivityUse | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                together_type_0 = ActivityUse.from_dict(data)

                return together_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(ActivityUse | None, data)

        together = _parse_together(d.pop("together"))

        activity_lever = cls(
            burnt_kcal=burnt_kcal,
            guard_rails=guard_rails,
            instead=instead,
            kept_kcal=kept_kcal,
            kind=kind,
            minutes_per_week=minutes_per_week,
            planned_availability_kcal_per_kg=planned_availability_kcal_per_kg,
            reasons=reasons,
            steps_per_day=steps_per_day,
            together=together,
        )

        activity_lever.additional_properties = d
        return activity_lever

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
