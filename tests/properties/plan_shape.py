"""A finished plan as what was asked for: its amounts, dates and phases, its breaks, its goal and its kinds of day.

Whether it keeps to the guard rails is judged by the checker of the rails alone, which this calls too. Tolerances are
those of the printed digits: whole kilocalories for energies, grams for masses, 0.01 % for body fat.
"""

import math
from collections.abc import Iterator
from datetime import date, timedelta
from typing import Any, NamedTuple

from rails import checker
from rails.limits import FAT_SUPPLY

Json = dict[str, Any]

KCAL_PER_KG = 7700.0
MACROS = ("protein_g", "carbohydrate_g", "fat_g")
GOALS = ("fat_loss_kg", "target_fat_fraction", "target_weight_kg")


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


def violations(request: Json, answer: Json) -> list[str]:
    """What is wrong with an answer, by the rails and by what was asked; empty when nothing is."""
    found = checker.violations("plan_phases", request, 200, answer)
    if not answer["feasible"]:
        return found
    found += [what for phase in answer["phases"] for what in _amounts(phase)]
    found += _dates(answer)
    found += _order(request, answer)
    if found:
        return found
    body = Body.at_start(request, answer)
    for phase in answer["phases"]:
        if phase["kind"] in ("mini_cut", "cut"):
            found += _deficit(request, phase, body) + _goal(request, answer, phase, body)
        elif phase["kind"] == "maintenance":
            found += _hold(request, answer, phase, body)
        else:
            found += _gain(request, phase)
        found += _day_kinds(request, phase)
        body = body.after(phase["weeks"][-1])
    return found


class Body(NamedTuple):
    """A body at the start of a week [kg, kcal/d]."""

    weight: float
    fat: float
    carried: float
    maintenance: float
    least_fed: float  # lean mass over this fraction, and this mass at least, are what protein is shared out for
    lean_share: float

    @property
    def protein_kg(self) -> float:
        return min(self.weight, max((self.weight - self.fat) / self.lean_share, self.least_fed))

    @classmethod
    def at_start(cls, request: Json, answer: Json) -> "Body":
        weight = request["profile"]["weight_kg"]
        fat = answer["body_fat_fraction"]["mean"] * weight
        share = 0.80 if request["profile"]["sex"] == "male" else 0.67
        fed = 25.0 * (request["profile"]["height_cm"] / 100.0) ** 2
        return cls(weight, fat, math.nan, answer["maintenance_kcal"]["mean"], fed, share)

    def after(self, week: Json) -> "Body":
        end = week["at_end"]
        weight, fat, carried = (end[key]["mean"] for key in ("weight_kg", "fat_kg", "carried_kg"))
        return self._replace(weight=weight, fat=fat, carried=carried, maintenance=end["maintenance_kcal"]["mean"])


def _amounts(phase: Json) -> list[str]:
    found = []
    for i, week in enumerate(phase["weeks"]):
        name = f"{phase['kind']} week {i + 1}"
        if week["week"] != i + 1 or week["days"] != 7:
            found.append(f"week {i} is numbered {week['week']} with {week['days']} days")
        for day in (week, *week["day_kinds"]):
            energy = 4 * day["protein_g"] + 4 * day["carbohydrate_g"] + 9 * day["fat_g"]
            if abs(energy - day["intake_kcal"]) > 10:
                found.append(f"{name}: nutrients give {energy}, intake {day['intake_kcal']}")
            if day["intake_kcal"] % 10 or any(day[key] % 5 for key in MACROS):
                found.append(f"{name}: amounts not in steps of 10 kcal and 5 g")
            if min(day[key] for key in MACROS) < 0:
                found.append(f"{name}: a negative amount")
        if not 0 <= week["fibre_g"] <= week["carbohydrate_g"]:
            found.append(f"{name}: fibre {week['fibre_g']} of carbohydrate {week['carbohydrate_g']}")
        for key, value in week["at_end"].items():
            if isinstance(value, dict) and not value["lower"] <= value["mean"] <= value["upper"]:
                found.append(f"{name}: {key}: interval out of order")
    return found


