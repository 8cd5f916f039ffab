"""The deficit, the length or the goal of a fat-loss phase, solved inside the rails, or the nearest that is safe."""

import math
from bisect import bisect_left
from collections.abc import Callable
from typing import NamedTuple

from .. import rails
from ..body import COUNTS_UNDER, DEFICIT_FROM
from ..rails import FAT_KCAL_PER_G, DeficitLimit, RailAction
from ..register import Message, say, traced
from .aims import DeficitKind
from .defaults import CUT_WEEKS_MOST, LEAST_DEFICIT, LEAST_WEEKS, MOST_WEEKS, SEEN_KG, STATIC_KCAL_PER_KG
from .deficit import DeficitPhase, kg_of_rounding
from .history import History
from .sizes import UsualDeficit, usual_deficit
from .weeks import subject_at

_WORTH_KCAL = SEEN_KG * STATIC_KCAL_PER_KG / (7 * MOST_WEEKS)  # a day, of a deficit that is seen in time


class NearestSafe(NamedTuple):
    """The nearest safe value on each axis, the others kept as asked."""

    fat_loss_kg: float | None = None
    weeks: int | None = None
    deficit_kcal: float | None = None


class Solved(NamedTuple):
    """A phase that does what was asked, or the nearest that is safe."""

    reasons: list[Message]
    actions: list[RailAction]
    nearest: NearestSafe | None = None
    deficit_kcal: float = 0.0
    weeks: int = 0


def solve(phase: DeficitPhase, history: History) -> Solved:
    """Deficit and weeks for the aim, or the nearest that is safe."""
    aim = phase.aim
    asked = aim.deficit_kcal
    if phase.is_met:
        return Solved([say("GOAL_ALREADY_MET")], [], NearestSafe(weeks=0))
    if aim.most_weeks < aim.least_weeks:
        return Solved([say("PHASE_USED_UP", weeks=aim.weeks_done)], [], NearestSafe())

    def cap(wanted_kcal: float, weeks: int) -> DeficitLimit | None:
        return phase.cap(wanted_kcal, weeks, is_history_known=history.is_known)

    usual = None if asked is not None else _usual(phase, history)
    is_length_open = aim.weeks is None and aim.has_goal
    trial = _length_for_goal(phase, usual, cap) if is_length_open else _of_length(phase, usual, cap)
    small: list[Message] = []
    if is_length_open and _is_small(phase, trial):
        small = _fits_mini_cut(phase, history)
        if usual is not None:
            trial = _smaller(phase, trial, cap)
            small.insert(0, say("GOAL_SMALL", weeks=aim.least_weeks))
    wanted, limit, found = trial
    if limit is not None and limit.deficit_kcal < LEAST_DEFICIT:
        return _no_room(phase, limit, wanted, cap, found)
    deficit = _held(wanted, limit)
    actions = []
    if limit is not None and wanted > limit.deficit_kcal + 1.0:
        actions.append(_capped(phase, limit, wanted, cap, found))
    if found is None or (aim.has_goal and phase.left(phase.goal_end(deficit, found)) > phase.tolerance(found)):
        return Solved([], actions, _nearest(phase, cap))
    reasons = _reasons(phase, deficit, found)
    if not actions and asked is not None:
        reasons.append(say("DEFICIT_ASKED", deficit_kcal=deficit))
    elif not actions and usual is not None and wanted == usual.deficit_kcal:
        reasons.append(usual.said())
    elif not actions and aim.has_goal and aim.weeks is None:
        lost = float(phase.state.fat_kg - phase.likely_end(deficit, found).fat_kg)
        reasons = [say("DEFICIT_SOLVED", deficit_kcal=deficit, fat_kg=lost, weeks=found)]
    reasons += small
    reasons += _as_eaten(phase, deficit, found) if phase.kept is None else [_kept(phase, deficit, found)]
    return Solved(reasons, actions, deficit_kcal=deficit, weeks=found)


_Cap = Callable[[float, int], DeficitLimit | None]


