from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.attention import Attention
    from ..models.change_so_far import ChangeSoFar
    from ..models.eaten_against_plan import EatenAgainstPlan
    from ..models.first_weeks_after import FirstWeeksAfter
    from ..models.guard_rail import GuardRail
    from ..models.interval import Interval
    from ..models.note import Note
    from ..models.reviewed_week import ReviewedWeek
    from ..models.settling_question import SettlingQuestion
    from ..models.state import State
    from ..models.verdict_probabilities import VerdictProbabilities


T = TypeVar("T", bound="ReviewResponse")


@_attrs_define
class ReviewResponse:
    """The phase reviewed.

    Attributes:
        after (FirstWeeksAfter | None): Set where the phase ends or is over.
        as_of_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        attention (Attention): How much somebody needs to be looked at, why, what to do, and since when.
        body_fat_fraction (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        cautions (list[Note]):
        change (ChangeSoFar): Change since the phase's start. Tissue is fat and lean; carried mass is glycogen, water
            and gut content.
        contract_version (str): Version of the contract.
        correction_kcal (int): One step towards what the purpose takes, at most 200 and a multiple of 10, once two
            readings a week apart agree on it; else 0, unless a guard rail moves the intake.
        days_into_phase (int): Days of the phase so far.
        decision (str): `continue`, `end`, `shorten` or `extend`. Extensible.
        eaten (EatenAgainstPlan): Intake as logged against intake as planned, both on the logging scale.
        end_date (datetime.date): Last day of the phase, as decided.
        ends_early_when (list[Note]): What ends the days to come before their last; empty where no deficit goes on.
        fingerprint (str): Digest of the input, the contract and the model version.
        guard_rails (list[GuardRail]): Rails that refused, capped or warned.
        is_finished (bool): Whether the phase is over.
        logging_ratio (Interval | None): Logged over eaten energy, where a log of intakes was read; null without one.
            Guard rails on the body divide what is told by its mean, those that protect by its upper end, 1 at most.
        maintenance_change_kcal (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
        model_version (str): Version of the science.
        more_days_needed (int | None): Where it is too early: about how many more days of logging a verdict needs.
        notes (list[Note]): Data quality: outliers, gaps, unit mix-ups.
        physical_maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        probabilities (VerdictProbabilities): Where the change of tissue lies against what counts as planned; they add
            up to 1.
        protein_reference_kg (float | None): Body mass that the least protein of a deficit is reckoned by.
        question (None | SettlingQuestion): Where scale and log do not agree: what settles it. Send its answer as
            `settled`.
        reasons (list[Note]):
        state (State): What is known of a person on a day, each figure with its error. Send it with the next request, as
            it is, beside
            the same `profile`: it takes the place of the profile's weight and body fat, of the log so far and of the phase,
            so
            that only what was logged since need be sent. Nothing of it is kept by the service.
        verdict (str): `within_interval`, `faster`, `slower`, `contradicted` (the scale moves against what plan and log
            say: the reasons name what settles it) or `too_early`. Extensible.
        weeks (list[ReviewedWeek]): The days to come; empty where the phase ends.
    """

    after: FirstWeeksAfter | None
    as_of_date: datetime.date
    attention: Attention
    body_fat_fraction: Interval
    cautions: list[Note]
    change: ChangeSoFar
    contract_version: str
    correction_kcal: int
    days_into_phase: int
    decision: str
    eaten: EatenAgainstPlan
    end_date: datetime.date
    ends_early_when: list[Note]
    fingerprint: str
    guard_rails: list[GuardRail]
    is_finished: bool
    logging_ratio: Interval | None
    maintenance_change_kcal: Interval
    maintenance_kcal: Interval
    methods: list[str]
    model_version: str
    more_days_needed: int | None
    notes: list[Note]
    physical_maintenance_kcal: Interval
    probabilities: VerdictProbabilities
    protein_reference_kg: float | None
    question: None | SettlingQuestion
    reasons: list[Note]
    state: State
    verdict: str
    weeks: list[ReviewedWeek]
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.first_weeks_after import FirstWeeksAfter  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.settling_question import SettlingQuestion  # noqa: PLC0415

        after: dict[str, Any] | None
        if isinstance(self.after, FirstWeeksAfter):
            after = self.after.to_dict()
        else:
            after = self.after

        as_of_date = self.as_of_date.isoformat()

        attention = self.attention.to_dict()

        body_fat_fraction = self.body_fat_fraction.to_dict()

        cautions = []
        for cautions_item_data in self.cautions:
            cautions_item = cautions_item_data.to_dict()
            cautions.append(cautions_item)

        change = self.change.to_dict()

        contract_version = self.contract_version

        correction_kcal = self.correction_kcal

        days_into_phase = self.days_into_phase

        decision = self.decision

        eaten = self.eaten.to_dict()

        end_date = self.end_date.isoformat()

        ends_early_when = []
        for ends_early_when_item_data in self.ends_early_when:
            ends_early_when_item = ends_early_when_item_data.to_dict()
            ends_early_when.append(ends_early_when_item)

        fingerprint = self.fingerprint

        guard_rails = []
        for guard_rails_item_data in self.guard_rails:
            guard_rails_item = guard_rails_item_data.to_dict()
            guard_rails.append(guard_rails_item)

        is_finished = self.is_finished

        logging_ratio: dict[str, Any] | None
        if isinstance(self.logging_ratio, Interval):
            logging_ratio = self.logging_ratio.to_dict()
        else:
            logging_ratio = self.logging_ratio

        maintenance_change_kcal = self.maintenance_change_kcal.to_dict()

        maintenance_kcal = self.maintenance_kcal.to_dict()

        methods = self.methods

        model_version = self.model_version

        more_days_needed: int | None
        more_days_needed = self.more_days_needed

        notes = []
        for notes_item_data in self.notes:
            notes_item = notes_item_data.to_dict()
            notes.append(notes_item)

        physical_maintenance_kcal = self.physical_maintenance_kcal.to_dict()

        probabilities = self.probabilities.to_dict()

        protein_reference_kg: float | None
        protein_reference_kg = self.protein_reference_kg

        question: dict[str, Any] | None
        if isinstance(self.question, SettlingQuestion):
            question = self.question.to_dict()
        else:
            question = self.question

        reasons = []
        for reasons_item_data in self.reasons:
            reasons_item = reasons_item_data.to_dict()
            reasons.append(reasons_item)

        state = self.state.to_dict()

        verdict = self.verdict

        weeks = []
        for weeks_item_data in self.weeks:
            weeks_item = weeks_item_data.to_dict()
            weeks.append(weeks_item)

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "after": after,
                "as_of_date": as_of_date,
                "attention": attention,
                "body_fat_fraction": body_fat_fraction,
                "cautions": cautions,
                "change": change,
                "contract_version": contract_version,
                "correction_kcal": correction_kcal,
                "days_into_phase": days_into_phase,
                "decision": decision,
                "eaten": eaten,
                "end_date": end_date,
                "ends_early_when": ends_early_when,
                "fingerprint": fingerprint,
                "guard_rails": guard_rails,
                "is_finished": is_finished,
                "logging_ratio": logging_ratio,
                "maintenance_change_kcal": maintenance_change_kcal,
                "maintenance_kcal": maintenance_kcal,
                "methods": methods,
                "model_version": model_version,
                "more_days_needed": more_days_needed,
                "notes": notes,
                "physical_maintenance_kcal": physical_maintenance_kcal,
                "probabilities": probabilities,
                "protein_reference_kg": protein_reference_kg,
                "question": question,
                "reasons": reasons,
                "state": state,
                "verdict": verdict,
                "weeks": weeks,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.attention import Attention  # noqa: PLC0415
        from ..models.change_so_far import ChangeSoFar  # noqa: PLC0415
        from ..models.eaten_against_plan import EatenAgainstPlan  # noqa: PLC0415
        from ..models.first_weeks_after import FirstWeeksAfter  # noqa: PLC0415
        from ..models.guard_rail import GuardRail  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.reviewed_week import ReviewedWeek  # noqa: PLC0415
        from ..models.settling_question import SettlingQuestion  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415
        from ..models.verdict_probabilities import VerdictProbabilities  # noqa: PLC0415

        d = dict(src_dict)

        def _parse_after(data: object) -> FirstWeeksAfter | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                after_type_0 = FirstWeeksAfter.from_dict(data)

                return after_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(FirstWeeksAfter | None, data)

        after = _parse_after(d.pop("after"))

        as_of_date = datetime.date.fromisoformat(d.pop("as_of_date"))

        attention = Attention.from_dict(d.pop("attention"))

        body_fat_fraction = Interval.from_dict(d.pop("body_fat_fraction"))

        cautions = []
        _cautions = d.pop("cautions")
        for cautions_item_data in _cautions:
            cautions_item = Note.from_dict(cautions_item_data)

            cautions.append(cautions_item)

        change = ChangeSoFar.from_dict(d.pop("change"))

        contract_version = d.pop("contract_version")

        correction_kcal = d.pop("correction_kcal")

        days_into_phase = d.pop("days_into_phase")

        decision = d.pop("decision")

        eaten = EatenAgainstPlan.from_dict(d.pop("eaten"))

        end_date = datetime.date.fromisoformat(d.pop("end_date"))

        ends_early_when = []
        _ends_early_when = d.pop("ends_early_when")
        for ends_early_when_item_data in _ends_early_when:
            ends_early_when_item = Note.from_dict(ends_early_when_item_data)

            ends_early_when.append(ends_early_when_item)

        fingerprint = d.pop("fingerprint")

        guard_rails = []
        _guard_rails = d.pop("guard_rails")
        for guard_rails_item_data in _guard_rails:
            guard_rails_item = GuardRail.from_dict(guard_rails_item_data)

            guard_rails.append(guard_rails_item)

        is_finished = d.pop("is_finished")

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

        maintenance_change_kcal = Interval.from_dict(d.pop("maintenance_change_kcal"))

        maintenance_kcal = Interval.from_dict(d.pop("maintenance_kcal"))

        methods = cast(list[str], d.pop("methods"))

        model_version = d.pop("model_version")

        def _parse_more_days_needed(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        more_days_needed = _parse_more_days_needed(d.pop("more_days_needed"))

        notes = []
        _notes = d.pop("notes")
        for notes_item_data in _notes:
            notes_item = Note.from_dict(notes_item_data)

            notes.append(notes_item)

        physical_maintenance_kcal = Interval.from_dict(
            d.pop("physical_maintenance_kcal")
        )

        probabilities = VerdictProbabilities.from_dict(d.pop("probabilities"))

        def _parse_protein_reference_kg(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        protein_reference_kg = _parse_protein_reference_kg(
            d.pop("protein_reference_kg")
        )

        def _parse_question(data: object) -> None | SettlingQuestion:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                question_type_0 = SettlingQuestion.from_dict(data)

                return question_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | SettlingQuestion, data)

        question = _parse_question(d.pop("question"))

        reasons = []
        _reasons = d.pop("reasons")
        for reasons_item_data in _reasons:
            reasons_item = Note.from_dict(reasons_item_data)

            reasons.append(reasons_item)

        state = State.from_dict(d.pop("state"))

        verdict = d.pop("verdict")

        weeks = []
        _weeks = d.pop("weeks")
        for weeks_item_data in _weeks:
            weeks_item = ReviewedWeek.from_dict(weeks_item_data)

            weeks.append(weeks_item)

        review_response = cls(
            after=after,
            as_of_date=as_of_date,
            attention=attention,
            body_fat_fraction=body_fat_fraction,
            cautions=cautions,
            change=change,
            contract_version=contract_version,
            correction_kcal=correction_kcal,
            days_into_phase=days_into_phase,
            decision=decision,
            eaten=eaten,
            end_date=end_date,
            ends_early_when=ends_early_when,
            fingerprint=fingerprint,
            guard_rails=guard_rails,
            is_finished=is_finished,
            logging_ratio=logging_ratio,
            maintenance_change_kcal=maintenance_change_kcal,
            maintenance_kcal=maintenance_kcal,
            methods=methods,
            model_version=model_version,
            more_days_needed=more_days_needed,
            notes=notes,
            physical_maintenance_kcal=physical_maintenance_kcal,
            probabilities=probabilities,
            protein_reference_kg=protein_reference_kg,
            question=question,
            reasons=reasons,
            state=state,
            verdict=verdict,
            weeks=weeks,
        )

        review_response.additional_properties = d
        return review_response

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
