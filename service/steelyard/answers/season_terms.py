"""What every question about a season says, checked, and understood for the member who asks."""

from datetime import date, timedelta
from typing import NamedTuple

from steelyard.science.log import LogMaintenance, tail_of
from steelyard.science.member import Member, Told
from steelyard.science.numbers import Estimate
from steelyard.science.phase import Band, History, usual_band
from steelyard.science.register import Contradiction, OutOfDomain
from steelyard.science.season import (
    Asked,
    BlockedDays,
    Calendar,
    Cutting,
    Event,
    Policy,
    ReadyMade,
    SeasonBounds,
    check_target,
    make_calendar,
    may_cut,
    season_band,
    week_of_clearance,
)

from .bands import check_band, check_drop
from .dates import check_dates, check_not_before_state
from .member import member_of

# Nobody lives awake on less than this share of resting energy; judgement.
_LEAST_PAL = 0.9
# Outside these shares of maintenance nobody's intake is a usual one: the lower is a hard diet, the upper a feast;
# judgement.
_CURRENT_INTAKE_SHARES = (0.5, 1.5)


class LimitsAsked(NamedTuple):
    """What a season must keep to: body fat in ``band`` (the usual one when None), days, and counts (None: open)."""

    band: Band | None = None
    blocked: tuple[BlockedDays, ...] = ()
    events: tuple[Event, ...] = ()
    most_weeks_above_band: int | None = None
    most_weeks_dieting: int | None = None
    most_cuts: int | None = None
    cuts_a_year: int = 3
    weeks_between_cuts: int = 8


class SeasonTerms(NamedTuple):
    """From which day, for how many weeks, inside which limits, after which cuts."""

    start: date
    weeks: int
    limits: LimitsAsked = LimitsAsked()
    history: History = History()


class StrategyInNumbers(NamedTuple):
    """A strategy of the member's own; body fats as fractions, None for a gain that is never cut, and for the usual
    deficit."""

    label: str
    surplus_kcal: float
    cut_at: float | None
    cut_to: float | None
    deficit_kcal: float | None
    longest_cut_weeks: int
    maintenance_weeks: int


StrategyAsked = ReadyMade | StrategyInNumbers


class SeasonFrom(NamedTuple):
    """What a season starts from: maintenance and resting energy [kcal/d], body fat and its band as fractions.

    ``protein_reference_kg`` is the body mass that protein is shared out for at the start.
    """

    protein_reference_kg: float
    maintenance: Estimate
    learnt: LogMaintenance | None
    resting: Estimate
    fat_fraction: Estimate
    band: Band


def understand(told: Told, terms: SeasonTerms) -> Asked:
    """The question of a member. Raises ``Contradiction``, ``OutOfDomain``, and ``Refused`` for a target too low."""
    member = member_of(told, tail_of)
    check_dates({"start_date": terms.start})
    check_not_before_state(told, terms.start, "start_date")
    _check_limits(terms)
    member = _with_energies_checked(member, told)
    cutting = may_cut(member)
    if cutting.forbids_targets and cutting.refusal is not None:
        # A season is about the band of body fat that it keeps to.
        raise cutting.refusal
    limits = terms.limits
    return Asked(
        member=member,
        cutting=cutting,
        history=terms.history,
        calendar=_calendar(terms, member),
        limits=SeasonBounds(
            _band(limits, member, cutting),
            limits.most_weeks_above_band,
            limits.most_weeks_dieting,
            limits.most_cuts,
            limits.cuts_a_year,
            limits.weeks_between_cuts,
        ),
    )


def season_from(asked: Asked) -> SeasonFrom:
    """What the season starts from."""
    member = asked.member
    return SeasonFrom(
        member.subject.protein_kg,
        member.maintenance,
        member.learnt,
        member.assessed.resting,
        member.assessed.fat,
        asked.limits.band,
    )


