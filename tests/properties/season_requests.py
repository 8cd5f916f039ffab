"""Random but valid requests for the season endpoints, as JSON-like dictionaries, from a seeded generator."""

import random
from datetime import date, timedelta
from typing import Any

from properties.plan_requests import LEAST_FAT, profile
from request_people import CLEAR

START = date(2026, 3, 2)
READY = (
    "slow_gain_rare_mini_cuts", "fast_gain_long_cut", "fast_gain_repeated_mini_cuts", "slow_gain_no_cut",
)  # fmt: skip


def limits(rng: random.Random, sex: str, weeks: int) -> dict[str, Any]:
    """Limits in every combination; events and blocked dates inside the horizon."""
    asked: dict[str, Any] = {}
    least = LEAST_FAT[sex]
    if rng.random() < 0.4:
        lower = round(rng.uniform(least, least + 0.12), 3)
        asked["band"] = {"lower_fat_fraction": lower, "upper_fat_fraction": round(lower + rng.uniform(0.03, 0.12), 3)}
    day = lambda: START + timedelta(days=rng.randint(0, 7 * weeks - 1))  # noqa: E731
    if rng.random() < 0.4:
        asked["blocked_dates"] = []
        for _ in range(rng.randint(1, 3)):
            first = day()
            last = first + timedelta(days=rng.randint(0, 40))
            asked["blocked_dates"].append({"first_date": str(first), "last_date": str(last)})
    if rng.random() < 0.4:
        asked["events"] = [{"date": str(day())} for _ in range(rng.randint(1, 2))]
        if rng.random() < 0.6:
            asked["events"][0]["most_fat_fraction"] = round(rng.uniform(least, least + 0.15), 3)
    for field, low, high in (
        ("most_cuts", 0, 6), ("most_cuts_a_year", 0, 5), ("least_weeks_between_cuts", 2, 30),
        ("most_weeks_above_band", 0, 60), ("most_weeks_dieting", 0, 40),
    ):  # fmt: skip
        if rng.random() < 0.25:
            asked[field] = rng.randint(low, high)
    return asked


def strategy(rng: random.Random, sex: str) -> dict[str, Any]:
    """A ready-made strategy or numbers of one's own, careful and careless."""
    if rng.random() < 0.5:
        return {"kind": "ready_made", "name": rng.choice(READY)}
    own: dict[str, Any] = {"kind": "own", "label": f"own {rng.randint(1, 10**6)}", "surplus_kcal": rng.randint(0, 1000)}
    if rng.random() < 0.85:
        cut_to = round(rng.uniform(LEAST_FAT[sex], LEAST_FAT[sex] + 0.15), 3)
        own["cut_to_fat_fraction"] = cut_to
        own["cut_at_fat_fraction"] = round(cut_to + rng.uniform(0.011, 0.08), 3)
        own["deficit_kcal"] = rng.randint(100, 1500)
        own["longest_cut_weeks"] = rng.randint(2, 26)
        own["maintenance_weeks"] = rng.randint(1, 6)
    return own


def question(rng: random.Random, *, eligible: bool, weeks: int | None = None) -> dict[str, Any]:
    """What every request about a season says."""
    person = profile(rng, eligible=eligible)
    horizon = weeks or rng.choice([12, 20, 26, 52, 78, 104, 156])
    asked: dict[str, Any] = {
        "profile": person,
        "start_date": str(START),
        "horizon_weeks": horizon,
        "screening": CLEAR,
        "limits": limits(rng, person["sex"], horizon),
    }
    if rng.random() < 0.8:
        asked["cut_history"] = {"cuts_last_12_months": rng.randint(0, 4), "weeks_since_last_cut": rng.randint(0, 60)}
    if rng.random() < 0.2:
        asked["current_intake_kcal"] = min(8000, round(person["weight_kg"] * rng.uniform(26, 42)))
    return asked


def season(rng: random.Random, *, eligible: bool = False) -> dict[str, Any]:
    """A request for one season."""
    asked = question(rng, eligible=eligible)
    return asked | {"strategy": strategy(rng, asked["profile"]["sex"])}


def comparison(rng: random.Random, *, eligible: bool = False) -> dict[str, Any]:
    """A request for a comparison of all ready-made strategies and one of one's own."""
    asked = question(rng, eligible=eligible, weeks=rng.choice([12, 26, 52]))
    own = {"kind": "own", "label": "mine", "surplus_kcal": rng.randint(0, 600)}
    return asked | {"strategies": [own, *({"kind": "ready_made", "name": name} for name in READY)]}


def optimum(rng: random.Random, *, eligible: bool = False) -> dict[str, Any]:
    """A request for a small search."""
    asked = question(rng, eligible=eligible, weeks=rng.choice([12, 26, 52]))
    return asked | {"strategies_searched": 500, "caution": rng.choice([0, 0, 1.0])}
