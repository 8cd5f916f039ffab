"""`POST /v1/body-composition`: worked values, refusals with their places, and men who were weighed under water."""

import bz2
import csv
import io
from importlib import resources
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from in_process import Running
from msgspec import convert, to_builtins
from steelyard.http.endpoints.body_composition import estimate_body_composition
from steelyard.http.schemas.body_composition import BodyCompositionRequest, BodyCompositionResponse
from steelyard.science import catalogue
from steelyard.science.measures.body_composition import METHOD_ERRORS
from steelyard.science.numbers.estimate import Z80
from steelyard.science.person.person import BodyFatMethod, Sex, TrainingStatus

PATH = "/v1/body-composition"
MAN = {"sex": "male", "age_years": 30, "height_cm": 180, "weight_kg": 80, "training_status": "intermediate"}
WOMAN = {"sex": "female", "age_years": 30, "height_cm": 166, "weight_kg": 62, "training_status": "novice"}
MAN_GIRTHS = {"kind": "girths", "neck_cm": 39, "abdomen_cm": 86}
WOMAN_GIRTHS = {"kind": "girths", "neck_cm": 32, "waist_cm": 72, "hip_cm": 98}
SEVEN = {
    f"{site}_mm": 100 / 7
    for site in ("chest", "midaxillary", "triceps", "subscapular", "abdomen", "suprailiac", "thigh")
}
JP3_MAN = {"kind": "skinfolds", "equation": "jackson_pollock_3", "chest_mm": 10, "abdomen_mm": 20, "thigh_mm": 15}
JP3_WOMAN = {
    "kind": "skinfolds",
    "equation": "jackson_pollock_3",
    "triceps_mm": 18,
    "suprailiac_mm": 17,
    "thigh_mm": 25,
}
DURNIN = {
    "kind": "skinfolds",
    "equation": "durnin_womersley_4",
    "biceps_mm": 5,
    "triceps_mm": 10,
    "subscapular_mm": 13,
    "suprailiac_mm": 12,
}
DXA = {"kind": "reading", "fat_fraction": 0.15, "method": "dxa"}
BMI = {"kind": "bmi"}


def request(person: dict[str, Any], *measurements: dict[str, Any], **changes: Any) -> dict[str, Any]:
    return {**person, "measurements": list(measurements), **changes}


def compute(person: dict[str, Any], *measurements: dict[str, Any], **changes: Any) -> BodyCompositionResponse:
    """The answer without the network, for the many."""
    body = convert(request(person, *measurements, **changes), BodyCompositionRequest)
    answer = estimate_body_composition.compute(body)
    assert isinstance(answer, BodyCompositionResponse)
    return answer


async def post(service: Running, body: dict[str, Any], status: int = 200) -> dict[str, Any]:
    answer = await service.client.post(PATH, json=body)
    assert answer.status_code == status, answer.text
    document: dict[str, Any] = answer.json()
    return document


def codes(notes: list[dict[str, Any]]) -> set[str]:
    return {note["code"] for note in notes}


# --- values -------------------------------------------------------------------------------------------------------


# The first is printed: Durnin & Womersley 1974, table of fat from the sum of four skinfolds, men 30-39 y, 40 mm:
# 19.2 %. The others are computed independently of this code from the published coefficients.
@pytest.mark.parametrize(
    ("person", "measurement", "percent", "tolerance"),
    [
        (MAN | {"age_years": 35}, DURNIN, 19.2, 0.05),
        (MAN, MAN_GIRTHS, 16.11, 0.01),
        (WOMAN, WOMAN_GIRTHS, 27.16, 0.01),
        (MAN, JP3_MAN, 13.61, 0.01),
        (MAN, JP3_MAN | {"conversion": "brozek"}, 13.82, 0.01),
        (WOMAN, JP3_WOMAN, 24.13, 0.01),
        (WOMAN, JP3_WOMAN | {"conversion": "brozek"}, 23.53, 0.01),
        (MAN, {"kind": "skinfolds", "equation": "jackson_pollock_7", **SEVEN}, 14.63, 0.01),
        (WOMAN, {"kind": "skinfolds", "equation": "jackson_pollock_7"} | {k: 1.3 * v for k, v in SEVEN.items()},
         25.25, 0.01),
        (MAN, DURNIN | {"conversion": "siri"}, 19.17, 0.01),
        (MAN, BMI, (20.33 + 19.21 + 19.89) / 3, 0.01),
        (WOMAN, BMI, (28.50 + 29.18 + 26.61) / 3, 0.01),
        (MAN, DXA, 15.0, 0.0),
    ],
)  # fmt: skip
async def test_worked_values(
    service: Running, person: dict[str, Any], measurement: dict[str, Any], percent: float, tolerance: float
) -> None:
    answer = await post(service, request(person, measurement))
    assert 100 * answer["fat_fraction"]["mean"] == pytest.approx(percent, abs=tolerance + 1e-9)
    (row,) = answer["measurements"]
    assert row["kind"] == measurement["kind"]
    assert row["fat_fraction"] == answer["fat_fraction"]["mean"]
    assert row["weight"] == 1.0
    assert set(row["methods"]) <= set(answer["methods"]) <= set(catalogue.entries())


