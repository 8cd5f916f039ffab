"""What a log says of a phase so far: tissue and carried mass, what was eaten, and the body that is left."""

import math
from collections.abc import Sequence
from functools import partial
from typing import NamedTuple

import msgspec

from ..body import Body, Diet, advance, start_body, walk
from ..log import (
    DAY_ERROR,
    LOGGING_RATIO,
    LOGGING_RATIO_LEAST,
    RATIO_DRIFT,
    UNLOGGED_BIAS,
    CarriedAhead,
    Change,
    DailyLog,
    Explained,
    IntakeDay,
    Log,
    LogMaintenance,
    Reading,
    Trend,
    as_believed,
    carried_from_here,
    fill_intake,
    maintenance_of,
    partition_of,
    prior_on_logging_scale,
    read_log,
    tail_of,
    trend_of_log,
    water_off,
)
from ..measures import body_of
from ..member import Member
from ..numbers import Estimate
from ..phase import FollowedPhase, diet_of_week
from ..register import Message
from . import texts

_RECENT_DAYS = 7
_FOLLOWED_DAYS = 28
_BEFORE_PHASE_DAYS = 14
STILL_DAYS = 7  # before a phase, on whose first day water moves already
_OF_EQUATIONS = 0.99  # with this share of the error of the equations, roundings left out, a plan rests on them alone
_LEAST_RATIO_SD = 0.04  # no log is surer of what it leaves out (judgement)
_RATIO_MOST = 1.2  # a log that tells more than was eaten is believed no further than this (judgement)
_LEAST_FAT, _MOST_FAT = 0.02, 0.65  # shares of body mass that no body on its way leaves (judgement)


class Changes(NamedTuple):
    """Change over a window and its parts [kg]."""

    weight: Estimate
    tissue: Estimate
    carried: Estimate


class EatenSoFar(NamedTuple):
    """Intake against the plan, on the logging scale [kcal/d].

    ``difference`` covers all days of the phase, also those without a log (None: no day was logged); ``lately`` the
    logged ones of the last week, where they are most of it.
    """

    days: int
    days_logged: int
    logged_kcal: float | None
    planned_kcal: float
    difference: Estimate | None
    lately: float | None = None

    @property
    def is_kept_lately(self) -> bool:
        """Whether no more was logged in the last week than was told."""
        return self.lately is not None and self.lately <= texts.NOTABLE_KCAL

    @property
    def is_over(self) -> bool:
        """Whether so much more was logged than was told that the plan is not followed."""
        most = texts.MOST_MADE_UP_SHARE * self.planned_kcal
        return self.difference is not None and self.difference.lower > 0.0 and self.difference.mean > most

    @property
    def is_under(self) -> bool:
        """Whether less was logged than was told by so much, half as much as that, that another step is none."""
        most = 0.5 * texts.MOST_MADE_UP_SHARE * self.planned_kcal
        return self.difference is not None and self.difference.upper < 0.0 and -self.difference.mean > most

    @property
    def is_hardly_logged(self) -> bool:
        """Whether there are days enough to judge, and hardly a log of what was eaten on them."""
        return self.days >= texts.LEAST_DAYS and self.days_logged < texts.HARDLY_LOGGED * self.days


class Now(NamedTuple):
    """A phase as read on a day: what changed since its start, and the body there is."""

    day: int
    days: int  # of the phase so far
    window_days: int  # of them, those that the log covers: since the first weighing, where that lies within the phase
    weighings: int  # within the window
    unseen_days: int  # since the last weighing
    window: Changes
    eaten: EatenSoFar
    maintenance: LogMaintenance
    maintenance_told: Estimate  # the same as it is told, less sure where log and plan disagree
    ratio: float  # logged over eaten energy
    recent_intake_kcal: float  # a day, over the last week, logging scale
    fortnight_tissue: Estimate | None  # change of tissue over the last two weeks, where the scale saw any of them
    fortnight_intake_kcal: float | None  # logged a day over the last two weeks
    weight_kg: Estimate  # without daily noise
    noise_sd_kg: float
    rho_kcal_per_kg: float  # on the logging scale
    water_probability: float  # of a sudden change of water in the last four weeks
    water_off: Estimate  # carried mass beyond what intake leads to expect, against a week before the phase
    carried: CarriedAhead  # what carried mass does from here on
    explained: Explained | None  # why weight did what it did over the last four weeks
    knows_cycle: bool
    share_followed: float  # of what was told over the last four weeks, how much was logged
    notes: tuple[Message, ...]
    reading: Reading  # of the log, to be handed on

    @property
    def is_unseen(self) -> bool:
        """Whether the last weighing is so long ago that nothing but the log tells how the phase goes."""
        return self.unseen_days >= texts.UNSEEN_DAYS


