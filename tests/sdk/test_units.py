"""Conversions: exact factors, and there and back again."""

import doctest

import pytest
import scipy.constants
from hypothesis import given
from hypothesis import strategies as st
from steelyard_client import units

AMOUNTS = st.floats(0, 1e6)


def test_factors_are_those_of_an_independent_table() -> None:
    """scipy.constants gives the international pound and inch, and the thermochemical calorie, in SI units."""
    assert pytest.approx(scipy.constants.pound, rel=1e-15) == units.KILOGRAMS_PER_POUND
    assert pytest.approx(scipy.constants.inch * 100, rel=1e-15) == units.CENTIMETRES_PER_INCH
    assert pytest.approx(scipy.constants.foot / scipy.constants.inch, rel=1e-15) == units.INCHES_PER_FOOT
    assert scipy.constants.calorie == units.KILOJOULES_PER_KILOCALORIE


@pytest.mark.parametrize(
    ("there", "back"),
    [(units.pounds, units.to_pounds), (units.inches, units.to_inches), (units.kilojoules, units.to_kilojoules)],
)
@given(amount=AMOUNTS)
def test_there_and_back(there: object, back: object, amount: float) -> None:
    assert back(there(amount)) == pytest.approx(amount, rel=1e-15)  # type: ignore[operator]
    assert there(back(amount)) == pytest.approx(amount, rel=1e-15)  # type: ignore[operator]


@given(feet=st.integers(3, 8), tenths=st.integers(0, 119))
def test_feet_and_inches_there_and_back(feet: int, tenths: int) -> None:
    assert units.to_feet_inches(units.feet_inches(feet, tenths / 10)) == (feet, tenths / 10)


@given(cm=st.floats(0, 300), digits=st.integers(0, 2))
def test_inches_stay_below_a_foot(cm: float, digits: int) -> None:
    feet, inch = units.to_feet_inches(cm, digits)
    assert 0 <= inch < 12
    assert units.feet_inches(feet, inch) == pytest.approx(cm, abs=2.54 * 0.51 * 10.0**-digits)


def test_the_examples_of_the_module() -> None:
    assert doctest.testmod(units).failed == 0
    assert doctest.testmod(units).attempted >= 5
