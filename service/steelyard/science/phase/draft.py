"""Phases laid end to end: weeks as they are added, and the body at the end of each."""

from collections.abc import Callable
from copy import copy
from datetime import date, timedelta
from functools import partial

import msgspec

from .. import rails
from ..body import Body, BodyState, Forecast, Starts, Stretch, UncertaintySource, forecast, path_kept, walk
from ..member import Member
from ..rails import (
    CARBOHYDRATE_KCAL_PER_G,
    PROTEIN_DEFAULT_GAIN,
    CarbohydratePreference,
    RailAction,
    Subject,
    split_for,
    usual_protein,
)
from ..register import Message, say
from .aims import GainAim
from .band import usual_ceiling
from .followed import PhaseKind
from .gain import PlannedGain, plan_gain_phase, plan_surplus
from .phases import PlannedPhase, PlannedWeek
from .weeks import Element, Lived, Week, held_by, live, stretches_of, subject_at

# Phases laid end to end, and their path.
LaidOut = tuple[list[PlannedPhase], Forecast]
# Of a usual diet: carried mass follows its ratio to what is eaten, and no one lives on nothing of it for good.
_LEAST_CARBOHYDRATE_SHARE = 0.05
# By so many weeks a gain planned for fewer gets to its ceiling of body fat later or sooner, at most.
_WEEKS_APART = 2


class Draft:
    """Phases being laid end to end: weeks as they are added, and the body at their end."""

    def __init__(self, member: Member, preference: CarbohydratePreference, start: date) -> None:
        self.preference, self.start = preference, start
        self.body = with_usual_diet(member.body, member.subject, preference)
        self.calibrated = Starts(self.body)
        self.model, self.state = self.calibrated.expected
        carried_kg, subject = float(self.state.carried_kg), member.subject
        # The body mass index counts no water, as at the gate; missing water lifts nobody over its floor.
        rested = subject.rested_with(carried_kg)
        self.subject = rested.with_body(*subject[3:6], max(-rested.water_kg, carried_kg))
        self.kinds: list[PhaseKind] = []
        self.weeks: list[list[Week]] = []
        self.likely = [self.state]  # the path, as far as deficits are kept; ``state`` is where all is followed
        self.raised: list[RailAction] = []

    @property
    def actions(self) -> list[RailAction]:
        """What floors did to holds: the first of them."""
        return self.raised[:1]

    def add(self, kind: PhaseKind, weeks: list[Week], states: list[BodyState]) -> None:
        """Add weeks and the body at the end of each."""
        if not weeks:
            return
        self.likely += self._likely(weeks, states)
        self.state = states[-1]
        if self.kinds and self.kinds[-1] is kind:
            self.weeks[-1] += weeks
        else:
            self.kinds.append(kind)
            self.weeks.append(weeks[:])

    def _likely(self, weeks: list[Week], states: list[BodyState]) -> list[BodyState]:
        """The body at the end of weeks to come, as far as deficits are kept; ``states`` where all is followed."""
        kept = self.body.kept
        if kept is None:
            return states
        return path_kept(self.model, self.likely[-1], stretches_of(weeks), kept)[1:]

    def branch(self) -> "Draft":
        """A draft that goes on from here, and leaves this one as it is."""
        other = copy(self)
        other.kinds, other.likely, other.raised = self.kinds[:], self.likely[:], self.raised[:]
        other.weeks = [rows[:] for rows in self.weeks]
        return other

    def holding(self, weeks: int) -> tuple[list[Week], list[BodyState]]:
        """Weeks at maintenance from here, the intake set anew each week for the body that there likely is."""
        rows: list[Week] = []
        states, likely, fed_kg = [self.state], self.likely[-1], self.subject.protein_kg
        now = subject_at(self.subject, self.model, likely)
        protein = usual_protein(self.subject, PROTEIN_DEFAULT_GAIN)

        def on(kcal: float, start: BodyState) -> Lived:
            week = Week(Element.MAINTENANCE, split_for(self.subject, kcal, protein, self.preference), fed_kg)
            return live(week, self.subject, self.model, partial(walk, self.model, start, lengths=(7.0,)))

        for _ in range(weeks):
            wanted = now.maintenance_kcal
            held = held_by(now, likely)
            told, lived = rails.held_through(held, wanted, partial(on, start=likely), start=self.subject)
            self.raised += rails.raised_to_floor(told, wanted)
            (likely,), now = lived.ends, lived.then
            rows.append(lived.week)
            states += lived.ends if self.body.kept is None else walk(self.model, states[-1], lived.diet, (7.0,))
        return rows, states[1:]

    def hold(self, weeks: int) -> None:
        """Add weeks at maintenance."""
        self.add(PhaseKind.MAINTENANCE, *self.holding(weeks))

    def grow(self, weeks: int, asked_kcal: float | None, ceiling: float | None) -> PlannedGain:
        """Add weeks of a gain, at the surplus asked for or the usual one, and of a hold from its ``ceiling`` on.

        Where ``is_held``, of a hold alone. An underweight body may gain whatever its body fat.
        """
        if weeks and self.is_held(ceiling):
            self.hold(weeks)
            return PlannedGain([], [], 0.0, [])

        def through(weeks: int) -> PlannedGain:
            return plan_surplus(self.subject, self.model, self.state, weeks, asked_kcal, self.preference)

        gain = self.up_to_ceiling(through(weeks), through, ceiling)
        self.add(PhaseKind.GAIN, gain.weeks, gain.states)
        self.hold(weeks - len(gain.weeks))
        return gain

    def gain_asked(self, subject: Subject, aim: GainAim) -> PlannedGain | None:
        """The gain asked for from here, up to its ceiling; None where none at its rate reaches the weight in time."""

        def through(weeks: int) -> PlannedGain | None:
            shorter = msgspec.structs.replace(aim, weeks=weeks, target_weight_kg=None)
            return plan_gain_phase(subject, self.model, self.state, shorter)

        gain = plan_gain_phase(subject, self.model, self.state, aim)
        return None if gain is None else self.up_to_ceiling(gain, through, aim.fat_ceiling)

    def up_to_ceiling(
        self, gain: PlannedGain, through: Callable[[int], PlannedGain | None], ceiling: float | None
    ) -> PlannedGain:
        """A gain from here, ended with the first week that takes the body to its ceiling.

        ``through`` plans it for fewer weeks: over these the ceiling on its rate may leave another surplus, which takes
        a week or two more to get there, or fewer.
        """
        first = self.weeks_to_ceiling(gain, ceiling)
        if first is None:
            return gain
        under = PlannedGain([], [], 0.0, [])
        for weeks in range(max(1, first - _WEEKS_APART), min(first + _WEEKS_APART, len(gain.weeks)) + 1):
            shorter = through(weeks)
            if shorter is not None and shorter.weeks:
                reached = self.weeks_to_ceiling(shorter, ceiling)
                if reached == weeks:
                    return shorter
                if reached is None:
                    under = shorter
        # In steps of ten kilocalories none may end there: the longest one that does not get past it.
        return under

    def weeks_to_ceiling(self, gain: PlannedGain, ceiling: float | None) -> int | None:
        """Weeks of a gain from here after which the body has reached its ceiling; None where they do not."""
        ends = self._likely(gain.weeks, gain.states) if gain.weeks else []
        return next((week for week, end in enumerate(ends, start=1) if self.is_held(ceiling, end)), None)

    def is_held(self, asked: float | None, state: BodyState | None = None) -> bool:
        """Whether the body there is, or a ``state`` to come, has reached the ceiling of a gain, as asked or usual.

        The usual one holds also those to whom no body fat is named.
        """
        ceiling = gain_ceiling(self.subject, asked)
        return ceiling is not None and is_at_ceiling(self.likely[-1] if state is None else state, ceiling)

    @property
    def why_held(self) -> Message:
        """Why there is a hold in place of a gain. Of fat to lose first only those are told who may lose any."""
        if rails.may_not_diet(self.subject):
            return say("GAIN_NOT_NOW")
        comes_after = any(kind.is_deficit for kind in self.kinds)
        return say("HELD_AFTER_CUT") if comes_after else say("HELD_AT_CEILING")

    @property
    def ends_hold(self) -> Message:
        """What ends a hold early. By their weight only those judge who may hear of it, and whose it is not to rise."""
        is_spared = rails.forbids_fat_target(self.subject) is not None or self.subject.is_pregnant
        return say("END_HOLD_ON_SIGNS" if is_spared else "END_HOLD_ON_TREND")

    def why_held_from(self, day: date) -> Message:
        """Why there is a hold in place of a gain from a day on, for the weeks that are left of it."""
        code = "GAIN_OVER" if rails.may_not_diet(self.subject) else "HELD_FROM_CEILING"
        return say(code, date=day.isoformat())

    def finish(self, sources: frozenset[UncertaintySource]) -> LaidOut:
        """The phases with their forecast."""
        stretches: list[Stretch] = []
        phases, point, day = [], 0, self.start
        for kind, rows in zip(self.kinds, self.weeks, strict=True):
            # A stretch never spans two phases, so that the ends of phases are nodes of the forecast.
            stretches += stretches_of(rows)
            weeks = [
                PlannedWeek(day + timedelta(days=7 * i), row.intake, point + 1 + i, row.element)
                for i, row in enumerate(rows)
            ]
            phases.append(PlannedPhase(kind, point, weeks, [], [], [], []))
            point += len(rows)
            day += timedelta(days=7 * len(rows))
        return phases, forecast(self.body, stretches, sources=sources, path=self.likely, start=self.calibrated)


