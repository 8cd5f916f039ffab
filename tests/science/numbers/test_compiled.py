"""The compiled forms of formulas: the same answers to the last bit, and nothing lost where there are none."""

import math
import random
import shutil
import subprocess
import sys
from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from typing import Any

import msgspec
import pytest
from request_people import CLEAR, LIFTER
from servers import REQUIRED
from steelyard.http.app import OPERATIONS
from steelyard.http.wire.encoding import NonFiniteAnswer, encode_finite
from steelyard.science.log.view import drawn_to
from steelyard.science.numbers import twins as compiled
from steelyard.science.numbers.rounding import rounded_column
from steelyard.science.rails import Subject

_ANSWERS = {o.operation_id: o for o in OPERATIONS if o.request_examples and not o.renders}


@pytest.fixture
def both_forms() -> Iterator[None]:
    if not compiled.is_compiled():
        if REQUIRED and any(map(shutil.which, ("cc", "gcc", "clang"))):
            pytest.fail("there is a C compiler, and the core was not compiled: run `make`")
        pytest.skip("no C compiler here: the core runs as it is written")
    yield
    compiled.use_compiled(True)


def _json_array(column: Any) -> bytes | None:
    from steelyard.science._floats import json_array  # only where there is a build

    return json_array(column)


def _answer(operation_id: str, body: Any) -> bytes:
    return encode_finite(_ANSWERS[operation_id].compute(body))


def _same_in_both_forms(operation_id: str, body: Any) -> None:
    compiled.use_compiled(True)
    fast = _answer(operation_id, body)
    compiled.use_compiled(False)
    assert _answer(operation_id, body) == fast


@pytest.mark.usefixtures("both_forms")
@pytest.mark.parametrize(
    ("operation_id", "name"), [(o.operation_id, name) for o in _ANSWERS.values() for name in o.request_examples]
)
def test_every_example_is_answered_the_same_in_both_forms(operation_id: str, name: str) -> None:
    _same_in_both_forms(operation_id, _ANSWERS[operation_id].request_examples[name])


