"""Is an answer inside every rail? Worked out again from its own numbers, with nothing of the rails' code.

``violations(operation, request, status, body)`` gives what is wrong, each as "rule: figures"; nothing where all is
well. Where the requirement can be read in two ways the protective one is taken:

- *The logging ratio* is what the answer tells as ``logging_ratio`` (an interval; in a season beside the maintenance it
  starts from). Without logged intakes it is 1. An answer that rests on logged intakes and does not tell it is a
  violation, and is judged by the ratio that the trend of the same log has.
- *The physical maintenance* of those who may not diet is the higher of the prior of the equations and
  ``physical_maintenance_kcal``; a maintenance that the caller knows cannot lower it. In pregnancy nothing is taken off.
- *Energy availability* counts exercise of a level too: an hour at 5 MET a session, or, where that is more, what the
  level has over a physical activity level of 1.70 (``exercise_kcal`` where the answer tells it, if not too little). It
  fades by the expected body fat less the lower half of the reading's own interval, and not at all for body fat from
  height and weight. For an unspecified sex women's fade holds.
- *Resting energy* moves with the body: what is gone rests no more.
- *Deficits less than four weeks apart* count as one. The length of a last cut that ended less than four weeks ago is
  not told, hence taken as six weeks.
- *A day split, and each day of a week*: rails on intake hold for the lower day, by its food: alcohol feeds nothing.
- *A forecast's* weeks are a deficit under 97.5 % of maintenance, a gain over 102.5 %; the first against maintenance as
  estimated, whatever is eaten now.
- *Protein* is per kilogram of the weight at the start, or of ``protein_reference_kg`` where the answer tells one (no
  less than the weight at a body mass index of 25).
- *Leanness* is a target, ceiling or band of body fat in any field, or a text that gives one; the estimate of body fat
  itself may stand.
- *Under a body mass index of 16* plans, forecasts, decisions, seasons and reviews tell no intake at all; an estimate of
  maintenance or a trend may stand, with the urgent referral.
- *Logged loss* counts from log lines of four weeks whose two halves both lose 2 % a week or more, so that neither water
  nor noise is taken for it.
"""

import functools
import math
from collections import Counter
from collections.abc import Iterator
from datetime import date, timedelta
from typing import Any, NamedTuple

from . import day_rails, limits, stretches, week_rails, words
from .limits import Person, Ratio
from .week_rails import Scene

Json = dict[str, Any]
DIETS = {
    "plan_phases", "forecast_intake", "decide_phase", "plan_season", "compare_strategies", "optimise_season",
    "review_phase",
}  # fmt: skip
CARRIED_BMI = 0.6  # kg/m2, of some 1.6 kg
# Rails that warn of a size; others warn of the person, once for all.
SIZE_RAILS = {"deficit_share", "fat_supply", "energy_availability", "intake_floor", "bmi", "body_fat", "tissue_loss"}
SIGNED = {
    "adaptation_kcal", "change", "changes", "carried_kg", "energy_balance_kcal", "correction_kcal", "params", "score",
    "pattern", "growth_kg_per_day",
}  # fmt: skip


def violations(operation: str, request: Json, status: int, body: Json) -> list[str]:
    """What is wrong with what came back; empty when nothing is."""
    if status >= 500 or status == 0:
        return [f"fault: status {status}"]
    if operation == "estimate_body_composition":
        return [*_numbers(body), *_light(request, body), *_muscular(request, body)] if status == 200 else []
    if operation == "rank_roster":
        return [*_numbers(body), *_roster(request, body)] if status == 200 else [f"roster: status {status}"]
    request = _as_last_weighed(request, body)
    person = limits.person_of(request)
    found = [*_absurd(operation, request, person, status, body), *_twice(body)]
    if status != 200:
        return found + (list(_refused(request, person, body)) if person and operation in DIETS else [])
    found += _numbers(body)
    if "NOT_MEDICAL_ADVICE" not in {note["code"] for note in body["cautions"]}:
        found.append("caution: none that this is no medical advice")
    if person is None:
        return [*found, "maintenance: an answer for whom maintenance is refused"]
    if body.get("exercise_kcal") is not None:
        person = person._replace(exercise=limits.exercise(request["profile"], person.resting, body["exercise_kcal"]))
    # By the weight that was sent; what is carried beside the usual may be a kilogram or so.
    is_light = person.is_adult and person.bmi < limits.UNDERWEIGHT - CARRIED_BMI and operation != "review_phase"
    if is_light and not words.has_code(body, "UNDERWEIGHT"):
        found.append(f"underweight: nothing says so at BMI {person.bmi:.1f}")
    ratio = limits.ratio_of(request, body)
    found += _told_of_log(operation, request, person, ratio, body)
    if operation in DIETS:
        found += _who(operation, request, person, body)
        found += _weeks(operation, request, person, ratio, body)
    found += _OF.get(operation, _nothing)(request, person, body)
    return found