class _Trial(NamedTuple):
    """A deficit that is wanted, the limit that binds it and the weeks that it would take, where it gets there."""

    wanted_kcal: float
    limit: DeficitLimit | None
    weeks: int | None


def _usual(phase: DeficitPhase, history: History) -> UsualDeficit:
    is_training = phase.model.training_dose >= 1.0
    return usual_deficit(phase.subject, history, phase.aim.pace, is_training=is_training, kept=phase.kept)


def _wanted(phase: DeficitPhase, usual: UsualDeficit | None) -> float:
    """The deficit asked for, else the usual one."""
    if usual is not None:
        return usual.deficit_kcal
    assert phase.aim.deficit_kcal is not None
    return phase.aim.deficit_kcal


def _of_length(phase: DeficitPhase, usual: UsualDeficit | None, cap: _Cap) -> _Trial:
    """A phase of the weeks asked for, else of the usual ones."""
    aim = phase.aim
    weeks = phase.usual_weeks if aim.weeks is None else aim.weeks
    wanted = phase.deficit_for_goal(weeks) if aim.has_goal and usual is not None else _wanted(phase, usual)
    return _Trial(wanted, cap(wanted, weeks), weeks)


def _length_for_goal(phase: DeficitPhase, usual: UsualDeficit | None, cap: _Cap) -> _Trial:
    """The weeks that a goal takes."""
    aim = phase.aim
    wanted = _wanted(phase, usual)
    # Limits are first taken for the longest phase that is open.
    weeks = aim.most_weeks
    limit = cap(wanted, weeks)
    found = phase.weeks_for_goal(_held(wanted, limit), weeks)
    if found is None and usual is not None:
        # More than the longest phase at the usual deficit: as brisk as is usual, but no brisker.
        wanted = min(rails.BRISK_DEFICIT, phase.deficit_for_goal(weeks))
        limit = cap(wanted, weeks)
        found = phase.weeks_for_goal(_held(wanted, limit), weeks)
    # A shorter phase is allowed another deficit, mostly a larger one, with which it is shorter still.
    while found is not None and found < weeks:
        weeks, limit = found, cap(wanted, found)
        found = phase.weeks_for_goal(_held(wanted, limit), aim.most_weeks)
    # Where it is a smaller one: as long as the weeks that it takes, whose limit is no larger again.
    while found is not None and found > weeks:
        weeks, limit = found, cap(wanted, found)
        again = phase.weeks_for_goal(_held(wanted, limit), aim.most_weeks)
        found = None if again is None else max(again, weeks)
    return _Trial(wanted, limit, found)


def _is_small(phase: DeficitPhase, trial: _Trial) -> bool:
    """Whether the shortest phase of its kind goes on for a week and more after its goal."""
    is_shortest = trial.weeks is not None and trial.weeks == phase.aim.least_weeks
    return is_shortest and phase.is_past_goal(_held(trial.wanted_kcal, trial.limit), phase.aim.least_weeks)


def _smaller(phase: DeficitPhase, trial: _Trial, cap: _Cap) -> _Trial:
    """The shortest phase at the deficit that its goal takes: the goal is what was asked for, and not the size."""
    weeks = phase.aim.least_weeks
    wanted = min(trial.wanted_kcal, max(LEAST_DEFICIT, math.ceil(phase.deficit_for_goal(weeks))))
    return _Trial(wanted, cap(wanted, weeks), weeks)


def _fits_mini_cut(phase: DeficitPhase, history: History) -> list[Message]:
    """That a mini-cut gets to the goal of a cut, and in how many weeks, where it does."""
    if phase.aim.kind is not DeficitKind.CUT or phase.aim.weeks_done:
        return []
    short = solve(phase.as_mini_cut(), history)
    if short.nearest is not None:
        return []
    return [say("GOAL_FITS_MINI_CUT", weeks=short.weeks, deficit_kcal=short.deficit_kcal)]


