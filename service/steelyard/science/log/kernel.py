"""The recursions of the log reader, over rows of doubles: a bank of Kalman filters, and the pass back from its end.

Hidden from day to day (``witnesses.py`` says what they mean, ``witness_errors.py`` where the figures come from)::

    0  tissue [kg]
    1  alpha: tissue made by 1,000 kcal as logged [kg]
    2  beta: tissue spent a day [kg/d]
    3  error of what a kilocalorie makes, as a fraction; correlated with alpha and beta from the start, else idle
    4  amplitude of the expected carried mass [1]
    5  water without an expected cause, which fades [kg]
    6  noise that lingers to the next day [kg]
    7  water that stays, or another scale [kg]
    8  rise around menstruation [kg]
    9  that rise times the days by which it comes late [kg d]

    tissue[t+1] = tissue[t] + flow[t],  flow[t] = intake[t] alpha[t] - beta[t] + growth
    beta[t+1]   = beta[t] + pull flow[t] + known change of activity[t] + drift
    weight[t]   = tissue + amplitude carried[t] + water + noise that lingers + menstrual rise + noise

The last two are there where a cycle is told: this text is run, and compiled, once with eight states and once with all
(``kernels.py``), so that nobody else's log is slower for them.

Carried mass is counted from what was eaten before the log, which was about what the body of *that* day spent. Where it
was not told it is read from alpha and beta, and as beta follows tissue, what it has moved by since is taken off again.

Several explanations run side by side. A weighing that an explanation does not expect splits it in three: as it is, the
weighing is wrong, or water moved. Each explanation is one Gaussian given its own history, so that the odds between
them are exact until the least likely are dropped (Gaussian sum with pruning, Alspach & Sorenson 1972).

Nothing here knows of bodies, people or evidence; a function writes into rows that its caller made. The types that a
compiler needs stand in ``kernel.pxd``; without one this file runs as it is and gives the same answers.
"""

from __future__ import annotations

from math import exp, log
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ..numbers import Row

LEAST_STATES, MOST_STATES = 8, 10
STATES = int(globals().get("STATES", LEAST_STATES))  # who runs the text may have said how many
SLOTS = 5
# A record by day and slot.
MEAN = 0
SPREAD = STATES  # full matrix, row by row
GAIN = SPREAD + STATES * STATES
SURPRISE = GAIN + STATES
PRECISION = SURPRISE + 1  # of the surprise; 0 where nothing was weighed
WEIGHT = SURPRISE + 2  # log of the odds, up to a constant
PARENT = SURPRISE + 3
EVENT = SURPRISE + 4  # 0 none, 1 a weighing that is wrong, 2 water, 3 logging
SHOCK_DAY = SURPRISE + 5
SHOCK_SIGN = SURPRISE + 6
NOISE = SURPRISE + 7  # what the usual variance of the noise is multiplied by
NOISE_WORTH = SURPRISE + 8  # weighings that this is worth
RECORD = SURPRISE + 9
# In a covariance.
ALPHA_ALPHA, ALPHA_BETA, BETA_BETA = STATES + 1, STATES + 2, 2 * STATES + 2
LOADS = 4 * SLOTS * RECORD  # of a weighing, behind the explanations of a day
BALANCE_GAIN = LOADS + STATES
WORK = BALANCE_GAIN + STATES
# Rows of ``settings``.
PULL, GROWTH, BETA_DRIFT, ALPHA_DRIFT, WATER_KEPT, WATER_FRESH, LINGER_KEPT, LINGER_SHARE = range(8)
NOISE_VARIANCE, ODDS_WRONG, WRONG_VARIANCE, ODDS_SHOCK, SHOCK_VARIANCE, SPLITS_FROM = range(8, 14)
AGAIN_DAYS, AGAIN_ODDS, DROPPED, BREAK_VARIANCE, NOISE_PRIOR, STAYS, ALPHA_LEAST = range(14, 21)
SETTLED = 21  # tissue before the log [kg]
AMPLITUDE_EXPECTED = 22
SETTINGS = 23
# A row by day; energies in 1,000 kcal. ``BALANCED``: intake at which the day before says that tissue is steady, with
# the variance of what is gained there [kg2], 0 where it says nothing.
COLUMNS = 20
WEIGHED, SEEN, SCALE, INTAKE, INTAKE_VARIANCE, CARRIED, BY_ALPHA, BY_BETA, BREAKS = range(9)
WATER, WATER_VARIANCE, RECENT, RECENT_VARIANCE, ACTIVITY, ACTIVITY_VARIANCE = range(9, 15)
BALANCED, BALANCE_VARIANCE = 15, 16
RISE, RISE_LATE, RISE_UNSURE = range(17, 20)

EMPTY = -1e300


