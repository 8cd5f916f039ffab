"""Every guard rail checked again on a planned season, phase by phase, from the answer's own numbers.

Limits are typed here again, from the table of rules. Tolerances are those of the printed digits: whole kilocalories
for energies, grams for masses, 0.01 % for body fat; intakes are set in steps of 10 kcal.
"""

import math
from datetime import date, timedelta
from typing import Any, NamedTuple

from properties.plan_shape import numbers
from rails.limits import FAT_SUPPLY, FLOOR, GAIN, LEAST_FAT, exercise

# What a kilogram costs at rest: Hall KD et al. Lancet 2011;378:826-37, 13 and 92 kJ/kg/d.
FAT_UPKEEP, LEAN_UPKEEP = 13 / 4.184, 92 / 4.184


class _Body(NamedTuple):
    weight: float
    fat: float
    lean: float
    fraction: float
    maintenance: float
    carried: float = 0.0


def _bodies(request: dict[str, Any], answer: dict[str, Any]) -> list[_Body]:
    """The expected body at the start and at the end of each week."""
    weight = request["profile"]["weight_kg"]
    fat = answer["start"]["body_fat_fraction"]["mean"] * weight
    start = _Body(weight, fat, weight - fat - 1.85, fat / weight, answer["start"]["maintenance_kcal"]["mean"])
    ends = [week["at_end"] for week in answer["plan"]["weeks"]]
    return [start] + [
        _Body(
            *(
                e[k]["mean"]
                for k in ("weight_kg", "fat_kg", "lean_kg", "fat_fraction", "maintenance_kcal", "carried_kg")
            )
        )
        for e in ends
    ]


def violations(request: dict[str, Any], answer: dict[str, Any]) -> list[str]:
    """What is wrong with a season; empty when nothing is."""
    found = [f"not finite: {place}" for place, value in numbers(answer) if not math.isfinite(value)]
    plan = answer["plan"]
    weeks, bodies = plan["weeks"], _bodies(request, answer)
    if len(weeks) != request["horizon_weeks"]:
        found.append(f"{len(weeks)} weeks")
    at, kinds = 0, []
    for phase in plan["phases"]:
        start = date.fromisoformat(request["start_date"]) + timedelta(days=7 * at)
        if phase["start_date"] != str(start):
            found.append(f"{phase['kind']} starts {phase['start_date']}, not {start}")
        if sum(step["weeks"] for step in phase["intakes"]) != phase["weeks"]:
            found.append("steps of another length than the phase")
        for step in phase["intakes"]:
            energy = 4 * step["protein_g"] + 4 * step["carbohydrate_g"] + 9 * step["fat_g"]
            if abs(energy - step["intake_kcal"]) > 10 or step["intake_kcal"] % 10:
                found.append(f"nutrients give {energy}, intake {step['intake_kcal']}")
            if 9 * step["fat_g"] < 0.15 * step["intake_kcal"] - 1e-9:
                found.append("dietary fat under 15 %")
        found += _phase(request, answer, phase, at, bodies)
        kinds.append(phase["kind"])
        at += phase["weeks"]
    found += _calendar(request, plan)
    found += _totals(answer, bodies)
    if not all(b["found"] > b["allowed"] for b in answer["broken_limits"]):
        found.append("a broken limit that is not")
    if answer["feasible"] == bool(answer["broken_limits"]):
        found.append("feasible and broken limits disagree")
    return found


def _phase(
    request: dict[str, Any], answer: dict[str, Any], phase: dict[str, Any], at: int, bodies: list[_Body]
) -> list[str]:
    found: list[str] = []
    profile = request["profile"]
    sex, n = profile["sex"], phase["weeks"]
    before = bodies[at]
    where = f"{phase['kind']} from week {at + 1}"

    def need(holds: bool, what: str) -> None:
        if not holds:
            found.append(f"{where}: {what}")

    tissue = phase["change"]["fat_kg"]["mean"] + phase["change"]["lean_kg"]["mean"]
    rate = tissue / n / before.weight
    gram = 4e-3 / n / before.weight
    least_fat_g = 0.5 * min(b.weight for b in bodies[at : at + n + 1])
    need(all(step["fat_g"] >= least_fat_g - 5 for step in phase["intakes"]), "dietary fat under 0.5 g/kg")
    if phase["kind"] == "gain":
        need(rate <= GAIN[profile["training"]["status"]] + gram, f"tissue rises {100 * rate:.3f} % a week")
    if phase["kind"] not in ("mini_cut", "cut"):
        return found

    is_long = n > 6
    need(n >= 2, f"{n} weeks")
    need((phase["kind"] == "cut") is is_long, f"called so at {n} weeks")
    need(len({step["intake_kcal"] for step in phase["intakes"]}) == 1, "intake changes")
    intake = phase["intakes"][0]["intake_kcal"]
    maintenance = before.maintenance
    if at == 0 and request.get("current_intake_kcal"):
        # What adaptation to the intake until now adds: 14 % of the change, over what is not lost to digestion.
        maintenance += 0.14 / 0.9 * (request["current_intake_kcal"] - maintenance)
    fat_free = before.weight - before.fat
    resting = answer["start"]["resting_kcal"]["mean"]
    need(intake >= FLOOR[sex], f"intake {intake} under the floor")
    need(maintenance - intake <= 0.30 * maintenance + 2, f"deficit over 30 % ({intake} of {maintenance})")
    available = (intake - exercise(profile, resting)) / fat_free
    fat = answer["start"]["body_fat_fraction"]
    first, last = (0.18, 0.25) if sex == "male" else (0.27, 0.35)
    # It fades where body fat is high, by the lower end of its reading.
    left = min(1.0, max(0.0, (last - before.fraction + fat["mean"] - fat["lower"]) / (last - first)))
    need(available >= left * ((30 if is_long else 25) - 0.05) - 0.05, f"energy availability {available:.2f}")
    if is_long:
        # What the first body carries is not told, so that its lean tissue is that of its first week's end.
        gained = bodies[max(1, at)].lean - bodies[1].lean
        now = resting + FAT_UPKEEP * (before.fat - bodies[0].fat) + LEAN_UPKEEP * gained
        need(intake >= now - 2, f"intake {intake} under resting {now:.0f} in a long cut")
    need(maintenance - intake <= FAT_SUPPLY * before.fat + 2, f"deficit over what {before.fat:.1f} kg fat release")
    # Of a reference mass where body fat is high, which the answer tells for the start.
    fed = min(before.weight, answer["protein_reference_kg"])
    need(phase["intakes"][0]["protein_g"] >= 1.6 * fed - 1e-9, f"protein under 1.6 g/kg of {fed:g} kg")
    need(rate >= -0.010 - gram, f"tissue falls {-100 * rate:.3f} % a week")
    need(before.fraction > LEAST_FAT[sex], "starts at or under the least body fat")
    for week in range(at + 1, at + n + 1):
        body = bodies[week]
        need(body.fraction >= LEAST_FAT[sex] - 5e-5, f"body fat {body.fraction} in week {week}")
        drawn = -answer["plan"]["weeks"][week - 1]["energy_balance_kcal"]
        need(drawn <= FAT_SUPPLY * bodies[week - 1].fat + 2, f"{drawn} kcal/d drawn in week {week}")
        # Of tissue and usual carried mass: a week's water ends no diet.
        need(
            bodies[week - 1].weight - bodies[week - 1].carried >= 18.5 * (profile["height_cm"] / 100) ** 2 - 2e-3,
            f"BMI in week {week}",
        )
    if not request.get("cut_history"):
        need(maintenance - intake <= 502, "history unknown and a deficit over the default")
    return found


