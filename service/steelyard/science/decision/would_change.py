"""What would change a decision: only what would change this one, by the rule that gave it."""

from .. import rails
from ..member import LEAST_FAT_SD
from ..numbers import Estimate, told_percent
from ..phase import LONG_CUT_WEEKS, MOST_WEEKS, DeficitKind, PhaseKind
from ..register import Message, say
from .facts import Facts
from .terms import HORIZON_WEEKS, TRIGGER_PROBABILITY, Feeling, Situation
from .trade import lines_of, motive

# A quarter of a point from its target a cut has arrived.
ARRIVED = 0.0025


def changes(facts: Facts, situation: Situation) -> list[Message]:
    """What would change the answer, beside what its rule says itself."""
    if facts.is_refused_by(rails.BMI):
        return [say("CHANGE_UNDERWEIGHT", limit=rails.BMI_FLOOR)]  # no body fat makes a cut due
    match situation:
        case Situation.CUT_DUE | Situation.CUT_FOR_LEANNESS:
            return [_due_below(facts), *_reading(facts), *_content(facts, situation)]
        case Situation.NOT_YET | Situation.LEAN_ENOUGH if not facts.is_near_underweight:
            return [*_when_due(facts), *_not_before(facts), *_reading(facts), *_motive(facts), *_needed(facts)]
        case Situation.WANTS_HOLD if not facts.is_near_underweight:
            return _motive(facts)
        case Situation.CUT_REFUSED:
            return _needed(facts)
        case Situation.MEASURE_FIRST:
            return [*_needed(facts), *_surer(facts)]
        case Situation.CUT_TOO_LONG | Situation.CUT_JUST_ENDED:
            return [_again(facts)]
        case Situation.CUT_DONE:
            return [*_goes_on(facts), _again(facts)]
        case Situation.CUT_UNDER_WAY:
            return [_ends(facts), *_ends_if_content(facts)]
        case _:
            return []


def _due_below(facts: Facts) -> Message:
    assert facts.leanness.due is not None
    return say("CHANGE_DUE_BELOW", due_percent=100 * facts.leanness.due)


def _when_due(facts: Facts) -> list[Message]:
    due, weeks = facts.leanness.due, facts.leanness.due_weeks
    if due is None:
        return [say("DECISION_NO_DUE")]
    if weeks is None:
        return [say("CHANGE_DUE_BEYOND", due_percent=100 * due, weeks=HORIZON_WEEKS)]
    return [say("CHANGE_DUE_DATE", due_percent=100 * due, date=facts.question.day(weeks).isoformat())]


def _is_too_soon(facts: Facts) -> bool:
    """Whether the cuts already made forbid another for now."""
    free = facts.question.free_from()
    return free is not None and free > facts.question.as_of


def _not_before(facts: Facts) -> list[Message]:
    """The day before which the cuts already made forbid another, whatever the body is."""
    return [_again(facts)] if _is_too_soon(facts) else []


def _reading(facts: Facts) -> list[Message]:
    """That the body may truly be on the other side of the due line, where a reading is what the answer rests on."""
    q, reading = facts.question, facts.leanness.reading
    other_side = reading.probability_other_side
    # What hardly can be changes nothing; nor does a line that a rule keeps shut.
    if reading.margin is None or other_side is None or told_percent(other_side) <= 1.0:
        return []
    is_shut = facts.refused is not None or (not facts.is_due and _is_too_soon(facts))
    # At the line, too, a reading has to carry a cut.
    at_due = Estimate(q.fat_fraction - reading.margin, q.fat.sd).probability_over(facts.leanness.lines.counts_from)
    if not q.is_fat_read or is_shut or at_due < TRIGGER_PROBABILITY:
        return []
    return [
        say(
            "CHANGE_READING",
            margin_points=100 * reading.margin,
            error_points=100 * q.fat.sd,
            probability_percent=told_percent(other_side),
        )
    ]


