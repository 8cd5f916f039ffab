"""No NaN leaves the service as ``null``."""

import math
from datetime import date
from typing import Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st
from steelyard.http.endpoints import mapping
from steelyard.http.wire.encoding import NonFiniteAnswer, encode_finite
from steelyard.science.body import PathPoint
from steelyard.science.body.forecasting import Figures
from steelyard.science.numbers import Estimate
from steelyard.science.rails import RailAction
from steelyard.science.register import Ids, say


class Day(msgspec.Struct):
    weight_kg: float
    trend_kg: float | None = None


class Log(msgspec.Struct):
    days: tuple[Day, ...] = ()
    by_name: dict[str, float] = {}
    note: str | None = None


class Diary(msgspec.Struct):
    days: list[Day]
    whole: Log | None = None
    gaps: list[float | None] = []


FINITE = st.floats(allow_nan=False, allow_infinity=False)
NOT_FINITE = st.sampled_from([math.nan, -math.nan, math.inf, -math.inf])


@given(st.lists(st.builds(Day, FINITE, FINITE | st.none())), st.dictionaries(st.text(), FINITE), st.text() | st.none())
def test_finite_answers_are_encoded_as_they_are(days: list[Day], by_name: dict[str, float], note: str | None) -> None:
    log = Log(tuple(days), by_name, note)
    assert encode_finite(log) == msgspec.json.encode(log)


@given(st.lists(st.builds(Day, FINITE, FINITE | st.none())), NOT_FINITE, st.integers(0, 3), st.text() | st.none())
def test_what_is_not_finite_is_found_anywhere(days: list[Day], value: float, place: int, note: str | None) -> None:
    if place == 0:
        log: Any = Log((*days, Day(value)), {}, note)
    elif place == 1:
        log = Log((Day(80.0, value), *days), {}, note)
    elif place == 2:
        log = Log(tuple(days), {"a": 1.0, "b": value}, note)
    else:
        log = [note, [[value]]]
    with pytest.raises(NonFiniteAnswer):
        encode_finite(log)


@given(st.lists(st.builds(Day, FINITE, FINITE | st.none())), NOT_FINITE, st.integers(0, 2))
def test_none_beside_it_does_not_hide_what_is_not_finite(days: list[Day], value: float, place: int) -> None:
    diary = Diary([*days, Day(80.0)], Log(note=None), [None, 1.0])
    assert encode_finite([diary, None]) == msgspec.json.encode([diary, None])
    if place == 0:
        diary.days.append(Day(80.0, value))
    elif place == 1:
        diary.whole = Log((Day(value),))
    else:
        diary.gaps.append(value)
    for answer in (diary, [diary, None]):
        with pytest.raises(NonFiniteAnswer):
            encode_finite(answer)


def test_the_place_is_told() -> None:
    with pytest.raises(NonFiniteAnswer, match=r"\$\.days\[1\]\.trend_kg"):
        encode_finite(Log((Day(80.0), Day(80.0, math.nan))))


def test_bytes_that_only_look_like_nan_pass() -> None:
    """A number whose own bytes hold the suspicious ones must not be refused."""
    lookalike = msgspec.msgpack.decode(b"\xcb\x40\xcb\x7f\xf0\x00\x00\x00\x00")
    assert math.isfinite(lookalike)
    assert encode_finite(Log((Day(lookalike),))).startswith(b'{"days"')


def test_what_cannot_be_less_than_nothing_may_still_be_no_number() -> None:
    assert mapping.amount(Estimate(1.0, 2.0), 0).lower == 0.0
    with pytest.raises(NonFiniteAnswer):
        encode_finite(mapping.amount(Estimate(math.nan, 2.0), 0))
    with pytest.raises(NonFiniteAnswer):
        encode_finite(mapping.amount_columns([80.0, math.nan], [0.5, 0.5], 3))


@pytest.mark.parametrize("place", range(6))
def test_no_part_of_a_point_of_a_forecast_hides_that_it_is_no_number(place: int) -> None:
    means = [80.0, 16.0, 60.0, 0.3, 2500.0, 0.2]
    assert encode_finite(mapping.forecast_points([(date(2026, 3, 2), _point(means))]))
    means[place] = math.nan
    with pytest.raises(NonFiniteAnswer):
        encode_finite(mapping.forecast_points([(date(2026, 3, 2), _point(means))]))


def _point(means: list[float]) -> PathPoint:
    return PathPoint(*means, Figures(0.5, 0.5, 0.5, 0.5, 90.0, 0.01), 0.6)  # type: ignore[call-arg, arg-type]


def test_ids_of_entries_are_written_once_and_read_like_a_list() -> None:
    ids = Ids(["bmi", "ffmi"])
    answer = {"methods": ids, "none": None}
    assert encode_finite(answer) == b'{"methods":["bmi","ffmi"],"none":null}'
    written = ids.written
    assert encode_finite([ids, ids]) == b'[["bmi","ffmi"],["bmi","ffmi"]]'
    assert ids.written is written
    assert ids == ["bmi", "ffmi"]
    assert ids != ["bmi"]
    assert "ffmi" in ids
    assert len(ids) == 2
    assert ids[-1] == "ffmi"
    with pytest.raises(NonFiniteAnswer, match=r"\$.odd"):
        encode_finite({"methods": ids, "none": None, "odd": math.nan})


@pytest.mark.parametrize(
    ("unit", "figures", "told"),
    [
        ("kcal/d", (215.6149, 650.4), (216.0, 650.0)),
        ("kg/m2", (20.0, 19.9159840), (20.0, 19.92)),
        ("of maintenance", (0.25, 0.250786396), (0.25, 0.2508)),
        ("of body mass a week", (0.001125, 0.0012645853), (0.001125, 0.001265)),
        ("kg/m2", (18.5, 18.4972), (18.5, 18.497)),  # not as if the limit were met
        ("kcal/d", (None, None), (None, None)),
    ],
)
def test_the_figures_of_a_rail_are_as_fine_as_other_fields(
    unit: str, figures: tuple[float | None, float | None], told: tuple[float | None, float | None]
) -> None:
    (rail,) = mapping.guard_rails([RailAction("some_rule", "warned", *figures, unit, say("NOT_MEDICAL_ADVICE"))])
    assert (rail.limit, rail.observed) == told
