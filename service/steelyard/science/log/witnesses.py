"""Scale, log and body as three witnesses of what tissue did, weighed together.

Each may be wrong, in ways that differ. The **log** says what was eaten but for a ratio of its own, which differs
between people, drifts, and may change when a phase begins; and it is a first word on what is spent, near which people
eat. The **scale** shows tissue and what is carried: an expected part that follows intake (its amplitude is learnt),
water without an expected cause, which is small and fades, a rise around menstruation, noise, and now and then a
weighing that is wrong. The **body** says what a kilogram of tissue is worth and what is spent, each within its error.
Where they contradict each other, explanations compete by their odds.

The recursions are in ``kernel.py``, how far each witness may be wrong in ``witness_errors.py``. Why a bank of filters:
everything but *which day something happened on* is linear and normal, so that given the days one Kalman filter is
exact, and only the days need weighing against each other. A fixed bank that mixes every day (interacting multiple
models) cannot wait for the next weighing to tell a wrong one from water; a particle filter would spend hundreds of
passes on what six do. ``tests/logstudy`` measures it.
"""

import math
from array import array
from collections.abc import Sequence
from types import ModuleType
from typing import NamedTuple

from ..body import home_noise_variance
from ..numbers import FLOATS, Column, Elementwise, Estimate, Number, Row, compiled, inlined, kernel_in_use, row_of
from ..register import HALL_CHOW_2011, SANGHVI_2015, Basis, Kind, equation, source
from . import kernel as written
from .cycle import RISE_BEFORE
from .entries import DailyLog, first_weight
from .kernels import CYCLIC, PLAIN
from .logging_scale import (
    LOGGING_RATIO,
    LOGGING_RATIO_MOST,
    LOGGING_RATIO_SD,
    fill_intake,
    prior_on_logging_scale,
)
from .onset import Onset, gone_on_from, records_of, warmed
from .steps import StepsRead, lay_steps, nothing_counted
from .tissue_model import TissueModel, acting_intake
from .witness_errors import (
    CARRIED_PER_KCAL,
    CARRIED_RELATIVE_SD,
    CARRIED_SLOW_DAYS,
    CARRIED_SLOW_SHARE,
    DAY_ERROR,
    DEFICIT,
    DEFICIT_AGAIN_DAYS,
    DEFICIT_DAYS,
    DEFICIT_SD,
    LINGERS,
    RATIO_BREAK_CHANCE,
    SHIFT_APART_DAYS,
    SHIFT_BREAK_CHANCE,
    SHIFT_FROM,
    SILENT_ERROR,
    SPLITS_FROM_SD,
    START_SD_KG,
    UNLOGGED_BIAS,
    UNLOGGED_DAY_ERROR,
    WATER_SD_KG,
    WATER_STAYS_KG,
    settings_of,
)

ALSPACH_SORENSON_1972 = source(
    "alspach_sorenson_1972",
    "Alspach DL, Sorenson HW. Nonlinear Bayesian estimation using Gaussian sum approximations. IEEE Trans Autom "
    "Control 1972;17:439-48",
    "10.1109/TAC.1972.1100034",
)
DE_JONG_1989 = source(
    "de_jong_1989",
    "de Jong P. Smoothing and interpolation with the state-space model. J Am Stat Assoc 1989;84:1085-8",
    "10.1080/01621459.1989.10478875",
)
DAYS_PER_YEAR = 365.25
_LATELY = math.exp(-1.0 / 28.0)  # what a day counts for one later, in the share that is logged of late (judgement)
_LEAST_LOGGED = 0.05  # share of days: it bounds the bias of the others where next to none was logged (judgement)
LEAST_TOLD = 0.06  # of the odds: explanations below are not told in hindsight (judgement: each costs a way back)
_rooms: list[tuple[Row, Row]] = []


def _room(size: int) -> tuple[Row, Row]:
    """Room for at least so many numbers, and for the work of a day: that of a pass before where one is free, since all
    of it is written before it is read."""
    try:
        steps, work = _rooms.pop()
    except IndexError:
        steps, work = array("d"), array("d", bytes(8 * CYCLIC.WORK))
    return (steps, work) if len(steps) >= size else (array("d", bytes(8 * size)), work)


