"""Body fat from several measurements: shared errors, repeats, disagreement, and the ranges of the equations."""

import math
import re

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import minimize
from steelyard.http.languages import english
from steelyard.science.measures import composition_estimate, fat_combination
from steelyard.science.measures.body_composition import METHOD_ERRORS, Standing, method_error
from steelyard.science.measures.body_density import brozek, siri
from steelyard.science.measures.composition_estimate import Composition
from steelyard.science.measures.fat_combination import FatValue, combine
from steelyard.science.measures.fat_measurements import (
    DensityConversion,
    Girths,
    HeightAndWeight,
    MeasuredPerson,
    Measurement,
    Skinfolds,
)
from steelyard.science.measures.girths import hodgdon_beckett_men
from steelyard.science.measures.skinfolds import SkinfoldMethod, skinfold_equation
from steelyard.science.numbers.estimate import Z80
from steelyard.science.person.person import BodyFatMethod, BodyFatReading, Sex, TrainingStatus
from steelyard.science.register.errors import OutOfDomain
from steelyard.science.register.evidence import ENTRIES

METHODS = list(BodyFatMethod)


def value(fraction: float, method: BodyFatMethod = BodyFatMethod.DXA) -> FatValue:
    return FatValue(fraction, method, METHOD_ERRORS[method])


def subject(
    sex: Sex = Sex.MALE, age: float = 30.0, weight: float = 80.0, training: str = "intermediate"
) -> MeasuredPerson:
    height = 166.0 if sex is Sex.FEMALE else 180.0
    return MeasuredPerson(sex=sex, age_years=age, height_cm=height, weight_kg=weight, training=TrainingStatus(training))


def estimate(*measurements: Measurement, **who: object) -> Composition:
    return composition_estimate.estimate_composition(subject(**who), measurements)  # type: ignore[arg-type]


def codes(messages: tuple) -> set[str]:  # type: ignore[type-arg]
    return {message.code for message in messages}


MAN_GIRTHS = Girths(girths_cm={"neck_cm": 39.0, "abdomen_cm": 86.0})
JP3 = Skinfolds(skinfolds_mm={"chest": 10.0, "abdomen": 20.0, "thigh": 15.0}, equation=SkinfoldMethod.JACKSON_POLLOCK_3)


# --- combining ----------------------------------------------------------------------------------------------------


def test_repeats_shrink_only_the_day_to_day_error() -> None:
    error = METHOD_ERRORS[BodyFatMethod.DXA]
    four = combine([value(f) for f in (0.14, 0.16, 0.15, 0.15)])
    assert combine([value(0.15)]).fat.sd == pytest.approx(error.sd)
    assert four.fat.mean == pytest.approx(0.15)
    assert four.fat.sd == pytest.approx(math.sqrt(error.sd**2 - error.day_to_day_sd**2 * 3 / 4))
    many = combine([value(0.15)] * 1000).fat.sd
    assert many == pytest.approx(error.bias_sd, rel=1e-3)
    assert many > 0.9 * error.sd


def test_methods_that_share_nothing_are_weighted_by_inverse_variance() -> None:
    both = combine([value(0.15), value(0.18, BodyFatMethod.BIOIMPEDANCE)])
    a, b = METHOD_ERRORS[BodyFatMethod.DXA].sd, METHOD_ERRORS[BodyFatMethod.BIOIMPEDANCE].sd
    assert both.fat.mean == pytest.approx((0.15 / a**2 + 0.18 / b**2) / (1 / a**2 + 1 / b**2))
    assert both.fat.sd == pytest.approx(1 / math.sqrt(1 / a**2 + 1 / b**2))
    assert both.weights == pytest.approx((b**2 / (a**2 + b**2), a**2 / (a**2 + b**2)))


