"""Every guard rail checked again on a finished plan, from the answer's own numbers.

Limits are typed here again, from the table of rules and not from the service's constants. Tolerances are those of
the printed digits: whole kilocalories for energies, grams for masses, 0.01 % for body fat.
"""

import math
from collections.abc import Iterator
from datetime import date, timedelta
from typing import Any, NamedTuple

Json = dict[str, Any]

INTAKE_FLOOR = {"female": 1200, "male": 1500, "unspecified": 1500}
LEAST_FAT = {"male": 0.06, "female": 0.14, "unspecified": 0.14}
GAIN_RATE = {"untrained": 0.005, "novice": 0.005, "intermediate": 0.0025, "advanced": 0.0015}
FAT_SUPPLY = 290.0 / 4.184  # kcal per kg fat mass a day (Alpert SS. J Theor Biol 2005;233:1-13)
KCAL_PER_KG = 7700.0
MACROS = ("protein_g", "carbohydrate_g", "fat_g")
GOALS = ("fat_loss_kg", "target_fat_fraction", "target_weight_kg")


def exercise_kcal(profile: Json, resting_kcal: float) -> float:
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


def violations(request: Json, answer: Json) -> list[str]:
    """What is wrong with an answer; empty when nothing is."""
    found = [f"not finite: {place}" for place, value in numbers(answer) if not math.isfinite(value)]
    if "NOT_MEDICAL_ADVICE" not in {note["code"] for note in answer["cautions"]}:
        found.append("no caution that this is no medical advice")
    if not answer["feasible"]:
        if answer["nearest"] is None or answer["phases"] or not answer["reasons"]:
            found.append("an infeasible answer without `nearest` or a reason, or with phases")
        return found
    found += [what for phase in answer["phases"] for what in _amounts(phase)]
    found += _dates(answer)
    found += _order(request, answer)
    if found:
        return found
    body = Body.at_start(request, answer)
    for phase in answer["phases"]:
        if phase["kind"] in ("mini_cut", "cut"):
            found += _person(request, answer) + _deficit(request, phase, body) + _goal(request, phase, body)
        elif phase["kind"] == "maintenance":
            found += _hold(request, answer, phase, body)
        else:
            found += _gain(request, phase, body)
        found += _day_kinds(request, phase, body)
        body = body.after(phase["weeks"][-1])
    return found


class Body(NamedTuple):
    """A body at the start of a week, and what stays the same of it [kg, kcal/d]."""

    weight: float
    fat: float
    carried: float
    maintenance: float
    resting: float
    exercise: float
    fat_below: float = -1.0  # half the interval of a reading; under 0 where the fade does not hold
    least_fed: float = 0.0  # lean mass over this fraction, and this mass at least, are what protein is shared out for
    lean_share: float = 1.0

    @property
    def protein_kg(self) -> float:
        return min(self.weight, max((self.weight - self.fat) / self.lean_share, self.least_fed))

    @classmethod
    def at_start(cls, request: Json, answer: Json) -> "Body":
        weight, resting = request["profile"]["weight_kg"], answer["resting_kcal"]["mean"]
        fat = answer["body_fat_fraction"]["mean"] * weight
        exercise = exercise_kcal(request["profile"], resting)
        told, reading = answer["body_fat_fraction"], request["profile"].get("body_fat")
        is_measured = reading is not None and reading["method"] != "bmi_equation"
        share = 0.80 if request["profile"]["sex"] == "male" else 0.67
        fed = 25.0 * (request["profile"]["height_cm"] / 100.0) ** 2
        below = told["mean"] - told["lower"] if is_measured else -1.0
        return cls(weight, fat, math.nan, answer["maintenance_kcal"]["mean"], resting, exercise, below, fed, share)

    def after(self, week: Json) -> "Body":
        end = week["at_end"]
        weight, fat, carried = (end[key]["mean"] for key in ("weight_kg", "fat_kg", "carried_kg"))
        return self._replace(weight=weight, fat=fat, carried=carried, maintenance=end["maintenance_kcal"]["mean"])

    def least_intake(self, sex: str, *, is_long: bool) -> dict[str, float]:
        """The least intake by each rule on a day in a deficit, a kilocalorie of printing allowed for."""
        # It fades where measured body fat is high, by the lower end of the reading.
        first, last = (0.18, 0.25) if sex == "male" else (0.27, 0.35)
        left = min(1.0, max(0.0, (last - self.fat / self.weight + self.fat_below) / (last - first)))
        available = left * ((30.0 if is_long else 25.0) - 0.05) - (0.05 if left < 1.0 else 0.0)
        return {
            "floor": max(INTAKE_FLOOR[sex], self.resting - 1 if is_long else 0.0),
            "share": 0.70 * self.maintenance - 1,
            "energy availability": self.exercise + available * (self.weight - self.fat) - 1 if left else 0.0,
            "fat supply": self.maintenance - FAT_SUPPLY * self.fat - 1.5,
        }


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
# women (common practice, no published source); the lower one where neither set fits.
_USUAL_CEILING = {"male": 0.17, "female": 0.27, "unspecified": 0.17}