def change_over(trend: Trend, days: int) -> Changes:
    """Change over the last ``days`` of a log, for any number of days that it has.

    Weight and its split are known on every day. The trend tells the errors of some windows; between two of them
    variances are interpolated.
    """
    last = trend.days - 1
    nothing = Estimate(0.0, 0.0)
    nearer = Change(0, nothing, nothing, nothing)
    if days <= 0 or not trend.changes:
        return Changes(nothing, nothing, nothing)
    further = trend.changes[-1]
    for change in sorted(trend.changes, key=lambda c: c.days):
        if change.days <= days:
            nearer = change
        if change.days >= days:
            further = change
            break
    if nearer.days == days:
        return Changes(nearer.weight, nearer.tissue, nearer.carried)
    share = (days - nearer.days) / (further.days - nearer.days)

    def over(column: Sequence[float], near: Estimate, far: Estimate) -> Estimate:
        variance = near.sd**2 + share * (far.sd**2 - near.sd**2)
        return Estimate(column[last] - column[last - days], math.sqrt(variance))

    return Changes(
        over(trend.smoothed.weight_kg, nearer.weight, further.weight),
        over(trend.smoothed.tissue_kg, nearer.tissue, further.tissue),
        over(trend.smoothed.carried_kg, nearer.carried, further.carried),
    )


def with_plan(
    found: LogMaintenance, plan: Estimate, days: int, fades_days: float, planned_ratio: Estimate | None = None
) -> LogMaintenance:
    """Maintenance as the log tells it, with what the plan started from, which counts for less from day to day.

    A log cannot tell at once a change of eating from one of logging, nor from tissue of another energy. It counts for
    half after ``fades_days``. The logging ratio goes along, so that the physical estimate stays what the log says; it
    is no less sure than the plan was of it, which drifts: what a plan leaves free under the rails is not taken back for
    want of a longer log.
    """
    told = found.maintenance
    fades = 1.0 + (days / fades_days) ** 2
    of_plan = 1.0 / (fades * max(plan.sd, texts.PLAN_LEAST_SD * plan.mean) ** 2)
    of_log = 1.0 / max(told.sd, 1.0) ** 2
    mean = (of_plan * plan.mean + of_log * told.mean) / (of_plan + of_log)
    ratio = Estimate(found.logging_ratio.mean * mean / told.mean, found.logging_ratio.sd)
    if planned_ratio is not None:
        drifted = RATIO_DRIFT * ratio.mean * math.sqrt(max(0, days))
        ratio = Estimate(ratio.mean, min(ratio.sd, math.hypot(max(_LEAST_RATIO_SD, planned_ratio.sd), drifted)))
    return msgspec.structs.replace(found, maintenance=Estimate(mean, (of_plan + of_log) ** -0.5), logging_ratio=ratio)


def maintenance_told(beside: Estimate, log: Estimate, plan: Estimate) -> Estimate:
    """Maintenance by log and plan ``beside`` each other, as it is told: where they disagree one of them is wrong, and
    nobody knows which. Steps go by their mean alone, and by how sure each is of itself."""
    apart = max(0.0, (plan.mean - beside.mean) * (beside.mean - log.mean))  # variance between the two
    return Estimate(beside.mean, math.sqrt(beside.sd**2 + apart))