def walk_forward(columns: Row, settings: Row, start: Row, steps: Row, work: Row, days: int) -> int:
    """The bank over ``days``; returns how many explanations are held on the last day.

    Args: ``columns``: ``COLUMNS`` numbers a day (intakes in 1,000 kcal); ``start``: mean then covariance of the first
    morning; ``steps``: room for ``days * SLOTS`` records; ``work``: room for ``WORK`` numbers.
    """
    for i in range(RECORD):
        work[i] = 0.0
    for i in range(STATES + STATES * STATES):
        work[i] = start[i]
    work[SHOCK_DAY] = -1000.0
    work[NOISE] = 1.0
    work[NOISE_WORTH] = settings[NOISE_PRIOR]
    return walk_on(columns, settings, steps, work, 1, days)


def walk_on(columns: Row, settings: Row, steps: Row, work: Row, held: int, days: int) -> int:
    """The bank over ``days`` from the ``held`` explanations of the first morning, whose records are in ``work``."""
    for day in range(days):
        at = day * COLUMNS
        seen = columns[at + SEEN]
        made = held
        if columns[at + BREAKS] > 0.0:
            # A day keeps ``SLOTS`` at most, so that there is room for twice as many.
            for slot in range(held):
                _split_by_break(columns, settings, work, slot * RECORD, (held + slot) * RECORD, at)
            made = 2 * held
        if seen > 0.0:
            beyond = columns[at + WEIGHED] - load(columns, settings, at, 1.0, work, LOADS)
            _load_weighing(columns, at, work, LOADS)
            count = made
            for slot in range(count):
                origin = slot * RECORD
                made = _weigh(columns, settings, work, origin, at, day, beyond, made)
        if columns[at + BALANCE_VARIANCE] > 0.0:
            for slot in range(made):
                _balance(columns, settings, work, slot * RECORD, at)
        into = day * SLOTS * RECORD
        held = _keep_likeliest(settings, steps, work, made, into)
        # To the next morning.
        for slot in range(held):
            _to_next_morning(columns, settings, steps, work, into + slot * RECORD, slot, at)
    return held


def _split_by_break(columns: Row, settings: Row, work: Row, origin: int, other: int, at: int) -> None:
    """A phase may begin, which may be logged less well: the explanation at ``other`` says that it is."""
    for i in range(RECORD):
        work[other + i] = work[origin + i]
    _break(columns, settings, work, other, at)
    work[other + EVENT] = 3.0
    work[other + WEIGHT] += log(columns[at + BREAKS])
    work[origin + WEIGHT] += log(1.0 - columns[at + BREAKS])


def _break(columns: Row, settings: Row, work: Row, origin: int, at: int) -> None:
    """Open alpha where logging may change.

    What is eaten then lies further off the usual than the log says, and so does what is carried. The level takes
    carried mass of alpha by the amplitude that was expected; what was learnt of that since goes to water that stays.
    """
    alpha = work[origin + MEAN + 1]
    opened = settings[BREAK_VARIANCE] * alpha * alpha
    per_amplitude = columns[at + BY_ALPHA] / settings[AMPLITUDE_EXPECTED]
    learnt = per_amplitude * (work[origin + MEAN + 4] - settings[AMPLITUDE_EXPECTED])
    row = origin + SPREAD
    work[row + ALPHA_ALPHA] += opened
    work[row + STATES + 7] += learnt * opened
    work[row + 7 * STATES + 1] += learnt * opened
    unsure = per_amplitude * per_amplitude * work[row + 4 * STATES + 4]
    work[row + 7 * STATES + 7] += (learnt * learnt + unsure) * opened


def _load_weighing(columns: Row, at: int, room: Row, into: int) -> None:
    """Add to the load of a level what a weighing has besides."""
    room[into + 6] = 1.0
    if STATES > LEAST_STATES:
        room[into + 8] = columns[at + RISE]
        room[into + 9] = columns[at + RISE_LATE]


def _keep_likeliest(settings: Row, steps: Row, work: Row, made: int, into: int) -> int:
    """Keep what ``work`` holds in the records of a day, the likeliest first; returns how many are kept.

    Of those that say the same one is kept, and those that are out of the running go.
    """
    best = EMPTY
    for slot in range(made):
        if work[slot * RECORD + WEIGHT] > best:
            best = work[slot * RECORD + WEIGHT]
    held = 0
    while held < SLOTS:
        top = -1
        most = best - settings[DROPPED]
        for slot in range(made):
            if work[slot * RECORD + WEIGHT] > most:
                most = work[slot * RECORD + WEIGHT]
                top = slot
        if top < 0:
            break
        origin = top * RECORD
        same = _alike(steps, work, into, held, origin)
        if same >= 0:
            # One account of the two is kept, with the odds of both.
            keeps = steps[same + WEIGHT]
            steps[same + WEIGHT] = keeps + log(1.0 + exp(work[origin + WEIGHT] - keeps))
        else:
            for i in range(RECORD):
                steps[into + held * RECORD + i] = work[origin + i]
            steps[into + held * RECORD + WEIGHT] = work[origin + WEIGHT] - best
            held += 1
        work[origin + WEIGHT] = EMPTY
    for slot in range(held, SLOTS):
        steps[into + slot * RECORD + WEIGHT] = EMPTY
    return held


