"""A plan as Markdown (CommonMark with tables) that a coach can paste into a message, in one language."""

from collections.abc import Iterator

from steelyard.science.phase import PhaseKind

from ...schemas.plans import ActivityLever, ActivityUse, Phase, PhaseSize, PlanRequest, PlanResponse, PlanWeek
from ..wording import Words, tells_weight
from . import markdown, plan_words

_FORECAST_EVERY_WEEKS = 4
_NAMED_ELEMENTS = ("easing_in", "break")


def summary(request: PlanRequest, plan: PlanResponse, words: Words) -> bytes:
    """Phases, intakes, forecast with intervals, reasons and cautions."""
    return ("\n".join(_lines(request, plan, words)) + "\n").encode()


def _lines(request: PlanRequest, plan: PlanResponse, words: Words) -> Iterator[str]:
    yield f"# {words.say('document-plan', date=str(request.start_date))}"
    yield ""
    yield markdown.start(words, plan.maintenance_kcal, plan.body_fat_fraction)
    if not plan.feasible:
        yield from markdown.section(words.say("BRIEFING_NO_PLAN_TITLE"), plan_words.infeasible_lines(words, plan))
    else:
        of_weight = (_phases, _forecast) if not tells_weight(plan.cautions) else ()
        for part in (_phases, _intakes, _days, _forecast, _sizes, _levers, _why):
            if part not in of_weight:
                yield from part(plan, words)
    yield from markdown.section(words.say("document-cautions"), plan_words.cautions(words, plan, ()))


def _phases(plan: PlanResponse, words: Words) -> Iterator[str]:
    rows = (
        (
            words.phase(phase.kind), str(phase.start_date), str(phase.end_date), str(len(phase.weeks)),
            *plan_words.changes(words, phase.change).values(), words.changes(phase.change.carried_kg),
        )
        for phase in plan.phases
    )  # fmt: skip
    columns = ("phase", "from", "to", "weeks", "weight", "fat", "lean", "carried")
    yield from markdown.table(words, words.say("document-phases"), columns, rows)
    yield ""
    yield words.say("document-carried-means")


def _intakes(plan: PlanResponse, words: Words) -> Iterator[str]:
    rows: list[tuple[str, ...]] = []
    for phase, week, _ in plan_words.intake_changes(plan):
        name = words.phase(phase.kind)
        if week.element in _NAMED_ELEMENTS:
            name += f", {words.say('document-element', element=week.element)}"
        rows.append((str(week.start_date), name, *plan_words.eaten(words, week).values(), str(week.fibre_g)))
        for kind in week.day_kinds:
            day = words.say("document-day-kind", kind=kind.kind, days=kind.days_per_week)
            rows.append(("", day, *plan_words.eaten(words, kind).values(), ""))
    columns = ("from", "phase", "kcal_a_day", "protein_g", "carbohydrate_g", "fat_g", "fibre_g")
    yield from markdown.table(words, words.say("document-intake"), columns, rows)


def _days(plan: PlanResponse, words: Words) -> Iterator[str]:
    """Each day of a week, where it is told, and again where another day has another amount."""
    rows: list[tuple[str, ...]] = []
    told: list[tuple[object, ...]] = []
    for phase in plan.phases:
        for week in phase.weeks:
            new = [plan_words.eaten_on(day) for day in week.by_day]
            if sorted(map(str, new)) != sorted(map(str, told)):
                rows += [
                    (
                        str(day.date),
                        words.say("weekday-name", weekday=day.date.isoweekday()),
                        *plan_words.eaten(words, day).values(),
                        str(day.alcohol_g or ""),
                        words.say(
                            "document-training",
                            minutes=words.number(day.training_minutes, 0),
                            kcal=words.number(day.training_kcal, 0),
                        )
                        if day.training_minutes
                        else "",
                        plan_words.meals(day),
                    )
                    for day in week.by_day
                ]
            told = new
    if rows:
        columns = ("from", "day", "kcal", "protein_g", "carbohydrate_g", "fat_g", "alcohol_g", "training", "meals_g")
        yield from markdown.table(words, words.say("document-days"), columns, rows)