def _as_last_weighed(request: Json, body: Json) -> Json:
    """The request with the weight that its log last has, where the answer says that this one counts, and it has it."""
    counts = [note["params"]["logged_kg"] for note in body.get("cautions", []) if note["code"] == "LOG_WEIGHT_COUNTS"]
    newest = sorted(request["log"]["weights"], key=lambda row: row["date"])[-5:] if counts else []
    if not any(abs(row["weight_kg"] - counts[0]) < 1e-6 for row in newest):
        return request
    return request | {"profile": request["profile"] | {"weight_kg": counts[0]}}


def _roster(request: Json, answer: Json) -> Iterator[str]:
    """Everyone is there once, whoever needs it most first, and nobody's need is lowered or told as another's."""
    sent = {member["reference"]: member["attention"] for member in request["members"]}
    placed = answer["members"]
    if "NOT_MEDICAL_ADVICE" not in {note["code"] for note in answer["cautions"]}:
        yield "caution: none that this is no medical advice"
    if sorted(sent) != sorted(place["reference"] for place in placed):
        yield f"roster: {len(placed)} places for {len(sent)} members"
        return
    levels = [place["attention"]["level"] for place in placed]
    if levels != sorted(levels, reverse=True) or [place["rank"] for place in placed] != [*range(1, len(placed) + 1)]:
        yield f"roster: levels in the order {levels}"
    for place in placed:
        before, now = sent[place["reference"]], place["attention"]
        if now["level"] < before["level"]:
            yield f"roster: level {before['level']} is shown as {now['level']}"
        if now["level"] == before["level"] and now["change_kcal"] != before["change_kcal"]:
            yield f"roster: a change of {before['change_kcal']} is shown as {now['change_kcal']}"


def _twice(body: Json) -> Iterator[str]:
    """Warnings that one answer gives twice."""
    warned = Counter(rail["code"] for rail in body.get("guard_rails", []) if rail["action"] == "warned")
    yield from (f"twice: {code} is warned of {times} times" for code, times in warned.items() if times > 1)


def _nothing(request: Json, person: Person, body: Json) -> Iterator[str]:
    yield from ()


# --- numbers ---------------------------------------------------------------------------------------------------


_WORDS, _NUMBERS = (str, bool), (int, float)


def _numbers(value: Any, place: str = "$", *, signed: bool = False) -> Iterator[str]:
    """Numbers that are not finite, and masses and energies under nothing, ends of intervals included."""
    named = isinstance(value, dict)
    for key, item in value.items() if named else enumerate(value):
        if item is None or isinstance(item, _WORDS) or (isinstance(item, _NUMBERS) and 0 <= item < math.inf):
            continue  # as nearly all are: their place need not be told
        where = f"{place}.{key}" if named else f"{place}[{key}]"
        free = signed or (named and (_is_signed(key) or (key in ("lean_kg", "fat_kg") and "alternatives" in place)))
        if not isinstance(item, _NUMBERS):
            yield from _numbers(item, where, signed=free)
        elif not math.isfinite(item):
            yield f"not_finite: {where}"
        elif not free and any(unit in where for unit in ("_kg", "_kcal", "fraction", "_g")):
            yield f"negative: {where} {item}"


@functools.cache
def _is_signed(key: str) -> bool:
    """Whether a field of this name may be under nothing."""
    return (
        key in SIGNED
        or any(part in key for part in ("change", "difference", "rate", "drop", "_beyond_"))
        or key.endswith(("_cost_kg", "lean_gained_kg", "fat_gained_kg", "_rise_kg", "rebound_kg"))
    )


