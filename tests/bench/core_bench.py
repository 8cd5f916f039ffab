"""The core by itself, in processor time: one forecast against an empty request, and many people at once."""

import time
from collections.abc import Callable

import numpy as np
from steelyard.science.body.forecasting import Stretch, forecast
from steelyard.science.body.state import Diet
from steelyard.science.body.uncertainty import Body
from steelyard.science.numbers.elementwise import FLOATS, arrays
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.numbers.twins import use_compiled

from .rows import Row, over_rounds, paired

PEOPLE = 10_000
_ROUNDS = 7


def _processor_seconds(call: Callable[[], object], repeats: int) -> float:
    start = time.process_time()
    for _ in range(repeats):
        call()
    return (time.process_time() - start) / repeats


def _single(weeks: int) -> Callable[[], object]:
    body = Body(
        weight_kg=84.6,
        fat_kg=Estimate(15.2, 2.5),
        maintenance_kcal=Estimate(2700.0, 250.0),
        resting_kcal=1830.0,
        experience_years=2.5,
        training_dose=1.0,
    )
    plan = [Stretch(Diet(2300.0, 250.0, 2.0), (7.0,) * weeks)]
    return lambda: forecast(body, plan, ops=FLOATS).spreads()


def _many(weeks: int, people: int) -> Callable[[], object]:
    rng = np.random.default_rng(20260302)
    weight = rng.normal(80.0, 10.0, people).clip(50.0, 120.0)
    body = Body(
        weight_kg=weight,
        fat_kg=Estimate(weight * rng.uniform(0.1, 0.3, people), np.full(people, 2.5)),  # type: ignore[arg-type]
        maintenance_kcal=Estimate(weight * 32.0, np.full(people, 250.0)),  # type: ignore[arg-type]
        resting_kcal=weight * 21.6,
        experience_years=rng.uniform(0.0, 7.0, people),
        training_dose=np.ones(people),
    )
    intake = weight * 28.0
    plan = [Stretch(Diet(intake, intake * 0.45, 2.0), (7.0,) * weeks)]
    ops = arrays()
    return lambda: forecast(body, plan, ops=ops).spreads()


def rows(empty_cpu_seconds: Callable[[], float]) -> list[Row]:
    """``empty_cpu_seconds`` measures the processor time of an empty keyed request, anew each time."""
    half_year = _single(26)
    against_empty = paired(lambda: _processor_seconds(half_year, 40), empty_cpu_seconds, _ROUNDS)
    year, crowd = _single(52), _many(52, PEOPLE)
    as_written, as_compiled = [], []
    for _ in range(_ROUNDS):
        each = _processor_seconds(crowd, 1) / PEOPLE
        as_compiled.append(_processor_seconds(year, 20) / each)
        use_compiled(False)
        as_written.append(_processor_seconds(year, 20) / each)
        use_compiled(True)
    return [
        Row(
            "Core",
            "26-week forecast with intervals over an empty keyed request",
            against_empty,
            at_most=12.0,
            stretch=4.0,
        ),
        Row(
            "Core",
            f"a year for {PEOPLE:,} people in one call, per person: times faster than one by one",
            over_rounds(as_written),
            at_least=30.0,
            note="both as the formulas are written",
        ),
        Row(
            "Core",
            f"a year for {PEOPLE:,} people in one call, per person: times faster than one by one, compiled",
            over_rounds(as_compiled),
        ),
    ]
