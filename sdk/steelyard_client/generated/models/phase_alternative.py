from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval
    from ..models.note import Note
    from ..models.plan_fragment import PlanFragment
    from ..models.score_parts import ScoreParts


T = TypeVar("T", bound="PhaseAlternative")


@_attrs_define
class PhaseAlternative:
    """One way on. Its figures are for the weeks that its `plan` asks for; its score is over the horizon of all of them.
    Where `open` is false only `closed_because` is set.

        Attributes:
            closed_because (None | Note): Why not, where it is not.
            days_dieting (int | None): Days in a deficit.
            end_fat_fraction (Interval | None): Body fat at the end of these weeks.
            fat_kg (Interval | None): Change of fat mass over these weeks.
            kind (str): `mini_cut`, `cut`, `gain` or `maintenance`. Extensible.
            lean_kg (Interval | None): Change of lean tissue over these weeks.
            open_ (bool): Whether it is open to this person.
            plan (None | PlanFragment): What to ask `/v1/plans` for.
            plan_weeks (int | None): Weeks that its plan and its figures are for.
            score (None | ScoreParts):
            weeks (int | None): Length of its first phase.
            weeks_above_band (int | None): Weeks that end above the band.
    """

    closed_because: None | Note
    days_dieting: int | None
    end_fat_fraction: Interval | None
    fat_kg: Interval | None
    kind: str
    lean_kg: Interval | None
    open_: bool
    plan: None | PlanFragment
    plan_weeks: int | None
    score: None | ScoreParts
    weeks: int | None
    weeks_above_band: int | None
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.plan_fragment import PlanFragment  # noqa: PLC0415
        from ..models.score_parts import ScoreParts  # noqa: PLC0415

        closed_because: dict[str, Any] | None
        if isinstance(self.closed_because, Note):
            closed_because = self.closed_because.to_dict()
        else:
            closed_because = self.closed_because

        days_dieting: int | None
        days_dieting = self.days_dieting

        end_fat_fraction: dict[str, Any] | None
        if isinstance(self.end_fat_fraction, Interval):
            end_fat_fraction = self.end_fat_fraction.to_dict()
        else:
            end_fat_fraction = self.end_fat_fraction

        fat_kg: dict[str, Any] | None
        if isinstance(self.fat_kg, Interval):
            fat_kg = self.fat_kg.to_dict()
        else:
            fat_kg = self.fat_kg

        kind = self.kind

        lean_kg: dict[str, Any] | None
        if isinstance(self.lean_kg, Interval):
            lean_kg = self.lean_kg.to_dict()
        else:
            lean_kg = self.lean_kg

        open_ = self.open_

        plan: dict[str, Any] | None
        if isinstance(self.plan, PlanFragment):
            plan = self.plan.to_dict()
        else:
            plan = self.plan

        plan_weeks: int | None
        plan_weeks = self.plan_weeks

        score: dict[str, Any] | None
        if isinstance(self.score, ScoreParts):
            score = self.score.to_dict()
        else:
            score = self.score

        weeks: int | None
        weeks = self.weeks

        weeks_above_band: int | None
        weeks_above_band = self.weeks_above_band

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "closed_because": closed_because,
                "days_dieting": days_dieting,
                "end_fat_fraction": end_fat_fraction,
                "fat_kg": fat_kg,
                "kind": kind,
                "lean_kg": lean_kg,
                "open": open_,
                "plan": plan,
                "plan_weeks": plan_weeks,
                "score": score,
                "weeks": weeks,
                "weeks_above_band": weeks_above_band,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.plan_fragment import PlanFragment  # noqa: PLC0415
        from ..models.score_parts import ScoreParts  # noqa: PLC0415

        d = dict(src_dict)

        def _parse_closed_because(data: object) -> None | Note:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                closed_because_type_0 = Note.from_dict(data)

                return closed_because_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | Note, data)

        closed_because = _parse_closed_because(d.pop("closed_because"))

        def _parse_days_dieting(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        days_dieting = _parse_days_dieting(d.pop("days_dieting"))

        def _parse_end_fat_fraction(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                end_fat_fraction_type_0 = Interval.from_dict(data)

                return end_fat_fraction_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        end_fat_fraction = _parse_end_fat_fraction(d.pop("end_fat_fraction"))

        def _parse_fat_kg(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                fat_kg_type_0 = Interval.from_dict(data)

                return fat_kg_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        fat_kg = _parse_fat_kg(d.pop("fat_kg"))

        kind = d.pop("kind")

        def _parse_lean_kg(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                lean_kg_type_0 = Interval.from_dict(data)

                return lean_kg_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        lean_kg = _parse_lean_kg(d.pop("lean_kg"))

        open_ = d.pop("open")

        def _parse_plan(data: object) -> None | PlanFragment:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                plan_type_0 = PlanFragment.from_dict(data)

                return plan_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | PlanFragment, data)

        plan = _parse_plan(d.pop("plan"))

        def _parse_plan_weeks(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        plan_weeks = _parse_plan_weeks(d.pop("plan_weeks"))

        def _parse_score(data: object) -> None | ScoreParts:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                score_type_0 = ScoreParts.from_dict(data)

                return score_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | ScoreParts, data)

        score = _parse_score(d.pop("score"))

        def _parse_weeks(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        weeks = _parse_weeks(d.pop("weeks"))

        def _parse_weeks_above_band(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        weeks_above_band = _parse_weeks_above_band(d.pop("weeks_above_band"))

        phase_alternative = cls(
            closed_because=closed_because,
            days_dieting=days_dieting,
            end_fat_fraction=end_fat_fraction,
            fat_kg=fat_kg,
            kind=kind,
            lean_kg=lean_kg,
            open_=open_,
            plan=plan,
            plan_weeks=plan_weeks,
            score=score,
            weeks=weeks,
            weeks_above_band=weeks_above_band,
        )

        phase_alternative.additional_properties = d
        return phase_alternative

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
