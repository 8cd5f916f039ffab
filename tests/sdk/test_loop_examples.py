"""The weekly loop as the SDK's examples show it, against a live server."""

import sys
from datetime import timedelta
from pathlib import Path

import httpx
import pytest
from examples.local_service import ROOT, LocalService
from steelyard_client import Steelyard

sys.path.insert(0, str(ROOT / "sdk" / "examples"))

import eight_weeks
import gym_roster


@pytest.fixture
def client(live: LocalService) -> Steelyard:
    return Steelyard(*live, transport=httpx.HTTPTransport())


def test_eight_weeks_go_from_plan_to_what_comes_next(client: Steelyard) -> None:
    told = list(eight_weeks.story(client))
    assert told[0].startswith("plan: 8 weeks at ")
    assert told[-1].startswith("next: ")
    reviews = told[1:-1]
    assert 6 <= len(reviews) <= 8
    assert "too_early" in reviews[0]
    assert reviews[-1].endswith("end")
    assert any(" +0 kcal" not in line for line in reviews), "something is changed on the way"


def test_a_gym_is_reviewed_in_a_batch_and_ranked_as_one(client: Steelyard, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(gym_roster, "ROSTER_MOST", 7)
    now = gym_roster.review_all(client, gym_roster.invented(client, 20))
    assert len(now) == 20
    places = gym_roster.ranked(client, now, now, gym_roster.TODAY)
    assert len(places) == 20
    assert [place.priority for place in places] == sorted((place.priority for place in places), reverse=True)
    silent = [place for place in places if place.days_silent and place.days_silent > 7]
    assert {place.reference for place in silent} == {f"member-{number:05}" for number in range(0, 20, 9)}
    assert all(place.attention.level >= 1 for place in silent)
    later = gym_roster.ranked(client, now, now, gym_roster.TODAY + timedelta(days=20))
    assert all(place.attention.level >= 2 for place in later)


def test_the_examples_are_where_the_guide_says() -> None:
    assert (Path(ROOT) / "sdk" / "examples" / "gym_roster.py").exists()