def _motive(facts: Facts) -> list[Message]:
    """That the wish to be leaner makes a cut due earlier, where nothing else would keep it from somebody."""
    due, q = facts.leanness.other_due, facts.question
    is_shut = facts.refused is not None or not q.is_fat_read or _is_too_soon(facts)
    if due is None or motive(q) is not Feeling.CONTENT or is_shut:
        return []
    if q.fat_fraction >= due and all(cut.closed is not None for cut in facts.cuts):
        return []  # over that line as well no deficit is safe now, whoever would like one
    return [say("CHANGE_MOTIVE", due_percent=100 * due)]


def _content(facts: Facts, situation: Situation) -> list[Message]:
    due = facts.leanness.other_due
    if situation is not Situation.CUT_FOR_LEANNESS or due is None:
        return []
    return [say("CHANGE_CONTENT", due_percent=100 * due)]


def _needed(facts: Facts) -> list[Message]:
    """What has to be there before a cut, or a gain, can be considered."""
    q, refused, found = facts.question, facts.refused, list[Message]()
    if facts.is_refused_by(rails.BODY_FAT):
        return []  # there is nothing to lose, whatever else is answered
    if not q.is_fat_read:
        found.append(say("CHANGE_READING_NEEDED"))
    if refused is not None and rails.UNANSWERED in refused.ids:
        found.append(say("CHANGE_SCREENING_GAIN" if q.grows and not facts.is_due else "CHANGE_SCREENING"))
    if refused is not None and refused.ids & {rails.MEDICAL, rails.AGE}:
        found.append(say("CHANGE_CLEARANCE"))
    return found


def _surer(facts: Facts) -> list[Message]:
    """That a better reading of the same body fat would carry a cut."""
    fat = facts.question.fat
    best = Estimate(fat.mean, LEAST_FAT_SD).probability_over(facts.leanness.lines.counts_from)
    if not fat.is_measured or not facts.is_due or best < TRIGGER_PROBABILITY:
        return []
    return [say("CHANGE_SURER_READING")]


def _again(facts: Facts) -> Message:
    """The day from which another cut is considered, where the one under way ends today."""
    q = facts.question
    is_under_way = q.present is not None and q.present.kind.is_deficit
    when = q.free_from([q.as_of] if is_under_way else [])
    assert when is not None
    return say("CHANGE_TIME", date=when.isoformat())


def _goes_on(facts: Facts) -> list[Message]:
    """That a cut that is done for somebody content could go on for somebody who would like to be leaner."""
    q, present = facts.question, facts.question.present
    assert present is not None
    target = lines_of(Feeling.WOULD_LIKE_LEANER, *q.band).target
    is_done = q.fat_fraction <= target + ARRIVED or target < facts.leanness.healthy.lower
    if motive(q) is not Feeling.CONTENT or facts.event is not None or is_done:
        return []
    kind = DeficitKind.MINI_CUT if present.kind is PhaseKind.MINI_CUT else DeficitKind.CUT
    further = facts.make.cut(kind, weeks_done=q.weeks_of_cut, target=target)
    return [] if further.closed is not None else [say("CHANGE_MOTIVE_ON", target_percent=100 * target)]


def _ends(facts: Facts) -> Message:
    """Where a cut under way ends: at its target, or with its time."""
    q, event = facts.question, facts.event
    assert q.present is not None
    left = (MOST_WEEKS if q.present.kind is PhaseKind.MINI_CUT else LONG_CUT_WEEKS) - q.weeks_of_cut
    if event is not None:
        left = min(left, event.room)
    target = facts.leanness.lines.target if event is None else event.target
    return say("CHANGE_CUT_ENDS", target_percent=100 * target, date=q.day(left).isoformat())


def _ends_if_content(facts: Facts) -> list[Message]:
    q = facts.question
    enough = lines_of(Feeling.CONTENT, *q.band).target
    if motive(q) is Feeling.CONTENT or facts.event is not None or q.fat_fraction > enough + ARRIVED:
        return []
    return [say("CHANGE_CONTENT_ENDS")]
