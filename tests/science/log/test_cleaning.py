"""Cleaning of logs: what is repaired, set aside or refused, and what is said of it."""

import pytest
from science.log.test_trend import FIRST, codes, read, simulated
from steelyard.science.log.cleaning import clean_log
from steelyard.science.log.entries import IntakeDay, Log, LogError, Weighing


def weigh(*kilograms: float) -> Log:
    return Log([Weighing(FIRST + day, kg) for day, kg in enumerate(kilograms)])


def test_several_weighings_a_day_are_averaged_with_less_noise() -> None:
    daily = clean_log(Log([Weighing(FIRST, 80.0, 0), Weighing(FIRST, 81.0, 1), Weighing(FIRST + 1, 80.2)]), FIRST + 1)
    assert daily.weight_kg == [80.5, 80.2]
    assert 0.5 < daily.noise_scale[0] < 1.0
    assert daily.noise_scale[1] == 1.0


def test_weighings_of_a_day_are_read_in_their_order_however_they_are_sent() -> None:
    """The second is far from the three before but not from the first; sent the other way round, one was set aside."""
    before = [Weighing(FIRST + day, kg) for day, kg in enumerate((49.6, 48.0, 50.2))]
    first, second = Weighing(FIRST + 3, 47.0, 0), Weighing(FIRST + 3, 52.1, 1)
    one, other = (clean_log(Log([*before, *pair]), FIRST + 3) for pair in ((first, second), (second, first)))
    assert one.weight_kg == other.weight_kg
    assert one.weight_kg[-1] == pytest.approx(49.55)
    assert one.notes == other.notes


def test_disorder_is_sorted_and_noted() -> None:
    entries = [Weighing(FIRST + 2, 80.4), Weighing(FIRST, 80.0), Weighing(FIRST + 1, 80.2)]
    daily = clean_log(Log(entries), FIRST + 2)
    assert daily.weight_kg == [80.0, 80.2, 80.4]
    assert "LOG_SORTED" in codes(daily.notes)
    assert clean_log(Log(sorted(entries, key=lambda e: e.day)), FIRST + 2).weight_kg == daily.weight_kg


@pytest.mark.parametrize("position", [0, 1, 3])
@pytest.mark.parametrize("factor", [2.20462262, 1 / 2.20462262])
def test_a_weight_in_the_wrong_unit_is_read_and_noted(position: int, factor: float) -> None:
    kilograms = [80.0, 80.4, 79.8, 80.2]
    kilograms[position] *= factor
    daily = clean_log(weigh(*kilograms), FIRST + 3)
    assert daily.weight_kg == pytest.approx([80.0, 80.4, 79.8, 80.2], abs=0.01)
    assert "LOG_UNIT_MIX_UP" in codes(daily.notes)


@pytest.mark.parametrize(
    ("log", "code", "field"),
    [
        (weigh(80.0, -1.0), "LOG_WEIGHT_NOT_A_NUMBER", "log.weights[1].weight_kg"),
        (weigh(float("nan")), "LOG_WEIGHT_NOT_A_NUMBER", "log.weights[0].weight_kg"),
        (Log([]), "LOG_WITHOUT_WEIGHT", "log.weights"),
        (Log([Weighing(FIRST + 9, 80.0)]), "LOG_ENTRY_IN_FUTURE", "log.weights[0].date"),
        (Log([Weighing(FIRST, 80.0)], [IntakeDay(FIRST + 9, 2e3)]), "LOG_ENTRY_IN_FUTURE", "log.intakes[0].date"),
        (
            Log([Weighing(FIRST, 80.0)], [IntakeDay(FIRST, -1.0)]),
            "LOG_INTAKE_NOT_A_NUMBER",
            "log.intakes[0].intake_kcal",
        ),
    ],
)
def test_what_cannot_be_meant_is_refused_by_name(log: Log, code: str, field: str) -> None:
    with pytest.raises(LogError) as refusal:
        clean_log(log, FIRST + 5)
    assert (refusal.value.code, refusal.value.field) == (code, field)


