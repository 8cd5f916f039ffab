"""Random reviews: always an answer or a named refusal, and the intakes ahead inside every rail.

The rails are checked again from the answer's own numbers, with limits typed here again from the table of rules, on
the member's logging scale and on the physical one.
"""

import json
import math
import random
from collections import Counter
from datetime import date, timedelta
from pathlib import Path
from typing import Any, NamedTuple

import msgspec
import pytest
from properties.plan_requests import LEAST_FAT, profile
from properties.plan_shape import numbers
from rails.limits import FAT_SUPPLY, FLOOR, GAIN, exercise
from request_people import CLEAR
from steelyard.http.endpoints import mapping
from steelyard.http.endpoints.reviews import review_phase
from steelyard.http.schemas.profile import Profile
from steelyard.http.schemas.reviews import ReviewRequest
from steelyard.http.wire.encoding import encode_finite
from steelyard.science.measures.assessment import assess
from steelyard.science.rails.subject import Refused
from steelyard.science.register.errors import OutOfDomain

Json = dict[str, Any]
FLOOR_TOLD = {"male": 1200, "female": 1000, "unspecified": 1000}
START = date(2026, 3, 2)
SIZES = [pytest.param(400, id="400"), pytest.param(8000, id="8000", marks=pytest.mark.long)]


def request(rng: random.Random) -> Json:
    """A phase followed well, badly or absurdly, with a log that may have gaps, jumps and slips."""
    person = profile(rng, eligible=rng.random() < 0.8)
    assessed = assess(mapping.person(msgspec.convert(person, Profile, strict=False)))
    maintenance = 0.9 * assessed.total.mean * rng.uniform(0.85, 1.15)
    kind = rng.choice(["mini_cut", "mini_cut", "cut", "gain", "maintenance"])
    weeks = rng.randint(2, 6) if kind == "mini_cut" else rng.randint(2, 14)
    size = rng.uniform(0.05, 0.3) * maintenance
    change = {"mini_cut": -size, "cut": -size, "gain": 0.6 * size, "maintenance": 0.0}[kind]
    intake = min(8000.0, max(800.0, 10.0 * round((maintenance + change) / 10.0)))
    protein = float(min(round(1.8 * person["weight_kg"]), int(0.4 * intake / 4.0), 600))
    week: Json = {"intake_kcal": intake, "protein_g": max(20.0, protein)}
    if rng.random() < 0.7:
        week["carbohydrate_g"] = float(5 * int((intake - 4 * protein) * 0.6 / 4 / 5))
    phase: Json = {
        "kind": kind,
        "start_date": START.isoformat(),
        "weeks": [dict(week, is_break=kind == "cut" and i % 5 == 4) for i in range(weeks)],
        "maintenance": {
            "kcal_per_day": min(8000.0, max(800.0, round(maintenance))),
            "standard_deviation_kcal": rng.choice([40, 110, 250]),
        },
    }
    if kind in ("mini_cut", "cut") and rng.random() < 0.6:
        phase["fat_loss_kg"] = round(max(0.2, size * 7 * weeks / 9000 * rng.uniform(0.4, 1.6)), 2)
    days = rng.randint(0, 7 * weeks + 3)
    asked: Json = {
        "profile": person,
        "phase": phase,
        "log": log(rng, person["weight_kg"], maintenance, intake, days),
        "as_of_date": (START + timedelta(days=days)).isoformat(),
        "is_finished": rng.random() < 0.1,
    }
    if rng.random() < 0.93:
        asked["screening"] = CLEAR | ({"is_breastfeeding": True} if rng.random() < 0.04 else {})
    return asked


def log(rng: random.Random, weight: float, maintenance: float, intake: float, days: int) -> Json:
    baseline = rng.choice([0, 0, 14, 28])
    off, unlogged = rng.gauss(0.0, 250.0), rng.gauss(0.0, 250.0)
    jump = rng.choice([0.0, 0.0, 0.0, rng.gauss(0.0, 1.5)])
    tissue, weights, intakes = weight, [], []
    for day in range(-baseline, days + 1):
        when = (START + timedelta(days=day)).isoformat()
        eaten = max(0.0, (maintenance if day < 0 else intake + off) * rng.gauss(1.0, 0.12))
        if rng.random() < 0.8 or day == days:
            reading = tissue - (0.012 * weight if day > 3 else 0.0) + (jump if day > days / 2 else 0.0)
            weights.append({"date": when, "weight_kg": round(min(299.0, max(31.0, reading + rng.gauss(0, 0.5))), 2)})
        if rng.random() < 0.85:
            intakes.append({"date": when, "intake_kcal": round(eaten), "is_partial": rng.random() < 0.05})
        tissue += (eaten + (unlogged if day >= 0 else 0.0) - maintenance) / 8500.0
    return {"weights": weights, "intakes": intakes}