def ceiling_that_holds(subject: Subject, chosen: float | None = None) -> float:
    """The body fat at which nobody is planned a gain who asked for no other ceiling: by the usual one, or a band's end.

    Height and weight alone hold only a body that is over that one all but surely. Minors may not lose again what a
    gain was too much: for them what is likelier than not is enough, about where overweight begins at their age.
    """
    is_sure = subject.is_fat_measured or subject.age_years < rails.ADULT_YEARS
    ceiling = usual_ceiling(subject.sex) if chosen is None else chosen
    return ceiling + (0.0 if is_sure else subject.fat_below)


def gain_ceiling(subject: Subject, asked: float | None = None) -> float | None:
    """The body fat at which a gain ends: as asked, or the usual one; None of an underweight body, which may gain
    whatever it has."""
    if asked is not None:
        return asked
    return None if subject.bmi < rails.BMI_FLOOR else ceiling_that_holds(subject)


def is_at_ceiling(state: BodyState, ceiling: float) -> bool:
    """Whether a body is as fat as the ceiling of its gain: then no gain is planned."""
    return float(state.fat_kg / state.weight_kg) >= ceiling


def with_usual_diet(body: Body, subject: Subject, preference: CarbohydratePreference) -> Body:
    """The body whose usual diet has the carbohydrate that its planned maintenance will have.

    Otherwise carried mass would come back to another level than it left.
    """
    protein = usual_protein(subject, PROTEIN_DEFAULT_GAIN)
    usual = split_for(subject, subject.maintenance_kcal, protein, preference)
    share = CARBOHYDRATE_KCAL_PER_G * usual.carbohydrate_g / usual.intake_kcal
    return body._replace(carbohydrate_share=max(_LEAST_CARBOHYDRATE_SHARE, share))