def _log(rng: random.Random) -> dict[str, Any]:
    """A log with what logs have: gaps, several weighings a day, outliers, a step of water, partial days."""
    first, days = date(2026, 1, 5), rng.randrange(1, 200)
    step_day, step_kg = rng.randrange(days), rng.choice((0.0, 0.0, 1.5, -2.0))
    missing, unlogged = rng.choice((0.0, 0.2, 0.6)), rng.choice((0.0, 0.1, 1.0))
    weights, intakes, noise = [], [], 0.0
    for i in range(days):
        day = (first + timedelta(days=i)).isoformat()
        noise = 0.3 * noise + rng.gauss(0.0, 0.5)
        weight = 82.0 - 0.05 * i + noise + (step_kg if i >= step_day else 0.0) + (4.0 if rng.random() < 0.02 else 0.0)
        for order in range(1 if rng.random() < 0.9 else 2):
            if not weights or rng.random() >= missing:
                weights.append({"date": day, "weight_kg": round(weight, 1), "order": order})
        if rng.random() >= unlogged:
            eaten = {"date": day, "intake_kcal": round(rng.gauss(2300.0, 250.0)), "is_partial": rng.random() < 0.05}
            intakes.append(eaten | ({"carbohydrate_g": 250.0} if rng.random() < 0.2 else {}))
    cycle = [(first + timedelta(days=3 + 28 * n)).isoformat() for n in range(days // 28)] if rng.random() < 0.3 else []
    return {"weights": weights, "intakes": intakes, "cycle": cycle}


@pytest.mark.usefixtures("both_forms")
@pytest.mark.parametrize("seed", range(60))
def test_logs_are_read_the_same_in_both_forms(seed: int) -> None:
    rng = random.Random(seed)
    body = {"profile": LIFTER, "log": _log(rng)}
    _same_in_both_forms("read_trend", msgspec.convert(body, _ANSWERS["read_trend"].body_type, strict=False))
    _same_in_both_forms(
        "estimate_maintenance", msgspec.convert(body, _ANSWERS["estimate_maintenance"].body_type, strict=False)
    )


@pytest.mark.usefixtures("both_forms")
@pytest.mark.parametrize("seed", range(40))
def test_plans_are_made_the_same_in_both_forms(seed: int) -> None:
    rng = random.Random(seed)
    kind = rng.choice(("mini_cut", "cut", "gain", "maintenance"))
    weeks = {"mini_cut": rng.randrange(2, 7), "cut": rng.randrange(7, 17)}.get(kind, rng.randrange(4, 20))
    person = LIFTER | {
        "sex": rng.choice(("male", "female")),
        "weight_kg": round(rng.uniform(60.0, 110.0), 1),
        "body_fat": {"fat_fraction": round(rng.uniform(0.12, 0.34), 2), "method": "dxa"},
        "training": {"status": rng.choice(("novice", "advanced")), "resistance_sessions_per_week": rng.randrange(6)},
    }
    body = {
        "profile": person,
        "screening": CLEAR,
        "start_date": "2026-03-02",
        "phase": {"kind": kind, "weeks": weeks},
        "cut_history": {"cuts_last_12_months": 0},
    }
    asked = msgspec.convert(body, _ANSWERS["plan_phases"].body_type)
    told = []
    for wanted in (True, False):
        compiled.use_compiled(wanted)
        try:
            told.append(_answer("plan_phases", asked))
        except Exception as refusal:  # whoever is refused is refused the same
            told.append(repr(refusal).encode())
    assert told[0] == told[1]


def _column(values: Sequence[float], scale: float = 1000.0) -> Any:
    """A column of a compiled function, which the wire's precision leaves as it is."""
    return rounded_column(values, scale)


@pytest.mark.usefixtures("both_forms")
def test_a_column_is_read_like_a_list() -> None:
    values = [80.5, -1.25, 0.0, 3.125]
    column = _column(values)
    assert not isinstance(column, list)
    assert len(column) == 4
    assert column[0] == 80.5
    assert column[-1] == 3.125
    assert column[1:3] == [-1.25, 0.0]
    assert list(column) == list(reversed(list(reversed(column)))) == values
    assert column == values
    assert column != [*values, 1.0]
    assert repr(column) == repr(values)
    for beyond in (4, -5):
        with pytest.raises(IndexError):
            column[beyond]
    assert list(_column([])) == []


@pytest.mark.usefixtures("both_forms")
@pytest.mark.parametrize("digits", range(5))
def test_columns_are_written_as_the_library_writes_lists(digits: int) -> None:
    rng, scale = random.Random(digits), 10.0**digits
    sizes = (1e-4, 1e-3, 1.0, 100.0, 1e4, 9.99e8)
    values = [rng.choice((-1.0, 1.0)) * rng.random() * rng.choice(sizes) for _ in range(20_000)]
    values += [0.0, -0.0, 1.0, -1.0, 10.0, 100.0, 0.1, 0.01, 0.001, 0.0001, 999_999_999.0, -0.5, 12345.6789]
    column = _column(values, scale)
    assert _json_array(column) == msgspec.json.encode(list(column))
    assert _json_array(_column([])) == b"[]"


@pytest.mark.usefixtures("both_forms")
@pytest.mark.parametrize("odd", [math.nan, math.inf, -math.inf, 1e9, 1.23456, 1.0 / 3.0])
def test_a_column_of_other_numbers_is_left_to_the_library(odd: float) -> None:
    column = drawn_to([80.0, odd], 1.0, [1.0, 1.0], 0.0)  # as it comes, not rounded
    assert _json_array(column) is None
    if math.isfinite(odd):
        assert encode_finite(column) == msgspec.json.encode([80.0, odd])
    else:
        with pytest.raises(NonFiniteAnswer, match=r"\$\[1\]"):
            encode_finite(column)


@pytest.mark.usefixtures("both_forms")
def test_a_build_of_other_code_is_left_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    from steelyard.science import _floats

    assert compiled.use_compiled(True)
    monkeypatch.setattr(_floats, "CHECKSUM", _floats.CHECKSUM + 1)
    assert not compiled.use_compiled(True)
    assert not compiled.is_compiled()


@pytest.mark.usefixtures("both_forms")
@pytest.mark.parametrize("moved", [{"weight_kg": 4}, {"mass_kg": 3}, {"weight_kg": 99}])
def test_a_build_that_looks_for_a_field_where_it_no_longer_is_is_left_alone(
    monkeypatch: pytest.MonkeyPatch, moved: dict[str, int]
) -> None:
    """What stands in the place of a weight would be taken for one."""
    from steelyard.science import _floats

    subject = _floats.PLACES["steelyard.science.rails.subject"]["Subject"]
    assert subject["weight_kg"] == Subject._fields.index("weight_kg")
    assert compiled.use_compiled(True)
    monkeypatch.setitem(_floats.PLACES["steelyard.science.rails.subject"], "Subject", moved)
    assert not compiled.use_compiled(True)


@pytest.mark.usefixtures("both_forms")
def test_without_a_build_the_core_runs_as_it_is_written(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "steelyard.science._floats", None)
    assert not compiled.use_compiled(True)
    example = next(iter(_ANSWERS["read_trend"].request_examples.values()))
    assert _answer("read_trend", example)
    assert not compiled.is_compiled()


def test_the_checksum_follows_what_code_does_and_not_where_it_stands() -> None:
    def code(text: str) -> Any:
        namespace: dict[str, Any] = {}
        exec(compile(text, "some_file", "exec"), namespace)
        return namespace["f"].__code__

    plain = compiled.checksum_of({"f": code("def f(x):\n    return x + 1.0\n")})
    assert compiled.checksum_of({"f": code("\n# moved\n\ndef f(x):\n    return x + 1.0\n")}) == plain
    for other in ("x + 1.5", "x - 1.0", "[x + 1.0 for _ in '1'][0]"):
        assert compiled.checksum_of({"f": code(f"def f(x):\n    return {other}\n")}) != plain


@pytest.mark.usefixtures("both_forms")
def test_the_compiled_forms_are_found_whatever_was_imported_first() -> None:
    """Their checksum is of all that is marked, so that loading them loads the modules they are from."""
    code = "from steelyard.science.numbers import is_compiled; raise SystemExit(not is_compiled())"
    subprocess.run([sys.executable, "-c", code], check=True)