def _usual_ceiling(profile: Json, answer: Json) -> float:
    """Where body fat is told by height and weight alone, it must be over it by the lower end of its interval."""
    if profile["age_years"] < 18:
        return math.inf
    fat = answer["body_fat_fraction"]
    unsure = 0.0 if "body_fat" in profile else fat["mean"] - fat["lower"]
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
        ceiling = asked.get("fat_ceiling_fraction", math.inf) - 0.001
        if kind == "gain" and (answer["body_fat_fraction"]["mean"] >= ceiling or _is_raised(answer)):
            return [] if set(kinds) == {"maintenance"} else [f"phases {kinds}, not a hold"]
        end = max(week["at_end"]["fat_fraction"]["mean"] for week in phases[-1]["weeks"])
        ceiling = (then.get("fat_ceiling_fraction") or _usual_ceiling(request["profile"], answer)) - 0.001
        if after and (end >= ceiling or _is_raised(answer)):
            after, held = [], then["gain_weeks"]
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
    if follow is not None and len(follow["weeks"]) != then["gain_weeks"]:
        found.append(f"a gain of {len(follow['weeks'])} weeks")
    if asked.get("weeks") is not None and len(main["weeks"]) - (held if kind == "maintenance" else 0) != asked["weeks"]:
        reached = kind == "gain" and "target_weight_kg" in asked and len(main["weeks"]) < asked["weeks"]
        if not reached:
            found.append(f"{len(main['weeks'])} weeks for {asked['weeks']} asked")
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


def _person(request: Json, answer: Json) -> list[str]:
    """May this person run a deficit at all?"""
    profile, screening = request["profile"], request.get("screening")
    if screening is None:
        return ["a deficit without screening"]
    found = []
    cleared = screening.get("clinical_clearance") is not None
    if profile["age_years"] < 18 or (profile["age_years"] >= 65 and not cleared):
        found.append(f"a deficit at {profile['age_years']} years of age")
    if screening["is_pregnant"] or screening["is_breastfeeding"]:
        found.append("a deficit in pregnancy or lactation")
    if screening["eating_disorder"] in ("current", "past"):
        found.append("a deficit with an eating disorder")
    if (screening["conditions"] or screening["medicines"]) and not cleared:
        found.append("a deficit with a listed condition or medicine")
    if profile["weight_kg"] / (profile["height_cm"] / 100) ** 2 < 18.5:
        found.append("a deficit while underweight")
    if answer["body_fat_fraction"]["mean"] <= LEAST_FAT[profile["sex"]] - 5e-5:
        found.append("a deficit at the least body fat")
    return found


