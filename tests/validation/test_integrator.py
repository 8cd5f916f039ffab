"""The service's integrator against an independent integration of the continuous equations by scipy."""

import numpy as np
import pytest
from steelyard.science.body import constants as bc
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.state import Diet, calibrate
from validation import continuous_model as continuous
from validation.integrator_cases import (
    CASES,
    HALF_YEAR,
    LIFTER,
    MAINTENANCE,
    PUBLISHED,
    RESTING,
    SITTER,
    Case,
    eating,
    served_ends,
)

MASSES = slice(0, 5)  # fat, lean, glycogen, water, gut [kg]; then adaptation [kcal/d]


@pytest.mark.parametrize("name", CASES)
@pytest.mark.parametrize(("step", "within_kg"), [(0.125, 1e-5), (1.0, 3e-4), (7.0, 5e-3)])
def test_agrees_with_the_continuous_equations(name: str, step: float, within_kg: float) -> None:
    case = CASES[name]
    exact = continuous.solve(case.subject, case.meals)
    for served, solved in zip(served_ends(case, step), exact, strict=True):
        assert served[MASSES] == pytest.approx(solved[MASSES], abs=within_kg, rel=0)
        assert served[5] == pytest.approx(solved[5], abs=1e-5)
        weight = sum(served[[0, 1, 3, 4]]) + 3.7 * served[2]
        assert weight == pytest.approx(continuous.weight(solved), abs=within_kg)


@pytest.mark.parametrize("name", CASES)
def test_smaller_steps_come_closer(name: str) -> None:
    case = CASES[name]
    exact = continuous.solve(case.subject, case.meals)[-1]
    # Sixteen times finer is sixteen times closer at first order and 256 times at second; errors of opposite sign in a
    # path with kinks hide part of that at the coarse end.
    coarse, fine = (np.abs(served_ends(case, step)[-1][:2] - exact[:2]).max() for step in (4.0, 0.25))
    assert fine < coarse / 30


def test_the_plain_euler_method_reproduces_the_worked_values() -> None:
    # Worked values of the model's tests were computed with Euler steps and rounded costs: the same equations,
    # integrated the same way, give every printed digit.
    man = PUBLISHED._replace(costs=continuous.ROUNDED_COSTS)
    deficit = eating(-500, 42)
    for step, weight in ((1.0, 77.0358), (0.5, 77.0379), (0.1, 77.0395), (0.02, 77.0399)):
        assert continuous.weight(continuous.euler(man, deficit, step)) == pytest.approx(weight, abs=0.00005)
    halved = eating(-750, 1, carbohydrate=712.0, sodium=-1500.0)
    assert continuous.weight(continuous.euler(man, halved, 0.1)) == pytest.approx(78.863, abs=0.0005)
    surplus = continuous.euler(man, eating(300, 84), 0.1)
    assert surplus == pytest.approx([13.490, 67.367, 0.5257, 0.140, 0.0, 41.9, 0.0], abs=0.05)
    assert surplus[:2] == pytest.approx([13.490, 67.367], abs=0.0005)


def test_the_first_day_agrees_where_water_moves_fastest() -> None:
    halved = eating(-750, 1, carbohydrate=712.0, sodium=-1500.0)
    model, state = calibrate(weight_kg=80.0, fat_kg=12.0, maintenance_kcal=MAINTENANCE, resting_kcal=RESTING)
    served = advance(model._replace(gut_kg=0.0), state, Diet(halved.intake, 712.0, 0.8, -1500.0), 1.0, step_days=0.25)
    assert served.weight_kg == pytest.approx(
        continuous.weight(continuous.solve(SITTER._replace(gut=0.0), [halved])[-1]), abs=1e-4
    )


def test_the_constants_are_those_of_the_papers() -> None:
    # Catches a slip in either writing: these two sets were typed independently.
    c = continuous.EXACT_COSTS
    served = (bc.FAT_UPKEEP, bc.LEAN_UPKEEP, bc.FAT_SYNTHESIS, bc.LEAN_SYNTHESIS)
    assert served == pytest.approx(tuple(c), rel=1e-12)
    # 39.5, 7.6 and 17.6 MJ/kg, as Hall 2008 prints them.
    for kcal, megajoules in (
        (bc.FAT_ENERGY, 39.5),
        (bc.LEAN_ENERGY, 7.6),
        (bc.GLYCOGEN_ENERGY, 17.6),
    ):
        assert kcal * 4.184 / 1000 == pytest.approx(megajoules, abs=0.05)


@pytest.mark.parametrize("stretches", [26, 1])
def test_experience_gathered_within_a_stretch_counts(stretches: int) -> None:
    beginner = LIFTER._replace(experience_years=0.0)
    case = Case(beginner, 2.0, [eating(0)], 0.0, 1.0)
    exact = continuous.solve(case.subject, case.meals)[-1]
    split = Case(beginner, 2.0, [eating(0, HALF_YEAR / stretches)] * stretches, 0.0, 1.0)
    assert served_ends(split, 7.0)[-1][1] == pytest.approx(exact[1], abs=5e-3)
