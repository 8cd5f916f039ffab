"""The days of a week: the total is kept, no day has less than the least food, what does not fit is known."""

import random
from itertools import pairwise

import pytest
from steelyard.science import rails
from steelyard.science.person import Sex
from steelyard.science.rails import (
    CarbohydratePreference,
    DayAsked,
    days_of_week,
    meals_of,
    protein_reference_kg,
    split_intake,
    useful_meals,
)

from .test_guard_rails import subject

BALANCED = CarbohydratePreference.BALANCED
ALCOHOL = 7.1  # kcal/g, heat of combustion of ethanol: 1366.8 kJ/mol over 46.07 g/mol (NIST Chemistry WebBook)
REST = DayAsked()
MEAN = split_intake(2400, 80.0, 2.0, fat_for_kg=80.0)


def test_every_week_of_any_days_keeps_its_total_and_the_least_food_of_each_day() -> None:
    rng = random.Random(3)
    for _ in range(2000):
        kg = rng.uniform(45.0, 90.0)
        intake = 10 * rng.randint(130, 420)
        mean = split_intake(intake, kg, 1.6, rng.choice(list(CarbohydratePreference)))
        asked = [
            DayAsked(rng.choice([0.0, 150.0, 700.0]), rng.choice([0.0, 300.0, 3000.0]), rng.choice([0.0, 0.0, 150.0]))
            for _ in range(7)
        ]
        told = rails.LeastDay(rng.uniform(0.6, 1.0) * intake, rails.FLOOR, rails.Why.LEAST_INTAKE)
        least = rails.fed_least(mean, told, kg).kcal
        assert least >= told.kcal
        week = days_of_week(mean, asked, least, kg, BALANCED)
        assert sum(day.macros.intake_kcal for day in week.days) == 7 * intake
        assert week.least_food_kcal >= least - 1e-6 or week.least_food_kcal >= intake - 1e-6
        assert 0.0 <= week.fits_kcal <= week.asked_kcal + 1e-9
        assert 0.0 <= week.moved_share <= 1.0
        for day, one in zip(week.days, asked, strict=True):
            macros = day.macros
            energy = 4 * macros.protein_g + 4 * macros.carbohydrate_g + 9 * macros.fat_g + ALCOHOL * day.alcohol_g
            assert abs(energy - macros.intake_kcal) <= 15.0  # to 10 kcal, and alcohol to 5
            assert macros.protein_g == mean.protein_g
            assert min(macros.carbohydrate_g, macros.fat_g) >= 0
            assert 9 * macros.fat_g >= 0.15 * macros.intake_kcal - 1e-6
            assert day.alcohol_g <= one.alcohol_g


def test_rounding_to_ten_kilocalories_moves_the_week_as_little_as_any_can() -> None:
    """Of all roundings that keep a total, largest remainders move least by the sum of distances (Hamilton's rule)."""
    rng = random.Random(4)
    for _ in range(200):
        asked = [DayAsked(rng.uniform(0.0, 400.0)) for _ in range(7)]
        week = days_of_week(MEAN, asked, 1500.0, 80.0, BALANCED)
        burnt = [day.training_kcal for day in asked]
        wanted = [2400.0 + one - sum(burnt) / 7 for one in burnt]
        assert week.moved_share == 1.0
        up = sorted(kcal % 10.0 for kcal in wanted)
        count = round(sum(up) / 10.0)
        least = sum(up[: 7 - count]) + sum(10.0 - one for one in up[7 - count :])
        made = [day.macros.intake_kcal for day in week.days]
        assert sum(abs(kcal - one) for kcal, one in zip(made, wanted, strict=True)) == pytest.approx(least)


def test_the_least_food_has_room_for_protein_and_the_least_fat() -> None:
    """0.5 g/kg of fat (Iraki 2019) or 15 % of energy (Helms 2014), the larger, and 5 g that grams are rounded by."""
    small, large = split_intake(1600, 80.0, 2.0), split_intake(3600, 50.0, 2.0)
    told = rails.LeastDay(700.0, rails.FLOOR, rails.Why.LEAST_INTAKE)
    by_mass, by_energy = rails.fed_least(small, told, 80.0), rails.fed_least(large, told, 50.0)
    assert by_mass.kcal == pytest.approx(4 * 160 + 9 * (0.5 * 80.0 + 5))
    assert by_energy.kcal == pytest.approx(4 * 100 + 0.15 * 3600 + 9 * 5)
    assert by_mass.rule == by_energy.rule == rails.PROTEIN
    assert rails.fed_least(small, told._replace(kcal=1300.0), 80.0).rule == rails.FLOOR


