"""Review a phase: what happened against what was planned, and what to do about it.

The verdict compares the change of tissue that the log tells with what counts as planned for that day, so that water
never counts. Until a fortnight of the phase and enough weighings are there, it is too early. What is then due is sought
from two readings a week apart (``due``), and told inside every guard rail.
"""

import math
from collections.abc import Callable
from datetime import date

import msgspec

from ..body import Adherence, Forecast, PathPoint, apart_from_people
from ..log import ABOUT_LOGGING, STALE, CarriedAhead, Log, LogMaintenance, Reading, day_of, gathered
from ..member import Member
from ..numbers import Estimate
from ..phase import DAYS_PER_WEEK, MOST_WEEKS, FollowedPhase, PhaseKind, Verdict, rebound, signs_to_stop
from ..rails import Cleared, RailAction, Subject, may_hear_of_leanness, may_not_diet, periods_of
from ..register import Basis, Kind, Message, OutOfDomain, equation, say
from . import texts
from .adherence import adherence_of
from .advice import Ahead, advise, cleared
from .aftermath import Aftermath
from .check_in_signs import heed, says_no_cycle
from .correction import RestOfPhase, Stint
from .due import NOTHING, Due, ended_gain, futile, read_on, what_is_due
from .next_step import Advice, NextStep
from .notes import still_to_note
from .question import LastAsked, OpenQuestion, Settled, question_of
from .reading import Changes, EatenSoFar, Now
from .reasons import settling, why_judged, with_advice
from .under_way import check_side
from .verdict import Judged, Probabilities, is_logged_off, judge_phase, up_of


class Before(msgspec.Struct, frozen=True, kw_only=True):
    """What the reviews before told, which this one goes on from: day and verdict of the last, the question asked."""

    day: int | None = None
    verdict: Verdict | None = None
    asked: LastAsked | None = None

    def of_phase(self, start_day: int, day: int) -> "Before":
        """What of it was told in the phase that began on a day, and not after the day to review it on."""
        is_of_phase = self.day is not None and start_day <= self.day <= day
        asked = self.asked
        return Before(
            day=self.day if is_of_phase else None,
            verdict=self.verdict if is_of_phase else None,
            asked=asked if asked is not None and start_day <= asked.day <= day else None,
        )


class Review(msgspec.Struct, frozen=True):
    """A phase reviewed. Changes since its start [kg], intakes on the logging scale [kcal/d].

    ``since_day`` begins the window that the log covers; ``ratio`` is logged over eaten energy.
    ``planned_tissue`` and ``changes`` are of the window that the log covers, ``tissue``, ``fat`` and ``lean`` of
    the whole phase so far. ``water_off`` is what is carried beyond what intake leads to expect, and ``carried`` what
    that does from here on. ``maintenance_told`` is as sure of maintenance as log and plan agree. ``now`` and ``then``
    are what the rails read of the body on the day reviewed and on the last of the phase, ``told`` what is to be eaten
    from the day reviewed on; ``reading`` is what is handed on, and ``adherence`` how well deficits are kept to, as far
    as that is known. ``asked`` is the question last asked, and ``is_unanswered`` whether it stands past the day until
    which to wait: then ``question`` does not ask it again.
    """

    day: int
    days: int
    since_day: int
    ratio: float
    is_finished: bool
    is_deficit: bool
    protein_reference_kg: float | None
    verdict: Verdict
    probabilities: Probabilities
    more_days_needed: int
    planned_tissue: Estimate
    changes: Changes
    water_off: Estimate
    carried: CarriedAhead
    tissue: Estimate
    fat: Estimate
    lean: Estimate
    fat_fraction: Estimate
    eaten: EatenSoFar
    implied_difference: Estimate | None
    question: OpenQuestion | None
    asked: LastAsked | None
    is_unanswered: bool
    maintenance: LogMaintenance
    maintenance_told: Estimate
    maintenance_change: Estimate
    now: Subject
    then: Subject
    told: Cleared[Ahead]
    weight_kg: Estimate
    noise_sd_kg: float
    reading: Reading
    told_lately_kcal: float | None  # a day over the last week, where hardly any food is logged
    adherence: Adherence | None
    reasons: list[Message]
    notes: list[Message]

    @property
    def advice(self) -> Advice:
        """What to do, which has passed the gate."""
        return self.told.value.advice

    @property
    def path(self) -> Forecast | None:
        """The days to come, which have passed the gate."""
        return self.told.value.path

    @property
    def stints(self) -> list[Stint]:
        """What to eat in the days to come, which has passed the gate."""
        return self.told.value.stints

    @property
    def aftermath(self) -> Aftermath | None:
        """What comes after the phase, which has passed the gate."""
        return self.told.value.aftermath

    @property
    def returns(self) -> list[Message]:
        """What the scale does after a deficit that ends."""
        after = self.aftermath
        return rebound(after.rebound.mean, texts.REBOUND_AHEAD) if self.is_deficit and after is not None else []

    @property
    def ends_early_when(self) -> list[Message]:
        """What ends the days to come before their last; empty where no deficit goes on."""
        return signs_to_stop(self.now) if self.is_deficit and self.advice.days_ahead else []

    @property
    def actions(self) -> list[RailAction]:
        """What the rails did."""
        return self.advice.actions

    def points_of(self, path: Forecast) -> list[PathPoint]:
        """The points of a path from the day reviewed on, its start left out: maintenance on the logging scale, carried
        mass with the water that the log found, as the rails read it, and a single weighing with the error of today's
        level and daily noise."""
        weighing = self.weight_kg.sd**2 + self.noise_sd_kg**2
        start, *states = path.states
        beyond = [
            self.carried.beyond_model(float(state.carried_kg - start.carried_kg), float(state.day - start.day))
            for state in states
        ]
        points = zip(path.points()[1:], beyond, strict=True)
        return [at.logged(self.ratio, weighing, self.water_off, moves) for at, moves in points]


