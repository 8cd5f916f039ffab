"""Questions about a log asked without any web: what is refused by name, and what an answer holds."""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Any

import pytest
from msgspec.structs import replace
from plan_people import CLEAR, MAN
from steelyard import answers
from steelyard.science.log import IntakeDay, Log, TrendChoice, Weighing
from steelyard.science.measures import Girths
from steelyard.science.member import Told
from steelyard.science.person import BodyFatMethod, BodyFatReading, Screening, Sex
from steelyard.science.register import OutOfDomain

FIRST = date(2026, 3, 2)
DAYS = 28


def log(days: Sequence[date]) -> Log:
    """Weight that falls by 50 g a day, and the same intake on every day."""
    weights = [Weighing(day.toordinal(), MAN.weight_kg - 0.05 * i) for i, day in enumerate(days)]
    return Log(weights, [IntakeDay(day.toordinal(), 2300.0) for day in days])


def month() -> list[date]:
    return [FIRST + timedelta(days=i) for i in range(DAYS)]


def ask(entries: Log | None = None, **others: Any) -> answers.TrendAsked:
    return answers.TrendAsked(Told(MAN, log=log(month()) if entries is None else entries), **others)


def dxa(fat_fraction: float = 0.2) -> BodyFatReading:
    return BodyFatReading(fat_fraction=fat_fraction, method=BodyFatMethod.DXA)


@pytest.mark.parametrize(
    ("asked", "code", "name"),
    [
        (ask(as_of=date(1999, 12, 31)), "DATE_OUT_OF_RANGE", "as_of_date"),
        (ask(log([date(1999, 12, 31), FIRST])), "DATE_OUT_OF_RANGE", "log.weights[0].date"),
        (ask(log([FIRST, date(2101, 1, 1)])), "DATE_OUT_OF_RANGE", "log.weights[1].date"),
        (ask(as_of=month()[-2]), "LOG_ENTRY_IN_FUTURE", f"log.weights[{DAYS - 1}].date"),
        (
            ask(measurements=((FIRST, dxa()), (FIRST - timedelta(days=1), dxa()))),
            "MEASUREMENT_OUTSIDE_LOG",
            "measurements[1].date",
        ),
        (
            ask(measurements=((FIRST, Girths(girths_cm={"neck_cm": 90.0, "abdomen_cm": 80.0})),)),
            "GIRTHS_IMPOSSIBLE",
            "measurements[0].measurement",
        ),
    ],
)
def test_what_is_refused_is_named(asked: answers.TrendAsked, code: str, name: str) -> None:
    with pytest.raises(OutOfDomain) as raised:
        answers.read_trend(asked)
    assert (raised.value.code, raised.value.field) == (code, name)


def test_a_log_is_read_on_its_last_day_or_as_asked() -> None:
    last = FIRST + timedelta(days=DAYS - 1)
    assert answers.read_trend(ask()).value.as_of == last
    later = answers.read_trend(ask(as_of=last + timedelta(days=2))).value
    assert later.as_of == last + timedelta(days=2)
    assert later.trend.days == DAYS + 2


def test_readings_of_body_fat_count_once_and_narrow_the_fat() -> None:
    days = month()
    few = answers.read_trend(ask()).value.composition
    many = answers.read_trend(ask(measurements=tuple((day, dxa()) for day in days[::9]))).value.composition
    assert few is not None
    assert many is not None
    assert many.reading_count == few.reading_count + len(days[::9])
    assert many.fat_kg.sd < few.fat_kg.sd


def test_a_log_of_one_day_has_no_change_to_split() -> None:
    read = answers.read_trend(ask(log([FIRST]))).value
    assert read.composition is None
    assert read.trend.changes == ()
    assert read.implied == {}


def test_an_answer_says_on_which_scale_maintenance_is() -> None:
    answer = answers.read_trend(ask())
    assert answer.cautions[-1].code == "ON_LOGGING_SCALE"
    assert {"trend_reading", "composition_change"} <= set(answer.methods)
    assert "implied_intake" not in answer.methods


def test_intake_is_read_from_weight_alone_where_food_is_not_logged_or_somebody_asks() -> None:
    asked = answers.read_trend(ask()._replace(include=frozenset({TrendChoice.IMPLIED_INTAKE})))
    assert set(asked.value.implied) == {change.days for change in asked.value.trend.changes}
    assert "implied_intake" in asked.methods
    weighed = ask()
    assert weighed.told.log is not None
    weights_alone = weighed.told._replace(log=replace(weighed.told.log, intakes=()))
    assert set(answers.read_trend(weighed._replace(told=weights_alone)).value.implied) == set(asked.value.implied)
    assert answers.read_trend(ask()).value.implied == {}


def test_in_pregnancy_a_log_lowers_no_maintenance() -> None:
    """What little is logged is then what is logged of it, in a trend as in an estimate."""
    woman = replace(MAN, sex=Sex.FEMALE, weight_kg=68.0, height_cm=168.0)
    eaten = Log(
        [Weighing(day.toordinal(), 68.0 + 0.06 * i) for i, day in enumerate(month())],
        [IntakeDay(day.toordinal(), 2000.0) for day in month()],
    )

    def told(screening: Screening) -> Told:
        return Told(woman, log=eaten, screening=screening)

    found = []
    for screening in (CLEAR, replace(CLEAR, is_pregnant=True)):
        trend = answers.read_trend(answers.TrendAsked(told(screening))).value.trend.maintenance
        estimate = answers.estimate_maintenance(answers.MaintenanceAsked(told(screening), None)).value
        assert trend.maintenance.mean == pytest.approx(estimate.settled.mean)
        assert trend.physical.mean == pytest.approx((estimate.physical or estimate.settled).mean)
        found.append((trend.physical.mean, estimate.prior.mean))
    (read, prior), (pregnant, _) = found
    assert read < prior
    assert pregnant >= prior
