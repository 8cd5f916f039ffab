"""What a check-in and dated events change of a review: signs that end, shorten or raise, and days on which it waits.

No sign has a validated threshold; they are taken from the clinical list where there is one, and none of them alone is a
diagnosis. They only ever make a deficit smaller or shorter.
"""

from collections.abc import Callable, Sequence
from datetime import date
from typing import NamedTuple

from ..log import LoggedEvent, paused_until
from ..person import CheckIn, CycleSaid, StrengthSaid
from ..phase import DAYS_PER_WEEK, Verdict
from ..register import Basis, Kind, Message, constant, equation, say, source, yes_or_no
from . import texts
from .correction import RestOfPhase, down
from .next_step import Advice, NextStep

STELLINGWERFF_2023 = source(
    "stellingwerff_2023",
    "Stellingwerff T, Mountjoy M, McCluskey WT et al. Review of the scientific rationale, development and validation "
    "of the International Olympic Committee Relative Energy Deficiency in Sport Clinical Assessment Tool: V.2. Br J "
    "Sports Med 2023;57:1109-21",
    "10.1136/bjsports-2023-106914",
)
HEEDED_DAYS = constant(
    "check_in_heeded_days",
    28.0,
    unit="d",
    basis=Basis.JUDGEMENT,
    summary="Older check-ins say nothing of now",
)
AGREE_DAYS = constant(
    "check_in_agree_days", 6.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Two check-ins at least so far apart must agree before hunger, sleep, mood or strength change a plan",
)  # fmt: skip
RAISE_KCAL = constant(
    "check_in_raise", 150.0, unit="kcal/d", basis=Basis.JUDGEMENT,
    summary="What a deficit is raised by where check-ins ask for it, never past maintenance",
)  # fmt: skip
MISSED = "CHECK_IN_MISSED_PERIOD"
LATE = "CHECK_IN_LATE_PERIOD"
WEAKER = "CHECK_IN_WEAKER"
MUCH_WEAKER = "CHECK_IN_MUCH_WEAKER"
WORN = "CHECK_IN_WORN"
LOW_MOOD = "CHECK_IN_LOW_MOOD"
WAITS = "REVIEW_WAITS_FOR_EVENT"
_WORST_MOOD, _BAD, _HUNGRY = 1, 2, 5
_OF_LESS = (texts.STEPPED, texts.CORRECTION_HELD)


class Signs(NamedTuple):
    """What check-ins ask for, the strongest of it, with the codes of what is said of it; ``more_since``: the day of the
    check-in that asks for more food."""

    step: NextStep | None
    more_since: int | None
    codes: tuple[str, ...]

    def said(self, raised_kcal: float, *, eats_less: bool) -> list[Message]:
        """What is said of them to somebody who eats so much more for it [kcal/d], or is not to: ``eats_less`` where it
        is a deficit that they end, shorten or raise."""
        less = yes_or_no(eats_less)
        raised: dict[str, float | int | str] = {"raised": yes_or_no(raised_kcal > 0.0), "raise_kcal": raised_kcal}
        params: dict[str, dict[str, float | int | str]] = {
            MISSED: {"eats_less": less}, WEAKER: {"eats_less": less}, MUCH_WEAKER: {"eats_less": less},
            LATE: raised, WORN: raised, LOW_MOOD: {},
        }  # fmt: skip
        return [say(code, **params[code]) for code in self.codes]


def _twice(check_ins: Sequence[CheckIn], says: Callable[[CheckIn], bool]) -> bool:
    """Whether the last two that speak at all, far enough apart, both say so."""
    if not check_ins or not says(check_ins[-1]):
        return False
    last = check_ins[-1].day
    before = [each for each in check_ins[:-1] if last - each.day >= AGREE_DAYS]
    return bool(before) and says(before[-1])