async def test_the_whole_answer_by_hand(service: Running) -> None:
    # 80 kg, 1.80 m, DXA 15 %, SD 2.5 points: 12 kg of fat, 68 / 3.24 = 20.99 kg/m², ends 1.2816 SD away.
    answer = await post(service, request(MAN, DXA))
    assert answer["fat_fraction"] == {"lower": 0.118, "mean": 0.15, "upper": 0.182, "coverage": 0.8}
    assert answer["fat_kg"] == {"lower": 9.437, "mean": 12.0, "upper": 14.563, "coverage": 0.8}
    assert answer["fat_free_kg"] == {"lower": 65.437, "mean": 68.0, "upper": 70.563, "coverage": 0.8}
    assert answer["ffmi"] == answer["normalised_ffmi"] == {
        "lower": 20.2, "mean": 20.99, "upper": 21.78, "coverage": 0.8
    }  # fmt: skip
    # 20 % lies 2 SD above (0.0228), 8 % 2.8 SD below (0.0026).
    assert answer["healthy_range"] == {
        "lower_fraction": 0.08, "upper_fraction": 0.2, "standing": "within",
        "below_probability": 0.003, "within_probability": 0.974, "above_probability": 0.023,
    }  # fmt: skip
    assert answer["is_measured"] is True
    assert answer["notes"] == []
    assert codes(answer["cautions"]) == {"NOT_MEDICAL_ADVICE"}


async def test_two_methods_by_inverse_variance(service: Running) -> None:
    scale = {"kind": "reading", "fat_fraction": 0.18, "method": "bioimpedance"}
    answer = await post(service, request(MAN, DXA, scale))
    # 1 / 0.025² and 1 / 0.05²: four to one.
    assert [row["weight"] for row in answer["measurements"]] == [0.8, 0.2]
    assert answer["fat_fraction"]["mean"] == pytest.approx(0.8 * 0.15 + 0.2 * 0.18)


async def test_same_request_same_answer(service: Running) -> None:
    body = to_builtins(estimate_body_composition.request_examples["skinfolds_girths_and_readings"])
    assert await post(service, body) == await post(service, body)
    assert (await post(service, body))["fingerprint"] != (await post(service, body | {"age_years": 32}))["fingerprint"]


# --- what is said beside the numbers ---------------------------------------------------------------------------------


async def test_bmi_alone_is_not_called_measured(service: Running) -> None:
    answer = await post(service, request(MAN, BMI))
    assert answer["is_measured"] is False
    assert "FAT_FROM_BMI" in codes(answer["cautions"])
    assert "BMI_OVERSTATES_WITH_MUSCLE" in codes(answer["measurements"][0]["notes"])
    untrained = await post(service, request(MAN, BMI, training_status="untrained"))
    assert untrained["measurements"][0]["standard_deviation"] < answer["measurements"][0]["standard_deviation"]


async def test_disagreement_is_told(service: Running) -> None:
    other = {"kind": "reading", "fat_fraction": 0.35, "method": "hydrostatic"}
    answer = await post(service, request(MAN, DXA, other))
    (note,) = answer["notes"]
    assert note["code"] == "MEASUREMENTS_DISAGREE"
    assert note["params"]["difference_points"] == pytest.approx(20.0)
    assert answer["fat_fraction"]["lower"] < 0.15 < 0.35 < answer["fat_fraction"]["upper"]


async def test_outside_the_published_ages_it_answers_wider_and_says_so(service: Running) -> None:
    within, outside = [await post(service, request(MAN, JP3_MAN, age_years=age)) for age in (61, 62)]
    (note,) = outside["measurements"][0]["notes"]
    assert note["code"] == "METHOD_OUTSIDE_AGE_RANGE"
    assert (note["params"]["from_years"], note["params"]["to_years"]) == (18, 61)
    width = [a["fat_fraction"]["upper"] - a["fat_fraction"]["lower"] for a in (within, outside)]
    assert width[1] > 1.4 * width[0]
    assert within["measurements"][0]["notes"] == []


