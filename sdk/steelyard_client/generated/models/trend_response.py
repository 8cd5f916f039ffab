from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.change_split import ChangeSplit
    from ..models.composition_over_log import CompositionOverLog
    from ..models.explained_change import ExplainedChange
    from ..models.interval import Interval
    from ..models.note import Note
    from ..models.state import State
    from ..models.steps_lately import StepsLately
    from ..models.trend_days import TrendDays


T = TypeVar("T", bound="TrendResponse")


@_attrs_define
class TrendResponse:
    """The log read: weight freed from noise, its rate, what changed, and maintenance now.

    Attributes:
        as_of_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        cautions (list[Note]):
        changes (list[ChangeSplit]): Changes over the last days and over the log.
        composition (CompositionOverLog | None): Fat and lean part of the change over the log; null for one day.
        contract_version (str): Version of the contract.
        cycle_rise_kg (Interval | None): Rise of weight around menstruation, where its days were given; the trend leaves
            it out.
        days (TrendDays): Every day from the first entry to the day read at, in columns of equal length: row `i` of each
            is `date[i]`.

            `weight_kg` uses only the past; all else also what came after.
        explained (ExplainedChange | None): What explains the last four weeks; null with fewer than ten days or without
            intakes.
        fingerprint (str): Digest of the input, the contract and the model version.
        is_conclusive (bool): False while there is too little data to tell a direction, in the first fortnight of the
            phase of a state, and while an event moves weight.
        log_share (float): Share of the maintenance estimate that rests on the log, 0 to 1.
        logging_ratio (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
        model_version (str): Version of the science.
        more_days_needed (int | None): About how many more days of data a direction needs.
        notes (list[Note]): Data quality: outliers, gaps, unit mix-ups.
        physical_maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        plateau_probability (float): Probability that tissue has been steady for a fortnight (within 0.175 kg a week), 0
            to 1.
        reasons (list[Note]):
        stall_probability (float | None): Probability that tissue has not been falling over the last fortnight (by 0.175
            kg a week or more), 0 to 1; a stall is called from 0.5 on. Null where no loss is meant.
        state (State): What is known of a person on a day, each figure with its error. Send it with the next request, as
            it is, beside
            the same `profile`: it takes the place of the profile's weight and body fat, of the log so far and of the phase,
            so
            that only what was logged since need be sent. Nothing of it is kept by the service.
        steps (None | StepsLately): What logged steps say; null without, or with fewer than five days of 14.
        weekly_rate_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
    """

    as_of_date: datetime.date
    cautions: list[Note]
    changes: list[ChangeSplit]
    composition: CompositionOverLog | None
    contract_version: str
    cycle_rise_kg: Interval | None
    days: TrendDays
    explained: ExplainedChange | None
    fingerprint: str
    is_conclusive: bool
    log_share: float
    logging_ratio: Interval
    maintenance_kcal: Interval
    methods: list[str]
    model_version: str
    more_days_needed: int | None
    notes: list[Note]
    physical_maintenance_kcal: Interval
    plateau_probability: float
    reasons: list[Note]
    stall_probability: float | None
    state: State
    steps: None | StepsLately
    weekly_rate_kg: Interval
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.composition_over_log import CompositionOverLog  # noqa: PLC0415
        from ..models.explained_change import ExplainedChange  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.steps_lately import StepsLately  # noqa: PLC0415

        as_of_date = self.as_of_date.isoformat()

        cautions = []
        for cautions_item_data in self.cautions:
            cautions_item = cautions_item_data.to_dict()
            cautions.append(cautions_item)

        changes = []
        for changes_item_data in self.changes:
            changes_item = changes_item_data.to_dict()
            changes.append(changes_item)

        composition: dict[str, Any] | None
        if isinstance(self.composition, CompositionOverLog):
            composition = self.composition.to_dict()
        else:
            composition = self.composition

        contract_version = self.contract_version

        cycle_rise_kg: dict[str, Any] | None
        if isinstance(self.cycle_rise_kg, Interval):
            cycle_rise_kg = self.cycle_rise_kg.to_dict()
        else:
            cycle_rise_kg = self.cycle_rise_kg

        days = self.days.to_dict()

        explained: dict[str, Any] | None
        if isinstance(self.explained, ExplainedChange):
            explained = self.explained.to_dict()
        else:
            explained = self.explained

        fingerprint = self.fingerprint

        is_conclusive = self.is_conclusive

        log_share = self.log_share

        logging_ratio = self.logging_ratio.to_dict()

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

        plateau_probability = self.plateau_probability

        reasons = []
        for reasons_item_data in self.reasons:
            reasons_item = reasons_item_data.to_dict()
            reasons.append(reasons_item)

        stall_probability: float | None
        stall_probability = self.stall_probability

        state = self.state.to_dict()

        steps: dict[str, Any] | None
        if isinstance(self.steps, StepsLately):
            steps = self.steps.to_dict()
        else:
            steps = self.steps

        weekly_rate_kg = self.weekly_rate_kg.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "as_of_date": as_of_date,
                "cautions": cautions,
                "changes": changes,
                "composition": composition,
                "contract_version": contract_version,
                "cycle_rise_kg": cycle_rise_kg,
                "days": days,
                "explained": explained,
                "fingerprint": fingerprint,
                "is_conclusive": is_conclusive,
                "log_share": log_share,
                "logging_ratio": logging_ratio,
                "maintenance_kcal": maintenance_kcal,
                "methods": methods,
                "model_version": model_version,
                "more_days_needed": more_days_needed,
                "notes": notes,
                "physical_maintenance_kcal": physical_maintenance_kcal,
                "plateau_probability": plateau_probability,
                "reasons": reasons,
                "stall_probability": stall_probability,
                "state": state,
                "steps": steps,
                "weekly_rate_kg": weekly_rate_kg,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.change_split import ChangeSplit  # noqa: PLC0415
        from ..models.composition_over_log import CompositionOverLog  # noqa: PLC0415
        from ..models.explained_change import ExplainedChange  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415
        from ..models.steps_lately import StepsLately  # noqa: PLC0415
        from ..models.trend_days import TrendDays  # noqa: PLC0415

        d = dict(src_dict)
        as_of_date = datetime.date.fromisoformat(d.pop("as_of_date"))

        cautions = []
        _cautions = d.pop("cautions")
        for cautions_item_data in _cautions:
            cautions_item = Note.from_dict(cautions_item_data)

            cautions.append(cautions_item)

        changes = []
        _changes = d.pop("changes")
        for changes_item_data in _changes:
            changes_item = ChangeSplit.from_dict(changes_item_data)

            changes.append(changes_item)

        def _parse_composition(data: object) -> CompositionOverLog | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                composition_type_0 = CompositionOverLog.from_dict(data)

                return composition_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(CompositionOverLog | None, data)

        composition = _parse_composition(d.pop("composition"))

        contract_version = d.pop("contract_version")

        def _parse_cycle_rise_kg(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                cycle_rise_kg_type_0 = Interval.from_dict(data)

                return cycle_rise_kg_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        cycle_rise_kg = _parse_cycle_rise_kg(d.pop("cycle_rise_kg"))

        days = TrendDays.from_dict(d.pop("days"))

        def _parse_explained(data: object) -> ExplainedChange | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                explained_type_0 = ExplainedChange.from_dict(data)

                return explained_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(ExplainedChange | None, data)

        explained = _parse_explained(d.pop("explained"))

        fingerprint = d.pop("fingerprint")

        is_conclusive = d.pop("is_conclusive")

        log_share = d.pop("log_share")

        logging_ratio = Interval.from_dict(d.pop("logging_ratio"))

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

        plateau_probability = d.pop("plateau_probability")

        reasons = []
        _reasons = d.pop("reasons")
        for reasons_item_data in _reasons:
            reasons_item = Note.from_dict(reasons_item_data)

            reasons.append(reasons_item)

        def _parse_stall_probability(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        stall_probability = _parse_stall_probability(d.pop("stall_probability"))

        state = State.from_dict(d.pop("state"))

        def _parse_steps(data: object) -> None | StepsLately:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                steps_type_0 = StepsLately.from_dict(data)

                return steps_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | StepsLately, data)

        steps = _parse_steps(d.pop("steps"))

        weekly_rate_kg = Interval.from_dict(d.pop("weekly_rate_kg"))

        trend_response = cls(
            as_of_date=as_of_date,
            cautions=cautions,
            changes=changes,
            composition=composition,
            contract_version=contract_version,
            cycle_rise_kg=cycle_rise_kg,
            days=days,
            explained=explained,
            fingerprint=fingerprint,
            is_conclusive=is_conclusive,
            log_share=log_share,
            logging_ratio=logging_ratio,
            maintenance_kcal=maintenance_kcal,
            methods=methods,
            model_version=model_version,
            more_days_needed=more_days_needed,
            notes=notes,
            physical_maintenance_kcal=physical_maintenance_kcal,
            plateau_probability=plateau_probability,
            reasons=reasons,
            stall_probability=stall_probability,
            state=state,
            steps=steps,
            weekly_rate_kg=weekly_rate_kg,
        )

        trend_response.additional_properties = d
        return trend_response

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
