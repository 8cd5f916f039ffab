"""The picture of strategies side by side: the answer is its headline."""

from ...schemas.seasons import ComparedStrategy, ComparisonRequest, ComparisonResponse
from ...schemas.shared_fields import Interval
from ..wording import Words, one_line, told_once
from . import interval_rows
from .interval_rows import Group, Row
from .labels import Layer, Sample
from .palette import SHAPES, Look
from .sheet import Drawing, Headline, sheet


def draw(request: ComparisonRequest, comparison: ComparisonResponse, look: Look) -> Drawing:
    """A panel for each outcome, with a row for each strategy."""
    words = look.words
    lean, fat, weight = (look.lean, SHAPES["lean"]), (look.fat, SHAPES["fat"]), (look.ink, SHAPES["weight"])
    panels = [_panel(look, comparison, "picture-lean-gained", "lean_gained_kg", lean, is_first=True)]
    if not words.spares:
        panels += [
            _panel(look, comparison, "picture-fat-gained", "fat_gained_kg", fat),
            _panel(look, comparison, "picture-peak", "peak_fat_fraction", fat, is_change=False, scale=100),
            _panel(look, comparison, "picture-weeks-above", "weeks_above_band", weight, is_change=False, digits=0),
        ]
    panels.append(_panel(look, comparison, "picture-days-dieting", "days_dieting", weight, is_change=False, digits=0))
    said = words.texts(comparison.cautions)
    for refused in comparison.refused:
        said += [one_line(f"{words.strategy(refused.label)}: {text}") for text in words.texts([refused])]
    for strategy in comparison.strategies:
        said += words.texts(told_once(strategy.guard_rails))
    message = _message(words, comparison, request.horizon_weeks)
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
    words = look.words
    rows = [
        Row(words.strategy(s.label), getattr(s.intervals, field), *style, is_filled=s.feasible)
        for s in comparison.strategies
    ]
    samples = []
    if is_first:
        samples.append(Sample(words.say("picture-median"), *style[:1], shape=style[1]))
        if not all(s.feasible for s in comparison.strategies):
            samples.append(Sample(words.say("picture-limit-broken"), *style[:1], shape=style[1], is_filled=False))
    return interval_rows.panel(
        look,
        [Group("", rows)],
        title=words.say(title),
        samples=samples,
        digits=digits,
        is_change=is_change,
        scale=scale,
    )


def _message(words: Words, comparison: ComparisonResponse, weeks: int) -> Headline:
    strategies = comparison.strategies
    best = _best(strategies, "lean_gained_kg", 1)
    if len(strategies) == 1:
        lean, fat = (words.changes(of) for of in (best.intervals.lean_gained_kg, best.intervals.fat_gained_kg))
        title = words.say("picture-comparison-one", weeks=weeks, lean=lean, fat=fat)
    else:
        title = one_line(words.say("picture-comparison", weeks=weeks, strategy=best.label))
    lines = [_most(words, "picture-most-lean", best, "lean_gained_kg")]
    if not words.spares:
        least = _best(strategies, "fat_gained_kg", -1)
        lines.append(_most(words, "picture-least-fat", least, "fat_gained_kg"))
    against = [chance for chance in comparison.chances if chance.label == best.label]
    if against:
        rival = min(against, key=lambda chance: chance.more_lean)
        lines.append(
            one_line(
                words.say(
                    "picture-odds" if rival.more_lean_is_clear else "picture-odds-unclear",
                    strategy=best.label,
                    rival=words.strategy(rival.over),
                    percent=words.number(100 * rival.more_lean, 0, unit="%"),
                )
            )
        )
    lines.append(words.say("picture-draws", draws=comparison.draws))
    lines.append(words.ranges(best.intervals.lean_gained_kg))
    return Headline(title, lines, " ".join([f"{title}.", *lines, *(_strategy_text(words, s) for s in strategies)]))


def _best(strategies: list[ComparedStrategy], field: str, sign: int) -> ComparedStrategy:
    return max(strategies, key=lambda s: sign * _value(s, field).mean)


def _most(words: Words, name: str, best: ComparedStrategy, field: str) -> str:
    past = "no" if best.feasible else "yes"
    return one_line(words.say(name, strategy=best.label, value=words.changes(_value(best, field)), past=past))


def _value(strategy: ComparedStrategy, field: str) -> Interval:
    value: Interval = getattr(strategy.intervals, field)
    return value


def _strategy_text(words: Words, strategy: ComparedStrategy) -> str:
    found = strategy.intervals
    text = words.say(
        "picture-strategy-in-figures",
        strategy=strategy.label,
        lean=words.changes(found.lean_gained_kg),
        fat=words.changes(found.fat_gained_kg),
        percent=words.percent(found.peak_fat_fraction),
        above=words.values(found.weeks_above_band, 0),
        dieting=words.values(found.days_dieting, 0),
    )
    return one_line(text if strategy.feasible else f"{text} {words.say('picture-limit-not-kept')}")