def _alike(steps: Row, work: Row, into: int, held: int, origin: int) -> int:
    """Where an explanation lies that is already kept and says of tissue, its pace and water what this one says."""
    for slot in range(held):
        other = into + slot * RECORD
        apart = 0.0
        for i in range(STATES):
            if i != 3 and i != 4 and i != 6:
                gap = steps[other + MEAN + i] - work[origin + MEAN + i]
                spread = steps[other + SPREAD + i * STATES + i]
                apart += gap * gap / (spread + 1e-12)
                ratio = work[origin + SPREAD + i * STATES + i] / (spread + 1e-12)
                if (ratio > 1.21 or ratio < 0.83) and spread > 1e-9:
                    apart += 1.0
        if apart < 0.05:
            return other
    return -1


def _weigh(columns: Row, settings: Row, work: Row, origin: int, at: int, day: int, beyond: float, made: int) -> int:
    """Take a weighing, ``beyond`` what was settled [kg], into an explanation; split it where it does not expect it.
    Returns how many there are now."""
    noise = settings[NOISE_VARIANCE] * work[origin + NOISE] * columns[at + SCALE] * (1.0 - settings[LINGER_SHARE])
    surprise = beyond
    known = 0.0
    for i in range(STATES):
        along = 0.0
        for j in range(STATES):
            along += work[origin + SPREAD + i * STATES + j] * work[LOADS + j]
        work[origin + GAIN + i] = along
        known += work[LOADS + i] * along
        surprise -= work[LOADS + i] * work[origin + MEAN + i]
    total = known + noise
    odds_shock = settings[ODDS_SHOCK]
    if surprise * surprise > settings[SPLITS_FROM] * total and made + 3 <= 4 * SLOTS:
        sign = 1.0 if surprise > 0.0 else -1.0
        if day - work[origin + SHOCK_DAY] < settings[AGAIN_DAYS] and sign == work[origin + SHOCK_SIGN]:
            odds_shock *= settings[AGAIN_ODDS]
        # The weighing is wrong.
        other = made * RECORD
        for i in range(GAIN + STATES):
            work[other + i] = work[origin + i]
        for i in range(WEIGHT, RECORD):
            work[other + i] = work[origin + i]
        work[other + EVENT] = 1.0
        work[other + WEIGHT] += log(settings[ODDS_WRONG])
        _take_in(settings, work, other, surprise, total + settings[WRONG_VARIANCE])
        made += 1
        made = _split(settings, work, origin, made, day, sign, surprise, total, odds_shock * (1.0 - settings[STAYS]), 5)
        if settings[STAYS] > 0.0:
            made = _split(settings, work, origin, made, day, sign, surprise, total, odds_shock * settings[STAYS], 7)
    work[origin + WEIGHT] += log(1.0 - settings[ODDS_WRONG] - odds_shock)
    # How noisy the scale is: this weighing's share of what was seen.
    share = noise / total
    seen = surprise * surprise / total
    if seen > 6.0:
        seen = 6.0
    worth = work[origin + NOISE_WORTH]
    _take_in(settings, work, origin, surprise, total)
    told = work[origin + NOISE] * (1.0 + share * (seen - 1.0))
    work[origin + NOISE] = (worth * work[origin + NOISE] + share * told) / (worth + share)
    work[origin + NOISE_WORTH] = worth + share
    return made


def _split(
    settings: Row,
    work: Row,
    origin: int,
    made: int,
    day: int,
    sign: float,
    surprise: float,
    total: float,
    odds: float,
    state: int,
) -> int:
    """Add the explanation that water moved: what fades (state 5), or what stays (state 7)."""
    other = made * RECORD
    for i in range(GAIN + STATES):
        work[other + i] = work[origin + i]
    for i in range(WEIGHT, RECORD):
        work[other + i] = work[origin + i]
    more = settings[SHOCK_VARIANCE]
    work[other + SPREAD + state * STATES + state] += more
    work[other + GAIN + state] += more
    work[other + EVENT] = 2.0
    work[other + SHOCK_DAY] = day
    work[other + SHOCK_SIGN] = sign
    work[other + WEIGHT] += log(odds)
    _take_in(settings, work, other, surprise, total + more)
    return made + 1


def _take_in(settings: Row, work: Row, origin: int, surprise: float, total: float) -> None:
    """Update an explanation whose ``GAIN`` holds the covariance with the weighing; ``total``: variance of it."""
    _learn(settings, work, origin, origin + GAIN, surprise, total)
    work[origin + SURPRISE] = surprise
    work[origin + PRECISION] = 1.0 / total


def _learn(settings: Row, work: Row, origin: int, gain: int, surprise: float, total: float) -> None:
    """Update an explanation by what is off by ``surprise``, of variance ``total``: ``work`` holds its covariance with
    the states from ``gain`` on, and then their gain."""
    precision = 1.0 / total
    for i in range(STATES):
        along = work[gain + i] * precision
        if along != 0.0:
            row = origin + SPREAD + i * STATES
            for j in range(STATES):
                work[row + j] -= along * work[gain + j]
    for i in range(STATES):
        work[gain + i] *= precision
        work[origin + MEAN + i] += work[gain + i] * surprise
    work[origin + WEIGHT] -= 0.5 * (log(total) + surprise * surprise * precision)
    _hold(settings, work, origin)