def _forecast(plan: PlanResponse, words: Words) -> Iterator[str]:
    rows = (
        (
            str(week.at_end.date), words.phase(phase.kind), str(week.week), words.values(week.at_end.weight_kg),
            words.values(week.at_end.fat_kg), words.values(week.at_end.fat_fraction, scale=100),
            words.number(week.energy_balance_kcal, 0, is_change=True),
        )
        for phase in plan.phases
        for week in phase.weeks
        if _is_shown(phase, week)
    )  # fmt: skip
    columns = ("at_the_end_of", "phase", "week", "weight_kg", "fat_kg", "fat_percent", "balance")
    yield from markdown.table(words, words.say("document-forecast"), columns, rows)


def _sizes(plan: PlanResponse, words: Words) -> Iterator[str]:
    if plan.sizes:
        columns = ("size", "kcal_a_day", "intake", "weeks", "fat", "lean", "rate", "rails")
        rows = (_size(size, words) for size in plan.sizes)
        yield from markdown.table(words, words.say("document-sizes"), columns, rows)


def _size(size: PhaseSize, words: Words) -> tuple[str, ...]:
    name = words.say("document-size", size=size.size)
    change = -size.deficit_kcal if size.deficit_kcal is not None else size.surplus_kcal or 0.0
    rails = dict.fromkeys(rail.id for rail in size.guard_rails)
    return (
        words.say("document-size-planned", size=name) if size.is_planned else name,
        words.number(change, 0, is_change=True),
        words.number(size.intake_kcal, 0),
        str(size.weeks),
        words.changes(size.change.fat_kg),
        words.changes(size.change.lean_kg),
        words.number(size.tissue_rate_percent, 2, is_change=True),
        "; ".join(words.say("document-rail", rail=rail) for rail in rails),
    )


def _levers(plan: PlanResponse, words: Words) -> Iterator[str]:
    if plan.levers:
        columns = ("activity", "burnt", "counts", "use", "intake", "fat", "availability")
        rows = (row for lever in plan.levers for row in _lever(lever, words))
        yield from markdown.table(words, words.say("document-levers"), columns, rows)


def _lever(lever: ActivityLever, words: Words) -> Iterator[tuple[str, ...]]:
    dose = lever.steps_per_day or lever.minutes_per_week or 0.0
    activity = words.say("document-lever", lever=lever.kind, dose=dose)
    counts = [words.values(of, 0) for of in (lever.burnt_kcal, lever.kept_kcal)]
    uses: list[tuple[str, ActivityUse | None]] = [("instead", lever.instead), ("together", lever.together)]
    for name, use in uses:
        found = (words.say("document-not-safe"), "", "")
        if use is not None:
            left = words.say(
                "document-availability",
                observed=words.number(use.availability_kcal_per_kg),
                planned=words.number(lever.planned_availability_kcal_per_kg),
            )
            found = (words.number(use.intake_kcal, 0), words.changes(use.fat_change_kg), left)
        yield (activity, *counts, words.say("document-use", use=name), *found)


def _is_shown(phase: Phase, week: PlanWeek) -> bool:
    """Every week of a fat-loss phase and of a short one; of others every fourth and the last."""
    is_short = PhaseKind(phase.kind).is_deficit or len(phase.weeks) <= _FORECAST_EVERY_WEEKS
    return is_short or week.week % _FORECAST_EVERY_WEEKS == 0 or week.week == len(phase.weeks)


def _why(plan: PlanResponse, words: Words) -> Iterator[str]:
    yield from markdown.section(words.say("document-why"), words.texts(plan.reasons))
    told = set(words.texts(plan.reasons))
    for phase in plan.phases:
        # What explains the whole plan, or holds in an earlier phase as well, is not said again.
        said = words.texts([*phase.reasons, *phase.cautions, *phase.ends_early_when, *phase.guidance])
        title = words.say("document-phase-from", kind=phase.kind, date=str(phase.start_date))
        yield from markdown.section(title, [text for text in said if text not in told])
        told.update(said)
    rule = plan.rule_of_thumb
    if rule is not None and not words.spares:
        fat, drop = (
            words.span(*ends, unit="kg")
            for ends in (rule.fat_loss_common_practice_kg, rule.first_week_drop_common_practice_kg)
        )
        forecast = words.number(rule.first_week_drop_forecast_kg, unit="kg")
        yield from markdown.section(
            words.say("document-rules"),
            [
                words.say("document-rule-static", fat=words.number(rule.fat_loss_static_kg, unit="kg")),
                words.say("document-rule-quoted", fat=fat, drop=drop, forecast=forecast),
            ],
        )
