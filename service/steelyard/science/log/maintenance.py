"""Maintenance from two kinds of evidence: the equations as prior, the log as likelihood, one filter.

All energies in here are on the member's own logging scale unless a name says ``physical``: what the filter
learns is the intake *as this person logs it* at which tissue is steady, which is what they can act on.
"""

from collections.abc import Collection, Sequence
from typing import NamedTuple

import msgspec

from ..body import Noise, prior_noise
from ..measures import EXPENDITURE_BELIEVED, EXPENDITURE_REFUSED, check_expenditure
from ..numbers import FLOATS, Column, Elementwise, Estimate, Number, compiled, mixed
from ..register import BLACK_2000, HALL_CHOW_2011, SANGHVI_2015, Basis, Kind, constant, equation
from .cycle import CYCLE_RISE_KG, causal_less_cycle, fit_cycle
from .entries import DailyLog, first_weight
from .filter import DailySeries, Filtered, FilterSettings, Start, filter_weights
from .hindsight import Telling, tell_in_hindsight
from .noise import learn_noise
from .smoother import Path, causal_path
from .tissue_model import TissueModel, acting_intake
from .water import Correction

LOGGING_RATIO = constant(
    "logging_ratio", 0.92, unit="1", standard_deviation=0.06, basis=Basis.JUDGEMENT,
    summary="Logged over eaten energy of someone who keeps a log, before their log says otherwise (under-"
    "reporting of 10-30 % is usual; people who weigh their food are at the low end or leave nothing out: 0.80 to "
    "1.04 holds 95 % of them)",
)  # fmt: skip
LOGGING_RATIO_SD = constant(
    "logging_ratio_sd",
    0.06,
    unit="1",
    basis=Basis.JUDGEMENT,
    summary="Spread of the logging ratio between people who keep a log",
)
LOGGING_RATIO_LEAST = constant(
    "logging_ratio_least",
    0.3,
    unit="1",
    basis=Basis.JUDGEMENT,
    summary="Logged over eaten energy under which what was sent is no log of meals",
)
LOGGING_ERROR = constant(
    "logging_error", 0.05, unit="1", basis=Basis.JUDGEMENT,
    summary="Random error of a logged day, as a fraction of intake, beside the constant ratio",
)  # fmt: skip
INTAKE_VARIATION = constant(
    "intake_variation", 0.23, unit="1", sources=(BLACK_2000,),
    summary="Day-to-day coefficient of variation of one person's intake, for days without a log",
)  # fmt: skip
UNLOGGED_BIAS = constant(
    "unlogged_intake_bias", 0.15, unit="1", basis=Basis.JUDGEMENT,
    summary="SD of the lasting difference between intake on days without a log and the running habit, as a "
    "fraction of intake",
)  # fmt: skip
HABIT_DAYS = constant(
    "intake_habit_days", 14.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Memory of the running habit that stands in for days without a log",
)  # fmt: skip
MAINTENANCE_DRIFT = constant(
    "maintenance_drift", 6.0, unit="kcal/d per root day", basis=Basis.JUDGEMENT,
    summary="Random drift of maintenance beside its change with tissue (32 kcal/d over four weeks)",
)  # fmt: skip
START_SD_KG = constant(
    "tissue_start_sd", 5.0, unit="kg", basis=Basis.JUDGEMENT,
    summary="SD of tissue around the first weighing: wide, so that the log alone sets the level",
)  # fmt: skip
RATE_DAYS = constant(
    "rate_window", 7.0, unit="d", basis=Basis.COMMON_PRACTICE,
    summary="The weekly rate is that of the mean intake over this many days",
)  # fmt: skip
_LEAST_CHANCE = 1e-9  # of a step of water: what is divided by it is then as small
# Days of log after which the noise is read again and the pass repeated: early views stay as they were.
RELEARN_DAYS = (14, 28, 112, 448, 1792, 7168)


class FilledIntake(NamedTuple):
    """Intake on every day, with the variance of its error [kcal2]."""

    intake_kcal: Column
    variance: Column


class Segment(NamedTuple):
    """Days ``first`` to the end of ``path`` as read with the noise known on day ``first``."""

    first: int
    path: Path
    unshrunk: Number


