"""The verdict on a phase: where the change of tissue lies against what counts as planned, and what speaks against
it."""

import math
from collections.abc import Sequence
from typing import NamedTuple

import msgspec

from ..log import EventKind, Log, LoggedEvent, moved_by, moved_by_all
from ..numbers import Z80, Estimate
from ..phase import FollowedPhase, PhaseKind, Verdict
from ..register import Message
from . import texts
from .check_in_signs import wait_for_events
from .due import PhaseRead
from .reading import STILL_DAYS, Now

_MOST_DAYS_AHEAD = 56
_LEAST_TOLD_KG = 0.2  # of water, which a scale shows (judgement)


class Probabilities(msgspec.Struct, frozen=True):
    """Where the change of tissue truly lies against the plan's interval; they add up to 1."""

    within_interval: float
    faster: float
    slower: float

    def without_faster(self) -> "Probabilities":
        """The probabilities in pregnancy, in which what grows is no gain that goes faster than planned."""
        return Probabilities(self.within_interval + self.faster, 0.0, self.slower)


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


def up_of(phase: FollowedPhase) -> Verdict:
    """What a phase is in which more tissue is there than planned."""
    return Verdict.SLOWER if phase.kind.is_deficit else Verdict.FASTER


def is_logged_off(phase: FollowedPhase, now: Now, verdict: Verdict) -> bool:
    """Whether the log itself says what a verdict does: that more, or less, was eaten than planned."""
    difference = now.eaten.difference
    if difference is None or abs(difference.mean) < texts.NOTABLE_KCAL:
        return False
    if verdict is Verdict.CONTRADICTED:
        return _is_logged_so(phase.kind, now)
    return difference.lower > 0.0 if verdict is up_of(phase) else difference.upper < 0.0


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

    def without(self, weight: Estimate, water: Estimate) -> "_Evidence":
        """The evidence without what told events moved of weight and of water [kg]."""
        return self._replace(weight=_less(self.weight, weight), water_off=_less(self.water_off, water))

    def stays(self, told: Verdict) -> bool:
        """Whether a verdict that was told may stay."""
        return self.verdict(told) is told


def _less(observed: Estimate, moved: Estimate) -> Estimate:
    return Estimate(observed.mean - moved.mean, math.hypot(observed.sd, moved.sd))


class EventWater(NamedTuple):
    """Water that an event which was told holds against the plan, the most of any [kg], and whether it is on plan but
    for what all of them hold."""

    kind: EventKind
    water_kg: float
    explains: bool


def _event_water(
    events: Sequence[LoggedEvent], since_day: int, day: int, planned_kg: float, *, explains: bool
) -> EventWater | None:
    """What to tell of the events that hold weight against the plan; None where they hold next to nothing."""
    against = -math.copysign(1.0, planned_kg)
    held = [(against * moved_by(event, since_day, day).mean, event.kind) for event in events]
    water_kg, kind = max(held, default=(0.0, EventKind.ALCOHOL))
    return EventWater(kind, water_kg, explains) if water_kg >= _LEAST_TOLD_KG else None


def _scale_goes_on(kind: PhaseKind, planned_kg: float, is_contradicted: bool) -> bool:
    """Whether a deficit moves the scale enough to be seen, and it is not seen to lag."""
    return kind.is_deficit and abs(planned_kg) >= texts.LEAST_MOVE_KG and not is_contradicted


def _log_odds(probability: float) -> float:
    """The logarithm of odds, no further out than those of one in a thousand."""
    kept = min(0.999, max(0.001, probability))
    return math.log(kept / (1.0 - kept))


class Judged(NamedTuple):
    """The verdict of a day, and what it is given on.

    ``acted_on``: the verdict that changes are made by: one that only stays is a word. ``promise``: change of tissue as
    the plan forecast it, ``planned``: what counts as that; ``moved_kg``: change of weight that the plan expects.
    """

    verdict: Verdict
    acted_on: Verdict
    likely: Probabilities
    promise: Estimate
    planned: Estimate
    moved_kg: float
    more_days: int
    waits: list[Message]
    is_logged_so: bool
    event_water: EventWater | None = None

    @property
    def is_off(self) -> bool:
        """Whether a change may be due."""
        return self.acted_on in (Verdict.FASTER, Verdict.SLOWER)


def judge_phase(phase: FollowedPhase, log: Log, day: int, read: PhaseRead, told: Verdict | None) -> Judged:
    """The verdict on the morning of ``day``, where the review before ``told`` one."""
    now, is_pregnant = read.now, read.course.subject.is_pregnant
    promise = read.planned.tissue
    planned = as_planned(promise)
    likely = probabilities(phase.kind, planned, now.window.tissue)
    if is_pregnant and not phase.kind.is_deficit:
        likely = likely.without_faster()
    more_days = more_days_needed(now.window_days, now.weighings, promise, now.window.tissue)
    if now.is_unseen:
        more_days = max(more_days, texts.LEAST_WEIGHINGS)
    is_logged_so = _is_logged_so(phase.kind, now)
    event_water = None
    verdict = acted_on = Verdict.TOO_EARLY
    if not more_days:
        as_weighed = _Evidence(
            kind=phase.kind,
            likely=likely,
            planned_kg=read.planned.weight_kg,
            weight=now.window.weight,
            water_off=now.water_off,
            water_probability=now.water_probability,
            is_logged_so=is_logged_so,
            is_logged_as_planned=now.eaten.difference is not None and not is_logged_so,
            is_pregnant=is_pregnant,
        )
        since = day - now.window_days
        evidence = as_weighed.without(
            moved_by_all(log.events, since, day), moved_by_all(log.events, phase.start_day - STILL_DAYS, day)
        )
        today = evidence.verdict()
        verdict = told if told is not None and evidence.stays(told) else today
        # A verdict that stays is a word: nothing is changed by it that today's own would not change.
        acted_on = verdict if verdict is Verdict.CONTRADICTED else today
        explains = verdict is Verdict.WITHIN_INTERVAL and as_weighed.verdict() is Verdict.CONTRADICTED
        if explains or verdict in (Verdict.CONTRADICTED, Verdict.SLOWER):
            event_water = _event_water(log.events, since, day, read.planned.weight_kg, explains=explains)
    verdict, more_days, waits = wait_for_events(log.events, day, verdict, more_days)
    if verdict is Verdict.TOO_EARLY:
        acted_on = verdict
        event_water = None  # what is waited for is told
    return Judged(
        verdict, acted_on, likely, promise, planned, read.planned.weight_kg, more_days, waits, is_logged_so, event_water
    )
