"""Body density, body fat from what was measured, its error, and the ranges."""

import math
import re

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from lifters import lifter
from steelyard.http.languages import english
from steelyard.science.measures import body_composition, body_density, body_mass_index, girths, skinfolds
from steelyard.science.measures.body_composition import METHOD_ERRORS, FatRange, Standing, fat_estimate, method_error
from steelyard.science.numbers.elementwise import FLOATS, arrays
from steelyard.science.person.person import BodyFatMethod, Sex, TrainingStatus
from steelyard.science.register.errors import OutOfDomain
from steelyard.science.register.evidence import ENTRIES

# --- density --------------------------------------------------------------------------------------------------


# Computed independently of this code from the published coefficients: catches slips of typing only.
@pytest.mark.parametrize(
    ("density", "expected_density", "siri", "brozek"),
    [
        (skinfolds.jackson_pollock_3_men(45.0, 30.0), 1.067697, 13.61, 13.82),
        (skinfolds.jackson_pollock_7_men(100.0, 30.0), 1.065353, 14.63, 14.77),
        (skinfolds.jackson_pollock_ward_3_women(60.0, 30.0), 1.044022, 24.13, 23.53),
        (skinfolds.jackson_pollock_ward_7_women(130.0, 30.0), 1.041553, 25.25, 24.57),
    ],
)
def test_skinfolds_give_the_worked_values(density: float, expected_density: float, siri: float, brozek: float) -> None:
    assert density == pytest.approx(expected_density, abs=5e-7)
    assert 100 * body_density.siri(density) == pytest.approx(siri, abs=0.005)
    assert 100 * body_density.brozek(density) == pytest.approx(brozek, abs=0.005)


def test_girths_give_the_worked_values() -> None:
    man = girths.hodgdon_beckett_men(86.0, 39.0, 180.0)
    woman = girths.hodgdon_beckett_women(72.0, 98.0, 32.0, 166.0)
    assert man == pytest.approx(1.061989, abs=5e-7)
    assert woman == pytest.approx(1.037391, abs=5e-7)
    assert 100 * body_density.siri(man) == pytest.approx(16.11, abs=0.005)
    assert 100 * body_density.siri(woman) == pytest.approx(27.16, abs=0.005)


def test_siri_and_brozek_cross_where_algebra_says() -> None:
    # 495/D − 450 = 457/D − 414.2 at D = 38 / 35.8; leaner than that Brozek is the higher.
    crossing = (495 - 457) / (450 - 414.2)
    assert body_density.siri(crossing) == pytest.approx(body_density.brozek(crossing))
    assert body_density.brozek(crossing + 0.01) > body_density.siri(crossing + 0.01)
    assert body_density.brozek(crossing - 0.01) < body_density.siri(crossing - 0.01)


def fat_percent_durnin(sum_mm: float, age: float, male: float) -> float:
    return 100 * float(body_density.siri(skinfolds.durnin_womersley(sum_mm, age, male)))


def test_durnin_meets_the_published_table() -> None:
    # Durnin & Womersley 1974, table of fat from the sum of four skinfolds, 40 mm: men 30-39 y 19.2 %; men 17-29 y
    # 16.4 %, a row that pools the two bands for which the paper gives an equation each.
    assert round(fat_percent_durnin(40.0, 35.0, 1.0), 1) == 19.2
    assert fat_percent_durnin(40.0, 25.0, 1.0) < 16.4 < fat_percent_durnin(40.0, 18.0, 1.0)


def test_durnin_gives_the_worked_values() -> None:
    # Computed independently.
    assert skinfolds.durnin_womersley(40.0, 25.0, 1.0) == pytest.approx(1.061850, abs=5e-7)
    assert fat_percent_durnin(55.0, 25.0, 0.0) == pytest.approx(28.21, abs=0.005)


@pytest.mark.parametrize("male", [0.0, 1.0])
@pytest.mark.parametrize("edge", [20.0, 30.0, 40.0, 50.0])
def test_durnin_bands_are_half_open(male: float, edge: float) -> None:
    before, at, after = (fat_percent_durnin(50.0, age, male) for age in (edge - 1e-6, edge, edge + 9.0))
    assert before != at == after