LEVEL = [80.0, 80.4, 79.8, 80.2, 79.9, 80.1, 80.3]


@pytest.mark.parametrize("position", [0, 1, 3, 6])
@pytest.mark.parametrize(
    ("given", "code"),
    [(90.2, "LOG_WEIGHT_SET_ASIDE"), (68.0, "LOG_WEIGHT_SET_ASIDE"), (8.02, "LOG_WEIGHT_DECIMAL"),
     (802.0, "LOG_WEIGHT_DECIMAL"), (120.0, "LOG_WEIGHT_SET_ASIDE")],
)  # fmt: skip
def test_a_slip_is_set_aside_and_named_and_the_rest_is_read(position: int, given: float, code: str) -> None:
    kilograms = list(LEVEL)
    kilograms[position] = given
    daily = clean_log(weigh(*kilograms), FIRST + 6, 80.0)
    assert daily.is_weighed == [float(at != position) for at in range(7)]
    assert [kg for kg in daily.weight_kg if kg] == [kg for at, kg in enumerate(LEVEL) if at != position]
    assert codes(daily.notes).count(code) == 1


def test_a_log_all_of_which_is_set_aside_is_refused_by_name() -> None:
    with pytest.raises(LogError) as refusal:
        clean_log(weigh(7.9), FIRST, 80.0)
    assert (refusal.value.code, refusal.value.field) == ("LOG_WITHOUT_WEIGHT", "log.weights")


def test_five_mornings_of_another_are_set_aside_and_what_goes_on_is_believed() -> None:
    own, theirs = [80.0, 80.2, 79.9], [66.0, 65.8, 66.2, 66.1, 65.9]
    daily = clean_log(weigh(*own, *theirs, 80.1, 79.8), FIRST + 9)
    assert daily.is_weighed == [*[1.0] * 3, *[0.0] * 5, *[1.0] * 2]
    daily = clean_log(weigh(*own, *theirs, 66.0, 66.3), FIRST + 9)
    assert daily.is_weighed == [*[1.0] * 3, *[0.0] * 5, *[1.0] * 2]


def test_two_people_by_turns_are_no_spell() -> None:
    """Each morning of another stands alone: six of them say no more than one."""
    daily = clean_log(weigh(*[80.0, 66.0] * 7), FIRST + 13)
    assert daily.is_weighed == [1.0, 0.0] * 7


def test_what_lasts_a_fortnight_is_believed_however_seldom_it_is_weighed() -> None:
    weighings = [Weighing(FIRST + day, kg) for day, kg in ((0, 80.0), (1, 80.2), (2, 70.0), (9, 70.2), (16, 70.1))]
    daily = clean_log(Log(weighings, ()), FIRST + 16)
    assert [day for day, seen in enumerate(daily.is_weighed) if seen] == [0, 1, 16]


def test_what_was_sent_twice_counts_once() -> None:
    twice = Log(
        [Weighing(FIRST, 80.0, 0), Weighing(FIRST, 80.0, 0), Weighing(FIRST + 1, 80.2)],
        [
            IntakeDay(FIRST, 2200.0),
            IntakeDay(FIRST, 2200.0),
            IntakeDay(FIRST + 1, 2100.0),
            IntakeDay(FIRST + 1, 2500.0),
        ],
    )
    daily = clean_log(twice, FIRST + 1)
    assert daily.noise_scale == [1.0, 1.0]
    assert daily.is_logged == [1.0, 0.0]
    assert {"LOG_WEIGHT_TWICE", "LOG_INTAKE_TWICE"} <= set(codes(daily.notes))