def _dates(answer: Json) -> list[str]:
    found, expected = [], None
    for phase in answer["phases"]:
        if expected not in (None, phase["start_date"]):
            found.append(f"{phase['kind']} starts {phase['start_date']}, not {expected}")
        expected = phase["start_date"]
        for week in phase["weeks"]:
            if week["start_date"] != expected:
                found.append(f"{phase['kind']} week {week['week']} starts {week['start_date']}, not {expected}")
            expected = (date.fromisoformat(week["start_date"]) + timedelta(days=7)).isoformat()
        last = (date.fromisoformat(expected) - timedelta(days=1)).isoformat()
        if not last == phase["end_date"] == phase["weeks"][-1]["at_end"]["date"]:
            found.append(f"{phase['kind']} ends {phase['end_date']}, its last week {last}")
    return found


def _is_raised(answer: Json) -> bool:
    """Whether the answer says that intake is raised to what the body needs: a hold then may store energy."""
    return any(rail["code"] == "RAISED_TO_FLOOR" for rail in answer["guard_rails"])


# Body fat at which a gain ends where nothing was asked: the upper ends of 15-17 % in men and, by analogy, of 25-27 % in
# women (common practice, no published source); the latter where neither set fits.
_USUAL_CEILING = {"male": 0.17, "female": 0.27, "unspecified": 0.27}


def _usual_ceiling(profile: Json, answer: Json) -> float:
    """Where body fat is told by height and weight alone, it must be over it by the lower end of its interval; that of a
    minor, who may not lose a gain again, counts as it is."""
    fat = answer["body_fat_fraction"]
    unsure = 0.0 if "body_fat" in profile or profile["age_years"] < 18 else fat["mean"] - fat["lower"]
    return _USUAL_CEILING[profile["sex"]] + unsure


def _order(request: Json, answer: Json) -> list[str]:
    """The phases that must follow one another, and how long they are."""
    asked, then = request["phase"], request.get("return_to_gain", {"maintenance_weeks": 1, "gain_weeks": 12})
    kind = asked["kind"]
    phases = answer["phases"]
    kinds = [phase["kind"] for phase in phases]
    if phases[0]["start_date"] != request["start_date"]:
        return [f"the plan starts {phases[0]['start_date']}"]
    pause = request.get("pause", {}).get("weeks", 0)
    # Unscreened, a hold is not followed by a gain.
    after = ["gain"] if then["gain_weeks"] and request.get("screening") is not None else []
    # A body at the ceiling of its gain, or over it, is held for the weeks of that gain (planning, section 3).
    held = 0
    if "gain" not in kinds:
        ceiling = (asked.get("fat_ceiling_fraction") or _usual_ceiling(request["profile"], answer)) - 0.001
        if kind == "gain" and (answer["body_fat_fraction"]["mean"] >= ceiling or _is_raised(answer)):
            return [] if set(kinds) == {"maintenance"} else [f"phases {kinds}, not a hold"]
        end = max(week["at_end"]["fat_fraction"]["mean"] for week in phases[-1]["weeks"])
        ceiling = (then.get("fat_ceiling_fraction") or _usual_ceiling(request["profile"], answer)) - 0.001
        if after and (end >= ceiling or _is_raised(answer)):
            # A hold was asked for by its length.
            after, held = [], 0 if kind == "maintenance" else then["gain_weeks"]
    # A gain ends with the week that reaches its ceiling, and a hold takes the rest of its weeks.
    kept = 0
    if kinds[-2:] == ["gain", "maintenance"]:
        ceiling = (asked if kind == "gain" else then).get("fat_ceiling_fraction")
        ceiling = (ceiling or _usual_ceiling(request["profile"], answer)) - 0.001
        if phases[-2]["weeks"][-1]["at_end"]["fat_fraction"]["mean"] < ceiling:
            return ["a gain that ends in a hold under its ceiling"]
        kinds, kept = kinds[:-1], len(phases[-1]["weeks"])
    expected = {
        "maintenance": ["maintenance", *after],
        "gain": ["gain"],
        "mini_cut": ["mini_cut", "maintenance", *after],
        "cut": ["cut", "maintenance", *after],
    }[kind]
    found: list[str] = []
    waited = len(phases[0]["weeks"]) if kinds[0] == "maintenance" and kind != "maintenance" else 0
    if (["maintenance"] if waited else []) + expected != kinds:
        return [f"phases {kinds}, not {expected}"]
    if waited < pause or (waited > pause and "event_date" not in asked):
        found.append(f"{waited} weeks at maintenance first for a pause of {pause}")
    main = phases[1] if waited else phases[0]
    follow = phases[kinds.index("gain")] if kind != "gain" and "gain" in kinds else None
    if follow is not None and len(follow["weeks"]) + kept != then["gain_weeks"]:
        found.append(f"a gain of {len(follow['weeks'])} weeks, and a hold of {kept}")
    main_weeks = len(main["weeks"]) + (kept if kind == "gain" else 0)
    if asked.get("weeks") is not None and main_weeks != asked["weeks"]:
        reached = kind == "gain" and "target_weight_kg" in asked and len(main["weeks"]) < asked["weeks"]
        if not reached:
            found.append(f"{main_weeks} weeks for {asked['weeks']} asked")
    if kind in ("mini_cut", "cut"):
        hold = phases[2 if waited else 1]
        if len(hold["weeks"]) - held != then["maintenance_weeks"]:
            found.append("maintenance of another length")
        total = len(main["weeks"]) + asked.get("weeks_done", 0)
        if not (2 <= total <= 6 if kind == "mini_cut" else total >= 7 and len(main["weeks"]) <= 26):
            found.append(f"a {kind} of {len(main['weeks'])} weeks, {total} in all")
        if "event_date" in asked:
            settled = date.fromisoformat(hold["end_date"]) - timedelta(days=7 * held)
            left = (date.fromisoformat(asked["event_date"]) - settled).days - 1
            if left < 0:
                found.append(f"{left} days between the end of maintenance and the event")
    return found


