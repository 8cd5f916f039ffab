"""Each published case simulated by the service's forecast, and judged."""

from typing import NamedTuple

import numpy as np
from scipy import stats
from steelyard.science.body.daily_noise import noise_variance
from steelyard.science.body.forecasting import Stretch, forecast
from steelyard.science.body.state import Diet
from steelyard.science.body.uncertainty import Body, experience_years, training_dose
from steelyard.science.measures.body_composition import METHOD_ERRORS
from steelyard.science.numbers.estimate import Z80, Estimate
from steelyard.science.person.person import Training

from .cases import Case, Measured

# How well a participant's own maintenance is known from a month of weights and intakes: most within 132 kcal/d of
# labelled water. Sanghvi A et al. Am J Clin Nutr 2015;102:353-8, doi 10.3945/ajcn.115.111070 (from memory).
MAINTENANCE_SD_KCAL = 132.0

SHORT_STUDY_DAYS = 56
BODY_MASS_BIAS_KG = 0.7  # studies of up to 8 weeks
BODY_MASS_BIAS_SHARE = 0.15  # of the change, longer studies
FAT_MASS_BIAS_KG = 0.7
COVERAGE = 0.80


class Row(NamedTuple):
    """One quantity of one case [kg]. ``sd_kg`` is the forecast's for one person, as measured: see ``simulate``."""

    case: Case
    quantity: str
    measured: Measured
    forecast_kg: float
    sd_kg: float
    limit: str
    is_accepted: bool | None  # None: the source gives nothing to judge by
    coverage: float | None
    coverage_range: tuple[float, float] | None
    is_coverage_accepted: bool | None

    @property
    def bias_kg(self) -> float:
        """Forecast less measured."""
        return self.forecast_kg - self.measured.change_kg


def simulate(case: Case) -> dict[str, Estimate]:
    """The mean participant's change of body mass, fat mass and fat-free mass with the SD for one person [kg].

    Fat-free mass is body mass less fat mass: scans, impedance and densitometry count glycogen, water and gut content
    as lean. What is compared are measured changes, so that the SD holds the daily noise of two weighings, and the
    day-to-day error of two readings of body composition by the study's method.
    """
    training = Training(status=case.status, resistance_sessions_per_week=case.sessions_per_week)
    body = Body(
        weight_kg=case.weight_kg,
        fat_kg=Estimate(case.fat_kg, METHOD_ERRORS[case.method].sd * case.weight_kg),
        maintenance_kcal=Estimate(case.maintenance_kcal, MAINTENANCE_SD_KCAL),
        resting_kcal=case.resting_kcal,
        experience_years=experience_years(training),
        training_dose=training_dose(training),
    )
    plan = [
        Stretch(Diet(part.intake_kcal, part.carbohydrate_kcal, case.protein_g_per_kg), _weeks(part.days))
        for part in case.eaten
    ]
    path = forecast(body, plan)
    last = len(path.states) - 1
    spread = path.spread_of_change(0, last)
    first, end = path.states[0], path.states[last]
    mass, fat = end.weight_kg - first.weight_kg, end.fat_kg - first.fat_kg
    noise = noise_variance(case.weight_kg)
    reading = METHOD_ERRORS[case.method].day_to_day_sd * case.weight_kg
    lean_variance = spread.lean_kg**2 + spread.carried_kg**2
    return {
        "body mass": Estimate(mass, (spread.weight_kg**2 + 2 * noise) ** 0.5),
        "fat mass": Estimate(fat, (spread.fat_kg**2 + 2 * reading**2) ** 0.5),
        "fat-free mass": Estimate(mass - fat, (lean_variance + 2 * reading**2) ** 0.5),
    }


def _weeks(days: float) -> tuple[float, ...]:
    whole, rest = divmod(days, 7)
    return (7.0,) * int(whole) + ((rest,) if rest else ())


def coverage_of(forecast: Estimate, mean_kg: float, sd_kg: float) -> float:
    """Share of a normal (mean, SD) inside the forecast's 80 % interval."""
    people = stats.norm(mean_kg, sd_kg)
    return float(people.cdf(forecast.mean + Z80 * forecast.sd) - people.cdf(forecast.mean - Z80 * forecast.sd))


def coverage_range(forecast: Estimate, measured: Measured, participants: int) -> tuple[float, float] | None:
    """Coverage over the 95 % confidence interval of the SD between participants, known only from so many."""
    if measured.sd_kg is None:
        return None
    freedom = participants - 1
    scales = [(freedom / stats.chi2.ppf(q, freedom)) ** 0.5 for q in np.linspace(0.025, 0.975, 39)]
    covered = [coverage_of(forecast, measured.change_kg, k * measured.sd_kg) for k in scales]
    return min(covered), max(covered)


def _judge(case: Case, quantity: str, measured: Measured, forecast: Estimate) -> tuple[str, bool | None]:
    bias = forecast.mean - measured.change_kg
    if quantity == "body mass":
        if case.days <= SHORT_STUDY_DAYS:
            return f"bias within {BODY_MASS_BIAS_KG:g} kg", abs(bias) <= BODY_MASS_BIAS_KG
        limit = BODY_MASS_BIAS_SHARE * abs(measured.change_kg)
        return f"bias within {limit:.2f} kg ({BODY_MASS_BIAS_SHARE:.0%})", abs(bias) <= limit
    if quantity == "fat mass":
        return f"bias within {FAT_MASS_BIAS_KG:g} kg", abs(bias) <= FAT_MASS_BIAS_KG
    error = measured.standard_error_kg
    if error is None or abs(measured.change_kg) <= error:
        return "same sign, where above its standard error", None
    return "same sign, where above its standard error", forecast.mean * measured.change_kg > 0


def compare(case: Case) -> list[Row]:
    """Body mass, fat mass and fat-free mass of a case against its forecast."""
    rows = []
    measured_of = {"body mass": case.body_mass, "fat mass": case.fat_mass, "fat-free mass": case.fat_free_mass}
    for quantity, estimate in simulate(case).items():
        measured = measured_of[quantity]
        limit, is_accepted = _judge(case, quantity, measured, estimate)
        span = coverage_range(estimate, measured, case.participants)
        covered = None if measured.sd_kg is None else coverage_of(estimate, measured.change_kg, measured.sd_kg)
        is_covered = None if span is None else span[0] <= COVERAGE <= span[1]
        rows.append(
            Row(
                case,
                quantity,
                measured,
                estimate.mean,
                estimate.sd,
                limit,
                is_accepted,
                covered,
                span,
                is_covered,
            )
        )
    return rows