def _hold(settings: Row, work: Row, origin: int) -> None:
    """No log holds many times of what is eaten, nor a negative share: alpha is held at its bound, the rest along its
    regression on alpha (projection, Simon 2010, doi 10.1049/iet-cta.2009.0032, from memory)."""
    short = settings[ALPHA_LEAST] - work[origin + MEAN + 1]
    if short > 0.0 and settings[ALPHA_LEAST] > 0.0:
        row = origin + SPREAD + STATES
        short /= work[row + 1]
        for i in range(STATES):
            work[origin + MEAN + i] += work[row + i] * short


def _balance(columns: Row, settings: Row, work: Row, origin: int, at: int) -> None:
    """Take in that people eat near what they spend: what was logged on a day makes about as much tissue as is spent."""
    eaten = columns[at + BALANCED]
    gain = BALANCE_GAIN
    for i in range(STATES):
        row = origin + SPREAD + i * STATES
        work[gain + i] = eaten * work[row + 1] - work[row + 2]
    total = eaten * work[gain + 1] - work[gain + 2] + columns[at + BALANCE_VARIANCE]
    surprise = work[origin + MEAN + 2] - eaten * work[origin + MEAN + 1]
    _learn(settings, work, origin, gain, surprise, total)


def _to_next_morning(columns: Row, settings: Row, steps: Row, work: Row, origin: int, slot: int, at: int) -> None:
    """An explanation carried to the next morning, from its record into ``work``."""
    into = slot * RECORD
    for i in range(GAIN):
        work[into + i] = steps[origin + i]
    for i in range(STATES):
        work[into + GAIN + i] = 0.0
    work[into + SURPRISE] = 0.0
    work[into + PRECISION] = 0.0
    for i in range(WEIGHT, RECORD):
        work[into + i] = steps[origin + i]
    work[into + PARENT] = slot
    work[into + EVENT] = 0.0
    pull = settings[PULL]
    intake = columns[at + INTAKE]
    flow = intake * work[into + 1] - work[into + 2] + settings[GROWTH]
    work[into] += flow
    work[into + 2] += pull * flow
    work[into + 2] += columns[at + ACTIVITY]
    kept = settings[WATER_KEPT]
    lingers = settings[LINGER_KEPT]
    work[into + 5] = work[into + 5] * kept + columns[at + WATER]
    work[into + 6] *= lingers
    # The covariance by rows, then by columns.
    base = into + SPREAD
    for j in range(STATES):
        flow = intake * work[base + STATES + j] - work[base + 2 * STATES + j]
        work[base + j] += flow
        work[base + 2 * STATES + j] += pull * flow
        work[base + 5 * STATES + j] *= kept
        work[base + 6 * STATES + j] *= lingers
    for i in range(STATES):
        row = base + i * STATES
        flow = intake * work[row + 1] - work[row + 2]
        work[row] += flow
        work[row + 2] += pull * flow
        work[row + 5] *= kept
        work[row + 6] *= lingers
    alpha = steps[origin + MEAN + 1]
    noise = settings[NOISE_VARIANCE] * work[into + NOISE]
    work[base] += alpha * alpha * columns[at + INTAKE_VARIANCE]
    work[base + ALPHA_ALPHA] += settings[ALPHA_DRIFT] * alpha * alpha
    work[base + BETA_BETA] += settings[BETA_DRIFT] * alpha * alpha + columns[at + ACTIVITY_VARIANCE]
    work[base + 5 * STATES + 5] += settings[WATER_FRESH] + columns[at + WATER_VARIANCE]
    work[base + 6 * STATES + 6] += noise * settings[LINGER_SHARE] * (1.0 - lingers * lingers)
    if STATES > LEAST_STATES:
        # What is off of the rise by its timing goes by how high it is, and is off for more than a day.
        rise = work[into + 8] * work[into + 8] + work[base + 8 * STATES + 8]
        work[base + 6 * STATES + 6] += rise * columns[at + RISE_UNSURE] * (1.0 - lingers * lingers)


VIEW = 16
# Columns of a view by day: of tissue, level and carried mass mean, variance and covariance with the last day's; then
# alpha, beta, their variances and covariance; the row of the explanation's event; what the noise is.
TISSUE, LEVEL, BORNE, ALPHA, BETA = 0, 3, 6, 9, 10
ALPHA_VARIANCE, BETA_VARIANCE, BOTH, HAPPENED, STRAY = 11, 12, 13, 14, 15


