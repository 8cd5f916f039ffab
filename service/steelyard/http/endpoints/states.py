"""The state between the wire and the layer of answers, and the phase that goes with it."""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from msgspec import UNSET, UnsetType
from msgspec.structs import asdict, replace

from steelyard import answers
from steelyard.science.body import Adherence
from steelyard.science.log import Account, BodyRead, Log, Onset, StepsRead
from steelyard.science.member import FatRead, Known, StartingBody, Steered, ToldBefore
from steelyard.science.numbers import Estimate
from steelyard.science.phase import (
    BodyThen,
    EndMoved,
    FinishedPhase,
    FollowedPhase,
    FollowedWeek,
    IntakeChange,
    PausedDays,
    PhasesKnown,
    UnderWay,
)
from steelyard.science.register import Contradiction
from steelyard.science.review import LastAsked

from ..schemas import log as log_schema
from ..schemas import phases as schema
from ..schemas.profile import Training
from ..schemas.quantities import AdherenceFigure, EnergyFigure, MassFigure, RatioFigure
from ..schemas.rosters import Attention
from ..schemas.states import (
    AccountAsRead,
    BodyAsRead,
    KnownReading,
    MaintenanceBasis,
    QuestionAsked,
    ReadSoFar,
    State,
    SteeredFigure,
    StepsAsRead,
)

_LEAST_KCAL, _MOST_KCAL = 800.0, 8000.0  # that a request may tell as a usual intake
_MOST_HISTORY = 60
_MOST_DAYS = 40_000  # more of them change nothing
_MOST_TIMES = 1000  # that a question is counted
_BREAK = "break"


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
        body=StartingBody(_estimate(state.weight_kg), _estimate(state.fat_kg), state.fat_method, state.fat_is_measured),
        maintenance=_estimate(state.maintenance_kcal) if told else None,
        usual_intake_kcal=state.usual_intake_kcal,
        readings=tuple(
            FatRead(r.date.toordinal(), r.fat_fraction, r.standard_deviation, r.method) for r in state.readings
        ),
        log=None if log is None else replace(log, onset=None if state.reading is None else _onset(state.reading)),
        adherence=_adherence(state.adherence),
        told_before=ToldBefore(state.logging_ratio.mean, state.physical_maintenance_kcal.mean),
        steered=_steered(state.steered),
    )


def _estimate(figure: MassFigure | EnergyFigure | RatioFigure) -> Estimate:
    return Estimate(figure.mean, figure.standard_deviation)


def _adherence(figure: AdherenceFigure | UnsetType) -> Adherence | None:
    if isinstance(figure, UnsetType):
        return None
    return Adherence(Estimate(figure.mean, figure.standard_deviation), figure.weeks)


def _steered(figure: SteeredFigure | UnsetType) -> Steered | None:
    if isinstance(figure, UnsetType):
        return None
    return Steered(figure.date.toordinal(), Estimate(figure.mean_kcal, figure.standard_deviation_kcal))


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


def starting_body(phase: schema.PhaseFollowed) -> StartingBody | None:
    """The body on the first morning of a phase, where it is told."""
    body = phase.start_body
    if body is None:
        return None
    return StartingBody(_estimate(body.weight_kg), _estimate(body.fat_kg), body.fat_method, body.fat_is_measured)


def followed(phase: schema.PhaseFollowed) -> FollowedPhase:
    """A phase under way: its weeks as first planned, with its pauses, and what was changed since.

    Raises ``Contradiction`` for weeks that are not those of the phase, and for changes out of its time.
    """
    _check_weeks(phase)
    planned = FollowedPhase(
        kind=phase.kind,
        start_day=phase.start_date.toordinal(),
        weeks=tuple(_week(week) for week in phase.weeks),
        maintenance=Estimate(phase.maintenance.kcal_per_day, phase.maintenance.standard_deviation_kcal),
        usual_intake_kcal=phase.usual_intake_kcal,
        fat_loss_kg=phase.fat_loss_kg,
        fat_ceiling=phase.fat_ceiling_fraction,
        ratio=None if phase.logging_ratio is None else _estimate(phase.logging_ratio),
        adherence=_adherence(phase.adherence),
        weeks_before=(phase.weeks_before or 0.0) if phase.kind.is_deficit else 0.0,
    )
    told = [_change(i, change, phase.start_date) for i, change in enumerate(phase.changes)]
    return planned.changed([*_changes_of_weeks(phase), *told])