@pytest.mark.parametrize(
    ("function", "cap"),
    [
        (skinfolds.jackson_pollock_3_men, 150.0),
        (skinfolds.jackson_pollock_ward_3_women, 150.0),
        (skinfolds.jackson_pollock_7_men, 300.0),
        (skinfolds.jackson_pollock_ward_7_women, 300.0),
    ],
)
def test_density_falls_all_the_way_to_the_cap_and_no_further(function, cap: float) -> None:  # type: ignore[no-untyped-def]
    sums = np.linspace(1.0, cap, 400)
    assert (np.diff(function(sums, 40.0)) < 0).all()
    with pytest.raises(OutOfDomain) as raised:
        function(cap + 0.1, 40.0)
    assert raised.value.code == "SKINFOLD_SUM_OUTSIDE_DOMAIN"
    with pytest.raises(OutOfDomain):
        function(np.array([30.0, cap + 0.1]), 40.0)


def test_formula_text_is_made_of_the_coefficients() -> None:
    for id, numbers in {
        "hodgdon_beckett_men": ("1.0324", "0.19077", "0.15456"),
        "hodgdon_beckett_women": ("1.29579", "0.35004", "0.221"),
        "jackson_pollock_3_men": ("1.10938", "0.0008267", "0.0000016", "0.0002574", "150"),
        "jackson_pollock_ward_7_women": ("1.097", "0.00046971", "0.00000056", "0.00012828", "300"),
        "durnin_womersley": ("1.1422", "0.0544", "1.1339", "0.0645"),
        "siri": ("495", "450"),
        "brozek": ("457", "414.2"),
        "gallagher_bmi": ("64.5", "848", "0.079", "16.4", "0.05", "39"),
        "deurenberg_bmi": ("1.2", "0.23", "10.8", "5.4"),
        "jackson_bmi": ("0.14", "37.31", "103.94", "39.96", "102.01"),
    }.items():
        for number in numbers:
            assert number in re.findall(r"\d+(?:\.\d+)?", ENTRIES[id].formula), (id, number)


def test_a_changed_coefficient_moves_the_density_and_the_text() -> None:
    men = girths._GIRTHS_MEN
    changed = men._replace(m=0.2)
    assert "0.2 log10" in changed.formula
    assert changed.formula != men.formula
    difference = changed.density(47.0, 180.0, FLOATS) - men.density(47.0, 180.0, FLOATS)
    assert difference == pytest.approx(-(0.2 - 0.19077) * math.log10(47.0))


# --- impossible input -------------------------------------------------------------------------------------------


@pytest.mark.parametrize("neck", [86.0, 90.0])
def test_a_neck_as_wide_as_the_abdomen_is_refused(neck: float) -> None:
    with pytest.raises(OutOfDomain) as raised:
        girths.hodgdon_beckett_men(86.0, neck, 180.0)
    assert (raised.value.code, raised.value.field) == ("GIRTHS_IMPOSSIBLE", "neck_cm")
    assert isinstance(raised.value, ValueError)
    with pytest.raises(OutOfDomain):
        girths.hodgdon_beckett_men(np.array([86.0, 86.0]), np.array([39.0, neck]), 180.0, arrays())


@pytest.mark.parametrize("fraction", [0.0299, 0.6001, -1.0, 15.0, math.nan])
def test_a_reading_outside_the_domain_is_refused(fraction: float) -> None:
    with pytest.raises(OutOfDomain):
        fat_estimate(lifter(fat=fraction))


@pytest.mark.parametrize("fraction", [0.03, 0.60])
def test_the_ends_of_the_domain_are_accepted(fraction: float) -> None:
    assert fat_estimate(lifter(fat=fraction)).mean == fraction


def test_unspecified_sex_takes_both_equations_and_widens() -> None:
    guess = fat_estimate(lifter(Sex.UNSPECIFIED))
    low, high = (fat_estimate(lifter(sex)) for sex in (Sex.MALE, Sex.FEMALE))
    assert guess.mean == pytest.approx((low.mean + high.mean) / 2)
    assert guess.sd > low.sd