@equation(
    "phase_review",
    summary="Verdict on a phase, and the step that is due",
    formula=(
        "probability that the change of tissue since the start lies under, in or over what counts as planned: "
        f"{texts.PLAN_SHARE:g} of the way that the plan expects, {texts.PLAN_LEAST_KG:g} kg at least, its own 80 % "
        f"interval at most; too early before {texts.LEAST_DAYS} days or {texts.LEAST_WEIGHINGS} weighings, or while "
        "the error of tissue exceeds half that interval; need: root of forecast(from the body read) - purpose in the "
        "intake; step: the lesser need of two readings a week apart x need^2 / (need^2 + error^2), rounded to 10 kcal "
        "inside every rail"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="phases of at least two weeks with dated weighings",
)
def review_phase(
    member: Member,
    phase: FollowedPhase,
    log: Log,
    as_of_day: int,
    *,
    is_finished: bool = False,
    settled: Settled | None = None,
    before: Before | None = None,
    after: Callable[[], LogMaintenance | None] = lambda: None,
) -> Review:
    """Review ``phase`` on the morning of ``as_of_day``.

    Args: ``member`` as at the phase's start; ``log`` may begin before it, which helps; ``settled``: the answer to the
        question that an earlier review asked; ``before``: what the reviews before told; ``after``: maintenance as
        whatever comes after the phase reads it, which one that ends tells: nobody hears of two in one morning.
    Raises: ``OutOfDomain`` on a log that cannot be read or a phase that had not begun; ``rails.Refused``
        where a deficit is still running and the screening was not answered.
    """
    _check_asked(phase, as_of_day, settled)
    finished = is_finished or as_of_day >= phase.end_day
    day = min(as_of_day, phase.end_day)
    log, later = log_up_to(log, day, as_of_day)
    read = read_on(member, phase, log, day, settled)
    now, course = read.now, read.course
    before = before or Before()
    told_before = before.of_phase(phase.start_day, day)
    judged = judge_phase(phase, log, day, read, told_before.verdict)
    is_open = not finished and judged.verdict is not Verdict.TOO_EARLY
    implied = None if course.subject.is_pregnant else _implied(now, judged)
    explains_all = _is_enough(now.eaten.difference, implied)
    found = what_is_due(member, phase, log, read, settled, is_off=judged.is_off) if is_open else NOTHING
    if explains_all:
        found = _kept_first(phase, course.subject, now, judged, found)
    if is_open and judged.acted_on in (Verdict.SLOWER, Verdict.CONTRADICTED):
        found = found._replace(futile=futile(member, phase, log, read, settled))
    if is_open:
        full, overrun = ended_gain(member, phase, log, read, settled)
        found = found._replace(full=full, overrun=overrun if judged.verdict is Verdict.FASTER else None)
    adherence = adherence_of(member, phase, now)
    course.apart = apart_from_people(adherence)
    by_log = advise(phase, course, now, read.promised, judged.acted_on, finished, found)
    # Who hardly logs food goes on with what the scale taught in the phase.
    is_told_after = not (course.subject.is_pregnant or now.eaten.is_hardly_logged)

    def ended(course: RestOfPhase) -> RestOfPhase:
        found = after() if is_told_after else None
        return course if found is None else course.told_as(found, member.scale_by(found))

    told = cleared(course, heed(log.check_ins, course, day, by_log), ended)
    advice = told.value.advice
    read_after = after() if is_told_after and advice.decision is NextStep.END else None
    now_told = now
    if read_after is not None:
        now_told = now._replace(maintenance=read_after, maintenance_told=read_after.maintenance)
    question = None
    if (
        is_open
        and advice.may_be_settled
        and judged.verdict is not Verdict.WITHIN_INTERVAL
        and not (is_logged_off(phase, now, judged.verdict) and explains_all)
    ):
        gap, sex, asked = 0.0 if implied is None else implied.mean, member.person.sex, told_before.asked
        has_no_cycle = periods_of(course.subject) == "no" or says_no_cycle(log.check_ins, day)
        question = question_of(
            now.explained, gap, day, sex, knows_cycle=has_no_cycle or now.knows_cycle, settled=settled, asked=asked,
            events=log.events,
            speaks=may_hear_of_leanness(course.subject.age_years, course.subject.screening),
        )  # fmt: skip
    is_by_log = by_log.correction_kcal != 0
    is_unanswered = question is not None and question.until_day < day
    question = None if is_unanswered else question
    maintenance, fat = now_told.maintenance_told, course.now.body.fat_kg
    unseen = now.days - now.window_days
    return Review(
        day=day,
        days=now.days,
        since_day=phase.start_day + unseen,
        ratio=now.ratio,
        is_finished=finished,
        is_deficit=phase.kind.is_deficit,
        protein_reference_kg=course.fed.protein_kg if phase.kind.is_deficit else None,
        verdict=judged.verdict,
        probabilities=judged.likely,
        more_days_needed=judged.more_days,
        planned_tissue=judged.planned,
        changes=now.window,
        water_off=now.water_off,
        carried=now.carried,
        tissue=course.now.tissue,
        fat=course.now.fat,
        lean=course.now.lean,
        fat_fraction=Estimate(fat.mean / now.weight_kg.mean, fat.sd / now.weight_kg.mean),
        eaten=now.eaten,
        implied_difference=implied,
        question=question,
        asked=told_before.asked if question is None else question.asked,
        is_unanswered=is_unanswered,
        maintenance=now_told.maintenance,
        maintenance_told=maintenance,
        maintenance_change=Estimate(
            maintenance.mean - phase.maintenance.mean, math.hypot(maintenance.sd, phase.maintenance.sd)
        ),
        now=course.subject,
        then=course.subject_at(course.end(float(advice.correction_kcal), max(1, advice.days_ahead))),
        told=told,
        weight_kg=now.weight_kg,
        noise_sd_kg=now.noise_sd_kg,
        reading=now.reading,
        told_lately_kcal=None if course.subject.is_pregnant else _told_lately(phase, now),
        adherence=adherence,
        reasons=[
            *why_judged(phase, now_told, judged, member.subject, advice),
            *settling(settled, question),
            *(judged.waits if advice.is_as_planned else []),  # they say that nothing changes
            *with_advice(phase, now, judged.verdict, advice, is_by_log=is_by_log, is_asked=question is not None),
        ],
        notes=_notes(course.subject, now, day, before.day, later, unseen),
    )


def _kept_first(phase: FollowedPhase, subject: Subject, now: Now, judged: Judged, found: Due) -> Due:
    """What is due where what is logged beside the plan explains where tissue lies: a plan is to be kept before it tells
    less, or more, and no day is added to it. Those who may not diet are given more at once."""
    if now.eaten.is_over and judged.acted_on is up_of(phase):
        shorter = None if found.end_day is None or found.end_day > phase.end_day else found.end_day
        return found._replace(change_kcal=max(0, found.change_kcal), end_day=shorter, waits=False)
    if now.eaten.is_over:
        return found._replace(change_kcal=max(0, found.change_kcal))
    is_low = not phase.kind.is_deficit and judged.acted_on is Verdict.SLOWER
    if now.eaten.is_under and is_low and not may_not_diet(subject):
        return found._replace(change_kcal=min(0, found.change_kcal), waits=False)
    return found


def _check_asked(phase: FollowedPhase, as_of_day: int, settled: Settled | None) -> None:
    """Refuse what no phase can be reviewed by. Raises: ``OutOfDomain``."""
    if as_of_day < phase.start_day:
        day = date.fromordinal(as_of_day)
        detail = f"The phase begins after {day}, the day of the review: send an `as_of_date` or a log within it."
        raise OutOfDomain("REVIEW_BEFORE_START", "phase.start_date", detail)
    if phase.kind is PhaseKind.MINI_CUT and sum(not week.is_break for week in phase.weeks) > MOST_WEEKS:
        detail = f"A mini-cut has at most {MOST_WEEKS} weeks: send a longer one as a `cut`."
        raise OutOfDomain("MINI_CUT_TOO_LONG", "phase.weeks", detail)
    if phase.fat_loss_kg is not None and not phase.kind.is_deficit:
        detail = "Only a `mini_cut` or a `cut` has fat to lose."
        raise OutOfDomain("FAT_LOSS_WITHOUT_DEFICIT", "phase.fat_loss_kg", detail)
    check_side(phase)
    if settled is not None and not phase.start_day <= settled.day <= as_of_day:
        first, last = date.fromordinal(phase.start_day), date.fromordinal(as_of_day)
        detail = f"Set a day from {first}, the first of the phase, to {last}, on which it is reviewed."
        raise OutOfDomain("SETTLED_OUTSIDE_PHASE", "settled.date", detail)


def _implied(now: Now, judged: Judged) -> Estimate | None:
    """What was eaten beside the plan, as weight tells it [kcal/d], from a week on."""
    if now.window_days < DAYS_PER_WEEK:
        return None
    per_day, observed = now.rho_kcal_per_kg / now.window_days, now.window.tissue
    return Estimate(
        per_day * (observed.mean - judged.planned.mean), per_day * math.hypot(observed.sd, judged.promise.sd)
    )


def _told_lately(phase: FollowedPhase, now: Now) -> float | None:
    """What was told of late [kcal/d], which stands in for what was eaten where hardly any of it is logged."""
    eaten = now.eaten
    if not now.days or eaten.days_logged >= texts.HARDLY_LOGGED * eaten.days:
        return None
    told = phase.told_kcal(now.days)[-DAYS_PER_WEEK:]
    return sum(told) / len(told)


def _is_enough(logged: Estimate | None, implied: Estimate | None) -> bool:
    """Whether what is logged beside the plan may be all that weight tells was eaten beside it [kcal/d]."""
    if logged is None or implied is None:
        return True
    return logged.upper >= implied.lower if implied.mean > 0.0 else logged.lower <= implied.upper


def _notes(subject: Subject, now: Now, day: int, told_day: int | None, later: int, unseen: int) -> list[Message]:
    """Notes on the log: of ``later`` entries that were left out, and of ``unseen`` days before the first weighing."""
    # What weight tells of a log supposes that it is fat and lean tissue alone that grow.
    notes = [note for note in now.notes if not (subject.is_pregnant and note.code in ABOUT_LOGGING)]
    notes = gathered(still_to_note(notes, day, told_day))
    if now.is_unseen:
        notes = [note for note in notes if note.code != STALE]  # the reasons say it
    if later:
        notes.append(say(texts.LATER_ENTRIES, count=later))
    if unseen:
        notes.append(say(texts.WINDOW_SHORTER, days=unseen))
    return notes


def log_up_to(log: Log, day: int, as_of_day: int) -> tuple[Log, int]:
    """The log up to a day, and how many entries were left out. What lies after the as-of day stays, to be refused."""
    if day == as_of_day:
        return log, 0
    kept = log.only(lambda entry: not day < day_of(entry) <= as_of_day)
    left_out = log.entries - kept.entries
    return (kept, left_out) if left_out else (log, 0)
