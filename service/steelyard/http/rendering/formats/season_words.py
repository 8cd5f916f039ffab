"""What the formats of a season share: its words."""

from collections.abc import Iterator
from typing import NamedTuple

from ...schemas.seasons import IntakeStep, OptimumResponse, SeasonPhase, SeasonResponse, SeasonWeek
from .plan_words import one_line, texts

Answer = SeasonResponse | OptimumResponse

_LIMITS = {
    "weeks_above_band": "weeks above the band",
    "weeks_dieting": "weeks dieting",
    "event_fat_fraction": "body fat over the target of an event",
}


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


def broken_limits(answer: Answer) -> list[str]:
    """The limits that the season does not keep."""
    said = []
    for broken in answer.broken_limits:
        name = _LIMITS.get(broken.limit, broken.limit.replace("_", " "))
        scale, unit = (100, " %") if "fraction" in broken.limit else (1, "")
        allowed, found = scale * broken.allowed, scale * broken.found
        said.append(f"Not every limit is kept: {name}, {found:.3g}{unit} where {allowed:.3g}{unit} is allowed.")
    return said


def cautions(answer: Answer) -> list[str]:
    """Every caution of a season: limits not kept, the general ones, each phase's, and what the guard rails say."""
    said = broken_limits(answer) + texts(answer.cautions)
    for phase in answer.plan.phases:
        said += texts(phase.cautions)
    said += [one_line(rail.text) for rail in answer.plan.guard_rails]
    return list(dict.fromkeys(said))