# --- body mass index --------------------------------------------------------------------------------------------


def test_bmi_equations_give_the_worked_values() -> None:
    # Computed independently for a man of 80 kg, 1.80 m and a woman of 62 kg, 1.66 m, both 30 y.
    man, woman = body_mass_index.bmi(80.0, 180.0), body_mass_index.bmi(62.0, 166.0)
    assert (man, woman) == (pytest.approx(24.691, abs=5e-4), pytest.approx(22.500, abs=5e-4))
    for function, men, women in (
        (body_mass_index.deurenberg_bmi, 20.33, 28.50),
        (body_mass_index.gallagher_bmi, 19.21, 29.18),
        (body_mass_index.jackson_bmi, 19.89, 26.61),
    ):
        assert 100 * function(man, 30.0, 1.0) == pytest.approx(men, abs=0.005)
        assert 100 * function(woman, 30.0, 0.0) == pytest.approx(women, abs=0.005)


def test_gallagher_reproduces_the_healthy_ranges() -> None:
    # Gallagher 2000: the ranges are the body fat at BMI 18.5 and 25. The table prints whole points and rests on the
    # paper's own fits by ethnic group, so agreement to a point and a half is what rounding and pooling leave.
    for sex, male in ((Sex.MALE, 1.0), (Sex.FEMALE, 0.0)):
        for age in (30.0, 50.0, 70.0):
            table = body_composition.healthy_range(sex, age)
            assert body_mass_index.gallagher_bmi(18.5, age, male) == pytest.approx(table.lower, abs=0.015)
            assert body_mass_index.gallagher_bmi(25.0, age, male) == pytest.approx(table.upper, abs=0.015)


def test_without_a_reading_the_estimate_is_wide_and_not_called_measured() -> None:
    trained, untrained = (fat_estimate(lifter(status=s)) for s in (TrainingStatus.NOVICE, TrainingStatus.UNTRAINED))
    for result in (trained, untrained):
        assert result.method is BodyFatMethod.BMI_EQUATION
        assert not result.is_measured
        assert result.mean == pytest.approx((0.2033 + 0.1921 + 0.1989) / 3, abs=1e-4)
    assert trained.sd >= 0.06
    assert trained.sd > untrained.sd


def test_a_number_from_bmi_given_as_a_reading_is_no_better() -> None:
    given_reading = fat_estimate(lifter(fat=0.2, method=BodyFatMethod.BMI_EQUATION))
    assert given_reading.sd == fat_estimate(lifter()).sd
    assert not given_reading.is_measured


@given(weight=st.floats(30, 250), height=st.floats(130, 215), age=st.floats(14, 95), male=st.sampled_from((0.0, 1.0)))
def test_fat_from_bmi_is_always_a_possible_fraction(weight: float, height: float, age: float, male: float) -> None:
    assert 0.03 <= body_mass_index.fat_fraction_from_bmi(weight, height, age, male) <= 0.60


def test_ffmi_gives_the_worked_values() -> None:
    # Computed independently.
    assert body_mass_index.ffmi(80.0, 180.0, 0.15) == pytest.approx(20.99, abs=0.005)
    assert body_mass_index.ffmi_normalised(80.0, 180.0, 0.15) == pytest.approx(20.99, abs=0.005)
    assert body_mass_index.ffmi_normalised(74.0, 175.0, 0.12) == pytest.approx(21.58, abs=0.005)


def test_an_unusual_index_asks_for_a_check() -> None:
    assert body_mass_index.ffmi_notes(Sex.MALE, 27.0) == ()
    assert body_mass_index.ffmi_notes(Sex.FEMALE, 23.0) == ()
    (note,) = body_mass_index.ffmi_notes(Sex.FEMALE, 23.1)
    assert note.params == {"ffmi": 23.1, "limit": 23.0}
    assert "pounds" in english(note)
    assert body_mass_index.ffmi_notes(Sex.UNSPECIFIED, 25.0) == ()


# --- the error of a method ----------------------------------------------------------------------------------------


