"""What a season is asked for: a member, whether they may cut, a calendar, and what the season must keep to."""

from typing import NamedTuple

from .. import rails
from ..body import start_body
from ..member import Member
from ..person import Sex
from ..phase import SLOW_GAIN_SHARE, Band, History, Pace, ceiling_that_holds, usual_deficit
from ..rails import RailAction, Refused
from ..register import say
from .calendar import Calendar
from .policy import Policy, ReadyMade, ready_made
from .rails_by_week import PersonLimits, person_limits, surplus_for_gain_rate
from .run import Life, Outcome

# A target met to a tenth of a point is met.
TARGET_TOLERANCE = 0.001
_DAYS_A_YEAR = 365.25


class SeasonBounds(NamedTuple):
    """What a season must keep to. ``None`` leaves a count open.

    ``most_final_fat`` fraction: of an optimum whose weeks above the band are too few to count (``Allowance``).
    """

    band: Band
    most_weeks_above_band: int | None = None
    most_weeks_dieting: int | None = None
    most_cuts: int | None = None
    cuts_a_year: int = 3
    weeks_between_cuts: int = 8
    most_final_fat: float | None = None


class Cutting(NamedTuple):
    """Whether a person may cut: warnings where they may, the refusal where not."""

    warnings: list[RailAction]
    refusal: Refused | None

    @property
    def forbids_targets(self) -> bool:
        """Whether a body-fat target is forbidden as well."""
        # From 65 years on clearance is wanted; only the young have no body-fat target.
        return self.refusal is not None and any(
            action.id == rails.EATING_DISORDER or (action.id == rails.AGE and action.limit == rails.ADULT_YEARS)
            for action in self.refusal.actions
        )


def may_cut(member: Member) -> Cutting:
    """Check a member once for all cuts of a season.

    Raises: ``Refused`` where screening was not answered, with what else refuses: nothing but maintenance could be
        planned.
    """
    subject = member.subject
    try:
        warnings = rails.check_person(subject)
    except Refused as refusal:
        if rails.UNANSWERED in refusal.ids:
            raise
        return Cutting([], refusal)
    if not member.assessed.fat.is_measured:
        action = RailAction(rails.BODY_FAT, "refused", None, None, "", say("REFUSED_CUT_WITHOUT_READING"))
        return Cutting(warnings, Refused(action, "body_fat"))
    return Cutting(warnings, None)


class Asked(NamedTuple):
    """A member and what surrounds their season."""

    member: Member
    cutting: Cutting
    history: History
    calendar: Calendar
    limits: SeasonBounds

    @property
    def life(self) -> Life:
        """The expected body."""
        body = self.member.body
        model, state = start_body(body)
        return Life(model, state, kept=body.kept)

    def person(self) -> PersonLimits:
        """What the rails read of the person."""
        life = self.life
        return person_limits(
            self.member.subject,
            life.model,
            life.state,
            may_cut=self.cutting.refusal is None,
            cuts_last_12_months=self.history.cuts_last_12_months,
            weeks_since_last_cut=self.history.weeks_since_last_cut,
        )

    @property
    def gain_ceiling(self) -> float:
        """The body fat at which a gain stops whose strategy names none: the upper end of the band, as of a plan's gain.

        It holds also those to whom no body fat is named.
        """
        return ceiling_that_holds(self.member.subject, self.limits.band.upper)

    def uncut(self, surplus_kcal: float) -> Policy:
        """A gain that is never cut, up to its ceiling."""
        return Policy(surplus_kcal, self.gain_ceiling, most_cuts=0)

    def surplus_kcal(self, share_of_ceiling: float) -> float:
        """The surplus that gains at a share of the ceiling on the rate, at the start [kcal/d]."""
        model, state = self.life[:2]
        person, weight = self.person(), state.weight_kg
        rate = share_of_ceiling * person.gain_limit
        return float(surplus_for_gain_rate(person, model, state, state.fat_kg, model.maintenance_kcal, weight, rate))

    def deficit_kcal(self, pace: Pace = Pace.STEADY) -> float:
        """The deficit of a cut that nobody sized, as plans and decisions have it [kcal/d]."""
        is_training = self.life.model.training_dose >= 1.0
        kept = self.member.body.kept
        return usual_deficit(self.member.subject, self.history, pace, is_training=is_training, kept=kept).deficit_kcal

    def ready_made(self, name: ReadyMade) -> Policy:
        """A ready-made strategy for this person, under their limits on cuts."""
        surpluses = self.surplus_kcal(SLOW_GAIN_SHARE), self.surplus_kcal(1.0)
        policy = ready_made(name, self.limits.band, surpluses, (self.deficit_kcal(), self.deficit_kcal(Pace.BRISK)))
        policy = self.limited(policy)
        # What never stops, or goes past the band to be cut afterwards, stops at the ceiling where nothing is cut.
        return policy if policy.has_cuts else policy._replace(cut_at=min(policy.cut_at, self.gain_ceiling))

    def limited(self, policy: Policy) -> Policy:
        """A strategy under the limits on cuts and the lower end of the band."""
        if not policy.has_cuts:
            return policy
        limits = self.limits
        return policy._replace(
            most_cuts=policy.most_cuts if limits.most_cuts is None else min(policy.most_cuts, limits.most_cuts),
            cuts_a_year=min(policy.cuts_a_year, limits.cuts_a_year),
            weeks_between_cuts=max(policy.weeks_between_cuts, limits.weeks_between_cuts),
        )