def read_phase(member: Member, phase: FollowedPhase, log: Log, day: int, weighed_since: int | None = None) -> Now:
    """Read a log on the morning of ``day``, which lies in the phase or is the one after its last.

    Args: ``weighed_since``: from which day on more of what is eaten is logged than before, where that is known.

    Raises: ``OutOfDomain`` on a log that cannot be read, or one that fits no living body.
    """
    assessed, start = member.assessed, phase.start_day
    about = (member.person, assessed, log, day, phase.usual_intake_kcal)
    tail = partial(tail_of, since_day=start - _BEFORE_PHASE_DAYS)
    phase_days = [start] if weighed_since is None else [start, weighed_since]
    trend, reading = trend_of_log(*about, phase_days=phase_days, tail=tail, is_loss_meant=phase.kind.is_deficit)
    # What was settled is told again beside what is handed on, which must not know of it already.
    handed = reading if weighed_since is None else read_log(*about, phase_days=[start], tail=tail)
    daily = reading.daily
    beside = _read_beside(member, phase, log, day, trend.maintenance, reading, phase_days)
    planned, eaten, maintenance = beside.planned_kcal, beside.eaten, beside.maintenance
    last = trend.days - 1
    first = next(i for i, seen in enumerate(daily.is_weighed) if seen)
    unseen = last - max(i for i, seen in enumerate(daily.is_weighed) if seen)
    then = min(last, max(phase.start_day - daily.first_day, first))
    filled = fill_intake(beside.counted, prior_on_logging_scale(assessed.total).mean)
    ratio = min(_RATIO_MOST, max(LOGGING_RATIO_LEAST, maintenance.logging_ratio.mean))
    recent = filled[max(0, last - _RECENT_DAYS) : last] or filled[:1]
    two_weeks = slice(max(0, last - 14), last)
    fortnight = [
        intake
        for intake, logged in zip(daily.intake_kcal[two_weeks], daily.is_logged[two_weeks], strict=True)
        if logged
    ]
    return Now(
        day=day,
        days=day - phase.start_day,
        window_days=last - then,
        weighings=int(sum(daily.is_weighed[then:])),
        unseen_days=unseen,
        window=change_over(trend, last - then),
        eaten=eaten,
        maintenance=maintenance,
        maintenance_told=beside.told,
        ratio=ratio,
        recent_intake_kcal=sum(recent) / len(recent),
        fortnight_tissue=change_over(trend, 14).tissue if last >= 14 and unseen < texts.UNSEEN_DAYS else None,
        fortnight_intake_kcal=sum(fortnight) / len(fortnight) if len(fortnight) >= _RECENT_DAYS else None,
        weight_kg=Estimate(trend.smoothed.weight_kg[-1], trend.smoothed.weight_sd_kg[-1]),
        noise_sd_kg=trend.noise_sd_kg,
        rho_kcal_per_kg=LOGGING_RATIO * reading.tissue.rho_kcal_per_kg,
        water_probability=trend.water_probability,
        water_off=water_off(reading.fit, max(0, phase.start_day - daily.first_day - STILL_DAYS)),
        carried=carried_from_here(reading.fit),
        explained=trend.explained,
        knows_cycle=bool(log.cycle_starts),
        share_followed=_share_followed(phase, planned, daily.intake_kcal, daily.is_logged, daily.first_day),
        notes=trend.notes,
        reading=handed,
    )


class _Beside(NamedTuple):
    """What a log says of a phase's days: what was told and eaten on them, what counts as eaten, and maintenance beside
    what the plan started from, as steps go by it and as it is told."""

    planned_kcal: list[float]
    eaten: EatenSoFar
    counted: DailyLog
    maintenance: LogMaintenance
    told: Estimate


def _read_beside(
    member: Member,
    phase: FollowedPhase,
    log: Log,
    day: int,
    found: LogMaintenance,
    reading: Reading,
    phase_days: Sequence[int],
) -> _Beside:
    planned, daily = phase.told_kcal(day - phase.start_day), reading.daily
    eaten = _eaten(phase, planned, daily.intake_kcal, daily.is_logged, daily.first_day)
    if member.subject.is_pregnant:
        believed = member.believed(found)
        return _Beside(planned, eaten, daily, believed, believed.maintenance)
    counted = daily
    if eaten.is_hardly_logged:
        told = _as_told(log, phase, planned)
        read = read_log(member.person, member.assessed, told, day, phase.usual_intake_kcal, phase_days=phase_days)
        as_steered = maintenance_of(read, member.assessed)
        found = _as_steered(found, as_steered, reading, member.assessed.resting.mean)
        counted = read.daily
    beside = beside_plan(found, phase, day, reading, is_steered=eaten.is_hardly_logged)
    return _Beside(
        planned, eaten, counted, beside, maintenance_told(beside.maintenance, found.maintenance, phase.maintenance)
    )


def told_beside_plan(
    member: Member, phase: FollowedPhase, log: Log, day: int, found: LogMaintenance, reading: Reading
) -> LogMaintenance | None:
    """Maintenance of a log read in a phase, as a review of the same log tells it; None on the morning after its last
    day, from which on a log of food goes on alone."""
    beside = _read_beside(member, phase, log, day, found, reading, [phase.start_day])
    if day >= phase.end_day and not beside.eaten.is_hardly_logged:
        return None
    return msgspec.structs.replace(beside.maintenance, maintenance=beside.told)


def is_by_weight(phase: FollowedPhase, day: int) -> bool:
    """Whether maintenance of a log without any food, read in a phase, comes from how weight answered what was told,
    rather than from the equations alone."""
    return day - phase.start_day >= texts.LEAST_DAYS