class LogFit(NamedTuple):
    """A log run through the filter: the final pass, it told in hindsight, and the causal views in segments."""

    series: DailySeries  # weights less the expected rise around menstruation
    cycle_rise: Sequence[Number] | None
    filtered: Filtered
    tellings: list[Telling]
    judged: Filtered  # the pass by which a further step of water was judged
    further_step: Correction  # what such a step makes of that pass's last day
    segments: list[Segment]
    prior: Estimate  # on the logging scale
    rho_kcal_per_kg: Number  # on the logging scale
    relative_rho_sd: Number
    growth_kg_per_day: Number
    growth_sd_kcal: Number  # what the error of growth makes of maintenance, were it read from weight alone
    kept: Number  # share of the filter's surprise about maintenance that is not about unlogged intake
    noise: Noise


class LogMaintenance(msgspec.Struct, frozen=True):
    """Maintenance with the share of its evidence from the equations and from the log (they add up to 1)."""

    maintenance: Estimate  # on the logging scale
    physical: Estimate
    logging_ratio: Estimate
    prior_share: Number
    log_share: Number


def prior_on_logging_scale(physical: Estimate) -> Estimate:
    """The equations' estimate as this person would log it, before any log."""
    variance = (LOGGING_RATIO * physical.sd) ** 2 + (LOGGING_RATIO_SD * physical.mean) ** 2
    return Estimate(LOGGING_RATIO * physical.mean, variance**0.5)


@compiled
def fill_intake(log: DailyLog, prior_kcal: Number, *, ops: Elementwise = FLOATS) -> FilledIntake:
    """Intake on every day; where none was logged, the running habit (never from later days).

    Before the first logged day the habit is ``prior_kcal`` (maintenance on the logging scale).
    """
    scalar = ops is FLOATS
    habit, seen = prior_kcal, 0.0 * prior_kcal
    intakes: Column = []
    variances: Column = []
    error2, variation2 = LOGGING_ERROR**2, INTAKE_VARIATION**2
    slowest = 1.0 / HABIT_DAYS
    for intake, logged in zip(log.intake_kcal, log.is_logged, strict=True):
        if scalar:
            if logged:
                seen += 1.0
                weight = 1.0 / seen
                habit += (weight if weight > slowest else slowest) * (intake - habit)
                intakes.append(intake)
                variances.append(error2 * intake * intake)
            else:
                intakes.append(habit)
                variances.append(variation2 * habit * habit)
        else:
            seen = seen + logged
            weight = logged * ops.maximum(1.0 / ops.maximum(seen, 1.0), slowest)
            habit = habit + weight * (intake - habit)
            filled = ops.where(logged > 0.0, intake, habit)
            intakes.append(filled)
            variances.append(ops.where(logged > 0.0, error2, variation2) * filled * filled)
    return FilledIntake(intakes, variances)


