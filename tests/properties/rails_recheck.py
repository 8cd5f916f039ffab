"""Every guard rail checked again on a finished plan, from the answer's own numbers.

Limits are typed here again, from the table of rules and not from the service's constants. Tolerances are those of
the printed digits: whole kilocalories for energies, grams for masses, 0.01 % for body fat.
"""

import math
from collections.abc import Iterator
from datetime import date, timedelta
from typing import Any

INTAKE_FLOOR = {"female": 1200, "male": 1500, "unspecified": 1500}
LEAST_FAT = {"male": 0.06, "female": 0.14, "unspecified": 0.14}
GAIN_RATE = {"untrained": 0.005, "novice": 0.005, "intermediate": 0.0025, "advanced": 0.0015}
FAT_SUPPLY = 290.0 / 4.184  # kcal per kg fat mass a day (Alpert SS. J Theor Biol 2005;233:1-13)


def exercise_kcal(profile: dict[str, Any], resting_kcal: float) -> float:
    """Net energy of training [kcal/d]: (MET - 1) x own resting rate; of a level, an hour at 5 MET a session."""
    activity = profile["activity"]
    if activity["kind"] == "level":
        bouts = [(5.0, 60.0, profile["training"]["resistance_sessions_per_week"])]
    else:
        bouts = [(s["met"], s["minutes"], s["times_per_week"]) for s in activity["sessions"]]
    return sum((met - 1) * resting_kcal / 24 * minutes / 60 * times / 7 for met, minutes, times in bouts)


def numbers(value: Any, place: str = "$") -> Iterator[tuple[str, float]]:
    """Every number of an answer with its place."""
    if isinstance(value, dict):
        for key, item in value.items():
            yield from numbers(item, f"{place}.{key}")
    elif isinstance(value, list | tuple):
        for i, item in enumerate(value):
            yield from numbers(item, f"{place}[{i}]")
    elif isinstance(value, int | float) and not isinstance(value, bool):
        yield place, float(value)


def violations(request: dict[str, Any], answer: dict[str, Any]) -> list[str]:
    """What is wrong with an answer; empty when nothing is."""
    found = [f"not finite: {place}" for place, value in numbers(answer) if not math.isfinite(value)]
    if not answer["feasible"]:
        if answer["nearest"] is None or answer["phases"] or not answer["reasons"]:
            found.append("an infeasible answer without `nearest` or a reason, or with phases")
        return found
    found += _phases(answer)
    found += _cut(request, answer)
    found += _after(request, answer)
    return found


def _phases(answer: dict[str, Any]) -> list[str]:
    found, expected_start = [], None
    for phase in answer["phases"]:
        if expected_start not in (None, phase["start_date"]):
            found.append(f"{phase['kind']} starts {phase['start_date']}, not {expected_start}")
        if phase["weeks"][0]["start_date"] != phase["start_date"]:
            found.append("first week and phase start apart")
        for i, week in enumerate(phase["weeks"]):
            if week["week"] != i + 1 or week["days"] != 7:
                found.append(f"week {i} is numbered {week['week']} with {week['days']} days")
            energy = 4 * week["protein_g"] + 4 * week["carbohydrate_g"] + 9 * week["fat_g"]
            if abs(energy - week["intake_kcal"]) > 10:
                found.append(f"{phase['kind']} week {i + 1}: nutrients give {energy}, intake {week['intake_kcal']}")
            if week["intake_kcal"] % 10 or any(week[k] % 5 for k in ("protein_g", "carbohydrate_g", "fat_g")):
                found.append("amounts not in steps of 10 kcal and 5 g")
            if min(week["protein_g"], week["carbohydrate_g"], week["fat_g"], week["fibre_g"]) < 0:
                found.append("a negative amount")
            if week["fibre_g"] > week["carbohydrate_g"]:
                found.append("more fibre than carbohydrate")
            at_end = week["at_end"]
            for key, value in at_end.items():
                if isinstance(value, dict) and not value["lower"] <= value["mean"] <= value["upper"]:
                    found.append(f"{key}: interval out of order")
        last = phase["weeks"][-1]["at_end"]["date"]
        if last != phase["end_date"]:
            found.append("last week and phase end apart")
        expected_start = _next_day(phase["end_date"])
    return found


def _next_day(day: Any) -> Any:
    return day + timedelta(days=1) if isinstance(day, date) else str(date.fromisoformat(day) + timedelta(days=1))


