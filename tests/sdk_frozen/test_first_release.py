"""What a client of the first release relies on. Frozen: where one of these fails, the service is wrong, not the test.

The requests are written out here as that release's users wrote them, and use the SDK's public names alone. Nothing is
imported from the other tests, so that nothing here moves with them.
"""

import asyncio
from collections.abc import Iterator
from datetime import date, timedelta
from typing import Any

import httpx
import pytest
from examples.local_service import LocalService
from steelyard_client import (
    AsyncSteelyard,
    BadRequest,
    BodyComposition,
    Forecast,
    GuardRailRefusal,
    InvalidRequest,
    Maintenance,
    Methods,
    Plan,
    Refused,
    Steelyard,
    SteelyardError,
    Trend,
    Unauthorized,
)

START = date(2026, 5, 4)
PROFILE: Any = {
    "sex": "female",
    "age_years": 38,
    "height_cm": 171,
    "weight_kg": 70.4,
    "activity": {"kind": "level", "level": "moderate"},
    "training": {"status": "intermediate", "resistance_sessions_per_week": 4},
}
SCREENING: Any = {
    "is_pregnant": False,
    "is_breastfeeding": False,
    "eating_disorder": "none",
    "conditions": [],
    "medicines": [],
}
LOG: Any = {
    "weights": [
        {"date": START - timedelta(days=28 - i), "weight_kg": round(70.9 - 0.02 * i + 0.2 * (i % 3 - 1), 1)}
        for i in range(28)
    ],
    "intakes": [{"date": START - timedelta(days=28 - i), "intake_kcal": 2150 + 30 * (i % 5)} for i in range(28)],
}


@pytest.fixture
def client(live: LocalService) -> Iterator[Steelyard]:
    with Steelyard(live.url, live.key, transport=httpx.HTTPTransport()) as made:
        yield made


def test_maintenance_of_a_profile(client: Steelyard) -> None:
    answer = client.estimate_maintenance(profile=PROFILE)
    assert isinstance(answer, Maintenance)
    assert 1_500 < answer.maintenance_kcal.lower < answer.maintenance_kcal.mean < answer.maintenance_kcal.upper < 4_000
    assert answer.maintenance_kcal.mean > answer.resting_kcal.mean > 1_000
    assert 1.0 < answer.activity_level < 3.0
    assert 0.1 < answer.body_fat_fraction.mean < 0.5
    assert any(row.is_used for row in answer.equations)
    assert all(row.kcal_per_day > 1_000 for row in answer.equations)
    assert answer.contribution.prior_share == 1.0
    assert answer.contribution.log_share == 0.0
    assert answer.as_of_date is None
    assert answer.cautions
    assert answer.methods
    assert answer.contract_version.startswith("1.")
    assert answer.model_version
    assert len(answer.fingerprint) == 32


def test_maintenance_of_a_log(client: Steelyard) -> None:
    answer = client.estimate_maintenance(profile=PROFILE, log=LOG)
    assert answer.as_of_date == START - timedelta(days=1)
    assert 0 < answer.contribution.log_share < 1
    prior = client.estimate_maintenance(profile=PROFILE).maintenance_kcal
    assert answer.maintenance_kcal.upper - answer.maintenance_kcal.lower < prior.upper - prior.lower


def test_the_same_request_has_the_same_answer(client: Steelyard) -> None:
    assert client.estimate_maintenance(profile=PROFILE) == client.estimate_maintenance(profile=PROFILE)


def test_body_composition(client: Steelyard) -> None:
    answer = client.estimate_body_composition(
        sex="female",
        age_years=38,
        height_cm=171,
        weight_kg=70.4,
        training_status="intermediate",
        measurements=[
            {"kind": "girths", "neck_cm": 32.5, "waist_cm": 76.0, "hip_cm": 99.0},
            {"kind": "reading", "fat_fraction": 0.27, "method": "bioimpedance"},
        ],
    )
    assert isinstance(answer, BodyComposition)
    assert 0.15 < answer.fat_fraction.lower < answer.fat_fraction.mean < answer.fat_fraction.upper < 0.45


