"""The rise of weight around menstruation: its shape, its size as learnt, and what it is for."""

import math

import pytest
from science.log.test_trend import FIRST, VIEW_COLUMNS, read, simulated
from scipy.stats import truncnorm
from steelyard.science.log import cycle
from steelyard.science.log.cleaning import clean_log
from steelyard.science.log.cycle import CYCLE_RISE_KG, CYCLE_RISE_SD_KG, CycleRise, cycle_rise
from steelyard.science.log.entries import Log, Weighing
from steelyard.science.log.trend_reading import Trend, not_negative
from steelyard.science.numbers.estimate import Estimate

DAYS = 80
STARTS = (-10, 19, 47, 76)


def test_the_rise_is_highest_at_menstruation_and_gone_a_week_later() -> None:
    rise = cycle_rise(STARTS, 0, DAYS).share
    assert min(rise[19], rise[20], rise[47]) > 0.9
    assert max(rise[29], rise[57]) == 0.0
    assert rise[37] < 0.02  # the second half of the cycle, before water gathers
    assert 0.1 < rise[44] < rise[46] < 1.0
    assert max(rise) <= 1.0
    assert min(rise) >= 0.0


def test_it_is_least_sure_where_it_comes_and_goes_and_more_so_before_two_dates_tell_a_length() -> None:
    course = cycle_rise(STARTS, 0, DAYS)
    coming, whole, going, between = 44, 47, 51, 60
    assert min(course.unsure[coming], course.unsure[going]) > 10.0 * course.unsure[whole]
    assert course.unsure[between] < 1e-4
    assert course.late[coming] < 0.0 < course.late[going]
    # Of the first cycle of the log no length is known: the same days before its end are less sure.
    assert cycle_rise((19,), 0, DAYS).unsure[42] > cycle_rise((-37, -9, 19), 0, DAYS).unsure[42]


def test_what_a_day_later_adds_is_the_slope_of_the_share() -> None:
    course = cycle_rise(STARTS, 0, DAYS)
    for day in (50, 51, 52):
        assert course.late[day] == pytest.approx((course.share[day - 1] - course.share[day + 1]) / 2.0, abs=0.03)


def test_the_shape_never_looks_ahead() -> None:
    whole = cycle_rise(STARTS, 0, DAYS)
    for known in (1, 2, 3):
        until = STARTS[known]
        assert cycle_rise(STARTS[:known], 0, until) == CycleRise(*(column[:until] for column in whole))


def test_nothing_is_assumed_before_the_first_date_or_long_after_the_last() -> None:
    rise = cycle_rise((20,), 0, 90).share
    assert rise[:20] == [0.0] * 20
    assert rise[70:] == [0.0] * 20


def test_whatever_dates_are_told_little_of_them_is_kept() -> None:
    """A course is kept for the next log with the same days to or from a start. Of dates of years before a log every
    day was kept for ever."""
    cycle_rise((0, 28), 0, 60)
    for length in (21, 28, 35):
        cycle_rise((0, length), length, 5000)
    kept = [each.cache_info().currsize for each in vars(cycle).values() if hasattr(each, "cache_info")]
    assert 0 < sum(kept) < 300


def with_cycle(days: int, size_kg: float, seed: int = 2) -> tuple[Log, tuple[int, ...]]:
    """A slow loss of tissue (about 0.35 kg a week) whose last day is the height of the rise."""
    starts = tuple(FIRST + days - 28 * k for k in (3, 2, 1))
    rise = cycle_rise(starts, FIRST, days).share
    plain = simulated(days, intake_kcal=2200.0, seed=seed, noise_kg=0.3)
    weighings = [Weighing(w.day, w.weight_kg + size_kg * rise[w.day - FIRST]) for w in plain.weighings]
    return Log(weighings, plain.intakes), starts


def test_a_luteal_rise_is_no_stall() -> None:
    """Of eight logs: told the dates, the rate is that of the same log without the rise."""
    told, without, truth = [], [], []
    for seed in range(8):
        log, starts = with_cycle(42, 1.6, seed)
        without.append(read(log, FIRST + 41))
        told.append(read(Log(log.weighings, log.intakes, starts), FIRST + 41))
        truth.append(read(simulated(42, intake_kcal=2200.0, seed=seed, noise_kg=0.3), FIRST + 41))

    def off(trends: list[Trend]) -> float:
        return sum(abs(t.lasting_rate.mean - plain.lasting_rate.mean) for t, plain in zip(trends, truth, strict=True))

    assert off(told) < 0.5 * off(without)
    assert sum(t.stall_probability or 0.0 for t in told) < sum(t.stall_probability or 0.0 for t in without)
    for trend in told:
        size: Estimate | None = trend.cycle
        assert size is not None
        assert CYCLE_RISE_KG < size.mean < 2.0  # on the way from what is usual to what is hers
        assert size.sd < 0.8 * CYCLE_RISE_SD_KG
    assert all(trend.cycle is None for trend in without)


def stepped(log: Log, day: int, size_kg: float) -> Log:
    """The same on another scale from a day on."""
    return Log([Weighing(w.day, w.weight_kg + (size_kg if w.day >= FIRST + day else 0.0)) for w in log.weighings],
               log.intakes, log.cycle_starts)  # fmt: skip