# --- the person ------------------------------------------------------------------------------------------------


def _refused(request: Json, person: Person, problem: Json) -> Iterator[str]:
    """A refusal of the person tells all of them, each with whom to see."""
    told = {fault["code"]: fault["detail"] for fault in problem.get("errors", [])}
    due = person.refusals()
    # Unanswered questions refuse a gain too, of which the other rules say nothing.
    is_of_deficit = _in_deficit(request) or bool(told.keys() & (due - {"REFUSED_UNANSWERED"}))
    if is_of_deficit and told.keys() & due:
        for code in sorted(due - told.keys()):
            yield f"refusals: {code} untold beside {sorted(told)}"
        for code in sorted(due & words.OWN_REFERRAL.keys() & told.keys()):
            if not words.OWN_REFERRAL[code].search(told[code]):
                yield f"referral: {code} does not say whom to see"
    if not person.may_hear_of_leanness and "%" in told.get("REFUSED_BODY_FAT", ""):
        yield "leanness: a figure of body fat in what it refuses"
    if _needs_doctor(request, person) and not words.says(problem, words.URGENT):
        yield f"refeeding: BMI {person.bmi:.1f} refused without an urgent referral"


def _who(operation: str, request: Json, person: Person, answer: Json) -> Iterator[str]:
    due = person.refusals()
    if due and _plans_deficit(operation, answer):
        yield f"who: a deficit for {sorted(due)}"
    refused = {rail["code"] for rail in words.guard_rails(answer) if rail["action"] == "refused"}
    if operation == "decide_phase" and refused & due and due - refused:
        yield f"refusals: {sorted(due - refused)} untold beside {sorted(refused)}"
    if not person.may_hear_of_leanness:
        unspoken = [rail for rail in words.guard_rails(answer) if rail["code"] == "REFUSED_BODY_FAT"]
        if any("%" in rail["text"] or rail["limit"] is not None for rail in unspoken):
            yield "leanness: a figure of body fat in what it refuses"
        yield from (f"leanness: {place}" for place in list(words.leanness(answer))[:3])
        target = request.get("question", {}).get("target", {}).get("quantity")
        if target in ("fat_kg", "fat_fraction") and answer["feasible"]:
            yield f"leanness: a target of {target}"
    if person.may_diet_never and person.screening is not None and not words.says(answer, words.REFERRAL):
        yield "referral: nothing says whom to see"
    if _needs_doctor(request, person):
        if list(_intakes(answer)):
            yield f"refeeding: an intake is told at BMI {person.bmi:.1f}"
        if not words.says(answer, words.URGENT):
            yield f"refeeding: no urgent referral at BMI {person.bmi:.1f}"


def _needs_doctor(request: Json, person: Person) -> bool:
    """Under BMI 16, or underweight with under half of resting energy logged, or clearly losing fast."""
    if person.bmi >= limits.UNDERWEIGHT - 0.005:
        return False
    if person.bmi < limits.REFEEDING_BMI - 0.005:
        return True
    eaten = _logged(request, 14)
    return (len(eaten) >= 7 and sum(eaten) / len(eaten) < 0.49 * person.resting) or logged_loss(request) > 0.02


def _plans_deficit(operation: str, answer: Json) -> bool:
    if operation == "plan_phases":
        return any(phase["kind"] in stretches.DEFICITS for phase in answer["phases"])
    if operation == "decide_phase":
        ways = [way for way in answer["alternatives"] if way["open"]]
        return any(way["kind"] in stretches.DEFICITS for way in [answer["recommended"], *ways])
    if operation in ("plan_season", "optimise_season"):
        return bool(answer["plan"]["totals"]["cuts"])
    if operation == "compare_strategies":
        return any(strategy["expected"]["cuts"] for strategy in answer["strategies"])
    return False


def _intakes(value: Any) -> Iterator[float]:
    """Every intake that an answer tells to eat."""
    if isinstance(value, dict):
        for key, item in value.items():
            if key in ("intake_kcal", "surplus_kcal", "correction_kcal") and isinstance(item, int | float) and item:
                yield item
            else:
                yield from _intakes(item)
    elif isinstance(value, list):
        for item in value:
            yield from _intakes(item)


