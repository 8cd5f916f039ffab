"""What a log says: the trend of weight, its split into tissue and carried mass, and maintenance over time."""

import math

import msgspec

from ..numbers import FLOATS, Elementwise, Estimate, Number
from ..register import HALL_CHOW_2011, Basis, Kind, Message, constant, equation, say, template
from .change_split import Change, DailySplit, Jump, change_of, daily_split, jumps_of, mixed_change, mixed_path
from .cycle import CYCLE_RISE_KG, CycleFit, fit_cycle, smoothed_less_cycle
from .entries import DailyLog, iso_date
from .filter import DailySeries, Start, filter_weights
from .maintenance import RATE_DAYS, LogFit, LogMaintenance, Segment, fit_log, maintenance_from_fit
from .smoother import Path
from .tissue_model import TissueModel
from .view import View

PLATEAU_RATE_KG = constant(
    "plateau_rate", 0.175, unit="kg/week", basis=Basis.JUDGEMENT,
    summary="Tissue counts as steady within this weekly rate: half of a slow cut of 0.35 kg a week",
)  # fmt: skip
CLEAR_RATE_SD_KG = constant(
    "clear_rate_sd", 0.12, unit="kg/week", basis=Basis.JUDGEMENT,
    summary="Above this SD of the weekly rate it is too early to tell: the plateau band is then 1.5 SD wide to each "
    "side (three weeks of daily entries at a noise of 0.5 kg)",
)  # fmt: skip
STALL_CALLED = constant(
    "stall_called", 0.78, unit="1", basis=Basis.JUDGEMENT,
    summary="A stall is called from this probability that tissue is not falling: on simulated people it keeps false "
    "alarms under one in twenty in the week after a refeed, when the scale is up",
)  # fmt: skip
CHANGE_WINDOWS = (7, 14, 28)
LASTING_DAYS = 14
_LOOK_AHEAD_DAYS = 56

TOO_EARLY = template(
    "TREND_TOO_EARLY", "Too early to tell: about {more_days} more days of weighing and logging are needed."
)
TOO_SPARSE = template(
    "TREND_TOO_SPARSE", "Too early to tell, and {more_days} more days would not be enough: log intake as well."
)
OUTLIER = template(
    "TREND_OUTLIER",
    "The weight of {date} lies {deviation_kg:+.1f} kg from what the days before it lead to expect and counts for less.",
)
WATER_JUMP = template(
    "TREND_WATER_JUMP",
    "From {date} weight sits {jump_kg:+.1f} kg elsewhere, faster than tissue can change: read as water.",
)
STALE = template("TREND_STALE", "The last weighing is {days} days old.")
UNDER_LOGGED = template(
    "TREND_UNDER_LOGGED",
    "The log reads about {percent:.0f} % under what the equations lead to expect; eat against the logged scale.",
)


class Trend(msgspec.Struct, frozen=True):
    """A log as read on its last day.

    ``causal`` holds what was known on each day, ``smoothed`` what each day looks like today; on the last day they
    agree, but for a step of water. ``weekly_rate`` is of tissue at the last week's intake, ``lasting_rate`` [kg a
    week] over the last fortnight; ``cycle`` is the rise of weight around menstruation, which the views leave out.
    ``plateau_probability``: that the lasting rate lies within the plateau band; ``stall_probability``: that it is not
    below that band (of a loss that has stalled).
    """

    first_day: int
    days: int
    causal: View
    smoothed: View
    outliers: frozenset[int]  # days from the first; of one person
    split: DailySplit
    cycle: Estimate | None
    changes: tuple[Change, ...]
    weekly_rate: Estimate
    lasting_rate: Estimate
    plateau_probability: Number
    stall_probability: Number
    maintenance: LogMaintenance
    noise_sd_kg: Number
    noise_autocorrelation: Number
    more_days_needed: int
    notes: tuple[Message, ...]


