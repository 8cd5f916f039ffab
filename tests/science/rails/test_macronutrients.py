"""Grams from energy: totals, floors, steps and preferences."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from steelyard.science.rails.macronutrients import CarbohydratePreference, Macronutrients, split_intake

PREFERENCES = st.sampled_from(list(CarbohydratePreference))


def total(macros: Macronutrients) -> int:
    """Energy by the general Atwater factors: 4, 4, 9 kcal/g (FAO Food Nutr Pap 77, 2003)."""
    return 4 * macros.protein_g + 4 * macros.carbohydrate_g + 9 * macros.fat_g


def least_kcal(weight: float, protein: float, intake: float) -> float:
    """Energy of the protein asked for and of the least fat, each with its 5 g of rounding."""
    return 4 * (protein * weight + 5) + 9 * (max(0.5 * weight, 0.15 * intake / 9) + 5)


@settings(deadline=None, max_examples=400)
@given(st.floats(1200, 6000), st.floats(40, 200), st.floats(0.8, 3.5), PREFERENCES)
def test_totals_floors_and_steps(
    intake: float, weight: float, protein: float, preference: CarbohydratePreference
) -> None:
    macros = split_intake(intake, weight, protein, preference)
    assert macros.intake_kcal % 10 == 0
    assert abs(macros.intake_kcal - intake) <= 5
    assert macros.protein_g % 5 == macros.carbohydrate_g % 5 == macros.fat_g % 5 == 0
    # All the protein asked for where the intake has room for it beside the least fat, and never more.
    assert macros.protein_g < protein * weight + 5
    if least_kcal(weight, protein, intake) <= macros.intake_kcal:
        assert macros.protein_g >= protein * weight - 1e-6
    assert macros.fat_g >= 0.5 * weight - 1e-6
    assert 9 * macros.fat_g >= 0.15 * macros.intake_kcal - 1e-6
    assert macros.carbohydrate_g >= 0
    assert 0 <= macros.fibre_g <= macros.carbohydrate_g
    if least_kcal(weight, protein, intake) <= intake:
        assert abs(total(macros) - macros.intake_kcal) <= 10


@pytest.mark.parametrize(
    ("preference", "share"),
    [
        (CarbohydratePreference.LOWER, 0.38),
        (CarbohydratePreference.BALANCED, 0.27),
        (CarbohydratePreference.HIGHER, 0.20),
    ],
)
def test_preference_sets_the_share_of_fat(preference: CarbohydratePreference, share: float) -> None:
    macros = split_intake(2400, 80, 1.8, preference)
    assert 9 * macros.fat_g / 2400 == pytest.approx(share, abs=10 * 9 / 2400)


def test_a_worked_day() -> None:
    # 2000 kcal, 80 kg, 2 g/kg: protein 160 g; fat 27 % = 60 g; the rest, 820 kcal, is 205 g of carbohydrate.
    assert split_intake(2000, 80, 2.0) == Macronutrients(2000, 160, 205, 60, 28)


@settings(deadline=None)
@given(st.floats(1200, 4000), st.floats(0, 1000), st.floats(45, 120), PREFERENCES)
def test_more_energy_never_means_less_of_it(
    intake: float, more: float, weight: float, preference: CarbohydratePreference
) -> None:
    less, greater = (split_intake(x, weight, 1.8, preference) for x in (intake, intake + more))
    assert greater.intake_kcal >= less.intake_kcal
    assert greater.protein_g >= less.protein_g