@given(
    own=st.lists(st.floats(1e-5, 4e-3), min_size=1, max_size=6),
    shared=st.lists(st.one_of(st.just(0.0), st.floats(0.0, 0.07)), min_size=6, max_size=6),
)
def test_weights_are_the_best_that_are_not_negative(own: list[float], shared: list[float]) -> None:
    # Against scipy's SLSQP on the same covariance, started from equal weights.
    loads = np.array(shared[: len(own)])
    covariance = (np.diag(own) + np.outer(loads, loads)) * 1e3
    weights, variance = fat_combination._least_variance(own, list(loads))
    assert min(weights) >= 0.0
    assert sum(weights) == pytest.approx(1.0)
    assert 1e3 * variance == pytest.approx(np.array(weights) @ covariance @ np.array(weights))
    found = minimize(
        lambda w: w @ covariance @ w,
        np.full(len(own), 1 / len(own)),
        jac=lambda w: 2 * covariance @ w,
        bounds=[(0, 1)] * len(own),
        constraints={"type": "eq", "fun": lambda w: w.sum() - 1},
        options={"ftol": 1e-12, "maxiter": 500},
    )
    # No allowed weights do better (SLSQP stops within its own tolerance, so one side only), ...
    assert 1e3 * variance <= found.fun * (1 + 1e-9)
    # ... and none of its are much worse unless it failed.
    assert not found.success or found.fun <= 1e3 * variance * (1 + 1e-3)


def test_bmi_adds_nothing_to_girths_in_people_who_train() -> None:
    alone, both = estimate(MAN_GIRTHS), estimate(MAN_GIRTHS, HeightAndWeight())
    assert both.fat_fraction == alone.fat_fraction
    assert both.rows[1].weight == 0.0
    assert "MEASUREMENT_ADDS_NOTHING" in codes(both.rows[1].notes)


def test_shared_errors_are_counted_once() -> None:
    girths, folds = (METHOD_ERRORS[m].sd for m in (BodyFatMethod.GIRTHS, BodyFatMethod.SKINFOLDS))
    if_independent = 1 / math.sqrt(1 / girths**2 + 1 / folds**2)
    both = estimate(MAN_GIRTHS, JP3)
    assert if_independent < both.fat.sd < folds


fat_values = st.lists(st.builds(value, st.floats(0.03, 0.6), st.sampled_from(METHODS)), min_size=1, max_size=8)


@given(values=fat_values)
def test_the_mean_lies_between_and_order_does_not_matter(values: list[FatValue]) -> None:
    result, backwards = combine(values), combine(values[::-1])
    fractions = [v.fat_fraction for v in values]
    assert min(fractions) - 1e-12 <= result.fat.mean <= max(fractions) + 1e-12
    assert sum(result.weights) == pytest.approx(1.0)
    assert min(result.weights) >= 0.0
    assert math.isfinite(result.fat.sd)
    assert result.fat.sd > 0.0
    assert (backwards.fat.mean, backwards.fat.sd) == (pytest.approx(result.fat.mean), pytest.approx(result.fat.sd))


@given(values=fat_values, one_more=st.builds(value, st.floats(0.03, 0.6), st.sampled_from(METHODS)))
def test_one_more_that_agrees_never_widens(values: list[FatValue], one_more: FatValue) -> None:
    before, after = combine(values), combine([*values, one_more])
    if not after.notes:
        assert after.fat.sd <= before.fat.sd * (1 + 1e-12)


@given(methods=st.lists(st.sampled_from(METHODS), min_size=1, max_size=5, unique=True), data=st.data())
def test_a_repeat_of_the_same_value_never_widens_even_where_methods_disagree(
    methods: list[BodyFatMethod], data: st.DataObject
) -> None:
    values = [value(data.draw(st.floats(0.03, 0.6)), method) for method in methods]
    sds = [combine(values * n).fat.sd for n in (1, 2, 3, 10)]
    assert sds == sorted(sds, reverse=True)
    one = data.draw(st.sampled_from(values))
    assert combine([*values, one]).fat.sd <= combine(values).fat.sd * (1 + 1e-12)


# --- disagreement --------------------------------------------------------------------------------------------------


