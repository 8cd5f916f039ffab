"""What the season endpoints share: limits and strategies from the wire, checked for contradictions."""

from datetime import date, timedelta
from typing import NamedTuple

from steelyard.science import rails
from steelyard.science.measures import Assessment, assess, body_of
from steelyard.science.numbers import Estimate
from steelyard.science.person import Person, Sex
from steelyard.science.phase import Band, usual_band
from steelyard.science.rails import RailAction, Refused, stricter
from steelyard.science.register import OutOfDomain, say
from steelyard.science.season import (
    Asked,
    BlockedDates,
    Calendar,
    Cutting,
    Event,
    History,
    Policy,
    SeasonLimits,
    make_calendar,
    may_cut,
    season_band,
)

from . import mapping
from .logs import check_dates, maintenance_for
from .mapping import FRACTION, KCAL, interval
from .problems import CONTRADICTION, Unprocessable, fault
from .schemas import seasons as schema

# A cut that ends nearer to where it starts is over before water has settled.
LEAST_DROP = 0.01
LEAST_PAL = 0.9
# Outside these shares of maintenance nobody's intake is a usual one: the lower is a hard diet, the upper a feast.
CURRENT_INTAKE_SHARES = (0.5, 1.5)


class Situation(NamedTuple):
    """A request understood: who, from what, under which limits."""

    person: Person
    assessed: Assessment
    maintenance: Estimate
    asked: Asked


def contradiction(pointer: str, code: str, detail: str) -> Unprocessable:
    """A 422 for fields that cannot stand together."""
    return Unprocessable(CONTRADICTION, detail, [fault(pointer, code, detail)])


def situation(body: schema.SeasonQuestion) -> Situation:
    """Read what the three endpoints share. Raises the 422s of contradictory limits."""
    check_dates(start_date=body.start_date)
    _check_limits(body.limits, body.start_date, body.horizon_weeks)
    person = mapping.person(body.profile)
    assessed = assess(person)
    maintenance = maintenance_for(body.maintenance, body.log, person, assessed)
    _check_energies(body, maintenance.mean, assessed.resting.mean)
    subject = mapping.subject(person, assessed, maintenance, body.screening)
    cutting = may_cut(subject, assessed.fat.is_measured)
    band = _band(body.limits, person.sex, cutting)
    history = body.cut_history
    asked = Asked(
        subject,
        body_of(person, assessed, maintenance, body.current_intake_kcal),
        cutting,
        History(history.cuts_last_12_months, history.weeks_since_last_cut) if history else History(),
        _calendar(body, cutting),
        SeasonLimits(
            band,
            body.limits.most_weeks_above_band,
            body.limits.most_weeks_dieting,
            body.limits.most_cuts,
            body.limits.most_cuts_a_year,
            body.limits.least_weeks_between_cuts,
        ),
    )
    return Situation(person, assessed, maintenance, asked)


def _check_energies(body: schema.SeasonQuestion, maintenance_kcal: float, resting_kcal: float) -> None:
    """Refuse energies that no body lives on, from which a season would start with nonsense. Raises ``OutOfDomain``."""
    if maintenance_kcal < LEAST_PAL * resting_kcal:
        detail = f"A maintenance of {maintenance_kcal:.0f} kcal/d is far under resting energy ({resting_kcal:.0f})."
        raise OutOfDomain("MAINTENANCE_IMPLAUSIBLE", "/maintenance/kcal_per_day", detail)
    current = body.current_intake_kcal
    least, most = (share * maintenance_kcal for share in CURRENT_INTAKE_SHARES)
    if current is not None and not least <= current <= most:
        detail = f"Nobody stays at {current:.0f} kcal/d with that maintenance: send {least:.0f} to {most:.0f}, or none."
        raise OutOfDomain("CURRENT_INTAKE_IMPLAUSIBLE", "/current_intake_kcal", detail)


def _check_limits(limits: schema.SeasonLimits, start: date, weeks: int) -> None:
    band = limits.band
    if band is not None and band.upper_fat_fraction < band.lower_fat_fraction + 2 * LEAST_DROP:
        detail = "The band is inverted or under two points wide: set its upper end above its lower end."
        raise contradiction("#/limits/band/upper_fat_fraction", "BAND_INVERTED", detail)
    end = start + timedelta(days=7 * weeks - 1)
    for i, blocked in enumerate(limits.blocked_dates):
        check_dates(**{f"limits/blocked_dates/{i}/first_date": blocked.first_date})
        check_dates(**{f"limits/blocked_dates/{i}/last_date": blocked.last_date})
        if blocked.last_date < blocked.first_date:
            detail = "The blocked dates end before they start."
            raise contradiction(f"#/limits/blocked_dates/{i}/last_date", "BLOCKED_DATES_INVERTED", detail)
    for i, event in enumerate(limits.events):
        pointer = f"limits/events/{i}/date"
        check_dates(**{pointer: event.date})
        if event.date < start:
            raise contradiction(f"#/{pointer}", "EVENT_BEFORE_START", f"The event is before the start on {start}.")
        if event.date > end:
            detail = f"The event is after the horizon on {end}: lengthen it or leave the event out."
            raise contradiction(f"#/{pointer}", "EVENT_AFTER_HORIZON", detail)


