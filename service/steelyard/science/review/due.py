"""What is due: a change of intake or of the phase's end, on which two readings a week apart agree.

A log is read as it stood on the last morning that is a whole number of weeks into the phase, and as it stood a week
before that. So one week of water changes nothing, and what is told stays the same from one day to the next.
"""

import math
from typing import NamedTuple

import msgspec

from ..body import Body
from ..log import Log, is_known_on, paused_until
from ..measures import body_of
from ..member import Member
from ..numbers import Estimate
from ..phase import (
    DAYS_PER_WEEK,
    MOST_WEEKS,
    FollowedPhase,
    PhaseKind,
    PromisedChange,
    PromisedPath,
    gain_ceiling,
)
from ..rails import GAIN_RATE_LIMIT, Scale, Subject, forbids_fat_target, may_not_diet
from ..register import traced
from . import texts
from .correction import STEP_KCAL, RestOfPhase
from .question import Finding, Settled
from .reading import Now, body_now, read_phase

_SEARCHED_SHARE = 0.6  # of maintenance: no purpose takes a larger change


class PhaseRead(NamedTuple):
    """A phase as its log tells it on a day."""

    now: Now
    course: RestOfPhase
    promised: PromisedPath
    planned: PromisedChange  # over the window


class Need(NamedTuple):
    """What the purpose would take from a day on: a change of the told intake [kcal/d], or an end on another day.

    ``end_day``: the morning after the last day that the fat to lose takes at the told intake; None where no such fat
    was asked for, or it is not lost within the limits of the phase.
    """

    change: Estimate
    end_day: int | None
    days_left: int = 0  # of the phase, as it is


class Futile(NamedTuple):
    """Why a deficit is not worth going on with: after so many weeks at it hardly anything came off, or (``fat_kg``) so
    much is lost at most of what was asked for. ``last_day``: the last that it may have, ``days_left`` until then from
    the last whole week; ``is_gaining``: whether tissue was gained for certain."""

    weeks: int
    last_day: int
    days_left: int
    fat_kg: float | None
    is_gaining: bool


class Full(NamedTuple):
    """A gain at its ceiling: the body fat that is read, and the one at which it ends (fractions)."""

    fat_fraction: float
    ceiling: float


class Overrun(NamedTuple):
    """A gain that is for certain faster than the ceiling on its rate: tissue gained in so many weeks, and the most of
    it that the ceiling leaves [kg]."""

    weeks: int
    gained_kg: float
    most_kg: float


class Due(NamedTuple):
    """What two readings agree on: a change of intake [kcal/d], and the morning on which the phase then ends.

    ``waits``: the later reading alone says so; the next review tells. ``is_met``: the fat to lose is lost by today's
    reading, and by the last whole week's it was to be lost by now. ``futile``: why to end a deficit that does not do
    what it is for. ``full`` and ``overrun``: why to end a gain.
    """

    change_kcal: int = 0
    end_day: int | None = None
    waits: bool = False
    is_met: bool = False
    futile: Futile | None = None
    full: Full | None = None
    overrun: Overrun | None = None


NOTHING = Due()


@traced
def read_on(member: Member, phase: FollowedPhase, log: Log, day: int, settled: Settled | None = None) -> PhaseRead:
    """Read a phase on the morning of ``day``, from the log as it is handed and what was ``settled`` by then."""
    is_more = settled is not None and settled.found is Finding.MORE_THAN_LOGGED and settled.day < day
    now = read_phase(member, phase, log, day, settled.day if settled is not None and is_more else None)
    unseen = now.days - now.window_days
    scale = 1.0 / now.ratio
    usual = None if phase.usual_intake_kcal is None else scale * phase.usual_intake_kcal
    from_start = Estimate(scale * phase.maintenance.mean, scale * phase.maintenance.sd)
    body_before = body_of(member.person, member.assessed, from_start, usual)
    if phase.adherence is not None:
        # The plan promised what such a person gets of it.
        body_before = body_before._replace(kept=phase.adherence.kept)
    promised = PromisedPath(phase, body_before, member.subject.protein_kg, now.ratio, (unseen, now.days))
    planned = promised.change(unseen, now.days)
    body = body_now(member, phase, now, promised.change(0, unseen).tissue)
    subject = _grown(member, _subject(member, phase, log, now), body.body)
    return PhaseRead(now, RestOfPhase(phase, subject, body, now.ratio, day), promised, planned)