def test_methods_that_disagree_are_named_and_the_interval_holds_both() -> None:
    # 20 points apart, where the errors explain sqrt(2.5² + 2.7²) = 3.7: more than 5 SD.
    both = combine([value(0.10), value(0.30, BodyFatMethod.HYDROSTATIC)])
    (note,) = both.notes
    assert note.code == "MEASUREMENTS_DISAGREE"
    assert note.params["difference_points"] == pytest.approx(20.0)
    assert note.params["expected_points"] == pytest.approx(3.68, abs=0.005)
    assert both.fat.lower < 0.12
    assert both.fat.upper > 0.28
    # With all doubt cast, the variance of two is that of their observed spread: (20 points)² / 4.
    assert both.fat.sd == pytest.approx(0.10, rel=0.02)


def test_disagreement_widens_smoothly_and_not_before_it_is_told() -> None:
    expected = math.hypot(METHOD_ERRORS[BodyFatMethod.DXA].sd, METHOD_ERRORS[BodyFatMethod.HYDROSTATIC].sd)
    at = [combine([value(0.2), value(0.2 + z * expected, BodyFatMethod.HYDROSTATIC)]) for z in np.arange(0, 5, 0.01)]
    sd = np.array([result.fat.sd for result in at])
    told = np.array([bool(result.notes) for result in at])
    assert (np.diff(sd) >= 0).all()
    assert np.ptp(sd[~told]) < 1e-15
    assert np.argmax(told) == pytest.approx(250, abs=1)
    # The variance, hence the SD near the start of the ramp, grows without a jump: no step of 0.01 SD adds more than
    # a tenth.
    assert (sd[1:] / sd[:-1] < 1.1).all()


def test_repeats_that_scatter_are_named_and_widen() -> None:
    calm, wild = combine([value(0.15), value(0.16)]), combine([value(0.08), value(0.23)])
    assert not calm.notes
    assert codes(wild.notes) == {"REPEATS_SCATTER"}
    assert wild.fat.sd > 2 * calm.fat.sd
    # Then the day-to-day part is the observed one: SD 15 / sqrt(2) points, of a mean of two 7.5.
    assert wild.fat.sd == pytest.approx(math.hypot(METHOD_ERRORS[BodyFatMethod.DXA].bias_sd, 0.075))


def test_bmi_casts_no_doubt_on_a_measurement() -> None:
    # A heavy lean lifter: BMI 31, girths of a lean man.
    lifter = estimate(MAN_GIRTHS, HeightAndWeight(), weight=100.0)
    assert lifter.rows[1].fat.mean - lifter.rows[0].fat.mean > 0.10
    assert not codes(lifter.notes) & {"MEASUREMENTS_DISAGREE"}
    assert lifter.fat.mean == pytest.approx(lifter.rows[0].fat.mean)


# --- single measurements ---------------------------------------------------------------------------------------------


def test_a_single_measurement_is_its_equation() -> None:
    girths, folds = estimate(MAN_GIRTHS), estimate(JP3)
    # Computed independently from the published coefficients.
    assert girths.fat.mean == pytest.approx(0.1611, abs=5e-5)
    assert folds.fat.mean == pytest.approx(0.1361, abs=5e-5)
    assert girths.fat.sd == pytest.approx(METHOD_ERRORS[BodyFatMethod.GIRTHS].sd)
    assert folds.fat.sd == pytest.approx(METHOD_ERRORS[BodyFatMethod.SKINFOLDS].sd)
    by_brozek = estimate(Skinfolds(**{**_fields(JP3), "conversion": DensityConversion.BROZEK}))
    assert by_brozek.fat.mean == pytest.approx(0.1382, abs=5e-5)
    assert "brozek" in by_brozek.rows[0].methods
    assert brozek(1.067697) == pytest.approx(by_brozek.fat.mean, abs=5e-6)


def _fields(folds: Skinfolds) -> dict:  # type: ignore[type-arg]
    return {"skinfolds_mm": folds.skinfolds_mm, "equation": folds.equation, "conversion": folds.conversion}