@pytest.mark.parametrize("method", BodyFatMethod)
def test_every_method_has_an_error_and_agrees_with_the_single_reading(method: BodyFatMethod) -> None:
    error = METHOD_ERRORS[method]
    assert 0.0 < error.day_to_day_sd < error.sd
    assert ENTRIES[f"body_fat_error_{method}"].value == error.sd
    for status in TrainingStatus:
        single = fat_estimate(lifter(status=status, fat=0.2, method=method))
        assert single.sd == method_error(method, status).sd
        assert single.is_measured is (method is not BodyFatMethod.BMI_EQUATION)


# --- ranges -------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("sex", "age", "lower", "upper"),
    [
        (Sex.MALE, 20, 0.08, 0.20),
        (Sex.MALE, 39.99, 0.08, 0.20),
        (Sex.MALE, 40, 0.11, 0.22),
        (Sex.MALE, 60, 0.13, 0.25),
        (Sex.FEMALE, 39.99, 0.21, 0.33),
        (Sex.FEMALE, 59.99, 0.23, 0.34),
        (Sex.FEMALE, 85, 0.24, 0.36),
        (Sex.UNSPECIFIED, 30, 0.08, 0.33),
    ],
)
def test_healthy_ranges_follow_the_table(sex: Sex, age: float, lower: float, upper: float) -> None:
    # Gallagher 2000, table of ranges by sex and age (read in transcriptions that agree).
    assert body_composition.healthy_range(sex, age) == FatRange(lower, upper)


def test_standing_counts_the_ends_as_within() -> None:
    band = FatRange(0.08, 0.20)
    assert [band.standing(x) for x in (0.0799, 0.08, 0.20, 0.2001)] == [
        Standing.BELOW,
        Standing.WITHIN,
        Standing.WITHIN,
        Standing.ABOVE,
    ]


def test_the_stricter_minimum_serves_an_unspecified_sex() -> None:
    men, women, both = (body_composition.lowest_fat_fraction(sex) for sex in (Sex.MALE, Sex.FEMALE, Sex.UNSPECIFIED))
    assert men < women == both


# --- arrays -------------------------------------------------------------------------------------------------------


def test_arrays_equal_scalars() -> None:
    rng = np.random.default_rng(5)
    n = 100
    ops = arrays()
    age = rng.uniform(16, 80, n)
    age[:4] = (20.0, 30.0, 40.0, 50.0)
    male = rng.integers(0, 2, n).astype(float)
    sums, abdomen, neck = rng.uniform(15, 150, n), rng.uniform(70, 130, n), rng.uniform(30, 45, n)
    hip, height, weight = rng.uniform(85, 130, n), rng.uniform(150, 205, n), rng.uniform(45, 140, n)
    index = body_mass_index.bmi(weight, height)

    cases = [
        (lambda o, s, a, m: skinfolds.durnin_womersley(s, a, m, o), (sums, age, male)),
        (lambda o, s, a: skinfolds.jackson_pollock_3_men(s, a), (sums, age)),
        (lambda o, s, a: skinfolds.jackson_pollock_ward_7_women(s, a), (sums, age)),
        (lambda o, a, k, h: girths.hodgdon_beckett_men(a, k, h, o), (abdomen, neck, height)),
        (lambda o, w, p, k, h: girths.hodgdon_beckett_women(w, p, k, h, o), (abdomen, hip, neck, height)),
        (lambda o, i, a, m: body_mass_index.deurenberg_bmi(i, a, m), (index, age, male)),
        (lambda o, i, a, m: body_mass_index.gallagher_bmi(i, a, m), (index, age, male)),
        (lambda o, i, a, m: body_mass_index.jackson_bmi(i, a, m, o), (index, age, male)),
        (lambda o, *x: body_mass_index.fat_fraction_from_bmi(*x, o), (weight, height, age, male)),
        (lambda o, *x: body_mass_index.ffmi_normalised(*x), (weight, height, male * 0.2)),
    ]
    for function, columns in cases:
        many = function(ops, *columns)
        one = [function(FLOATS, *map(float, row)) for row in zip(*columns, strict=True)]
        np.testing.assert_allclose(many, one, rtol=1e-11)
