"""The rise of weight around menstruation: its shape, its size as learnt, and what it is for."""

import pytest
from science.log.test_trend import FIRST, PRIOR, VIEW_COLUMNS, body, simulated
from steelyard.science.log.cleaning import clean_log
from steelyard.science.log.cycle import CYCLE_RISE_KG, CYCLE_RISE_SD_KG, cycle_rise
from steelyard.science.log.entries import Log, LogError, Weighing
from steelyard.science.log.trend_reading import Trend, read_trend
from steelyard.science.numbers.estimate import Estimate

DAYS = 80
STARTS = (-10, 19, 47, 76)


def test_the_rise_is_whole_at_menstruation_and_gone_a_week_later() -> None:
    rise = cycle_rise(STARTS, 0, DAYS)
    assert rise[19] == rise[20] == rise[47] == 1.0
    assert rise[26] == rise[54] == 0.0
    assert rise[40] == 0.0  # the second half of the cycle, before water gathers
    assert 0.0 < rise[44] < rise[46] < 1.0
    assert max(rise) <= 1.0
    assert min(rise) >= 0.0


def test_the_shape_never_looks_ahead() -> None:
    whole = cycle_rise(STARTS, 0, DAYS)
    for known in (1, 2, 3):
        until = STARTS[known]
        assert cycle_rise(STARTS[:known], 0, until) == whole[:until]


def test_nothing_is_assumed_before_the_first_date_or_long_after_the_last() -> None:
    rise = cycle_rise((20,), 0, 90)
    assert rise[:20] == [0.0] * 20
    assert rise[70:] == [0.0] * 20


def read(log: Log, as_of: int) -> Trend:
    daily = clean_log(log, as_of)
    return read_trend(daily, PRIOR, body(daily))


def with_cycle(days: int, size_kg: float, seed: int = 2) -> tuple[Log, tuple[int, ...]]:
    """A slow loss of tissue (about 0.35 kg a week) whose last day is the height of the rise."""
    starts = tuple(FIRST + days - 28 * k for k in (3, 2, 1))
    rise = cycle_rise(starts, FIRST, days)
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


def test_a_date_to_come_is_refused_by_name() -> None:
    log = simulated(20)
    with pytest.raises(LogError) as refusal:
        clean_log(Log(log.weighings, log.intakes, (FIRST, FIRST + 30)), FIRST + 19)
    assert (refusal.value.code, refusal.value.field) == ("LOG_ENTRY_IN_FUTURE", "log.cycle[1]")


def test_a_day_told_after_the_last_weighing_is_the_last_of_the_log() -> None:
    """The first day of a menstruation is told on that day, whether or not somebody stood on a scale."""
    log = simulated(20)
    later = Log(log.weighings, log.intakes, (FIRST, FIRST + 22))
    assert later.last_day == FIRST + 22
    assert clean_log(later, later.last_day).first_day == FIRST
    assert Log(log.weighings, log.intakes, (FIRST, FIRST + 40)).last_day == log.last_day