@pytest.mark.parametrize("status", TrainingStatus)
@pytest.mark.parametrize("method", BodyFatMethod)
def test_a_single_reading_has_the_error_of_its_method(method: BodyFatMethod, status: TrainingStatus) -> None:
    result = estimate(BodyFatReading(fat_fraction=0.2, method=method), training=status)
    assert result.fat.sd == pytest.approx(method_error(method, status).sd)
    assert result.fat.is_measured is (method is not BodyFatMethod.BMI_EQUATION)
    assert 0.0 < METHOD_ERRORS[method].day_to_day_sd < METHOD_ERRORS[method].sd


def test_an_unspecified_sex_gets_the_range_over_both() -> None:
    girths = Girths(girths_cm={"neck_cm": 35.0, "abdomen_cm": 84.0, "waist_cm": 74.0, "hip_cm": 98.0})
    who = {"age_years": 30.0, "height_cm": 172.0, "weight_kg": 70.0, "training": TrainingStatus.NOVICE}
    man, woman, both = (
        composition_estimate.estimate_composition(MeasuredPerson(sex=sex, **who), [girths, HeightAndWeight()])  # type: ignore[arg-type]
        for sex in (Sex.MALE, Sex.FEMALE, Sex.UNSPECIFIED)
    )
    assert both.fat_fraction.lower == pytest.approx(min(man.fat_fraction.lower, woman.fat_fraction.lower))
    assert both.fat_fraction.upper == pytest.approx(max(man.fat_fraction.upper, woman.fat_fraction.upper))
    assert both.fat_fraction.mean == pytest.approx((man.fat_fraction.mean + woman.fat_fraction.mean) / 2)
    assert "TWO_SEXES" in codes(both.cautions)
    assert "MEASURE_NOT_USED" in codes(man.rows[0].notes) & codes(woman.rows[0].notes)
    assert "MEASURE_NOT_USED" not in codes(both.rows[0].notes)


# --- outside the published range --------------------------------------------------------------------------------------


@pytest.mark.parametrize("sex", [Sex.MALE, Sex.FEMALE])
@pytest.mark.parametrize("method", SkinfoldMethod)
def test_every_skinfold_equation_has_the_years_and_the_sites_that_the_catalogue_prints(
    method: SkinfoldMethod, sex: Sex
) -> None:
    found = skinfold_equation(method, sex is Sex.MALE)
    entry = ENTRIES[found.id]
    who = "men" if sex is Sex.MALE else "women"
    printed = re.search(rf"\b{who} (\d+)-(\d+) y", entry.valid_range or "")
    assert printed
    assert (float(printed[1]), float(printed[2])) == found.ages
    assert " + ".join(found.sites) in entry.formula


@pytest.mark.parametrize(
    "id", ["hodgdon_beckett_men", "hodgdon_beckett_women", "deurenberg_bmi", "gallagher_bmi", "jackson_bmi"]
)
def test_the_others_are_for_adults(id: str) -> None:
    assert re.match(r"adults|(wo)?men from 18 y", ENTRIES[id].valid_range or "")


@pytest.mark.parametrize(
    ("sex", "equation", "inside", "outside"),
    [
        (Sex.MALE, SkinfoldMethod.JACKSON_POLLOCK_3, (18.0, 61.0), (17.9, 61.1)),
        (Sex.FEMALE, SkinfoldMethod.JACKSON_POLLOCK_7, (18.0, 55.0), (17.9, 55.1)),
        (Sex.MALE, SkinfoldMethod.DURNIN_WOMERSLEY_4, (17.0, 72.0), (16.9, 72.1)),
        (Sex.FEMALE, SkinfoldMethod.DURNIN_WOMERSLEY_4, (16.0, 68.0), (15.9, 68.1)),
    ],
)
def test_outside_its_ages_an_equation_warns_and_widens(
    sex: Sex, equation: SkinfoldMethod, inside: tuple[float, float], outside: tuple[float, float]
) -> None:
    sites = ("abdomen", "biceps", "chest", "midaxillary", "subscapular", "suprailiac", "thigh", "triceps")
    folds = Skinfolds(skinfolds_mm=dict.fromkeys(sites, 14.0), equation=equation)
    error = METHOD_ERRORS[BodyFatMethod.SKINFOLDS]
    for age in inside:
        result = estimate(folds, sex=sex, age=age)
        assert result.fat.sd == pytest.approx(error.sd)
        assert "METHOD_OUTSIDE_AGE_RANGE" not in codes(result.rows[0].notes)
    for age in outside:
        result = estimate(folds, sex=sex, age=age)
        assert result.fat.sd == pytest.approx(math.hypot(1.5 * error.bias_sd, error.day_to_day_sd))
        assert "METHOD_OUTSIDE_AGE_RANGE" in codes(result.rows[0].notes)
        assert "body_fat_outside_range" in result.rows[0].methods


