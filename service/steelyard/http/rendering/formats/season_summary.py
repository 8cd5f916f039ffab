"""A season as Markdown (CommonMark with tables) that a coach can paste into a message."""

from collections.abc import Iterator

from ...schemas.seasons import OptimumResponse, SeasonQuestion, StrategyNumbers
from . import markdown, plan_words, season_words


def summary(request: SeasonQuestion, season: season_words.Answer) -> bytes:
    """The strategy, totals with intervals, phases, intakes, trade-off, reasons and cautions."""
    return ("\n".join(_lines(request, season)) + "\n").encode()


def _lines(request: SeasonQuestion, season: season_words.Answer) -> Iterator[str]:
    yield f"# Season from {request.start_date}, {plan_words.weeks_text(len(season.plan.weeks))}"
    yield ""
    yield markdown.start(season.start.maintenance_kcal, season.start.body_fat_fraction)
    yield ""
    yield _strategy(season.plan.strategy)
    yield from markdown.section("Limits", season_words.broken_limits(season))
    yield from _totals(season)
    yield from _phases(season)
    yield from _intakes(season)
    if isinstance(season, OptimumResponse):
        yield from _trade_off(season)
    yield from markdown.section("Why", plan_words.texts(season.plan.reasons))
    for phase in season.plan.phases:
        said = plan_words.texts(phase.reasons) + plan_words.texts(phase.ends_early_when)
        yield from markdown.section(f"{plan_words.phase_name(phase.kind)} from {phase.start_date}", said)
    yield from markdown.section("Cautions", season_words.cautions(season))


def _strategy(numbers: StrategyNumbers) -> str:
    text = f"Gains at a surplus of {numbers.surplus_kcal:,.0f} kcal a day"
    if numbers.cut_at_fat_fraction is None:
        return f"{text}; no cut."
    starts = f"at {100 * numbers.cut_at_fat_fraction:.1f} % body fat"
    if numbers.cut_to_fat_fraction is None:
        return f"{text}; a cut would start {starts}, and none does."
    text += f"; a cut starts {starts} and ends at {100 * numbers.cut_to_fat_fraction:.1f} %"
    if numbers.deficit_kcal is not None:
        text += f", at a deficit of {numbers.deficit_kcal:,.0f} kcal a day"
    if numbers.longest_cut_weeks is not None:
        text += f", for {plan_words.weeks_text(numbers.longest_cut_weeks)} at most"
    if numbers.maintenance_weeks is not None:
        text += f"; then {plan_words.weeks_text(numbers.maintenance_weeks)} at maintenance"
    return f"{text}."


def _totals(season: season_words.Answer) -> Iterator[str]:
    totals, start = season.plan.totals, season.start
    band = f"{100 * start.band_lower_fat_fraction:.1f} to {100 * start.band_upper_fat_fraction:.1f} %"
    above = totals.weeks_above_band
    rows = (
        ("lean gained", plan_words.change_text(totals.lean_gained_kg)),
        ("fat gained", plan_words.change_text(totals.fat_gained_kg)),
        (f"peak body fat %, on {totals.peak_date}", markdown.percent(totals.peak_fat_fraction)),
        ("body fat % at the end", markdown.percent(totals.final_fat_fraction)),
        (f"weeks above the band ({band})", f"{above.mean:.0f} ({above.lower:.0f} to {above.upper:.0f})"),
        ("days dieting", str(totals.days_dieting)),
        ("cuts", str(totals.cuts)),
    )
    yield from markdown.table("In all", ("what", "expected"), rows)


def _phases(season: season_words.Answer) -> Iterator[str]:
    rows = (
        (
            plan_words.phase_name(phase.kind), str(phase.start_date), str(phase.end_date), str(phase.weeks),
            *(plan_words.change_text(of) for of in (phase.change.weight_kg, phase.change.fat_kg, phase.change.lean_kg)),
        )
        for phase in season.plan.phases
    )  # fmt: skip
    yield from markdown.table("Phases", ("phase", "from", "to", "weeks", "weight", "fat", "lean"), rows)


def _intakes(season: season_words.Answer) -> Iterator[str]:
    rows = (
        (
            str(step.start_date), plan_words.phase_name(phase.kind), str(step.weeks), f"{step.intake_kcal:,}",
            str(step.protein_g), str(step.carbohydrate_g), str(step.fat_g), str(step.fibre_g),
        )
        for phase, step in season_words.steps(season)
    )  # fmt: skip
    header = ("from", "phase", "weeks", "kcal a day", "protein g", "carbohydrate g", "fat g", "fibre g")
    yield from markdown.table("Intake", header, rows)


def _trade_off(season: OptimumResponse) -> Iterator[str]:
    rows = (
        (
            str(other.expected.weeks_above_band), f"{other.expected.lean_gained_kg:+.2f}",
            f"{other.expected.fat_gained_kg:+.2f}", str(other.expected.days_dieting), _strategy(other.strategy),
        )
        for other in season.trade_off
    )  # fmt: skip
    header = ("weeks above the band", "lean kg", "fat kg", "days dieting", "strategy")
    yield from markdown.table("What weeks above the band buy", header, rows)
