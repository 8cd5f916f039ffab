"""At which intake is this member's tissue stable?"""

from datetime import date
from typing import NamedTuple

from steelyard.science.log import LogMaintenance, maintenance_of, read_log, tail_of
from steelyard.science.measures import RestingEnergy, TotalRow
from steelyard.science.member import Member, Told
from steelyard.science.numbers import Estimate
from steelyard.science.phase import FollowedPhase
from steelyard.science.register import record
from steelyard.science.review import told_beside_plan

from .answered import Answered, answering
from .dates import check_as_of, last_day_of
from .state import state_of
from .trend import counts_beside, rests_on


class MaintenanceAsked(NamedTuple):
    """Whose maintenance; for which day, the last of the log when None; ``plan``: the phase under way."""

    told: Told
    as_of: date | None = None
    plan: FollowedPhase | None = None


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
    beside, plan = None, None if member.told.log is None else asked.plan
    if member.told.log is not None:
        ordinal = last_day_of(member.told.log, asked.as_of)
        day = date.fromordinal(ordinal)
        member = member.told_otherwise(member.told._replace(as_of_day=ordinal))
        if plan is not None:
            member, beside = _in_phase(member, plan, ordinal)
    assessed, learnt, found = member.assessed, member.learnt, member.learnt
    if beside is not None:
        found = beside
    elif found is None and member.steered is not None:
        found = member.evidence
    record(*assessed.resting.listed)  # the answer shows each
    physical = member.prior if found is None else found.physical
    return Answered(
        Maintenance(
            as_of=day,
            settled=member.maintenance if beside is None else beside.maintenance,
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
        cautions=[*member.cautions, *member.slips, *rests_on(member, plan, 0 if day is None else day.toordinal())],
        state=None if day is None else state_of(member, day.toordinal(), maintenance=beside),
    )


def _in_phase(member: Member, plan: FollowedPhase, day: int) -> tuple[Member, LogMaintenance | None]:
    """The member with their log read in a phase that is known to have begun, and maintenance as it is told in it, as
    trend and review of the same log do; None where the plan has no part in it."""
    log = member.told.log
    assert log is not None
    reading = read_log(member.person, member.assessed, log, day, phase_days=[plan.start_day], tail=tail_of)
    found: LogMaintenance = member.believed(maintenance_of(reading, member.assessed))
    in_phase, beside = member.with_log_read(found, reading), None
    if counts_beside(member, plan, day):
        beside = told_beside_plan(in_phase, plan, log, day, found, reading)
    if beside is not None:
        return in_phase.with_log_read(beside, reading), beside
    return (in_phase if day < plan.end_day else member), None