@equation(
    "check_in_signs",
    summary="What a check-in of hunger, sleep, mood, cycle and strength changes of a deficit",
    formula="a missed period, or lifts down a tenth twice: end; lifts down twice: a week more at most; a late period, "
    "or hunger at its most with bad sleep, or mood at its worst, twice: more to eat, once for each check-in and never "
    "past maintenance",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(STELLINGWERFF_2023,),
    valid_range="adults in a deficit",
)
def signs_of(check_ins: Sequence[CheckIn], day: int) -> Signs:
    """What the check-ins up to ``day`` ask for."""
    recent = sorted((each for each in check_ins if day - HEEDED_DAYS <= each.day <= day), key=lambda each: each.day)
    codes: list[str] = []
    step, is_raise = None, False
    if recent and recent[-1].cycle is CycleSaid.MISSED:
        step = NextStep.END
        codes.append(MISSED)
    if _twice(recent, lambda each: each.strength is StrengthSaid.DOWN_MUCH):
        step = NextStep.END
        codes.append(MUCH_WEAKER)
    elif _twice(recent, lambda each: each.strength in (StrengthSaid.DOWN, StrengthSaid.DOWN_MUCH)):
        step = step or NextStep.SHORTEN
        codes.append(WEAKER)
    if recent and recent[-1].cycle is CycleSaid.LATE:
        is_raise = True
        codes.append(LATE)
    if _twice(recent, lambda each: each.mood == _WORST_MOOD):
        is_raise = True
        codes.append(LOW_MOOD)
    if _twice(recent, lambda each: each.hunger == _HUNGRY and (each.sleep or _HUNGRY) <= _BAD):
        is_raise = True
        codes.append(WORN)
    return Signs(step, recent[-1].day if is_raise else None, tuple(codes))


def heed(check_ins: Sequence[CheckIn], course: RestOfPhase, day: int, advice: Advice) -> Advice:
    """The advice with what check-ins ask for: a deficit ends, is shortened, or eats more; anything else is as it was.

    A check-in raises once: reviews that follow without another leave what is told as it is. Who eats at maintenance or
    over it is only told whom to see.
    """
    signs = signs_of(check_ins, day)
    if not signs.codes:
        return advice
    if advice.days_ahead == 0 or not course.phase.kind.is_deficit:
        return advice._replace(reasons=[*advice.reasons, *signs.said(0.0, eats_less=False)])
    if signs.step is NextStep.END:
        return Advice(NextStep.END, 0, 0, signs.said(0.0, eats_less=True), advice.actions)
    days, decision = advice.days_ahead, advice.decision
    change, raised, gone = advice.correction_kcal, 0, set[str]()
    asks_more = signs.more_since is not None and not _is_raised_since(signs.more_since, course)
    if change < 0 and (asks_more or signs.step is not None):
        # Who is to eat more, or to stop, is not told to eat less.
        change, gone = 0, set(_OF_LESS)
    if signs.step is NextStep.SHORTEN and days > DAYS_PER_WEEK:
        days, decision = DAYS_PER_WEEK, NextStep.SHORTEN
        gone |= texts.OF_THE_END
    if asks_more:
        room = course.maintenance_kcal - max(course.intakes(float(change), days))
        # As every change, one step at most.
        raised = down(max(0.0, min(RAISE_KCAL, room, texts.MOST_STEP_KCAL - change)))
    kept = [reason for reason in advice.reasons if reason.code not in gone]
    reasons = [*signs.said(float(raised), eats_less=True), *kept]
    return advice._replace(decision=decision, correction_kcal=change + raised, days_ahead=days, reasons=reasons)


def says_no_cycle(check_ins: Sequence[CheckIn], day: int) -> bool:
    """Whether the last check-in up to ``day`` that speaks of the cycle says that there is none."""
    said = [each for each in check_ins if each.cycle is not None and each.day <= day]
    return bool(said) and max(said, key=lambda each: each.day).cycle is CycleSaid.NONE


def _is_raised_since(day: int, course: RestOfPhase) -> bool:
    """Whether more was told on or after a day, so that the check-in of that day has had its answer."""
    return any(change.day >= day and change.change_kcal > 0.0 for change in course.phase.changes)


class Waits(NamedTuple):
    """A verdict, the days of logging that it still needs, and why it waits."""

    verdict: Verdict
    more_days: int
    reasons: list[Message]


def wait_for_events(events: Sequence[LoggedEvent], day: int, verdict: Verdict, more_days: int) -> Waits:
    """The verdict, or that it is too early while something is going on that moves weight."""
    paused = paused_until(events, day)
    if paused is None or verdict is Verdict.WITHIN_INTERVAL:
        return Waits(verdict, more_days, [])
    until, kind = paused
    said = say(WAITS, date=date.fromordinal(until).isoformat(), event=kind.value)
    return Waits(Verdict.TOO_EARLY, max(more_days, until - day + 1), [said])