def _deficit(request: Json, phase: Json, start: Body) -> list[str]:
    found: list[str] = []

    def need(holds: bool, what: str) -> None:
        if not holds:
            found.append(f"{phase['kind']} {what}")

    asked = request["phase"]
    weeks = phase["weeks"]
    spent = [week for week in weeks if week["element"] != "break"]
    need(all(week["element"] in ("easing_in", "deficit", "break") for week in weeks), "has weeks of another purpose")
    need(sum(week["element"] == "easing_in" for week in weeks) == asked.get("easing_in_weeks", 0), "eases in otherwise")
    found += _breaks(asked, weeks)
    body = start
    for week in weeks:
        n, end, stored = week["week"], body.after(week), week["energy_balance_kcal"]
        if week["element"] == "break":
            need(-_fading(body) <= stored <= 150, f"week {n}: a break stores {stored}")
        else:
            # What is drawn by the forecast itself, beside what maintenance and intake say.
            fat_mean = 0.5 * (body.fat + end.fat)
            need(-stored <= FAT_SUPPLY * fat_mean + 1, f"week {n}: {-stored} kcal/d drawn from {fat_mean:.2f} kg fat")
        need(week["protein_g"] >= 1.6 * start.protein_kg - 1e-9, f"week {n}: protein {week['protein_g']} g")
        body = end
    # Less than what glycogen holds may come from glycogen: half a kilogram at 17.6 MJ/kg.
    missing = -sum(7 * week["energy_balance_kcal"] for week in spent)
    need(body.fat < start.fat or missing < 0.5 * 17600 / 4.184, "loses no fat")
    return found


def _breaks(asked: Json, weeks: list[Json]) -> list[str]:
    runs: list[tuple[str, int]] = []
    for week in weeks:
        name = "break" if week["element"] == "break" else "deficit"
        runs = [*runs[:-1], (name, runs[-1][1] + 1)] if runs and runs[-1][0] == name else [*runs, (name, 1)]
    every, length = asked.get("break_every_weeks"), asked.get("break_weeks", 1)
    if every is None:
        return ["breaks that were not asked for"] if len(runs) > 1 else []
    found = [f"a break of {n} weeks" for name, n in runs if name == "break" and n != length]
    # Without room for a break and a week after it the last stretch may be longer by as much.
    found += [f"{n} weeks without a break" for name, n in runs[:-1] if name == "deficit" and n > every]
    if runs[-1][0] == "break" or runs[-1][1] > every + length:
        found.append(f"ends with {runs[-1]}")
    return found