# Layout of its room, in rows as long as the states are many: r, N, three rows that reach the last day (``REACH`` is a
# row before them), a weighing's load, what is looked at, each spread by the covariance, and that by N; two to work in.
N = STATES
REACH = STATES * STATES
HEARD = REACH + 4 * STATES
ASKED = HEARD + STATES
ASKED_SPREAD = ASKED + 5 * STATES
ASKED_BACK = ASKED_SPREAD + 5 * STATES
PUSHED = ASKED_BACK + 5 * STATES
GAINED = PUSHED + STATES
BACK = GAINED + STATES


def walk_back(columns: Row, settings: Row, steps: Row, days: int, slot: int, view: Row, room: Row) -> None:
    """The days in hindsight under the explanation that is in ``slot`` on the last.

    The disturbance form of the smoother (de Jong 1989): nothing is inverted. r and N are carried back from the last
    day; of a state known as mean a and covariance P, hindsight makes a + P r and P - P N P.

    Args: ``view``: room for ``VIEW`` numbers a day; ``room``: room for ``BACK`` numbers.
    """
    for i in range(BACK):
        room[i] = 0.0
    last = (days - 1) * COLUMNS
    room[REACH + STATES] = 1.0
    load(columns, settings, last, 1.0, room, REACH + 2 * STATES)
    load(columns, settings, last, 0.0, room, REACH + 3 * STATES)
    day = days - 1
    while day >= 0:
        origin = (day * SLOTS + slot) * RECORD
        at = day * COLUMNS
        if day < days - 1:
            _back_to_morning(columns, settings, room, at)
        _look(columns, settings, steps, room, origin, at, view, day * VIEW)
        if columns[at + BALANCE_VARIANCE] > 0.0:
            _back_over_balance(columns, steps, room, origin, at)
        if steps[origin + PRECISION] > 0.0 and day > 0:
            _back_over_weighing(columns, settings, steps, room, origin, at)
        slot = int(steps[origin + PARENT])
        day -= 1


def _back_to_morning(columns: Row, settings: Row, room: Row, at: int) -> None:
    """r, N and the rows from the next morning back to this one: the transposed step of ``_to_next_morning``."""
    intake = columns[at + INTAKE]
    pull = settings[PULL]
    kept = settings[WATER_KEPT]
    lingers = settings[LINGER_KEPT]
    for v in range(4):
        row = 0 if v == 0 else REACH + STATES * v
        back = room[row] + pull * room[row + 2]
        room[row + 1] += intake * back
        room[row + 2] -= back
        room[row + 5] *= kept
        room[row + 6] *= lingers
    for j in range(STATES):
        back = room[N + j] + pull * room[N + 2 * STATES + j]
        room[N + STATES + j] += intake * back
        room[N + 2 * STATES + j] -= back
        room[N + 5 * STATES + j] *= kept
        room[N + 6 * STATES + j] *= lingers
    for i in range(STATES):
        row = N + i * STATES
        back = room[row] + pull * room[row + 2]
        room[row + 1] += intake * back
        room[row + 2] -= back
        room[row + 5] *= kept
        room[row + 6] *= lingers


def _look(columns: Row, settings: Row, steps: Row, room: Row, origin: int, at: int, view: Row, out: int) -> None:
    """Fill a day of a view: tissue, level, carried mass, alpha and beta in hindsight."""
    for i in range(ASKED, ASKED_SPREAD):
        room[i] = 0.0
    room[ASKED] = 1.0
    load(columns, settings, at, 1.0, room, ASKED + STATES)
    apart = load(columns, settings, at, 0.0, room, ASKED + 2 * STATES)
    room[ASKED + 3 * STATES + 1] = 1.0
    room[ASKED + 4 * STATES + 2] = 1.0
    for i in range(STATES):
        room[ASKED_SPREAD + i] = steps[origin + SPREAD + i]
        room[ASKED_SPREAD + 3 * STATES + i] = steps[origin + SPREAD + STATES + i]
        room[ASKED_SPREAD + 4 * STATES + i] = steps[origin + SPREAD + 2 * STATES + i]
    _times(steps, origin + SPREAD, room, ASKED + STATES, ASKED_SPREAD + STATES)
    _times(room, N, room, ASKED_SPREAD, ASKED_BACK)
    _times(room, N, room, ASKED_SPREAD + STATES, ASKED_BACK + STATES)
    _times(room, N, room, ASKED_SPREAD + 3 * STATES, ASKED_BACK + 3 * STATES)
    _times(room, N, room, ASKED_SPREAD + 4 * STATES, ASKED_BACK + 4 * STATES)
    for i in range(STATES):
        room[ASKED_SPREAD + 2 * STATES + i] = room[ASKED_SPREAD + STATES + i] - room[ASKED_SPREAD + i]
        room[ASKED_BACK + 2 * STATES + i] = room[ASKED_BACK + STATES + i] - room[ASKED_BACK + i]
    for v in range(5):
        asked = ASKED + STATES * v
        spread = ASKED_SPREAD + STATES * v
        mean = 0.0
        variance = 0.0
        with_last = 0.0
        for i in range(STATES):
            mean += room[asked + i] * steps[origin + MEAN + i] + room[spread + i] * room[i]
            variance += room[asked + i] * room[spread + i] - room[spread + i] * room[ASKED_BACK + STATES * v + i]
            if v < 3:
                with_last += room[spread + i] * room[REACH + STATES + STATES * v + i]
        if v < 3:
            view[out + 3 * v] = mean
            view[out + 3 * v + 1] = variance
            view[out + 3 * v + 2] = with_last
        else:
            view[out + ALPHA + v - 3] = mean
            view[out + ALPHA_VARIANCE + v - 3] = variance
    view[out + LEVEL] += apart
    view[out + BORNE] += apart
    both = room[ASKED_SPREAD + 3 * STATES + 2]
    for i in range(STATES):
        both -= room[ASKED_SPREAD + 3 * STATES + i] * room[ASKED_BACK + 4 * STATES + i]
    view[out + BOTH] = both
    view[out + HAPPENED] = steps[origin + EVENT]
    view[out + STRAY] = steps[origin + SURPRISE]