def _changes_of_weeks(phase: schema.PhaseFollowed) -> Iterator[IntakeChange]:
    """What reviews changed, where weeks tell it: one that a review told carries what was planned."""
    before = 0.0
    for i, week in enumerate(phase.weeks):
        change = 0.0 if week.planned_intake_kcal is None else week.intake_kcal - week.planned_intake_kcal
        if change != before and not _is_break(week):
            yield IntakeChange(day=phase.start_date.toordinal() + 7 * i, change_kcal=change - before)
            before = change


def _change(i: int, told: schema.PhaseChange, start: date) -> IntakeChange | PausedDays | EndMoved:
    """A change as it is told. Raises ``Contradiction``."""
    day = told.date.toordinal()
    if told.date < start:
        raise Contradiction("CHANGE_BEFORE_PHASE", f"phase.changes[{i}].date", "The change lies before the phase.")
    if told.kind is schema.ChangeKind.INTAKE:
        return IntakeChange(day=day, change_kcal=told.change_kcal)
    if told.kind is schema.ChangeKind.END:
        return EndMoved(last_day=day)
    last_day = day if told.until_date is None else told.until_date.toordinal()
    if last_day < day:
        raise Contradiction("PAUSE_ENDS_BEFORE", f"phase.changes[{i}].until_date", "The pause ends before it begins.")
    return PausedDays(day=day, last_day=last_day)


def _week(week: schema.WeekFollowed) -> FollowedWeek:
    return FollowedWeek(
        intake_kcal=week.intake_kcal if week.planned_intake_kcal is None else week.planned_intake_kcal,
        protein_g=week.protein_g,
        carbohydrate_g=week.carbohydrate_g,
        is_break=_is_break(week),
    )


def _is_break(week: schema.WeekFollowed) -> bool:
    return week.is_break or week.element == _BREAK


def _check_weeks(phase: schema.PhaseFollowed) -> None:
    """Weeks that say when they are must be those of the phase, from its first day on and seven days each."""
    for i, week in enumerate(phase.weeks):
        name = f"phase.weeks[{i}]"
        due = phase.start_date + timedelta(days=7 * i)
        if week.start_date is not None and week.start_date != due:
            detail = (
                f"Week {i + 1} of a phase from {phase.start_date} begins on {due}, not on {week.start_date}: send the "
                "weeks as first planned, all of them, or the `state` of the last answer, which has them."
            )
            raise Contradiction("WEEKS_NOT_OF_PHASE", f"{name}.start_date", detail)
        if week.days is not None and week.days != 7 and i < len(phase.weeks) - 1:
            detail = "Only the last week of a phase may be short: send the weeks as first planned, or the `state`."
            raise Contradiction("WEEKS_NOT_OF_PHASE", f"{name}.days", detail)


def question_asked(question: QuestionAsked | UnsetType) -> LastAsked | None:
    """The question last asked, as a state tells it."""
    if isinstance(question, UnsetType):
        return None
    return LastAsked(day=question.date.toordinal(), test=question.test, times=question.asked_count)


# --- to the wire ------------------------------------------------------------------------------------------------


def _mass(found: Estimate, least: float = -30.0) -> MassFigure:
    return MassFigure(mean=round(max(least, found.mean), 4), standard_deviation=round(found.sd, 4))


def _energy(found: Estimate) -> EnergyFigure:
    return EnergyFigure(mean=round(found.mean, 2), standard_deviation=round(found.sd, 2))


def ratio_figure(found: Estimate) -> RatioFigure:
    """A logging ratio with its error."""
    mean, sd = min(max(found.mean, 0.2), 1.5), min(found.sd, 1.0)
    return RatioFigure(mean=round(mean, 4), standard_deviation=round(sd, 4))


def adherence_figure(found: Adherence | None) -> AdherenceFigure | UnsetType:
    """How well deficits are kept to, where that was seen."""
    if found is None:
        return UNSET
    mean, sd = found.share.mean, found.share.sd
    return AdherenceFigure(
        mean=round(min(max(mean, 0.2), 1.5), 4),
        standard_deviation=round(min(max(sd, 0.01), 1.0), 4),
        weeks=round(min(found.weeks, 520.0), 1),
    )