def beside_plan(
    found: LogMaintenance, phase: FollowedPhase, day: int, reading: Reading, *, is_steered: bool = False
) -> LogMaintenance:
    """Maintenance as read on a day, beside what the plan started from.

    A plan from the equations alone tells nothing that the reading does not start from itself, and tells it on the scale
    of what is eaten, which nobody's log is on. Where weight alone steers, no change of logging can be taken for one of
    eating, so that any other plan counts for long.
    """
    if not is_steered and not reading.fit.is_logged:
        # Too early for weight to tell, and no log: the plan knew all that the reading does, and what was taught before.
        return msgspec.structs.replace(found, maintenance=phase.maintenance)
    if phase.ratio is None and phase.maintenance.sd >= _OF_EQUATIONS * reading.prior.sd:
        return found
    is_slow = phase.kind.is_deficit or is_steered
    fades = texts.PLAN_FADES_DEFICIT_DAYS if is_slow else texts.PLAN_FADES_DAYS
    return with_plan(found, phase.maintenance, day - phase.start_day, fades, phase.ratio)


def _as_steered(
    found: LogMaintenance, as_told: LogMaintenance, reading: Reading, resting_kcal: float
) -> LogMaintenance:
    """Maintenance as weight tells it of who eats what was told: on the scale of their log where there was one before,
    else as if all of it were eaten, which is the safe side."""
    if reading.fit.is_logged:
        return as_told
    ratio, maintenance = found.logging_ratio, as_told.maintenance
    physical = Estimate(maintenance.mean / ratio.mean, maintenance.sd / ratio.mean)
    steered = msgspec.structs.replace(found, maintenance=maintenance, physical=physical)
    return as_believed(steered, reading.prior, resting_kcal)


def _as_told(log: Log, phase: FollowedPhase, planned: Sequence[float]) -> Log:
    """The log with what was told for the days of the phase on which nobody logged.

    Who logs no food is steered by the scale alone, as a coach does: whether they eat otherwise than they were told or
    need otherwise than was thought, the next step is the same. It is no record of what was eaten, and is not handed on.
    It is read as a log is: who eats by eye eats more than they are told by as much as others leave out. Taken for all
    that is eaten, simulated members who eat by eye ended 4.2 kg from what they asked for instead of 3.6, and those who
    eat just what they are told 2.3 instead of 2.4.
    """
    logged = {entry.day for entry in log.intakes if entry.is_whole}
    first = 0 if log.onset is None else log.onset.day
    told = {
        day: IntakeDay(day, kcal)
        for day, kcal in enumerate(planned, phase.start_day)
        if day >= first and day not in logged
    }
    kept = [entry for entry in log.intakes if entry.day not in told]
    before = log.onset
    if before is not None:
        # Months without food before the phase are no gaps in what was told: they would draw it back to the equations.
        before = msgspec.structs.replace(before, days=before.days_logged)
    intakes = sorted([*kept, *told.values()], key=lambda entry: entry.day)
    return msgspec.structs.replace(log, onset=before, intakes=intakes)


def _share_followed(
    phase: FollowedPhase,
    planned: Sequence[float],
    intake: Sequence[float],
    is_logged: Sequence[float],
    first_day: int,
) -> float:
    """How well what was told of late is kept to, as logged: drawn to 1 as far as day-to-day eating explains it.

    Beyond a tenth it is not for the plan to make up for. What is logged over it counts for less from there on, and from
    a fifth on for nothing: a plan that is not followed is not followed any better when it tells less.
    """
    told = logged = days = 0.0
    for i in range(max(0, len(planned) - _FOLLOWED_DAYS), len(planned)):
        at = phase.start_day + i - first_day
        if 0 <= at < len(intake) and is_logged[at]:
            told += planned[i]
            logged += intake[at]
            days += 1.0
    if not days:
        return 1.0
    apart = logged / told - 1.0
    error2 = DAY_ERROR**2 / days
    apart *= apart * apart / (apart * apart + error2)
    most = texts.MOST_MADE_UP_SHARE
    return 1.0 + min(most, max(-most, min(apart, max(0.0, 2.0 * most - apart))))


