"""What a planned phase is, and the words that go with each kind."""

from datetime import date, timedelta
from typing import NamedTuple

from ..body import Forecast
from ..rails import LOSS_LIMIT, Macronutrients, Subject, periods_of
from ..register import Message, say
from .defaults import CUT_FIRST_RESET_WEEKS, CUT_RESET_WEEKS, GAIN_RESET_WEEKS, RETURN_CHECK_WEEKS
from .followed import PhaseKind
from .weeks import Element

# A hold is told to ten kilocalories; this far from it a floor has moved it.
_AS_TOLD_KCAL = 15.0
# A hold that comes to be told so much more or less does not stay at one intake.
_MOVED_KCAL = 50.0
# Less than a scale shows is not told of it.
_SHOWN_KG = 0.1
# Less than this off the whole body is not told of what protein is shared out for.
_NOTABLE_KG = 0.5


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

    kind: PhaseKind
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


def signs_to_stop(subject: Subject) -> list[Message]:
    """What ends a deficit before its last day, whatever its plan."""
    periods = periods_of(subject)
    return [say("END_ON_SIGNS", periods=periods), say("END_ON_FAST_LOSS", percent=100 * LOSS_LIMIT)]


def protein_reference(subject: Subject) -> list[Message]:
    """What protein is shared out for, where that is less than the whole body."""
    if subject.protein_kg > subject.weight_kg - _NOTABLE_KG:
        return []
    return [say("PROTEIN_REFERENCE", reference_kg=subject.protein_kg)]


def protein_reasons(subject: Subject, g_per_kg: float) -> list[Message]:
    """Why there is so much protein in a deficit, and per kilogram of what: else it contradicts the grams told."""
    return [say("PROTEIN_WHY", protein_g_per_kg=g_per_kg), *protein_reference(subject)]


def explain_cut(
    phase: PlannedPhase,
    path: Forecast,
    *,
    subject: Subject,
    reasons: list[Message],
    protein_g_per_kg: float,
    easing_in_weeks: int,
    training_dose: float,
    has_goal: bool,
    fat_loss_kg: float | None,
    is_mini: bool,
    has_breaks: bool,
) -> None:
    """Fill in why a fat-loss phase is as it is, what ends it and how to train through it.

    Without a goal its length is what was asked for: what it is expected to lose ends nothing.
    """
    first, last = phase.first, phase.weeks[-1].point
    phase.reasons.extend(reasons)
    if is_mini:
        full = -float(path.energy_balance_kcal(first + 1 + easing_in_weeks))
        then = -float(path.energy_balance_kcal(last))
        # After much more food the body goes on using more for a while; and one full week has nothing to compare with.
        if round(then) < round(full):
            phase.reasons.append(say("SHRINKING_DEFICIT", first_kcal=full, last_kcal=then))
    else:
        phase.reasons.append(say("CUT_RESET", first_weeks=CUT_FIRST_RESET_WEEKS, weeks=CUT_RESET_WEEKS))
    if has_breaks:
        phase.reasons.append(say("BREAKS_WHY"))
    phase.reasons.extend(protein_reasons(subject, protein_g_per_kg))
    if easing_in_weeks:
        phase.reasons.append(say("EASING_IN", weeks=easing_in_weeks))
    if training_dose < 1.0:
        phase.cautions.append(say("NO_TRAINING"))
    if has_goal:
        expected = float(path.states[first].fat_kg - path.states[last].fat_kg)
        phase.ends_early_when.append(say("END_AT_TARGET", fat_kg=expected if fat_loss_kg is None else fat_loss_kg))
    phase.ends_early_when.append(say("END_AT_LIMIT" if is_mini else "END_CUT_AT_LIMIT", weeks=len(phase.weeks)))
    phase.ends_early_when.extend(signs_to_stop(subject))
    phase.guidance.extend([say("TRAIN_IN_DEFICIT"), say("WEIGH_DAILY")])
    if not (is_mini or has_breaks):
        phase.guidance.append(say("BREAKS_OFFERED"))


def explain_pause(phase: PlannedPhase, weeks: int, ends: Message) -> None:
    """Fill in why a phase is paused, and what ``ends`` the pause early."""
    phase.reasons.append(say("PAUSED", weeks=weeks))
    _through_hold(phase, ends)


def _through_hold(phase: PlannedPhase, ends: Message) -> None:
    """Fill in how to train through weeks at maintenance, and what ends them before their last day."""
    phase.ends_early_when.append(ends)
    phase.guidance.extend([say("TRAIN_IN_HOLD"), say("WEIGH_DAILY")])


