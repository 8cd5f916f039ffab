from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.cycling_pattern import CyclingPattern
    from ..models.guard_rail import GuardRail
    from ..models.interval import Interval
    from ..models.leanness_view import LeannessView
    from ..models.next_phase import NextPhase
    from ..models.note import Note
    from ..models.phase_alternative import PhaseAlternative
    from ..models.state import State


T = TypeVar("T", bound="DecisionResponse")


@_attrs_define
class DecisionResponse:
    """The phase that comes next, what else there is and what it costs, why, and what would change the answer.

    Attributes:
        alternatives (list[PhaseAlternative]): Best score first, the recommended among them.
        cautions (list[Note]):
        contract_version (str): Version of the contract.
        decided_by (str): `trade` (the scores) or `rule`. Extensible.
        fingerprint (str): Digest of the input, the contract and the model version.
        guard_rails (list[GuardRail]): Rails that refused, capped or warned.
        horizon_weeks (int): Horizon of the alternatives.
        leanness (LeannessView | None): Null where nothing about leanness is to be said to this person.
        logging_ratio (Interval | None): Logged over eaten energy, where a log of intakes was read; null without one.
            Guard rails on the body divide what is told by its mean, those that protect by its upper end, 1 at most.
        maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
        model_version (str): Version of the science.
        pattern (CyclingPattern | None): Set where the history shows one.
        physical_maintenance_kcal (Interval | None): Maintenance in energy really eaten, kilocalories a day, where a log
            of intakes was read; null without one. `maintenance_kcal` is on the scale of that log.
        reasons (list[Note]):
        recommended (NextPhase): The phase that comes next.
        situation (str): Which rule decided: `no_deficit`, `cut_refused`, `cut_too_long`, `cut_done`, `cut_under_way`,
            `cut_just_ended`, `cut_too_recent`, `too_many_cuts`, `event_ready`, `event_too_near`, `event_later`,
            `event_now`, `measure_first`, `wants_hold`, `lean_enough`, `not_yet`, `cut_due` or `cut_for_leanness`.
            Extensible.
        state (State): What is known of a person on a day, each figure with its error. Send it with the next request, as
            it is, beside
            the same `profile`: it takes the place of the profile's weight and body fat, of the log so far and of the phase,
            so
            that only what was logged since need be sent. Nothing of it is kept by the service.
        what_would_change (list[Note]):
    """

    alternatives: list[PhaseAlternative]
    cautions: list[Note]
    contract_version: str
    decided_by: str
    fingerprint: str
    guard_rails: list[GuardRail]
    horizon_weeks: int
    leanness: LeannessView | None
    logging_ratio: Interval | None
    maintenance_kcal: Interval
    methods: list[str]
    model_version: str
    pattern: CyclingPattern | None
    physical_maintenance_kcal: Interval | None
    reasons: list[Note]
    recommended: NextPhase
    situation: str
    state: State
    what_would_change: list[Note]
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.cycling_pattern import CyclingPattern  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.leanness_view import LeannessView  # noqa: PLC0415

        alternatives = []
        for alternatives_item_data in self.alternatives:
            alternatives_item = alternatives_item_data.to_dict()
            alternatives.append(alternatives_item)

        cautions = []
        for cautions_item_data in self.cautions:
            cautions_item = cautions_item_data.to_dict()
            cautions.append(cautions_item)

        contract_version = self.contract_version

        decided_by = self.decided_by

        fingerprint = self.fingerprint

        guard_rails = []
        for guard_rails_item_data in self.guard_rails:
            guard_rails_item = guard_rails_item_data.to_dict()
            guard_rails.append(guard_rails_item)

        horizon_weeks = self.horizon_weeks

        leanness: dict[str, Any] | None
        if isinstance(self.leanness, LeannessView):
            leanness = self.leanness.to_dict()
        else:
            leanness = self.leanness

        logging_ratio: dict[str, Any] | None
        if isinstance(self.logging_ratio, Interval):
            logging_ratio = self.logging_ratio.to_dict()
        else:
            logging_ratio = self.logging_ratio

        maintenance_kcal = self.maintenance_kcal.to_dict()

        methods = self.methods

        model_version = self.model_version

        pattern: dict[str, Any] | None
        if isinstance(self.pattern, CyclingPattern):
            pattern = self.pattern.to_dict()
        else:
            pattern = self.pattern

        physical_maintenance_kcal: dict[str, Any] | None
        if isinstance(self.physical_maintenance_kcal, Interval):
            physical_maintenance_kcal = self.physical_maintenance_kcal.to_dict()
        else:
            physical_maintenance_kcal = self.physical_maintenance_kcal

        reasons = []
        for reasons_item_data in self.reasons:
            reasons_item = reasons_item_data.to_dict()
            reasons.append(reasons_item)

        recommended = self.recommended.to_dict()

        situation = self.situation

        state = self.state.to_dict()

        what_would_change = []
        for what_would_change_item_data in self.what_would_change:
            what_would_change_item = what_would_change_item_data.to_dict()
            what_would_change.append(what_would_change_item)

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "alternatives": alternatives,
                "cautions": cautions,
                "contract_version": contract_version,
                "decided_by": decided_by,
                "fingerprint": fingerprint,
                "guard_rails": guard_rails,
                "horizon_weeks": horizon_weeks,
                "leanness": leanness,
                "logging_ratio": logging_ratio,
                "maintenance_kcal": maintenance_kcal,
                "methods": methods,
                "model_version": model_version,
                "pattern": pattern,
                "physical_maintenance_kcal": physical_maintenance_kcal,
                "reasons": reasons,
                "recommended": recommended,
                "situation": situation,
                "state": state,
                "what_would_change": what_would_change,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.cycling_pattern import CyclingPattern  # noqa: PLC0415
        from ..models.guard_rail import GuardRail  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.leanness_view import LeannessView  # noqa: PLC0415
        from ..models.next_phase import NextPhase  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.phase_alternative import PhaseAlternative  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
        alternatives = []
        _alternatives = d.pop("alternatives")
        for alternatives_item_data in _alternatives:
            alternatives_item = PhaseAlternative.from_dict(alternatives_item_data)

            alternatives.append(alternatives_item)

        cautions = []
        _cautions = d.pop("cautions")
        for cautions_item_data in _cautions:
            cautions_item = Note.from_dict(cautions_item_data)

            cautions.append(cautions_item)

        contract_version = d.pop("contract_version")

        decided_by = d.pop("decided_by")

        fingerprint = d.pop("fingerprint")

        guard_rails = []
        _guard_rails = d.pop("guard_rails")
        for guard_rails_item_data in _guard_rails:
            guard_rails_item = GuardRail.from_dict(guard_rails_item_data)

            guard_rails.append(guard_rails_item)

        horizon_weeks = d.pop("horizon_weeks")

        def _parse_leanness(data: object) -> LeannessView | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                leanness_type_0 = LeannessView.from_dict(data)

                return leanness_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(LeannessView | None, data)

        leanness = _parse_leanness(d.pop("leanness"))

        def _parse_logging_ratio(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                logging_ratio_type_0 = Interval.from_dict(data)

                return logging_ratio_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        logging_ratio = _parse_logging_ratio(d.pop("logging_ratio"))

        maintenance_kcal = Interval.from_dict(d.pop("maintenance_kcal"))

        methods = cast(list[str], d.pop("methods"))

        model_version = d.pop("model_version")

        def _parse_pattern(data: object) -> CyclingPattern | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                pattern_type_0 = CyclingPattern.from_dict(data)

                return pattern_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(CyclingPattern | None, data)

        pattern = _parse_pattern(d.pop("pattern"))

        def _parse_physical_maintenance_kcal(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                physical_maintenance_kcal_type_0 = Interval.from_dict(data)

                return physical_maintenance_kcal_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        physical_maintenance_kcal = _parse_physical_maintenance_kcal(
            d.pop("physical_maintenance_kcal")
        )

        reasons = []
        _reasons = d.pop("reasons")
        for reasons_item_data in _reasons:
            reasons_item = Note.from_dict(reasons_item_data)

            reasons.append(reasons_item)

        recommended = NextPhase.from_dict(d.pop("recommended"))

        situation = d.pop("situation")

        state = State.from_dict(d.pop("state"))

        what_would_change = []
        _what_would_change = d.pop("what_would_change")
        for what_would_change_item_data in _what_would_change:
            what_would_change_item = Note.from_dict(what_would_change_item_data)

            what_would_change.append(what_would_change_item)

        decision_response = cls(
            alternatives=alternatives,
            cautions=cautions,
            contract_version=contract_version,
            decided_by=decided_by,
            fingerprint=fingerprint,
            guard_rails=guard_rails,
            horizon_weeks=horizon_weeks,
            leanness=leanness,
            logging_ratio=logging_ratio,
            maintenance_kcal=maintenance_kcal,
            methods=methods,
            model_version=model_version,
            pattern=pattern,
            physical_maintenance_kcal=physical_maintenance_kcal,
            reasons=reasons,
            recommended=recommended,
            situation=situation,
            state=state,
            what_would_change=what_would_change,
        )

        decision_response.additional_properties = d
        return decision_response

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