def test_a_day_of_training_has_what_it_burns_more_than_a_day_of_rest() -> None:
    asked = [DayAsked(350.0) if i in (0, 3) else REST for i in range(7)]
    week = days_of_week(MEAN, asked, 1800.0, 80.0, BALANCED)
    assert week.moved_share == 1.0
    trained, rested = (week.days[i].macros for i in (0, 1))
    assert trained.intake_kcal - rested.intake_kcal == pytest.approx(350.0, abs=10.0)
    assert trained.fat_g == rested.fat_g
    assert trained.carbohydrate_g - rested.carbohydrate_g == pytest.approx(350.0 / 4, abs=5)


def test_no_more_moves_than_the_least_food_of_a_day_of_rest_allows() -> None:
    asked = [DayAsked(700.0) if i in (0, 3) else REST for i in range(7)]
    week = days_of_week(MEAN, asked, 2350.0, 80.0, BALANCED)
    assert 0.0 < week.moved_share < 1.0
    assert week.least_food_kcal == 2350.0


def test_the_other_days_pay_for_a_flexible_one_alcohol_included() -> None:
    asked = [DayAsked(0.0, 300.0, 40.0) if i == 5 else REST for i in range(7)]
    week = days_of_week(MEAN, asked, 1800.0, 80.0, BALANCED)
    assert week.fits_kcal == week.asked_kcal == pytest.approx(300.0 + 40 * ALCOHOL)
    assert week.days[5].macros.intake_kcal == pytest.approx(2400.0 + 300.0 + 40 * ALCOHOL, abs=10.0)
    assert week.days[0].macros.intake_kcal == pytest.approx(2400.0 - (300.0 + 40 * ALCOHOL) / 6, abs=10.0)


def test_what_the_other_days_cannot_pay_for_does_not_fit() -> None:
    asked = [DayAsked(0.0, 1000.0, 100.0) if i == 5 else REST for i in range(7)]
    week = days_of_week(MEAN, asked, 2300.0, 80.0, BALANCED)
    assert week.fits_kcal == pytest.approx(600.0)
    assert week.days[5].alcohol_g == int(100 * 600.0 / (1000.0 + 100 * ALCOHOL))
    assert week.days[5].macros.intake_kcal <= 3000
    assert week.least_food_kcal == 2300.0
    nobody_pays = days_of_week(MEAN, [DayAsked(0.0, 500.0)] * 7, 1800.0, 80.0, BALANCED)
    assert nobody_pays.fits_kcal == 0.0
    assert {day.macros.intake_kcal for day in nobody_pays.days} == {2400}


# --- protein ---------------------------------------------------------------------------------------------------------


def test_protein_is_for_the_whole_body_of_the_lean_and_for_less_of_the_obese() -> None:
    assert protein_reference_kg(Sex.MALE, 180.0, 80.0, 12.0) == 80.0
    assert protein_reference_kg(Sex.FEMALE, 166.0, 62.0, 16.1) == 62.0
    # A muscular man of a body mass index of 30 is not obese.
    assert protein_reference_kg(Sex.MALE, 180.0, 97.0, 14.0) == 97.0
    # 74.4 kg of fat-free mass at 20 % of fat, the body fat of an index of 25 at 30 years (Gallagher 2000).
    assert protein_reference_kg(Sex.MALE, 180.0, 120.0, 45.6) == pytest.approx(93.0)
    # No less than the weight at an index of 25.
    assert protein_reference_kg(Sex.FEMALE, 165.0, 110.0, 66.0) == pytest.approx(25.0 * 1.65**2)


def test_the_reference_never_jumps_and_never_falls_as_weight_is_gained() -> None:
    for sex in Sex:
        masses = [protein_reference_kg(sex, 172.0, 60.0 + 0.1 * i, 12.0 + 0.08 * i) for i in range(900)]
        steps = [after - before for before, after in pairwise(masses)]
        assert min(steps) >= 0.0
        assert max(steps) <= 0.1 + 1e-9


def test_plants_alone_ask_for_a_tenth_more_where_no_amount_was_asked_for() -> None:
    mixed, plants = subject(), subject(is_plant_based=True)
    usual = rails.protein_in_deficit(mixed, None)[0]
    assert rails.protein_in_deficit(plants, None)[0] == pytest.approx(1.1 * usual)
    assert rails.protein_in_deficit(plants, 1.9)[0] == 1.9


@pytest.mark.parametrize("meals", range(1, 9))
def test_meals_share_a_days_protein_evenly(meals: int) -> None:
    for protein_g in (95, 160, 165, 240):
        shared = meals_of(protein_g, meals)
        assert sum(shared) == protein_g
        assert len(shared) == meals
        assert max(shared) - min(shared) <= 5


def test_a_meal_is_useful_from_its_share_of_body_mass_on() -> None:
    # 0.4 g/kg over at least four meals (Schoenfeld BJ, Aragon AA. J Int Soc Sports Nutr 2018;15:10).
    assert useful_meals(subject(), 0.4 * 80 * 4) == 4
    assert useful_meals(subject(), 0.4 * 80 * 4 - 1) == 3
    assert useful_meals(subject(), 5) == 1