def _steered_figure(found: Steered | None) -> SteeredFigure | UnsetType:
    if found is None:
        return UNSET
    mean, sd = found.maintenance.mean, found.maintenance.sd
    return SteeredFigure(
        date=date.fromordinal(found.day),
        mean_kcal=round(min(max(mean, 101.0), 30000.0), 2),
        standard_deviation_kcal=round(min(max(sd, 1.0), 15000.0), 2),
    )


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
        weight_kg=_mass(now.weight),
        fat_kg=_mass(now.fat_kg, 0.5),
        lean_kg=_mass(now.lean_kg, 5.0),
        carried_kg=_mass(now.carried_kg),
        fat_method=now.method,
        fat_is_measured=now.is_fat_measured,
        maintenance_kcal=_energy(now.maintenance),
        physical_maintenance_kcal=_energy(now.physical),
        logging_ratio=ratio_figure(ratio),
        maintenance_basis=MaintenanceBasis(now.basis),
        adaptation_kcal=_energy(now.adaptation_kcal),
        usual_intake_kcal=None if usual is None else round(min(max(usual, _LEAST_KCAL), _MOST_KCAL), 1),
        training=Training(
            status=now.training.status,
            resistance_sessions_per_week=now.training.resistance_sessions_per_week,
            is_new_programme=now.training.is_new_programme,
        ),
        adherence=adherence_figure(now.adherence),
        steered=_steered_figure(now.steered),
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


def start_body(body: StartingBody) -> schema.StartBody:
    """The body that a phase starts from."""
    return schema.StartBody(
        weight_kg=_mass(body.weight),
        fat_kg=_mass(body.fat_kg, 0.5),
        fat_method=body.method,
        fat_is_measured=body.is_measured,
    )


def successor(
    phase: schema.PhaseFollowed, day: date, change_kcal: float, last_date: date, due_date: date, reason: str
) -> schema.PhaseFollowed:
    """A phase with what a review on ``day`` changes of it: its intake, and its last day where that moves."""
    changes = list(phase.changes)
    if change_kcal:
        kind = schema.ChangeKind.INTAKE
        changes.append(schema.PhaseChange(kind=kind, date=day, change_kcal=change_kcal, reason=reason))
    if last_date != due_date:
        changes.append(schema.PhaseChange(kind=schema.ChangeKind.END, date=last_date, reason=reason))
    return replace(phase, changes=changes)


def weeks_done(phase: schema.PhaseFollowed, day: date) -> int | None:
    """Whole weeks done of a phase by the morning of a day; None where it has not begun."""
    days = (day - phase.start_date).days
    return None if days < 0 else min(days // 7, 156)


def phases_known(state: State | None) -> PhasesKnown:
    """What a state tells of the phases."""
    if state is None:
        return PhasesKnown()
    over = None if state.phase_history is None else tuple(past_phase(phase) for phase in state.phase_history)
    now = None if state.phase is None else under_way(state.phase)
    return PhasesKnown(now, over, BodyThen(state.weight_kg.mean, state.fat_kg.mean))


def under_way(phase: schema.PhaseFollowed) -> UnderWay:
    """A phase as one that comes to an end."""
    body = phase.start_body
    try:
        end = date.fromordinal(followed(phase).end_day)
    except Contradiction:  # a review names it; what comes next does without the phase's weeks
        end = None
    return UnderWay(
        phase.kind,
        phase.start_date,
        end,
        phase.weeks_before or 0.0,
        None if body is None else BodyThen(body.weight_kg.mean, body.fat_kg.mean),
    )


def past_phase(phase: schema.PastPhase) -> FinishedPhase:
    """A phase that is over, as it is told."""
    return FinishedPhase(
        phase.kind,
        phase.start_date,
        phase.weeks,
        phase.start_weight_kg,
        phase.end_weight_kg,
        phase.start_fat_fraction,
        phase.end_fat_fraction,
    )


def on_day(state: State | None, day: date) -> State | None:
    """A state as it is on the morning of a day: see ``PhasesKnown.on_day``."""
    known = phases_known(state)
    now = known.on_day(day)
    return state if state is None or now is known else replace(state, phase=None, phase_history=phases_over(now))


def phases_over(known: PhasesKnown) -> list[schema.PastPhase] | None:
    """The phases that are over, as a request may tell them."""
    return None if known.over is None else [_over(phase) for phase in known.over]


def _over(phase: FinishedPhase) -> schema.PastPhase:
    return schema.PastPhase(
        kind=phase.kind,
        start_date=phase.start,
        weeks=phase.weeks,
        start_weight_kg=_bounded(phase.start_weight_kg, 30.0, 300.0),
        end_weight_kg=_bounded(phase.end_weight_kg, 30.0, 300.0),
        start_fat_fraction=_bounded(phase.start_fat_fraction, 0.03, 0.6),
        end_fat_fraction=_bounded(phase.end_fat_fraction, 0.03, 0.6),
    )


def _bounded(value: float | None, low: float, high: float) -> float | None:
    return None if value is None else round(min(max(value, low), high), 4)
