"""Who is asked about: the way in that every question about a plan takes."""

from datetime import date

from steelyard.science.log import Tail
from steelyard.science.member import Member, Told
from steelyard.science.rails import check_urgent
from steelyard.science.register import Message, say

from .dates import last_day_of
from .state import known_day

# Weight moves by more than its trend knows in this time, whatever somebody does; judgement.
_LONG_AGO_DAYS = 28


def member_of(told: Told, tail: Tail | None = None) -> Member:
    """The member, their log read on its last day where maintenance rests on it; ``tail`` where it is to be handed on.
    Raises ``OutOfDomain``.

    Raises ``Refused`` where a doctor must see them before any intake is told.
    """
    member = Member(told, tail)
    if member.told.log is not None and member.told.maintenance is None:
        last_day_of(member.told.log, None)
    check_urgent(member.seen)
    return member


def known_long_ago(member: Member, day: date) -> list[Message]:
    """A caution where something begins long after the last that was weighed, logged or known."""
    last = known_day(member, day)
    if day.toordinal() - last <= _LONG_AGO_DAYS:
        return []
    return [say("KNOWN_LONG_AGO", date=date.fromordinal(last).isoformat())]


def what_grows(member: Member) -> list[Message]:
    """A caution where weights are told that leave out what grows."""
    return [say("WEIGHT_RISES_IN_PREGNANCY")] if member.seen.is_pregnant else []


def counted_on(member: Member) -> list[Message]:
    """What an answer expects of a deficit, where that is not all of it."""
    kept = member.body.kept
    return [] if kept is None else [say("FORECAST_AS_KEPT", percent=100.0 * kept.mean)]