def test_plan_of_a_mini_cut(client: Steelyard) -> None:
    answer = client.plan_phases(
        profile=PROFILE, screening=SCREENING, start_date=START, phase={"kind": "mini_cut", "weeks": 4}
    )
    assert isinstance(answer, Plan)
    assert answer.feasible
    assert answer.phases[0].kind == "mini_cut"
    assert answer.phases[0].start_date == START
    assert answer.phases[0].end_date == START + timedelta(days=27)
    assert answer.phases[0].change.fat_kg.mean < 0
    assert len(answer.phases[0].weeks) == 4
    assert answer.cautions


def test_trend_of_a_log(client: Steelyard) -> None:
    answer = client.read_trend(profile=PROFILE, log=LOG)
    assert isinstance(answer, Trend)
    assert answer.as_of_date == START - timedelta(days=1)
    assert len(answer.days.date) == len(answer.days.smoothed_weight_kg.mean) == 28
    assert answer.weekly_rate_kg.lower < answer.weekly_rate_kg.mean < answer.weekly_rate_kg.upper


def test_forecast_of_an_intake(client: Steelyard) -> None:
    answer = client.forecast_intake(
        profile=PROFILE,
        screening=SCREENING,
        start_date=START,
        question={"kind": "path", "schedule": [{"weeks": 4, "intake_kcal": 2400, "protein_g_per_kg": 2.0}]},
    )
    assert isinstance(answer, Forecast)
    assert answer.feasible
    assert len(answer.weeks) >= 4


def test_catalogue(client: Steelyard) -> None:
    methods = client.list_methods()
    assert isinstance(methods, Methods)
    answer = client.estimate_maintenance(profile=PROFILE)
    assert {methods.entry(id_).id for id_ in answer.methods} == set(answer.methods)
    assert methods.entry("screening_unanswered").kind == "rule"


def test_refusals(client: Steelyard, live: LocalService) -> None:
    mini_cut: Any = {"kind": "mini_cut", "weeks": 4}
    with pytest.raises(GuardRailRefusal) as guarded:
        client.plan_phases(profile=PROFILE, start_date=START, phase=mini_cut)
    assert guarded.value.status == 422
    assert guarded.value.rule_id == "screening_unanswered"
    assert guarded.value.request_id
    decades = {**LOG, "weights": [{**LOG["weights"][0], "date": date(1990, 1, 1)}, *LOG["weights"]]}
    with pytest.raises(Refused):
        client.read_trend(profile=PROFILE, log=decades)
    short = {**PROFILE, "height_cm": 90}
    with pytest.raises(InvalidRequest) as ours:
        client.estimate_maintenance(profile=short)
    with pytest.raises(BadRequest) as theirs:
        client.with_options(check_requests=False).estimate_maintenance(profile=short)
    assert theirs.value.status == 400
    assert theirs.value.pointers == ours.value.pointers == ("#/profile/height_cm",)
    assert theirs.value.problem.type_ == "/problems/schema-violation"
    with (
        Steelyard(live.url, "nobody.secret", transport=httpx.HTTPTransport()) as stranger,
        pytest.raises(Unauthorized) as unknown,
    ):
        stranger.list_methods()
    assert unknown.value.problem.type_ == "/problems/key-rejected"
    assert isinstance(unknown.value, SteelyardError)


def test_the_awaited_client_says_the_same(client: Steelyard, live: LocalService) -> None:
    async def ask() -> Maintenance:
        async with AsyncSteelyard(live.url, live.key, transport=httpx.AsyncHTTPTransport()) as awaited:
            return await awaited.estimate_maintenance(profile=PROFILE, log=LOG)

    assert asyncio.run(ask()) == client.estimate_maintenance(profile=PROFILE, log=LOG)
