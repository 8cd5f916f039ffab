"""`POST /v1/trends`: weight freed from noise, its rate, its split, and maintenance now."""

from collections.abc import Collection
from datetime import date

from steelyard import answers
from steelyard.science.log import CompositionChange, Explained, LatelyWalked

from ..operation.operation import computation
from ..schemas import trends as schema
from ..schemas.trends import (
    ChangeSplit,
    CompositionOverLog,
    ExplainedChange,
    ExplanationRow,
    TrendDays,
    TrendRequest,
    TrendResponse,
)
from . import mapping, phases, states
from .examples.examples import TREND_EXAMPLES
from .mapping import (
    KCAL,
    KG,
    NOT_MADE,
    RATIO,
    amount,
    amount_columns,
    column_with_gaps,
    fat_mass,
    fat_share,
    interval,
    interval_columns,
)


@computation(
    "/v1/trends",
    operation_id="read_trend",
    tag="trends",
    summary="Read a log of weights and intakes",
    request_examples=TREND_EXAMPLES,
    parts=("days", "state"),
)
def read_trend(body: TrendRequest, *, without: Collection[str] = ()) -> TrendResponse:
    """Read dated weights and intakes: gaps, doubles and outliers are fine.

    Weight is freed from daily noise, its rate is that of tissue, and recent change is split into tissue and
    carried mass (glycogen, water, gut content). Maintenance is learnt on the person's own logging scale. While
    there is too little data, the answer says so and how many more days are needed. Readings of body fat split tissue
    into fat and lean; days of menstruation keep the rise around them out; and mean intake is read from weight alone
    for those who log no food, and for others where `include` asks.
    """
    followed = None if body.state is None else body.state.phase
    answer = answers.read_trend(
        answers.TrendAsked(
            mapping.told(body.profile, screened=body.screening, entries=body.log, state=body.state),
            body.as_of_date,
            body.usual_intake_kcal,
            tuple((m.date, mapping.measurement(m.measurement)) for m in body.measurements),
            None if body.aim is None else body.aim == "lose",
            states.phases_known(body.state).under_way,
            None if followed is None else phases.followed(followed, "state.phase"),
            frozenset(body.include),
            is_handed_on="state" not in without,
        )
    )
    found = answer.value
    trend, implied, composition = found.trend, found.implied, found.composition
    maintenance = trend.maintenance
    return TrendResponse(
        **mapping.provenance("read_trend", body),
        as_of_date=found.as_of,
        is_conclusive=trend.more_days_needed == 0,
        more_days_needed=trend.more_days_needed or None,
        weekly_rate_kg=interval(trend.weekly_rate, KG),
        plateau_probability=round(trend.plateau_probability, 3),
        stall_probability=None if trend.stall_probability is None else round(trend.stall_probability, 3),
        maintenance_kcal=amount(maintenance.maintenance, KCAL),
        physical_maintenance_kcal=amount(maintenance.physical, KCAL),
        logging_ratio=interval(maintenance.logging_ratio, RATIO),
        log_share=round(maintenance.log_share, 3),
        cycle_rise_kg=None if trend.cycle is None else interval(trend.cycle, KG),
        composition=None if composition is None else _composition(composition, trend.smoothed.weight_kg[-1]),
        explained=None if trend.explained is None else _explained(trend.explained),
        steps=None if trend.steps is None else _steps(trend.steps),
        changes=[
            ChangeSplit(
                days=change.days,
                weight_kg=interval(change.weight, KG),
                tissue_kg=interval(change.tissue, KG),
                carried_kg=interval(change.carried, KG),
                implied_intake_kcal=amount(implied[change.days].intake_kcal, KCAL) if implied else None,
            )
            for change in trend.changes
        ],
        days=NOT_MADE if "days" in without else _days(found),
        notes=mapping.notes(trend.notes),
        state=NOT_MADE if "state" in without else mapping.state_on(answer.state, body.state),
        reasons=mapping.notes(answer.reasons),
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )


def _composition(change: CompositionChange, weight_kg: float) -> CompositionOverLog:
    return CompositionOverLog(
        fat_kg=fat_mass(change.fat_kg, weight_kg),
        fat_fraction=fat_share(change.fat_fraction),
        fat_change_kg=interval(change.fat_change_kg, KG),
        lean_change_kg=interval(change.lean_change_kg, KG),
        reading_count=change.reading_count,
    )


def _explained(explained: Explained) -> ExplainedChange:
    return ExplainedChange(
        days=explained.days,
        tissue_beyond_log_kg=interval(explained.tissue_off, KG),
        carried_beyond_log_kg=interval(explained.water_off, KG),
        causes=[ExplanationRow(one.cause.value, round(one.probability, 3)) for one in explained.causes],
        settles=None if explained.settles is None else mapping.notes([explained.settles])[0],
    )


def _steps(lately: LatelyWalked) -> schema.StepsLately:
    before, worth, says = lately.before, lately.worth_kcal, lately.says
    return schema.StepsLately(
        steps_per_day=round(lately.mean),
        steps_before=None if before is None else round(before),
        change=None if before is None else round(lately.mean) - round(before),
        worth_kcal=None if worth is None else interval(worth, KCAL),
        says=None if says is None else mapping.notes([says])[0],
    )


def _days(found: answers.TrendRead) -> TrendDays:
    trend, log = found.trend, found.daily
    causal, smoothed = trend.causal, trend.smoothed
    first, count = trend.first_day, trend.days
    is_outlier = [False] * count
    for day in trend.outliers:
        is_outlier[day] = True
    return TrendDays(
        date=list(map(date.fromordinal, range(first, first + count))),
        observed_weight_kg=column_with_gaps(log.weight_kg, log.is_weighed, KG),
        is_outlier=is_outlier,
        weight_kg=amount_columns(causal.weight_kg, causal.weight_sd_kg, KG),
        smoothed_weight_kg=amount_columns(smoothed.weight_kg, smoothed.weight_sd_kg, KG),
        tissue_kg=amount_columns(smoothed.tissue_kg, smoothed.tissue_sd_kg, KG),
        carried_kg=interval_columns(smoothed.carried_kg, smoothed.carried_sd_kg, KG),
        weekly_rate_kg=interval_columns(smoothed.weekly_rate_kg, smoothed.weekly_rate_sd_kg, KG),
        maintenance_kcal=amount_columns(*found.maintenance_by_day, KCAL),
    )