class Swept(NamedTuple):
    asked: Json
    answer: Json


_sweeps: dict[int, tuple[list[Swept], Counter[str]]] = {}


def sweep(size: int) -> tuple[list[Swept], Counter[str]]:
    """Answers and refusals of seeded requests. Any exception but a refusal fails the test that asks."""
    if size not in _sweeps:
        rng = random.Random(20260302)
        answered, refused = [], Counter()
        for _ in range(size):
            asked = request(rng)
            try:
                answer = review_phase.compute(msgspec.convert(asked, ReviewRequest, strict=False))
            except Refused as refusal:
                refused[refusal.action.id] += 1
            except OutOfDomain as refusal:
                refused[refusal.code] += 1
            else:
                answered.append(Swept(asked, msgspec.json.decode(encode_finite(answer))))
        _sweeps[size] = answered, refused
    return _sweeps[size]


@pytest.mark.parametrize("size", SIZES)
def test_every_request_is_answered_or_refused_by_name(size: int) -> None:
    answered, refused = sweep(size)
    verdicts = Counter(s.answer["verdict"] for s in answered)
    decisions = Counter(s.answer["decision"] for s in answered)
    print(f"\n{dict(refused)} {dict(verdicts)} {dict(decisions)}")
    assert set(refused) <= {"screening_unanswered", "MAINTENANCE_IMPLAUSIBLE", "LOG_WITHOUT_WEIGHT"}
    assert len(answered) >= 0.85 * size
    assert set(verdicts) == {"within_interval", "faster", "slower", "contradicted", "too_early"}
    assert {"continue", "end"} <= set(decisions)
    for s in answered:
        assert not [place for place, value in numbers(s.answer) if not math.isfinite(value)]


@pytest.mark.parametrize("size", SIZES)
def test_the_answer_is_coherent(size: int) -> None:
    for s in sweep(size)[0]:
        a = s.answer
        p = a["probabilities"]
        assert p["within_interval"] + p["faster"] + p["slower"] == pytest.approx(1.0, abs=0.002)
        assert (a["verdict"] == "too_early") == (a["more_days_needed"] is not None)
        assert a["correction_kcal"] % 10 == 0
        assert (a["decision"] == "end") == (a["weeks"] == []) == (a["after"] is not None)
        change = a["change"]
        parts = change["tissue_kg"]["mean"] + change["carried_kg"]["mean"]
        assert change["weight_kg"]["mean"] == pytest.approx(parts, abs=0.004)
        if a["weeks"]:
            days = sum(week["days"] for week in a["weeks"])
            last = date.fromisoformat(s.asked["as_of_date"]) + timedelta(days=days - 1)
            assert a["end_date"] == last.isoformat() == a["weeks"][-1]["at_end"]["date"]
            planned_end = START + timedelta(days=7 * len(s.asked["phase"]["weeks"]) - 1)
            expected = {"continue": last == planned_end, "shorten": last < planned_end, "extend": last > planned_end}
            assert expected[a["decision"]]
        if s.asked["phase"]["kind"] == "mini_cut":
            assert date.fromisoformat(a["end_date"]) < START + timedelta(days=42)


@pytest.mark.parametrize("size", SIZES)
def test_the_intakes_ahead_are_inside_every_rail(size: int) -> None:
    checked = 0
    for s in sweep(size)[0]:
        found = violations(s)
        assert found == [], (found, s.asked)
        checked += bool(s.answer["weeks"])
    assert checked >= 0.4 * size


def test_what_once_broke_a_rail_no_longer_does() -> None:
    """Fat falling behind a beginner's lean tissue, a rail on deficits that overruled the one on gains, and others."""
    once = json.loads((Path(__file__).parent / "reviews_once_outside.json").read_text(encoding="utf-8"))
    for asked in once:
        answer = review_phase.compute(msgspec.convert(asked, ReviewRequest, strict=False))
        assert violations(Swept(asked, msgspec.json.decode(encode_finite(answer)))) == []