def _grown(member: Member, subject: Subject, body: Body) -> Subject:
    """The subject with the need of today's ``body`` where that has grown: of minors, and of others who may not diet."""
    if not may_not_diet(subject) or body.weight_kg <= member.person.weight_kg:
        return subject
    by_now = member.prior_in(float(body.weight_kg), body.fat_kg).mean
    return subject._replace(physical_kcal=max(subject.physical_kcal, by_now))


def _subject(member: Member, phase: FollowedPhase, log: Log, now: Now) -> Subject:
    """What the rails read of the member at the phase's start, with what the log tells of their scale."""
    learnt = now.maintenance
    scale = member.scale_by(learnt)
    if now.eaten.is_hardly_logged:
        # What was told is no record of what is eaten: no rail gives way to it beyond what a log told the plan.
        known = Scale()
        if now.reading.fit.is_logged:
            ratio = learnt.logging_ratio if phase.ratio is None else phase.ratio
            known = member.scale_by(msgspec.structs.replace(learnt, logging_ratio=ratio))
        scale = Scale(max(scale.ratio, known.ratio), max(scale.most, known.most))
    return member.subject._replace(
        maintenance_kcal=learnt.maintenance.mean,
        scale=scale,
        physical_kcal=max(member.prior.mean, learnt.physical.mean),
        logged=member.logged_in(log),
    )


def what_is_due(
    member: Member, phase: FollowedPhase, log: Log, today: PhaseRead, settled: Settled | None = None, *, is_off: bool
) -> Due:
    """What the log says to change, as it stood on the last whole week of the phase and the week before.

    On plan, or asked about (not ``is_off``), nothing is changed but the end, which only fat to lose moves, and what
    reviews added to a hold, which is taken back where it is no longer needed.

    Both readings come after the last change, which had its time to work. Where food was found missing, or water, they
    come after that as well; where the log is known to be complete, one reading is enough.
    """
    added = added_to_hold(phase)
    days = (anchor_of(phase, today.now.day), today.now.day)
    if any(paused_until(log.events, day) is not None for day in days):
        return NOTHING._replace(is_met=_is_met(member, phase, log, today, settled))  # weight says little meanwhile
    if not is_off and phase.fat_loss_kg is None and added <= 0.0:
        return NOTHING
    is_met = _is_met(member, phase, log, today, settled)
    found = _change_due(member, phase, log, today, settled, is_off=is_off or added > 0.0)
    if not is_off:
        found = found._replace(change_kcal=int(min(0.0, max(found.change_kcal, -added))), waits=False)
    return found._replace(is_met=is_met)


def added_to_hold(phase: FollowedPhase) -> float:
    """What reviews added to the intake of a hold [kcal/d]; 0 of any other phase."""
    if phase.kind is not PhaseKind.MAINTENANCE:
        return 0.0
    return max(0.0, sum(change.change_kcal for change in phase.changes))


def _is_met(member: Member, phase: FollowedPhase, log: Log, today: PhaseRead, settled: Settled | None) -> bool:
    """Whether the fat to lose is lost, on which two readings agree: today's and that of a whole week before it."""
    target, now = phase.fat_loss_kg, today.now
    if target is None or -today.course.now.fat.mean < target:
        return False
    before = anchor_of(phase, now.day - 1)
    past = log_until(log, before)
    if before < phase.start_day + texts.LEAST_DAYS or not past.weighings:
        return False
    due_by = need_of(phase, read_on(member, phase, past, before, settled)).end_day
    return due_by is not None and due_by <= now.day + texts.LEAST_DAYS_LEFT