def _deficit(request: Json, phase: Json, start: Body) -> list[str]:
    found: list[str] = []

    def need(holds: bool, what: str) -> None:
        if not holds:
            found.append(f"{phase['kind']} {what}")

    sex = request["profile"]["sex"]
    asked = request["phase"]
    weeks = phase["weeks"]
    is_long = len(weeks) + asked.get("weeks_done", 0) > 6
    spent = [week for week in weeks if week["element"] != "break"]
    need(all(week["element"] in ("easing_in", "deficit", "break") for week in weeks), "has weeks of another purpose")
    need(sum(week["element"] == "easing_in" for week in weeks) == asked.get("easing_in_weeks", 0), "eases in otherwise")
    found += _breaks(asked, weeks)
    body = block = start
    for i, week in enumerate(weeks):
        intake, n = week["intake_kcal"], week["week"]
        # A mini-cut's intake is set once, for the body at its start; a cut's anew for each block of weeks.
        if (
            i
            and phase["kind"] == "cut"
            and (weeks[i - 1]["intake_kcal"] != intake or weeks[i - 1]["element"] != week["element"])
        ):
            block = body
        end = body.after(week)
        if week["element"] == "break":
            stored = week["energy_balance_kcal"]
            need(-_fading(body) <= stored <= 150, f"week {n}: a break stores {stored}")
        else:
            for rule, least in block.least_intake(sex, is_long=is_long).items():
                need(intake >= least, f"week {n}: intake {intake} under {least:.0f} by {rule}")
            drawn = -week["energy_balance_kcal"]
            fat_mean = 0.5 * (body.fat + end.fat)
            need(drawn <= FAT_SUPPLY * fat_mean + 1, f"week {n}: {drawn} kcal/d drawn from {fat_mean:.2f} kg fat")
        need(week["protein_g"] >= 1.6 * start.protein_kg - 1e-9, f"week {n}: protein {week['protein_g']} g")
        need(week["fat_g"] >= 0.5 * start.weight - 1e-9, f"week {n}: dietary fat {week['fat_g']} g")
        need(9 * week["fat_g"] >= 0.15 * intake - 1e-9, f"week {n}: dietary fat {week['fat_g']} g of {intake} kcal")
        fraction = week["at_end"]["fat_fraction"]["mean"]
        need(fraction >= LEAST_FAT[sex] - 5e-5, f"week {n}: body fat {fraction}")
        body = end
    # Less than what glycogen holds may come from glycogen: half a kilogram at 17.6 MJ/kg.
    missing = -sum(7 * week["energy_balance_kcal"] for week in spent)
    need(body.fat < start.fat or missing < 0.5 * 17600 / 4.184, "loses no fat")
    lost = -(phase["change"]["fat_kg"]["mean"] + phase["change"]["lean_kg"]["mean"])
    per_week = lost / len(spent) / start.weight
    need(per_week <= 0.010 + 2e-3 / len(spent) / start.weight, f"loses {100 * per_week:.3f} % a week of deficit")
    if not request.get("cut_history"):
        need(start.maintenance - spent[0]["intake_kcal"] <= 501, "has a deficit over the default, history unknown")
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


def _goal(request: Json, phase: Json, start: Body) -> list[str]:
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
    if "weeks" in asked and left < -2 * within:
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
        found += _dietary_fat(request, phase, week)
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


def _gain(request: Json, phase: Json, start: Body) -> list[str]:
    found = [what for week in phase["weeks"] for what in _dietary_fat(request, phase, week)]
    if request.get("screening") is None:
        found.append("a gain without screening")
    weeks = len(phase["weeks"])
    gained = phase["change"]["fat_kg"]["mean"] + phase["change"]["lean_kg"]["mean"]
    rate = gained / weeks / start.weight
    limit = GAIN_RATE[request["profile"]["training"]["status"]]
    if rate > limit + 2e-3 / weeks / start.weight:
        found.append(f"tissue rises by {100 * rate:.3f} % a week, limit {100 * limit:.2f} %")
    target = request["phase"].get("target_weight_kg")
    if request["phase"]["kind"] == "gain" and target is not None:
        settled = [w["at_end"]["weight_kg"]["mean"] - w["at_end"]["carried_kg"]["mean"] for w in phase["weeks"]]
        if settled[-1] < target - 0.002 or (weeks > 1 and settled[-2] > target + 0.002):
            found.append(f"settled weights {settled[-2:]} around a target of {target}")
    return found


def _dietary_fat(request: Json, phase: Json, week: Json) -> list[str]:
    weight = request["profile"]["weight_kg"]
    if week["fat_g"] < 0.5 * weight - 1e-9 or 9 * week["fat_g"] < 0.15 * week["intake_kcal"] - 1e-9:
        return [f"{phase['kind']} week {week['week']}: dietary fat {week['fat_g']} g"]
    return []


def _day_kinds(request: Json, phase: Json, start: Body) -> list[str]:
    split = request.get("day_split")
    found = []
    body = start
    is_long = len(phase["weeks"]) + request["phase"].get("weeks_done", 0) > 6 and phase["kind"] == "cut"
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
        if lower != higher | {"kind": lower["kind"], "days_per_week": lower["days_per_week"]}:
            # A lower day is a day in a deficit, whatever the phase is.
            for rule, least in body.least_intake(request["profile"]["sex"], is_long=is_long).items():
                if lower["intake_kcal"] < least:
                    found.append(f"{name}: lower day of {lower['intake_kcal']} under {least:.0f} by {rule}")
        body = body.after(week)
    return found
