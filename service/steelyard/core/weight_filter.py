"""The state-space filter and smoother that reads daily weights against daily intake.

Hidden from day to day: tissue mass, maintenance, and the amplitude of the expected carried mass (glycogen,
water, gut). With ``g = 1 / rho`` (rho: effective energy of a kilogram of tissue), on the morning of each day::

    tissue[t+1]      = tissue[t] + g (intake[t] - maintenance[t]) + growth + flow noise
    maintenance[t+1] = maintenance[t] + k (intake[t] - maintenance[t]) + drift,    k = epsilon / rho
    weight[t]        = tissue[t] + amplitude * carried[t] + slope[t] (maintenance[t] - reference) + noise[t]

with noise autoregressive of order 1; ``slope`` is there because carried mass follows intake *relative to what
the body was settled at*, and that is its maintenance. The second line is the linearised energy-balance model (Hall & Chow 2011): expenditure follows tissue mass.
Without ``carried`` and autocorrelation, with ``k = 0`` and constant intake, it is the local linear trend.

How it stays cheap: the amplitude is a static regression coefficient filtered beside the two states (augmented
filter, de Jong 1991), and autocorrelated noise is whitened by differencing against the weighing before, whose
tissue mass is today's minus the known flow between. The backward pass is the disturbance form of the smoother
(de Jong 1989), which inverts no matrix.

Written once, elementwise: floats for one person, numpy arrays with people along the first axis for many.
"""

import math
from collections.abc import Sequence
from typing import Any, NamedTuple

from . import bibliography  # noqa: F401 - registers the sources named below
from .elementwise import FLOATS, Elementwise, Number
from .evidence import Basis, Kind, constant, equation, source

source(
    "de_jong_1989",
    "de Jong P. Smoothing and interpolation with the state-space model. J Am Stat Assoc 1989;84:1085-8",
    "10.1080/01621459.1989.10478875",
)
source("de_jong_1991", "de Jong P. The diffuse Kalman filter. Ann Stat 1991;19:1073-83", "10.1214/aos/1176348139")

OUTLIER_SD = constant(
    "outlier_threshold", 2.5, unit="SD", basis=Basis.JUDGEMENT,
    summary="A weighing further than this from its forecast counts for less, the less the further it is; one in "
    "eighty ordinary weighings is",
)  # fmt: skip
JUMP_SD_KG = constant(
    "water_jump", 1.5, unit="kg", basis=Basis.JUDGEMENT,
    summary="SD of the shift of level granted when two weighings in a row stand out on the same side: tissue "
    "cannot jump, so the shift is read as water",
)  # fmt: skip
_LOG_2PI = math.log(2.0 * math.pi)


class DailySeries(NamedTuple):
    """One entry a day from the first day of a log; each entry a float, or an array over people.

    ``weight_kg`` is read only where ``is_weighed`` is 1 (else 0). ``noise_scale`` multiplies the noise variance
    (under 1 for a mean of several weighings). ``intake_kcal`` is filled on every day, with the variance of its
    error [kcal2] in ``intake_variance``. ``carried_kg`` is the expected deviation of carried mass, or None, and
    ``carried_slope`` [kg per kcal/d] its derivative by maintenance, around ``reference_kcal``.
    """

    weight_kg: Sequence[Number]
    is_weighed: Sequence[Number]
    noise_scale: Sequence[Number]
    intake_kcal: Sequence[Number]
    intake_variance: Sequence[Number]
    carried_kg: Sequence[Number] | None = None
    carried_slope: Sequence[Number] | None = None
    reference_kcal: Number = 0.0


class FilterSettings(NamedTuple):
    """Parameters of the model; energies on one scale (logged or physical).

    ``noise_variance`` [kg2], ``autocorrelation`` at lag one day in [0, 1), ``drift_variance`` of maintenance
    [kcal2/d3], ``amplitude_mean`` and ``_variance`` of the expected carried mass [1], ``growth_kg_per_day`` that tissue gains at energy balance.
    """

    rho_kcal_per_kg: Number
    expenditure_slope_kcal_per_kg_day: Number
    noise_variance: Number
    autocorrelation: Number
    drift_variance: Number
    amplitude_mean: float = 1.0
    amplitude_variance: Number = 0.0
    is_robust: bool = True
    growth_kg_per_day: Number = 0.0