def fit_log(
    log: DailyLog,
    prior: Estimate,
    tissue: TissueModel,
    *,
    change_days: Collection[int] = (),
    with_views: bool = True,
    ops: Elementwise = FLOATS,
) -> LogFit:
    """Run a cleaned log through the filter.

    Args: ``prior``: maintenance by the equations, physical scale [kcal/d]; ``change_days`` as for ``smooth_weights``
        (none: a single telling will do); ``with_views`` keeps the causal views.
    """
    days = len(log.weight_kg)
    scaled = prior_on_logging_scale(prior)
    filled = fill_intake(log, scaled.mean, ops=ops)
    # The whole energy balance is read on the logging scale, so the energy of a kilogram is too.
    rho = LOGGING_RATIO * tissue.rho_kcal_per_kg
    relative = ((tissue.rho_sd / tissue.rho_kcal_per_kg) ** 2 + (LOGGING_RATIO_SD / LOGGING_RATIO) ** 2) ** 0.5
    weight_kg = log.weight_kg
    if log.cycle_rise is not None:
        # The size expected of the rise is taken out, what is left of it is learnt beside the filter.
        rows = zip(weight_kg, log.cycle_rise, log.is_weighed, strict=True)
        weight_kg = [weight - CYCLE_RISE_KG * rise * seen for weight, rise, seen in rows]
    series = DailySeries(
        weight_kg,
        log.is_weighed,
        log.noise_scale,
        acting_intake(filled.intake_kcal, tissue.usual_kcal, tissue.adaptation_gain, ops=ops),
        filled.variance,
        tissue.carried_kg,
        tissue.carried_slope,
        tissue.usual_kcal,
    )
    first_kg = first_weight(log, ops)
    noise = prior_noise(first_kg, ops)
    turns = [day for day in RELEARN_DAYS if day <= days]
    noises = [noise]
    if turns:
        noises += learn_noise(
            _detrended(series, scaled.mean, rho, tissue.growth_kg_per_day, ops=ops),
            log.is_weighed,
            noise,
            turns,
            ops=ops,
        )
    logged_until = 0.0 * scaled.mean
    counted = 0
    segments: list[Segment] = []
    starts = [0, *(turn - 1 for turn in turns)]
    ends = [*(turn - 1 for turn in turns), days]
    for index, (first, end, noise) in enumerate(zip(starts, ends, noises, strict=True)):
        is_last = index == len(starts) - 1
        if not (is_last or with_views):
            continue
        # Intake that was not logged may lie off the habit for good: the filter cannot tell that from maintenance.
        upto = turns[index - 1] if index else min(RELEARN_DAYS[0], days)
        logged_until = logged_until + sum(log.is_logged[counted:upto])
        counted = upto
        unlogged = 1.0 - logged_until / upto
        bias = (UNLOGGED_BIAS * scaled.mean * unlogged) ** 2
        kept = scaled.sd**2 / (scaled.sd**2 + bias)
        start = Start(first_kg, START_SD_KG**2, scaled.mean, scaled.sd**2 + bias)
        settings = FilterSettings(
            rho,
            LOGGING_RATIO * tissue.expenditure_slope_kcal_per_kg_day,
            noise.variance,
            noise.autocorrelation,
            MAINTENANCE_DRIFT**2,
            1.0,
            tissue.carried_sd_fraction**2,
            growth_kg_per_day=tissue.growth_kg_per_day,
        )
        filtered = filter_weights(series, settings, start, days=end, ops=ops)
        if with_views:
            segments.append(Segment(first, _causal(filtered, series, log.cycle_rise, first, ops), kept))
    tellings, judged, left = tell_in_hindsight(filtered, series, settings, start, change_days, ops)
    return LogFit(
        series,
        log.cycle_rise,
        filtered,
        tellings,
        judged,
        left,
        segments,
        scaled,
        rho,
        relative,
        tissue.growth_kg_per_day,
        rho * tissue.growth_sd,
        kept,
        noise,
    )


def _causal(
    filtered: Filtered, series: DailySeries, rise: Sequence[Number] | None, first: int, ops: Elementwise
) -> Path:
    path = causal_path(filtered, series, first, ops=ops)
    return path if rise is None else causal_less_cycle(path, fit_cycle(filtered, series, rise), first, ops)


@compiled
def _detrended(
    series: DailySeries,
    maintenance_kcal: Number,
    rho: Number,
    growth_kg_per_day: Number,
    *,
    ops: Elementwise = FLOATS,
) -> Column:
    """Weight less the path of tissue and carried mass that the prior expects."""
    g = 1.0 / rho
    level = maintenance_kcal - growth_kg_per_day * rho
    expected: Number = 0.0
    left: Column = []
    carried: Sequence[Number] | None = series.carried_kg
    for day, (weight, intake) in enumerate(zip(series.weight_kg, series.intake_kcal, strict=True)):
        left.append(weight - expected if carried is None else weight - expected - carried[day])
        expected = expected + g * (intake - level)
    return left


def posterior_maintenance(fit: LogFit, mean: Number, variance: Number, kept: Number, deficit: Number) -> Estimate:
    """Maintenance from the filter's state, with what the filter does not carry.

    Takes out what may be unlogged intake (``kept``) and adds the errors of growth and of the energy of a
    kilogram, which scales the ``deficit`` [kcal/d], as far as the log and not the prior speaks.
    """
    prior = fit.prior
    widened = prior.sd**2 / kept
    from_log = 1.0 - variance / widened
    energy2 = ((deficit * fit.relative_rho_sd) ** 2 + fit.growth_sd_kcal**2) * from_log**2
    return Estimate(
        prior.mean + kept * (mean - prior.mean),
        (kept * kept * variance + prior.sd**2 * (1.0 - kept) + energy2) ** 0.5,
    )