async def test_under_eighteen_there_is_an_estimate_and_no_range(service: Running) -> None:
    answer = await post(service, request(MAN, MAN_GIRTHS, age_years=16))
    assert answer["healthy_range"] is None
    assert "healthy_body_fat" not in answer["methods"]
    assert "UNDER_AGE_NO_TARGET" in codes(answer["cautions"])
    assert answer["fat_fraction"]["mean"] == pytest.approx(0.1611, abs=1e-4)


async def test_the_least_body_fat_is_warned_of(service: Running) -> None:
    lean = {"kind": "reading", "fat_fraction": 0.045, "method": "four_compartment"}
    answer = await post(service, request(MAN, lean))
    assert "BODY_FAT_AT_MINIMUM" in codes(answer["cautions"])
    assert answer["fat_fraction"]["lower"] == 0.03


async def test_unspecified_sex_gets_the_range_over_both(service: Running) -> None:
    girths = MAN_GIRTHS | {"waist_cm": 80, "hip_cm": 98}
    man, woman, both = [await post(service, request(MAN, girths, sex=sex)) for sex in ("male", "female", "unspecified")]
    assert both["fat_fraction"]["lower"] == man["fat_fraction"]["lower"]
    assert both["fat_fraction"]["upper"] == woman["fat_fraction"]["upper"]
    assert "TWO_SEXES" in codes(both["cautions"])
    assert codes(man["measurements"][0]["notes"]) == {"MEASURE_NOT_USED"}


async def test_a_rare_fat_free_mass_asks_for_a_check(service: Running) -> None:
    answer = await post(service, request(MAN, DXA | {"fat_fraction": 0.07}, weight_kg=100))
    assert codes(answer["notes"]) == {"FAT_FREE_MASS_INDEX_UNUSUAL"}


# --- refusals ---------------------------------------------------------------------------------------------------------

# name, body, pointer, code
OUT_OF_DOMAIN: list[tuple[str, dict[str, Any], str, str]] = [
    ("neck as wide as the abdomen", request(MAN, DXA, MAN_GIRTHS | {"neck_cm": 80, "abdomen_cm": 80}),
     "#/measurements/1/neck_cm", "GIRTHS_IMPOSSIBLE"),
    ("neck wider than the abdomen", request(MAN, MAN_GIRTHS | {"neck_cm": 70, "abdomen_cm": 60}),
     "#/measurements/0/neck_cm", "GIRTHS_IMPOSSIBLE"),
    ("neck wider than waist and hip", request(WOMAN, WOMAN_GIRTHS | {"neck_cm": 80, "waist_cm": 40, "hip_cm": 40}),
     "#/measurements/0/neck_cm", "GIRTHS_IMPOSSIBLE"),
    ("under 3 % fat", request(MAN, MAN_GIRTHS | {"abdomen_cm": 60}), "#/measurements/0", "BODY_FAT_OUTSIDE_DOMAIN"),
    ("over 60 % fat", request(WOMAN, WOMAN_GIRTHS | {"waist_cm": 200, "hip_cm": 220}),
     "#/measurements/0", "BODY_FAT_OUTSIDE_DOMAIN"),
    ("man without abdomen", request(MAN, WOMAN_GIRTHS), "#/measurements/0/abdomen_cm", "GIRTH_MISSING"),
    ("woman without waist", request(WOMAN, BMI, MAN_GIRTHS), "#/measurements/1/waist_cm", "GIRTH_MISSING"),
    ("woman without hip", request(WOMAN, {"kind": "girths", "neck_cm": 32, "waist_cm": 72}),
     "#/measurements/0/hip_cm", "GIRTH_MISSING"),
    ("unspecified with one set of girths", request(MAN, MAN_GIRTHS, sex="unspecified"),
     "#/measurements/0/waist_cm", "GIRTH_MISSING"),
    ("no skinfold at all", request(MAN, {"kind": "skinfolds", "equation": "jackson_pollock_3"}),
     "#/measurements/0/chest_mm", "SKINFOLD_SITE_MISSING"),
    ("sites of the other sex", request(WOMAN, JP3_MAN), "#/measurements/0/triceps_mm", "SKINFOLD_SITE_MISSING"),
    ("three sites for seven", request(MAN, JP3_MAN | {"equation": "jackson_pollock_7"}),
     "#/measurements/0/midaxillary_mm", "SKINFOLD_SITE_MISSING"),
    ("three sites for four", request(MAN, JP3_MAN | {"equation": "durnin_womersley_4"}),
     "#/measurements/0/biceps_mm", "SKINFOLD_SITE_MISSING"),
    ("sum over the cap", request(MAN, JP3_MAN | {"chest_mm": 60, "abdomen_mm": 60, "thigh_mm": 31}),
     "#/measurements/0", "SKINFOLD_SUM_OUTSIDE_DOMAIN"),
    ("skinfolds of nearly nothing", request(MAN, JP3_MAN | {"chest_mm": 1, "abdomen_mm": 1, "thigh_mm": 1}),
     "#/measurements/0", "BODY_FAT_OUTSIDE_DOMAIN"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "body", "pointer", "code"), OUT_OF_DOMAIN, ids=[row[0] for row in OUT_OF_DOMAIN])
