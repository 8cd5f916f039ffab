"""Dates from which days can be counted on: 2000 to 2100, each entry of a log named where it lies outside."""

from datetime import date

import pytest
from steelyard.answers.dates import check_dates, last_day_of
from steelyard.science.log import IntakeDay, Log, StepsDay, Weighing
from steelyard.science.register import OutOfDomain

DAY = date(2026, 3, 2).toordinal()
EARLY, LATE = date(1999, 12, 31).toordinal(), date(2101, 1, 1).toordinal()
USUAL = [Weighing(DAY, 80.0), Weighing(DAY + 9, 79.5)]


@pytest.mark.parametrize("odd", [EARLY, LATE])
@pytest.mark.parametrize(
    ("kind", "name"),
    [
        ("weights", "log.weights[2].date"),
        ("intakes", "log.intakes[0].date"),
        ("cycle", "log.cycle[0]"),
        ("steps", "log.steps[0].date"),
    ],
)
def test_an_entry_with_an_odd_date_is_named(kind: str, name: str, odd: int) -> None:
    log = {
        "weights": Log([*USUAL, Weighing(odd, 80.0)]),
        "intakes": Log(USUAL, [IntakeDay(odd, 2400.0)]),
        "cycle": Log(USUAL, [], [odd]),
        "steps": Log(USUAL, steps=[StepsDay(odd, 8000.0)]),
    }[kind]
    with pytest.raises(OutOfDomain) as raised:
        last_day_of(log, None)
    assert (raised.value.code, raised.value.field) == ("DATE_OUT_OF_RANGE", name)


def test_a_log_is_read_at_the_day_asked_for_or_its_last() -> None:
    assert last_day_of(Log(USUAL), None) == DAY + 9
    assert last_day_of(Log(USUAL), date(2026, 3, 5)) == DAY + 3
    with pytest.raises(OutOfDomain) as raised:
        last_day_of(Log(USUAL), date(1999, 12, 31))
    assert raised.value.field == "as_of_date"


def test_the_first_and_the_last_day_are_answered_for() -> None:
    check_dates({"start_date": date(2000, 1, 1), "by_date": date(2100, 12, 31), "event_date": None})