# --- what no body has ------------------------------------------------------------------------------------------


def _absurd(operation: str, request: Json, person: Person | None, status: int, body: Json) -> Iterator[str]:
    profile = request["profile"]
    hours = sum(s["minutes"] / 60 * s["times_per_week"] for s in profile["activity"].get("sessions", []))
    if hours > 168.01 and status == 200:
        yield f"week: {hours:.0f} hours of sessions in it"
    square = (profile["height_cm"] / 100) ** 2
    reading = profile.get("body_fat")
    if reading:
        index = (1 - reading["fat_fraction"]) * profile["weight_kg"] / square
        if index > limits.NO_BODY + 0.05 and status == 200:
            yield f"no_body: fat-free mass index {index:.1f} is answered"
        asked = index > limits.MUSCULAR[profile["sex"]] + 0.05
    else:
        index = profile["weight_kg"] / square
        asked = index > 40.05
    if asked and status == 200 and not words.says(body, words.POUNDS):
        yield f"pounds: not asked at {index:.1f} kg/m2"
    if person is None or status != 200 or "maintenance_kcal" not in body or operation == "read_trend":
        return
    physical = (body.get("physical_maintenance_kcal") or body["maintenance_kcal"])["mean"]
    times = physical / person.resting
    if times > limits.REFUSED_OVER + 0.01:
        yield f"maintenance: {times:.1f} times resting energy is answered"
    elif times > limits.ASKED_ABOUT + 0.01 and not words.says(body, words.ASKS):
        yield f"maintenance: {times:.1f} times resting energy is not asked about"
    elif times < limits.BELIEVED - 0.01 and not (request.get("log") or {}).get("intakes"):
        yield f"maintenance: {times:.2f} times resting energy is believed"


def _light(request: Json, body: Json) -> Iterator[str]:
    """Somebody underweight by height and weight is told so, whatever was measured of them."""
    bmi = request["weight_kg"] / (request["height_cm"] / 100.0) ** 2
    if request["age_years"] >= limits.ADULT and bmi < limits.UNDERWEIGHT and not words.has_code(body, "UNDERWEIGHT"):
        yield f"underweight: nothing says so at BMI {bmi:.1f}"


def _muscular(request: Json, body: Json) -> Iterator[str]:
    """The fat-free mass index of a measured body, judged where it is told."""
    index = body["ffmi"]["mean"]
    if body["is_measured"] and index > limits.NO_BODY + 0.05:
        yield f"no_body: fat-free mass index {index:.1f} is answered"
    if body["is_measured"] and index > limits.MUSCULAR[request["sex"]] + 0.05 and not words.says(body, words.POUNDS):
        yield f"pounds: not asked at {index:.1f} kg/m2"


# --- the log ---------------------------------------------------------------------------------------------------


def _logged(request: Json, days: int) -> list[float]:
    """Full days of the last ``days`` of the log."""
    log = request.get("log") or {}
    full = [entry for entry in log.get("intakes", []) if not entry.get("is_partial")]
    if not full or not log.get("weights"):
        return []
    last = max(entry["date"] for entry in [*full, *log["weights"]])
    since = (date.fromisoformat(last) - timedelta(days=days)).isoformat()
    return [entry["intake_kcal"] for entry in full if entry["date"] > since]


def logged_loss(request: Json) -> float:
    """Body mass lost a week over the last four weeks, the slower of their halves; 0 where the log does not tell."""
    weights = (request.get("log") or {}).get("weights", [])
    if not weights:
        return 0.0
    last = max(date.fromisoformat(entry["date"]) for entry in weights)
    return min(_slope(weights, last - timedelta(days=ago), 14) for ago in (14, 0))


def _slope(weights: list[Json], last: date, days: int) -> float:
    rows = [(-(last - date.fromisoformat(w["date"])).days, w["weight_kg"]) for w in weights]
    rows = [row for row in rows if -days < row[0] <= 0]
    if len(rows) < 9:
        return 0.0
    day, weight = (sum(column) / len(rows) for column in zip(*rows, strict=True))
    spread = sum((x - day) ** 2 for x, _ in rows)
    return -7 * sum((x - day) * (y - weight) for x, y in rows) / spread / weight if spread else 0.0