class Conclusion(NamedTuple):
    """An explanation of the whole log: its probability, states on the last day, days in hindsight and events.

    ``mean`` and ``spread`` are of the last day, of the states that every log has, as in ``kernel.py``; ``rise`` is mean
    and variance of the rise around menstruation [kg]; ``view`` holds ``VIEW`` numbers a day.
    """

    probability: float
    mean: Row
    spread: Row
    view: Row
    events: list[tuple[int, int]]  # day, kind
    rise: tuple[float, float] = (0.0, 0.0)


class Passed(NamedTuple):
    """What a run of the bank leaves. Rows of ``then`` (as known on each day) and ``now`` (in hindsight) are those of
    ``kernel.SHOWN``: means, each followed by its variances. ``noise``: against the variance of the settings."""

    told: list[Conclusion]
    then: Row
    now: Row
    noise: float
    kept: list[Row]  # records of the day asked for


class LogFit(NamedTuple):
    """A log as read by the bank. Rows of ``then`` (as known on each day) and ``now`` (in hindsight) are those of
    ``kernel.SHOWN``: means, each followed by its variances."""

    days: int
    columns: Row
    told: list[Conclusion]
    then: Row
    now: Row
    prior: Estimate  # maintenance on the logging scale; without any log of food, as eaten
    physical_prior: Estimate
    per_kcal: float  # tissue made of a kilocalorie really eaten [kg]
    growth_kg_per_day: float
    growth_sd_kcal: float
    kept: Column  # by day, share of what the log says of maintenance that is not about unlogged intake
    is_logged: bool
    noise_variance: float
    settings: Row
    shift: float  # that levels were raised by
    kernel: ModuleType
    kept_records: list[Row]  # of that kernel: explanations on the day asked for
    steps: StepsRead | None = None  # where enough were counted, and lately

    def row(self, table: Row, number: int) -> Row:
        """A row of ``then`` or ``now``."""
        return table[number * self.days : (number + 1) * self.days]


@compiled
def kept_by_day(is_logged: Sequence[Number], variance: Number, *, ops: Elementwise = FLOATS) -> Column:
    """How much of what a log says of maintenance stands, on the morning of each day, when intake that was not logged
    may lie off the habit for good: nobody can tell that from maintenance. ``variance``: relative, of the prior.

    By the share of days logged so far, or of late where that is more: who begins to log food after a year of weighing
    alone has a log like anybody else.
    """
    kept: Column = []
    logged = 0.0
    day = 0.0
    lately = 0.0
    span = 0.0
    for now in is_logged:
        so_far = ops.maximum(logged / ops.maximum(day, 1.0), _LEAST_LOGGED)
        share = ops.maximum(so_far, lately / ops.maximum(span, 1.0))
        missing = ops.minimum(day, 1.0) * (1.0 - share)
        bias = UNLOGGED_BIAS * missing / share
        kept.append(variance / (variance + bias * bias))
        logged = logged + now
        day = day + 1.0
        lately = _LATELY * lately + now
        span = _LATELY * span + 1.0
    return kept


