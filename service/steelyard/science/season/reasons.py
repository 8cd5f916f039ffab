"""What the rails did in a season, and the words that go with its phases."""

from collections import Counter
from datetime import date
from enum import StrEnum

from .. import rails
from ..body import FAT_ENERGY, BodyModel, Forecast
from ..phase import (
    GAIN_RESET_WEEKS,
    LEAST_WEEKS,
    SETTLING_WEEKS,
    History,
    PlannedPhase,
    protein_reasons,
    rebound,
    said_of_ceiling,
    signs_to_stop,
    warn_of_cuts,
)
from ..rails import APART_WEEKS, PROTEIN_DEFAULT_DEFICIT, RailAction, Subject
from ..register import Message, say
from .calendar import Calendar
from .policy import NEVER, Policy
from .rails_by_week import LEAST_CUT_DAYS, loss_limit_kcal, recovery_kcal
from .run import BRIDGE, CUT, GAIN, HOLD, WeekRecord

# The limits of a body as it is are told for what the search found where they are this near to it.
_FOUND_WITHIN_KCAL = 5.0
# From which two surpluses are told apart (judgement): after a cut, a body that still saves takes a larger one.
_OTHER_SURPLUS_KCAL = 20.0
# No cut is told to go to a body fat that it stays further above than this (judgement).
_NEAR_AIM = 0.002


def body_at(subject: Subject, week: WeekRecord) -> Subject:
    """What the rails read of the body at the start of a week."""
    # Settled: what a body adapted to eating less does not burn for now is no less of a deficit.
    settled = float(week.maintenance_kcal) + max(0.0, -float(week.before.adaptation_kcal))
    return subject._replace(
        weight_kg=float(week.before.weight_kg),
        fat_kg=float(week.before.fat_kg),
        carried_kg=float(week.before.carried_kg),
        maintenance_kcal=settled if week.before.day else max(settled, subject.maintenance_kcal),
    )


def season_actions(
    subject: Subject,
    history: History,
    policy: Policy,
    weeks: list[WeekRecord],
    phases: list[PlannedPhase],
    path: Forecast,
) -> list[RailAction]:
    """What each rail did, once per rule and kind of message, where it did it first."""
    actions: list[RailAction] = []
    cut_starts: list[int] = []
    surpluses = [float(weeks[phase.first].surplus_kcal) for phase in phases if phase.kind == "gain"]
    is_kept = not surpluses or max(surpluses) - min(surpluses) < _OTHER_SURPLUS_KCAL
    for phase in phases:
        first, end = path.states[phase.first], path.states[phase.weeks[-1].point]
        week, length = weeks[phase.first], len(phase.weeks)
        rate = float((end.tissue_kg - first.tissue_kg) / length / first.weight_kg)
        macros = phase.weeks[0].intake
        if week.mode == CUT:
            there = body_at(subject, week)
            if week.deficit_kcal < policy.deficit_kcal - 0.5:
                unknown = history.cuts_last_12_months is None
                actions.append(_capped(there, week, policy, path.model, is_history_unknown=unknown))
            fraction = float(end.fat_kg / end.weight_kg)
            end_bmi = there._replace(weight_kg=float(end.weight_kg), carried_kg=float(end.carried_kg)).bmi
            actions += rails.warn_deficit(
                there, macros.intake_kcal, -rate, fraction, end_bmi, weeks=float(week.cut_weeks + week.weeks_before)
            )
            cut_starts.append(phase.first)
        elif phase.kind == "gain":
            actions += _gain_actions(subject, policy, week, rate, is_kept=is_kept)
    actions += rails.warn_days((week.intake, ()) for phase in phases for week in phase.weeks)
    actions += _raised(weeks)
    actions += _history_actions(subject, history, policy, cut_starts, phases)
    return rails.each_once(actions)


def _capped(
    there: Subject, week: WeekRecord, policy: Policy, model: BodyModel, *, is_history_unknown: bool
) -> RailAction:
    """The report of a cut held at a limit: which one, where the search only found how much."""
    deficit, asked = float(week.deficit_kcal), float(policy.deficit_kcal)
    maintenance, weeks = float(week.maintenance_kcal), float(week.cut_weeks + week.weeks_before)
    # Limits are on the deficit against settled maintenance, of which an adapted body has a part already.
    settled = deficit + float(recovery_kcal(model, week.before, maintenance, there.maintenance_kcal))
    limits = rails.deficit_limits(there, weeks)
    if is_history_unknown:
        limits.append(rails.HISTORY_LIMIT)
    strictest = _least(limits)
    if strictest.deficit_kcal > settled + _FOUND_WITHIN_KCAL:
        lost = LEAST_CUT_DAYS / FAT_ENERGY * deficit
        then = there._replace(weight_kg=there.weight_kg - lost, fat_kg=there.fat_kg - lost)
        loss = float(loss_limit_kcal(model, there.weight_kg, there.fat_kg, settled))
        later = rails.deficit_limits(then, weeks, fed=there)
        strictest = _least([rails.path_limit(limit.rule, limit.deficit_kcal) for limit in later])
        if loss < strictest.deficit_kcal:
            strictest = rails.path_limit(rails.LOSS, loss)
    if strictest.rule == rails.CUT_HISTORY:
        message = say("CAPPED_HISTORY_UNKNOWN", deficit_kcal=deficit)
        return RailAction(rails.CUT_HISTORY, "capped", deficit, asked, "kcal/d", message)
    return rails.capped(strictest._replace(deficit_kcal=deficit), asked)


