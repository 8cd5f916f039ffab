"""A gain: its weeks, the surplus that the ceiling on its rate allows, and the weeks that reach a weight."""

import math
from collections.abc import Callable
from functools import cache, partial
from typing import NamedTuple

from .. import rails
from ..body import BASELINE_GLYCOGEN_KG, BodyModel, BodyState, Diet, advance, crossing, walk
from ..rails import (
    PROTEIN_DEFAULT_GAIN,
    CarbohydratePreference,
    RailAction,
    Subject,
    held_floors,
    split_for,
    usual_protein,
)
from ..register import traced
from .aims import GainAim
from .defaults import GAIN_RESET_WEEKS
from .sizes import Pace, usual_surplus
from .weeks import Element, Lived, Week, held_by, live, subject_at


class PlannedGain(NamedTuple):
    """A gain that is planned: its weeks, the body at the end of each, the surplus [kcal/d], and what a rail did.

    No weeks where none can be planned inside the rails.
    """

    weeks: list[Week]
    states: list[BodyState]
    surplus_kcal: float
    actions: list[RailAction]


def plan_surplus(
    subject: Subject,
    model: BodyModel,
    state: BodyState,
    weeks: int,
    asked_kcal: float | None,
    preference: CarbohydratePreference,
    at_most_kcal: float = math.inf,
    pace: Pace = Pace.STEADY,
) -> PlannedGain:
    """Weeks at the surplus asked for, or the usual one, held under the ceiling on the rate of gain.

    Where neither a size nor a brisk pace is asked for, it keeps to a rate that no answer would warn of.
    """
    wanted = asked_kcal if asked_kcal is not None else usual_surplus(subject, pace)
    if not weeks:
        return PlannedGain([], [], wanted, [])
    is_asked = asked_kcal is not None or pace is Pace.BRISK
    limits = rails.GAIN_RATE_LIMIT if is_asked else rails.GAIN_RATE_WARN
    limit = limits[subject.training_status]

    def share(end: BodyState) -> float:
        # Of what is expected to be eaten, which is more than is logged of it.
        return float((end.tissue_kg - state.tissue_kg) / weeks / state.weight_kg) / subject.scale.ratio

    @cache
    def rate(kcal: float) -> float:
        return share(gain_weeks(subject, model, state, kcal, weeks, preference)[1])

    surplus = min(wanted, at_most_kcal)
    actions: list[RailAction] = []
    rows, states, raised = _run(subject, model, state, surplus, weeks, preference)
    if share(states[-1]) > limit:
        # A step under the crossing keeps the rounded intakes under the ceiling too; long steps are a few grams off.
        surplus = crossing(lambda kcal: rate(kcal) - limit, 0.0, surplus)
        while surplus > 0.0 and share(states[-1]) > limit:
            surplus = max(0.0, surplus - 10.0)
            rows, states, raised = _run(subject, model, state, surplus, weeks, preference)
        if share(states[-1]) > limit:
            # What this body needs at least is more than a gain may be: no gain is planned, but a hold.
            return PlannedGain([], [], 0.0, [])
    # Where no one asked for more than fits, the usual size was only a start.
    if asked_kcal is not None and surplus < asked_kcal:
        actions = [rails.capped_gain(subject.training_status, surplus, rate(wanted))]
    elif is_asked:
        actions = rails.warn_gain(subject.training_status, share(states[-1]))
    return PlannedGain(rows, states, surplus, actions + raised)


@traced
def plan_gain_phase(subject: Subject, model: BodyModel, state: BodyState, aim: GainAim) -> PlannedGain | None:
    """The gain asked for; None where no gain inside its ceiling reaches the weight in time.

    With a target the gain ends with the first week that reaches it.
    """
    weeks, at_most = aim.longest_weeks, math.inf
    while True:
        gain = plan_surplus(subject, model, state, weeks, aim.surplus_kcal, aim.preference, at_most, aim.pace)
        if aim.target_weight_kg is None or not gain.weeks:
            return gain
        found = _weeks_to_weight(subject, model, state, gain.surplus_kcal, aim)
        if found is None or found == weeks:
            return gain if found else None
        # The ceiling holds for the mean of the weeks there are. The surplus only falls, so that this ends.
        weeks, at_most = found, gain.surplus_kcal


