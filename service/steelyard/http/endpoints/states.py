"""The state between the wire and the layer of answers."""

from collections.abc import Sequence
from datetime import date

from msgspec import UNSET, UnsetType
from msgspec.structs import asdict, replace

from steelyard import answers
from steelyard.science.log import Account, BodyRead, Log, Onset, StepsRead
from steelyard.science.member import FatRead, Known, StartingBody, ToldBefore
from steelyard.science.phase import (
    BodyThen,
    PhasesKnown,
)
from steelyard.science.review import LastAsked

from ..schemas import log as log_schema
from ..schemas import phases as schema
from ..schemas.profile import Training
from ..schemas.rosters import Attention
from ..schemas.states import (
    AccountAsRead,
    BodyAsRead,
    KnownReading,
    MaintenanceBasis,
    QuestionAsked,
    ReadSoFar,
    State,
    StepsAsRead,
)
from . import figures, phases

_LEAST_KCAL, _MOST_KCAL = 800.0, 8000.0  # that a request may tell as a usual intake
_MOST_HISTORY = 60
_MOST_DAYS = 40_000  # more of them change nothing
_MOST_TIMES = 1000  # that a question is counted


# --- from the wire ----------------------------------------------------------------------------------------------


def known(state: State | None, log: Log | None) -> Known | None:
    """What a state tells, its log read already."""
    if state is None:
        return None
    told = state.maintenance_basis is MaintenanceBasis.TOLD
    return Known(
        day=state.as_of_date.toordinal(),
        sex=state.sex,
        height_cm=state.height_cm,
        body=StartingBody(
            figures.estimate(state.weight_kg), figures.estimate(state.fat_kg), state.fat_method, state.fat_is_measured
        ),
        maintenance=figures.estimate(state.maintenance_kcal) if told else None,
        usual_intake_kcal=state.usual_intake_kcal,
        readings=tuple(
            FatRead(r.date.toordinal(), r.fat_fraction, r.standard_deviation, r.method) for r in state.readings
        ),
        log=None if log is None else replace(log, onset=None if state.reading is None else _onset(state.reading)),
        adherence=figures.adherence(state.adherence),
        told_before=ToldBefore(state.logging_ratio.mean, state.physical_maintenance_kcal.mean),
        steered=figures.steered(state.steered),
        weighed_before=_weighed_before(state),
        carried_kg=_carried_kg(state),
    )


def _carried_kg(state: State) -> float:
    """What a weight has besides tissue and what is usual [kg]: no more than the masses of its state leave for it."""
    return min(state.carried_kg.mean, state.weight_kg.mean - state.fat_kg.mean - state.lean_kg.mean)


def _weighed_before(state: State) -> tuple[float, ...]:
    """What a state tells of weights in the phases so far [kg]."""
    over = state.phase_history or []
    found = [kg for phase in over for kg in (phase.start_weight_kg, phase.end_weight_kg) if kg is not None]
    start = None if state.phase is None else state.phase.start_body
    return tuple(found if start is None else [*found, start.weight_kg.mean])


def _onset(reading: ReadSoFar) -> Onset:
    body = reading.body
    return Onset(
        body=BodyRead(**{name: getattr(body, name) for name in BodyRead.__struct_fields__}),
        day=0 if reading.date is None else reading.date.toordinal(),
        noise_variance=reading.noise_variance,
        days=reading.days,
        days_logged=min(reading.days, reading.days_logged),
        intakes=tuple(reading.intakes),
        carbohydrate_kcal=tuple(reading.carbohydrate_kcal),
        accounts=tuple(
            Account(
                log_odds=each.log_odds,
                mean=tuple(each.mean),
                spread=tuple(each.spread),
                water_days_ago=each.water_days_ago,
                water_side=each.water_side,
                noise=each.noise,
                noise_weighings=each.noise_weighings,
            )
            for each in reading.accounts
        ),
        steps=None if reading.steps is None else StepsRead(**asdict(reading.steps)),
    )


def question_asked(question: QuestionAsked | UnsetType) -> LastAsked | None:
    """The question last asked, as a state tells it."""
    if isinstance(question, UnsetType):
        return None
    return LastAsked(day=question.date.toordinal(), test=question.test, times=question.asked_count)


def phases_known(state: State | None) -> PhasesKnown:
    """What a state tells of the phases."""
    if state is None:
        return PhasesKnown()
    told = state.phase_history
    over = None if told is None else tuple(phases.past_phases(told, "state.phase_history"))
    now = None if state.phase is None else phases.under_way(state.phase)
    return PhasesKnown(now, over, BodyThen(state.weight_kg.mean, state.fat_kg.mean))


def on_day(state: State | None, day: date) -> State | None:
    """A state as it is on the morning of a day: see ``PhasesKnown.on_day``."""
    known = phases_known(state)
    now = known.on_day(day)
    return state if state is None or now is known else replace(state, phase=None, phase_history=phases.phases_over(now))


# --- to the wire ------------------------------------------------------------------------------------------------


