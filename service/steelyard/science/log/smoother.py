"""What the weight filter's passes say: the causal view of each day, and the smoothed view of the whole log.

The backward pass also holds, by day, what the whole log says of a step of water that the filter knew nothing of
(de Jong & Penzer 1998): the disturbances that it accumulates are the score of such a step.
"""

from collections.abc import Collection, Sequence
from typing import NamedTuple

from ..numbers import FLOATS, Column, Elementwise, Number, compiled, rows
from .filter import DailySeries, Filtered, is_any, slopes_of

Shock = tuple[Number, Number, Number, Number, Number]


class Path(NamedTuple):
    """Daily means and variances. ``level`` = tissue + amplitude x expected carried mass (weight without noise)."""

    level: Column
    level_variance: Column
    tissue: Column
    maintenance: Column
    maintenance_variance: Column
    # Only from the smoother, for the days asked for: variance of tissue, its covariance with its value on the
    # last day, and the fall of tissue for each unit that the amplitude exceeds its mean.
    changes: dict[int, tuple[Number, Number, Number]]
    # Only where asked for, by day: score and information of a unit step of water that began on it, its cross term with
    # the amplitude, and how far tissue and maintenance of the last day are from their filtered means for want of it.
    shocks: Sequence[Shock] = ()


@compiled
def causal_path(filtered: Filtered, series: DailySeries, first: int = 0, *, ops: Elementwise = FLOATS) -> Path:
    """What was known on each day from ``first`` on, from weighings up to that day."""
    level: Column = []
    level_variance: Column = []
    tissue: Column = []
    maintenance: Column = []
    maintenance_variance: Column = []
    mean, reference = filtered.settings.amplitude_mean, series.reference_kcal
    carried_kg: Sequence[Number] | None = series.carried_kg
    slopes: Sequence[Number] = slopes_of(series)
    for day in range(first, len(filtered.steps)):
        t, m, tt, tm, mm, _, _, _, _, _, _, t_amp, m_amp, _, score, information = filtered.steps[day]
        if day in filtered.unsettled:
            to_t, to_m, to_tt, to_tm, to_mm = filtered.unsettled[day][:5]
            t, m, tt, tm, mm = t + to_t, m + to_m, tt + to_tt, tm + to_tm, mm + to_mm
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
    return Path(level, level_variance, tissue, maintenance, maintenance_variance, {})


