"""At which intake is this member's tissue stable?"""

from datetime import date
from typing import NamedTuple

from steelyard.science.log import tail_of
from steelyard.science.measures import RestingEnergy, TotalRow
from steelyard.science.member import Member, Told
from steelyard.science.numbers import Estimate
from steelyard.science.register import FROM_EQUATIONS, record

from .answered import Answered, answering
from .dates import check_as_of, last_day_of
from .state import state_of


class MaintenanceAsked(NamedTuple):
    """Whose maintenance; for which day, the last of the log when None."""

    told: Told
    as_of: date | None = None


class Maintenance(NamedTuple):
    """Maintenance [kcal/d] and what it rests on.

    ``settled`` is on the member's own logging scale; ``physical`` what is eaten, where a log tells the two apart.
    ``activity_level`` is maintenance over resting energy.
    """

    as_of: date | None
    settled: Estimate
    physical: Estimate | None
    prior: Estimate
    prior_share: float
    log_share: float
    activity_level: float
    resting: RestingEnergy
    fat_fraction: Estimate
    totals: tuple[TotalRow, ...]


@answering
def estimate_maintenance(asked: MaintenanceAsked) -> Answered[Maintenance]:
    """Estimate maintenance from equations, activity and, where there is one, a log. Raises ``OutOfDomain``."""
    check_as_of(asked.told, asked.as_of)
    member, day = Member(asked.told, tail_of), asked.as_of
    if member.told.log is not None:
        ordinal = last_day_of(member.told.log, asked.as_of)
        day = date.fromordinal(ordinal)
        member = member.told_otherwise(member.told._replace(as_of_day=ordinal))
    assessed, learnt, found = member.assessed, member.learnt, member.learnt
    if found is None and member.steered is not None:
        found = member.evidence
    record(*assessed.resting.listed)  # the answer shows each
    physical = member.prior if found is None else found.physical
    return Answered(
        Maintenance(
            as_of=day,
            settled=member.maintenance,
            physical=None if learnt is None else learnt.physical,
            prior=member.prior,
            prior_share=1.0 if found is None else found.prior_share,
            log_share=0.0 if found is None else found.log_share,
            activity_level=physical.mean / assessed.resting.mean,
            resting=assessed.resting,
            fat_fraction=assessed.fat,
            totals=assessed.total.rows,
        ),
        reasons=[assessed.resting.reason, *assessed.resting.notes, *assessed.total.notes],
        cautions=[*member.cautions, *([FROM_EQUATIONS] if found is None else [])],
        state=None if day is None else state_of(member, day.toordinal()),
    )