def _start(
    first_kg: float, alpha: float, beta: float, energy: float, ratio: float, spent: float, amplitude: float,
    noise_variance: float, k: ModuleType, held_kg: float = 0.0, held_at: float = 1.0,
) -> Row:  # fmt: skip
    """Mean and covariance of the first morning; ``energy``, ``ratio`` and ``spent`` are relative variances.

    ``held_kg``: what is carried of a known habit where alpha is ``held_at``. Whatever alpha is, it was carried before
    the log as well, which counts from there: the water that stays takes it off again.
    """
    n = k.STATES
    found = array("d", bytes(8 * (n + n * n)))
    found[0], found[1], found[2], found[4] = first_kg, alpha, beta, amplitude
    for i, j, value in (
        (0, 0, START_SD_KG**2),
        (1, 1, alpha * alpha * (ratio + energy)),
        (2, 2, beta * beta * (spent + energy)),
        (1, 2, alpha * beta * energy),
        (1, 3, alpha * energy),
        (2, 3, beta * energy),
        (3, 3, energy),
        (4, 4, (amplitude * CARRIED_RELATIVE_SD) ** 2),
        (5, 5, WATER_SD_KG**2),
        (6, 6, noise_variance * LINGERS),
    ):
        found[n + i * n + j] = found[n + j * n + i] = value
    per_alpha = held_kg / held_at
    found[7] = per_alpha * (held_at - alpha)
    for i in range(4):
        found[n + i * n + 7] = found[n + 7 * n + i] = -per_alpha * found[n + i * n + 1]
    found[n + 7 * n + 7] = per_alpha * per_alpha * found[n + n + 1]
    for i in range(k.LEAST_STATES, n):
        known = RISE_BEFORE[i - k.LEAST_STATES]
        found[i], found[n + i * n + i] = known.mean, known.sd**2
    return found