_KILOJOULES = 1.7  # times what is needed: food of most days that nobody eats, who means kilojoules


def _told_of_log(operation: str, request: Json, person: Person, ratio: Ratio, answer: Json) -> Iterator[str]:
    if not request.get("log"):
        return
    # A day of nothing, or logged in part, counts as a day that was not logged.
    logged = sorted(
        row["intake_kcal"]
        for row in request["log"].get("intakes", ())
        if row["intake_kcal"] > 0 and not row.get("is_partial")
    )
    holds_food = bool(logged)
    if logged and logged[len(logged) // 2] > _KILOJOULES * person.prior:
        # All of it is left out, so that the answer rests on equations, if it says so.
        holds_food = not (words.has_code(answer, "FROM_EQUATIONS") or words.has_code(answer, "PLAN_PROVISIONAL"))
    if holds_food and operation != "read_trend":
        rests = not request.get("maintenance") or operation == "review_phase"
        if rests and not ratio.is_told:
            yield "logging_scale: the logging ratio is not told"
        if rests and not words.says(answer, words.SCALE):
            yield "logging_scale: nothing says that it is the person's own"
    lost = logged_loss(request)
    if lost > 0.02:
        if not any("LOSS" in note["code"] or "WEIGHT_LOSS" in note["code"] for note in words.notes(answer)):
            yield f"logged_loss: {100 * lost:.1f} % a week, nothing said"
        if operation in DIETS - {"review_phase"} and _starts_deficit(operation, answer):
            yield f"logged_loss: {100 * lost:.1f} % a week, and a deficit on top"
        if not _in_deficit(request) and operation == "review_phase" and not words.says(answer, words.REFERRAL, {
            "notes": [note for note in words.notes(answer) if note["code"] != "NOT_MEDICAL_ADVICE"],
        }):  # fmt: skip
            yield f"logged_loss: {100 * lost:.1f} % a week, unexplained, without a referral"
    eaten = _logged(request, 14)
    if len(eaten) >= 10:
        mean = sum(eaten) / len(eaten) / ratio.mean
        # Clearly: a tenth of it under the floor, by somebody who needs more.
        floor = limits.FLOOR[person.sex]
        if mean < 0.9 * floor < 0.8 * person.prior and "intake_floor" not in words.rails(answer) \
                and not words.has_code(answer, "FLOOR"):  # fmt: skip
            yield f"eaten: {mean:.0f} kcal/d, and no floor named"


def _starts_deficit(operation: str, answer: Json) -> bool:
    if operation == "decide_phase":
        return answer["recommended"]["kind"] in stretches.DEFICITS
    return _plans_deficit(operation, answer)


def _in_deficit(request: Json) -> bool:
    return request.get("phase", {}).get("kind") in stretches.DEFICITS


# --- weeks -----------------------------------------------------------------------------------------------------

_STRETCHES = {
    "plan_phases": stretches.of_plan,
    "forecast_intake": stretches.of_forecast,
    "plan_season": stretches.of_season,
    "optimise_season": stretches.of_season,
    "review_phase": stretches.of_review,
}


def _weeks(operation: str, request: Json, person: Person, ratio: Ratio, answer: Json) -> Iterator[str]:
    made = _STRETCHES.get(operation)
    if made is None:
        return
    every = list(made(person, request, answer))
    if not every:
        return
    reference = answer.get("protein_reference_kg")
    if reference is not None and reference < min(person.weight, 25 * person.height_m**2) - 0.5:
        yield f"protein: a reference mass of {reference:g} kg"
    if operation == "plan_phases" and reference is not None and reference > person.weight + 0.001:
        yield f"protein: a reference mass of {reference:g} kg, over {person.weight:g}"
    has_log = bool((request.get("log") or {}).get("intakes")) and not request.get("maintenance")
    is_review = operation == "review_phase"
    start = every[0].weeks[0].before
    if is_review:
        start = stretches.body_now(person, start.maintenance)
    physical = answer.get("physical_maintenance_kcal")
    eaten = physical["mean"] if physical else start.maintenance / ratio.mean if has_log else 0.0
    history = is_review or operation == "forecast_intake" or request.get("cut_history") is not None
    settled = 0.0
    if operation == "forecast_intake":
        settled = (start if every[0].is_start_settled else every[0].weeks[0].after).settled
    followed = (request.get("phase") or request["state"]["phase"]) if is_review else None
    planned_on = followed["maintenance"]["kcal_per_day"] if followed else math.inf
    told = (answer.get("maintenance_kcal") or answer["start"]["maintenance_kcal"])["mean"]
    scene = Scene(person, ratio, eaten, start, reference, history, is_review, settled, planned_on, told)
    for stretch in every:
        yield from week_rails.violations(scene, stretch)
        if stretch.is_deficit:
            if person.refusals():
                yield f"who: a deficit for {sorted(person.refusals())}"
            yield from _said_of_deficit(operation, scene, stretch, answer)
    if operation == "plan_phases":
        yield from _sizes(scene, request, answer)
        yield from _levers(scene, request, answer)


def _sizes(scene: Scene, request: Json, answer: Json) -> Iterator[str]:
    """The other sizes of a plan hold every rail, and each names those that warn of it."""
    for size, stretch in stretches.sizes_of_plan(scene.person, request, answer):
        yield from (f"size_{found}" for found in week_rails.violations(scene, stretch))
        if len(stretch.weeks) < 2:
            continue  # the body that it is warned for is not told
        told = {rail["id"] for rail in size["guard_rails"]}
        for rule, why in week_rails.warned(scene, stretch):
            if rule in SIZE_RAILS and rule not in told:
                yield f"size_unwarned: {rule}, {why}"


def _levers(scene: Scene, request: Json, answer: Json) -> Iterator[str]:
    """Activity on offer: what it burns is worked out anew, and each use of it holds every rail with that counted."""
    person, screening = scene.person, scene.person.screening or {}
    if answer["levers"] and (screening.get("conditions") or screening.get("medicines")):
        yield "lever_who: more activity without asking a clinician"
    for lever in answer["levers"]:
        met, minutes = (7.0, lever["minutes_per_week"]) if lever["kind"] == "cycling" else (3.0, None)
        burnt = limits.bouts_kcal(
            [{"met": met, "minutes": minutes or 7 * (lever["steps_per_day"] or 0.0) / 100, "times_per_week": 1}],
            person.resting,
        )
        told, kept = lever["burnt_kcal"]["mean"], lever["kept_kcal"]
        if abs(told - burnt) > 1.5:
            yield f"lever_burnt: {told} for {burnt:.0f}"
        if not 0 <= kept["lower"] <= kept["mean"] <= kept["upper"] <= lever["burnt_kcal"]["upper"] + 1:
            yield f"lever_kept: {kept} of {told}"
        if (lever["instead"] is None or lever["together"] is None) and len(lever["reasons"]) < 2:
            yield "lever_silent: a use is left out without a reason"
    for lever, name, planned, stretch in stretches.levers_of_plan(person, request, answer):
        yield from (f"lever_{found}" for found in week_rails.violations(scene, stretch))
        for week, without in zip(stretch.weeks, planned.weeks, strict=True):
            if week.intake > max(without.intake, without.before.maintenance + week_rails.KCAL):
                yield f"lever_maintenance: {week.intake:g} of {without.before.maintenance:g}"
        more = lever[name]["intake_kcal"] - (lever["together"] or {"intake_kcal": math.inf})["intake_kcal"]
        if name == "instead" and more > scene.ratio.mean * lever["kept_kcal"]["mean"] + 10 + week_rails.KCAL:
            yield f"lever_more: {more:g} eaten more for {lever['kept_kcal']['mean']} that count"


def _said_of_deficit(operation: str, scene: Scene, stretch: stretches.Stretch, answer: Json) -> Iterator[str]:
    told = words.rails(answer)
    for rule, why in week_rails.warned(scene, stretch):
        if rule not in told:
            yield f"unwarned: {rule}, {why}"
    if not scene.history_known and "cut_history" not in told:
        yield "unwarned: cut_history, unknown"
    if not (scene.person.is_measured or words.has_code(answer, "MEASURE") or words.says(answer, words.MEASURE)):
        yield "unwarned: fat from height and weight, and nothing says to measure first"
    if operation == "forecast_intake":
        return
    has_no_periods = scene.person.sex == "male" or scene.person.age >= limits.PAST_MENOPAUSE
    for sign, pattern in words.STOP_SIGNS.items():
        if not (has_no_periods and sign == "a missed period") and not words.says(answer, pattern):
            yield f"stop_signs: {sign} is not named"


# --- one operation's own ---------------------------------------------------------------------------------------


def _plan(request: Json, person: Person, answer: Json) -> Iterator[str]:
    if not answer["feasible"] and (answer["nearest"] is None or answer["phases"] or not answer["reasons"]):
        yield "infeasible: without `nearest` or a reason, or with phases"
    yield from day_rails.violations(request, person, answer)


def _forecast(request: Json, person: Person, answer: Json) -> Iterator[str]:
    target = request["question"].get("target")
    if target is None or not answer["feasible"]:
        return
    if target["quantity"] == "weight_kg" and target["value"] < min(
        person.weight, limits.UNDERWEIGHT * person.height_m**2 - week_rails.GRAM
    ):
        yield f"bmi: a target of {target['value'] / person.height_m**2:.2f}"
    if target["quantity"] == "fat_fraction" and target["value"] < limits.LEAST_FAT[person.sex]:
        yield f"body_fat: a target of {target['value']:g}"


def _decision(request: Json, person: Person, answer: Json) -> Iterator[str]:
    next_ = answer["recommended"]
    if next_["kind"] in stretches.DEFICITS:
        if (person.screening or {}).get("eating_disorder") == "unsure":
            yield "doubt: a deficit is recommended before a doubt about an eating disorder is answered"
        if person.bmi < limits.NEAR_UNDERWEIGHT and request.get("goal", "muscle") in ("muscle", "hold"):
            yield f"near_underweight: a deficit is recommended at BMI {person.bmi:.1f}"
        weeks = next_["weeks"] + (next_["plan"]["phase"].get("weeks_done") or 0)
        if (weeks > limits.SHORT_WEEKS) != (next_["kind"] == "cut"):
            yield f"kind: {weeks} weeks are called a {next_['kind']}"


def _review(request: Json, person: Person, answer: Json) -> Iterator[str]:
    kind, correction = request["phase"]["kind"], answer["correction_kcal"]
    verdict = answer["verdict"]
    maintenance = answer["maintenance_kcal"]["mean"]
    intakes = [week["intake_kcal"] for week in answer["weeks"]]
    if correction < 0:
        if person.may_diet_never:
            yield f"review: {correction} for someone whose intake may not be lowered"
        if verdict in ("within_interval", "too_early") and not _was_too_fast(request, person, answer):
            yield f"review: {correction} while {verdict}"
        if kind in ("gain", "maintenance") and intakes and min(intakes) < maintenance - 10:
            yield f"review: a {kind} lowered to {min(intakes):g} under maintenance {maintenance:g}"
    if correction < -limits.STEP:
        yield f"review: a step of {correction}"
    rails = words.rails(answer)
    is_raised = person.may_diet_never or rails & {"intake_floor", "energy_availability"}
    if correction > limits.STEP and not is_raised:
        yield f"review: a step of {correction} that no floor asks for"
    # A break is told as planned: what was maintenance then need not be today's.
    eaten = [week.intake for stretch in stretches.of_review(person, request, answer) for week in stretch.weeks
             if not week.is_break]  # fmt: skip
    if correction > 0 and kind in stretches.DEFICITS and eaten and max(eaten) > maintenance + 10 + correction:
        yield f"review: {max(eaten):g} is past maintenance {maintenance:g} in a {kind}"
    if bool((person.screening or {}).get("is_pregnant")) and verdict == "faster":
        yield "review: a gain in pregnancy is called faster"
    yield from _review_says(request, answer, rails)
    after = answer.get("after")
    if after:
        yield from _after(request, person, answer, after)


def _review_says(request: Json, answer: Json, rails: set[str]) -> Iterator[str]:
    """Sentences against what is decided, and a loss that no rail reports."""
    said = {reason["code"]: reason["text"] for reason in answer["reasons"]}
    if answer["decision"] == "end" or answer["correction_kcal"] > 0:
        for code, text in said.items():
            if words.KEEP_ON.search(text):
                yield f"says: {code} though {answer['decision']} {answer['correction_kcal']:g}"
    if answer["decision"] == "end":
        yield from (f"says: {code} of a phase that ends" for code, text in said.items() if words.GOES_ON.search(text))
    if "REVIEW_UNEXPLAINED_LOSS" in said and "logged_loss" not in rails:
        yield "unreported: an unexplained loss"
    is_settled = _in_deficit(request) and answer["days_into_phase"] >= 21 and answer["decision"] != "end"
    if is_settled and logged_loss(request) > limits.LOGGED_LOSS + 0.0005 and "logged_loss" not in rails:
        yield f"unreported: a loss of {100 * logged_loss(request):.1f} % a week"


def _was_too_fast(request: Json, person: Person, answer: Json) -> bool:
    """Whether a gain is lowered that, eaten on as planned, would be over its fastest: a rail waits for no verdict.

    By the answer's own bodies, and for what is eaten less the least tissue that it may be: fat alone.
    """
    if request["phase"]["kind"] != "gain" or "gain_rate" not in words.rails(answer):
        return False
    bodies = [stretches.body_at(week["at_end"]) for week in answer["weeks"]]
    days = sum(week["days"] for week in answer["weeks"][1:])
    if not days:
        return True  # the body that the days to come begin with is not told
    told = (bodies[-1].settled - bodies[0].settled) / days
    saved = -answer["correction_kcal"] / limits.ratio_of(request, answer).mean / limits.FAT_ENERGY
    return told + saved > limits.GAIN[person.status] * bodies[0].weight / 7


def _after(request: Json, person: Person, answer: Json, after: Json) -> Iterator[str]:
    """What comes after passes the same gate as a hold."""
    ratio = limits.ratio_of(request, answer)
    now, last = (stretches.body_at(point) for point in (after["points"][0], after["points"][-1]))
    maintenance = answer["maintenance_kcal"]["mean"]
    intake = after["intake_kcal"]
    week = stretches.Week(intake, intake, 14, False, now._replace(maintenance=maintenance), last)
    # Resting energy is that of the profile, at the phase's start: what was lost since rests no more.
    began = stretches.body_now(person, maintenance)
    physical = (answer.get("physical_maintenance_kcal") or {"mean": 0.0})["mean"]
    scene = Scene(person, ratio, physical, began, is_review=True, settled_kcal=maintenance)
    held = stretches.Stretch("maintenance", [week], is_start_settled=False)
    yield from (f"after_{found}" for found in week_rails.violations(scene, held))


def _maintenance(request: Json, person: Person, answer: Json) -> Iterator[str]:
    share = answer["contribution"]
    for name in ("prior_share", "log_share"):
        if not 0 <= share[name] <= 1:
            yield f"share: {name} {share[name]}"
    yield from _urgent(person, request, answer)


def _trend(request: Json, person: Person, answer: Json) -> Iterator[str]:
    if not 0 <= answer["log_share"] <= 1:
        yield f"share: log_share {answer['log_share']}"
    yield from _urgent(person, request, answer)


def _urgent(person: Person, request: Json, answer: Json) -> Iterator[str]:
    if _needs_doctor(request, person) and not words.says(answer, words.URGENT):
        yield f"refeeding: no urgent referral at BMI {person.bmi:.1f}"


_OF: dict[str, Any] = {
    "plan_phases": _plan,
    "forecast_intake": _forecast,
    "decide_phase": _decision,
    "review_phase": _review,
    "estimate_maintenance": _maintenance,
    "read_trend": _trend,
}


def rule_of(violation: str) -> str:
    """The name before the figures; of a warning that is missing, with the rail's id."""
    rule, _, figures = violation.partition(": ")
    return f"{rule} {figures.split(',')[0]}" if rule == "unwarned" else rule


class Outcome(NamedTuple):
    """What became of a request, in one word."""

    kind: str
    found: list[str]


def outcome(operation: str, request: Json, status: int, body: Json) -> Outcome:
    """The row of the sweep's table that an answer counts in, and what is wrong with it."""
    found = violations(operation, request, status, body)
    if status >= 500:
        return Outcome("fault", found)
    if status != 200:
        return Outcome("refused", found)
    return Outcome("feasible" if body.get("feasible", True) else "infeasible", found)
