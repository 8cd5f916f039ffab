"""Logged steps: cleaning, what they move of maintenance and of the odds, and what is told of them.

The world of the closing tests shares the reader's account of energy but none of its constants: what a step burns, what
the body takes back of it, energy of a kilogram, adaptation and noise are the world's own, by person.
"""

import random
from collections.abc import Sequence
from itertools import pairwise
from statistics import fmean

import pytest
from lifters import lifter
from msgspec.structs import replace
from science.log.test_trend import codes
from steelyard.science.log import kernel as k
from steelyard.science.log.cleaning import clean_log
from steelyard.science.log.entries import IntakeDay, Log, LogError, StepsDay, Weighing
from steelyard.science.log.explanations import Cause
from steelyard.science.log.reader import maintenance_of, read_log, trend_of_log
from steelyard.science.log.steps import lay_steps, nothing_counted
from steelyard.science.log.trend_reading import Trend
from steelyard.science.measures import ACTIVITY_ERROR, assess, kept_kcal, step_kcal
from steelyard.science.numbers import Estimate

PERSON = lifter(age_years=34.0, weight_kg=86.0, fat=0.2, sessions=3)
ASSESSED = assess(PERSON)
FIRST = 738_000
PER_STEP = float(step_kcal(1.0, ASSESSED.resting.mean))


def weighed(days: int, steps: Sequence[StepsDay] = (), *, gain_kg: float = -0.03, intake_kcal: float = 2150.0) -> Log:
    weights = [Weighing(FIRST + day, 86.0 + gain_kg * day + 0.3 * (-1) ** day) for day in range(days)]
    return Log(
        weights, [IntakeDay(FIRST + day, intake_kcal + 90.0 * (day % 3 - 1)) for day in range(days)], steps=steps
    )


def level(*fortnights: float, first: int = 0) -> list[StepsDay]:
    """Fortnights of steps about the same mean each."""
    days = [mean + 600.0 * (day % 7 - 3) for mean in fortnights for day in range(14)]
    return [StepsDay(FIRST + first + day, steps) for day, steps in enumerate(days)]


def read(log: Log, day: int) -> Trend:
    return trend_of_log(PERSON, ASSESSED, log, FIRST + day)[0]


# --- cleaning --------------------------------------------------------------------------------------------


def test_what_nobody_walks_and_what_differs_is_set_aside_and_named_once() -> None:
    entries = [
        StepsDay(FIRST + 3, 8000.0), StepsDay(FIRST, 61_000.0), StepsDay(FIRST + 1, 0.0), StepsDay(FIRST + 2, 7000.0),
        StepsDay(FIRST + 2, 7100.0), StepsDay(FIRST + 3, 8000.0), StepsDay(FIRST - 30, 5000.0),
        StepsDay(FIRST + 1, 0.0),
    ]  # fmt: skip
    daily = clean_log(weighed(5, entries), FIRST + 4)
    assert list(daily.steps) == [StepsDay(FIRST - 30, 5000.0), StepsDay(FIRST + 3, 8000.0)]
    assert daily.first_day == FIRST
    notes = {note.code: note.params for note in daily.notes if note.code in codes(daily.notes)}
    assert notes["LOG_STEPS_SET_ASIDE"]["count"] == 2
    assert notes["LOG_STEPS_TWICE"]["count"] == 1


@pytest.mark.parametrize(
    ("entry", "code", "field"),
    [
        (StepsDay(FIRST + 9, 8000.0), "LOG_ENTRY_IN_FUTURE", "log.steps[1].date"),
        (StepsDay(FIRST, float("nan")), "LOG_STEPS_NOT_A_NUMBER", "log.steps[1].steps"),
    ],
)
def test_what_cannot_be_meant_is_refused_by_name(entry: StepsDay, code: str, field: str) -> None:
    with pytest.raises(LogError) as refusal:
        clean_log(weighed(5, [StepsDay(FIRST, 8000.0), entry]), FIRST + 4)
    assert (refusal.value.code, refusal.value.field) == (code, field)


def test_the_log_ends_with_its_last_steps_and_begins_with_a_weighing_or_intake() -> None:
    log = weighed(5, [StepsDay(FIRST - 3, 8000.0), StepsDay(FIRST + 7, 8000.0)])
    assert (log.first_day, log.last_day) == (FIRST, FIRST + 7)


# --- what they move --------------------------------------------------------------------------------------


def test_steady_steps_or_few_days_of_them_move_nothing() -> None:
    plain = read(weighed(42), 41)
    for steps in ([StepsDay(FIRST + day, 8000.0) for day in range(42)], level(9000.0, first=36)[:6]):
        found = read(weighed(42, steps), 41)
        assert found.maintenance == plain.maintenance
        assert list(found.smoothed.weight_kg) == list(plain.smoothed.weight_kg)


