"""A roster: members in the order in which to look at them."""

import json
import random
from datetime import date, timedelta
from typing import Any

import pytest
from steelyard.http.endpoints.rosters import rank_roster
from steelyard.http.schemas.rosters import RosterRequest
from steelyard.http.wire.decoding import BodyDecoder
from steelyard.http.wire.encoding import encode_finite
from steelyard.http.wire.problems import ProblemError
from steelyard.science.register import Contradiction, OutOfDomain

DAY = date(2026, 5, 11)
Json = dict[str, Any]


def attention(level: int, code: str = "ATTENTION_NONE", since: int = 7, last: int | None = 1) -> Json:
    return {
        "level": level,
        "reason": {"code": code, "text": "x"},
        "action": {"code": "ATTENTION_DO_LOOK", "text": "x"},
        "verdict": "within_interval",
        "since_date": str(DAY - timedelta(days=since)),
        "as_of_date": str(DAY - timedelta(days=1)),
        "last_entry_date": None if last is None else str(DAY - timedelta(days=last)),
    }


def rank(members: list[Json]) -> Json:
    body = {"as_of_date": str(DAY), "members": members}
    decoded = BodyDecoder(RosterRequest).decode(json.dumps(body).encode())
    return json.loads(encode_finite(rank_roster.compute(decoded)))  # type: ignore[no-any-return]


def test_the_highest_level_comes_first_then_who_has_waited_longest() -> None:
    found = rank(
        [
            {"reference": "calm", "attention": attention(0)},
            {"reference": "soon", "attention": attention(2, "ATTENTION_CONTRADICTED", 3)},
            {"reference": "sooner", "attention": attention(2, "ATTENTION_CONTRADICTED", 17)},
            {"reference": "today", "attention": attention(3, "ATTENTION_SAFETY", 0)},
        ]
    )
    assert [place["reference"] for place in found["members"]] == ["today", "sooner", "soon", "calm"]
    assert [place["rank"] for place in found["members"]] == [1, 2, 3, 4]
    assert found["by_level"] == [1, 0, 2, 1]
    priorities = [place["priority"] for place in found["members"]]
    assert priorities == sorted(priorities, reverse=True)


def test_who_stopped_logging_moves_up_by_themselves() -> None:
    found = rank([{"reference": str(days), "attention": attention(0, last=days)} for days in (2, 9, 20)])
    assert [(place["reference"], place["attention"]["level"]) for place in found["members"]] == [
        ("20", 2),
        ("9", 1),
        ("2", 0),
    ]
    assert found["members"][0]["days_silent"] == 20
    assert "20 days" in found["members"][0]["attention"]["reason"]["text"]


def test_of_two_who_are_silent_the_longer_comes_first_whenever_they_were_reviewed() -> None:
    """Reviewed each night or only once: the same silence has the same place."""

    def once(days: int) -> Json:
        return attention(0, since=days, last=days) | {"as_of_date": str(DAY - timedelta(days=days))}

    found = rank(
        [
            {"reference": "once", "attention": once(18)},
            {"reference": "nightly", "attention": attention(2, "ATTENTION_SILENT", since=1, last=20)},
            {"reference": "once_as_long", "attention": once(20)},
        ]
    )["members"]
    assert [place["reference"] for place in found] == ["nightly", "once_as_long", "once"]
    assert found[0]["priority"] == found[1]["priority"]


@pytest.mark.parametrize(("last", "level"), [(9, 1), (12, 1), (20, 2)])
def test_silence_that_a_review_told_goes_on_since_then_and_is_told_up_to_the_roster(last: int, level: int) -> None:
    """A review of yesterday found them silent; the text kept its number of days beside the roster's own."""
    found = rank([{"reference": "a", "attention": attention(1, "ATTENTION_SILENT", since=5, last=last)}])["members"][0]
    assert (found["attention"]["level"], found["days_silent"]) == (level, last)
    assert f"for {last} days" in found["attention"]["reason"]["text"]
    assert found["attention"]["since_date"] == str(DAY - timedelta(days=5))


@pytest.mark.parametrize(("before", "change"), [(None, "new"), (0, "worse"), (2, "same"), (3, "better")])
def test_what_changed_since_last_week(before: int | None, change: str) -> None:
    member: Json = {"reference": "a", "attention": attention(2, "ATTENTION_CONTRADICTED")}
    if before is not None:
        member["before"] = attention(before)
    assert rank([member])["members"][0]["change"] == change


def test_rosters_of_a_part_merge_by_priority_to_that_of_the_whole() -> None:
    rng = random.Random(5)
    members = [
        {
            "reference": f"{i:03}",
            "attention": attention(rng.randint(0, 3), since=rng.randint(0, 40), last=rng.randint(0, 25)),
        }
        for i in range(400)
    ]
    whole = [place["reference"] for place in rank(members)["members"]]
    parts = rank(members[:150])["members"] + rank(members[150:])["members"]
    parts.sort(key=lambda place: (-place["priority"], place["reference"]))
    assert [place["reference"] for place in parts] == whole


def test_texts_of_the_caller_are_not_told_back() -> None:
    found = rank([{"reference": "a", "attention": attention(1)}])
    assert found["members"][0]["attention"]["reason"]["text"] == "All goes as planned, or it is too early to tell."


@pytest.mark.parametrize(
    ("unheard_of", "place"),
    [
        ({"attention": attention(1, "NOT_A_CODE")}, "members[1].attention"),
        ({"attention": attention(1), "before": attention(0, "NOT_MEDICAL_ADVICE")}, "members[1].before"),
        ({"attention": attention(2, "ATTENTION_OFF_PLAN")}, "members[1].attention"),
    ],
)
def test_what_no_review_says_is_refused_and_named(unheard_of: Json, place: str) -> None:
    with pytest.raises(OutOfDomain) as refused:
        rank([{"reference": "a", "attention": attention(1)}, {"reference": "b"} | unheard_of])
    assert (refused.value.code, refused.value.field) == ("ATTENTION_NOT_READABLE", place)


def test_whoever_has_logged_since_the_review_is_silent_for_no_negative_days() -> None:
    found = rank([{"reference": "a", "attention": attention(1, "ATTENTION_SILENT", last=-29)}])["members"][0]
    assert found["days_silent"] == 0
    assert "-" not in found["attention"]["reason"]["text"]


def test_doubles_and_too_many_are_refused() -> None:
    with pytest.raises(Contradiction) as twice:
        rank([{"reference": "a", "attention": attention(1)}] * 2)
    assert (twice.value.code, twice.value.field) == ("REFERENCE_TWICE", "members[1].reference")
    with pytest.raises(ProblemError):
        rank([{"reference": str(i), "attention": attention(1)} for i in range(501)])
