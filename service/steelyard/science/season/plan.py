"""Plan a season: from a strategy to dated phases, weekly intakes and a forecast, inside every guard rail."""

from datetime import date, timedelta
from typing import NamedTuple

from .. import rails
from ..body import ALL_SOURCES, CARRIED_IDS, FORECAST_IDS, MODEL_IDS, Body, Forecast, UncertaintySource, start_body
from ..phase import MOST_WEEKS, SLOW_GAIN_SHARE, Band, PlannedPhase, PlannedWeek
from ..rails import (
    MACRONUTRIENT_IDS,
    PROTEIN_DEFAULT_DEFICIT,
    PROTEIN_DEFAULT_GAIN,
    RailAction,
    Refused,
    Subject,
    split_intake,
)
from ..register import Message, say, template
from .calendar import Calendar
from .forecast import season_forecast
from .optimum import TARGET_TOLERANCE, SeasonLimits
from .policy import POLICY_IDS, Policy, ReadyMade, ready_made
from .rails_by_week import PersonLimits, person_limits, surplus_for_gain_rate
from .reasons import explain_phases, season_actions
from .run import BRIDGE, CUT, GAIN, HOLD, Life, Outcome, WeekRecord, live

template(
    "REFUSED_CUT_WITHOUT_READING",
    "Cuts of a season start at a body fat, and a value computed from height and weight never starts one: send a "
    "reading in `body_fat`.",
)
template("REFUSED_BAND", "No body-fat target is planned for this person: leave the band and targets of events out.")

SEASON_METHOD_IDS = (
    "season_model", "season_interval", "season_review_spread", "surplus_for_gain_rate", "hold_hysteresis",
    "gain_reset_weeks", "event_settling_weeks",
    *POLICY_IDS, *MODEL_IDS, *CARRIED_IDS, *FORECAST_IDS, *MACRONUTRIENT_IDS, *rails.RAIL_IDS,
)  # fmt: skip
# Rules that forbid a body-fat target as well as a deficit.
_NO_TARGET_RULES = frozenset({rails.AGE, rails.EATING_DISORDER})


class History(NamedTuple):
    """Cuts already done; ``None`` is unknown."""

    cuts_last_12_months: int | None = None
    weeks_since_last_cut: int | None = None


class Cutting(NamedTuple):
    """Whether a person may cut: warnings where they may, the refusal where not."""

    warnings: list[RailAction]
    refusal: Refused | None

    @property
    def forbids_targets(self) -> bool:
        """Whether a body-fat target is forbidden as well."""
        refusal = self.refusal
        if refusal is None or refusal.action.id not in _NO_TARGET_RULES:
            return False
        # From 65 years on clearance is wanted; only the young have no body-fat target.
        limit = refusal.action.limit
        return refusal.action.id != rails.AGE or limit == rails.ADULT_YEARS


def may_cut(subject: Subject, is_fat_measured: bool) -> Cutting:
    """Check a person once for all cuts of a season.

    Raises: ``Refused`` where screening was not answered: nothing but maintenance could be planned.
    """
    rails.check_answered(subject)
    try:
        warnings = rails.check_person(subject)
    except Refused as refusal:
        return Cutting([], refusal)
    if not is_fat_measured:
        action = RailAction(rails.BODY_FAT, "refused", None, None, "", say("REFUSED_CUT_WITHOUT_READING"))
        return Cutting(warnings, Refused(action, "body_fat"))
    return Cutting(warnings, None)


class Asked(NamedTuple):
    """A person and what surrounds their season."""

    subject: Subject
    body: Body
    cutting: Cutting
    history: History
    calendar: Calendar
    limits: SeasonLimits

    @property
    def life(self) -> Life:
        """The expected body."""
        model, state = start_body(self.body)
        return Life(model, state)

    def person(self) -> PersonLimits:
        """What the rails read of the person."""
        life = self.life
        return person_limits(
            self.subject,
            life.model,
            life.state,
            may_cut=self.cutting.refusal is None,
            cuts_last_12_months=self.history.cuts_last_12_months,
            weeks_since_last_cut=self.history.weeks_since_last_cut,
        )

    def surplus_kcal(self, share_of_ceiling: float) -> float:
        """The surplus that gains at a share of the ceiling on the rate, at the start [kcal/d]."""
        model, state = self.life[:2]
        person, weight = self.person(), state.weight_kg
        rate = share_of_ceiling * person.gain_limit
        return float(surplus_for_gain_rate(person, model, state, state.fat_kg, model.maintenance_kcal, weight, rate))

    def ready_made(self, name: ReadyMade) -> Policy:
        """A ready-made strategy for this person, under their limits on cuts."""
        policy = ready_made(name, self.limits.band, self.surplus_kcal(SLOW_GAIN_SHARE), self.surplus_kcal(1.0))
        return self.limited(policy)

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


