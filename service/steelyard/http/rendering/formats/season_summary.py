"""A season as Markdown (CommonMark with tables) that a coach can paste into a message, in one language."""

from collections.abc import Iterator

from ...schemas.seasons import OptimumResponse, SeasonQuestion, StrategyNumbers
from ..wording import Words, tells_weight
from . import markdown, plan_words, season_words


def summary(request: SeasonQuestion, season: season_words.Answer, words: Words) -> bytes:
    """The strategy, totals with intervals, phases, intakes, trade-off, reasons and cautions."""
    return ("\n".join(_lines(request, season, words)) + "\n").encode()


def _lines(request: SeasonQuestion, season: season_words.Answer, words: Words) -> Iterator[str]:
    yield f"# {words.say('document-season', date=str(request.start_date), weeks=len(season.plan.weeks))}"
    yield ""
    yield markdown.start(words, season.start.maintenance_kcal, season.start.body_fat_fraction)
    yield ""
    yield _strategy(season.plan.strategy, words)
    yield from markdown.section(words.say("document-limits"), season_words.limit_texts(words, season))
    yield from _totals(season, words)
    if tells_weight(season.cautions):
        yield from _phases(season, words)
    yield from _intakes(season, words)
    if isinstance(season, OptimumResponse) and not words.spares:
        yield from _trade_off(season, words)
    yield from markdown.section(words.say("document-why"), words.texts(season.plan.reasons))
    for phase in season.plan.phases:
        title = words.say("document-phase-from", kind=phase.kind, date=str(phase.start_date))
        yield from markdown.section(title, words.texts([*phase.reasons, *phase.cautions, *phase.ends_early_when]))
    yield from markdown.section(words.say("document-cautions"), season_words.cautions(words, season, ()))


def _strategy(numbers: StrategyNumbers, words: Words) -> str:
    said = [words.say("document-strategy-gain", surplus=words.number(numbers.surplus_kcal, 0))]
    # Who is spared leanness is planned no cut, whatever the strategy would cut at.
    if numbers.cut_at_fat_fraction is None or words.spares:
        return " ".join([*said, words.say("document-strategy-no-cut")])
    starts = words.number(100 * numbers.cut_at_fat_fraction, unit="%")
    if numbers.cut_to_fat_fraction is None:
        return " ".join([*said, words.say("document-strategy-uncut", starts=starts)])
    ends = words.number(100 * numbers.cut_to_fat_fraction, unit="%")
    said.append(words.say("document-strategy-cut", starts=starts, ends=ends))
    if numbers.deficit_kcal is not None:
        said.append(words.say("document-strategy-deficit", deficit=words.number(numbers.deficit_kcal, 0)))
    if numbers.longest_cut_weeks is not None:
        said.append(words.say("document-strategy-longest", weeks=numbers.longest_cut_weeks))
    if numbers.maintenance_weeks is not None:
        said.append(words.say("document-strategy-maintenance", weeks=numbers.maintenance_weeks))
    return " ".join(said)


def _totals(season: season_words.Answer, words: Words) -> Iterator[str]:
    totals = season.plan.totals
    rows = [
        *([] if words.spares else _tissue_totals(season, words)),
        (words.say("document-total", total="dieting"), str(totals.days_dieting)),
        (words.say("document-total", total="cuts"), str(totals.cuts)),
    ]
    yield from markdown.table(words, words.say("document-in-all"), ("what", "expected"), rows)


def _tissue_totals(season: season_words.Answer, words: Words) -> Iterator[tuple[str, str]]:
    totals, start = season.plan.totals, season.start
    band = words.span(100 * start.band_lower_fat_fraction, 100 * start.band_upper_fat_fraction, unit="%")
    yield words.say("document-total-of-tissue", total="lean"), words.changes(totals.lean_gained_kg)
    yield words.say("document-total-of-tissue", total="fat"), words.changes(totals.fat_gained_kg)
    yield words.say("document-peak", date=str(totals.peak_date)), words.percent(totals.peak_fat_fraction)
    yield words.say("document-total-of-tissue", total="end"), words.percent(totals.final_fat_fraction)
    yield words.say("document-above-band", band=band), words.values(totals.weeks_above_band, 0)


def _phases(season: season_words.Answer, words: Words) -> Iterator[str]:
    rows = (
        (
            words.phase(phase.kind), str(phase.start_date), str(phase.end_date), str(phase.weeks),
            *plan_words.changes(words, phase.change).values(),
        )
        for phase in season.plan.phases
    )  # fmt: skip
    columns = ("phase", "from", "to", "weeks", "weight", "fat", "lean")
    yield from markdown.table(words, words.say("document-phases"), columns, rows)


def _intakes(season: season_words.Answer, words: Words) -> Iterator[str]:
    rows = (
        (
            str(step.start_date), words.phase(phase.kind), str(step.weeks), *plan_words.eaten(words, step).values(),
            str(step.fibre_g),
        )
        for phase, step in season_words.steps(season)
    )  # fmt: skip
    columns = ("from", "phase", "weeks", "kcal_a_day", "protein_g", "carbohydrate_g", "fat_g", "fibre_g")
    yield from markdown.table(words, words.say("document-intake"), columns, rows)


def _trade_off(season: OptimumResponse, words: Words) -> Iterator[str]:
    # Where every week may be above the band, what it ends with tells them apart.
    is_by_end = season.allowed_final_fat_fraction is not None
    rows = (
        (
            words.number(100 * other.expected.final_fat_fraction)
            if is_by_end
            else str(other.expected.weeks_above_band),
            words.number(other.expected.lean_gained_kg, 2, is_change=True),
            words.number(other.expected.fat_gained_kg, 2, is_change=True),
            str(other.expected.days_dieting),
            _strategy(other.strategy, words),
        )
        for other in season.trade_off
    )
    columns = ("fat_percent" if is_by_end else "weeks_above", "lean_kg", "fat_kg", "days_dieting", "strategy")
    title = words.say("document-trade-off-end" if is_by_end else "document-trade-off")
    yield from markdown.table(words, title, columns, rows)