def _least(limits: list[rails.DeficitLimit]) -> rails.DeficitLimit:
    return min(limits, key=lambda limit: limit.deficit_kcal)


def _gain_actions(
    subject: Subject, policy: Policy, week: WeekRecord, rate: float, *, is_kept: bool
) -> list[RailAction]:
    """The report of a gain at the ceiling on its rate, or near it; ``is_kept``: where later ones are as large."""
    limit = rails.GAIN_RATE_LIMIT[subject.training_status]
    unit = "of body mass a week"
    if week.surplus_limit_kcal < policy.surplus_kcal - 0.5:
        code = "CAPPED_GAIN_RATE" if is_kept else "CAPPED_GAIN_RATE_AT_FIRST"
        message = say(code, surplus_kcal=float(week.surplus_kcal), percent=100 * limit)
        return [RailAction(rails.GAIN_RATE, "capped", limit, None, unit, message)]
    return rails.warn_gain(subject.training_status, rate)


def _raised(weeks: list[WeekRecord]) -> list[RailAction]:
    """The report of the first hold or gain that a floor raises."""
    for week in weeks:
        if week.mode != CUT and week.is_set:
            wanted = float(week.maintenance_kcal) + (float(week.surplus_kcal) if week.mode == GAIN else 0.0)
            if raised := rails.raised_to_floor(float(week.intake_kcal), wanted):
                return raised
    return []


def _history_actions(
    subject: Subject, history: History, policy: Policy, cut_starts: list[int], phases: list[PlannedPhase]
) -> list[RailAction]:
    ends = {p.first: p.first + len(p.weeks) for p in phases}
    # One that goes on where blocked days broke it off is no new cut: the strategy would start none so soon.
    soon, cuts = min(float(policy.weeks_between_cuts), APART_WEEKS), list[tuple[int, int]]()
    for first in cut_starts:
        if cuts and first - cuts[-1][1] < soon:
            cuts[-1] = (cuts[-1][0], ends[first])
        else:
            cuts.append((first, ends[first]))
    actions = warn_of_cuts(history, cuts)
    return [*actions, *(rails.warn_kidneys(subject, PROTEIN_DEFAULT_DEFICIT) if cut_starts else [])]


def _why_cut(phase: PlannedPhase, week: WeekRecord, path: Forecast) -> Message:
    """What a cut is: up to which body fat, or for how long where it does not get there."""
    first, end = path.states[phase.first], path.states[phase.weeks[-1].point]
    fat_percent, there = 100 * float(first.fat_kg / first.weight_kg), float(end.fat_kg / end.weight_kg)
    aim, deficit_kcal = float(week.cut_to), float(week.deficit_kcal)
    if there > aim + _NEAR_AIM:
        weeks, about = len(phase.weeks), 100 * there
        return say(
            "SEASON_CUT_FOR_WEEKS", fat_percent=fat_percent, deficit_kcal=deficit_kcal, end_percent=about, weeks=weeks
        )
    weeks, most = int(week.cut_weeks), 100 * aim
    return say("SEASON_CUT", fat_percent=fat_percent, deficit_kcal=deficit_kcal, end_percent=most, weeks=weeks)


# What is said of a phase that holds; a comparison tells it of a strategy.
_OF_HOLDS = frozenset({"SEASON_HOLD", "SEASON_HOLD_UNCUT", "SEASON_HELD_AT_NEED", "GAIN_NOT_NOW", "GAIN_OVER"})


def why_in_short(phases: list[PlannedPhase], reasons: list[Message]) -> list[Message]:
    """What sets a season apart from others: why it holds where it would gain, each reason once, and its cuts."""
    held = [reason for phase in phases for reason in phase.reasons if reason.code in _OF_HOLDS]
    return list({reason.code: reason for reason in [*reversed(held), *reasons[1:]]}.values())