def _cut(request: dict[str, Any], answer: dict[str, Any]) -> list[str]:
    found: list[str] = []
    profile = request["profile"]
    weight, sex = profile["weight_kg"], profile["sex"]
    maintenance = answer["maintenance_kcal"]["mean"]
    fat0 = answer["body_fat_fraction"]["mean"] * weight
    fat_free = weight - fat0
    exercise = exercise_kcal(profile, answer["resting_kcal"]["mean"])
    phase = answer["phases"][0]
    if phase["kind"] != "mini_cut":
        return [f"first phase is {phase['kind']}"]
    weeks = phase["weeks"]
    if not 2 <= len(weeks) <= 6:
        found.append(f"{len(weeks)} weeks")

    def need(holds: bool, what: str) -> None:
        if not holds:
            found.append(what)

    fat_before = fat0
    for week in weeks:
        intake, n = week["intake_kcal"], week["week"]
        need(intake >= INTAKE_FLOOR[sex], f"week {n}: intake {intake} under the floor")
        need(maintenance - intake <= 0.30 * maintenance + 1, f"week {n}: deficit over 30 % ({intake} of {maintenance})")
        available = (intake - exercise) / fat_free
        # A rounding of 0.005 % of body fat and of half a kilocalorie.
        need(available >= 25 - 0.05, f"week {n}: energy availability {available:.2f}")
        fat_after = week["at_end"]["fat_kg"]["mean"]
        drawn = -week["energy_balance_kcal"]
        fat_mean = 0.5 * (fat_before + fat_after)
        need(drawn <= FAT_SUPPLY * fat_mean + 1, f"week {n}: {drawn} kcal/d drawn from {fat_mean:.2f} kg fat")
        need(maintenance - intake <= FAT_SUPPLY * fat0 + 1, f"week {n}: deficit over what {fat0:.1f} kg fat release")
        need(week["protein_g"] >= 1.6 * weight - 1e-9, f"week {n}: protein {week['protein_g']} g")
        need(week["fat_g"] >= 0.5 * weight - 1e-9, f"week {n}: dietary fat {week['fat_g']} g")
        need(9 * week["fat_g"] >= 0.15 * intake - 1e-9, f"week {n}: dietary fat {week['fat_g']} g of {intake} kcal")
        fraction = week["at_end"]["fat_fraction"]["mean"]
        need(fraction >= LEAST_FAT[sex] - 5e-5, f"week {n}: body fat {fraction}")
        fat_before = fat_after
    need(fat_before < fat0, "no fat is lost")
    lost = -(phase["change"]["fat_kg"]["mean"] + phase["change"]["lean_kg"]["mean"])
    per_week = lost / len(weeks) / weight
    need(per_week <= 0.010 + 2e-3 / len(weeks) / weight, f"tissue falls by {100 * per_week:.3f} % a week")
    asked = request.get("phase", {})
    if asked.get("fat_loss_kg") is not None:
        short = asked["fat_loss_kg"] + phase["change"]["fat_kg"]["mean"]
        # Rounding of the intake to 10 kcal/d is worth up to 10 x 7 x 6 / 7700 = 0.055 kg.
        need(short <= 0.055, f"{short:.3f} kg short of the fat asked for")
    if asked.get("weeks") is not None:
        need(len(weeks) == asked["weeks"], f"{len(weeks)} weeks for {asked['weeks']} asked")
    if not request.get("cut_history"):
        need(maintenance - weeks[-1]["intake_kcal"] <= 500.5, "history unknown and a deficit over the default")
    return found


def _after(request: dict[str, Any], answer: dict[str, Any]) -> list[str]:
    found: list[str] = []
    aim = request["return_to_gain"]
    phases = {phase["kind"]: phase for phase in answer["phases"]}
    kinds = [phase["kind"] for phase in answer["phases"]]
    expected = ["mini_cut", "maintenance"] + (["gain"] if aim["gain_weeks"] else [])
    if kinds != expected:
        return [f"phases {kinds}, not {expected}"]
    hold = phases["maintenance"]
    if len(hold["weeks"]) != aim["maintenance_weeks"]:
        found.append("maintenance of another length")
    weight = request["profile"]["weight_kg"]
    for phase in (hold, *([phases["gain"]] if "gain" in phases else [])):
        for week in phase["weeks"]:
            if week["fat_g"] < 0.5 * weight - 1e-9 or 9 * week["fat_g"] < 0.15 * week["intake_kcal"] - 1e-9:
                found.append(f"{phase['kind']} week {week['week']}: dietary fat {week['fat_g']} g")
    for week in hold["weeks"]:
        # A fading adaptation, the upkeep of returning water and 10 kcal of rounding; never a second cut or a gain.
        if not -60 <= week["energy_balance_kcal"] <= 30:
            found.append(f"maintenance stores {week['energy_balance_kcal']} kcal/d")
    if "gain" in phases:
        gain = phases["gain"]
        first = hold["weeks"][-1]["at_end"]["weight_kg"]["mean"]
        gained = gain["change"]["fat_kg"]["mean"] + gain["change"]["lean_kg"]["mean"]
        rate = gained / len(gain["weeks"]) / first
        limit = GAIN_RATE[request["profile"]["training"]["status"]]
        if rate > limit + 2e-3 / len(gain["weeks"]) / first:
            found.append(f"tissue rises by {100 * rate:.3f} % a week, limit {100 * limit:.2f} %")
    return found