class Start(NamedTuple):
    """What is known on the first morning before its weighing: two independent normals."""

    tissue_kg: Number
    tissue_variance: Number
    maintenance_kcal: Number
    maintenance_variance: Number


class Step(NamedTuple):
    """A day after its weighing, amplitude held at its prior mean.

    ``per_amplitude_*`` say how the states fall for each unit that the amplitude exceeds its mean; ``score`` and
    ``information`` are its least-squares sums so far. ``precision`` is 1 / innovation variance, or 0.
    """

    tissue: Number
    maintenance: Number
    tissue_variance: Number
    covariance: Number
    maintenance_variance: Number
    tissue_gain: Number
    maintenance_gain: Number
    innovation: Number
    precision: Number
    tissue_load: Number
    maintenance_load: Number
    per_amplitude_tissue: Number
    per_amplitude_maintenance: Number
    per_amplitude_innovation: Number
    score: Number
    information: Number


class Filtered(NamedTuple):
    """The forward pass: a ``Step`` (as a plain tuple) a day, and the days that stood out.

    ``outliers`` and ``jumps`` list the day with True (one person) or the mask over people.
    """

    steps: list[tuple[Number, ...]]
    settings: FilterSettings
    log_likelihood: Number
    outliers: list[tuple[int, Any]]
    jumps: list[tuple[int, Any]]


class Path(NamedTuple):
    """Daily means and variances. ``level`` = tissue + amplitude x expected carried mass (weight without noise)."""

    level: list[Number]
    level_variance: list[Number]
    tissue: list[Number]
    maintenance: list[Number]
    maintenance_variance: list[Number]
    # Only from the smoother, and only when asked for: variance of tissue, its covariance with its value on the
    # last day, and the fall of tissue for each unit that the amplitude exceeds its mean.
    tissue_variance: list[Number]
    tissue_with_last: list[Number]
    tissue_per_amplitude: list[Number]


def _slopes(series: DailySeries) -> Sequence[Number]:
    if series.carried_slope is None:
        return [0.0] * len(series.weight_kg)
    return series.carried_slope


def _some(flag: Any) -> bool:
    return flag if isinstance(flag, bool) else bool(flag.any())


