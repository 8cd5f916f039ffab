"""The state between the wire and the layer of answers, and the phase that goes with it."""

from collections.abc import Sequence
from datetime import date, timedelta

from msgspec import UNSET, UnsetType
from msgspec.structs import asdict, replace

from steelyard import answers
from steelyard.science.body import Adherence
from steelyard.science.log import Account, BodyRead, Log, Onset, StepsRead
from steelyard.science.member import FatRead, Known, StartingBody, Steered, ToldBefore
from steelyard.science.numbers import Estimate
from steelyard.science.phase import DeficitBefore, FollowedPhase, FollowedWeek, History, IntakeChange, PhaseKind
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
_MOST_WEEKS = 104  # of a past phase
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
    start = phase.start_date.toordinal()
    weeks = [_week(week) for week in phase.weeks]
    changes: list[IntakeChange] = []
    moved_end: int | None = None
    before = 0.0
    for i, week in enumerate(phase.weeks):
        # A week that a review told carries what was planned: the difference is a change, not the plan.
        change = 0.0 if week.planned_intake_kcal is None else week.intake_kcal - week.planned_intake_kcal
        if change != before and not weeks[i].is_break:
            changes.append(IntakeChange(day=start + 7 * i, change_kcal=change - before))
            before = change
    for i, told in enumerate(phase.changes):
        day = told.date.toordinal()
        if day < start:
            detail = "The change lies before the phase."
            raise Contradiction("CHANGE_BEFORE_PHASE", f"phase.changes[{i}].date", detail)
        if told.kind is schema.ChangeKind.INTAKE:
            changes.append(IntakeChange(day=day, change_kcal=told.change_kcal))
        elif told.kind is schema.ChangeKind.END:
            moved_end = max(day + 1, start + 1)
        else:
            until = day if told.until_date is None else told.until_date.toordinal()
            if until < day:
                detail = "The pause ends before it begins."
                raise Contradiction("PAUSE_ENDS_BEFORE", f"phase.changes[{i}].until_date", detail)
            at, length = min((day - start) // 7, len(weeks)), -(-(until - day + 1) // 7)
            near = weeks[min(at, len(weeks) - 1)]
            held = FollowedWeek(intake_kcal=phase.maintenance.kcal_per_day, protein_g=near.protein_g, is_break=True)
            weeks[at:at] = [held] * min(length, 26)
            moved_end = None if moved_end is None else moved_end + 7 * length
    return FollowedPhase(
        kind=phase.kind,
        start_day=start,
        weeks=tuple(weeks),
        maintenance=Estimate(phase.maintenance.kcal_per_day, phase.maintenance.standard_deviation_kcal),
        usual_intake_kcal=phase.usual_intake_kcal,
        fat_loss_kg=phase.fat_loss_kg,
        fat_ceiling=phase.fat_ceiling_fraction,
        changes=tuple(sorted(changes, key=lambda change: change.day)),
        moved_end_day=moved_end,
        ratio=None if phase.logging_ratio is None else _estimate(phase.logging_ratio),
        adherence=_adherence(phase.adherence),
        weeks_before=(phase.weeks_before or 0.0) if phase.kind.is_deficit else 0.0,
    )


def _week(week: schema.WeekFollowed) -> FollowedWeek:
    return FollowedWeek(
        intake_kcal=week.intake_kcal if week.planned_intake_kcal is None else week.planned_intake_kcal,
        protein_g=week.protein_g,
        carbohydrate_g=week.carbohydrate_g,
        is_break=week.is_break or week.element == _BREAK,
    )


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


def on_day(state: State | None, day: date) -> State | None:
    """A state as it is on the morning of a day: a phase whose last day is past has joined those that are over.

    Nobody has to review a phase on the day after it: what comes next knows of it all the same.
    """
    if state is None or state.phase is None:
        return state
    try:
        end = followed(state.phase).end_day
    except Contradiction:  # a review names it; what comes next does without the phase's weeks
        return state
    return state if day.toordinal() < end else _over(state, state.phase, date.fromordinal(end - 1))


def given_up(state: State | None, day: date) -> State | None:
    """A state whose phase gives way to another on a day: it is over on the day before, if not sooner."""
    now = on_day(state, day)
    if now is None or now.phase is None or day <= now.phase.start_date:
        return now
    return _over(now, now.phase, day - timedelta(days=1))


def _over(state: State, phase: schema.PhaseFollowed, last: date) -> State:
    history = finished(phase, state.phase_history, last, state.weight_kg.mean, state.fat_kg.mean)
    return replace(state, phase=None, phase_history=history)


def deficit_before(state: State | None, day: date) -> DeficitBefore:
    """Weeks of the deficit that a state knows before a day, and the weeks since: more may count as one with it."""
    now = on_day(state, day)
    if now is not None and now.phase is not None and now.phase.kind.is_deficit and now.phase.start_date < day:
        return DeficitBefore((now.phase.weeks_before or 0.0) + (day - now.phase.start_date).days / 7)
    history = cuts_known(state, day)
    return DeficitBefore(history.weeks_that_count, float(history.weeks_since_last_cut or 0))


def cuts_known(state: State | None, day: date, *, goes_on: bool = False) -> History:
    """The cuts that a state tells, as a planner is asked with them.

    A cut under way is over where another takes its place, unless what is asked about is how it ``goes_on``.
    """
    as_it_runs = on_day(state, day)
    now = as_it_runs if goes_on else given_up(state, day)
    if now is None or as_it_runs is None or now.phase_history is None:
        return History()
    cuts = [phase for phase in now.phase_history if phase.kind.is_deficit]
    ends = [_end(phase) for phase in cuts]
    year = sum(1 for end in ends if 0 <= (day - end).days <= 365)
    since = min(((day - end).days // 7 for end in ends if end <= day), default=None)
    # Of a cut that is given up nothing is known that was before it, where nobody told.
    return History(None if as_it_runs.phase_history is None else min(year, 12), since)


def _end(phase: schema.PastPhase) -> date:
    """The morning after a past phase."""
    return phase.start_date + timedelta(days=7 * phase.weeks)


def finished(
    phase: schema.PhaseFollowed,
    history: Sequence[schema.PastPhase] | None,
    last: date,
    end_weight_kg: float,
    end_fat_kg: float,
) -> list[schema.PastPhase] | None:
    """The phases that are over, with one that ended on ``last``; one of less than half a week is none.

    Where those before it are not known they stay so until a deficit is over: a hold alone would read as "no cuts".

    Lengths are whole weeks. The end is kept, which tells when the next may begin; the start gives way, though never
    into the phase before, so that no request that takes the history finds it in the future or overlapping. A deficit
    that went on where another stopped is one with it.
    """
    body, before = phase.start_body, list(history or [])
    after = last + timedelta(days=1)
    weeks = min(_MOST_WEEKS, round((after - phase.start_date).days / 7))
    start = after - timedelta(days=7 * weeks)
    if before and start < _end(before[-1]):
        weeks, start = weeks - 1, start + timedelta(days=7)
    if weeks < 1 or (history is None and not phase.kind.is_deficit):
        return None if history is None else before
    over = schema.PastPhase(
        kind=phase.kind,
        start_date=start,
        weeks=weeks,
        start_weight_kg=None if body is None else _bounded(body.weight_kg.mean, 30.0, 300.0),
        end_weight_kg=_bounded(end_weight_kg, 30.0, 300.0),
        start_fat_fraction=None if body is None else _bounded(body.fat_kg.mean / body.weight_kg.mean, 0.03, 0.6),
        end_fat_fraction=_bounded(end_fat_kg / end_weight_kg, 0.03, 0.6),
    )
    if not before or not _goes_on(before[-1], over):
        return [*before, over]
    one = before.pop()
    return [
        *before,
        replace(
            over,
            kind=one.kind if one.kind is over.kind else PhaseKind.CUT,
            start_date=over.start_date - timedelta(days=7 * one.weeks),
            weeks=one.weeks + over.weeks,
            start_weight_kg=one.start_weight_kg,
            start_fat_fraction=one.start_fat_fraction,
        ),
    ]


def _goes_on(one: schema.PastPhase, other: schema.PastPhase) -> bool:
    """Whether one deficit follows the other with less than half a week between."""
    both = one.kind.is_deficit and other.kind.is_deficit
    return both and (other.start_date - _end(one)).days <= 3 and one.weeks + other.weeks <= _MOST_WEEKS


def _bounded(value: float, low: float, high: float) -> float:
    return round(min(max(value, low), high), 4)