def _kept(phase: DeficitPhase, deficit_kcal: float, weeks: int) -> Message:
    """What the forecast expects of a deficit that is not all kept to, and what it would be in full."""
    assert phase.kept is not None
    start, likely, full = phase.state, phase.likely_end(deficit_kcal, weeks), phase.end(deficit_kcal, weeks)
    return say(
        "PLANNED_AS_KEPT",
        percent=100.0 * phase.kept.mean,
        weeks=weeks,
        fat_kg=max(0.0, float(start.fat_kg - likely.fat_kg)),
        planned_kg=max(0.0, float(start.fat_kg - full.fat_kg)),
    )


def _as_eaten(phase: DeficitPhase, deficit_kcal: float, weeks: int) -> list[Message]:
    """That all of the deficit is counted on, and what it comes to as people follow it, where that is clearly less."""
    told = phase.subject.maintenance_kcal - deficit_kcal
    if phase.eaten_kcal is not None and phase.eaten_kcal <= told + DEFICIT_FROM:
        return []
    share, usual_weeks = phase.usually_followed(weeks)
    if share >= COUNTS_UNDER:
        return []
    return [say("PLANNED_AS_EATEN", percent=100.0 * share, weeks=weeks, usual_weeks=usual_weeks)]


def _held(wanted_kcal: float, limit: DeficitLimit | None) -> float:
    return wanted_kcal if limit is None else min(wanted_kcal, limit.deficit_kcal)


def _reasons(phase: DeficitPhase, deficit_kcal: float, weeks: int) -> list[Message]:
    aim = phase.aim
    lost = float(phase.state.fat_kg - phase.likely_end(deficit_kcal, weeks).fat_kg)
    if not aim.has_goal:
        is_middle = aim.kind is DeficitKind.MINI_CUT and weeks == aim.usual_weeks
        usual = "WEEKS_DEFAULT" if is_middle else "CUT_WEEKS_DEFAULT"
        if aim.at_most_weeks is not None:
            usual = "WEEKS_TO_EVENT"
        reasons = [say(usual, weeks=weeks)] if aim.weeks is None else []
        return [*reasons, say("FAT_SOLVED", fat_kg=lost, weeks=weeks)]
    if aim.weeks is not None:
        lost = float(phase.state.fat_kg - phase.end(deficit_kcal, weeks).fat_kg)
        return [say("DEFICIT_SOLVED", deficit_kcal=deficit_kcal, fat_kg=lost, weeks=weeks)]
    return [say("WEEKS_SOLVED", weeks=weeks, fat_kg=lost)]


def _no_room(phase: DeficitPhase, limit: DeficitLimit, wanted_kcal: float, cap: _Cap, weeks: int | None) -> Solved:
    """What to say of a limit that leaves no useful deficit, with the most weeks that it leaves one for."""
    action = rails.without_room(limit, wanted_kcal)
    shorter = None
    if weeks is not None and not phase.aim.has_goal:
        shorter = _most_weeks(weeks - 1, lambda fewer: _held(wanted_kcal, cap(wanted_kcal, fewer)) >= LEAST_DEFICIT)
    said = [*rails.ratio_decides(phase.subject, limit.rule), action.message]
    return Solved(said, [action], NearestSafe(weeks=shorter))


def _capped(
    phase: DeficitPhase, limit: DeficitLimit, wanted_kcal: float, cap: _Cap, weeks: int | None
) -> rails.RailAction:
    """The report of a deficit held at a limit; of one for the body mass index, with what would fit."""
    if limit.rule == rails.BMI and weeks is not None:
        fits = _most_weeks(weeks - 1, lambda fewer: _held(wanted_kcal, cap(wanted_kcal, fewer)) >= wanted_kcal - 1.0)
        if fits is not None:
            lost = float(phase.state.tissue_kg - phase.end(limit.deficit_kcal, weeks).tissue_kg)
            return rails.capped_for_bmi(limit, wanted_kcal, fits, max(0.0, lost))
    return rails.capped(limit, wanted_kcal)