def _band(limits: schema.SeasonLimits, sex: Sex, cutting: Cutting) -> Band:
    asked = limits.band
    for i, event in enumerate(limits.events):
        if event.most_fat_fraction is not None:
            _check_target(event.most_fat_fraction, sex, cutting, f"/limits/events/{i}/most_fat_fraction")
    if asked is not None and not cutting.forbids_targets:
        _check_target(asked.lower_fat_fraction, sex, cutting, "/limits/band/lower_fat_fraction")
    band = None if asked is None else Band(asked.lower_fat_fraction, asked.upper_fat_fraction)
    return season_band(band, usual_band(sex), cutting)


def _check_target(fraction: float, sex: Sex, cutting: Cutting, field: str) -> None:
    """Refuse a body-fat target under the least, or any where none may be planned."""
    if cutting.forbids_targets and cutting.refusal is not None:
        action = RailAction(cutting.refusal.action.id, "refused", None, None, "", say("REFUSED_BAND"))
        raise Refused(action, field)
    floor = stricter(rails.FAT_FRACTION_FLOOR, sex)
    if fraction < floor:
        message = say("REFUSED_END_BODY_FAT", fat_percent=100 * fraction, limit_percent=100 * floor)
        raise Refused(RailAction(rails.BODY_FAT, "refused", floor, fraction, "1", message), field)


def _calendar(body: schema.SeasonQuestion, cutting: Cutting) -> Calendar:
    limits = body.limits
    blocked = [BlockedDates(b.first_date, b.last_date) for b in limits.blocked_dates]
    events = [Event(e.date, e.most_fat_fraction) for e in limits.events]
    closed_from = None
    screening = body.screening
    years_left = rails.OLDER_YEARS - body.profile.age_years
    if years_left > 0 and (screening is None or screening.clinical_clearance is None):
        # From that birthday on a deficit needs clearance: no cut may reach it.
        closed_from = int(years_left * 365.25 / 7)
    return make_calendar(body.start_date, body.horizon_weeks, blocked, events, closed_from)


def check_room(situation: Situation, body: schema.SeasonQuestion) -> None:
    """Refuse blocked dates and events that leave no room for the shortest cut, where one is asked for."""
    if body.limits.blocked_dates and not situation.asked.calendar.has_room_for_a_cut:
        detail = "The blocked dates and events leave no two weeks for a cut: free some, or ask for no cut."
        raise contradiction("#/limits/blocked_dates", "BLOCKED_DATES_COVER_ALL", detail)


def policy_of(strategy: schema.Strategy, situation: Situation, pointer: str) -> Policy:
    """A strategy of the wire as a policy for this person."""
    asked = situation.asked
    if isinstance(strategy, schema.ReadyMadeStrategy):
        return asked.ready_made(strategy.name)
    cut_at, cut_to = strategy.cut_at_fat_fraction, strategy.cut_to_fat_fraction
    if cut_at is None:
        if cut_to is not None:
            detail = "A cut needs a body fat to start at: set `cut_at_fat_fraction` as well."
            raise contradiction(f"#{pointer}/cut_at_fat_fraction", "CUT_WITHOUT_START", detail)
        return Policy(strategy.surplus_kcal).without_cuts
    if cut_to is None or cut_to > cut_at - LEAST_DROP:
        detail = "Set `cut_to_fat_fraction` at least one point (0.01) under `cut_at_fat_fraction`."
        raise contradiction(f"#{pointer}/cut_to_fat_fraction", "CUT_ENDS_ABOVE_START", detail)
    _check_target(cut_to, situation.person.sex, asked.cutting, f"{pointer}/cut_to_fat_fraction")
    return asked.limited(
        Policy(
            strategy.surplus_kcal,
            cut_at,
            cut_to,
            strategy.deficit_kcal,
            strategy.longest_cut_weeks,
            strategy.maintenance_weeks,
        )
    )


def label_of(strategy: schema.Strategy) -> str:
    """The name under which an answer lists a strategy."""
    return str(strategy.name) if isinstance(strategy, schema.ReadyMadeStrategy) else strategy.label


def season_start(situation: Situation) -> schema.SeasonStart:
    """What the season starts from."""
    band = situation.asked.limits.band
    return schema.SeasonStart(
        maintenance_kcal=interval(situation.maintenance, KCAL),
        resting_kcal=interval(Estimate(situation.assessed.resting.mean, situation.assessed.resting.sd), KCAL),
        body_fat_fraction=interval(Estimate(situation.assessed.fat.mean, situation.assessed.fat.sd), FRACTION),
        band_lower_fat_fraction=round(band.lower, FRACTION),
        band_upper_fat_fraction=round(band.upper, FRACTION),
    )


def check_search(strategies: int, weeks: int, most: int) -> None:
    """Refuse a search that would not end in time. Raises ``OutOfDomain``."""
    if strategies * weeks > most:
        detail = f"For {weeks} weeks search at most {most // weeks} strategies; {strategies} would take too long."
        raise OutOfDomain("SEARCH_TOO_LARGE", "/strategies_searched", detail)