def test_kilojoules_and_a_lost_digit_are_set_aside_and_a_fast_is_not() -> None:
    eaten = [2300.0, 2250.0, 9600.0, 230.0, 1.0, 2400.0]
    log = Log([Weighing(FIRST, 80.0)], [IntakeDay(FIRST + at, kcal) for at, kcal in enumerate(eaten)])
    daily = clean_log(log, FIRST + 5)
    assert daily.is_logged == [1.0, 1.0, 0.0, 0.0, 1.0, 1.0]
    assert {"LOG_INTAKE_KILOJOULES", "LOG_INTAKE_SET_ASIDE"} <= set(codes(daily.notes))
    whole = Log([Weighing(FIRST, 80.0)], [IntakeDay(FIRST + at, 9700.0 + 100.0 * at) for at in range(6)])
    assert sum(clean_log(whole, FIRST + 6, usual_kcal=2400.0).is_logged) == 0.0


def test_days_of_nothing_are_days_that_were_not_logged_and_said_to_be() -> None:
    """Believed, the zeros that an app sends of days without entries took 216 kcal/d off what is spent."""
    eaten = [2300.0, 0.0, 2250.0, 0.0, 2400.0, 2350.0]
    sent = [IntakeDay(FIRST + at, kcal) for at, kcal in enumerate(eaten)]
    daily = clean_log(Log([Weighing(FIRST, 80.0)], sent), FIRST + 6)
    without = clean_log(Log([Weighing(FIRST, 80.0)], [entry for entry in sent if entry.intake_kcal]), FIRST + 6)
    assert daily.is_logged == without.is_logged == [1.0, 0.0, 1.0, 0.0, 1.0, 1.0, 0.0]
    assert daily.intake_kcal == without.intake_kcal
    assert {note.code: note.params for note in daily.notes}["LOG_INTAKE_NOTHING"] == {"count": 2}
    assert "LOG_INTAKE_NOTHING" not in codes(without.notes)


KILOJOULES = 4.184
CUT = (1580.0, 1900.0, 1350.0, 1620.0, 2150.0, 1490.0, 1700.0)  # a week of somebody who usually eats 2,350


@pytest.mark.parametrize("switched", [0, 3, 14])
def test_a_deficit_in_kilojoules_passes_on_no_day_for_kilocalories(switched: int) -> None:
    """From the first day, within a week, or after two weeks in kilocalories; most days are under 2.8 times usual."""
    eaten = [CUT[at % 7] * (KILOJOULES if at >= switched else 1.0) for at in range(42)]
    log = Log([Weighing(FIRST, 80.0)], [IntakeDay(FIRST + at, round(kcal)) for at, kcal in enumerate(eaten)])
    daily = clean_log(log, FIRST + 42, 80.0, 2350.0)
    believed = [at for at, logged in enumerate(daily.is_logged) if logged]
    # One may pass where they begin, as a feast would: the next one settles it.
    assert believed in (list(range(switched)), list(range(switched + 1)))
    assert max(daily.intake_kcal) < 2.8 * 2350.0
    assert codes(daily.notes).count("LOG_INTAKE_KILOJOULES") == 1


def test_a_feast_on_the_first_day_of_a_log_is_eaten() -> None:
    eaten = [1.8 * 2350.0] + [2350.0] * 8
    log = Log([Weighing(FIRST, 80.0)], [IntakeDay(FIRST + at, kcal) for at, kcal in enumerate(eaten)])
    assert clean_log(log, FIRST + 8, 80.0, 2350.0).is_logged == [1.0] * 9


@pytest.mark.parametrize(("first", "second", "is_believed"), [(2.1, 2.2, True), (2.1, 2.35, False), (2.0, 2.35, True)])
def test_a_second_day_is_read_in_the_unit_that_it_is_nearer_to(first: float, second: float, is_believed: bool) -> None:
    """Half way by ratio between 1 and 4.184 times the habit lies their geometric mean, 2.05. The first day passes, and
    moves the habit by a tenth of what it is over: to 1.11 (or 1.1), and the bound of the second to 2.27."""
    eaten = [2350.0] * 7 + [2350.0 * first, 2350.0 * second]
    log = Log([Weighing(FIRST, 80.0)], [IntakeDay(FIRST + at, kcal) for at, kcal in enumerate(eaten)])
    daily = clean_log(log, FIRST + 8, 80.0, 2350.0)
    assert daily.is_logged[7:] == [1.0, float(is_believed)]