def _goal(request: Json, answer: Json, phase: Json, start: Body) -> list[str]:
    """Whether the goal is reached, within what 10 kcal/d of rounding is worth, and not passed where weeks are given."""
    asked = request["phase"]
    goal = next((name for name in GOALS if name in asked), None)
    if goal is None:
        return []
    end = start.after(phase["weeks"][-1])
    settled = end.weight - end.carried
    left = {
        "fat_loss_kg": asked.get(goal) + phase["change"]["fat_kg"]["mean"],
        "target_fat_fraction": end.fat / settled - asked[goal],
        "target_weight_kg": settled - asked[goal],
    }[goal]
    within = 10 * 7 * len(phase["weeks"]) / KCAL_PER_KG + 0.002
    if goal == "target_fat_fraction":
        within = within / start.weight + 5e-5
    if left > within:
        return [f"{left:.4f} short of {goal} {asked[goal]}"]
    # Whoever ate more until now loses at maintenance already, and no fat loss tells more than that.
    if "weeks" in asked and left < -2 * within and answer["deficit_kcal"] >= 1.0:
        return [f"{-left:.4f} past {goal} {asked[goal]} in the weeks asked for"]
    return []


# Adaptation is 14 % of the change of intake and fades with 14 days (Hall KD, et al. Lancet 2011;378:826-837): an
# intake set for the start of a week is off by 1 - 2 (1 - exp(-1/2)) of it on the mean of the week; food costs a tenth
# to digest.
FADING = 0.14 * (1 - 2 * (1 - math.exp(-0.5))) / 0.9


def _fading(body: Body) -> float:
    """What fading adaptation to a deficit of 30 % and 10 kcal of rounding are worth in a week at maintenance [kcal/d].

    Beside them the upkeep of returning water, some kilocalories a day.
    """
    return 20 + FADING * 0.30 * body.maintenance


def _hold(request: Json, answer: Json, phase: Json, start: Body) -> list[str]:
    found = []
    first = Body.at_start(request, answer).maintenance
    change = abs(request.get("current_intake_kcal", first) - first)
    for week in phase["weeks"]:
        if week["element"] != "maintenance":
            found.append(f"a week of {week['element']} at maintenance")
        # Adaptation to what was eaten before the plan fades too; glycogen of some hundred grams (4.2 kcal/g) fills or
        # empties in the plan's first weeks. Otherwise never a second cut or a gain.
        passed = (date.fromisoformat(week["start_date"]) - date.fromisoformat(request["start_date"])).days / 14
        slack = FADING * change * math.exp(-passed) + (160 if passed < 1 else 0)
        stored = week["energy_balance_kcal"]
        if not -_fading(start) - slack <= stored <= (math.inf if _is_raised(answer) else 30 + slack):
            found.append(f"maintenance week {week['week']} stores {stored} kcal/d")
    return found


def _gain(request: Json, phase: Json) -> list[str]:
    found = ["a gain without screening"] if request.get("screening") is None else []
    target = request["phase"].get("target_weight_kg")
    if request["phase"]["kind"] == "gain" and target is not None:
        settled = [w["at_end"]["weight_kg"]["mean"] - w["at_end"]["carried_kg"]["mean"] for w in phase["weeks"]]
        if settled[-1] < target - 0.002 or (len(settled) > 1 and settled[-2] > target + 0.002):
            found.append(f"settled weights {settled[-2:]} around a target of {target}")
    return found


def _day_kinds(request: Json, phase: Json) -> list[str]:
    split = request.get("day_split")
    found = []
    for week in phase["weeks"]:
        days = {day["kind"]: day for day in week["day_kinds"]}
        if split is None:
            if days:
                found.append("kinds of day that were not asked for")
            continue
        higher, lower = days["higher_carbohydrate"], days["lower_carbohydrate"]
        name = f"{phase['kind']} week {week['week']}"
        if (
            higher["days_per_week"] != split["higher_days_per_week"]
            or lower["days_per_week"] != 7 - split["higher_days_per_week"]
        ):
            found.append(f"{name}: days of the week")
        for key in ("intake_kcal", *MACROS):
            if sum(day["days_per_week"] * day[key] for day in days.values()) != 7 * week[key]:
                found.append(f"{name}: the week's {key} does not add up")
        if lower["carbohydrate_g"] > week["carbohydrate_g"] or higher["carbohydrate_g"] < week["carbohydrate_g"]:
            found.append(f"{name}: higher and lower days the wrong way round")
    return found
