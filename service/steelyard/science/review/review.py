"""Review a phase: what happened against what was planned, and what to do about it.

The verdict compares the change of tissue that the log tells with what counts as planned for that day, so that water
never counts. Until a fortnight of the phase and enough weighings are there, it is too early. What is then due is sought
from two readings a week apart (``due``), and told inside every guard rail.
"""

import math
from datetime import date
from typing import NamedTuple

import msgspec

from ..body import Adherence, Forecast, PathPoint
from ..log import ABOUT_LOGGING, Log, LogMaintenance, Reading, day_of
from ..member import Member
from ..numbers import Z80, Estimate
from ..phase import DAYS_PER_WEEK, MOST_WEEKS, FollowedPhase, PhaseKind, Verdict, signs_to_stop
from ..rails import Cleared, RailAction, Subject
from ..register import Basis, Kind, Message, OutOfDomain, equation, say
from . import texts
from .adherence import adherence_of
from .advice import Advice, Aftermath, Ahead, NextStep, advise, cleared
from .correction import Stint
from .due import NOTHING, read_on, what_is_due
from .notes import still_to_note
from .pregnancy import expected_in_pregnancy
from .question import (
    AGAIN,
    FOUND_AS_LOGGED,
    FOUND_MORE,
    FOUND_WATER,
    Finding,
    LastAsked,
    OpenQuestion,
    Settled,
    question_of,
)
from .reading import Changes, EatenSoFar, Now
from .signs import heed, wait_for_events
from .under_way import check_side

_MOST_DAYS_AHEAD = 56


class Probabilities(msgspec.Struct, frozen=True):
    """Where the change of tissue truly lies against the plan's interval; they add up to 1."""

    within_interval: float
    faster: float
    slower: float

    def without_faster(self) -> "Probabilities":
        """The same in pregnancy, in which what grows is no gain that goes faster than planned."""
        return Probabilities(self.within_interval + self.faster, 0.0, self.slower)


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
    the whole phase so far. ``told`` is what is to be eaten from the day reviewed on; ``reading`` is what is handed on,
    and ``adherence`` how well deficits are kept to, as far as that is known. ``asked`` is the question last asked, and
    ``is_unanswered`` whether it stands past the day until which to wait: then ``question`` does not ask it again.
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
    maintenance_change: Estimate
    told: Cleared[Ahead]
    weight_kg: Estimate
    noise_sd_kg: float
    reading: Reading
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
    def ends_early_when(self) -> list[Message]:
        """What ends the days to come before their last; empty where no deficit goes on."""
        return signs_to_stop() if self.is_deficit and self.advice.days_ahead else []

    @property
    def actions(self) -> list[RailAction]:
        """What the rails did."""
        return self.advice.actions

    def points_of(self, path: Forecast) -> list[PathPoint]:
        """The points of a path from the day reviewed on, its start left out: maintenance on the logging scale, and a
        single weighing with the error of today's level and daily noise."""
        weighing = self.weight_kg.sd**2 + self.noise_sd_kg**2
        return [at.logged(self.ratio, weighing) for at in path.points()[1:]]


def probabilities(kind: PhaseKind, planned: Estimate, observed: Estimate) -> Probabilities:
    """Where the true change of tissue lies against the plan's 80 % interval, given what the log tells of it."""
    lower, upper = observed.probability_under(planned.lower), observed.probability_over(planned.upper)
    faster, slower = (lower, upper) if kind.is_deficit else (upper, lower)
    return Probabilities(max(0.0, 1.0 - lower - upper), faster, slower)


def as_planned(promise: Estimate) -> Estimate:
    """The change of tissue that counts as planned: the plan's own 80 % interval, or a third of the way if that is less.

    The plan's own interval is as wide as its start knew little; what the log has told since is more.
    """
    half = max(texts.PLAN_SHARE * abs(promise.mean), texts.PLAN_LEAST_KG)
    return Estimate(promise.mean, min(promise.sd, half / Z80))