def _most_weeks(at_most: int, fits: Callable[[int], bool]) -> int | None:
    """The most weeks that fit, where fewer fit as well; None where the fewest of a phase do not."""
    found = bisect_left(range(LEAST_WEEKS, at_most + 1), True, key=lambda weeks: not fits(weeks)) + LEAST_WEEKS - 1
    return found if found >= LEAST_WEEKS else None


def _nearest(phase: DeficitPhase, cap: _Cap) -> NearestSafe:
    """The nearest on each axis, such that asking for it is feasible."""
    aim = phase.aim
    length = aim.weeks if aim.weeks is not None else aim.most_weeks
    boundless = phase.subject.maintenance_kcal
    limit = _held(boundless, cap(boundless, length))
    ceiling = math.inf if aim.deficit_kcal is None else aim.deficit_kcal
    # Asked without weeks, a goal is planned at the usual deficit or briskly; with weeks, at what the rails allow.
    usable = limit if aim.weeks is not None else min(limit, rails.BRISK_DEFICIT)
    lost = float(phase.state.fat_kg - phase.goal_end(min(usable, ceiling), length).fat_kg)
    weeks = None
    for candidate in (*range(aim.least_weeks, MOST_WEEKS + 1), *range(MOST_WEEKS + 2, CUT_WEEKS_MOST + 1, 2)):
        if candidate < length or (candidate > aim.most_weeks and aim.kind is DeficitKind.CUT):
            continue
        wanted = min(boundless, ceiling)
        allowed = _held(wanted, cap(wanted, candidate))
        if allowed < LEAST_DEFICIT:
            continue
        if phase.left(phase.goal_end(allowed, candidate)) <= phase.tolerance(candidate) * 0.5:
            weeks = candidate
            break
    return NearestSafe(max(0.0, math.floor(100 * (lost - kg_of_rounding(length))) / 100), weeks, math.floor(limit))


def capped_later(phase: DeficitPhase, deficit_kcal: float, weeks: int) -> list[RailAction]:
    """What a rail takes off the deficit of a cut when its intake is set anew, at its strictest."""
    if phase.aim.kind is not DeficitKind.CUT:
        return []
    strictest = min(phase.later_limits(deficit_kcal, weeks), key=lambda limit: limit.deficit_kcal, default=None)
    if strictest is None or deficit_kcal <= strictest.deficit_kcal + 1.0:
        return []
    return [rails.capped(rails.path_limit_of(strictest), deficit_kcal, "CAPPED_DEFICIT_LATER")]


@traced
def said_of_too_small(phase: DeficitPhase, solved: Solved) -> Message | None:
    """That limits leave a deficit of which the longest mini-cut takes off no more than a scale tells from water.

    Who asked for so small a deficit knows.
    """
    kcal, weeks = solved.deficit_kcal, solved.weeks
    if not solved.actions or kcal >= _WORTH_KCAL:
        return None
    lost = float(phase.state.fat_kg - phase.likely_end(kcal, weeks).fat_kg)
    return say("CUT_TOO_SMALL", deficit_kcal=kcal, fat_kg=max(0.0, lost), weeks=weeks)


def warnings_on(phase: DeficitPhase, solved: Solved) -> list[RailAction]:
    """Warnings on the deficit, each rule's once: at the first of the intakes that it warns of."""
    rows, states = phase.run(solved.deficit_kcal, solved.weeks)
    end = states[-1]
    loss, fraction = phase.loss_share(end, solved.weeks), float(end.fat_kg / end.weight_kg)
    bmi = subject_at(phase.subject, phase.model, end).bmi
    found: list[RailAction] = []
    if phase.aim.kind is DeficitKind.MINI_CUT:
        found += rails.warn_large(solved.deficit_kcal)
    for row, now in phase.resets(solved.deficit_kcal, solved.weeks):
        weeks = phase.counted(solved.weeks)
        found += rails.warn_deficit(now, row.intake.intake_kcal, loss, fraction, bmi, weeks=weeks)
    for row in rows:
        day = row.intake
        found += rails.warn_macronutrients(day.intake_kcal, FAT_KCAL_PER_G * day.fat_g, day.carbohydrate_g)
    return rails.each_once(found)
