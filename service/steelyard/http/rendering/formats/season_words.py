"""What the formats of a season share: its words."""

from collections.abc import Iterator
from typing import NamedTuple

from ...schemas.seasons import BrokenLimit, IntakeStep, OptimumResponse, SeasonPhase, SeasonResponse, SeasonWeek
from ..wording import Words, told_once

Answer = SeasonResponse | OptimumResponse


class PhasedIntake(NamedTuple):
    """An intake, and the phase it is eaten in."""

    phase: SeasonPhase
    step: IntakeStep


def steps(answer: Answer) -> Iterator[PhasedIntake]:
    """Every change of intake, in order; the first intake is one."""
    for phase in answer.plan.phases:
        for step in phase.intakes:
            yield PhasedIntake(phase, step)


def weeks(answer: Answer) -> Iterator[tuple[SeasonPhase, SeasonWeek]]:
    """Every week with its phase, in order."""
    phases = (phase for phase in answer.plan.phases for _ in range(phase.weeks))
    return zip(phases, answer.plan.weeks, strict=True)


def title(words: Words, answer: Answer) -> str:
    """What a season comes to, in a line."""
    totals = answer.plan.totals
    lean, fat = (
        words.number(of.mean, is_change=True, unit="kg") for of in (totals.lean_gained_kg, totals.fat_gained_kg)
    )
    return words.say("picture-season", weeks=len(answer.plan.weeks), cuts=totals.cuts, lean=lean, fat=fat)


def changes_text(words: Words, answer: Answer) -> str:
    """The same with ranges, and the days in a deficit."""
    totals = answer.plan.totals
    lean, fat = words.changes(totals.lean_gained_kg), words.changes(totals.fat_gained_kg)
    return words.say("picture-season-changes", days=totals.days_dieting, lean=lean, fat=fat)


def limit_texts(words: Words, answer: Answer) -> list[str]:
    """The limits that the season does not keep, in a language."""
    return [_limit_text(words, broken) for broken in answer.broken_limits]


def _limit_text(words: Words, broken: BrokenLimit) -> str:
    is_share = "fraction" in broken.limit
    allowed, found = (
        words.number(100 * value, unit="%") if is_share else words.number(value, 0)
        for value in (broken.allowed, broken.found)
    )
    return words.say("picture-limit", limit=broken.limit, allowed=allowed, found=found)


def cautions(words: Words, answer: Answer) -> list[str]:
    """Every caution of a season: limits not kept, the general ones, each phase's, and what the guard rails say."""
    said = limit_texts(words, answer) + words.texts(answer.cautions)
    for phase in answer.plan.phases:
        said += words.texts(phase.cautions)
    return list(dict.fromkeys([*said, *words.texts(told_once(answer.plan.guard_rails))]))
