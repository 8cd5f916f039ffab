"""What must hold for any body and any diet: order, fixed points, steps, floats and arrays."""

from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.forecasting import Stretch, forecast
from steelyard.science.body.state import BodyModel, BodyState, Diet, calibrate
from steelyard.science.body.uncertainty import Body, UncertaintySource
from steelyard.science.numbers.elementwise import arrays
from steelyard.science.numbers.estimate import Estimate

some = settings(deadline=None, max_examples=60)
ANY_DOSE = st.floats(0, 1)


@st.composite
def people(draw: st.DrawFn, dose: st.SearchStrategy[float] = ANY_DOSE) -> dict[str, float]:
    """A plausible adult, as the arguments of ``calibrate``."""
    weight = draw(st.floats(45, 150))
    resting = draw(st.floats(55, 80)) * weight**0.75  # about Kleiber's 70
    return {
        "weight_kg": weight,
        "fat_kg": draw(st.floats(0.08, 0.5)) * weight,
        "resting_kcal": resting,
        "maintenance_kcal": resting * draw(st.floats(1.3, 2.2)),
        "experience_years": draw(st.floats(0, 10)),
        "training_dose": draw(dose),
    }


def diet(model: BodyModel, share: float, protein: float, carbohydrate_share: float = 0.5) -> Diet:
    intake = share * model.maintenance_kcal
    return Diet(intake, carbohydrate_share * intake, protein)


SHARES = st.floats(0.6, 1.4)
PROTEIN = st.floats(0.5, 3.5)
WEEKS = st.integers(1, 26)


@some
@given(people(), SHARES, st.floats(0.01, 0.3), PROTEIN, WEEKS)
def test_more_intake_never_leaves_less(
    person: dict[str, float], share: float, more: float, protein: float, weeks: int
) -> None:
    model, state = calibrate(**person)
    less_eaten = advance(model, state, diet(model, share, protein), 7.0 * weeks)
    more_eaten = advance(model, state, diet(model, share + more, protein), 7.0 * weeks)
    # Where all fat would be gone the model stops at a quarter of a kilogram, which keeps absurd input finite.
    assume(less_eaten.fat_kg > 0.25)
    assert more_eaten.weight_kg > less_eaten.weight_kg
    assert more_eaten.tissue_kg > less_eaten.tissue_kg
    assert more_eaten.fat_kg > less_eaten.fat_kg


@some
@given(people(), SHARES, PROTEIN, st.floats(0, 2), WEEKS)
def test_more_protein_never_leaves_less_lean(
    person: dict[str, float], share: float, protein: float, more: float, weeks: int
) -> None:
    model, state = calibrate(**person)
    low = advance(model, state, diet(model, share, protein), 7.0 * weeks)
    high = advance(model, state, diet(model, share, protein + more), 7.0 * weeks)
    assert high.lean_kg >= low.lean_kg - 1e-6


@some
@given(people(dose=st.just(0.0)), PROTEIN, st.integers(1, 200))
def test_maintenance_is_a_fixed_point(person: dict[str, float], protein: float, weeks: int) -> None:
    model, state = calibrate(**person)
    after = advance(model, state, diet(model, 1.0, protein), 7.0 * weeks)
    assert after[:6] == pytest.approx(state[:6], abs=1e-7)


@some
@given(people(), SHARES, PROTEIN, WEEKS)
def test_halving_the_step_changes_nothing_beyond_tolerance(
    person: dict[str, float], share: float, protein: float, weeks: int
) -> None:
    # A step's error grows with the change it spans: a hundredth of the tissue that moved, and at least 10 g.
    model, state = calibrate(**person)
    eaten = diet(model, share, protein)
    whole = advance(model, state, eaten, 7.0 * weeks, step_days=7.0)
    half = advance(model, state, eaten, 7.0 * weeks, step_days=3.5)
    moved = abs(half.fat_kg - state.fat_kg) + abs(half.lean_kg - state.lean_kg)
    assert whole.weight_kg == pytest.approx(half.weight_kg, abs=max(0.01, 0.01 * moved))


@some
@given(st.lists(people(), min_size=2, max_size=5), SHARES, PROTEIN, WEEKS)
def test_arrays_agree_with_floats(persons: list[dict[str, float]], share: float, protein: float, weeks: int) -> None:
    ops = arrays()
    columns = {key: np.array([person[key] for person in persons]) for key in persons[0]}
    model, state = calibrate(**columns, ops=ops)
    together = advance(model, state, diet(model, share, protein), 7.0 * weeks, ops=ops)
    for i, person in enumerate(persons):
        one, start = calibrate(**person)
        alone = advance(one, start, diet(one, share, protein), 7.0 * weeks)
        for field in BodyState._fields[:6]:
            assert float(np.broadcast_to(getattr(together, field), len(persons))[i]) == pytest.approx(
                getattr(alone, field), rel=1e-9, abs=1e-9
            )


@some
@given(people(), SHARES, PROTEIN)
def test_the_same_weeks_in_one_stretch_or_in_many(person: dict[str, float], share: float, protein: float) -> None:
    # Without lifting nothing depends on how a diet is cut into stretches.
    model, state = calibrate(**{**person, "training_dose": 0.0})
    eaten = diet(model, share, protein)
    once = advance(model, state, eaten, 70.0)
    for _ in range(10):
        state = advance(model, state, eaten, 7.0)
    assert np.array(once[:6]) == pytest.approx(np.array(state[:6]), rel=1e-9, abs=1e-9)


def body(person: dict[str, float], sd: float = 1.0) -> Body:
    known: dict[str, Any] = dict(person)
    known["fat_kg"] = Estimate(person["fat_kg"], 0.035 * person["weight_kg"] * sd)
    known["maintenance_kcal"] = Estimate(person["maintenance_kcal"], 0.06 * person["maintenance_kcal"] * sd)
    return Body(**known)


@some
@given(people(), SHARES, st.floats(0.8, 2.5))
def test_every_source_widens_and_none_is_negative(person: dict[str, float], share: float, protein: float) -> None:
    one = body(person)
    intake = share * person["maintenance_kcal"]
    plan = [Stretch(Diet(intake, 0.5 * intake, protein), (7.0,) * 8)]
    full = forecast(one, plan).spreads()
    nothing = forecast(one, plan, sources=frozenset()).spreads()
    assert all(value == pytest.approx(0.0, abs=1e-9) for spread in nothing for value in spread)
    for source in UncertaintySource:
        alone = forecast(one, plan, sources=frozenset({source})).spreads()
        for wide, narrow in zip(full, alone, strict=True):
            assert all(b >= -1e-12 and a >= b - 1e-9 for a, b in zip(wide, narrow, strict=True))


@some
@given(people(), st.floats(0.65, 0.95))
def test_the_expected_path_does_not_depend_on_the_sources(person: dict[str, float], share: float) -> None:
    intake = share * person["maintenance_kcal"]
    plan = [Stretch(Diet(intake, 0.5 * intake, 1.6), (7.0,) * 6)]
    assert forecast(body(person), plan).states == forecast(body(person), plan, sources=frozenset()).states
