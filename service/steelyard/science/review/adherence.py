"""What a phase shows of how well its deficit is kept to: tissue against plan, and the log against plan."""

import math

from ..body import OF_PEOPLE, Adherence, current_maintenance_kcal, learned, start_body, walk
from ..measures import body_of
from ..member import Member, adherence_on
from ..numbers import Estimate
from ..phase import DAYS_PER_WEEK, LEAST_DEFICIT, FollowedPhase, diet_of_week
from ..register import Basis, constant, traced
from . import texts
from .reading import Now

LOG_SILENCE = constant(
    "adherence_log_silence", 0.05, unit="1", basis=Basis.JUDGEMENT,
    summary="SD of what a log leaves out where a deficit is not kept, as a fraction of intake: whoever breaks a plan "
    "may not log it, so that a log alone proves no plan kept",
)  # fmt: skip


@traced
def adherence_of(member: Member, phase: FollowedPhase, now: Now) -> Adherence | None:
    """How well deficits are kept to by the day of a reading: what was known as the phase began, and what it showed.

    None where nothing was known and nothing is seen: no deficit, or too little of one. The evidence is always that of
    the whole phase so far, so that no review counts it twice.
    """
    before, known = phase.adherence, member.told.known
    if before is None and known is not None and known.day <= phase.start_day:
        before = adherence_on(known, phase.start_day)
    seen = _seen(member, phase, now) if phase.kind.is_deficit else None
    if before is None and seen is None:
        return None
    faded = OF_PEOPLE if before is None else before.faded(now.days)
    return faded if seen is None else learned(faded, seen, now.window_days / DAYS_PER_WEEK)


def _seen(member: Member, phase: FollowedPhase, now: Now) -> Estimate | None:
    """The share of the deficit that was followed since the first weighing of the phase, breaks and all.

    By the tissue that is left, and by the log where it tells; both are judged by the maintenance that is handed on.
    """
    if now.window_days < texts.LEAST_DAYS or now.weighings < texts.LEAST_WEIGHINGS:
        return None
    gap_kcal, tissue_kg, intake_kcal = _in_full(member, phase, now)
    if gap_kcal < LEAST_DEFICIT:
        return None
    per_day = now.rho_kcal_per_kg / now.window_days
    of_tissue = Estimate(
        per_day * (now.window.tissue.mean - tissue_kg),
        math.hypot(per_day * now.window.tissue.sd, now.maintenance.maintenance.sd),
    )
    more, difference = of_tissue, now.eaten.difference
    if difference is not None:
        of_log = Estimate(difference.mean, math.hypot(difference.sd, LOG_SILENCE * intake_kcal))
        more = learned(Adherence(of_tissue, 0.0), of_log, 0.0).share
    return Estimate(1.0 - more.mean / gap_kcal, more.sd / gap_kcal)


def _in_full(member: Member, phase: FollowedPhase, now: Now) -> tuple[float, float, float]:
    """Of the days since the first weighing, had all that was told been followed: the mean deficit [kcal/d], the change
    of tissue [kg], and the mean intake that was told [kcal/d], energies on the logging scale."""
    scale, learnt = 1.0 / now.ratio, now.maintenance.maintenance
    # Of the body there was: what was lost since spends nothing any more.
    slope = float(now.reading.tissue.expenditure_slope_kcal_per_kg_day)
    maintenance = Estimate(scale * learnt.mean - slope * now.window.tissue.mean, scale * learnt.sd)
    usual = None if phase.usual_intake_kcal is None else scale * phase.usual_intake_kcal
    model, state = start_body(body_of(member.person, member.assessed, maintenance, usual))
    first = now.days - now.window_days
    gap = tissue = told = 0.0
    day = 0
    while day < now.days:
        until = min(now.days if day >= first else first, day - day % DAYS_PER_WEEK + DAYS_PER_WEEK)
        week, days = phase.week_of(day), until - day
        after = walk(model, state, diet_of_week(week, member.subject.protein_kg, scale), (float(days),))[0]
        if day >= first:
            needed = now.ratio * float(current_maintenance_kcal(model, state))
            gap += days * (needed - week.intake_kcal)
            told += days * week.intake_kcal
            tissue += float(after.tissue_kg - state.tissue_kg)
        state, day = after, until
    return gap / now.window_days, tissue, told / now.window_days