class BrokenLimit(NamedTuple):
    """A limit that a season does not keep."""

    limit: str
    allowed: float
    found: float


class Season(NamedTuple):
    """A planned season. ``outcome`` and the forecast are of the same weeks; the forecast adds intervals."""

    policy: Policy
    outcome: Outcome
    phases: list[PlannedPhase]
    forecast: Forecast
    actions: list[RailAction]
    reasons: list[Message]
    broken: list[BrokenLimit]
    dieting_weeks: int
    cuts: int


def plan_season(
    asked: Asked, policy: Policy, start: date, sources: frozenset[UncertaintySource] = ALL_SOURCES
) -> Season:
    """Live the strategy once as expected, and lay it out, with intervals from ``sources``.

    Raises: ``guard_rails.Refused`` where the strategy has cuts and a rule forbids them for this person.
    """
    if policy.has_cuts and asked.cutting.refusal is not None:
        raise asked.cutting.refusal
    weeks: list[WeekRecord] = []
    outcome = live(asked.life, policy, asked.person(), asked.calendar, asked.limits.band.upper, record=weeks)
    phases = _lay_out(weeks, start)
    path = season_forecast(asked.body, weeks, sources)
    has_cuts = any(week.mode == CUT for week in weeks)
    actions = list(asked.cutting.warnings) if has_cuts else []
    actions += season_actions(asked.subject, asked.history.cuts_last_12_months is None, policy, weeks, phases, path)
    reasons = explain_phases(policy, weeks, phases, path)
    broken = broken_limits(outcome, asked.limits)
    return Season(
        policy, outcome, phases, path, actions, reasons, broken, int(outcome.weeks_dieting), int(outcome.cuts)
    )


def broken_limits(outcome: Outcome, limits: SeasonLimits) -> list[BrokenLimit]:
    """The limits that an outcome does not keep, with what was allowed and what was found."""
    broken = []
    if limits.most_weeks_above_band is not None and outcome.weeks_above_band > limits.most_weeks_above_band:
        allowed = float(limits.most_weeks_above_band)
        broken.append(BrokenLimit("weeks_above_band", allowed, float(outcome.weeks_above_band)))
    if limits.most_weeks_dieting is not None and outcome.weeks_dieting > limits.most_weeks_dieting:
        broken.append(BrokenLimit("weeks_dieting", float(limits.most_weeks_dieting), float(outcome.weeks_dieting)))
    if outcome.missed_target > TARGET_TOLERANCE:
        broken.append(BrokenLimit("event_fat_fraction", 0.0, float(outcome.missed_target)))
    return broken


_KIND = {GAIN: "gain", BRIDGE: "maintenance", HOLD: "maintenance"}


def _lay_out(weeks: list[WeekRecord], start: date) -> list[PlannedPhase]:
    """Dated phases with macronutrients."""
    phases: list[PlannedPhase] = []
    point = 0
    while point < len(weeks):
        mode = weeks[point].mode
        end = point
        while end < len(weeks) and _same_phase(weeks[end].mode, mode):
            end += 1
        kind = _KIND.get(int(mode)) or ("mini_cut" if end - point <= MOST_WEEKS else "cut")
        protein = PROTEIN_DEFAULT_DEFICIT if mode == CUT else PROTEIN_DEFAULT_GAIN
        rows = []
        for w in range(point, end):
            weight = float(weeks[w].split_weight_kg)
            macros = split_intake(float(weeks[w].intake_kcal), weight, protein)
            rows.append(PlannedWeek(start + timedelta(days=7 * w), macros, w + 1))
        phases.append(PlannedPhase(kind, point, rows, [], [], [], []))
        point = end
    return phases


def _same_phase(one: float, other: float) -> bool:
    return one == other or {one, other} == {BRIDGE, HOLD}


def season_band(asked_band: Band | None, usual: Band, cutting: Cutting) -> Band:
    """The band of a season. Raises ``Refused`` where one is asked for and no body-fat target may be planned."""
    if asked_band is not None and cutting.forbids_targets:
        refusal = cutting.refusal
        assert refusal is not None
        action = RailAction(refusal.action.id, "refused", None, None, "", say("REFUSED_BAND"))
        raise Refused(action, "limits.band")
    return asked_band or usual
