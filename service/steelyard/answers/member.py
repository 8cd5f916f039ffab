"""Who is asked about: the way in that every question about a plan takes."""

from datetime import date, timedelta

from steelyard.science.body import Forecast
from steelyard.science.log import Tail
from steelyard.science.member import Member, Told
from steelyard.science.rails import check_urgent
from steelyard.science.register import Message, say

from .dates import last_day_of
from .state import known_day

# Weight moves by more than its trend knows in this time, whatever somebody does; judgement.
_LONG_AGO_DAYS = 28
# Who plans from the Monday of the week has logged since; judgement.
_LOGGED_SINCE_DAYS = 7
# By then a daily log of weights and food counts for more than the equations: in 58 of 60 simulated people, in half of
# them from the ninth day on. Judgement.
_TAKEN_OVER_DAYS = 28


def member_of(told: Told, tail: Tail | None = None) -> Member:
    """The member as last weighed, their log read on its last day where maintenance rests on it; ``tail`` where it is to
    be handed on. Raises ``OutOfDomain``.

    Raises ``Refused`` where a doctor must see them before any intake is told.
    """
    member = Member(told, tail).as_last_weighed()
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


def beside_log(member: Member, day: date) -> list[Message]:
    """What a log says that did not count as it was sent, and that it goes on long after the day that something begins
    on: then one of the two is of a wrong month or year."""
    log = member.told.log
    if log is None or log.last_day - day.toordinal() <= _LOGGED_SINCE_DAYS:
        return member.slips
    goes_past = say("LOG_GOES_PAST", date=date.fromordinal(log.last_day).isoformat(), from_date=day.isoformat())
    return [*member.slips, goes_past]


def provisional(member: Member, start: date) -> list[Message]:
    """A caution where what is planned from a day on rests on equations, and from which day a log that begins with it
    counts for more; in pregnancy none does."""
    if member.told.maintenance is not None or member.evidence.log_share > 0.0 or member.seen.is_pregnant:
        return []
    return [say("PLAN_PROVISIONAL", date=(start + timedelta(days=_TAKEN_OVER_DAYS)).isoformat())]


def what_grows(member: Member) -> list[Message]:
    """A caution where weights are told that leave out what grows."""
    return [say("WEIGHT_RISES_IN_PREGNANCY")] if member.seen.is_pregnant else []


def counted_on(member: Member) -> list[Message]:
    """What an answer expects of a deficit, where that is not all of it."""
    kept = member.body.kept
    return [] if kept is None else [say("FORECAST_AS_KEPT", percent=100.0 * kept.mean)]


def allowed_for(path: Forecast) -> list[Message]:
    """That a forecast's middle is what is told, eaten, where its intervals allow for what people do."""
    return [] if path.people is None else [say("FORECAST_AS_EATEN")]
