"""Plan a season: from a strategy to dated phases, weekly intakes and a forecast, inside every guard rail."""

from datetime import date, timedelta
from typing import NamedTuple

from ..body import ALL_SOURCES, Forecast, UncertaintySource
from ..phase import MOST_WEEKS, PlannedPhase, PlannedWeek
from ..rails import (
    PROTEIN_DEFAULT_DEFICIT,
    PROTEIN_DEFAULT_GAIN,
    RailAction,
    split_intake,
)
from ..register import Message, traced
from .asked import Asked, UnkeptLimit, unkept_limits
from .forecast import season_forecast
from .policy import Policy
from .reasons import explain_phases, season_actions
from .run import BRIDGE, CUT, GAIN, HOLD, Outcome, WeekRecord, live


class Season(NamedTuple):
    """A planned season. ``outcome`` and the forecast are of the same weeks; the forecast adds intervals."""

    policy: Policy
    outcome: Outcome
    phases: list[PlannedPhase]
    forecast: Forecast
    actions: list[RailAction]
    reasons: list[Message]
    unkept: list[UnkeptLimit]
    dieting_weeks: int
    cuts: int


@traced
def live_season(
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
    path = season_forecast(asked.member.body, weeks, sources)
    has_cuts = any(week.mode == CUT for week in weeks)
    actions = list(asked.cutting.warnings) if has_cuts else []
    actions += season_actions(asked.member.subject, asked.history, policy, weeks, phases, path)
    reasons = explain_phases(policy, weeks, phases, path)
    unkept = unkept_limits(outcome, asked.limits)
    return Season(
        policy, outcome, phases, path, actions, reasons, unkept, int(outcome.weeks_dieting), int(outcome.cuts)
    )


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