def more_days_needed(window_days: int, weighings: int, planned: Estimate, observed: Estimate) -> int:
    """Days of logging until the phase can be judged; 0 when it can.

    A fortnight, a week's worth of weighings, and an error of tissue no larger than half the plan's interval, which
    grows with the days while the error stays.
    """
    need = max(texts.LEAST_DAYS - window_days, texts.LEAST_WEIGHINGS - weighings, 0)
    half = planned.upper - planned.mean
    if observed.sd > half and window_days > 0:
        grown = _MOST_DAYS_AHEAD if half <= 0.0 else math.ceil(window_days * (observed.sd / half - 1.0))
        need = max(need, grown, 1)
    return min(need, _MOST_DAYS_AHEAD)


def judge(
    kind: PhaseKind, likely: Probabilities, *, is_logged_as_planned: bool = False, told: Verdict | None = None
) -> Verdict:
    """The likeliest of the three; off the plan only when that is clearly likelier than not, and in a deficit against
    what the log itself says more clearly still. What was ``told`` needs less to be told again."""
    faster = texts.DEFICIT_AHEAD if kind.is_deficit else texts.OFF_PLAN
    slower = texts.OFF_PLAN_AGAINST_LOG if kind.is_deficit and is_logged_as_planned else texts.OFF_PLAN
    if likely.faster > faster - (texts.STAYS_OFF_PLAN if told is Verdict.FASTER else 0.0):
        return Verdict.FASTER
    if likely.slower > slower - (texts.STAYS_OFF_PLAN if told is Verdict.SLOWER else 0.0):
        return Verdict.SLOWER
    return Verdict.WITHIN_INTERVAL


def _is_logged_so(kind: PhaseKind, now: Now) -> bool:
    """Whether the log itself says that intake fell short of the plan's purpose."""
    difference = now.eaten.difference
    if difference is None:
        return False
    if abs(difference.mean) < texts.NOTABLE_KCAL:
        return False
    return difference.lower > 0.0 if kind.is_deficit else difference.upper < 0.0


def _is_enough(logged: Estimate | None, implied: Estimate | None) -> bool:
    """Whether what is logged beside the plan may be all that weight tells was eaten beside it [kcal/d]."""
    if logged is None or implied is None:
        return True
    return logged.upper >= implied.lower if implied.mean > 0.0 else logged.lower <= implied.upper


def contradicts(
    planned_kg: float,
    observed: Estimate,
    likely: Probabilities,
    water_off: Estimate,
    *,
    least_odds: float = texts.NAMED_ODDS,
) -> bool:
    """Whether three witnesses together say that a phase does not go its way, against a log that says so.

    The scale may be behind the plan, tissue may lag, and water may not have gone (or come) as intake leads to expect:
    tissue is drawn to what the log says, so that who eats more than is logged is first seen in water that stays. None
    is enough alone: water moves by itself, and a log with errors moves tissue.

    Args: change of weight as planned [kg], water included, and as observed; where tissue lies; change of carried mass
        beyond what intake leads to expect; the odds from which on they say so.
    """
    if abs(planned_kg) < texts.LEAST_MOVE_KG or likely.slower < texts.NAMED_TISSUE:
        return False
    if planned_kg > 0.0:
        scale, water = observed.probability_under(planned_kg), water_off.probability_under(0.0)
    else:
        scale, water = observed.probability_over(planned_kg), water_off.probability_over(0.0)
    named = (
        texts.SCALE_WEIGHT * _log_odds(scale)
        + texts.TISSUE_WEIGHT * _log_odds(likely.slower)
        + texts.WATER_WEIGHT * _log_odds(water)
    )
    return named > math.log(least_odds)


