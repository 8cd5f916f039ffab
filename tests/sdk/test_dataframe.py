"""Answers as data frames, against the live service."""

import subprocess
import sys
from datetime import timedelta
from typing import Any

import numpy as np
import pandas as pd
import pytest
from examples.local_service import ROOT, LocalService
from sdk_caller import PROFILE, SCREENING, START
from steelyard_client import Steelyard, to_dataframe
from steelyard_client.request_types import ProfileDict

WEEKS: dict[str, Any] = {"kind": "mini_cut", "weeks": 4}
MEASURED: ProfileDict = {
    **PROFILE,
    "body_fat": {"method": "skinfolds", "fat_fraction": 0.27},
}


@pytest.fixture(scope="module")
def client(live: LocalService) -> Steelyard:
    return Steelyard(*live, timeout_seconds=60)


def test_a_plan_is_its_weeks(client: Steelyard) -> None:
    plan = client.plan_phases(profile=PROFILE, screening=SCREENING, start_date=START, phase=WEEKS)
    frame = to_dataframe(plan)
    weeks = [(phase, week) for phase in plan.phases for week in phase.weeks]
    assert len(frame) == len(weeks)
    assert list(frame["kind"]) == [phase.kind for phase, _ in weeks]
    assert frame["phase"].iloc[-1] == len(plan.phases)
    for i, (_, week) in enumerate(weeks):
        assert frame["intake_kcal"].iloc[i] == week.intake_kcal
        assert frame["weight_kg"].iloc[i] == week.at_end.weight_kg.mean
        assert frame["fat_kg_lower"].iloc[i] == week.at_end.fat_kg.lower
        assert frame["fat_kg_upper"].iloc[i] == week.at_end.fat_kg.upper
    assert frame["start_date"].iloc[0] == pd.Timestamp(START)
    assert frame["end_date"].iloc[0] == pd.Timestamp(plan.phases[0].weeks[0].at_end.date)
    assert frame.attrs["fingerprint"] == plan.fingerprint
    assert frame.attrs["cautions"] == [caution.text for caution in plan.cautions] != []


def test_a_trend_is_its_days_and_a_missing_weight_is_missing(client: Steelyard) -> None:
    days = [day for day in range(21) if day != 5]
    weights: Any = [{"date": START + timedelta(days=day), "weight_kg": 70.4 - 0.02 * day} for day in days]
    frame = to_dataframe(client.read_trend(profile=PROFILE, log={"weights": weights}))
    assert len(frame) == 21
    assert frame["date"].is_monotonic_increasing
    assert (frame["date"].diff().dropna() == pd.Timedelta(days=1)).all()
    assert list(np.flatnonzero(frame["observed_weight_kg"].isna())) == [5]
    assert (frame["weight_kg_lower"] < frame["weight_kg_upper"]).all()


def test_a_forecast_is_its_weeks(client: Steelyard) -> None:
    question: Any = {"kind": "path", "schedule": [{"weeks": 4, "intake_kcal": 2400}]}
    forecast = client.forecast_intake(profile=PROFILE, start_date=START, question=question, screening=SCREENING)
    frame = to_dataframe(forecast)
    assert len(frame) == len(forecast.weeks) == 4
    assert list(frame["lean_kg"]) == [week.at_end.lean_kg.mean for week in forecast.weeks]


def test_a_season_and_an_optimum_are_their_weeks(client: Steelyard) -> None:
    season = client.plan_season(
        profile=MEASURED,
        screening=SCREENING,
        start_date=START,
        horizon_weeks=26,
        strategy={"kind": "ready_made", "name": "slow_gain_rare_mini_cuts"},
    )
    optimum = client.optimise_season(
        profile=MEASURED, screening=SCREENING, start_date=START, horizon_weeks=16, strategies_searched=500
    )
    for answer in (season, optimum):
        frame = to_dataframe(answer)
        assert list(frame["week"]) == [week.week for week in answer.plan.weeks]
        assert list(frame["fat_fraction_upper"]) == [week.at_end.fat_fraction.upper for week in answer.plan.weeks]


def test_a_comparison_is_its_strategies(client: Steelyard) -> None:
    compared = client.compare_strategies(
        profile=MEASURED,
        screening=SCREENING,
        start_date=START,
        horizon_weeks=26,
        strategies=[
            {"kind": "ready_made", "name": "slow_gain_rare_mini_cuts"},
            {"kind": "ready_made", "name": "slow_gain_no_cut"},
        ],
    )
    frame = to_dataframe(compared).set_index("label")
    for one in compared.strategies:
        row = frame.loc[one.label]
        assert row["lean_gained_kg"] == one.expected.lean_gained_kg
        assert row["lean_gained_kg_lower"] == one.intervals.lean_gained_kg.lower
        assert row["days_dieting"] == one.expected.days_dieting


def test_a_plan_that_is_not_feasible_is_empty_and_keeps_its_cautions(client: Steelyard) -> None:
    hopeless: Any = {"kind": "mini_cut", "weeks": 2, "fat_loss_kg": 12.0}
    plan = client.plan_phases(profile=PROFILE, screening=SCREENING, start_date=START, phase=hopeless)
    assert not plan.feasible
    frame = to_dataframe(plan)
    assert frame.empty
    assert frame.attrs["cautions"]


def test_what_has_no_rows_is_refused(client: Steelyard) -> None:
    answer: Any = client.estimate_maintenance(profile=PROFILE)
    with pytest.raises(TypeError, match="not Maintenance"):
        to_dataframe(answer)


WITHOUT_EXTRAS = """
import sys
for name in ("pandas", "rich"):
    sys.modules[name] = None
from steelyard_client import to_dataframe
from steelyard_client.answers import Plan
from steelyard_client.batch_progress import progress_bar
plan = Plan.__new__(Plan)
plan.phases = []
for use in (lambda: to_dataframe(plan), lambda: progress_bar().__enter__()):
    try:
        use()
    except ImportError as error:
        print(error)
"""


def test_without_the_extras_the_client_works_and_says_what_is_missing() -> None:
    command = [sys.executable, "-c", WITHOUT_EXTRAS]
    result = subprocess.run(command, capture_output=True, text=True, cwd=ROOT / "sdk", check=False)
    assert result.returncode == 0, result.stderr
    assert "pip install 'steelyard-client[dataframe]'" in result.stdout
    assert "pip install 'steelyard-client[progress]'" in result.stdout