class UnkeptLimit(NamedTuple):
    """A limit that a season does not keep."""

    limit: str
    allowed: float
    found: float


def unkept_limits(outcome: Outcome, limits: SeasonBounds) -> list[UnkeptLimit]:
    """The limits that an outcome does not keep, with what was allowed and what was found."""
    unkept = []
    if limits.most_weeks_above_band is not None and outcome.weeks_above_band > limits.most_weeks_above_band:
        allowed = float(limits.most_weeks_above_band)
        unkept.append(UnkeptLimit("weeks_above_band", allowed, float(outcome.weeks_above_band)))
    if limits.most_weeks_dieting is not None and outcome.weeks_dieting > limits.most_weeks_dieting:
        unkept.append(UnkeptLimit("weeks_dieting", float(limits.most_weeks_dieting), float(outcome.weeks_dieting)))
    if outcome.missed_target > TARGET_TOLERANCE:
        unkept.append(UnkeptLimit("event_fat_fraction", 0.0, float(outcome.missed_target)))
    if limits.most_final_fat is not None and outcome.final_fat_fraction > limits.most_final_fat + TARGET_TOLERANCE:
        unkept.append(UnkeptLimit("final_fat_fraction", limits.most_final_fat, float(outcome.final_fat_fraction)))
    return unkept


def check_target(fraction: float, sex: Sex, cutting: Cutting, field: str) -> None:
    """Raise ``Refused`` for a body-fat target under the least, or for any where none may be planned."""
    _check_targets_allowed(cutting, field)
    rails.refuse_target(sex, fraction, field)


def week_of_clearance(member: Member) -> int | None:
    """The week from which on a deficit needs clearance that was not given, by age; None where there is none ahead."""
    screening = member.told.screening
    clearance = None if screening is None else screening.clearance
    years_left = rails.OLDER_YEARS - member.person.age_years
    if years_left <= 0 or (clearance is not None and clearance.is_in_words):
        return None
    return int(years_left * _DAYS_A_YEAR / 7)


def season_band(asked_band: Band | None, usual: Band, cutting: Cutting) -> Band:
    """The band of a season. Raises ``Refused`` where one is asked for and no body-fat target may be planned."""
    if asked_band is None:
        return usual
    _check_targets_allowed(cutting, "limits.band")
    return asked_band


def _check_targets_allowed(cutting: Cutting, field: str) -> None:
    if cutting.forbids_targets and cutting.refusal is not None:
        raise Refused(RailAction(cutting.refusal.action.id, "refused", None, None, "", say("REFUSED_BAND")), field)