def _back_over_balance(columns: Row, steps: Row, room: Row, origin: int, at: int) -> None:
    """r, N and the rows to before ``_balance`` was taken in, with its gain from the covariance after it."""
    eaten = columns[at + BALANCED]
    precision = 1.0 / columns[at + BALANCE_VARIANCE]
    for i in range(STATES):
        row = origin + SPREAD + i * STATES
        room[HEARD + i] = precision * (eaten * steps[row + 1] - steps[row + 2])
    for v in range(4):
        row = 0 if v == 0 else REACH + STATES * v
        total = 0.0
        for i in range(STATES):
            total += room[HEARD + i] * room[row + i]
        if v == 0:
            total -= precision * (steps[origin + MEAN + 2] - eaten * steps[origin + MEAN + 1])
        room[row + 1] -= eaten * total
        room[row + 2] += total
    _times(room, N, room, HEARD, PUSHED)
    total = precision * (1.0 - eaten * room[HEARD + 1] + room[HEARD + 2])
    for i in range(STATES):
        total += room[PUSHED + i] * room[HEARD + i]
    room[N + STATES + 1] += eaten * eaten * total
    room[N + STATES + 2] -= eaten * total
    room[N + 2 * STATES + 1] -= eaten * total
    room[N + 2 * STATES + 2] += total
    for i in range(STATES):
        push_i = room[PUSHED + i]
        room[N + STATES + i] -= eaten * push_i
        room[N + 2 * STATES + i] += push_i
        room[N + i * STATES + 1] -= eaten * push_i
        room[N + i * STATES + 2] += push_i


def _back_over_weighing(columns: Row, settings: Row, steps: Row, room: Row, origin: int, at: int) -> None:
    """r, N and the rows to before the weighing was taken in, with its load h and its gain K as recorded."""
    precision = steps[origin + PRECISION]
    load(columns, settings, at, 1.0, room, HEARD)
    _load_weighing(columns, at, room, HEARD)
    for i in range(STATES):
        room[GAINED + i] = steps[origin + GAIN + i]
    for v in range(4):
        row = 0 if v == 0 else REACH + STATES * v
        total = 0.0
        for i in range(STATES):
            total += room[GAINED + i] * room[row + i]
        if v == 0:
            total -= steps[origin + SURPRISE] * precision
        for i in range(STATES):
            room[row + i] -= room[HEARD + i] * total
    # N (I - K h)' both sides.
    _times(room, N, room, GAINED, PUSHED)
    total = precision
    for i in range(STATES):
        total += room[PUSHED + i] * room[GAINED + i]
    for i in range(STATES):
        at_i = room[HEARD + i]
        push_i = room[PUSHED + i]
        for j in range(STATES):
            room[N + i * STATES + j] += at_i * (room[HEARD + j] * total - room[PUSHED + j]) - push_i * room[HEARD + j]


def _times(of: Row, matrix: int, room: Row, vector: int, into: int) -> None:
    """A symmetric matrix times a vector: row by row, so that all sums grow at once."""
    for i in range(STATES):
        room[into + i] = of[matrix + i] * room[vector]
    for j in range(1, STATES):
        by = room[vector + j]
        for i in range(STATES):
            room[into + i] += of[matrix + j * STATES + i] * by


def load(columns: Row, settings: Row, at: int, tissue: float, room: Row, into: int) -> float:
    """What the level of a day (with ``tissue`` 0: its carried part) takes of each state; returns what it holds beside
    them, of the body as it was settled [kg]."""
    moves = settings[PULL] * columns[at + BY_BETA]
    room[into] = tissue - moves
    room[into + 1] = columns[at + BY_ALPHA]
    room[into + 2] = columns[at + BY_BETA]
    room[into + 3] = 0.0
    room[into + 4] = columns[at + CARRIED]
    room[into + 5] = 1.0
    room[into + 6] = 0.0
    room[into + 7] = 1.0 if settings[STAYS] > 0.0 else 0.0
    for i in range(LEAST_STATES, STATES):
        room[into + i] = 0.0
    return moves * settings[SETTLED]


