"""The state-space filter and smoother that reads daily weights against daily intake.

Hidden from day to day: tissue mass, maintenance, and the amplitude of the expected carried mass (glycogen,
water, gut). With ``g = 1 / rho`` (rho: effective energy of a kilogram of tissue), on the morning of each day::

    tissue[t+1]      = tissue[t] + g (intake[t] - maintenance[t]) + growth + flow noise
    maintenance[t+1] = maintenance[t] + k (intake[t] - maintenance[t]) + drift,    k = epsilon / rho
    weight[t]        = tissue[t] + amplitude * carried[t] + slope[t] (maintenance[t] - reference) + noise[t]

with noise autoregressive of order 1; ``slope`` is there because carried mass follows intake *relative to what
the body was settled at*, and that is its maintenance. The second line is the linearised energy-balance model
(Hall & Chow 2011): expenditure follows tissue mass. Without ``carried`` and autocorrelation, with ``k = 0`` and
constant intake, it is the local linear trend.

How it stays cheap: the amplitude is a static regression coefficient filtered beside the two states (augmented
filter, de Jong 1991), and autocorrelated noise is whitened by differencing against the weighing before, whose
tissue mass is today's minus the known flow between. The backward pass is the disturbance form of the smoother
(de Jong 1989), which inverts no matrix.

Written once, elementwise: floats for one person, numpy arrays with people along the first axis for many.
"""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from ..numbers import FLOATS, Elementwise, Number, compiled, rows
from ..register import (
    HALL_CHOW_2011,
    SANGHVI_2015,
    Basis,
    Kind,
    constant,
    equation,
    source,
)
from .water import JUMP_GRANTED, JUMP_OPENS_SD, WILLSKY_JONES_1976, Correction, JumpWatch

DE_JONG_1989 = source(
    "de_jong_1989",
    "de Jong P. Smoothing and interpolation with the state-space model. J Am Stat Assoc 1989;84:1085-8",
    "10.1080/01621459.1989.10478875",
)
DE_JONG_PENZER_1998 = source(
    "de_jong_penzer_1998",
    "de Jong P, Penzer J. Diagnosing shocks in time series. J Am Stat Assoc 1998;93:796-806",
    "10.1080/01621459.1998.10473731",
)
DE_JONG_1991 = source(
    "de_jong_1991", "de Jong P. The diffuse Kalman filter. Ann Stat 1991;19:1073-83", "10.1214/aos/1176348139"
)

