"""What a planned phase is, and the words that go with each kind."""

from datetime import date, timedelta
from enum import StrEnum
from typing import NamedTuple

from ..body import Diet, Forecast
from ..rails import CARBOHYDRATE_KCAL_PER_G, LOSS_LIMIT, Macronutrients
from ..register import Message, say, template
from .defaults import CUT_RESET_WEEKS, GAIN_RESET_WEEKS

template("DEFICIT_DEFAULT", "The deficit starts at {deficit_kcal:.0f} kcal/d, the usual size.")
template("DEFICIT_ASKED", "The deficit starts at the {deficit_kcal:.0f} kcal/d you asked for.")
template(
    "DEFICIT_SOLVED",
    "A deficit of {deficit_kcal:.0f} kcal/d at the start loses {fat_kg:.1f} kg of fat in {weeks} weeks.",
)
template("WEEKS_SOLVED", "{weeks} weeks are the fewest that lose {fat_kg:.1f} kg of fat at this deficit.")
template("WEEKS_DEFAULT", "{weeks} weeks: the middle of the usual 2 to 6, less any done already.")
template("CUT_WEEKS_DEFAULT", "{weeks} weeks, as neither a goal nor a time was given.")
template("FAT_SOLVED", "{fat_kg:.1f} kg of fat is what {weeks} weeks at this deficit are expected to lose.")
template(
    "SHRINKING_DEFICIT",
    "The intake stays fixed while expenditure falls, so the deficit of {first_kcal:.0f} "
    "kcal/d in the first week is {last_kcal:.0f} in the last.",
)
template(
    "PROTEIN_WHY", "Protein of {protein_g_per_kg:.1f} g/kg with resistance training spares lean tissue in a deficit."
)
template(
    "NO_TRAINING",
    "Without resistance training more of the loss is lean: two or more sessions a week are the "
    "cheapest protection there is.",
)
template("EASING_IN", "The first {weeks} week(s) run at half the deficit: easier on hunger, slower by about as much.")
template(
    "MAINTENANCE_WHY",
    "Maintenance is {maintenance_kcal:.0f} kcal/d after the cut, {lower_kcal:.0f} below where "
    "it began: a smaller body that has adapted.",
)
template(
    "REBOUND",
    "The scale is expected to rise by about {carried_kg:.1f} kg as glycogen, water and food return. That is not fat.",
)
template(
    "SURPLUS_WHY",
    "A surplus of {surplus_kcal:.0f} kcal/d suits this training experience; the intake is set "
    "anew every {weeks} weeks.",
)
template(
    "GAIN_RATE_EXPECTED",
    "Expect to gain about {percent_per_month:.1f} % of body mass a month, {lean_share:.0f} % of it lean tissue.",
)
template("CEILING_REACHED", "Body fat is expected to reach {fat_percent:g} % around {date}.")
template("CEILING_NOT_REACHED", "Body fat is not expected to reach {fat_percent:g} % within these weeks.")
template("END_AT_TARGET", "End once the trend shows {fat_kg:.1f} kg of fat lost, even before the last week.")
template("END_AT_LIMIT", "End after {weeks} weeks at the latest, target or not: longer is an ordinary cut.")
template(
    "END_ON_SIGNS",
    "End early on falling strength in two sessions running, poor sleep, low mood, binge eating "
    "or, for women, a missed period.",
)
template(
    "END_ON_FAST_LOSS",
    "Raise the intake if weight falls faster than {percent:g} % a week over two weeks, once "
    "the first week's water has settled.",
)
template("TRAIN_IN_DEFICIT", "Keep the loads up; when recovery suffers reduce the number of sets first.")
template("TRAIN_IN_GAIN", "Add load or repetitions before adding sets; the surplus is there to be trained with.")
template("WEIGH_DAILY", "Weigh daily under the same conditions and judge weekly means.")
template("INFEASIBLE", "No safe plan does what was asked; `nearest` says what would on each axis.")
template("PAUSED", "{weeks} week(s) at maintenance first; the phase is planned from the body as it will be then.")
template(
    "HELD_AT_CEILING",
    "Body fat is at or over the ceiling of this gain already: it is held. A phase of fat loss comes before a gain.",
)
template("HOLD_WHY", "Maintenance holds tissue where it is at {maintenance_kcal:.0f} kcal/d.")
template(
    "BREAKS_WHY",
    "Breaks at maintenance ease a long cut; no extra loss is credited to them, and the scale rises while they last.",
)
template("CUT_RESET", "The intake is set anew every {weeks} weeks, so that the deficit holds as the body changes.")
template("END_CUT_AT_LIMIT", "End after {weeks} weeks at the latest and hold at maintenance before anything else.")
template("GAIN_TARGET_TOO_FAR", "No gain inside its ceiling reaches this weight within {weeks} weeks.")
template("GOAL_ALREADY_MET", "The goal is met already: nothing is to be lost.")
template(
    "PHASE_USED_UP",
    "{weeks} weeks of this mini-cut are done, which is as long as one may be: go to maintenance, or plan a longer cut.",
)


class Element(StrEnum):
    """What a week of a phase is for."""

    EASING_IN = "easing_in"
    DEFICIT = "deficit"
    BREAK = "break"
    MAINTENANCE = "maintenance"
    SURPLUS = "surplus"


class PlannedWeek(NamedTuple):
    """A week: its day's intake and the forecast point at its end."""

    start: date
    intake: Macronutrients
    point: int
    element: Element = Element.MAINTENANCE

    @property
    def last_day(self) -> date:
        """Its last day."""
        return self.start + timedelta(days=6)