def test_bmi_above_its_range_warns_and_widens() -> None:
    heavy, usual = (estimate(HeightAndWeight(), weight=weight, training="untrained") for weight in (130.0, 80.0))
    assert heavy.fat.sd > usual.fat.sd
    assert codes(heavy.rows[0].notes) == {"METHOD_OUTSIDE_BMI_RANGE"}
    assert not usual.rows[0].notes


def test_an_equation_outside_its_range_adds_nothing_beside_one_within() -> None:
    sites = dict.fromkeys(("abdomen", "biceps", "chest", "subscapular", "suprailiac", "thigh", "triceps"), 14.0)
    within = Skinfolds(skinfolds_mm=sites, equation=SkinfoldMethod.DURNIN_WOMERSLEY_4)
    outside = Skinfolds(skinfolds_mm=sites, equation=SkinfoldMethod.JACKSON_POLLOCK_3)
    both = estimate(outside, within, age=65.0)
    assert [row.weight for row in both.rows] == [0.0, 1.0]
    assert both.fat == estimate(within, age=65.0).fat


# --- impossible input -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("measurement", "sex", "code", "place"),
    [
        (Girths(girths_cm={"neck_cm": 86.0, "abdomen_cm": 86.0}), Sex.MALE, "GIRTHS_IMPOSSIBLE", ".neck_cm"),
        (Girths(girths_cm={"neck_cm": 39.0, "abdomen_cm": 50.0}), Sex.MALE, "BODY_FAT_OUTSIDE_DOMAIN", ""),
        (Girths(girths_cm={"neck_cm": 39.0, "abdomen_cm": 250.0}), Sex.MALE, "BODY_FAT_OUTSIDE_DOMAIN", ""),
        (Girths(girths_cm={"neck_cm": 32.0, "waist_cm": 72.0}), Sex.FEMALE, "GIRTH_MISSING", ".hip_cm"),
        (JP3, Sex.FEMALE, "SKINFOLD_SITE_MISSING", ".triceps_mm"),
    ],
)
def test_what_is_impossible_is_refused_where_it_stands(
    measurement: Measurement, sex: Sex, code: str, place: str
) -> None:
    with pytest.raises(OutOfDomain) as raised:
        estimate(BodyFatReading(fat_fraction=0.2, method=BodyFatMethod.DXA), measurement, sex=sex)
    assert (raised.value.code, raised.value.field) == (code, f"measurements[1]{place}")


def test_no_measurement_is_refused() -> None:
    with pytest.raises(OutOfDomain):
        estimate()


# --- masses, position, cautions ---------------------------------------------------------------------------------------


@given(
    sex=st.sampled_from(Sex),
    age=st.floats(13, 100),
    weight=st.floats(30, 300),
    fraction=st.floats(0.03, 0.6),
    method=st.sampled_from(BodyFatMethod),
    training=st.sampled_from(TrainingStatus),
)
def test_every_answer_is_ordered_finite_and_adds_up(
    sex: Sex, age: float, weight: float, fraction: float, method: BodyFatMethod, training: TrainingStatus
) -> None:
    reading = BodyFatReading(fat_fraction=fraction, method=method)
    try:
        result = estimate(reading, HeightAndWeight(), sex=sex, age=age, weight=weight, training=training)
    except OutOfDomain:  # a fat-free mass that no body has
        assume(False)
    for bounds in (result.fat_fraction, result.fat_kg, result.fat_free_kg, result.ffmi, result.ffmi_normalised):
        assert bounds.lower <= bounds.mean <= bounds.upper
        assert all(map(math.isfinite, (bounds.lower, bounds.upper)))
    assert result.fat_fraction.lower >= 0.03
    assert result.fat_fraction.upper <= 0.6
    assert result.fat_kg.mean + result.fat_free_kg.mean == pytest.approx(weight)
    assert result.fat_kg.lower + result.fat_free_kg.upper == pytest.approx(weight)
    if result.position:
        assert sum(result.position.probability.values()) == pytest.approx(1.0)
        assert all(0.0 <= p <= 1.0 for p in result.position.probability.values())
    assert (result.position is None) == (age < 18.0)
    assert "NOT_MEDICAL_ADVICE" in codes(result.cautions)


