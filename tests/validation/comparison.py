"""Each trial simulated by the service's forecast, and judged."""

from typing import NamedTuple

import numpy as np
from scipy import stats
from steelyard.science.body.daily_noise import noise_variance
from steelyard.science.body.forecasting import Stretch, forecast
from steelyard.science.body.state import Diet
from steelyard.science.measures.body_composition import METHOD_ERRORS
from steelyard.science.numbers.estimate import Z80, Estimate

from .trials import Case, Measured

# How well a participant's own maintenance is known from a month of weights and intakes: most within 132 kcal/d of
# labelled water. Sanghvi A et al. Am J Clin Nutr 2015;102:353-8, doi 10.3945/ajcn.115.111070 (from memory).
MAINTENANCE_SD_KCAL = 132.0

SHORT_STUDY_DAYS = 56
BODY_MASS_BIAS_KG = 0.7  # studies of up to 8 weeks
BODY_MASS_BIAS_SHARE = 0.15  # of the change, longer studies
FAT_MASS_BIAS_KG = 0.7
FAT_FREE_MASS_BIAS_KG = 0.7
# Tissue energy over what the intake told leaves for it: outside, a trial's own numbers do not close. Judged where
# expenditure has not yet followed the body.
CLOSES = (0.40, 1.05)
CLOSING_DAYS = 182.0
COVERAGE = 0.80
QUANTITIES = ("body mass", "fat mass", "fat-free mass")


class Row(NamedTuple):
    """One quantity of one case [kg]. ``sd_kg`` is the forecast's for one person, as measured: see ``simulate``."""

    case: Case
    quantity: str
    measured: Measured
    forecast_kg: float
    sd_kg: float
    limit: str
    is_accepted: bool | None  # None: the trial's own numbers do not close
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
    person = case.trial.person
    body = case.body(
        Estimate(case.fat_kg, METHOD_ERRORS[person.body_fat_method].sd * person.weight_kg),
        Estimate(case.maintenance_kcal, MAINTENANCE_SD_KCAL),
    )
    plan = plan_of(case)
    path = forecast(body, plan, is_eaten=True)
    last = len(path.states) - 1
    spread = path.spread_of_change(0, last)
    first, end = path.states[0], path.states[last]
    mass, fat = end.weight_kg - first.weight_kg, end.fat_kg - first.fat_kg
    noise = noise_variance(person.weight_kg)
    reading = METHOD_ERRORS[person.body_fat_method].day_to_day_sd * person.weight_kg
    lean_variance = spread.lean_kg**2 + spread.carried_kg**2
    return {
        "body mass": Estimate(mass, (spread.weight_kg**2 + 2 * noise) ** 0.5),
        "fat mass": Estimate(fat, (spread.fat_kg**2 + 2 * reading**2) ** 0.5),
        "fat-free mass": Estimate(mass - fat, (lean_variance + 2 * reading**2) ** 0.5),
    }


def plan_of(case: Case) -> list[Stretch]:
    """What was eaten, in weekly steps."""
    return [
        Stretch(
            Diet(p.intake_kcal, p.carbohydrate_kcal, p.protein_g_per_kg, sodium_change_mg=p.sodium_change_mg),
            _weeks(p.days),
        )
        for p in case.periods
    ]


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


def _limit_kg(case: Case, quantity: str) -> tuple[float, str]:
    """How far a forecast may lie off, and how that is told."""
    if quantity != "body mass" or case.days <= SHORT_STUDY_DAYS:
        most = {"body mass": BODY_MASS_BIAS_KG, "fat mass": FAT_MASS_BIAS_KG}.get(quantity, FAT_FREE_MASS_BIAS_KG)
        return most, f"bias within {most:g} kg"
    mass = case.trial.measured.body_mass
    assert mass is not None
    most = BODY_MASS_BIAS_SHARE * abs(mass.change_kg)
    return most, f"bias within {most:.2f} kg ({BODY_MASS_BIAS_SHARE:.0%})"


def is_within(case: Case, quantity: str, bias_kg: float) -> bool:
    """Whether a forecast that lies off by so much is accepted."""
    return abs(bias_kg) <= _limit_kg(case, quantity)[0]


def closes(case: Case) -> bool | None:
    """Whether a trial's tissue energy agrees with its intake; None where that cannot be judged."""
    share = case.tissue_share
    return None if share is None or case.days > CLOSING_DAYS else CLOSES[0] <= share <= CLOSES[1]


def compare(case: Case) -> list[Row]:
    """Body mass, fat mass and fat-free mass of a case against its forecast."""
    rows = []
    measured = case.trial.measured
    measured_of = {
        "body mass": measured.body_mass,
        "fat mass": measured.fat_mass,
        "fat-free mass": measured.fat_free_mass,
    }
    is_closed = closes(case) is not False
    for quantity, estimate in simulate(case).items():
        found = measured_of[quantity]
        if found is None:
            continue
        limit = _limit_kg(case, quantity)[1]
        is_accepted = is_within(case, quantity, estimate.mean - found.change_kg)
        span = coverage_range(estimate, found, case.trial.participants)
        covered = None if found.sd_kg is None else coverage_of(estimate, found.change_kg, found.sd_kg)
        is_covered = None if span is None else span[0] <= COVERAGE <= span[1]
        accepted = is_accepted if is_closed else None
        rows.append(Row(case, quantity, found, estimate.mean, estimate.sd, limit, accepted, covered, span, is_covered))
    return rows


class Summary(NamedTuple):
    """Bias of the forecast over arms of one quantity [kg]; ``inside`` is the share of participants, pooled."""

    quantity: str
    arms: int
    rmse_kg: float
    bias_kg: float
    bias_error_kg: float  # standard error of the mean bias
    inside: float | None
    participants: int


def summarise(rows: list[Row]) -> list[Summary]:
    """Each quantity over all arms whose numbers close, the share inside weighed by participants."""
    found = []
    for quantity in QUANTITIES:
        of = [row for row in rows if row.quantity == quantity and row.is_accepted is not None]
        if not of:
            continue
        biases = np.array([row.bias_kg for row in of])
        told = [row for row in of if row.coverage is not None]
        people = sum(row.case.trial.participants for row in told)
        inside = sum(row.case.trial.participants * (row.coverage or 0.0) for row in told) / people if told else None
        error = float(biases.std(ddof=1) / len(of) ** 0.5) if len(of) > 1 else float("nan")
        rmse = float((biases**2).mean() ** 0.5)
        found.append(Summary(quantity, len(of), rmse, float(biases.mean()), error, inside, people))
    return found