async def test_what_cannot_be_computed_is_refused_where_it_stands(
    service: Running, name: str, body: dict[str, Any], pointer: str, code: str
) -> None:
    problem = await post(service, body, 422)
    assert problem["type"] == "/problems/out-of-domain"
    (fault,) = problem["errors"]
    assert (fault["pointer"], fault["code"]) == (pointer, code)
    assert len(fault["detail"]) > 20
    if code == "SKINFOLD_SITE_MISSING":
        missing = pointer.rpartition("/")[2].removesuffix("_mm")
        assert fault["detail"].startswith(f"The {missing} skinfold is missing: this equation needs ")


SCHEMA: list[tuple[str, dict[str, Any], str, str]] = [
    ("no measurements", request(MAN), "#/measurements", "WRONG_LENGTH"),
    ("too many", request(MAN, *[DXA] * 61), "#/measurements", "WRONG_LENGTH"),
    ("unknown kind", request(MAN, {"kind": "photo"}), "#/measurements/0/kind", "NOT_A_CHOICE"),
    ("no kind", request(MAN, {"fat_fraction": 0.2, "method": "dxa"}), "#/measurements/0/kind", "MISSING_FIELD"),
    ("percent for a fraction", request(MAN, DXA | {"fat_fraction": 15}), "#/measurements/0/fat_fraction",
     "OUT_OF_RANGE"),
    ("reading under 3 %", request(MAN, DXA | {"fat_fraction": 0.029}), "#/measurements/0/fat_fraction",
     "OUT_OF_RANGE"),
    ("reading over 60 %", request(MAN, DXA, DXA | {"fat_fraction": 0.601}), "#/measurements/1/fat_fraction",
     "OUT_OF_RANGE"),
    ("unknown method", request(MAN, DXA | {"method": "mirror"}), "#/measurements/0/method", "NOT_A_CHOICE"),
    ("unknown equation", request(MAN, JP3_MAN | {"equation": "jackson_pollock_5"}), "#/measurements/0/equation",
     "NOT_A_CHOICE"),
    ("a field of another kind", request(MAN, BMI | {"fat_fraction": 0.2}), "#/measurements/0/fat_fraction",
     "UNKNOWN_FIELD"),
    ("inches", request(MAN, MAN_GIRTHS | {"neck_cm": 15.5}), "#/measurements/0/neck_cm", "OUT_OF_RANGE"),
    ("skinfold of nothing", request(MAN, JP3_MAN | {"chest_mm": 0}), "#/measurements/0/chest_mm", "OUT_OF_RANGE"),
    ("skinfold as text", request(MAN, JP3_MAN | {"chest_mm": "10"}), "#/measurements/0/chest_mm", "WRONG_TYPE"),
    ("no training status", {k: v for k, v in request(MAN, DXA).items() if k != "training_status"},
     "#/training_status", "MISSING_FIELD"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "body", "pointer", "code"), SCHEMA, ids=[row[0] for row in SCHEMA])
async def test_what_does_not_fit_the_schema_is_refused_where_it_stands(
    service: Running, name: str, body: dict[str, Any], pointer: str, code: str
) -> None:
    problem = await post(service, body, 400)
    (fault,) = problem["errors"]
    assert (fault["pointer"], fault["code"]) == (pointer, code)


# --- properties -------------------------------------------------------------------------------------------------------

