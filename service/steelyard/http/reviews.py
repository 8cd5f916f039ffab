"""`POST /v1/reviews`: a phase against its plan, and what to do about it."""

from datetime import date, timedelta

from steelyard.science.body import CARRIED_IDS, FORECAST_IDS, MODEL_IDS, Forecast, Spread
from steelyard.science.measures import assess, general_cautions
from steelyard.science.numbers import Estimate
from steelyard.science.phase import FollowedWeek
from steelyard.science.phase import PhaseFollowed as CorePhase
from steelyard.science.rails import RAIL_IDS
from steelyard.science.register import ON_LOGGING_SCALE, OutOfDomain
from steelyard.science.review import REVIEW_IDS, Review
from steelyard.science.review import review_phase as review

from . import mapping
from .logs import as_of_day, check_dates
from .mapping import FRACTION, KCAL, KG, interval
from .operations import computation
from .review_examples import REVIEW_EXAMPLES
from .schemas.plans import ForecastPoint
from .schemas.reviews import (
    ChangeSoFar,
    EatenAgainstPlan,
    FirstWeeksAfter,
    PhaseFollowed,
    ReviewedWeek,
    ReviewRequest,
    ReviewResponse,
    VerdictProbabilities,
)

_LOG_IDS = ("trend_reading", "weight_filter", "log_maintenance", "linearised_energy_balance")
_METHODS = (*REVIEW_IDS, *_LOG_IDS, *MODEL_IDS, *CARRIED_IDS, *FORECAST_IDS, *RAIL_IDS)


@computation(
    "/v1/reviews",
    operation_id="review_phase",
    tag="reviews",
    summary="Review a phase against its plan",
    request_examples=REVIEW_EXAMPLES,
)
def review_phase(body: ReviewRequest) -> ReviewResponse:
    """Compare a phase with its plan, and say what to do about it.

    The verdict is about tissue, so that water does not count, and comes with the probabilities behind it. Before a
    fortnight it is `too_early`. Off the plan, `correction_kcal` is the smallest change of intake that restores the
    target inside every guard rail, and `weeks` the forecast from today's body. The phase may end, be shortened or
    extended; `reasons` say why. Once it is over, `change` says what was lost, and `after` what the first weeks will
    look like. A deficit that is still running needs screening answers.
    """
    check_dates(**{"phase/start_date": body.phase.start_date, "as_of_date": body.as_of_date})
    person = mapping.person(body.profile)
    assessed = assess(person)
    log = mapping.log(body.log)
    day = as_of_day(body.log, body.as_of_date, log)
    subject = mapping.subject(person, assessed, Estimate(assessed.total.mean, assessed.total.sd), body.screening)
    found = review(person, assessed, subject, _phase(body.phase), log, day, is_finished=body.is_finished)
    maintenance = found.maintenance
    end = date.fromordinal(found.day + found.advice.days_ahead)
    return ReviewResponse(
        **mapping.provenance("review_phase", body),
        as_of_date=date.fromordinal(day),
        days_into_phase=found.days,
        is_finished=found.is_finished,
        verdict=found.verdict.value,
        probabilities=VerdictProbabilities(
            within_interval=round(found.probabilities.within_interval, 3),
            faster=round(found.probabilities.faster, 3),
            slower=round(found.probabilities.slower, 3),
        ),
        more_days_needed=found.more_days_needed or None,
        eaten=_eaten(found),
        change=_change(found),
        body_fat_fraction=interval(found.fat_fraction, FRACTION),
        maintenance_kcal=interval(maintenance.maintenance, KCAL),
        physical_maintenance_kcal=interval(maintenance.physical, KCAL),
        maintenance_change_kcal=interval(found.maintenance_change, KCAL),
        correction_kcal=found.advice.correction_kcal,
        decision=found.advice.decision.value,
        end_date=max(end - timedelta(days=1), body.phase.start_date),
        weeks=_weeks(found),
        after=_after(found),
        guard_rails=[mapping.guard_rail(action) for action in found.actions],
        notes=mapping.notes(found.notes),
        reasons=mapping.notes([assessed.resting.reason, *found.reasons]),
        cautions=mapping.notes([*general_cautions(person, assessed), ON_LOGGING_SCALE]),
        methods=sorted({*assessed.resting.preferred, *_METHODS}),
    )