# Rows of what is shown, one after the other, each a number a day: mean and variance of level, weekly rate, maintenance
# [1,000 kcal], tissue, carried mass.
SHOWN = 10


def show_forward(columns: Row, settings: Row, steps: Row, days: int, shift: float, shown: Row, room: Row) -> None:
    """What was known on each day, explanations mixed by their odds; fills the first six rows of ``shown``.

    ``shift`` [kg] is added to levels. ``room``: room for ``STATES`` numbers.
    """
    for day in range(days):
        at = day * COLUMNS
        apart = load(columns, settings, at, 1.0, room, 0) + shift
        into = day * SLOTS * RECORD
        total = 0.0
        for row in range(6):
            shown[row * days + day] = 0.0
        for slot in range(SLOTS):
            origin = into + slot * RECORD
            if steps[origin + WEIGHT] > EMPTY:
                odds = exp(steps[origin + WEIGHT])
                total += odds
                level = apart
                variance = 0.0
                for i in range(STATES):
                    along = 0.0
                    for j in range(STATES):
                        along += steps[origin + SPREAD + i * STATES + j] * room[j]
                    level += room[i] * steps[origin + MEAN + i]
                    variance += room[i] * along
                _add(shown, 0, days, day, odds, level, variance)
                alpha = steps[origin + MEAN + 1]
                beta = steps[origin + MEAN + 2]
                of_alpha = steps[origin + SPREAD + ALPHA_ALPHA]
                of_beta = steps[origin + SPREAD + BETA_BETA]
                of_both = steps[origin + SPREAD + ALPHA_BETA]
                _add_pace(columns, settings, at, shown, days, day, odds, alpha, beta, of_alpha, of_beta, of_both)
        for row in range(3):
            _settle(shown, 2 * row, days, day, total)


def add_back(columns: Row, settings: Row, view: Row, days: int, odds: float, shift: float, shown: Row) -> None:
    """Add an explanation's days in hindsight to ``shown``, to be settled by ``settle_back``."""
    for day in range(days):
        at = day * COLUMNS
        out = day * VIEW
        _add(shown, 0, days, day, odds, view[out + LEVEL] + shift, view[out + LEVEL + 1])
        _add_pace(
            columns,
            settings,
            at,
            shown,
            days,
            day,
            odds,
            view[out + ALPHA],
            view[out + BETA],
            view[out + ALPHA_VARIANCE],
            view[out + BETA_VARIANCE],
            view[out + BOTH],
        )
        _add(shown, 6, days, day, odds, view[out + TISSUE], view[out + TISSUE + 1])
        _add(shown, 8, days, day, odds, view[out + BORNE] + shift, view[out + BORNE + 1])


def settle_back(shown: Row, days: int, total: float) -> None:
    """Turn sums over explanations into means and variances; ``total``: of their odds."""
    for day in range(days):
        for row in range(5):
            _settle(shown, 2 * row, days, day, total)


def _add_pace(
    columns: Row,
    settings: Row,
    at: int,
    shown: Row,
    days: int,
    day: int,
    odds: float,
    alpha: float,
    beta: float,
    of_alpha: float,
    of_beta: float,
    of_both: float,
) -> None:
    """Weekly rate at the last week's intake, and maintenance."""
    recent = columns[at + RECENT]
    rate = 7.0 * (recent * alpha - beta + settings[GROWTH])
    variance = recent * recent * of_alpha + of_beta - 2.0 * recent * of_both
    # What was eaten in that week is known but for the errors of its days.
    variance += alpha * alpha * columns[at + RECENT_VARIANCE]
    _add(shown, 2, days, day, odds, rate, 49.0 * variance)
    spent = beta / alpha
    variance = (of_beta + spent * spent * of_alpha - 2.0 * spent * of_both) / (alpha * alpha)
    _add(shown, 4, days, day, odds, spent, variance)


def _add(shown: Row, row: int, days: int, day: int, odds: float, mean: float, variance: float) -> None:
    """Add a mean and its second moment."""
    shown[row * days + day] += odds * mean
    shown[(row + 1) * days + day] += odds * (variance + mean * mean)


def _settle(shown: Row, row: int, days: int, day: int, total: float) -> None:
    """Sums to a mean and a variance."""
    mean = shown[row * days + day] / total
    shown[row * days + day] = mean
    shown[(row + 1) * days + day] = shown[(row + 1) * days + day] / total - mean * mean


# Rows of what the columns are laid out with.
ALPHA_MEAN, AMPLITUDE, REFERENCE, HELD_LOAD, SLOW_SHARE, SLOW_KEPT = range(6)
ERROR_LOGGED, ERROR_UNLOGGED, SHIFT_FROM, SHIFT_APART, BREAK_ODDS = range(6, 11)
DEFICIT, DEFICIT_SPREAD, DEFICIT_DAYS, LOGGED_BEFORE, MEANT_FROM, ERROR_SILENT, DEFICIT_AGAIN = range(11, 18)
PLAN = 18
RECENT_DAYS = 7
SHIFT_DAYS = 5
HABIT_DAYS = 14
HABIT_LEAST = 5