def settled_kg(state: BodyState) -> float:
    """Weight of a body whose carried mass is as usual [kg], in which the target of a gain is set."""
    return float(state.tissue_kg + BASELINE_GLYCOGEN_KG)


def _weeks_to_weight(
    subject: Subject, model: BodyModel, state: BodyState, surplus_kcal: float, aim: GainAim
) -> int | None:
    """The fewest weeks of the gain after which the settled weight is reached."""
    _, states, _ = _run(subject, model, state, surplus_kcal, aim.longest_weeks, aim.preference)
    for week, reached in enumerate(states, start=1):
        if settled_kg(reached) >= (aim.target_weight_kg or 0.0):
            return week
    return None


def _run(
    subject: Subject,
    model: BodyModel,
    state: BodyState,
    surplus_kcal: float,
    weeks: int,
    preference: CarbohydratePreference,
) -> tuple[list[Week], list[BodyState], list[RailAction]]:
    """Weeks of a gain, the intake set anew every few, the body at the end of each, and where a floor raised them."""
    gain = _Gain(subject, model, surplus_kcal, preference)
    rows: list[Week] = []
    states = [state]
    while len(rows) < weeks:
        lengths = (7.0,) * min(GAIN_RESET_WEEKS, weeks - len(rows))
        lived = gain.live(partial(walk, model, states[-1], lengths=lengths), states[-1])
        rows += [lived.week] * len(lengths)
        states += lived.ends
    return rows, states[1:], gain.raised[:1]


def gain_weeks(
    subject: Subject,
    model: BodyModel,
    state: BodyState,
    surplus_kcal: float,
    weeks: int,
    preference: CarbohydratePreference,
) -> tuple[list[Week], BodyState]:
    """Weeks of a gain, the intake set anew every few, and the body at their end, in long steps for searching."""
    gain = _Gain(subject, model, surplus_kcal, preference)
    rows: list[Week] = []
    while len(rows) < weeks:
        n = min(GAIN_RESET_WEEKS, weeks - len(rows))
        lived = gain.live(partial(_end, model, state, 7.0 * n), state)
        rows += [lived.week] * n
        (state,) = lived.ends
    return rows, state


def _end(model: BodyModel, state: BodyState, days: float, diet: Diet) -> list[BodyState]:
    return [advance(model, state, diet, days, step_days=28.0)]


class _Gain:
    """A gain, each of whose intakes is set for the body that there is by then."""

    def __init__(
        self, subject: Subject, model: BodyModel, surplus_kcal: float, preference: CarbohydratePreference
    ) -> None:
        self.subject, self.model, self.surplus_kcal, self.preference = subject, model, surplus_kcal, preference
        self.floors, self.protein = held_floors(subject), usual_protein(subject, PROTEIN_DEFAULT_GAIN)
        self.fed_kg = subject.protein_kg
        self.now: Subject | None = None
        self.raised: list[RailAction] = []

    def live(self, ends: Callable[[Diet], list[BodyState]], state: BodyState) -> Lived:
        """The next weeks on one intake, from ``state``."""
        now = subject_at(self.subject, self.model, state) if self.now is None else self.now
        # Rounded down to 10 kcal, so that rounding never lifts the gain past its ceiling.
        wanted = int(now.maintenance_kcal + self.surplus_kcal) // 10 * 10

        def on(kcal: float) -> Lived:
            macros = split_for(self.subject, int(kcal), self.protein, self.preference)
            return live(Week(Element.SURPLUS, macros, self.fed_kg), self.subject, self.model, ends)

        told, lived = self.floors.held_through(self.floors.held_kcal(held_by(now, state), wanted), on)
        self.raised += rails.raised_to_floor(told, wanted)
        self.now = lived.then
        return lived