def test_known_past_does_not_change_by_later_steps() -> None:
    steps = level(9500.0, 9500.0, 4000.0)
    early, late = read(weighed(42, steps[:28]), 41), read(weighed(42, steps), 41)
    same = slice(0, 29)  # the 28th day's own steps act on the day after it
    for name in ("weight_kg", "weekly_rate_kg", "maintenance_kcal", "maintenance_sd_kcal"):
        assert list(getattr(early.causal, name))[same] == list(getattr(late.causal, name))[same]
    assert list(early.causal.maintenance_kcal)[29:] != list(late.causal.maintenance_kcal)[29:]


def test_the_last_day_is_not_over_and_does_not_act() -> None:
    steps = level(9500.0, 9500.0, 4000.0)
    assert read(weighed(42, [*steps[:41], StepsDay(FIRST + 41, 30_000.0)]), 41).maintenance == (
        read(weighed(42, steps[:41]), 41).maintenance
    )


def test_before_the_scale_can_tell_maintenance_has_moved_by_what_counts() -> None:
    """A fortnight after a fall, the scale seen but once: the known change is there, less what the mean lags."""
    sparse = replace(weighed(29), weighings=[Weighing(FIRST, 86.0)])
    plain, told = (read(replace(sparse, steps=s), 28).maintenance.physical for s in ((), level(9500.0, 4500.0)))
    expected = kept_kcal(Estimate(5000.0 * PER_STEP, 0.0)).mean
    assert 0.8 * expected < plain.mean - told.mean < expected
    assert told.sd > plain.sd  # what the body takes back is not known


@pytest.mark.parametrize("jump", [4000.0, -4000.0])
def test_what_steps_lay_adds_up_to_how_far_the_week_has_left_the_month(jump: float) -> None:
    """Running means in closed form: ``k`` days after a jump a mean over ``n`` days lacks ``(1 - 1 / n) ** k`` of it."""
    long, days, per_kcal = 60, 9, 1.0 / 8000.0
    steps = [StepsDay(FIRST + day, 8000.0 if day < long else 8000.0 + jump) for day in range(long + days)]
    daily = clean_log(weighed(long + days + 1, steps), FIRST + long + days)
    columns = [0.0] * (k.COLUMNS * (long + days + 1))
    assert lay_steps(daily, nothing_counted(PER_STEP), per_kcal, columns) is not None
    a_step = kept_kcal(Estimate(PER_STEP, ACTIVITY_ERROR * PER_STEP))
    week, month = 1.0 - (6 / 7) ** days, 1.0 - (27 / 28) ** days
    assert sum(columns[k.ACTIVITY :: k.COLUMNS]) == pytest.approx(per_kcal * a_step.mean * jump * week)
    expected = (per_kcal * a_step.sd * jump * (week - month)) ** 2
    assert sum(columns[k.ACTIVITY_VARIANCE :: k.COLUMNS]) == pytest.approx(expected)


# --- the odds --------------------------------------------------------------------------------------------


def odds(trend: Trend) -> dict[Cause, float]:
    assert trend.explained is not None
    return {each.cause: each.probability for each in trend.explained.causes}


def test_a_fall_of_steps_speaks_for_maintenance_and_steady_steps_for_logging() -> None:
    def stalled(*fortnights: float) -> dict[Cause, float]:
        return odds(read(weighed(56, level(*fortnights), gain_kg=0.0, intake_kcal=2300.0), 55))

    plain, steady = stalled(), stalled(8000.0, 8000.0, 8000.0, 8000.0)
    fell, rose = stalled(10_500.0, 10_500.0, 6000.0, 6000.0), stalled(6000.0, 6000.0, 10_500.0, 10_500.0)
    maintenance = [each[Cause.MAINTENANCE] for each in (fell, plain, steady, rose)]
    assert all(more > less + 0.03 for more, less in pairwise(maintenance))
    assert fell[Cause.LOGGING] < plain[Cause.LOGGING] - 0.03 < steady[Cause.LOGGING] - 0.06
    for each in (plain, fell, steady, rose):
        assert sum(each.values()) == pytest.approx(1.0)