@compiled
def smooth_weights(
    filtered: Filtered,
    series: DailySeries,
    *,
    change_days: Collection[int] = (),
    has_shocks: bool = False,
    ops: Elementwise = FLOATS,
) -> Path:
    """Backward pass: each day in the light of the whole log.

    ``change_days``: the days of which ``Path.changes`` is wanted, for the errors of changes up to the last day;
    ``has_shocks``: whether ``Path.shocks`` is.
    """
    settings = filtered.settings
    g = 1.0 / settings.rho_kcal_per_kg
    keep = 1.0 - settings.expenditure_slope_kcal_per_kg_day * g
    keep2, pulls = keep * keep, is_any(keep != 1.0)
    mean, reference = settings.amplitude_mean, series.reference_kcal
    carries = series.carried_kg is not None
    carried_kg: Sequence[Number] = series.carried_kg or ()
    slopes: Sequence[Number] = slopes_of(series)
    is_loaded = carries or is_any(settings.autocorrelation != 0.0)
    scalar = ops is FLOATS
    level: Column = []
    level_variance: Column = []
    tissue: Column = []
    maintenance: Column = []
    maintenance_variance: Column = []
    changes: dict[int, tuple[Number, Number, Number]] = {}
    covaries = bool(change_days) or has_shocks
    shocks: list[Shock] = rows(Shock)
    # Gradient (r_*) and curvature (n_*) of the later weighings' fit, as seen from a day's filtered state; c_* is
    # the gradient for the amplitude's regressor, w_* and o_* carry the last day's tissue and maintenance back.
    r_t = r_m = n_tt = n_tm = n_mm = c_t = c_m = 0.0
    w_t, w_m = 1.0, 0.0
    o_t, o_m = 0.0, 1.0
    shown_score = shown_information = shown_cross = shown_maintenance = 0.0
    shown_tissue: Number = 1.0
    shift = spread = last_amp = 0.0
    if carries and filtered.steps:
        *_, last_amp, _, _, score, information = filtered.steps[-1]
        shift, spread = score / information, 1.0 / information
    day = len(filtered.steps)
    for t, m, tt, tm, mm, t_gain, m_gain, innovation, precision, t_load, m_load, t_amp, m_amp, e_amp, _, _ in reversed(
        filtered.steps
    ):
        day -= 1
        # Variances fall by P n P, with P the filtered covariance and n the curvature.
        shared, tm2 = tm * n_tm, tm * tm
        by_t, by_m = tt * n_tt + shared, mm * n_mm + shared
        t_hat = t + tt * r_t + tm * r_m
        m_hat = m + tm * r_t + mm * r_m
        t_variance = tt - tt * (by_t + shared) - tm2 * n_mm
        m_variance = mm - mm * (by_m + shared) - tm2 * n_tt
        base_variance = t_variance
        if carries:
            t_amp = t_amp + tt * c_t + tm * c_m
            m_amp = m_amp + tm * c_t + mm * c_m
            carried, slope = carried_kg[day], slopes[day]
            apart = carried - t_amp - slope * m_amp
            level.append(t_hat + mean * carried + slope * (m_hat - reference) + shift * apart)
            t_variance = t_variance + slope * (
                2.0 * (tm - tm * (by_t + by_m - shared) - tt * mm * n_tm) + slope * m_variance
            )
            t_hat = t_hat - shift * t_amp
            m_hat = m_hat - shift * m_amp
            m_variance = m_variance + m_amp * m_amp * spread
            tissue.append(t_hat)
            t_variance = t_variance + apart * apart * spread
        else:
            level.append(t_hat)
        level_variance.append(t_variance)
        maintenance.append(m_hat)
        maintenance_variance.append(m_variance)
        if day in change_days:
            changes[day] = (
                base_variance + t_amp * t_amp * spread,
                tt * w_t + tm * w_m + t_amp * last_amp * spread,
                t_amp,
            )
        if not scalar or precision:
            q_t = n_tt * t_gain + n_tm * m_gain
            q_m = n_tm * t_gain + n_mm * m_gain
            s = q_t * t_gain + q_m * m_gain + precision
            pushed = innovation * precision - r_t * t_gain - r_m * m_gain
            if has_shocks:
                of_amplitude = e_amp * precision - c_t * t_gain - c_m * m_gain if carries else 0.0
                # What begins on a day without a weighing shows on the next with one.
                is_seen = precision > 0.0
                shown_score = ops.where(is_seen, r_t + pushed, shown_score)
                shown_information = ops.where(is_seen, n_tt - q_t - q_t + s, shown_information)
                shown_cross = ops.where(is_seen, c_t + of_amplitude, shown_cross)
                shown_tissue = ops.where(is_seen, w_t - w_t * t_gain - w_m * m_gain, shown_tissue)
                shown_maintenance = ops.where(is_seen, o_t - o_t * t_gain - o_m * m_gain, shown_maintenance)
                back = o_t * t_gain + o_m * m_gain
                o_t = o_t - t_load * back
                o_m = o_m - m_load * back
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
            if covaries:
                back = w_t * t_gain + w_m * m_gain
                w_t = w_t - t_load * back
                w_m = w_m - m_load * back
        if has_shocks:
            shocks.append((shown_score, shown_information, shown_cross, shown_tissue, shown_maintenance))
        # To the evening before.
        if pulls:
            r_m = keep * r_m
            w_m = keep * w_m
            o_m = keep * o_m
            n_mm = keep2 * n_mm
            n_tm = keep * n_tm
            c_m = keep * c_m
        r_m = r_m - g * r_t
        before = n_tm
        n_tm = before - g * n_tt
        n_mm = n_mm - g * (before + n_tm)
        if carries:
            c_m = c_m - g * c_t
        if covaries:
            w_m = w_m - g * w_t
            o_m = o_m - g * o_t
    for column in (level, level_variance, tissue, maintenance, maintenance_variance):
        column.reverse()
    shocks.reverse()
    return Path(level, level_variance, tissue if carries else level, maintenance, maintenance_variance, changes, shocks)