def explain_hold(phase: PlannedPhase, path: Forecast, ends: Message, *, is_growing: bool) -> None:
    """Fill in what a hold is for, and what ``ends`` it early; a body that ``is_growing`` is not to stay as it is.

    Where a floor asks for more than maintenance, or the body grows, the intake is what is needed.
    """
    maintenance = float(path.maintenance_kcal(phase.first))
    if abs(phase.weeks[0].intake.intake_kcal - maintenance) <= _AS_TOLD_KCAL and not is_growing:
        last = float(phase.weeks[-1].intake.intake_kcal)
        # Who ate far from maintenance before needs another amount at the end than at first.
        moves = "yes" if abs(last - maintenance) >= _MOVED_KCAL else "no"
        phase.reasons.append(say("HOLD_WHY", maintenance_kcal=maintenance, last_kcal=last, moves=moves))
    else:
        phase.reasons.append(say("HOLD_NEED", intake_kcal=phase.weeks[0].intake.intake_kcal))
    _through_hold(phase, ends)


def rebound(carried_kg: float, code: str = "REBOUND") -> list[Message]:
    """That the scale rises at maintenance after a deficit: where it does, and by what a scale shows."""
    return [say(code, carried_kg=carried_kg)] if carried_kg >= _SHOWN_KG else []


def explain_maintenance(
    phase: PlannedPhase, path: Forecast, ends: Message, lower_kcal: float, maintenance_kcal: float
) -> None:
    """Fill in why maintenance is what it is after a cut, the rebound of the scale, and what ``ends`` it early."""
    end = phase.weeks[-1].point
    carried = float(path.states[end].carried_kg - path.states[phase.first].carried_kg)
    if round(lower_kcal) > 0:
        phase.reasons.append(say("MAINTENANCE_WHY", maintenance_kcal=maintenance_kcal, lower_kcal=lower_kcal))
    else:
        phase.reasons.append(say("MAINTENANCE_NOT_LOWER", maintenance_kcal=maintenance_kcal))
    phase.cautions.extend(rebound(carried))
    _through_hold(phase, ends)


def explain_gain(
    phase: PlannedPhase,
    path: Forecast,
    surplus_kcal: float,
    fat_ceiling: float | None,
    *,
    is_growing: bool,
    is_ended: bool,
) -> None:
    """Fill in the size of the surplus, the expected rate, and when body fat reaches its ceiling.

    Of a body that ``is_growing`` the rate would leave out what grows, and is not told. ``is_ended``: with its last
    week, from which on there is a hold.
    """
    first, end = path.states[phase.first], path.states[phase.weeks[-1].point]
    weeks = len(phase.weeks)
    gained = float(end.tissue_kg - first.tissue_kg)
    phase.reasons.append(say("SURPLUS_WHY", surplus_kcal=surplus_kcal, weeks=GAIN_RESET_WEEKS))
    if gained > 0 and not is_growing:
        monthly = 100 * gained / float(first.weight_kg) * (365.25 / 12 / 7) / weeks
        share = min(100.0, max(0.0, 100 * float(end.lean_kg - first.lean_kg) / gained))
        phase.reasons.append(say("GAIN_RATE_EXPECTED", percent_per_month=monthly, lean_share=share))
    if fat_ceiling is not None:
        phase.ends_early_when.append(said_of_ceiling(phase, path, fat_ceiling, is_ended=is_ended))
    phase.guidance.append(say("TRAIN_IN_GAIN"))
    if float(path.model.training_dose) <= 0.0 and not is_growing:
        phase.cautions.append(say("GAIN_NEEDS_TRAINING"))


def explain_return(phase: PlannedPhase, path: Forecast, *, is_growing: bool) -> None:
    """Fill in the rate of the return to a gain, and when it is checked: not of a body that ``is_growing``, nor where
    it is over by then."""
    if is_growing or len(phase.weeks) < RETURN_CHECK_WEEKS[-1]:
        return
    first, end = path.states[phase.first], path.states[phase.weeks[-1].point]
    rate = float(end.tissue_kg - first.tissue_kg) / len(phase.weeks)
    start = phase.weeks[0].start
    dates = [(start + timedelta(weeks=weeks)).isoformat() for weeks in RETURN_CHECK_WEEKS]
    phase.guidance.append(say("RETURN_CHECKS", rate_kg=rate, first_date=dates[0], second_date=dates[1]))


def said_of_ceiling(phase: PlannedPhase, path: Forecast, fat_ceiling: float, *, is_ended: bool = False) -> Message:
    """When body fat is expected to reach the ceiling of a gain (fraction), or that it does not."""
    percent = round(100 * fat_ceiling, 1)
    for week in phase.weeks:
        state = path.states[week.point]
        if state.fat_kg / state.weight_kg >= fat_ceiling or (is_ended and week is phase.weeks[-1]):
            return say("CEILING_REACHED", fat_percent=percent, date=week.last_day.isoformat())
    return say("CEILING_NOT_REACHED", fat_percent=percent)
