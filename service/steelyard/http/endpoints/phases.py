"""Phases between the wire and the layer of answers: one under way, and those that are over."""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from msgspec.structs import replace

from steelyard import answers
from steelyard.science.member import StartingBody
from steelyard.science.numbers import Estimate
from steelyard.science.phase import (
    MOST_PAUSED_WEEKS,
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

from ..schemas import phases as schema
from . import figures

_BREAK = "break"


def starting_body(phase: schema.PhaseFollowed) -> StartingBody | None:
    """The body on the first morning of a phase, where it is told."""
    body = phase.start_body
    if body is None:
        return None
    return StartingBody(
        figures.estimate(body.weight_kg), figures.estimate(body.fat_kg), body.fat_method, body.fat_is_measured
    )


def followed(phase: schema.PhaseFollowed, name: str) -> FollowedPhase:
    """A phase under way, told as ``name``: its weeks as first planned, with its pauses, and what was changed since.

    Raises ``OutOfDomain`` for a date from which days cannot be counted on, ``Contradiction`` for weeks that are not
    those of the phase, and for changes out of its time.
    """
    answers.check_dates(_dates(phase, name))
    _check_weeks(phase, name)
    planned = FollowedPhase(
        kind=phase.kind,
        start_day=phase.start_date.toordinal(),
        weeks=tuple(_week(week) for week in phase.weeks),
        maintenance=Estimate(phase.maintenance.kcal_per_day, phase.maintenance.standard_deviation_kcal),
        usual_intake_kcal=phase.usual_intake_kcal,
        fat_loss_kg=phase.fat_loss_kg,
        fat_ceiling=phase.fat_ceiling_fraction,
        ratio=None if phase.logging_ratio is None else figures.estimate(phase.logging_ratio),
        adherence=figures.adherence(phase.adherence),
        weeks_before=(phase.weeks_before or 0.0) if phase.kind.is_deficit else 0.0,
    )
    told = [_change(f"{name}.changes[{i}]", change, phase.start_date) for i, change in enumerate(phase.changes)]
    _check_pauses(told, name)
    return planned.changed([*_changes_of_weeks(phase), *told])


def _check_pauses(told: Sequence[IntakeChange | PausedDays | EndMoved], name: str) -> None:
    """Raises ``Contradiction`` naming the pause with which a phase is paused for longer than it can be gone on with."""
    weeks = 0
    for i, change in enumerate(told):
        weeks += change.weeks if isinstance(change, PausedDays) else 0
        if weeks > MOST_PAUSED_WEEKS:
            detail = (
                f"A phase is paused for {MOST_PAUSED_WEEKS} weeks at most, and this makes {weeks}: it is over. End it "
                "with a change of kind `end` instead, and plan the next one from the body that there is then."
            )
            raise Contradiction("PAUSED_TOO_LONG", f"{name}.changes[{i}].until_date", detail)


def _changes_of_weeks(phase: schema.PhaseFollowed) -> Iterator[IntakeChange]:
    """What reviews changed, where weeks tell it: one that a review told carries what was planned."""
    before = 0.0
    for i, week in enumerate(phase.weeks):
        change = 0.0 if week.planned_intake_kcal is None else week.intake_kcal - week.planned_intake_kcal
        if change != before and not _is_break(week):
            yield IntakeChange(day=phase.start_date.toordinal() + 7 * i, change_kcal=change - before)
            before = change


def _change(name: str, told: schema.PhaseChange, start: date) -> IntakeChange | PausedDays | EndMoved:
    """A change as it is told. Raises ``Contradiction``."""
    day = told.date.toordinal()
    if told.date < start:
        raise Contradiction("CHANGE_BEFORE_PHASE", f"{name}.date", "The change lies before the phase.")
    if told.kind is schema.ChangeKind.INTAKE:
        return IntakeChange(day=day, change_kcal=told.change_kcal)
    if told.kind is schema.ChangeKind.END:
        return EndMoved(last_day=day)
    last_day = day if told.until_date is None else told.until_date.toordinal()
    if last_day < day:
        raise Contradiction("PAUSE_ENDS_BEFORE", f"{name}.until_date", "The pause ends before it begins.")
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


def _dates(phase: schema.PhaseFollowed, name: str) -> dict[str, date | None]:
    """The dates of a phase by name."""
    dates: dict[str, date | None] = {f"{name}.start_date": phase.start_date}
    for i, change in enumerate(phase.changes):
        dates[f"{name}.changes[{i}].date"] = change.date
        dates[f"{name}.changes[{i}].until_date"] = change.until_date
    return dates


def _check_weeks(phase: schema.PhaseFollowed, name: str) -> None:
    """Weeks that say when they are must be those of the phase, from its first day on and seven days each."""
    for i, week in enumerate(phase.weeks):
        place = f"{name}.weeks[{i}]"
        due = phase.start_date + timedelta(days=7 * i)
        if week.start_date is not None and week.start_date != due:
            detail = (
                f"Week {i + 1} of a phase from {phase.start_date} begins on {due}, not on {week.start_date}: send the "
                "weeks as first planned, all of them, or the `state` of the last answer, which has them."
            )
            raise Contradiction("WEEKS_NOT_OF_PHASE", f"{place}.start_date", detail)
        if week.days is not None and week.days != 7 and i < len(phase.weeks) - 1:
            detail = "Only the last week of a phase may be short: send the weeks as first planned, or the `state`."
            raise Contradiction("WEEKS_NOT_OF_PHASE", f"{place}.days", detail)


def under_way(phase: schema.PhaseFollowed) -> UnderWay:
    """The phase of a state as one that comes to an end. Raises ``OutOfDomain`` for a date as in ``followed``."""
    body = phase.start_body
    try:
        end = date.fromordinal(followed(phase, "state.phase").end_day)
    except Contradiction:  # a review names it; what comes next does without the phase's weeks
        end = None
    return UnderWay(
        phase.kind,
        phase.start_date,
        end,
        phase.weeks_before or 0.0,
        None if body is None else BodyThen(body.weight_kg.mean, body.fat_kg.mean),
    )


def past_phases(told: Sequence[schema.PastPhase], name: str) -> list[FinishedPhase]:
    """The phases that are over, told as ``name``. Raises ``OutOfDomain`` for a date as in ``followed``."""
    answers.check_dates({f"{name}[{i}].start_date": phase.start_date for i, phase in enumerate(told)})
    return [_past_phase(phase) for phase in told]


def _past_phase(phase: schema.PastPhase) -> FinishedPhase:
    return FinishedPhase(
        phase.kind,
        phase.start_date,
        phase.weeks,
        phase.start_weight_kg,
        phase.end_weight_kg,
        phase.start_fat_fraction,
        phase.end_fat_fraction,
    )


def start_body(body: StartingBody) -> schema.StartBody:
    """The body that a phase starts from."""
    return schema.StartBody(
        weight_kg=figures.mass_figure(body.weight),
        fat_kg=figures.mass_figure(body.fat_kg, 0.5),
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


def weeks_done(start: date, day: date) -> int | None:
    """Whole weeks done of a phase by the morning of a day; None where it has not begun."""
    days = (day - start).days
    return None if days < 0 else min(days // 7, 156)