def state(
    now: answers.StateNow,
    phase: schema.PhaseFollowed | None,
    history: Sequence[schema.PastPhase] | None,
    attention: Attention | None = None,
    question: QuestionAsked | UnsetType = UNSET,
) -> State:
    """The state of an answer, with the phase under way, the question last asked in it, and the phases that are over."""
    usual = now.usual_intake_kcal
    ratio = now.logging_ratio
    if phase is not None and not now.may_aim_at_fat:
        phase = replace(phase, fat_loss_kg=None, fat_ceiling_fraction=None)
    return State(
        as_of_date=date.fromordinal(now.day),
        sex=now.sex,
        height_cm=now.height_cm,
        weight_kg=figures.mass_figure(now.weight),
        fat_kg=figures.mass_figure(now.fat_kg, 0.5),
        lean_kg=figures.mass_figure(now.lean_kg, 5.0),
        carried_kg=figures.mass_figure(now.carried_kg),
        fat_method=now.method,
        fat_is_measured=now.is_fat_measured,
        maintenance_kcal=figures.energy_figure(now.maintenance),
        physical_maintenance_kcal=figures.energy_figure(now.physical),
        logging_ratio=figures.ratio_figure(ratio),
        maintenance_basis=MaintenanceBasis(now.basis),
        adaptation_kcal=figures.energy_figure(now.adaptation_kcal),
        usual_intake_kcal=None if usual is None else round(min(max(usual, _LEAST_KCAL), _MOST_KCAL), 1),
        training=Training(
            status=now.training.status,
            resistance_sessions_per_week=now.training.resistance_sessions_per_week,
            is_new_programme=now.training.is_new_programme,
        ),
        adherence=figures.adherence_figure(now.adherence),
        steered=figures.steered_figure(now.steered),
        readings=[
            KnownReading(
                date=date.fromordinal(r.day), fat_fraction=round(r.fat_fraction, 4), standard_deviation=round(r.sd, 4),
                method=r.method,
            )
            for r in now.readings
        ],
        phase=phase,
        phase_history=None if history is None else list(history[-_MOST_HISTORY:]),
        attention=attention,
        question=question,
        log=None if now.log is None else _log_of(now.log),
        reading=None if now.log is None or now.log.onset is None else _reading_of(now.log.onset),
    )  # fmt: skip


def _log_of(log: Log) -> log_schema.Log:
    return log_schema.Log(
        weights=[
            log_schema.WeightEntry(date=date.fromordinal(w.day), weight_kg=w.weight_kg, order=w.order or 0)
            for w in log.weighings
        ],
        intakes=[
            log_schema.IntakeEntry(
                date=date.fromordinal(i.day),
                intake_kcal=i.intake_kcal,
                carbohydrate_g=i.carbohydrate_g,
                is_partial=i.is_partial,
            )
            for i in log.intakes
        ],
        cycle=[date.fromordinal(day) for day in log.cycle_starts][-60:],
        events=[
            log_schema.DatedEvent(
                kind=e.kind,
                date=date.fromordinal(e.day),
                until_date=None if e.until is None else date.fromordinal(e.until),
            )
            for e in log.events
        ][-100:],
        check_ins=[
            log_schema.CheckIn(
                date=date.fromordinal(c.day),
                hunger=c.hunger,
                sleep=c.sleep,
                mood=c.mood,
                cycle=c.cycle,
                strength=c.strength,
            )
            for c in log.check_ins
        ][-60:],
        steps=[log_schema.StepsEntry(date=date.fromordinal(s.day), steps=round(s.steps)) for s in log.steps],
    )


def _reading_of(onset: Onset) -> ReadSoFar:
    body = onset.body
    return ReadSoFar(
        body=BodyAsRead(**{name: getattr(body, name) for name in BodyRead.__struct_fields__}),
        date=date.fromordinal(onset.day) if onset.goes_on else None,
        noise_variance=onset.noise_variance,
        days=onset.days,
        days_logged=onset.days_logged,
        intakes=list(onset.intakes),
        carbohydrate_kcal=list(onset.carbohydrate_kcal),
        accounts=[
            AccountAsRead(
                log_odds=each.log_odds,
                mean=list(each.mean),
                spread=list(each.spread),
                water_days_ago=each.water_days_ago,
                water_side=each.water_side,
                noise=each.noise,
                noise_weighings=each.noise_weighings,
            )
            for each in onset.accounts
        ],
        steps=None if onset.steps is None else _steps_of(onset.steps),
    )


def _steps_of(steps: StepsRead) -> StepsAsRead:
    told = asdict(steps)
    return StepsAsRead(**told | {"days": min(steps.days, _MOST_DAYS)})


def question_to_hand_on(asked: LastAsked | None) -> QuestionAsked | UnsetType:
    """The question last asked, where one was."""
    if asked is None:
        return UNSET
    return QuestionAsked(date=date.fromordinal(asked.day), test=asked.test, asked_count=min(asked.times, _MOST_TIMES))