class _Evidence(NamedTuple):
    """What a verdict is given on: tissue and weight against the plan [kg], water, and what the log says of itself."""

    kind: PhaseKind
    likely: Probabilities
    planned_kg: float
    weight: Estimate
    water_off: Estimate
    water_probability: float
    is_logged_so: bool
    is_logged_as_planned: bool
    is_pregnant: bool

    def verdict(self, told: Verdict | None = None) -> Verdict:
        """The verdict; where the review before ``told`` one, the bounds for that one are wider."""
        stays = told in (Verdict.SLOWER, Verdict.CONTRADICTED)
        least_odds = texts.STAYS_ODDS if stays else texts.NAMED_ODDS
        is_contradicted = contradicts(self.planned_kg, self.weight, self.likely, self.water_off, least_odds=least_odds)
        found = judge(self.kind, self.likely, is_logged_as_planned=self.is_logged_as_planned, told=told)
        if self.is_pregnant:
            return Verdict.WITHIN_INTERVAL if found is Verdict.FASTER else found
        if found is Verdict.WITHIN_INTERVAL and is_contradicted:
            return Verdict.CONTRADICTED
        if found is not Verdict.SLOWER:
            return found
        if self.is_logged_as_planned and _scale_goes_on(self.kind, self.planned_kg, is_contradicted):
            # Tissue alone is slower, and the log says that it is not: no word yet.
            return Verdict.WITHIN_INTERVAL
        share = {Verdict.SLOWER: texts.STAYS_WATER, Verdict.CONTRADICTED: 1.0 / texts.STAYS_WATER}
        in_play = texts.WATER_IN_PLAY * (1.0 if told is None else share.get(told, 1.0))
        # One week of water is no reason to eat less: ask first.
        return Verdict.CONTRADICTED if not self.is_logged_so and self.water_probability > in_play else found

    def stays(self, told: Verdict) -> bool:
        """Whether a verdict that was told may stay."""
        return self.verdict(told) is told


def _scale_goes_on(kind: PhaseKind, planned_kg: float, is_contradicted: bool) -> bool:
    """Whether a deficit moves the scale enough to be seen, and it is not seen to lag."""
    return kind.is_deficit and abs(planned_kg) >= texts.LEAST_MOVE_KG and not is_contradicted


