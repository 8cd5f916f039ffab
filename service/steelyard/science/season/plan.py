"""Plan a season: from a strategy to dated phases, weekly intakes and a forecast, inside every guard rail."""

from datetime import date, timedelta
from typing import NamedTuple, TypeVar

from ..body import ALL_SOURCES, Forecast, UncertaintySource
from ..phase import MOST_WEEKS, PhaseKind, PlannedPhase, PlannedWeek, subject_at
from ..rails import (
    BODY_FAT,
    PROTEIN_DEFAULT_DEFICIT,
    PROTEIN_DEFAULT_GAIN,
    Cleared,
    Purpose,
    RailAction,
    Refused,
    ToldWeek,
    clear,
    split_intake,
    warn_target,
    with_ratio,
)
from ..register import Message, traced
from .asked import Asked, UnkeptLimit, unkept_limits
from .forecast import season_forecast
from .optimum import Found
from .policy import Policy
from .reasons import body_at, explain_phases, season_actions, why_in_short
from .run import BRIDGE, CUT, GAIN, HOLD, Outcome, WeekRecord, live

Value = TypeVar("Value")


class Season(NamedTuple):
    """A planned season. ``outcome`` and the forecast are of the same weeks; the forecast adds intervals."""

    policy: Policy
    outcome: Outcome
    told: Cleared[list[PlannedPhase]]
    forecast: Forecast
    actions: list[RailAction]
    reasons: list[Message]
    unkept: list[UnkeptLimit]

    @property
    def phases(self) -> list[PlannedPhase]:
        """The phases, which have passed the gate."""
        return self.told.value

    @property
    def why(self) -> list[Message]:
        """What sets the season apart from those of other strategies."""
        return why_in_short(self.phases, self.reasons)


@traced
def live_season(
    asked: Asked, policy: Policy, start: date, sources: frozenset[UncertaintySource] = ALL_SOURCES
) -> Season:
    """Live the strategy once as expected, and lay it out, with intervals from ``sources``.

    Raises: ``Refused`` where the strategy has cuts and a rule forbids them for this person, or a week breaks one.
    """
    if policy.has_cuts and asked.cutting.refusal is not None:
        raise asked.cutting.refusal
    weeks: list[WeekRecord] = []
    outcome = live(asked.life, policy, asked.person(), asked.calendar, asked.limits.band.upper, record=weeks)
    told = _clear(asked, weeks, _lay_out(weeks, start))
    phases = told.value
    path = season_forecast(asked.member.body, weeks, sources)
    has_cuts = any(week.mode == CUT for week in weeks)
    actions = list(asked.cutting.warnings) if has_cuts else []
    rested = asked.member.subject.rested_with(float(weeks[0].before.carried_kg))
    actions += season_actions(rested, asked.history, policy, weeks, phases, path)
    actions = with_ratio(asked.member.subject, [*actions, *_of_targets(asked, policy, actions)])
    reasons = explain_phases(asked.member.subject, policy, weeks, phases, path, asked.calendar)
    unkept = unkept_limits(outcome, asked.limits)
    return Season(policy, outcome, told, path, actions, reasons, unkept)


def _of_targets(asked: Asked, policy: Policy, actions: list[RailAction]) -> list[RailAction]:
    """The warning of the leanest body fat that the strategy or an event asks for, where no cut has one already."""
    wanted = [fraction for _, fraction in asked.calendar.targets]
    if policy.has_cuts:
        wanted.append(float(policy.cut_to))
    if not wanted or any(action.id == BODY_FAT for action in actions):
        return []
    return warn_target(asked.member.person.sex, min(wanted))


@traced
def clear_found(asked: Asked, found: Found) -> Cleared[Found] | None:
    """A searched strategy whose season passes the gate; None where it does not."""
    weeks: list[WeekRecord] = []
    live(asked.life, found.policy, asked.person(), asked.calendar, asked.limits.band.upper, record=weeks)
    try:
        return _clear(asked, weeks, found)
    except Refused:
        return None


def _clear(asked: Asked, weeks: list[WeekRecord], value: Value) -> Cleared[Value]:
    """``value``, where the weeks that it stands for are inside the rails, as expected and with its cuts followed in
    full. Raises ``Refused``."""
    before = asked.history.deficit_before
    return clear(
        value,
        _told_weeks(asked, weeks, in_full=False),
        "weight_kg",
        weeks_before=before.weeks,
        weeks_since=before.weeks_since,
        is_history_known=asked.history.is_known,
        also=[] if weeks[0].in_full is None else [_told_weeks(asked, weeks, in_full=True)],
    )


_PURPOSE = {CUT: Purpose.DEFICIT, GAIN: Purpose.GAIN, BRIDGE: Purpose.HOLD, HOLD: Purpose.HOLD}


def _told_weeks(asked: Asked, weeks: list[WeekRecord], *, in_full: bool) -> list[ToldWeek]:
    """The weeks as the gate reads them; ``in_full``: with the bodies of whoever follows each cut in full."""
    subject, model = asked.member.subject, asked.life.model
    subject = subject.rested_with(float(weeks[0].before.carried_kg))
    found, before, then = [], body_at(subject, weeks[0]), weeks[0].before
    if weeks[0].mode != CUT:
        # A hold or a gain is told by settled maintenance, whatever was eaten of late.
        before = before._replace(maintenance_kcal=subject.maintenance_kcal)
    for i, week in enumerate(weeks):
        start, end = week.before, week.after
        if in_full and week.in_full is not None and week.mode == CUT:
            start, end = week.in_full
        if i and start is not then:
            before = subject_at(subject, model, start)
        after = subject_at(subject, model, end)
        protein_g = float(week.diet.protein_g_per_kg * week.protein_kg)
        found.append(ToldWeek(float(week.intake_kcal), before, after, _PURPOSE[int(week.mode)], protein_g=protein_g))
        before, then = after, end
    return found


_KIND = {GAIN: PhaseKind.GAIN, BRIDGE: PhaseKind.MAINTENANCE, HOLD: PhaseKind.MAINTENANCE}


def _lay_out(weeks: list[WeekRecord], start: date) -> list[PlannedPhase]:
    """Dated phases with macronutrients."""
    phases: list[PlannedPhase] = []
    point = 0
    while point < len(weeks):
        mode = weeks[point].mode
        end = point
        while end < len(weeks) and _same_phase(weeks[end].mode, mode):
            end += 1
        kind = _KIND.get(int(mode)) or (PhaseKind.MINI_CUT if end - point <= MOST_WEEKS else PhaseKind.CUT)
        protein = PROTEIN_DEFAULT_DEFICIT if mode == CUT else PROTEIN_DEFAULT_GAIN
        rows = []
        for w in range(point, end):
            fed_kg = float(weeks[w].protein_kg)
            macros = split_intake(float(weeks[w].intake_kcal), fed_kg, protein, fat_for_kg=float(weeks[w].fat_for_kg))
            rows.append(PlannedWeek(start + timedelta(days=7 * w), macros, w + 1))
        phases.append(PlannedPhase(kind, point, rows, [], [], [], []))
        point = end
    return phases


def _same_phase(one: float, other: float) -> bool:
    return one == other or {one, other} == {BRIDGE, HOLD}