def _phase(phase: PhaseFollowed) -> CorePhase:
    for i, week in enumerate(phase.weeks):
        if 4.0 * (week.protein_g + (week.carbohydrate_g or 0.0)) > week.intake_kcal + 20.0:
            detail = "Protein and carbohydrate of this week are more energy than its intake."
            raise OutOfDomain("NUTRIENTS_EXCEED_INTAKE", f"/phase/weeks/{i}/intake_kcal", detail)
    return CorePhase(
        kind=phase.kind,
        start_day=phase.start_date.toordinal(),
        weeks=tuple(
            FollowedWeek(
                intake_kcal=week.intake_kcal,
                protein_g=week.protein_g,
                carbohydrate_g=week.carbohydrate_g,
                is_break=week.is_break,
            )
            for week in phase.weeks
        ),
        maintenance=Estimate(phase.maintenance.kcal_per_day, phase.maintenance.standard_deviation_kcal),
        usual_intake_kcal=phase.usual_intake_kcal,
        fat_loss_kg=phase.fat_loss_kg,
        fat_ceiling=phase.fat_ceiling_fraction,
    )


def _eaten(found: Review) -> EatenAgainstPlan:
    eaten, implied = found.eaten, found.implied_difference
    return EatenAgainstPlan(
        days=eaten.days,
        days_logged=eaten.days_logged,
        logged_kcal=None if eaten.logged_kcal is None else round(eaten.logged_kcal, KCAL),
        planned_kcal=round(eaten.planned_kcal, KCAL),
        difference_kcal=None if eaten.difference is None else interval(eaten.difference, KCAL),
        implied_difference_kcal=None if implied is None else interval(implied, KCAL),
    )


def _change(found: Review) -> ChangeSoFar:
    return ChangeSoFar(
        since_date=date.fromordinal(found.since_day),
        weight_kg=interval(found.changes.weight, KG),
        tissue_kg=interval(found.changes.tissue, KG),
        carried_kg=interval(found.changes.carried, KG),
        planned_tissue_kg=interval(found.planned_tissue, KG),
        fat_kg=interval(found.fat, KG),
        lean_kg=interval(found.lean, KG),
    )


def _weeks(found: Review) -> list[ReviewedWeek]:
    path = found.path
    if path is None:
        return []
    spreads = path.spreads()
    weeks = []
    for i, stint in enumerate(found.stints, 1):
        grams = stint.week.carbohydrate_g
        weeks.append(
            ReviewedWeek(
                start_date=date.fromordinal(found.day + stint.end - stint.days),
                days=stint.days,
                intake_kcal=round(stint.week.intake_kcal, KCAL),
                protein_g=round(stint.week.protein_g, KCAL),
                carbohydrate_g=None if grams is None else round(grams, KCAL),
                at_end=_point(found, path, i, spreads[i], stint.end),
            )
        )
    return weeks


def _after(found: Review) -> FirstWeeksAfter | None:
    after = found.aftermath
    if after is None:
        return None
    spreads = after.path.spreads()
    return FirstWeeksAfter(
        intake_kcal=after.intake_kcal,
        rebound_kg=interval(after.rebound, KG),
        points=[
            _point(found, after.path, i, spreads[i], round(after.path.states[i].day))
            for i in range(1, len(after.path.states))
        ],
    )


def _point(found: Review, path: Forecast, i: int, sd: Spread, days: int) -> ForecastPoint:
    """The body on the evening ``days`` from now. Scale weight carries the error of today's level and daily noise."""
    state = path.states[i]
    weight = float(state.weight_kg)
    weight_sd = (sd.weight_kg**2 + found.weight_kg.sd**2 + found.noise_sd_kg**2) ** 0.5
    return ForecastPoint(
        date=date.fromordinal(found.day + days - 1),
        weight_kg=interval(Estimate(weight, weight_sd), KG),
        fat_kg=interval(Estimate(state.fat_kg, sd.fat_kg), KG),
        lean_kg=interval(Estimate(state.lean_kg, sd.lean_kg), KG),
        carried_kg=interval(Estimate(state.carried_kg, sd.carried_kg), KG),
        fat_fraction=interval(Estimate(state.fat_kg / weight, sd.fat_fraction), FRACTION),
        maintenance_kcal=interval(
            Estimate(found.ratio * path.maintenance_kcal(i), found.ratio * sd.maintenance_kcal), KCAL
        ),
    )