def _change_due(
    member: Member, phase: FollowedPhase, log: Log, today: PhaseRead, settled: Settled | None = None, *, is_off: bool
) -> Due:
    """What is to be changed of the intake or of the end."""
    day = anchor_of(phase, today.now.day)
    before = day - DAYS_PER_WEEK
    last = max((change.day for change in phase.changes), default=phase.start_day)
    if settled is not None and settled.found in (Finding.MORE_THAN_LOGGED, Finding.WATER):
        last = max(last, settled.day)
    if last > before or before < phase.start_day + DAYS_PER_WEEK:
        return NOTHING
    is_known = settled is not None and settled.found is Finding.AS_LOGGED and settled.day > before
    is_alone = before < phase.start_day + texts.LEAST_DAYS and not is_known
    if is_alone and not is_off:
        return NOTHING  # one reading changes nothing, and that a second must agree is told to who is off

    def need_on(morning: int) -> Need | None:
        if morning == today.now.day:
            return need_of(phase, today)
        past = log_until(log, morning)
        if not past.weighings:
            return None
        read = read_on(member, phase, past, morning, settled)
        return need_of(phase, read) if read.now.weighings >= texts.LEAST_WEIGHINGS else None

    later = need_on(day)
    if later is None or due(phase, later, later) == NOTHING:
        return NOTHING  # what it does not ask for itself no earlier one can agree with
    earlier = None
    # Two readings of the same weighings are one: the scale has to agree as well.
    is_seen = any(before < weighing.day <= day for weighing in log.weighings)
    # Nor does one agree that was taken while an event hid what weight says.
    is_seen = is_seen and paused_until(log.events, before) is None
    if is_known and is_seen:
        earlier = later
    elif not is_alone and is_seen:
        earlier = need_on(before)
    found = due(phase, earlier, later)
    return NOTHING if _turns_back(phase, found.change_kcal, day) else found


@traced
def futile(
    member: Member, phase: FollowedPhase, log: Log, today: PhaseRead, settled: Settled | None = None
) -> Futile | None:
    """Why a deficit that is behind its plan is not worth going on with, on which two readings a week apart agree.

    Not before it had its time, five to six weeks of days outside breaks, or four where tissue was gained; nor while
    water or food that was found missing has not had a fortnight to show.
    """
    day = anchor_of(phase, today.now.day)
    before = day - DAYS_PER_WEEK
    worked = phase.worked_days(day - phase.start_day)
    if not phase.kind.is_deficit or worked < texts.FUTILE_GAINING_DAYS:
        return None
    if _is_to_show(settled, before):
        return None
    found = None
    for morning in (before, day):
        past = log_until(log, morning)
        if not past.weighings:
            return None
        read = today if morning == today.now.day else read_on(member, phase, past, morning, settled)
        found = None if read.now.is_unseen else futile_on(phase, read)
        if found is None or (worked < _least_worked(phase) and not found.is_gaining):
            return None
    return found


def _is_to_show(settled: Settled | None, day: int) -> bool:
    """Whether water, or food that was found missing, has not had a fortnight by then to show."""
    is_other = settled is not None and settled.found in (Finding.MORE_THAN_LOGGED, Finding.WATER)
    return is_other and settled is not None and day < settled.day + texts.LEAST_DAYS


@traced
def ended_gain(
    member: Member, phase: FollowedPhase, log: Log, today: PhaseRead, settled: Settled | None = None
) -> tuple[Full | None, Overrun | None]:
    """Why a gain is to end: by body fat as the last whole week read it, so that the next day says the same; and by its
    rate, on which that week's reading and the one before agree."""
    subject, day = today.course.subject, anchor_of(phase, today.now.day)
    before = day - DAYS_PER_WEEK
    if phase.kind is not PhaseKind.GAIN or subject.is_pregnant or before < phase.start_day + DAYS_PER_WEEK:
        return None, None

    def read_in(morning: int) -> PhaseRead | None:
        past = log_until(log, morning)
        if morning == today.now.day:
            return today
        return read_on(member, phase, past, morning, settled) if past.weighings else None

    later = read_in(day)
    if later is None:
        return None, None
    full, overrun = _full_on(phase, later), _overrun_on(later)
    is_early = day < phase.start_day + texts.FUTILE_GAINING_DAYS or _is_to_show(settled, before)
    if overrun is None or is_early or may_not_diet(subject):
        return full, None
    earlier = read_in(before)
    return full, None if earlier is None or _overrun_on(earlier) is None else overrun


def _full_on(phase: FollowedPhase, read: PhaseRead) -> Full | None:
    """By body fat as one reading has it: at the ceiling that was told, or the usual one of those to whom none is."""
    subject, ceiling = read.course.subject, phase.fat_ceiling
    if forbids_fat_target(subject) is not None:
        ceiling = gain_ceiling(subject)
    if ceiling is None or subject.fat_fraction < ceiling:
        return None
    return Full(subject.fat_fraction, ceiling)