def _with_ends(estimate: Estimate, fit: LogFit, mean: Number, variance: Number, ops: Elementwise) -> Estimate:
    """The estimate, its interval that of the mixture: no further step of water, or one (``mean`` and ``variance``).

    One that is there has tissue and maintenance lie elsewhere, so that what is left to one side is not to the other.
    """
    step, kept = fit.further_step, fit.kept
    chance = step.probability
    moved = step.maintenance / ops.maximum(chance, _LEAST_CHANCE)
    spread = (step.maintenance_variance + step.maintenance**2) / ops.maximum(chance, _LEAST_CHANCE) - moved * moved
    plain = variance - step.maintenance_variance
    rest = estimate.sd**2 - kept * kept * variance  # what the filter does not carry
    without = Estimate(estimate.mean - kept * step.maintenance, ops.sqrt(kept * kept * plain + rest))
    stepped = Estimate(without.mean + kept * moved, ops.sqrt(kept * kept * (plain + ops.maximum(spread, 0.0)) + rest))
    return mixed(estimate, without, stepped, chance, ops)


@equation(
    "log_maintenance",
    summary="Maintenance from the equations (prior) and the log (likelihood), on the member's logging scale",
    formula=(
        f"prior on the logging scale = {LOGGING_RATIO:g} (SD {LOGGING_RATIO_SD:g}) x equations; posterior by the "
        "weight filter; share of the log = 1 - posterior variance / prior variance; interval that of the mixture over "
        "a further step of water and none"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(HALL_CHOW_2011, SANGHVI_2015),
    valid_range="adults with dated weighings; without intakes the equations stay in charge",
)
def maintenance_from_fit(fit: LogFit, physical_prior: Estimate, ops: Elementwise = FLOATS) -> LogMaintenance:
    """The combined estimate on the last day of a fitted log."""
    days = len(fit.filtered.steps)
    told = fit.judged._replace(unsettled={days - 1: fit.further_step})
    path = _causal(told, fit.series, fit.cycle_rise, days - 1, ops)
    mean, variance = path.maintenance[-1], path.maintenance_variance[-1]
    recent = fit.series.intake_kcal[max(0, days - 1 - int(RATE_DAYS)) : max(1, days - 1)]
    deficit = mean - sum(recent) / len(recent)
    estimate = posterior_maintenance(fit, mean, variance, fit.kept, deficit)
    estimate = _with_ends(estimate, fit, mean, variance, ops)
    prior = fit.prior
    # The surprise on the logging scale is shared between the ratio and the physical estimate by their spreads.
    surprise = (estimate.mean - prior.mean) / prior.sd**2
    shrink = (prior.sd**2 - estimate.sd**2) / prior.sd**4
    of_ratio = physical_prior.mean * LOGGING_RATIO_SD**2
    of_physical = LOGGING_RATIO * physical_prior.sd**2
    log_share = ops.maximum(0.0, 1.0 - estimate.sd**2 / prior.sd**2)
    return LogMaintenance(
        estimate,
        Estimate(
            physical_prior.mean + of_physical * surprise,
            (physical_prior.sd**2 - of_physical**2 * shrink) ** 0.5,
        ),
        Estimate(LOGGING_RATIO + of_ratio * surprise, (LOGGING_RATIO_SD**2 - of_ratio**2 * shrink) ** 0.5),
        1.0 - log_share,
        log_share,
    )


def as_believed(found: LogMaintenance, prior: Estimate, resting_kcal: float) -> LogMaintenance:
    """``found`` of one person, its physical estimate that of the equations where the log's is one that no body has.

    What is logged is then so little that something was left out, or the equations err for this body, or it is ill.
    Raises: ``OutOfDomain`` where the log says more than any body spends.
    """
    if found.physical.mean > EXPENDITURE_REFUSED * resting_kcal:
        check_expenditure(found.physical.mean, resting_kcal, "log")
    if found.physical.mean >= EXPENDITURE_BELIEVED * resting_kcal:
        return found
    least = LOGGING_RATIO_LEAST * prior.mean
    settled = found.maintenance
    if settled.mean < least:
        settled = Estimate(least, settled.sd)
    ratio = settled.mean / prior.mean
    spread = ratio * ((settled.sd / settled.mean) ** 2 + (prior.sd / prior.mean) ** 2) ** 0.5
    return LogMaintenance(
        settled, Estimate(prior.mean, prior.sd), Estimate(ratio, spread), found.prior_share, found.log_share
    )


def maintenance_from_log(
    log: DailyLog, prior: Estimate, tissue: TissueModel, ops: Elementwise = FLOATS
) -> LogMaintenance:
    """Maintenance from the equations' estimate (``prior``, physical scale) and a cleaned log."""
    return maintenance_from_fit(fit_log(log, prior, tissue, with_views=False, ops=ops), prior, ops)