def _calendar(request: dict[str, Any], plan: dict[str, Any]) -> list[str]:
    found: list[str] = []
    limits = request["limits"]
    start = date.fromisoformat(request["start_date"])
    cuts = [w for w, week in enumerate(plan["weeks"]) if week["kind"] in ("cut", "mini_cut")]
    if cuts and cuts[-1] == len(plan["weeks"]) - 1:
        found.append("the horizon is met in a cut")
    days = {start + timedelta(days=7 * w + d) for w in cuts for d in range(7)}
    for blocked in limits.get("blocked_dates", []):
        first, last = date.fromisoformat(blocked["first_date"]), date.fromisoformat(blocked["last_date"])
        if any(first <= day <= last for day in days):
            found.append(f"a cut on blocked dates from {first}")
    for event in limits.get("events", []):
        at = (date.fromisoformat(event["date"]) - start).days // 7
        if at in cuts or at - 1 in cuts:
            found.append(f"a cut in the week of the event in week {at + 1} or before it")
    begins = [w for w in cuts if w - 1 not in cuts]
    ends = [w for w in cuts if w + 1 not in cuts]
    if len(begins) > (10**6 if limits.get("most_cuts") is None else limits["most_cuts"]):
        found.append(f"{len(begins)} cuts")
    for k, begin in enumerate(begins):
        if sum(1 for other in begins[: k + 1] if begin - other < 52) > limits.get("most_cuts_a_year", 3):
            found.append("more cuts in a year than asked")
        if k and begin - ends[k - 1] - 1 < 1:
            found.append("no maintenance between two cuts")
    return found


def _totals(answer: dict[str, Any], bodies: list[_Body]) -> list[str]:
    found: list[str] = []
    totals, plan = answer["plan"]["totals"], answer["plan"]

    def close(name: str, one: float, other: float, within: float) -> None:
        if abs(one - other) > within:
            found.append(f"{name}: {one} in the totals, {other} from the weeks")

    change = {k: sum(p["change"][k]["mean"] for p in plan["phases"]) for k in ("lean_kg", "fat_kg")}
    rounding = 1e-3 * len(plan["phases"])
    close("lean gained", totals["lean_gained_kg"]["mean"], change["lean_kg"], rounding)
    close("fat gained", totals["fat_gained_kg"]["mean"], change["fat_kg"], rounding)
    close("final body fat", totals["final_fat_fraction"]["mean"], bodies[-1].fraction, 1e-9)
    close("peak body fat", totals["peak_fat_fraction"]["mean"], max(b.fraction for b in bodies[1:]), 1e-9)
    cut_weeks = [w["kind"] in ("cut", "mini_cut") for w in plan["weeks"]]
    close("days dieting", totals["days_dieting"], 7 * sum(cut_weeks), 0)
    close("cuts", totals["cuts"], sum(p["kind"] in ("cut", "mini_cut") for p in plan["phases"]), 0)
    close("mean fat", totals["mean_fat_kg"], sum(b.fat for b in bodies[1:]) / len(bodies[1:]), 2e-3)
    upper = answer["start"]["band_upper_fat_fraction"]
    clear = sum(b.fraction > upper + 5e-5 for b in bodies[1:])
    near = sum(b.fraction > upper - 5e-5 for b in bodies[1:])
    if not clear <= totals["weeks_above_band"]["mean"] <= near:
        found.append(f"weeks above the band: {totals['weeks_above_band']['mean']}, from the weeks {clear}")
    for name in ("lean_gained_kg", "fat_gained_kg", "peak_fat_fraction", "final_fat_fraction", "weeks_above_band"):
        value = totals[name]
        if not value["lower"] <= value["mean"] <= value["upper"]:
            found.append(f"{name}: interval out of order")
    return found
