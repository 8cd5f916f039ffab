"""What the formats of a season share: its words."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from ...schemas.seasons import BrokenLimit, IntakeStep, OptimumResponse, SeasonPhase, SeasonResponse, SeasonWeek
from ..wording import Words, round_as_written, tells_weight, told_once

Answer = SeasonResponse | OptimumResponse
_DIETING = "weeks_dieting"  # the one limit that is not of body fat


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
    weeks, totals = len(answer.plan.weeks), answer.plan.totals
    if not tells_weight(answer.cautions):
        return words.say("document-season", date=str(answer.plan.weeks[0].start_date), weeks=weeks)
    if words.spares:
        end = answer.plan.weeks[-1].at_end
        return words.say(
            "picture-forecast", weeks=weeks, date=str(end.date), weight_kg=round_as_written(end.weight_kg.mean, 1)
        )
    lean, fat = (
        words.number(of.mean, is_change=True, unit="kg") for of in (totals.lean_gained_kg, totals.fat_gained_kg)
    )
    return words.say("picture-season", weeks=weeks, cuts=totals.cuts, lean=lean, fat=fat)


def changes_texts(words: Words, answer: Answer) -> list[str]:
    """What a season gains and loses, with ranges, and its days in a deficit; nothing to whom leanness is spared."""
    if words.spares:
        return []
    totals = answer.plan.totals
    lean, fat = words.changes(totals.lean_gained_kg), words.changes(totals.fat_gained_kg)
    return [words.say("picture-season-changes", days=totals.days_dieting, lean=lean, fat=fat)]


def limit_texts(words: Words, answer: Answer) -> list[str]:
    """The limits that the season does not keep, in a language."""
    limits = answer.broken_limits
    return [_limit_text(words, broken) for broken in limits if broken.limit == _DIETING or not words.spares]


def _limit_text(words: Words, broken: BrokenLimit) -> str:
    name = "picture-limit-dieting" if broken.limit == _DIETING else "picture-limit"
    is_share = "fraction" in broken.limit
    allowed, found = (
        words.number(100 * value, unit="%") if is_share else words.number(value, 0)
        for value in (broken.allowed, broken.found)
    )
    return words.say(name, limit=broken.limit, allowed=allowed, found=found)


def cautions(words: Words, answer: Answer, phases: Iterable[SeasonPhase]) -> list[str]:
    """The cautions of a season: limits not kept, the general ones, some phases' own, and what the guard rails say."""
    said = limit_texts(words, answer) + words.texts(answer.cautions)
    for phase in phases:
        said += words.texts(phase.cautions)
    return list(dict.fromkeys([*said, *words.texts(told_once(answer.plan.guard_rails))]))