def violations(s: Swept) -> list[str]:
    asked, a = s.asked, s.answer
    person, kind = asked["profile"], asked["phase"]["kind"]
    weeks = [w for w in a["weeks"] if not _is_break(asked, w)]
    if not weeks:
        return []
    found = []

    def need(holds: bool, what: str) -> None:
        if not holds:
            found.append(what)

    maintenance = a["maintenance_kcal"]["mean"]
    ratio = maintenance / a["physical_maintenance_kcal"]["mean"]
    sex = person["sex"]
    weight = person["weight_kg"] + a["change"]["weight_kg"]["mean"]
    assessed = assess(mapping.person(msgspec.convert(person, Profile, strict=False)))
    resting = assessed.resting.mean
    lowest = min(w["intake_kcal"] for w in weeks)
    # Half a step of the rounding to whole kilocalories, and a percent of the ratio, which the answer tells rounded.
    slack = 1.0 + 0.01 * maintenance
    days = a["days_into_phase"] + sum(w["days"] for w in a["weeks"])
    is_long = days > 42
    deficit = maintenance - lowest
    if kind in ("gain", "maintenance"):
        # What is raised in steps may be under maintenance for now; no floor may be under it.
        need(lowest / ratio >= 0.99 * resting - slack or a["correction_kcal"] >= 0, "lowered under resting energy")
        need(lowest >= FLOOR_TOLD[sex] - 1.0, f"{lowest} told, whatever the log says")
        end = a["weeks"][-1]["at_end"]["fat_fraction"]["mean"]
        is_raised = a["correction_kcal"] >= 200 or lowest >= maintenance - 25 - slack
        need(end >= LEAST_FAT[sex] - 5e-4 or is_raised, f"body fat {end} at the end, and nothing raised")
    elif deficit <= 25 + slack:
        if "screening" not in asked or asked["screening"]["is_breastfeeding"]:
            return found
    else:
        need("screening" in asked and not asked["screening"]["is_breastfeeding"], "a deficit for whom none is safe")
        need(18 <= person["age_years"] < 65, "a deficit at this age")
        floor = FLOOR[sex]
        if is_long:
            floor = max(floor, resting)
        need(lowest >= FLOOR_TOLD[sex] - 1.0, f"{lowest} told, whatever the log says")
        need(lowest / ratio >= floor - slack, f"{lowest} under the floor {floor:.0f}, eaten")
        need(deficit <= 0.30 * maintenance + slack, f"deficit {deficit:.0f} of {maintenance}")
        fraction = a["body_fat_fraction"]["mean"]
        fat_now = fraction * weight
        need(deficit / ratio <= FAT_SUPPLY * fat_now * 1.05 + slack, f"deficit {deficit:.0f} over the supply of fat")
        available = (lowest / ratio - exercise(person, resting)) / (weight - fat_now)
        # It fades where body fat is high, by the lower end of the reading.
        first, last = (0.18, 0.25) if sex == "male" else (0.27, 0.35)
        low = fraction - (assessed.fat.mean - assessed.fat.lower)
        left = min(1.0, max(0.0, (last - low) / (last - first))) if assessed.fat.is_measured else 1.0
        need(available >= left * (30 if is_long else 25) * 0.985, f"energy availability {available:.1f}")
        end = a["weeks"][-1]["at_end"]["fat_fraction"]["mean"]
        need(end >= LEAST_FAT[sex] - 5e-4, f"body fat {end} at the end")
        ahead = sum(w["days"] for w in a["weeks"])
        first, last = a["weeks"][0], a["weeks"][-1]["at_end"]
        # The answer tells body fat now, not weight; what ends within days is nearer than the weight that was given.
        if first["days"] <= 3:
            fat_now = fraction * first["at_end"]["weight_kg"]["mean"]
        lost = fat_now - last["fat_kg"]["mean"]  # fat alone: a bound from below on tissue
        need(lost / (ahead / 7) / weight <= 0.0105 + 0.02 / ahead, f"{lost:.2f} kg of fat in {ahead} days")
    if kind == "gain" and a["verdict"] != "too_early":
        limit = GAIN[person["training"]["status"]]
        first, last = a["weeks"][0]["at_end"], a["weeks"][-1]["at_end"]
        apart = (date.fromisoformat(last["date"]) - date.fromisoformat(first["date"])).days
        if apart >= 7:
            gained = sum(last[k]["mean"] - first[k]["mean"] for k in ("fat_kg", "lean_kg"))
            need(gained / (apart / 7) / weight <= 1.15 * limit + 2e-4, f"gains {gained:.2f} kg in {apart} days")
    return found


def _is_break(asked: Json, week: Json) -> bool:
    day = (date.fromisoformat(week["start_date"]) - START).days
    weeks = asked["phase"]["weeks"]
    return bool(weeks[min(day // 7, len(weeks) - 1)]["is_break"])