@pytest.mark.parametrize("size_kg", [2.0, -2.0])
def test_another_scale_is_no_tissue_where_a_cycle_is_told_either(size_kg: float) -> None:
    """Of six logs: while the rise took the place of what stays, three quarters of the step were read as tissue."""
    moved = []
    for seed in range(6):
        plain, starts = with_cycle(84, 0.5, seed)
        told = Log(plain.weighings, plain.intakes, starts)
        before, after = read(told, FIRST + 83), read(stepped(told, 50, size_kg), FIRST + 83)
        moved.append((after.changes[-1].tissue.mean - before.changes[-1].tissue.mean) / size_kg)
        assert after.changes[-1].tissue.sd > before.changes[-1].tissue.sd
    assert sum(moved) / len(moved) < 0.4


def test_a_rise_that_comes_early_or_late_is_learnt_to_do_so() -> None:
    """Six logs each of half a year, with a rise of 0.9 kg two days off: weight without it is that of the same log that
    never had one. With the timing taken for known it is off by 0.08 kg."""
    starts = tuple(FIRST - 20 + 28 * k for k in range(7))
    off = []
    for late in (-2, 2):
        rise = cycle_rise(starts, FIRST - late, 168).share
        for seed in range(6):
            plain = simulated(168, intake_kcal=2200.0, seed=seed, noise_kg=0.25)
            risen = [Weighing(w.day, w.weight_kg + 0.9 * rise[w.day - FIRST]) for w in plain.weighings]
            told, truth = read(Log(risen, plain.intakes, starts), FIRST + 167), read(plain, FIRST + 167)
            pairs = zip(told.smoothed.weight_kg, truth.smoothed.weight_kg, strict=True)
            off += [(found - there) ** 2 for found, there in pairs]
    assert (sum(off) / len(off)) ** 0.5 < 0.072


def test_a_rise_is_never_said_to_be_a_fall() -> None:
    for seed in range(8):
        log, starts = with_cycle(42, -0.8, seed)
        size = read(Log(log.weighings, log.intakes, starts), FIRST + 41).cycle
        assert size is not None
        assert 0.0 < size.mean < CYCLE_RISE_KG
        assert size.sd > 0.0


@pytest.mark.parametrize("at", [-200.0, -31.0, -29.0, -12.0, -8.4, -3.0, 0.0, 2.0])
def test_what_is_left_of_a_rise_is_a_truncated_normal_however_far_under_nothing_it_lies(at: float) -> None:
    """Against scipy's ``truncnorm``. An exponential stands in from thirty SDs on: the next term of the tail's series
    (Abramowitz & Stegun 26.2.12) takes 2 / at^2 off its mean and 3 / at^2 off its SD."""
    found = not_negative(Estimate(0.04 * at, 0.04))
    mean, variance = truncnorm.stats(-at, math.inf, loc=0.04 * at, scale=0.04, moments="mv")
    within = 4.0 / at**2 if at < -30.0 else 1e-6
    assert found.mean == pytest.approx(mean, rel=within)
    assert found.sd == pytest.approx(variance**0.5, rel=within)


def test_who_always_weighs_less_at_menstruation_is_still_answered() -> None:
    """A year with a fall of a kilogram and a half, told by many weighings: no rise, and no division by its odds."""
    starts = tuple(FIRST - 20 + 28 * each for each in range(14))
    share = cycle_rise(starts, FIRST, 365).share
    plain = simulated(365, intake_kcal=2700.0, noise_kg=0.25)
    fallen = [Weighing(w.day, w.weight_kg - 1.5 * share[w.day - FIRST]) for w in plain.weighings]
    size = read(Log(fallen, plain.intakes, starts), FIRST + 364).cycle
    assert size is not None
    assert 0.0 < size.mean < 0.05


def test_a_cycle_keeps_the_causal_view_causal() -> None:
    log, starts = with_cycle(70, 0.8)
    whole = read(Log(log.weighings, log.intakes, starts), FIRST + 69)
    for last in (20, 33, 41, 55):
        part = Log(
            [w for w in log.weighings if w.day <= FIRST + last],
            [i for i in log.intakes if i.day <= FIRST + last],
            [s for s in starts if s <= FIRST + last],
        )
        earlier = read(part, FIRST + last)
        for name in VIEW_COLUMNS:
            assert getattr(whole.causal, name)[: last + 1] == getattr(earlier.causal, name), (last, name)


def test_a_date_to_come_does_not_count() -> None:
    log = simulated(20)
    known = Log(log.weighings, log.intakes, (FIRST,))
    assert clean_log(Log(log.weighings, log.intakes, (FIRST, FIRST + 30)), FIRST + 19) == clean_log(known, FIRST + 19)
    assert clean_log(Log(log.weighings, log.intakes, (FIRST + 30,)), FIRST + 19).cycle_rise is None


def test_a_day_told_after_the_last_weighing_is_the_last_of_the_log() -> None:
    """The first day of a menstruation is told on that day, whether or not somebody stood on a scale."""
    log = simulated(20)
    later = Log(log.weighings, log.intakes, (FIRST, FIRST + 22))
    assert later.last_day == FIRST + 22
    assert clean_log(later, later.last_day).first_day == FIRST
    assert Log(log.weighings, log.intakes, (FIRST, FIRST + 40)).last_day == log.last_day
