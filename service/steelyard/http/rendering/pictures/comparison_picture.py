"""The picture of strategies side by side."""

from ...schemas.quantities import Interval
from ...schemas.seasons import ComparedStrategy, ComparisonRequest, ComparisonResponse
from ..formats import plan_words as words
from . import interval_rows, wording
from .interval_rows import Group, Row
from .marks import Layer, Sample
from .palette import SHAPES, Look
from .sheet import Drawing, Headline, sheet


def draw(request: ComparisonRequest, comparison: ComparisonResponse, look: Look) -> Drawing:
    """A panel for each outcome, with a row for each strategy."""
    lean, fat, weight = (look.lean, SHAPES["lean"]), (look.fat, SHAPES["fat"]), (look.ink, SHAPES["weight"])
    panels = [
        _panel(look, comparison, "Lean tissue gained, kg", "lean_gained_kg", lean, is_first=True),
        _panel(look, comparison, "Fat gained, kg", "fat_gained_kg", fat),
        _panel(look, comparison, "Highest body fat, %", "peak_fat_fraction", fat, is_change=False, scale=100),
        _panel(look, comparison, "Weeks above the band", "weeks_above_band", weight, is_change=False, digits=0),
        _panel(look, comparison, "Days in a deficit", "days_dieting", weight, is_change=False, digits=0),
    ]
    said = words.texts(comparison.cautions)
    said += [words.one_line(f"{_name(refused.label)}: {refused.text}") for refused in comparison.refused]
    said += [words.one_line(rail.text) for strategy in comparison.strategies for rail in strategy.guard_rails]
    message = _message(comparison, request.horizon_weeks)
    return sheet(look, message, panels, list(dict.fromkeys(said)))


def _panel(
    look: Look,
    comparison: ComparisonResponse,
    title: str,
    field: str,
    style: tuple[str, str],
    *,
    digits: int = 1,
    is_change: bool = True,
    scale: float = 1.0,
    is_first: bool = False,
) -> Layer:
    rows = [
        Row(_name(s.label), getattr(s.intervals, field), *style, is_filled=s.feasible) for s in comparison.strategies
    ]
    samples = []
    if is_first:
        samples.append(Sample("median and 80 % interval", *style[:1], shape=style[1]))
        if not all(s.feasible for s in comparison.strategies):
            samples.append(Sample("a limit is not kept", *style[:1], shape=style[1], is_filled=False))
    return interval_rows.panel(
        look, [Group("", rows)], title=title, samples=samples, digits=digits, is_change=is_change, scale=scale
    )


def _name(label: str) -> str:
    return words.one_line(wording.READY_MADE_NAMES.get(label, label))


def _message(comparison: ComparisonResponse, weeks: int) -> Headline:
    strategies = comparison.strategies
    title = f"{len(strategies)} strategies over {words.weeks_text(weeks)}"
    if len(strategies) == 1:
        title = f"One strategy over {words.weeks_text(weeks)}"
    lines = [
        _most("Most lean tissue gained", strategies, "lean_gained_kg", 1),
        _most("Least fat gained", strategies, "fat_gained_kg", -1),
    ]
    best = _best(strategies, "lean_gained_kg", 1)
    against = [chance for chance in comparison.chances if chance.label == best.label]
    if against:
        rival = min(against, key=lambda chance: chance.more_lean)
        odds = f"“{_name(best.label)}” gains more lean tissue than “{_name(rival.over)}” with a probability of "
        odds += f"{100 * rival.more_lean:.0f} %"
        lines.append(f"{odds}." if rival.more_lean_is_clear else f"No clear difference: {odds}.")
    lines.append(
        f"Medians over {comparison.draws} draws of what is uncertain; in parentheses: "
        f"{wording.coverage(best.intervals.lean_gained_kg)} intervals."
    )
    return Headline(title, lines, " ".join([f"{title}.", *lines, *map(_strategy_text, strategies)]))


def _best(strategies: list[ComparedStrategy], field: str, sign: int) -> ComparedStrategy:
    return max(strategies, key=lambda s: sign * _value(s, field).mean)


def _most(words_: str, strategies: list[ComparedStrategy], field: str, sign: int) -> str:
    best = _best(strategies, field, sign)
    limit = "" if best.feasible else ", past a limit"
    return f"{words_}: “{_name(best.label)}”, {wording.changes(_value(best, field))}{limit}."


def _value(strategy: ComparedStrategy, field: str) -> Interval:
    value: Interval = getattr(strategy.intervals, field)
    return value


def _strategy_text(strategy: ComparedStrategy) -> str:
    found = strategy.intervals
    kept = "" if strategy.feasible else " A limit is not kept."
    return (
        f"“{_name(strategy.label)}”: lean tissue {wording.changes(found.lean_gained_kg)}, fat "
        f"{wording.changes(found.fat_gained_kg)}, highest body fat {wording.percent(found.peak_fat_fraction)}, "
        f"{wording.values(found.weeks_above_band, 0)} weeks above the band, "
        f"{wording.values(found.days_dieting, 0)} days in a deficit.{kept}"
    )