def policy_of(strategy: StrategyAsked, asked: Asked, name: str) -> Policy:
    """A strategy, called ``name``, as a policy for this member. Raises ``Contradiction`` and ``Refused``."""
    if isinstance(strategy, ReadyMade):
        return asked.ready_made(strategy)
    cut_at, cut_to = strategy.cut_at, strategy.cut_to
    if cut_at is None:
        if cut_to is not None:
            detail = "A cut needs a body fat to start at: set `cut_at_fat_fraction` as well."
            raise Contradiction("CUT_WITHOUT_START", f"{name}.cut_at_fat_fraction", detail)
        return asked.uncut(strategy.surplus_kcal)
    if cut_to is None:
        return Policy(strategy.surplus_kcal, cut_at, most_cuts=0)
    check_drop(cut_at, cut_to, name)
    check_target(cut_to, asked.member.person.sex, asked.cutting, f"{name}.cut_to_fat_fraction")
    return asked.limited(
        Policy(
            strategy.surplus_kcal,
            cut_at,
            cut_to,
            asked.deficit_kcal() if strategy.deficit_kcal is None else strategy.deficit_kcal,
            strategy.longest_cut_weeks,
            strategy.maintenance_weeks,
            asked.limits.weeks_between_cuts,  # numbers of one's own say nothing of these
            asked.limits.cuts_a_year,
        )
    )


def check_room(asked: Asked, terms: SeasonTerms) -> None:
    """Refuse blocked dates and events that leave no room for the shortest cut, where one is asked for."""
    if terms.limits.blocked and not asked.calendar.has_room_for_a_cut:
        detail = "The blocked dates and events leave no two weeks for a cut: free some, or ask for no cut."
        raise Contradiction("BLOCKED_DATES_COVER_ALL", "limits.blocked_dates", detail)


def _check_limits(terms: SeasonTerms) -> None:
    limits, start = terms.limits, terms.start
    check_band(limits.band, "limits.band")
    end = start + timedelta(days=7 * terms.weeks - 1)
    for i, (first, last) in enumerate(limits.blocked):
        name = f"limits.blocked_dates[{i}]"
        check_dates({f"{name}.first_date": first, f"{name}.last_date": last})
        if last < first:
            raise Contradiction(
                "BLOCKED_DATES_INVERTED", f"{name}.last_date", "The blocked dates end before they start."
            )
    for i, event in enumerate(limits.events):
        name = f"limits.events[{i}].date"
        check_dates({name: event.day})
        if event.day < start:
            raise Contradiction("EVENT_BEFORE_START", name, f"The event is before the start on {start}.")
        if event.day > end:
            detail = f"The event is after the horizon on {end}: lengthen it or leave the event out."
            raise Contradiction("EVENT_AFTER_HORIZON", name, detail)


def _with_energies_checked(member: Member, told: Told) -> Member:
    """Refuse energies that no body lives on, from which a season would start with nonsense. Raises ``OutOfDomain``.

    A maintenance that a log tells is on its scale, whose physical estimate was believed where it was read. What a state
    knows of the usual intake nobody sent, who could send another: it counts as the nearest that a season starts from.
    """
    maintenance, resting = member.maintenance.mean, member.assessed.resting.mean
    if member.learnt is None and maintenance < _LEAST_PAL * resting:
        detail = f"A maintenance of {maintenance:.0f} kcal/d is far under resting energy ({resting:.0f})."
        raise OutOfDomain("MAINTENANCE_IMPLAUSIBLE", "maintenance.kcal_per_day", detail)
    current = member.told.current_intake_kcal
    least, most = (share * maintenance for share in _CURRENT_INTAKE_SHARES)
    if current is None or least <= current <= most:
        return member
    if told.current_intake_kcal is None:
        return member.told_otherwise(member.told._replace(current_intake_kcal=min(max(current, least), most)))
    detail = f"Nobody stays at {current:.0f} kcal/d with that maintenance: send {least:.0f} to {most:.0f}, or none."
    raise OutOfDomain("CURRENT_INTAKE_IMPLAUSIBLE", "current_intake_kcal", detail)


def _band(limits: LimitsAsked, member: Member, cutting: Cutting) -> Band:
    sex = member.person.sex
    for i, event in enumerate(limits.events):
        if event.fat_fraction is not None:
            check_target(event.fat_fraction, sex, cutting, f"limits.events[{i}].most_fat_fraction")
    if limits.band is not None and not cutting.forbids_targets:
        check_target(limits.band.lower, sex, cutting, "limits.band.lower_fat_fraction")
    return season_band(limits.band, usual_band(sex), cutting)


def _calendar(terms: SeasonTerms, member: Member) -> Calendar:
    limits = terms.limits
    return make_calendar(terms.start, terms.weeks, list(limits.blocked), list(limits.events), week_of_clearance(member))