# --- what is told ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("fortnights", "code"),
    [
        ((9500.0, 6500.0), "TREND_STEPS_FEWER"),
        ((6500.0, 9500.0), "TREND_STEPS_MORE"),
        ((6500.0, 7000.0), "TREND_STEPS_STEADY"),
    ],
)
def test_the_last_fortnight_is_told_beside_the_one_before(fortnights: tuple[float, float], code: str) -> None:
    lately = read(weighed(29, level(*fortnights)), 28).steps
    assert lately is not None
    assert (lately.before, lately.mean) == pytest.approx(fortnights)
    assert lately.worth_kcal is not None
    assert lately.worth_kcal.mean == pytest.approx(0.5 * PER_STEP * (fortnights[1] - fortnights[0]))
    assert lately.says is not None
    assert codes([lately.says]) == [code]


def test_too_few_days_tell_nothing() -> None:
    assert read(weighed(29), 28).steps is None
    assert read(weighed(29, level(8000.0, first=24)[:4]), 28).steps is None
    alone = read(weighed(29, level(8000.0, first=14)), 28).steps
    assert alone is not None
    assert (alone.before, alone.worth_kcal, alone.says) == (None, None, None)


# --- another world ---------------------------------------------------------------------------------------


def lived(rng: random.Random, days: int, fall: float, kept: float) -> tuple[Log, float]:
    """A member on a diet who walks ``fall`` steps a day fewer from day 14 on, and their settled maintenance as they log
    it."""
    per_step = PER_STEP * (1.0 + rng.gauss(0.0, 0.15))
    base, ratio = ASSESSED.total.mean * (1.0 + rng.gauss(0.0, 0.08)), min(1.05, max(0.55, rng.gauss(0.86, 0.1)))
    rho, usual = rng.gauss(8500.0, 900.0), rng.uniform(7000.0, 12_000.0)
    tissue, water, adapted, settled = 86.0, 0.0, 0.0, 0.0
    weights, intakes, steps = [], [], []
    for day in range(days):
        walks = usual - (fall if day >= 14 else 0.0)
        walked = max(300.0, rng.gauss(walks, 2500.0))
        settled = base + 22.0 * (tissue - 86.0) + kept * per_step * (walks - usual)
        eaten = (base - 450.0) * (1.0 + rng.gauss(0.0, 0.1))
        adapted += (0.14 * (eaten - settled) - adapted) / 14.0
        spent = settled + kept * per_step * (walked - walks) + adapted + 0.1 * (eaten - settled)
        weights.append(Weighing(FIRST + day, round(tissue + water + rng.gauss(0.0, 0.45), 1)))
        intakes.append(IntakeDay(FIRST + day, round(eaten * ratio * (1.0 + rng.gauss(0.0, 0.04)))))
        steps.append(StepsDay(FIRST + day, round(walked)))
        tissue += (eaten - spent) / rho
        water = 0.9 * water + rng.gauss(0.0, 0.13)
    return Log(weights, intakes, steps=steps), settled * ratio


@pytest.mark.parametrize("kept", [None, 1.0])
def test_maintenance_follows_a_fall_of_steps_sooner_and_nearer(kept: float | None) -> None:
    """120 members, read two weeks after the fall and three: nearer, and over both no less often inside the interval, or
    as often as an interval of 80 % promises.

    ``kept``: what the body does not take back, by person, or all of it (none is compensated: outside our prior's mean).
    """
    inside = {"without": 0, "with": 0}
    for day in (28, 35):
        off: dict[str, list[float]] = {"without": [], "with": []}
        for seed in range(120):
            rng = random.Random(seed)
            log, truth = lived(rng, day + 1, 5000.0, rng.gauss(0.5, 0.3) if kept is None else kept)
            for name, each in (("without", replace(log, steps=())), ("with", log)):
                found = maintenance_of(read_log(PERSON, ASSESSED, each, FIRST + day), ASSESSED).maintenance
                off[name].append(found.mean - truth)
                inside[name] += found.lower < truth < found.upper
        assert fmean(off["with"]) < fmean(off["without"]) - 20.0
        assert fmean(x * x for x in off["with"]) < 0.95 * fmean(x * x for x in off["without"])
    assert inside["with"] >= min(inside["without"], 0.78 * 2 * 120)


def test_steady_walkers_are_read_as_well_as_without_steps() -> None:
    off: dict[str, list[float]] = {"without": [], "with": []}
    for seed in range(80):
        rng = random.Random(seed)
        log, truth = lived(rng, 36, 0.0, rng.gauss(0.5, 0.3))
        for name, each in (("without", replace(log, steps=())), ("with", log)):
            found = maintenance_of(read_log(PERSON, ASSESSED, each, FIRST + 35), ASSESSED)
            off[name].append(found.maintenance.mean - truth)
    assert fmean(x * x for x in off["with"]) < 1.03 * fmean(x * x for x in off["without"])