def _log_odds(probability: float) -> float:
    """The logarithm of odds, no further out than those of one in a thousand."""
    kept = min(0.999, max(0.001, probability))
    return math.log(kept / (1.0 - kept))


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
) -> Review:
    """Review ``phase`` on the morning of ``as_of_day``.

    Args: ``member`` as at the phase's start; ``log`` may begin before it, which helps; ``settled``: the answer to the
        question that an earlier review asked; ``before``: what the reviews before told.
    Raises: ``OutOfDomain`` on a log that cannot be read or a phase that had not begun; ``guard_rails.Refused``
        where a deficit is still running and the screening was not answered.
    """
    if as_of_day < phase.start_day:
        detail = "The phase begins after the day to review it on."
        raise OutOfDomain("REVIEW_BEFORE_START", "phase.start_date", detail)
    if phase.kind is PhaseKind.MINI_CUT and sum(not week.is_break for week in phase.weeks) > MOST_WEEKS:
        detail = f"A mini-cut has at most {MOST_WEEKS} weeks: send a longer one as a `cut`."
        raise OutOfDomain("MINI_CUT_TOO_LONG", "phase.weeks", detail)
    if phase.fat_loss_kg is not None and not phase.kind.is_deficit:
        detail = "Only a `mini_cut` or a `cut` has fat to lose."
        raise OutOfDomain("FAT_LOSS_WITHOUT_DEFICIT", "phase.fat_loss_kg", detail)
    check_side(phase)
    finished = is_finished or as_of_day >= phase.end_day
    day = min(as_of_day, phase.end_day)
    log, later = log_up_to(log, day, as_of_day)
    if settled is not None and not phase.start_day <= settled.day <= as_of_day:
        detail = "The question was answered within the phase, and not after the day to review it on."
        raise OutOfDomain("SETTLED_OUTSIDE_PHASE", "settled.date", detail)
    read = read_on(member, phase, log, day, settled)
    now, course, promised = read.now, read.course, read.promised
    body, subject = course.now, course.subject

    unseen = now.days - now.window_days
    promise = read.planned.tissue
    planned = as_planned(promise)
    likely = probabilities(phase.kind, planned, now.window.tissue)
    if subject.is_pregnant and not phase.kind.is_deficit:
        likely = likely.without_faster()
    more_days = more_days_needed(now.window_days, now.weighings, promise, now.window.tissue)
    is_logged_so = _is_logged_so(phase.kind, now)
    is_logged_as_planned = now.eaten.difference is not None and not is_logged_so
    before = before or Before()
    told_day, before = before.day, before.of_phase(phase.start_day, day)
    moved_kg = read.planned.weight_kg
    verdict = acted_on = Verdict.TOO_EARLY
    if not more_days:
        evidence = _Evidence(
            phase.kind,
            likely,
            moved_kg,
            now.window.weight,
            now.water_off,
            now.water_probability,
            is_logged_so,
            is_logged_as_planned,
            subject.is_pregnant,
        )
        today = evidence.verdict()
        verdict = before.verdict if before.verdict is not None and evidence.stays(before.verdict) else today
        # A verdict that stays is a word: nothing is changed by it that today's own would not change.
        acted_on = verdict if verdict is Verdict.CONTRADICTED else today
    verdict, more_days, waits = wait_for_events(log.events, day, verdict, more_days)

    is_open = not finished and verdict is not Verdict.TOO_EARLY
    acted_on = Verdict.TOO_EARLY if verdict is Verdict.TOO_EARLY else acted_on
    is_off = acted_on in (Verdict.FASTER, Verdict.SLOWER)
    observed = now.window.tissue
    implied = None
    if now.window_days >= DAYS_PER_WEEK and not subject.is_pregnant:
        per_day = now.rho_kcal_per_kg / now.window_days
        implied = Estimate(per_day * (observed.mean - planned.mean), per_day * math.hypot(observed.sd, promise.sd))
    found = what_is_due(member, phase, log, read, settled, is_off=is_off) if is_open else NOTHING
    if now.eaten.is_over and found.change_kcal < 0 and _is_enough(now.eaten.difference, implied):
        # What is eaten over the plan explains it all: the plan stands, and is to be kept to.
        found = found._replace(change_kcal=0)
    by_log = advise(phase, course, now, promised, acted_on, finished, found)
    told = cleared(course, now, heed(log.check_ins, course, day, by_log))
    asked = before.asked
    question = None
    is_unanswered = False
    is_known_why = is_logged_so and _is_enough(now.eaten.difference, implied)
    if is_open and not is_known_why and verdict is not Verdict.WITHIN_INTERVAL:
        gap = 0.0 if implied is None else implied.mean
        question = question_of(
            now.explained, gap, day, member.person.sex, knows_cycle=now.knows_cycle, settled=settled, asked=asked
        )
        is_unanswered = question is not None and question.until_day < day
        question = None if is_unanswered else question
    maintenance = now.maintenance.maintenance
    fat = body.body.fat_kg
    # What weight tells of a log supposes that it is fat and lean tissue alone that grow.
    notes = [note for note in now.notes if not (subject.is_pregnant and note.code in ABOUT_LOGGING)]
    notes = still_to_note(notes, day, told_day)
    if later:
        notes.append(say(texts.LATER_ENTRIES, count=later))
    if unseen:
        notes.append(say(texts.WINDOW_SHORTER, days=unseen))
    return Review(
        day=day,
        days=now.days,
        since_day=phase.start_day + unseen,
        ratio=now.ratio,
        is_finished=finished,
        is_deficit=phase.kind.is_deficit,
        protein_reference_kg=course.fed.protein_kg if phase.kind.is_deficit else None,
        verdict=verdict,
        probabilities=likely,
        more_days_needed=more_days,
        planned_tissue=planned,
        changes=now.window,
        tissue=body.tissue,
        fat=body.fat,
        lean=body.lean,
        fat_fraction=Estimate(fat.mean / now.weight_kg.mean, fat.sd / now.weight_kg.mean),
        eaten=now.eaten,
        implied_difference=implied,
        question=question,
        asked=asked if question is None else question.asked,
        is_unanswered=is_unanswered,
        maintenance=now.maintenance,
        maintenance_change=Estimate(
            maintenance.mean - phase.maintenance.mean, math.hypot(maintenance.sd, phase.maintenance.sd)
        ),
        told=told,
        weight_kg=now.weight_kg,
        noise_sd_kg=now.noise_sd_kg,
        reading=now.reading,
        adherence=adherence_of(member, phase, now),
        reasons=[
            *_reasons(phase, now, planned, moved_kg, likely, verdict, more_days, member.subject),
            *_settling(settled, question),
            *waits,
            *told.value.advice.reasons,
            *_beside_verdict(phase, now, verdict, told.value.advice, is_by_rail=by_log.correction_kcal != 0),
        ],
        notes=notes,
    )