@equation(
    "three_witnesses",
    summary="Scale, log and body model weighed together: a bank of Kalman filters over competing explanations",
    formula=(
        "tissue' = tissue + (intake / ratio - maintenance) / energy + growth; weight = tissue + amplitude x expected "
        "carried mass + water that fades + rise around menstruation + noise; a weighing beyond "
        f"{SPLITS_FROM_SD:g} SD of what an explanation expects splits it: as it is, wrong, or water moved; a shift of "
        f"intake splits it by whether logging changed; a phase's first {DEFICIT_DAYS:g} logged days tell that a "
        f"share of {DEFICIT:g} (SD {DEFICIT_SD:g}) less is eaten than spent"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(HALL_CHOW_2011, SANGHVI_2015, ALSPACH_SORENSON_1972, DE_JONG_1989),
    valid_range="adults; a day to five years of entries with gaps",
)
def fit_log(
    log: DailyLog,
    prior: Estimate,
    tissue: TissueModel,
    *,
    phase_days: Sequence[int] = (),
    with_views: bool = True,
    onset: Onset | None = None,
    keep_day: int | None = None,
) -> LogFit:
    """Read a cleaned log.

    Args: ``prior``: maintenance by the equations, physical scale [kcal/d]; ``phase_days``: days, counted from the
        log's first, on which a phase is known to have begun; without ``with_views`` the rows of ``then`` and
        ``now`` stay empty. ``onset``: what was read before the log, whose days of intake ``tissue`` covers too.
        ``keep_day``: day, counted from the first, whose explanations are kept to be handed on.
    """
    days = len(log.weight_kg)
    scaled = prior_on_logging_scale(prior)
    read = gone_on_from(onset)
    first_kg = first_weight(log, FLOATS)
    noise_kg2 = home_noise_variance(first_kg) if read is None else read.noise_variance
    g = 1.0 / tissue.rho_kcal_per_kg
    alpha, beta = 1000.0 * g / LOGGING_RATIO, g * prior.mean
    amplitude = CARRIED_PER_KCAL / (LOGGING_RATIO * tissue.carried_per_kcal)
    columns = _columns_after(read, log, scaled, tissue, alpha, amplitude, phase_days)
    counted = None
    if log.steps:
        known = None if onset is None else onset.steps
        counted = lay_steps(log, known or nothing_counted(tissue.kcal_per_step), g, columns)
    k = CYCLIC if log.cycle_rise is not None or (read is not None and read.knows_cycle) else PLAIN
    settings = settings_of(tissue, noise_kg2)
    settings[written.ALPHA_LEAST] = 1000.0 * g / LOGGING_RATIO_MOST
    settings[written.AMPLITUDE_EXPECTED] = amplitude
    settings[written.SETTLED] = _settled_kg(first_kg, read)
    own = (prior.sd / prior.mean) ** 2
    ratio = (LOGGING_RATIO_SD / LOGGING_RATIO) ** 2
    shift = tissue.usual_load_kg * amplitude if tissue.carried_slope is None else 0.0
    if shift:
        _raise_by(columns, shift, days)
    if read is None:
        energy = (tissue.rho_sd / tissue.rho_kcal_per_kg) ** 2
        # What a logged kilocalorie makes goes by the reciprocal of the ratio, whose mean lies above that of the mean.
        mean = alpha * (1.0 + ratio)
        start = _start(first_kg, mean, beta, energy, ratio, own, amplitude, noise_kg2, k, shift, alpha)
    else:
        start = records_of(read.accounts, k)
    passed = run_bank(
        columns,
        settings,
        start,
        days,
        -shift,
        with_then=with_views,
        with_hindsight=with_views,
        keep_day=keep_day,
        k=k,
    )
    before = [] if read is None else _logged_before(read)
    earlier, is_logged = len(before), [*before, *log.is_logged]
    # Weight alone says how much was eaten too little, never of how much; nor has a log that is not kept a scale.
    has_scale = any(is_logged)
    return LogFit(
        days=days,
        columns=columns,
        told=passed.told,
        then=passed.then,
        now=passed.now,
        prior=scaled if has_scale else prior,
        physical_prior=prior,
        per_kcal=g,
        growth_kg_per_day=tissue.growth_kg_per_day,
        growth_sd_kcal=tissue.rho_kcal_per_kg * tissue.growth_sd,
        kept=kept_by_day(is_logged, own + ratio)[earlier:] if has_scale else [0.0] * days,
        is_logged=has_scale,
        noise_variance=passed.noise * noise_kg2,
        settings=settings,
        shift=shift,
        kernel=k,
        kept_records=passed.kept,
        steps=counted,
    )


def _logged_before(read: Onset) -> Column:
    """Whether food was logged on each day that was read before: the last of them as they were, the others by their
    number, those with food first."""
    late = [0.0 if intake is None else 1.0 for intake in read.intakes]
    if read.days < len(late):
        late = []
    logged = max(0, read.days_logged - int(sum(late)))
    return [*[1.0] * logged, *[0.0] * max(0, read.days - len(late) - logged), *late]


def _columns_after(
    read: Onset | None,
    log: DailyLog,
    scaled: Estimate,
    tissue: TissueModel,
    alpha: float,
    amplitude: float,
    phase_days: Sequence[int],
) -> Row:
    """The columns of a log, after what was ``read`` before it."""
    longer, before = warmed(read, log)
    logged_before = 0.0 if read is None else read.days_logged - sum(longer.is_logged[:before])
    columns = _columns(longer, scaled, tissue, alpha, amplitude, [day + before for day in phase_days], logged_before)
    if read is not None:
        columns = columns[before * written.COLUMNS :]
        # The weighing of this morning, the day before it and what might have begun on it were counted before.
        columns[written.SEEN] = columns[written.BREAKS] = columns[written.BALANCE_VARIANCE] = 0.0
    return columns


def _settled_kg(first_kg: float, read: Onset | None) -> float:
    """Weight at which the body was settled at its usual intake; of a state that does not tell, what it has reached."""
    if read is None:
        return first_kg
    return read.accounts[0].mean[0] if read.body.settled_kg is None else read.body.settled_kg


def run_bank(
    columns: Row,
    settings: Row,
    start: Row,
    days: int,
    shift: float = 0.0,
    *,
    with_then: bool = True,
    with_hindsight: bool = True,
    least_told: float = LEAST_TOLD,
    keep_day: int | None = None,
    k: ModuleType = PLAIN,
) -> Passed:
    """Run the bank forward, and back under each explanation that is as likely as ``least_told`` on the last day.

    ``start``: mean and covariance of the first morning, or the records of several explanations of it. ``shift`` [kg] is
    added to levels and to what is carried; without ``with_then`` and ``with_hindsight`` those rows stay empty.
    ``keep_day``: the day whose records are kept. ``k``: the kernel of the states that ``start`` tells.
    """
    run = kernel_in_use(k)
    steps, work = _room(days * k.SLOTS * k.RECORD)
    then = array("d", bytes(8 * 6 * days if with_then else 0))
    now = array("d", bytes(8 * k.SHOWN * days)) if with_hindsight else then
    if len(start) % k.RECORD == 0:
        work[: len(start)] = start
        held = run.walk_on(columns, settings, steps, work, len(start) // k.RECORD, days)
    else:
        held = run.walk_forward(columns, settings, start, steps, work, days)
    if with_then:
        run.show_forward(columns, settings, steps, days, shift, then, work)
    told = _tell(k, columns, settings, steps, work, days, held, shift, now, with_hindsight, least_told)
    noise = sum(one.probability * steps[_at(k, days - 1, slot) + k.NOISE] for slot, one in told)
    kept = [] if keep_day is None else [steps[at : at + k.RECORD] for at in _records_on(k, keep_day)]
    kept = [record for record in kept if record[k.WEIGHT] > k.EMPTY]
    _rooms.append((steps, work))
    return Passed([one for _, one in told], then, now, noise, kept)


def _records_on(k: ModuleType, day: int) -> list[int]:
    return [_at(k, day, slot) for slot in range(k.SLOTS)]


def _at(k: ModuleType, day: int, slot: int) -> int:
    return int((day * k.SLOTS + slot) * k.RECORD)


def _columns(
    log: DailyLog, scaled: Estimate, tissue: TissueModel, alpha: float, amplitude: float,
    phase_days: Sequence[int], logged_before: float,
) -> Row:  # fmt: skip
    k, run = written, kernel_in_use(written)
    days = len(log.weight_kg)
    filled = fill_intake(log, scaled.mean)
    columns = array("d", bytes(8 * k.COLUMNS * days))
    width = k.COLUMNS
    columns[k.WEIGHED :: width] = row_of(log.weight_kg)
    columns[k.SEEN :: width] = row_of(log.is_weighed)
    columns[k.SCALE :: width] = row_of(log.noise_scale)
    if log.cycle_rise is not None:
        for at, column in zip((k.RISE, k.RISE_LATE, k.RISE_UNSURE), log.cycle_rise, strict=True):
            columns[at::width] = row_of(column)
    if log.water_kg is not None and log.water_variance is not None:
        columns[k.WATER :: width] = row_of(log.water_kg)
        columns[k.WATER_VARIANCE :: width] = row_of(log.water_variance)
    acting = acting_intake(filled, tissue.usual_kcal, tissue.adaptation_gain)
    held = tissue.usual_load_kg * amplitude if tissue.carried_slope is None else 0.0
    nothing = array("d", bytes(8 * days))
    plan = array("d", bytes(8 * k.PLAN))
    for at, value in (
        (k.ALPHA_MEAN, alpha),
        (k.AMPLITUDE, amplitude),
        (k.REFERENCE, tissue.usual_kcal),
        (k.HELD_LOAD, held),
        (k.SLOW_SHARE, CARRIED_SLOW_SHARE),
        (k.SLOW_KEPT, math.exp(-1.0 / CARRIED_SLOW_DAYS)),
        (k.ERROR_LOGGED, DAY_ERROR),
        (k.ERROR_UNLOGGED, math.sqrt(UNLOGGED_DAY_ERROR**2 - SILENT_ERROR**2)),
        (k.ERROR_SILENT, SILENT_ERROR),
        (k.SHIFT_FROM, SHIFT_FROM),
        (k.SHIFT_APART, SHIFT_APART_DAYS),
        (k.BREAK_ODDS, SHIFT_BREAK_CHANCE),
        (k.DEFICIT, DEFICIT),
        (k.DEFICIT_SPREAD, DEFICIT_SD * DEFICIT_DAYS**0.5 * 0.001 * scaled.mean * alpha),
        (k.DEFICIT_DAYS, DEFICIT_DAYS),
        (k.DEFICIT_AGAIN, DEFICIT_AGAIN_DAYS),
        (k.LOGGED_BEFORE, logged_before),
        (k.MEANT_FROM, min(phase_days, default=days)),
    ):
        plan[at] = value
    slope = nothing if tissue.carried_slope is None else row_of(tissue.carried_slope)
    carried = nothing if tissue.carried_kg is None else row_of(tissue.carried_kg)
    eaten = row_of(filled)
    run.lay_out(plan, eaten, row_of(acting), row_of(log.is_logged), carried, slope, days, columns)
    for day in phase_days:
        if 0 < day < days:
            for near in range(max(0, day - 2), min(days, day + 12)):
                columns[near * width + k.BREAKS] = 0.0
            columns[min(day + 2, days - 1) * width + k.BREAKS] = RATIO_BREAK_CHANCE
    return columns


def _raise_by(columns: Row, shift: float, days: int) -> None:
    k = written
    for at in range(0, days * k.COLUMNS, k.COLUMNS):
        if columns[at + k.SEEN] > 0.0:
            columns[at + k.WEIGHED] += shift


def _tell(
    k: ModuleType, columns: Row, settings: Row, steps: Row, work: Row, days: int,
    held: int, shift: float, now: Row, with_hindsight: bool, least_told: float,
) -> list[tuple[int, Conclusion]]:  # fmt: skip
    """The explanations that are likely enough on the last day, the likeliest first, with their slots."""
    run, last, least = kernel_in_use(k), days - 1, PLAIN.STATES
    odds = [math.exp(steps[_at(k, last, slot) + k.WEIGHT]) for slot in range(held)]
    total = sum(odds)
    likely = [slot for slot in range(held) if odds[slot] >= min(least_told * total, max(odds))]
    total = sum(odds[slot] for slot in likely)
    found = []
    for slot in likely:
        share = odds[slot] / total
        view = array("d", bytes(8 * k.VIEW * days if with_hindsight else 0))
        events: list[tuple[int, int]] = []
        if with_hindsight:
            run.walk_back(columns, settings, steps, days, slot, view, work)
            run.add_back(columns, settings, view, days, share, shift, now)
            happened = view[k.HAPPENED :: k.VIEW]
            events = [(day, int(kind)) for day, kind in enumerate(happened) if kind]
        at = _at(k, last, slot)
        mean = steps[at + k.MEAN : at + k.MEAN + least]
        spread, rise = steps[at + k.SPREAD : at + k.GAIN], (0.0, 0.0)
        if k is CYCLIC:
            rise = steps[at + k.MEAN + least], spread[least * (k.STATES + 1)]
            spread = array("d", [spread[i * k.STATES + j] for i in range(least) for j in range(least)])
        found.append((slot, Conclusion(share, mean, spread, view, events, rise)))
    if with_hindsight:
        run.settle_back(now, days, 1.0)
    return found


@inlined
def lasting_water(days: Number, ops: Elementwise) -> Number:
    """Variance of what of carried mass changes for good within ``days`` without a cause that is told [kg2]."""
    years = days / DAYS_PER_YEAR
    return WATER_STAYS_KG**2 * years * ops.minimum(years, 1.0)


def change_under(one: Conclusion, row: int, last: int, then: int) -> tuple[float, float, float]:
    """Probability of an explanation, and mean and variance of a change between two days under it; ``row`` is the
    first of the three columns of a view.

    Of tissue and of carried mass with what may stay of water for good.
    """
    view, now, before = one.view, last * written.VIEW + row, then * written.VIEW + row
    variance = view[now + 1] + view[before + 1] - 2.0 * view[before + 2]
    if row != written.LEVEL:
        variance += lasting_water(last - then, FLOATS)
    return one.probability, view[now] - view[before], max(variance, 0.0)


@compiled
def mixed(values: Sequence[tuple[float, float, float]], *, ops: Elementwise = FLOATS) -> Estimate:
    """Mean and SD of a mixture, from probability, mean and variance of its parts."""
    mean = variance = 0.0
    for share, middle, _ in values:
        mean = mean + share * middle
    for share, middle, own in values:
        off = middle - mean
        variance = variance + share * (own + off * off)
    return Estimate(mean, ops.sqrt(ops.maximum(variance, 0.0)))