def test_fat_free_mass_index_follows_by_hand() -> None:
    # Kouri 1995, by hand: 80 kg, 1.80 m, 15 % fat: 68 kg / 3.24 m² = 20.99; the normalised one is the same at 1.80 m.
    result = estimate(BodyFatReading(fat_fraction=0.15, method=BodyFatMethod.DXA))
    assert result.ffmi.mean == pytest.approx(68 / 3.24)
    assert result.ffmi_normalised.mean == pytest.approx(68 / 3.24)
    assert result.ffmi.upper - result.ffmi.mean == pytest.approx(Z80 * 0.025 * 80 / 3.24)


def test_the_position_is_that_of_the_normal_distribution() -> None:
    # Range of men of 30: 8-20 %. A DXA of 20 % lies on its end: half above, and 12 points / 2.5 = 4.8 SD from below.
    position = estimate(BodyFatReading(fat_fraction=0.20, method=BodyFatMethod.DXA)).position
    assert position is not None
    assert position.standing is Standing.WITHIN
    assert position.probability[Standing.ABOVE] == pytest.approx(0.5)
    assert position.probability[Standing.BELOW] < 1e-5


@pytest.mark.parametrize(
    ("sex", "age", "fraction", "expected"),
    [
        (Sex.MALE, 30.0, 0.05, "BODY_FAT_AT_MINIMUM"),
        (Sex.MALE, 30.0, 0.07, "BODY_FAT_LOW"),
        (Sex.FEMALE, 30.0, 0.12, "BODY_FAT_AT_MINIMUM"),
        (Sex.FEMALE, 30.0, 0.16, "BODY_FAT_LOW"),
        (Sex.UNSPECIFIED, 30.0, 0.12, "BODY_FAT_AT_MINIMUM"),
        (Sex.MALE, 16.0, 0.15, "UNDER_AGE_NO_TARGET"),
    ],
)
def test_cautions(sex: Sex, age: float, fraction: float, expected: str) -> None:
    reading = BodyFatReading(fat_fraction=fraction, method=BodyFatMethod.DXA)
    assert expected in codes(estimate(reading, sex=sex, age=age).cautions)
    assert expected not in codes(estimate(BodyFatReading(fat_fraction=0.25, method=BodyFatMethod.DXA)).cautions)


def test_a_rare_fat_free_mass_asks_kindly_for_a_check() -> None:
    result = estimate(BodyFatReading(fat_fraction=0.08, method=BodyFatMethod.DXA), weight=100.0)
    (note,) = result.notes
    assert note.code == "FAT_FREE_MASS_INDEX_UNUSUAL"
    assert "Check the weight" in english(note)
    assert not re.search("drug|steroid|false|lie|impossible|cheat", english(note))


@pytest.mark.parametrize(("age", "is_told"), [(18.0, True), (20.0, False), (79.5, False), (80.0, True)])
def test_a_continued_range_is_told(age: float, is_told: bool) -> None:
    result = estimate(BodyFatReading(fat_fraction=0.2, method=BodyFatMethod.DXA), age=age)
    assert ("HEALTHY_RANGE_CONTINUED" in codes(result.notes)) is is_told


def test_siri_of_the_girths_is_what_the_row_says() -> None:
    assert estimate(MAN_GIRTHS).rows[0].fat.mean == siri(hodgdon_beckett_men(86.0, 39.0, 180.0))