class PlannedPhase(NamedTuple):
    """A phase: forecast points ``first`` (its start) to the point of its last week."""

    kind: str
    first: int
    weeks: list[PlannedWeek]
    reasons: list[Message]
    ends_early_when: list[Message]
    guidance: list[Message]
    cautions: list[Message]

    @property
    def last_point(self) -> int:
        """The forecast point at its end."""
        return self.weeks[-1].point


def as_diet(macros: Macronutrients, weight_kg: float) -> Diet:
    """The model's diet for a day's macronutrients."""
    return Diet(
        float(macros.intake_kcal), CARBOHYDRATE_KCAL_PER_G * macros.carbohydrate_g, macros.protein_g / weight_kg
    )


def signs_to_stop() -> list[Message]:
    """What ends a deficit before its last day, whatever its plan."""
    return [say("END_ON_SIGNS"), say("END_ON_FAST_LOSS", percent=100 * LOSS_LIMIT)]


def explain_cut(
    phase: PlannedPhase,
    path: Forecast,
    *,
    reasons: list[Message],
    protein_g_per_kg: float,
    easing_in_weeks: int,
    training_dose: float,
    fat_loss_kg: float | None,
    is_mini: bool,
    has_breaks: bool,
) -> None:
    """Fill in why a fat-loss phase is as it is, what ends it and how to train through it."""
    first, last = phase.first, phase.weeks[-1].point
    phase.reasons.extend(reasons)
    if is_mini:
        phase.reasons.append(
            say(
                "SHRINKING_DEFICIT",
                first_kcal=-float(path.energy_balance_kcal(first + 1 + easing_in_weeks)),
                last_kcal=-float(path.energy_balance_kcal(last)),
            )
        )
    else:
        phase.reasons.append(say("CUT_RESET", weeks=CUT_RESET_WEEKS))
    if has_breaks:
        phase.reasons.append(say("BREAKS_WHY"))
    phase.reasons.append(say("PROTEIN_WHY", protein_g_per_kg=protein_g_per_kg))
    if easing_in_weeks:
        phase.reasons.append(say("EASING_IN", weeks=easing_in_weeks))
    if training_dose < 1.0:
        phase.cautions.append(say("NO_TRAINING"))
    fat = fat_loss_kg
    if fat is None:
        fat = float(path.states[first].fat_kg - path.states[last].fat_kg)
    phase.ends_early_when.append(say("END_AT_TARGET", fat_kg=fat))
    phase.ends_early_when.append(say("END_AT_LIMIT" if is_mini else "END_CUT_AT_LIMIT", weeks=len(phase.weeks)))
    phase.ends_early_when.extend(signs_to_stop())
    phase.guidance.append(say("TRAIN_IN_DEFICIT"))
    phase.guidance.append(say("WEIGH_DAILY"))


def explain_pause(phase: PlannedPhase, weeks: int) -> None:
    """Fill in why a phase is paused."""
    phase.reasons.append(say("PAUSED", weeks=weeks))
    phase.guidance.append(say("WEIGH_DAILY"))


def explain_hold(phase: PlannedPhase, path: Forecast) -> None:
    """Fill in what a hold is for."""
    phase.reasons.append(say("HOLD_WHY", maintenance_kcal=float(path.maintenance_kcal(phase.first))))
    phase.guidance.append(say("WEIGH_DAILY"))


def explain_maintenance(phase: PlannedPhase, path: Forecast, lower_kcal: float, maintenance_kcal: float) -> None:
    """Fill in why maintenance is what it is after a cut, and the rebound of the scale."""
    end = phase.weeks[-1].point
    carried = float(path.states[end].carried_kg - path.states[phase.first].carried_kg)
    phase.reasons.append(say("MAINTENANCE_WHY", maintenance_kcal=maintenance_kcal, lower_kcal=lower_kcal))
    phase.cautions.append(say("REBOUND", carried_kg=carried))
    phase.guidance.append(say("WEIGH_DAILY"))


def explain_gain(phase: PlannedPhase, path: Forecast, surplus_kcal: float, fat_ceiling: float | None) -> None:
    """Fill in the size of the surplus, the expected rate, and when body fat reaches its ceiling."""
    first, end = path.states[phase.first], path.states[phase.weeks[-1].point]
    weeks = len(phase.weeks)
    gained = float(end.tissue_kg - first.tissue_kg)
    phase.reasons.append(say("SURPLUS_WHY", surplus_kcal=surplus_kcal, weeks=GAIN_RESET_WEEKS))
    if gained > 0:
        monthly = 100 * gained / float(first.weight_kg) * (365.25 / 12 / 7) / weeks
        share = min(100.0, max(0.0, 100 * float(end.lean_kg - first.lean_kg) / gained))
        phase.reasons.append(say("GAIN_RATE_EXPECTED", percent_per_month=monthly, lean_share=share))
    if fat_ceiling is not None:
        phase.ends_early_when.append(_ceiling(phase, path, fat_ceiling))
    phase.guidance.append(say("TRAIN_IN_GAIN"))


def _ceiling(phase: PlannedPhase, path: Forecast, fat_ceiling: float) -> Message:
    for week in phase.weeks:
        state = path.states[week.point]
        if state.fat_kg / state.weight_kg >= fat_ceiling:
            when = (week.start + timedelta(days=6)).isoformat()
            return say("CEILING_REACHED", fat_percent=round(100 * fat_ceiling, 1), date=when)
    return say("CEILING_NOT_REACHED", fat_percent=round(100 * fat_ceiling, 1))
