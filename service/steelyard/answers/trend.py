"""What does a log of weights and intakes say?"""

from datetime import date
from typing import NamedTuple

from msgspec.structs import replace

from steelyard.science.log import (
    UNDER_LOGGED,
    CompositionChange,
    DailyLog,
    ImpliedIntake,
    Measured,
    Reading,
    Trend,
    TrendChoice,
    composition_of_log,
    gathered,
    intake_from_weight,
    tail_of,
    trend_of_log,
)
from steelyard.science.measures import Measurement
from steelyard.science.member import Member, Told, fat_known
from steelyard.science.numbers import Column
from steelyard.science.phase import FollowedPhase, UnderWay
from steelyard.science.rails import needs_doctor
from steelyard.science.register import BY_WEIGHT, FROM_EQUATIONS, Message, OutOfDomain
from steelyard.science.review import is_by_weight, told_beside_plan

from .answered import Answered, answering
from .dates import check_as_of, last_day_of
from .state import state_of

_SAME_KCAL = 1.0  # as told


class TrendAsked(NamedTuple):
    """Whose log, which ``told`` holds; read on which day, its last when None.

    ``usual_intake_kcal`` was eaten a day before the log began, maintenance when None. ``measurements`` of body fat are
    dated. ``is_loss_meant``: whether the person means to lose; None reads it from the log. ``phase``: the one
    that is known to be under way, ``plan`` what is told of it. ``include``: what to read beside the trend.
    ``is_handed_on``: whether the member's state is asked for.
    """

    told: Told
    as_of: date | None = None
    usual_intake_kcal: float | None = None
    measurements: tuple[tuple[date, Measurement], ...] = ()
    is_loss_meant: bool | None = None
    phase: UnderWay | None = None
    plan: FollowedPhase | None = None
    include: frozenset[TrendChoice] = frozenset()
    is_handed_on: bool = True


class TrendRead(NamedTuple):
    """A log as read on a day.

    ``daily`` is what was logged, cleaned; ``implied`` intake from weight alone, by length of window in days, where no
    food is logged or somebody asks; ``composition`` None for a log of one day.
    """

    as_of: date
    trend: Trend
    daily: DailyLog
    implied: dict[int, ImpliedIntake]
    composition: CompositionChange | None

    @property
    def maintenance_by_day(self) -> tuple[Column, Column]:
        """Maintenance day by day with its SD [kcal/d], which on the last is what the answer tells: where that does not
        rest on the log alone, in pregnancy or where food is hardly logged, all days are moved by what lies between."""
        told, smoothed = self.trend.maintenance.maintenance, self.trend.smoothed
        means, sds = smoothed.maintenance_kcal, smoothed.maintenance_sd_kcal
        apart = told.mean - means[-1]
        if abs(apart) < _SAME_KCAL:
            return means, sds
        share = told.sd / sds[-1]
        return [mean + apart for mean in means], [share * sd for sd in sds]


@answering
def read_trend(asked: TrendAsked) -> Answered[TrendRead]:
    """Read a log. Raises ``OutOfDomain`` naming an entry that cannot be meant."""
    check_as_of(asked.told, asked.as_of)
    member = Member(asked.told, tail_of)
    person, assessed, log, known = member.person, member.assessed, member.told.log, member.told.known
    if log is None:
        raise OutOfDomain("LOG_MISSING", "log", "Send a log, or a state that carries one.")
    day = last_day_of(log, asked.as_of)
    phase, is_loss_meant = asked.phase, asked.is_loss_meant
    if is_loss_meant is None and phase is not None and phase.is_on(date.fromordinal(day)):
        is_loss_meant = phase.kind.is_deficit

    def read(phase_days: list[int]) -> tuple[Member, Trend, Reading]:
        trend, reading = trend_of_log(
            person,
            assessed,
            log,
            day,
            asked.usual_intake_kcal,
            phase_days=phase_days,
            tail=tail_of,
            is_loss_meant=is_loss_meant,
        )
        trend = replace(trend, maintenance=member.believed(trend.maintenance))
        # A state knows nothing of what was eaten before the log.
        known_as = reading if asked.usual_intake_kcal is None else None
        return member.with_log_read(trend.maintenance, known_as), trend, reading

    read_as, trend, reading = read([] if phase is None else [phase.start.toordinal()])
    beside = None
    if asked.plan is not None and counts_beside(member, asked.plan, day):
        beside = told_beside_plan(read_as, asked.plan, log, day, trend.maintenance, reading)
    if beside is None and phase is not None and phase.end is not None and day >= phase.end.toordinal():
        read_as, trend, reading = read([])  # as whatever comes next reads it
    member = read_as
    if beside is not None:
        trend = replace(trend, maintenance=beside)
        member = member.with_log_read(beside, reading if asked.usual_intake_kcal is None else None)
    elif member.steered is not None:
        trend = replace(trend, maintenance=member.evidence)
    trend = replace(trend, notes=tuple(gathered(trend.notes)))
    if needs_doctor(member.subject):
        trend = _without_amounts(trend)
    implied: dict[int, ImpliedIntake] = {}
    if not reading.fit.is_logged or TrendChoice.IMPLIED_INTAKE in asked.include:
        implied = intake_from_weight(assessed, reading, trend)
    whole = asked.told.log if known is None else None
    measured = [
        Measured(on.toordinal(), measurement, f"measurements[{i}]")
        for i, (on, measurement) in enumerate(asked.measurements)
        # A log that begins anew after a birth leaves out what was measured before it.
        if whole is None or not whole.first_day <= on.toordinal() < log.first_day
    ]
    before = None if known is None else fat_known(known)
    whose = person if known is None else replace(person, body_fat=None)
    composition = composition_of_log(whose, reading, trend, [*measured, *log.readings], before)
    return Answered(
        TrendRead(date.fromordinal(day), trend, reading.daily, implied, composition),
        reasons=[assessed.resting.reason],
        cautions=[*member.cautions, *rests_on(member, asked.plan, day)],
        state=state_of(member, day, None if composition is None else composition.fat_fraction, beside)
        if asked.is_handed_on
        else None,
    )


def counts_beside(member: Member, plan: FollowedPhase, day: int) -> bool:
    """Whether maintenance of a log read on a day is told beside what the plan started from, as a review tells it: up to
    the morning after its last day."""
    return plan.start_day <= day <= plan.end_day and not member.seen.is_pregnant


def rests_on(member: Member, plan: FollowedPhase | None, day: int) -> list[Message]:
    """What maintenance rests on where no food was read: equations, or in a phase weight."""
    if member.learnt is not None or member.steered is not None:
        return []
    is_in_phase = plan is not None and counts_beside(member, plan, day) and is_by_weight(plan, day)
    return [BY_WEIGHT if is_in_phase else FROM_EQUATIONS]


def _without_amounts(trend: Trend) -> Trend:
    """What is read, with no amount to go by and no food to weigh: who needs a doctor first hears of neither."""
    explained = None if trend.explained is None else trend.explained._replace(settles=None)
    return replace(trend, explained=explained, notes=tuple(note for note in trend.notes if note.code != UNDER_LOGGED))