def lay_out(
    plan: Row, intake: Row, acting: Row, is_logged: Row, carried: Row, slope: Row, days: int, columns: Row
) -> None:
    """Fill the columns that follow from intake: what acts and its error, carried mass, and where a habit shifts.

    Args: ``plan``: ``PLAN`` numbers; ``intake`` and ``acting`` [kcal] on every day; ``carried`` expected [kg] and its
    ``slope`` by what the body was settled at [kg per kcal/d] (all 0 where that was told).
    """
    keep = plan[SLOW_KEPT]
    share = plan[SLOW_SHARE]
    per_alpha = 1.0 / plan[ALPHA_MEAN]
    slow = 0.0
    slow_slope = 0.0
    recent = 0.0
    erring = 0.0
    broke = -1
    silent = 0.0
    logged = plan[LOGGED_BEFORE]
    told = logged
    for day in range(days):
        at = day * COLUMNS
        eaten = intake[day]
        columns[at + INTAKE] = 0.001 * acting[day]
        error = plan[ERROR_LOGGED] * plan[ERROR_LOGGED]
        silent = silent + 1.0 if silent < RECENT_DAYS else 1.0
        if is_logged[day] > 0.0:
            silent = 0.0
        else:
            # Days of a week without a log err together: their sum by the square of their number.
            error = plan[ERROR_UNLOGGED] * plan[ERROR_UNLOGGED]
            error += (2.0 * silent - 1.0) * plan[ERROR_SILENT] * plan[ERROR_SILENT]
        columns[at + INTAKE_VARIANCE] = 1e-6 * error * eaten * eaten
        columns[at + CARRIED] = (1.0 - share) * carried[day] + share * slow
        loads = plan[AMPLITUDE] * ((1.0 - share) * slope[day] + share * slow_slope)
        columns[at + BY_ALPHA] = plan[HELD_LOAD] * per_alpha - loads * plan[REFERENCE] * per_alpha
        columns[at + BY_BETA] = loads * 1000.0 * per_alpha
        slow += (1.0 - keep) * (carried[day] - slow)
        slow_slope += (1.0 - keep) * (slope[day] - slow_slope)
        # Mean intake over the week before this morning (the first morning: that day's).
        if day == 0:
            columns[at + RECENT] = 0.001 * acting[0]
            columns[at + RECENT_VARIANCE] = columns[INTAKE_VARIANCE]
        else:
            recent += acting[day - 1]
            erring += columns[at - COLUMNS + INTAKE_VARIANCE]
            if day > RECENT_DAYS:
                recent -= acting[day - 1 - RECENT_DAYS]
                erring -= columns[at - COLUMNS * (1 + RECENT_DAYS) + INTAKE_VARIANCE]
            span = day if day < RECENT_DAYS else RECENT_DAYS
            columns[at + RECENT] = 0.001 * recent / span
            columns[at + RECENT_VARIANCE] = erring / (span * span)
        # What was logged the day before tells of what is spent, while the log is young and no phase is known.
        columns[at + BALANCED] = 0.0
        columns[at + BALANCE_VARIANCE] = 0.0
        if day > 0 and is_logged[day - 1] > 0.0:
            if told < plan[DEFICIT_DAYS] and day <= plan[MEANT_FROM]:
                columns[at + BALANCED] = 0.001 * intake[day - 1] / (1.0 - plan[DEFICIT])
                columns[at + BALANCE_VARIANCE] = plan[DEFICIT_SPREAD] * plan[DEFICIT_SPREAD]
            told += 1.0
            logged += 1.0
        # Where the last days lie off the habit before them, a phase may have begun.
        columns[at + BREAKS] = 0.0
        first = day - SHIFT_DAYS - HABIT_DAYS + 1
        if first < broke:
            first = broke
        if first < 0:
            first = 0
        habit = day - SHIFT_DAYS + 1 - first
        if habit >= HABIT_LEAST and (broke < 0 or day - broke >= plan[SHIFT_APART]):
            shift = _shift_of(intake, first, day)
            if shift > plan[SHIFT_FROM] or shift < -plan[SHIFT_FROM]:
                columns[at + BREAKS] = plan[BREAK_ODDS]
                broke = day
                # Another phase is another choice, which tells by itself what is spent, from the days of the shift on.
                if logged < plan[DEFICIT_AGAIN] and told > SHIFT_DAYS:
                    told = SHIFT_DAYS


def _shift_of(intake: Row, first: int, day: int) -> float:
    """By what share the intake of the last days lies off that of the habit, from ``first`` to before them."""
    now = 0.0
    before = 0.0
    for i in range(first, day + 1):
        if i > day - SHIFT_DAYS:
            now += intake[i]
        else:
            before += intake[i]
    habit = day - SHIFT_DAYS + 1 - first
    return (now / SHIFT_DAYS) / (before / habit) - 1.0 if before > 0.0 else 0.0