PEOPLE = st.fixed_dictionaries(
    {
        "sex": st.sampled_from([s.value for s in Sex]),
        "age_years": st.floats(13, 100),
        "height_cm": st.floats(120, 230),
        "weight_kg": st.floats(30, 300),
        "training_status": st.sampled_from([s.value for s in TrainingStatus]),
    }
)
READINGS = st.fixed_dictionaries(
    {
        "kind": st.just("reading"),
        "fat_fraction": st.floats(0.03, 0.6),
        "method": st.sampled_from([m.value for m in BodyFatMethod]),
    }
)


@given(person=PEOPLE, measurements=st.lists(READINGS | st.just(BMI), min_size=1, max_size=6))
@settings(deadline=None)
def test_every_answer_is_ordered_within_the_measurements_and_never_widened_by_a_repeat(
    person: dict[str, Any], measurements: list[dict[str, Any]]
) -> None:
    # Whatever is measured, this much fat-free mass is on no body and is refused.
    assume(person["weight_kg"] / (person["height_cm"] / 100.0) ** 2 * 0.97 <= 36.0)
    answer = compute(person, *measurements)
    for interval in (answer.fat_fraction, answer.fat_kg, answer.fat_free_kg, answer.ffmi, answer.normalised_ffmi):
        assert interval.lower <= interval.mean <= interval.upper
        assert np.isfinite([interval.lower, interval.upper]).all()
    values = [row.fat_fraction for row in answer.measurements]
    assert min(values) - 1e-4 <= answer.fat_fraction.mean <= max(values) + 1e-4
    assert sum(row.weight for row in answer.measurements) == pytest.approx(1.0, abs=0.001 * len(values))
    if answer.healthy_range:
        r = answer.healthy_range
        assert r.below_probability + r.within_probability + r.above_probability == pytest.approx(1.0)
    doubled = compute(person, *measurements, *measurements)
    if not {n.code for n in answer.notes + doubled.notes} & {"REPEATS_SCATTER"}:
        width, again = (a.fat_fraction.upper - a.fat_fraction.lower for a in (answer, doubled))
        assert again <= width + 2e-4  # each end is rounded to 1e-4


# --- men weighed under water ------------------------------------------------------------------------------------------

COVERAGE_LIMIT = 2.5758 * (0.8 * 0.2 / 249) ** 0.5  # how far from 80 % the coverage of 249 may lie by chance (99 %)


@pytest.fixture(scope="module")
def men() -> list[dict[str, float]]:
    """The 249 sound of 252 men: Johnson RW. Fitting percentage of body fat to simple body measurements.

    J Stat Educ 1996;4(1), data set ``fat`` of the package ``faraway``.
    """
    packed = resources.files("faraway").joinpath("datasets", "fat", "fat.csv.bz2").read_bytes()
    rows = [
        {name: float(row[name]) for name in ("age", "weight", "height", "neck", "abdom", "siri")}
        for row in csv.DictReader(io.StringIO(bz2.decompress(packed).decode()))
    ]
    sound = [row for row in rows if row["height"] > 60 and row["siri"] > 2]
    assert len(sound) == 249
    return sound


def covered(men: list[dict[str, float]], kinds: str) -> float:
    """Share of men whose measured fat lies in the answer's interval, widened by the error of the weighing itself."""
    hits = []
    for man in men:
        girths = {"kind": "girths", "neck_cm": man["neck"], "abdomen_cm": man["abdom"]}
        answer = compute(
            {
                "sex": "male",
                "age_years": man["age"],
                "height_cm": man["height"] * 2.54,
                "weight_kg": man["weight"] * 0.45359237,
                "training_status": "untrained",
            },
            *{"girths": [girths], "bmi": [BMI], "both": [girths, BMI]}[kinds],
        ).fat_fraction
        half = np.hypot((answer.upper - answer.lower) / 2, Z80 * METHOD_ERRORS[BodyFatMethod.HYDROSTATIC].sd)
        hits.append(abs(answer.mean - man["siri"] / 100) <= half)
    return float(np.mean(hits))


# Run with -s to see the coverage. Weights by inverse variance without the shared error would cover 68 % for both.
@pytest.mark.parametrize("kinds", ["girths", "bmi", "both"])
def test_the_intervals_cover_men_weighed_under_water(men: list[dict[str, float]], kinds: str) -> None:
    coverage = covered(men, kinds)
    print(f"\n{kinds}: the 80 % interval covers {coverage:.1%} of 249 men")
    assert coverage == pytest.approx(0.8, abs=COVERAGE_LIMIT)