def test_a_feast_of_two_days_is_eaten_and_who_goes_back_to_kilocalories_is_read_again() -> None:
    eaten = [2300.0, 2400.0, 4500.0, 3600.0, 2300.0, 9800.0, 10100.0, 2400.0, 2250.0]
    log = Log([Weighing(FIRST, 80.0)], [IntakeDay(FIRST + at, kcal) for at, kcal in enumerate(eaten)])
    daily = clean_log(log, FIRST + 9, 80.0, 2350.0)
    assert [at for at, logged in enumerate(daily.is_logged) if not logged] == [5, 6, 9]


@pytest.mark.parametrize("off_kg", [-10.0, 14.0])
@pytest.mark.parametrize("mornings", [1, 2, 3, 4])
def test_the_first_mornings_of_somebody_else_are_set_aside(mornings: int, off_kg: float) -> None:
    kilograms = [88.0 + 0.1 * (at % 3) + (off_kg if at < mornings else 0.0) for at in range(12)]
    daily = clean_log(weigh(*kilograms), FIRST + 11, 88.0)
    assert [at for at, seen in enumerate(daily.is_weighed) if not seen] == list(range(mornings))
    assert codes(daily.notes).count("LOG_WEIGHT_SET_ASIDE") == mornings


def test_a_log_from_before_the_stated_weight_is_read_from_its_first_day() -> None:
    """Who weighs themselves once a month, and weighs a fifth less today than when they began."""
    entries = [Weighing(FIRST + 30 * at, 100.0 - 2.5 * at) for at in range(9)]
    assert sum(clean_log(Log(entries), FIRST + 240, 80.0).is_weighed) == 9.0


def test_a_slip_of_ten_kilograms_on_the_first_day_changes_nothing() -> None:
    log = simulated(40, missing=0.0)
    spoilt = [Weighing(e.day, e.weight_kg + (10.0 if e.day == FIRST else 0.0)) for e in log.weighings]
    plain, found = read(log, FIRST + 39), read(Log(spoilt, log.intakes), FIRST + 39)
    assert found.changes[-1].tissue.mean == pytest.approx(plain.changes[-1].tissue.mean, abs=0.3)
    assert found.changes[-1].carried.mean == pytest.approx(plain.changes[-1].carried.mean, abs=0.3)


def test_a_slow_change_over_a_gap_is_believed() -> None:
    daily = clean_log(Log([Weighing(FIRST, 100.0), Weighing(FIRST + 120, 78.0)]), FIRST + 120)
    assert daily.weight_kg[120] == 78.0
    assert "LOG_GAP" in codes(daily.notes)


def test_partial_days_count_as_unlogged() -> None:
    log = Log([Weighing(FIRST, 80.0)], [IntakeDay(FIRST, 700.0, is_partial=True), IntakeDay(FIRST + 1, 2200.0)])
    daily = clean_log(log, FIRST + 2)
    assert daily.is_logged == [0.0, 1.0, 0.0]
    assert {"LOG_PARTIAL_INTAKE", "LOG_INTAKE_MISSING"} <= set(codes(daily.notes))


def test_a_first_weight_in_pounds_is_read_by_those_after_it_where_the_stated_weight_is_old() -> None:
    daily = clean_log(weigh(133.8, 60.7, 60.1, 60.7, 60.6), FIRST + 4, 56.5)
    assert daily.weight_kg[0] == pytest.approx(60.7, abs=0.1)
    found = codes(daily.notes)
    assert "LOG_UNIT_MIX_UP" in found
    assert "LOG_WEIGHT_SET_ASIDE" not in found


def test_slips_after_it_do_not_set_a_first_weight_aside() -> None:
    """The middle of what came after it was a weight in pounds, which it was said not to fit."""
    daily = clean_log(weigh(72.1, 69.4, 68.6, 149.7, 669.0), FIRST + 4, 68.2)
    assert daily.weight_kg[:3] == [72.1, 69.4, 68.6]
    assert "LOG_WEIGHT_SET_ASIDE" not in codes(daily.notes)