def _eaten(
    phase: FollowedPhase,
    planned: Sequence[float],
    intake: Sequence[float],
    is_logged: Sequence[float],
    first_day: int,
) -> EatenSoFar:
    days = len(planned)
    mean_planned = sum(planned) / days if days else phase.weeks[0].intake_kcal
    logged, gaps, lately = [], [], list[float]()
    for i in range(days):
        at = phase.start_day + i - first_day
        if 0 <= at < len(intake) and is_logged[at]:
            logged.append(intake[at])
            gaps.append(intake[at] - planned[i])
            if i >= days - _RECENT_DAYS:
                lately.append(gaps[-1])
    if not logged:
        return EatenSoFar(days, 0, None, mean_planned, None)
    n = len(logged)
    mean = sum(logged) / n
    # The logged days carry their random error; the others may differ from them for good.
    error2 = (DAY_ERROR * mean) ** 2 / n + ((1.0 - n / days) * UNLOGGED_BIAS * mean) ** 2
    last_week = sum(lately) / len(lately) if 2 * len(lately) > _RECENT_DAYS else None
    return EatenSoFar(days, n, mean, mean_planned, Estimate(sum(gaps) / n, math.sqrt(error2)), last_week)


class BodyNow(NamedTuple):
    """The body on the day of the review, on the physical scale, and its changes since the phase's start [kg].

    ``water_off_kg`` is what it carries beyond what intake leads to expect, and ``carried`` what that does from here on.
    """

    body: Body
    tissue: Estimate
    fat: Estimate
    lean: Estimate
    carried: CarriedAhead
    water_off_kg: float = 0.0


def body_now(member: Member, phase: FollowedPhase, now: Now, unseen_tissue: Estimate) -> BodyNow:
    """Split the change of tissue into fat and lean as the model shares it, and carry the body on from there.

    Args: ``unseen_tissue``: change from the phase's start to the first weighing within it, which no one saw.
    """
    tissue = Estimate(now.window.tissue.mean + unseen_tissue.mean, math.hypot(now.window.tissue.sd, unseen_tissue.sd))
    scale = 1.0 / now.ratio
    log_maintenance = now.maintenance.maintenance
    maintenance = Estimate(scale * log_maintenance.mean, scale * log_maintenance.sd)
    usual = None if phase.usual_intake_kcal is None else scale * phase.usual_intake_kcal
    before = body_of(member.person, member.assessed, maintenance, usual)
    fat = lean = Estimate(0.0, 0.0)
    if now.days > 0:
        fat, lean = _share(phase, now, before, member.subject.protein_kg, tissue, scale)
    weight = now.weight_kg.mean
    fat_kg = min(max(before.fat_kg.mean + fat.mean, _LEAST_FAT * weight), _MOST_FAT * weight)
    return BodyNow(
        before._replace(
            weight_kg=weight,
            fat_kg=Estimate(fat_kg, math.hypot(before.fat_kg.sd, fat.sd)),
            maintenance_kcal=maintenance,
            experience_years=before.experience_years + before.training_dose * now.days / 365.25,
            new_training=0.0,
            usual_intake_kcal=scale * now.recent_intake_kcal,
        ),
        tissue,
        fat,
        lean,
        now.carried,
        now.water_off.mean,
    )


def _share(
    phase: FollowedPhase, now: Now, before: Body, protein_kg: float, tissue: Estimate, scale: float
) -> tuple[Estimate, Estimate]:
    """Change of fat and of lean tissue, given that of both."""
    eaten = now.eaten.planned_kcal + (now.eaten.difference.mean if now.eaten.difference else 0.0)
    planned = diet_of_week(phase.week_of(now.days // 2), protein_kg)
    share = planned.carbohydrate_kcal / planned.intake_kcal
    diet = Diet(scale * eaten, scale * eaten * share, planned.protein_g_per_kg)
    weeks, rest = divmod(now.days, 7)
    lengths = (7.0,) * weeks + ((float(rest),) if rest else ())
    model, start = start_body(before)
    end = walk(model, start, diet, lengths)[-1]
    more = advance(model, start, diet._replace(intake_kcal=diet.intake_kcal + 100.0), float(now.days))
    # How much of a further kilogram of tissue is fat.
    of_fat = float((more.fat_kg - end.fat_kg) / (more.tissue_kg - end.tissue_kg))
    expected_fat, expected = float(end.fat_kg - start.fat_kg), float(end.tissue_kg - start.tissue_kg)
    fat = expected_fat + of_fat * (tissue.mean - expected)
    partition = partition_of(model, start, planned.protein_g_per_kg, is_gaining=tissue.mean > 0.0)
    sharing_sd = partition.sharing_sd_kg(tissue.mean, float(now.days))
    return (
        Estimate(fat, math.hypot(of_fat * tissue.sd, sharing_sd)),
        Estimate(tissue.mean - fat, math.hypot((1.0 - of_fat) * tissue.sd, sharing_sd)),
    )