OUTLIER_SD = constant(
    "outlier_threshold", 2.5, unit="SD", basis=Basis.JUDGEMENT,
    summary="A weighing further than this from its forecast counts for less, the less the further it is; one in "
    "eighty ordinary weighings is",
)  # fmt: skip


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
    [kcal2/d3], ``amplitude_mean`` and ``_variance`` of the expected carried mass [1],
    ``growth_kg_per_day`` that tissue gains at energy balance.
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

    ``outliers`` lists the day with True (one person) or the mask over people, and by what the variance of its noise was
    multiplied; ``jumps`` the day on which a step of
    water was granted, the day on which it began, and who; ``unsettled`` by day what steps that are neither granted
    nor dropped add to the states.
    """

    steps: Sequence[tuple[Number, ...]]
    settings: FilterSettings
    outliers: list[tuple[int, Any, Number]]
    jumps: list[tuple[int, Number, Any]]
    unsettled: dict[int, Correction]


def slopes_of(series: DailySeries) -> Sequence[Number]:
    if series.carried_slope is None:
        return [0.0] * len(series.weight_kg)
    return series.carried_slope


def is_any(flag: Any) -> bool:
    """Whether a flag holds for the one person, or for any of several."""
    return flag if isinstance(flag, bool) else bool(flag.any())


@equation(
    "weight_filter",
    summary="State-space filter of daily weight driven by intake: tissue, maintenance, carried mass",
    formula=(
        "tissue' = tissue + (intake - maintenance) / rho; maintenance' = maintenance + (epsilon / rho) (intake - "
        "maintenance) + drift; weight = tissue + amplitude x expected carried mass + AR(1) noise; weighings beyond "
        f"{OUTLIER_SD:g} SD count less; a step that the weighings after it confirm (probability "
        f"{JUMP_GRANTED:g}) shifts the level"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(
        HALL_CHOW_2011,
        SANGHVI_2015,
        DE_JONG_1989,
        DE_JONG_1991,
        DE_JONG_PENZER_1998,
        WILLSKY_JONES_1976,
    ),
    valid_range="adults; daily entries with gaps",
)
@compiled
def filter_weights(
    series: DailySeries,
    settings: FilterSettings,
    start: Start,
    *,
    days: int | None = None,
    known_jumps: Mapping[int, Number] | None = None,
    known_outliers: Mapping[int, Number] | None = None,
    watches_jumps: bool = True,
    ops: Elementwise = FLOATS,
) -> Filtered:
    """Forward pass over the first ``days`` days (default: all). Never looks ahead.

    ``known_jumps``: variance [kg2] of the steps of water already known to begin on a day;
    ``known_outliers``: in a pass that is not robust, by what the noise variance of days that stood out is multiplied;
    ``watches_jumps``: whether a robust pass looks out for further ones.
    """
    count = len(series.weight_kg)
    if days is not None:
        count = days
    # Below, x = (tissue, maintenance) with means t_mean, m_mean and covariance P = (tt tm; tm mm); h = (t_load, m_load)
    # is how a weighing reads x, and phi the autocorrelation of its noise.
    g = 1.0 / settings.rho_kcal_per_kg
    pull = settings.expenditure_slope_kcal_per_kg_day * g
    keep, keep2, pulls = 1.0 - pull, (1.0 - pull) ** 2, is_any(pull != 0.0)
    drift, noise, phi = settings.drift_variance, settings.noise_variance, settings.autocorrelation
    is_linked = is_any(phi != 0.0)
    growth, amplitude, reference = settings.growth_kg_per_day, settings.amplitude_mean, series.reference_kcal
    g2 = g * g
    robust, cutoff, watch_from = settings.is_robust, OUTLIER_SD**2, JUMP_OPENS_SD**2
    carried: Sequence[Number] = series.carried_kg or ()
    slopes: Sequence[Number] = slopes_of(series)
    carries = series.carried_kg is not None
    is_loaded = is_linked or carries
    scalar = ops is FLOATS

    t_mean, m_mean = start.tissue_kg, start.maintenance_kcal
    tt, tm, mm = start.tissue_variance, 0.0, start.maintenance_variance
    t_amp = m_amp = e_amp = score = 0.0
    information: Number = 1.0 / settings.amplitude_variance if carries else 1.0
    link: Number = 0.0  # autocorrelation with the weighing before, 0 where there is none or it stood out
    gap: Number = 0.0
    t_load, m_load, fresh = 1.0, 0.0, 1.0
    before = between = before_carried = before_slope = 0.0  # the weighing before, the intake's flow since it
    slope: Number = 0.0
    watch = JumpWatch(ops)
    watching = False
    known, given = known_jumps or {}, known_outliers or {}
    is_known, is_given = bool(known), bool(given)  # asked first: few logs have either
    unsettled: dict[int, Correction] = {}
    steps: list[tuple[Number, ...]] = rows(Step)
    outliers: list[tuple[int, Any, Number]] = []
    jumps: list[tuple[int, Number, Any]] = []

    day = -1
    for weight, seen, scale, intake, error in zip(
        series.weight_kg, series.is_weighed, series.noise_scale, series.intake_kcal, series.intake_variance,
        strict=True,
    ):  # fmt: skip
        day += 1
        if day == count:
            break
        flow = g * intake + growth
        if is_known and day in known:
            tt = tt + known[day]
            link = ops.where(known[day] > 0.0, 0.0, link)
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
                observed = weight - amplitude * now_carried + slope * reference
                m_load = slope
            if is_linked:
                # Less link = phi^gap times the weighing before, read forward by the known flow: what is left of the
                # noise is fresh, with variance (1 - link^2) R. tissue then = tissue now - between + gap g maintenance.
                t_load = 1.0 - link
                m_load = slope - link * (before_slope + gap * g)
                fresh = 1.0 - link * link
                observed_new = observed - link * (before + between)
            else:
                observed_new = observed
            if is_loaded:
                # e = y - h x; cross = P h'; its variance F = h P h' + R.
                innovation = observed_new - t_load * t_mean - m_load * m_mean
                t_cross = t_load * tt + m_load * tm
                m_cross = t_load * tm + m_load * mm
                total = t_load * t_cross + m_load * m_cross + noise * scale * fresh
                if carries:
                    # How e falls for each unit of the amplitude above its mean: the filter's own regression.
                    e_amp = now_carried - link * before_carried - t_load * t_amp - m_load * m_amp
            else:
                innovation = observed - t_mean
                t_cross, m_cross = tt, tm
                total = tt + noise * scale
            linkable = 1.0
            if robust:
                # e^2 / F, with the amplitude at its estimate score / information rather than at its mean.
                if carries:
                    surprise = innovation - score / information * e_amp
                    spread = total + e_amp * e_amp / information
                else:
                    surprise, spread = innovation, total
                squared = ratio = surprise * surprise / spread
                if watching:
                    ratio = watch.unexplained(link, t_load, m_load, surprise, e_amp, spread, squared)
                if scalar:
                    stands_out = ratio > cutoff
                    is_notable = watching or squared > watch_from
                else:
                    stands_out = (ratio > cutoff) & (seen > 0.0)
                    is_notable = True
                # R times ratio / cutoff: the further off, the less it counts.
                if stands_out if scalar else is_any(stands_out):
                    times = ops.where(stands_out, ratio / cutoff, 1.0)
                    total = total + noise * scale * fresh * (times - 1.0)
                    outliers.append((day, stands_out, times))
                    # It says little about the noise of the next.
                    linkable = ops.where(stands_out, 0.0, 1.0)
            elif is_given and day in given:
                total = total + noise * scale * fresh * (given[day] - 1.0)
                linkable = ops.where(given[day] > 1.0, 0.0, 1.0)
            # Gain K = P h' / F; x = x + K e; P = P - K (P h')'. Without a weighing precision and K are 0.
            precision = seen / total
            t_gain = t_cross * precision
            m_gain = m_cross * precision
            t_mean = t_mean + t_gain * innovation
            m_mean = m_mean + m_gain * innovation
            tt = tt - t_gain * t_cross
            tm = tm - t_gain * m_cross
            mm = mm - m_gain * m_cross
            if carries:
                # The amplitude by least squares over the innovations: score / information.
                t_amp = t_amp + t_gain * e_amp
                m_amp = m_amp + m_gain * e_amp
                score = score + e_amp * innovation * precision
                information = information + e_amp * e_amp * precision
            if robust and watches_jumps and is_notable:
                granted = watch.observe(
                    day, seen, ratio, innovation, precision, t_gain, m_gain, e_amp, score, information
                )
                if is_any(granted):
                    for fold in watch.fold(granted):
                        t_mean, m_mean = t_mean + fold.tissue, m_mean + fold.maintenance
                        tt, tm, mm = tt + fold.tissue_variance, tm + fold.covariance, mm + fold.maintenance_variance
                        if carries:
                            t_amp = t_amp + fold.per_amplitude_tissue
                            m_amp = m_amp + fold.per_amplitude_maintenance
                            score, information = score + fold.score, information + fold.information
                        jumps.append((day, fold.day, fold.who))
                watching = watch.is_watching
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
        if watching:
            correction = watch.correction(t_amp, m_amp)
            if correction is not None:
                unsettled[day] = correction
            watch.next_day(g, keep)
        # To the next morning, x = A x + flow with A = (1 -g; 0 1), P = A P A' + the variance of the flow ...
        t_mean = t_mean + flow - g * m_mean
        half = g * mm
        rest = tm - half
        tt = tt - g * (tm + rest) + g2 * error
        tm = rest
        # ... and maintenance follows intake: m = m + pull (intake - m), its spread times keep = 1 - pull.
        if pulls:
            m_mean = m_mean + pull * (intake - m_mean)
            tm = keep * rest
            mm = keep2 * mm
        mm = mm + drift
        if carries:
            t_amp = t_amp - g * m_amp
            m_amp = keep * m_amp
    return Filtered(steps, settings, outliers, jumps, unsettled)