@equation(
    "weight_filter",
    summary="State-space filter of daily weight driven by intake: tissue, maintenance, carried mass",
    formula=(
        "tissue' = tissue + (intake - maintenance) / rho; maintenance' = maintenance + (epsilon / rho) (intake - "
        "maintenance) + drift; weight = tissue + amplitude x expected carried mass + AR(1) noise; weighings beyond "
        f"{OUTLIER_SD:g} SD count less; two in a row on one side shift the level (SD {JUMP_SD_KG:g} kg)"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=("hall_chow_2011", "sanghvi_2015", "de_jong_1989", "de_jong_1991"),
    valid_range="adults; daily entries with gaps",
)
def filter_weights(
    series: DailySeries,
    settings: FilterSettings,
    start: Start,
    *,
    days: int | None = None,
    ops: Elementwise = FLOATS,
) -> Filtered:
    """Forward pass over the first ``days`` days (default: all). Never looks ahead."""
    count = len(series.weight_kg) if days is None else days
    g = 1.0 / settings.rho_kcal_per_kg
    pull = settings.expenditure_slope_kcal_per_kg_day * g
    keep, keep2, pulls = 1.0 - pull, (1.0 - pull) ** 2, _some(pull != 0.0)
    drift, noise, phi = settings.drift_variance, settings.noise_variance, settings.autocorrelation
    is_linked = _some(phi != 0.0)
    growth = settings.growth_kg_per_day
    robust, cutoff = settings.is_robust, OUTLIER_SD**2
    carried, slopes = series.carried_kg, _slopes(series)
    carries = carried is not None
    is_loaded = is_linked or carries
    scalar = ops is FLOATS
    log = ops.log

    t_mean, m_mean = start.tissue_kg, start.maintenance_kcal
    tt, tm, mm = start.tissue_variance, 0.0, start.maintenance_variance
    t_amp = m_amp = e_amp = score = 0.0
    information: Number = 0.0
    if carries:
        information = 1.0 / settings.amplitude_variance
    prior_information = information
    link: Number = 0.0  # autocorrelation with the weighing before, 0 where there is none or it stood out
    gap: Number = 0.0
    t_load, m_load, fresh = 1.0, 0.0, 1.0
    before = between = before_carried = before_slope = 0.0  # the weighing before, the intake's flow since it
    slope: Number = 0.0
    stood_out: Any = False
    side: Number = 0.0
    fit: Number = 0.0
    weighed_days: Number = 0.0
    steps: list[tuple[Number, ...]] = []
    outliers: list[tuple[int, Any]] = []
    jumps: list[tuple[int, Any]] = []

    day = 0
    for weight, seen, scale, intake, error in zip(
        series.weight_kg, series.is_weighed, series.noise_scale, series.intake_kcal, series.intake_variance,
        strict=True,
    ):  # fmt: skip
        if day == count:
            break
        flow = g * intake + growth
        if scalar and not seen:
            # The same as below with ``seen = 0``, for less work.
            steps.append(
                (t_mean, m_mean, tt, tm, mm, 0.0, 0.0, 0.0, 0.0, 1.0, 0.0, t_amp, m_amp, 0.0, score, information)
            )
            gap += 1.0
            between += flow
            link *= phi
        else:
            observed = weight
            if carries:
                now_carried = carried[day]
                slope = slopes[day]
                observed = weight - settings.amplitude_mean * now_carried + slope * series.reference_kcal
                m_load = slope
            if is_linked:
                t_load = 1.0 - link
                m_load = slope - link * (before_slope + gap * g)
                fresh = 1.0 - link * link
                observed_new = observed - link * (before + between)
            else:
                observed_new = observed
            if is_loaded:
                innovation = observed_new - t_load * t_mean - m_load * m_mean
                t_cross = t_load * tt + m_load * tm
                m_cross = t_load * tm + m_load * mm
                total = t_load * t_cross + m_load * m_cross + noise * scale * fresh
                if carries:
                    e_amp = now_carried - link * before_carried - t_load * t_amp - m_load * m_amp
            else:
                innovation = observed - t_mean
                t_cross, m_cross = tt, tm
                total = tt + noise * scale
            if robust:
                if carries:
                    surprise = innovation - score / information * e_amp
                    ratio = surprise * surprise / (total + e_amp * e_amp / information) / cutoff
                else:
                    surprise = innovation
                    ratio = surprise * surprise / total / cutoff
                stands_out = (ratio > 1.0) & (seen > 0.0)
                if _some(stands_out):
                    again = stands_out & stood_out & (surprise * side > 0.0)
                    jump = ops.where(again, JUMP_SD_KG**2, 0.0)
                    if _some(again):
                        jumps.append((day, again))
                    tt = tt + jump
                    t_cross = t_cross + jump * t_load
                    total = total + jump * t_load * t_load
                    outside = stands_out & (again == False)  # noqa: E712 - elementwise
                    total = total + ops.where(outside, noise * scale * fresh * (ratio - 1.0), 0.0)
                    outliers.append((day, stands_out))
                    # After a jump the weighing is trusted again; before, it says little about the next.
                    linkable = ops.where(outside, 0.0, 1.0)
                else:
                    linkable = 1.0
                    outside = stands_out
                if scalar:
                    stood_out, side = outside, surprise
                else:
                    stood_out = ops.where(seen > 0.0, outside, stood_out)
                    side = ops.where(seen > 0.0, surprise, side)
            else:
                linkable = 1.0
            precision = seen / total
            t_gain = t_cross * precision
            m_gain = m_cross * precision
            t_mean = t_mean + t_gain * innovation
            m_mean = m_mean + m_gain * innovation
            tt = tt - t_gain * t_cross
            tm = tm - t_gain * m_cross
            mm = mm - m_gain * m_cross
            fit = fit + innovation * innovation * precision + seen * log(total)
            weighed_days = weighed_days + seen
            if carries:
                t_amp = t_amp + t_gain * e_amp
                m_amp = m_amp + m_gain * e_amp
                score = score + e_amp * innovation * precision
                information = information + e_amp * e_amp * precision
            steps.append(
                (t_mean, m_mean, tt, tm, mm, t_gain, m_gain, innovation, precision, t_load, m_load, t_amp, m_amp,
                 e_amp, score, information)
            )  # fmt: skip
            if is_linked:
                if scalar:
                    before, between, gap, link = observed, flow, 1.0, phi * linkable
                    if carries:
                        before_carried, before_slope = now_carried, slope
                else:
                    unseen = 1.0 - seen
                    before = seen * observed + unseen * before
                    between = flow + unseen * between
                    gap = 1.0 + unseen * gap
                    link = phi * (seen * linkable + unseen * link)
                    if carries:
                        before_carried = seen * now_carried + unseen * before_carried
                        before_slope = seen * slope + unseen * before_slope
        # To the next morning.
        t_mean = t_mean + flow - g * m_mean
        half = g * mm
        rest = tm - half
        tt = tt - g * (tm + rest) + g * g * error
        tm = rest
        if pulls:
            m_mean = m_mean + pull * (intake - m_mean)
            tm = keep * rest
            mm = keep2 * mm
        mm = mm + drift
        if carries:
            t_amp = t_amp - g * m_amp
            m_amp = keep * m_amp
        day += 1
    likelihood = -0.5 * (fit + _LOG_2PI * weighed_days)
    if carries:
        likelihood = likelihood + 0.5 * (score * score / information - log(information / prior_information))
    return Filtered(steps, settings, likelihood, outliers, jumps)


def causal_path(filtered: Filtered, series: DailySeries, first: int = 0) -> Path:
    """What was known on each day from ``first`` on, from weighings up to that day."""
    level: list[Number] = []
    level_variance: list[Number] = []
    tissue: list[Number] = []
    maintenance: list[Number] = []
    maintenance_variance: list[Number] = []
    mean, reference = filtered.settings.amplitude_mean, series.reference_kcal
    carried_kg, slopes = series.carried_kg, _slopes(series)
    for day in range(first, len(filtered.steps)):
        t, m, tt, tm, mm, _, _, _, _, _, _, t_amp, m_amp, _, score, information = filtered.steps[day]
        if carried_kg is None:
            level.append(t)
            level_variance.append(tt)
            tissue.append(t)
            maintenance.append(m)
            maintenance_variance.append(mm)
        else:
            shift = score / information
            carried, slope = carried_kg[day], slopes[day]
            apart = carried - t_amp - slope * m_amp
            level.append(t + mean * carried + slope * (m - reference) + shift * apart)
            level_variance.append(tt + slope * (2.0 * tm + slope * mm) + apart * apart / information)
            tissue.append(t - shift * t_amp)
            maintenance.append(m - shift * m_amp)
            maintenance_variance.append(mm + m_amp * m_amp / information)
    return Path(level, level_variance, tissue, maintenance, maintenance_variance, [], [], [])


def smooth_weights(filtered: Filtered, series: DailySeries, *, covary_with_last: bool = False) -> Path:
    """Backward pass: each day in the light of the whole log.

    With ``covary_with_last`` also how tissue covaries with its value on the last day, for errors of changes.
    """
    settings = filtered.settings
    g = 1.0 / settings.rho_kcal_per_kg
    keep = 1.0 - settings.expenditure_slope_kcal_per_kg_day * g
    g_keep2, keep2, g2 = 2.0 * g * keep, keep * keep, g * g
    mean, reference = settings.amplitude_mean, series.reference_kcal
    carried_kg, slopes = series.carried_kg, _slopes(series)
    carries = carried_kg is not None
    is_loaded = carries or _some(settings.autocorrelation != 0.0)
    scalar = all(isinstance(gain, float) for gain in filtered.steps[-1][5:7]) if filtered.steps else True
    level: list[Number] = []
    level_variance: list[Number] = []
    tissue: list[Number] = []
    maintenance: list[Number] = []
    maintenance_variance: list[Number] = []
    tissue_variance: list[Number] = []
    with_last: list[Number] = []
    per_amplitude: list[Number] = []
    # Gradient (r_*) and curvature (n_*) of the later weighings' fit, as seen from a day's filtered state; c_* is
    # the gradient for the amplitude's regressor, w_* carries the last day's tissue back.
    r_t = r_m = n_tt = n_tm = n_mm = c_t = c_m = 0.0
    w_t, w_m = 1.0, 0.0
    shift = spread = last_amp = 0.0
    if carries and filtered.steps:
        *_, last_amp, _, _, score, information = filtered.steps[-1]
        shift, spread = score / information, 1.0 / information
    day = len(filtered.steps)
    for t, m, tt, tm, mm, t_gain, m_gain, innovation, precision, t_load, m_load, t_amp, m_amp, e_amp, _, _ in reversed(
        filtered.steps
    ):
        day -= 1
        u_t = tt * n_tt + tm * n_tm
        u_m = tt * n_tm + tm * n_mm
        v_t = tm * n_tt + mm * n_tm
        v_m = tm * n_tm + mm * n_mm
        t_hat = t + tt * r_t + tm * r_m
        m_hat = m + tm * r_t + mm * r_m
        t_variance = tt - u_t * tt - u_m * tm
        m_variance = mm - v_t * tm - v_m * mm
        if covary_with_last:
            shared = tt * w_t + tm * w_m
        if carries:
            t_amp = t_amp + tt * c_t + tm * c_m
            m_amp = m_amp + tm * c_t + mm * c_m
            carried, slope = carried_kg[day], slopes[day]
            apart = carried - t_amp - slope * m_amp
            level.append(t_hat + mean * carried + slope * (m_hat - reference) + shift * apart)
            base_variance = t_variance
            t_variance = t_variance + slope * (2.0 * (tm - u_t * tm - u_m * mm) + slope * m_variance)
            t_hat = t_hat - shift * t_amp
            m_hat = m_hat - shift * m_amp
            m_variance = m_variance + m_amp * m_amp * spread
            tissue.append(t_hat)
            if covary_with_last:
                shared = shared + t_amp * last_amp * spread
                tissue_variance.append(base_variance + t_amp * t_amp * spread)
                per_amplitude.append(t_amp)
            t_variance = t_variance + apart * apart * spread
        else:
            if covary_with_last:
                tissue_variance.append(t_variance)
                per_amplitude.append(0.0)
            level.append(t_hat)
        level_variance.append(t_variance)
        maintenance.append(m_hat)
        maintenance_variance.append(m_variance)
        if covary_with_last:
            with_last.append(shared)
        if not scalar or precision:
            q_t = n_tt * t_gain + n_tm * m_gain
            q_m = n_tm * t_gain + n_mm * m_gain
            s = q_t * t_gain + q_m * m_gain + precision
            pushed = innovation * precision - r_t * t_gain - r_m * m_gain
            if is_loaded:
                r_t = r_t + t_load * pushed
                r_m = r_m + m_load * pushed
                far = t_load * s - q_t
                n_tt = n_tt + t_load * (far - q_t)
                n_tm = n_tm + m_load * far - t_load * q_m
                n_mm = n_mm + m_load * (m_load * s - q_m - q_m)
            else:
                r_t = r_t + pushed
                n_tt = n_tt + (s - q_t - q_t)
                n_tm = n_tm - q_m
            if carries:
                pushed = e_amp * precision - c_t * t_gain - c_m * m_gain
                c_t = c_t + t_load * pushed
                c_m = c_m + m_load * pushed
            if covary_with_last:
                back = w_t * t_gain + w_m * m_gain
                w_t = w_t - t_load * back
                w_m = w_m - m_load * back
        # To the evening before.
        r_m = keep * r_m - g * r_t
        n_mm = g2 * n_tt - g_keep2 * n_tm + keep2 * n_mm
        n_tm = keep * n_tm - g * n_tt
        if carries:
            c_m = keep * c_m - g * c_t
        if covary_with_last:
            w_m = keep * w_m - g * w_t
    for column in (level, level_variance, tissue, maintenance, maintenance_variance, tissue_variance, with_last):
        column.reverse()
    per_amplitude.reverse()
    return Path(
        level,
        level_variance,
        tissue if carries else level,
        maintenance,
        maintenance_variance,
        tissue_variance,
        with_last,
        per_amplitude,
    )