@equation(
    "trend_reading",
    summary="Trend of a log: rate of tissue, split of a change, probability of a plateau",
    formula=(
        f"weekly rate = 7 (mean intake of {RATE_DAYS:g} days - maintenance) / rho; carried change = amplitude x "
        "expected change + jumps of water; plateau = probability that the rate lies within "
        f"{PLATEAU_RATE_KG:g} kg a week"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(HALL_CHOW_2011,),
    valid_range="adults with dated weighings",
)
def read_trend(log: DailyLog, prior: Estimate, tissue: TissueModel, *, ops: Elementwise = FLOATS) -> Trend:
    """Read a cleaned log.

    Args: ``prior``: maintenance by the equations on the physical scale; ``tissue``: see ``TissueModel``. Floats,
        or arrays over people (then without notes).
    """
    count = len(log.weight_kg)
    windows = [days for days in CHANGE_WINDOWS if days < count]
    if count > 1 and count - 1 not in windows:
        windows.append(count - 1)
    change_days = frozenset([count - 1, *(count - 1 - days for days in windows)])
    fit = fit_log(log, prior, tissue, change_days=change_days, ops=ops)
    smooths = []
    cycles: list[CycleFit] = []
    for telling in fit.tellings:
        path = telling.path
        if fit.cycle_rise is not None:
            cycles.append(fit_cycle(telling.filtered, fit.series, fit.cycle_rise))
            path = smoothed_less_cycle(path, cycles[-1], ops)
        smooths.append(path)
    smooth = smooths[0] if len(smooths) == 1 else mixed_path(smooths, fit.tellings)
    causal, smoothed = View(fit, fit.segments, ops), View(fit, [Segment(0, smooth, fit.kept)], ops)
    rate = causal.last_rate
    maintenance = maintenance_from_fit(fit, prior, ops)
    jumps = [jumps_of(fit, telling, path) for telling, path in zip(fit.tellings, smooths, strict=True)]
    notes: tuple[Message, ...] = ()
    more_days = 0
    plateau: Number = math.nan
    outliers: frozenset[int] = frozenset()
    stall: Number = math.nan
    informations = [telling.filtered.steps[-1][15] for telling in fit.tellings]
    told = list(zip(informations, smooths, jumps, strict=True))
    changes = tuple(mixed_change([change_of(fit, *one, days) for one in told], fit.tellings) for days in windows)
    lasting = _lasting_rate(rate, changes)
    if ops is FLOATS:
        plateau = lasting.probability_under(PLATEAU_RATE_KG) - lasting.probability_under(-PLATEAU_RATE_KG)
        stall = lasting.probability_over(-PLATEAU_RATE_KG)
        more_days = _more_days_needed(fit, rate)
        if _days_unweighed(log) >= LASTING_DAYS:
            # What is said of the last fortnight is then the model's alone, however sure it is of itself.
            more_days = max(more_days, int(RATE_DAYS))
        outliers = _outliers(fit, jumps[0])
        notes = (*log.notes, *_notes(log, fit, smooth, outliers, jumps[0], more_days, maintenance))
    return Trend(
        first_day=log.first_day,
        days=count,
        causal=causal,
        smoothed=smoothed,
        outliers=outliers,
        split=daily_split(fit, smooths, jumps, ops=ops),
        cycle=_cycle(fit, cycles),
        changes=changes,
        weekly_rate=rate,
        lasting_rate=lasting,
        plateau_probability=plateau,
        stall_probability=stall,
        maintenance=maintenance,
        noise_sd_kg=fit.noise.variance**0.5,
        noise_autocorrelation=fit.noise.autocorrelation,
        more_days_needed=more_days,
        notes=notes,
    )


def _cycle(fit: LogFit, cycles: list[CycleFit]) -> Estimate | None:
    """Rise of weight around menstruation [kg], tellings mixed."""
    if not cycles:
        return None
    mean: Number = CYCLE_RISE_KG
    variance: Number = 0.0
    for cycle, telling in zip(cycles, fit.tellings, strict=True):
        mean = mean + telling.probability * cycle.excess_kg[-1]
        variance = variance + telling.probability * cycle.variance[-1]
    return Estimate(mean, variance**0.5)


def _lasting_rate(weekly: Estimate, changes: tuple[Change, ...]) -> Estimate:
    """Weekly rate of tissue over the last fortnight, so that one week's eating is no plateau."""
    for change in changes:
        if change.days == LASTING_DAYS:
            weeks = LASTING_DAYS / 7.0
            return Estimate(change.tissue.mean / weeks, change.tissue.sd / weeks)
    return weekly


def _more_days_needed(fit: LogFit, rate: Estimate) -> int:
    """Days of full logging until the weekly rate is clear; 0 when it is, one beyond the horizon when never."""
    if rate.sd <= CLEAR_RATE_SD_KG:
        return 0
    series, settings = fit.series, fit.filtered.settings
    days = len(series.weight_kg)
    ahead = _LOOK_AHEAD_DAYS
    weight, intake = series.weight_kg[-1], series.intake_kcal[-1]
    carried = series.carried_kg
    longer = DailySeries(
        [*series.weight_kg, *[weight] * ahead],
        [*series.is_weighed, *[1.0] * ahead],
        [*series.noise_scale, *[1.0] * ahead],
        [*series.intake_kcal, *[intake] * ahead],
        [*series.intake_variance, *[series.intake_variance[-1]] * ahead],
        None if carried is None else [*carried, *[carried[-1]] * ahead],
    )
    # Only variances are read, and those do not depend on the weights to come.
    start = Start(weight, 25.0, fit.prior.mean, fit.prior.sd**2 / fit.kept)
    steps = filter_weights(longer, settings._replace(is_robust=False), start).steps
    weekly = 7.0 / fit.rho_kcal_per_kg
    for more in range(1, ahead + 1):
        step = steps[days - 1 + more]
        variance = step[4] + (step[12] ** 2 / step[15] if carried is not None else 0.0)
        if weekly * math.sqrt(variance) <= CLEAR_RATE_SD_KG:
            return more
    return ahead + 1


def _days_unweighed(log: DailyLog) -> int:
    """Days without a weighing up to the last."""
    since = 0
    for seen in reversed(log.is_weighed):
        if seen:
            break
        since += 1
    return since


def _outliers(fit: LogFit, jumps: list[Jump]) -> frozenset[int]:
    """Days that stood out and did not turn out to be the first of a step of water."""
    return frozenset(day for day, _, _ in fit.filtered.outliers) - {jump.day for jump in jumps}


def _notes(
    log: DailyLog,
    fit: LogFit,
    smooth: Path,
    outliers: frozenset[int],
    jumps: list[Jump],
    more_days: int,
    maintenance: LogMaintenance,
) -> list[Message]:
    notes = []
    if more_days > _LOOK_AHEAD_DAYS:
        notes.append(say(TOO_SPARSE, more_days=_LOOK_AHEAD_DAYS))
    elif more_days:
        notes.append(say(TOO_EARLY, more_days=more_days))
    for day in sorted(outliers):
        deviation = fit.series.weight_kg[day] - smooth.level[day]
        notes.append(say(OUTLIER, date=iso_date(log.first_day + day), deviation_kg=deviation))
    for jump in jumps:
        notes.append(say(WATER_JUMP, date=iso_date(log.first_day + jump.day), jump_kg=jump.size_kg))
    since = _days_unweighed(log)
    if since > RATE_DAYS:
        notes.append(say(STALE, days=since))
    ratio = maintenance.logging_ratio
    if ratio.upper < 1.0 and maintenance.log_share > 0.5:
        notes.append(say(UNDER_LOGGED, percent=100.0 * (1.0 - ratio.mean)))
    return notes