def _overrun_on(read: PhaseRead) -> Overrun | None:
    """By its rate as one reading has it: so far by all of its 80 % interval, and of late."""
    now, subject = read.now, read.course.subject
    most_kg = GAIN_RATE_LIMIT[subject.training_status] * subject.weight_kg / DAYS_PER_WEEK  # a day
    gained, lately = now.window.tissue, now.fortnight_tissue
    if now.is_unseen or lately is None or now.window_days < texts.LEAST_DAYS:
        return None
    if gained.lower <= most_kg * now.window_days or lately.mean <= most_kg * texts.LEAST_DAYS:
        return None
    return Overrun(now.window_days // DAYS_PER_WEEK, gained.mean, most_kg * now.window_days)


def _least_worked(phase: FollowedPhase) -> int:
    """Days outside breaks before a deficit may be found futile: half of them, five weeks at least and six at most."""
    half = phase.worked_days(phase.days) // 2
    return min(texts.FUTILE_MOST_DAYS, max(texts.FUTILE_LEAST_DAYS, half))


def futile_on(phase: FollowedPhase, read: PhaseRead) -> Futile | None:
    """What one reading says of it."""
    now, course = read.now, read.course
    worked = phase.worked_days(now.days)
    ahead = days_ahead_at_most(phase, now.day)
    weeks, last_day = worked // DAYS_PER_WEEK, now.day + ahead - 1
    if _is_nowhere(phase, read):
        return Futile(weeks, last_day, ahead, None, is_gaining=now.window.tissue.lower > 0.0)
    if phase.fat_loss_kg is None:
        return None
    lost = -course.now.fat.mean
    if ahead > 0:
        limits = course.limits(ahead)
        if limits.refusal is not None:
            return None
        lost = -course.fat_change(max(limits.least, -float(texts.MOST_STEP_KCAL)), ahead)
    is_too_far = lost < texts.FUTILE_GOAL_SHARE * phase.fat_loss_kg
    return Futile(weeks, last_day, ahead, lost, is_gaining=False) if is_too_far else None


def _is_nowhere(phase: FollowedPhase, read: PhaseRead) -> bool:
    """Whether hardly anything of what was planned came off, in all and of late."""
    now, planned = read.now, read.planned.tissue.mean
    observed, lately = now.window.tissue, now.fortnight_tissue
    worked = phase.worked_days(now.days) - phase.worked_days(now.days - now.window_days)
    if planned >= 0.0 or lately is None or worked < texts.LEAST_DAYS:
        return False
    per_fortnight = planned * texts.LEAST_DAYS / worked
    share = texts.FUTILE_SHARE
    return (
        observed.mean > share * planned and observed.lower > 2.0 * share * planned and lately.mean > per_fortnight / 2.0
    )


def days_ahead_at_most(phase: FollowedPhase, day: int) -> int:
    """How many days a deficit may go on from a day at most: to its end, or for fat to lose a mini-cut its six weeks
    and a cut its extension."""
    if phase.fat_loss_kg is None:
        return max(0, phase.end_day - day)
    if phase.kind is PhaseKind.MINI_CUT:
        return phase.days_to_work(day - phase.start_day, MOST_WEEKS * DAYS_PER_WEEK)
    return max(0, phase.start_day + phase.days + texts.MOST_EXTENSION_DAYS - day)


def _turns_back(phase: FollowedPhase, change_kcal: float, day: int) -> bool:
    """Whether a step would take back one that has hardly been followed."""
    return any(
        change.change_kcal * change_kcal < 0.0 and day - change.day < texts.TURN_BACK_DAYS for change in phase.changes
    )


def anchor_of(phase: FollowedPhase, day: int) -> int:
    """The last morning, a whole number of weeks into the phase, that a review on ``day`` acts on."""
    return phase.start_day + (day - phase.start_day) // DAYS_PER_WEEK * DAYS_PER_WEEK


def log_until(log: Log, day: int) -> Log:
    """The log as it stood on a morning, that day's weighing included."""
    return log.only(lambda entry: is_known_on(entry, day))


def need_of(phase: FollowedPhase, read: PhaseRead) -> Need:
    """What the purpose would take from the day of a reading on."""
    course = read.course.followed_by(read.now.share_followed)
    read = read._replace(course=course)
    left = max(1, course.days_left)
    if phase.fat_loss_kg is not None:
        reach = course.days_to_lose(phase.fat_loss_kg, 0.0, days_ahead_at_most(phase, read.now.day))
        span = _SEARCHED_SHARE * course.maintenance_kcal
        kcal = course.restore_fat(phase.fat_loss_kg, left, -span, span)
        found = Estimate(kcal, _error_of(read, left))
        return Need(found, None if reach is None else read.now.day + reach, left)
    return Need(_need_of_tissue(phase, read, left), None)


def _need_of_tissue(phase: FollowedPhase, read: PhaseRead, left: int) -> Estimate:
    """The change that has tissue go as promised from here, and makes up for what is missing of a gain or a hold.

    What is missing is made up over eight weeks or what is left, if that is more; of a deficit of which only the
    length was asked for nothing is made up.
    """
    course, now = read.course, read.now
    ahead = read.promised.change(now.days, phase.days).tissue.mean
    days = left
    if not phase.kind.is_deficit:
        days = max(left, texts.MADE_UP_DAYS)
        ahead *= days / left
        missing = read.planned.tissue.mean - now.window.tissue.mean
        if course.subject.is_breastfeeding:
            missing = min(0.0, missing)  # what goes after a birth, and into the milk, is not to come back
        ahead += missing * missing**2 / (missing**2 + now.window.tissue.sd**2)
    span = _SEARCHED_SHARE * course.maintenance_kcal
    return Estimate(course.restore_tissue(ahead, days, -span, span), _error_of(read, days))


def _error_of(read: PhaseRead, days: int) -> float:
    """SD of a need: of maintenance, and of tissue so far over the days in which it is made up."""
    now = read.now
    per_day = now.rho_kcal_per_kg * now.window.tissue.sd / max(days, texts.MADE_UP_DAYS)
    return math.hypot(now.maintenance.maintenance.sd, per_day)


def step_of(need: Estimate) -> float:
    """The step towards a need that its reliability allows [kcal/d]: none while its 80 % interval holds zero."""
    size = abs(need.mean)
    if need.lower <= 0.0 <= need.upper or size < texts.NOTABLE_KCAL:
        return 0.0
    reliable = size * size / (size * size + need.sd * need.sd)
    return math.copysign(min(reliable * size, float(texts.MOST_STEP_KCAL)), need.mean)


@traced
def due(phase: FollowedPhase, earlier: Need | None, later: Need) -> Due:
    """What two needs agree on; the lesser of the two where they agree on a direction."""
    if phase.fat_loss_kg is not None:
        return _due_of_fat(phase, earlier, later)
    step = step_of(later.change)
    if phase.kind.is_deficit:
        step = min(step, 0.0)
    return _agreed(None if earlier is None else step_of(earlier.change), step)


def _agreed(earlier: float | None, later: float) -> Due:
    if later == 0.0:
        return NOTHING
    if earlier is None or earlier * later <= 0.0:
        return Due(waits=True)
    kcal = min(abs(earlier), abs(later))
    return Due(change_kcal=STEP_KCAL * round(math.copysign(kcal, later) / STEP_KCAL))


def _due_of_fat(phase: FollowedPhase, earlier: Need | None, later: Need) -> Due:
    """The end moves before the intake does: less is eaten only where no end within the limits reaches the fat.

    It moves by no less than a day for each week that is left: so far ahead no forecast is any surer.
    """
    least = max(texts.LEAST_DAYS_LEFT, later.days_left // DAYS_PER_WEEK)
    if later.end_day is None:
        return _agreed(None if earlier is None else min(0.0, step_of(earlier.change)), min(0.0, step_of(later.change)))
    moved = later.end_day - phase.end_day
    if abs(moved) < least:
        return NOTHING
    if earlier is None:
        return Due(waits=True)
    if earlier.end_day is None:
        return Due(end_day=later.end_day) if moved > 0 else Due(waits=True)
    before = earlier.end_day - phase.end_day
    if before * moved <= 0 or abs(before) < least:
        return Due(waits=True)
    return Due(end_day=phase.end_day + (min(before, moved) if moved > 0 else max(before, moved)))