class Shut(StrEnum):
    """Why no cut may start in a week."""

    AGE = "age"  # clearance is needed from a birthday on
    MOST = "most"
    YEAR = "year"
    END = "end"  # of the season
    DATES = "dates"
    RECENT = "recent"
    SAFE = "safe"  # a rail leaves no deficit, or maintenance after a cut is not over


def _shut(policy: Policy, week: WeekRecord, w: int, calendar: Calendar) -> Shut:
    """What keeps a cut that is wanted from starting in week ``w``."""
    closed = calendar.closed_from_week
    if closed is not None and w + LEAST_WEEKS > closed:
        return Shut.AGE
    if week.cuts >= policy.most_cuts:
        return Shut.MOST
    if week.cuts_in_year >= policy.cuts_a_year:
        return Shut.YEAR
    if calendar.open_weeks[w] < LEAST_WEEKS:
        return Shut.END if w + LEAST_WEEKS + SETTLING_WEEKS > calendar.weeks else Shut.DATES
    return Shut.RECENT if week.since_cut_weeks < policy.weeks_between_cuts else Shut.SAFE


def _why_held(
    subject: Subject, policy: Policy, held: dict[int, WeekRecord], calendar: Calendar, since: date | None
) -> Message:
    """Why a body holds through weeks of a season, ``since`` a day or from its start on.

    Of body fat and of cuts only those are told who may diet; of several reasons against a cut the most weeks'.
    """
    state = next(iter(held.values())).before
    if not policy.surplus_kcal > 0:
        return say("SEASON_LEVEL")
    if float(state.fat_kg / state.weight_kg) < float(policy.cut_at):
        return say("SEASON_HELD_AT_NEED")
    if rails.may_not_diet(subject):
        return say("GAIN_NOT_NOW") if since is None else say("GAIN_OVER", date=since.isoformat())
    fat_percent = 100 * float(policy.cut_at)
    if not policy.has_cuts:
        return say("SEASON_HOLD_UNCUT", fat_percent=fat_percent)
    shut = Counter(_shut(policy, week, w, calendar) for w, week in held.items()).most_common(1)[0][0]
    return say("SEASON_HOLD", fat_percent=fat_percent, shut=shut)


def explain_phases(
    subject: Subject,
    policy: Policy,
    weeks: list[WeekRecord],
    phases: list[PlannedPhase],
    path: Forecast,
    calendar: Calendar,
) -> list[Message]:
    """Fill in why each phase is as it is; returns the season's own reasons."""
    cuts = dieting = 0
    for phase in phases:
        week = weeks[phase.first]
        state = path.states[phase.first]
        if week.mode == CUT:
            cuts, dieting = cuts + 1, dieting + len(phase.weeks)
            phase.reasons.append(_why_cut(phase, week, path))
            phase.reasons.extend(protein_reasons(subject, PROTEIN_DEFAULT_DEFICIT))
            phase.ends_early_when.extend(signs_to_stop(subject))
            phase.guidance.extend([say("TRAIN_IN_DEFICIT"), say("WEIGH_DAILY")])
            if path.model.training_dose < 1.0:
                phase.cautions.append(say("NO_TRAINING"))
        elif phase.kind == "gain":
            phase.reasons.append(say("SEASON_GAIN", surplus_kcal=float(week.surplus_kcal), weeks=GAIN_RESET_WEEKS))
            phase.guidance.append(say("TRAIN_IN_GAIN"))
            # The ceiling holds no underweight body, which may pass it.
            if policy.cut_at < NEVER and not rails.is_underweight(body_at(subject, week)):
                phase.ends_early_when.append(said_of_ceiling(phase, path, float(policy.cut_at)))
        else:
            if week.mode == BRIDGE:
                end = path.states[phase.weeks[-1].point]
                returns = rebound(float(end.carried_kg - state.carried_kg))
                # Who ate over the cut before it has nothing that returns.
                phase.reasons.append(say("SEASON_BRIDGE" if returns else "SEASON_AFTER_CUT"))
                phase.cautions.extend(returns)
            through = range(phase.first, phase.first + len(phase.weeks))
            held = {w: weeks[w] for w in through if weeks[w].mode == HOLD}
            if held:
                first = next(iter(held))
                day = phase.weeks[first - phase.first].start if first else None
                phase.reasons.append(_why_held(subject, policy, held, calendar, day))
    reasons = [say("SEASON_PHYSIOLOGY")]
    if cuts:
        reasons.append(say("SEASON_CUTS", cuts=cuts, weeks=dieting, share_percent=100 * dieting / len(weeks)))
    elif policy.has_cuts:
        reasons.append(say("SEASON_NO_CUT"))
    return reasons