def _beside_verdict(
    phase: FollowedPhase, now: Now, verdict: Verdict, advice: Advice, *, is_by_rail: bool
) -> list[Message]:
    """What the advice says of itself: that a plan stands which is off since more was logged than it told, as it is to
    be kept first; or why a change does not wait for a verdict, which only a rail asks for then."""
    if advice.decision is NextStep.END:
        return []
    if advice.correction_kcal:
        return [say(texts.CANNOT_WAIT)] if verdict is Verdict.TOO_EARLY and is_by_rail else []
    off = Verdict.SLOWER if phase.kind.is_deficit else Verdict.FASTER
    stands = now.eaten.is_over and verdict is off and advice.decision is NextStep.CONTINUE
    return [say(texts.PLAN_STANDS)] if stands else []


def _settling(settled: Settled | None, question: OpenQuestion | None) -> list[Message]:
    """What the answer to the last question means, and the next one."""
    found = []
    if settled is not None:
        on = date.fromordinal(settled.day).isoformat()
        if settled.found is Finding.MORE_THAN_LOGGED:
            found.append(say(FOUND_MORE, date=on))
        elif settled.found is Finding.AS_LOGGED:
            found.append(say(FOUND_AS_LOGGED))
        elif settled.found is Finding.WATER:
            found.append(say(FOUND_WATER, date=on))
    if question is not None:
        found += [say(AGAIN), question.ask] if question.asked.times > 1 else [question.ask]
    return found


def log_up_to(log: Log, day: int, as_of_day: int) -> tuple[Log, int]:
    """The log up to a day, and how many entries were left out. What lies after the as-of day stays, to be refused."""
    if day == as_of_day:
        return log, 0
    kept = log.only(lambda entry: not day < day_of(entry) <= as_of_day)
    left_out = log.entries - kept.entries
    return (kept, left_out) if left_out else (log, 0)


def _reasons(
    phase: FollowedPhase,
    now: Now,
    planned: Estimate,
    planned_weight_kg: float,
    likely: Probabilities,
    verdict: Verdict,
    more_days: int,
    subject: Subject,
) -> list[Message]:
    """Why the verdict is what it is, and what was eaten; ``subject`` as at the phase's start."""
    observed, is_pregnant = now.window.tissue.mean, subject.is_pregnant
    found: list[Message] = []
    if verdict is Verdict.TOO_EARLY:
        found.append(say(texts.TOO_EARLY, more_days=more_days))
    elif is_pregnant:
        found += [say(texts.IN_PREGNANCY, observed_kg=observed), *expected_in_pregnancy(subject.bmi, now)]
    elif verdict is Verdict.CONTRADICTED:
        found.append(say(texts.CONTRADICTED, weight_kg=now.window.weight.mean, planned_kg=planned_weight_kg))
    elif verdict is Verdict.WITHIN_INTERVAL:
        code = texts.WITHIN if planned.lower <= observed <= planned.upper else texts.NEAR
        found.append(say(code, observed_kg=observed, lower_kg=planned.lower, upper_kg=planned.upper))
    else:
        chance = likely.faster if verdict is Verdict.FASTER else likely.slower
        found.append(
            say(
                texts.OUTSIDE,
                observed_kg=observed,
                lower_kg=planned.lower,
                upper_kg=planned.upper,
                probability_percent=100.0 * chance,
            )
        )
    difference = now.eaten.difference
    if is_pregnant:
        return found  # what is eaten is for those to judge who follow it
    if now.eaten.is_hardly_logged:
        found.append(say(texts.AS_TOLD, maintenance_kcal=now.maintenance.maintenance.mean))
    elif difference is None:
        if now.days:
            found.append(say(texts.NO_INTAKE))
    elif difference.lower > 0.0 and difference.mean > texts.NOTABLE_KCAL:
        found.append(say(texts.ATE_MORE, difference_kcal=difference.mean))
    elif difference.upper < 0.0 and difference.mean < -texts.NOTABLE_KCAL:
        found.append(say(texts.ATE_LESS, difference_kcal=-difference.mean))
    elif verdict in (Verdict.FASTER, Verdict.SLOWER):
        maintenance, before = now.maintenance.maintenance.mean, phase.maintenance.mean
        code = texts.NEEDS_LESS if observed > planned.mean else texts.NEEDS_MORE
        # Where maintenance looks no other way than that, as after a change of intake, it explains nothing.
        if (maintenance < before) == (observed > planned.mean):
            found.append(say(code, maintenance_kcal=maintenance, planned_kcal=before))
    return found
