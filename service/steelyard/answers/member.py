"""Who is asked about: the way in that every question about a plan takes."""

from steelyard.science.member import Member, Told

from .dates import last_day_of


def member_of(told: Told) -> Member:
    """The member, their log read on its last day where maintenance rests on it. Raises ``OutOfDomain``."""
    if told.log is not None and told.maintenance is None:
        last_day_of(told.log, None)
    return Member(told)
