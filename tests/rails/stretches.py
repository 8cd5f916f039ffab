"""Answers of every endpoint as the same thing: stretches of weeks, each with a body before and after it."""

import math
from collections.abc import Iterator
from datetime import date
from typing import Any, NamedTuple

from . import limits
from .day_rails import food
from .limits import Person

Json = dict[str, Any]
DEFICITS = ("mini_cut", "cut")


class Body(NamedTuple):
    """A body on a day. ``settled`` is its weight without what is carried beyond the usual."""

    weight: float
    fat: float
    settled: float
    fraction: float
    maintenance: float


class Week(NamedTuple):
    """Days with one intake, and the bodies before and after. Macronutrients are None where the answer has none."""

    intake: float
    least_intake: float  # of the leanest kind of day
    days: float
    is_break: bool
    before: Body
    after: Body
    protein: float | None = None
    carbohydrate: float | None = None
    fat: float | None = None
    exercise: float = 0.0  # beside the usual


def _starts_settled(request: Json) -> bool:
    """Whether a body begins with what it usually carries: not after an intake that is told, logged or handed on."""
    if request.get("current_intake_kcal") is not None:
        return False
    handed = (request.get("state") or {}).get("usual_intake_kcal") is not None
    return not handed and not (request.get("log") or {}).get("intakes")


class Stretch(NamedTuple):
    """Weeks of one purpose. ``weeks_before``: of the deficit that it continues, breaks under four weeks included."""

    kind: str
    weeks: list[Week]
    weeks_before: float = 0.0
    is_start_settled: bool = True  # whether what was carried on the first day is known
    ceiling: float | None = None

    @property
    def is_deficit(self) -> bool:
        """Whether it is planned as one."""
        return self.kind in DEFICITS

    @property
    def is_long(self) -> bool:
        """Whether rules for more than six weeks hold."""
        return self.weeks_before + sum(week.days for week in self.weeks) / 7 > 6.0 + 1e-9


def body_at(point: Json, most: float = math.inf) -> Body:
    """The expected body of a forecast's point; its maintenance is ``most`` at the most."""
    weight, fat, carried, fraction = (
        point[key]["mean"] for key in ("weight_kg", "fat_kg", "carried_kg", "fat_fraction")
    )
    return Body(weight, fat, weight - carried, fraction, min(most, point["maintenance_kcal"]["mean"]))


def _most_maintenance(request: Json, settled: float) -> float:
    """What is eaten now makes no deficit larger: of somebody who overeats, maintenance is as settled."""
    return settled if request.get("current_intake_kcal", 0) > settled else math.inf


def body_now(person: Person, maintenance: float, carried: float = 0.0, fraction: float | None = None) -> Body:
    """The body as it was sent."""
    share = person.fraction if fraction is None else fraction
    return Body(person.weight, share * person.weight, person.weight - carried, share, maintenance)


def of_plan(person: Person, request: Json, answer: Json) -> Iterator[Stretch]:
    """The phases of a plan."""
    if not answer["feasible"]:
        return
    asked, then = request["phase"], request.get("return_to_gain", {})
    first = answer["phases"][0]
    carried = first["weeks"][-1]["at_end"]["carried_kg"]["mean"] - first["change"]["carried_kg"]["mean"]
    body = body_now(person, answer["maintenance_kcal"]["mean"], carried, answer["body_fat_fraction"]["mean"])
    most = _most_maintenance(request, body.maintenance)
    before, held = weeks_of_history(request) + asked.get("weeks_done", 0), 0.0
    since = 0 if asked.get("weeks_done") else (request.get("cut_history") or {}).get("weeks_since_last_cut") or 0
    for phase in answer["phases"]:
        weeks = []
        for week in phase["weeks"]:
            after = body_at(week["at_end"], most)
            least = min(day["intake_kcal"] for day in (week, *week["day_kinds"]))
            least = min([least, *(food(day) for day in week["by_day"])])
            weeks.append(
                Week(
                    week["intake_kcal"], least, week["days"], week["element"] == "break", body, after,
                    week["protein_g"], week["carbohydrate_g"], week["fat_g"],
                )
            )  # fmt: skip
            body = after
        ceiling = (asked if phase["kind"] == asked["kind"] else then).get("fat_ceiling_fraction")
        # Four weeks or more between two deficits part them, a pause before the second included.
        counted = before if phase["kind"] in DEFICITS and since + held < limits.APART_WEEKS else 0.0
        yield Stretch(phase["kind"], weeks, counted, ceiling=ceiling)
        held += sum(week.days for week in weeks) / 7


def sizes_of_plan(person: Person, request: Json, answer: Json) -> Iterator[tuple[Json, Stretch]]:
    """The other sizes that a plan offers: a first full week with the body before it, and the rest with that at the end.

    After weeks of easing in the body is told of the planned size alone: of others the last week is judged.
    """
    asked = request["phase"]
    own = next((stretch for stretch in of_plan(person, request, answer) if stretch.kind == asked["kind"]), None)
    eased = asked.get("easing_in_weeks", 0) if asked["kind"] == "cut" else 0  # a mini-cut's intake is set at its start
    most = _most_maintenance(request, answer["maintenance_kcal"]["mean"])
    for size in answer["sizes"]:
        if own is None:
            continue
        before, after = own.weeks[eased].before, body_at(size["at_end"], most)
        first, last, rest = size["intake_kcal"], size["last_intake_kcal"], 7 * (size["weeks"] - 1)
        # A body adapted to little holds on less at first, whatever the size.
        then = before if own.is_deficit else own.weeks[0].after
        weeks = [Week(first, first, 7, False, before, then), Week(last, last, rest, False, after, after)]
        if eased and not size["is_planned"]:
            weeks = [Week(last, last, 7 + rest, False, after, after)]
        yield size, Stretch(own.kind, weeks, own.weeks_before, ceiling=own.ceiling)


def levers_of_plan(person: Person, request: Json, answer: Json) -> Iterator[tuple[Json, str, Stretch, Stretch]]:
    """The fat loss of a plan, and again with each use of a lever: its food, activity, further fat and weight."""
    asked = request["phase"]
    every = zip(of_plan(person, request, answer), answer["phases"], strict=False)
    own, phase = next(((one, told) for one, told in every if one.kind == asked["kind"]), (None, None))
    if own is None or phase is None or not own.is_deficit:
        return
    full = next(week["intake_kcal"] for week in phase["weeks"] if week["element"] == "deficit")
    for lever in answer["levers"]:
        for name in ("instead", "together"):
            use = lever[name]
            if use is None:
                continue
            more = use["intake_kcal"] - full
            fat = use["fat_change_kg"]["mean"] - phase["change"]["fat_kg"]["mean"]
            further = fat, use["end_weight_kg"] - own.weeks[-1].after.weight
            weeks = [
                _with_lever(week, 0 if week.is_break else more, lever["burnt_kcal"]["mean"], further, i, len(own.weeks))
                for i, week in enumerate(own.weeks)
            ]
            yield lever, name, own, own._replace(weeks=weeks)


def _with_lever(week: Week, more: float, burnt: float, further: tuple[float, float], i: int, n: int) -> Week:
    before, after = (_leaner(body, further, at / n) for body, at in ((week.before, i), (week.after, i + 1)))
    return week._replace(
        intake=week.intake + more, least_intake=week.least_intake + more, before=before, after=after,
        protein=week.protein, carbohydrate=None, fat=None, exercise=burnt,
    )  # fmt: skip


def _leaner(body: Body, further: tuple[float, float], share: float) -> Body:
    """A body after a share of a further change of fat and of weight."""
    fat, weight = (of + share * more for of, more in zip((body.fat, body.weight), further, strict=True))
    # What a smaller body needs less is near its share of the weight.
    # The rest of its further weight may be water that comes with eating more: fat alone is taken for tissue.
    settled = body.settled + fat - body.fat
    return Body(weight, fat, settled, fat / weight, body.maintenance * weight / body.weight)


def weeks_of_history(request: Json) -> float:
    """Weeks of the last deficit where it ended less than four weeks ago; its length is not told, hence six."""
    since = (request.get("cut_history") or {}).get("weeks_since_last_cut")
    ongoing = request.get("phase", {}).get("weeks_done", 0)
    return 6.0 if since is not None and since < 4 and not ongoing else 0.0


def of_forecast(person: Person, request: Json, answer: Json) -> Iterator[Stretch]:
    """Runs of weeks under, at and over maintenance."""
    body = body_now(person, answer["maintenance_kcal"]["mean"])
    schedule = [s for s in request["question"].get("schedule", []) for _ in range(s["weeks"])]
    per_kg = request["question"].get("protein_g_per_kg", 1.6)
    most = _most_maintenance(request, body.maintenance)
    runs: list[tuple[str, list[Week]]] = []
    for i, week in enumerate(answer["weeks"]):
        after = body_at(week["at_end"], most)
        asked = schedule[i] if schedule else {}
        protein = asked.get("protein_g_per_kg", per_kg if not schedule else 1.6) * person.weight
        days = (date.fromisoformat(week["at_end"]["date"]) - date.fromisoformat(week["start_date"])).days + 1
        more = sum(
            (b["met"] - 1) * person.resting / 24 * b["minutes"] / 60 * b["times_per_week"] / 7
            for b in asked.get("added_sessions", [])
        )
        intake = week["intake_kcal"]
        made = Week(intake, intake, days, False, body, after, protein, asked.get("carbohydrate_g"), None, more)
        kind = _direction(intake, max(body.maintenance, answer["maintenance_kcal"]["mean"] if i == 0 else 0) + more)
        if not runs or runs[-1][0] != kind:
            runs.append((kind, []))
        runs[-1][1].append(made)
        body = after
    settled = _starts_settled(request)
    for i, (kind, weeks) in enumerate(runs):
        yield Stretch(kind, weeks, _just_before(runs, i), is_start_settled=settled or i > 0)


def _direction(intake: float, maintenance: float) -> str:
    """What an intake is for: nearer than 2.5 % to maintenance it is a hold."""
    slack = max(25.0, 0.025 * maintenance)
    return "cut" if intake < maintenance - slack else "gain" if intake > maintenance + slack else "maintenance"


def _just_before(runs: list[tuple[str, list[Week]]], at: int) -> float:
    """Weeks of deficits that one at ``at`` continues, with less than four weeks between them."""
    total = between = 0.0
    for kind, weeks in reversed(runs[:at]):
        length = sum(week.days for week in weeks) / 7
        if kind in DEFICITS:
            total, between = total + between + length, 0.0
        else:
            between += length
            if between >= 4:
                break
    return total


def of_season(person: Person, request: Json, answer: Json) -> Iterator[Stretch]:
    """The phases of a season; short ones close together count as one deficit."""
    plan, start = answer["plan"], answer["start"]
    first = plan["phases"][0]
    carried = plan["weeks"][first["weeks"] - 1]["at_end"]["carried_kg"]["mean"] - first["change"]["carried_kg"]["mean"]
    body = body_now(person, start["maintenance_kcal"]["mean"], carried, start["body_fat_fraction"]["mean"])
    most = _most_maintenance(request, body.maintenance)
    runs: list[tuple[str, list[Week]]] = []
    at = 0
    for phase in plan["phases"]:
        weeks = []
        steps = [step for step in phase["intakes"] for _ in range(step["weeks"])]
        for week, step in zip(plan["weeks"][at : at + phase["weeks"]], steps, strict=True):
            after = body_at(week["at_end"], most)
            intake = week["intake_kcal"]
            weeks.append(
                Week(
                    intake, intake, 7, False, body, after,
                    step["protein_g"], step["carbohydrate_g"], step["fat_g"],
                )
            )  # fmt: skip
            body = after
        runs.append((phase["kind"], weeks))
        at += phase["weeks"]
    settled = _starts_settled(request)
    weeks_in = 0.0
    for i, (kind, weeks) in enumerate(runs):
        before = _just_before(runs, i)
        if kind in DEFICITS and not before and weeks_in < 4:
            since = (request.get("cut_history") or {}).get("weeks_since_last_cut")
            before = 6.0 if since is not None and since + weeks_in < 4 else 0.0
        yield Stretch(kind, weeks, before, is_start_settled=settled or i > 0)
        weeks_in += sum(week.days for week in weeks) / 7


def of_review(person: Person, request: Json, answer: Json) -> Iterator[Stretch]:
    """The days to come of the phase under review; the body now is taken from its first week's end."""
    phase = request["phase"]
    if not answer["weeks"]:
        return
    body = body_at(answer["weeks"][0]["at_end"])
    weeks = []
    for week in answer["weeks"]:
        after = body_at(week["at_end"])
        planned = phase["weeks"]
        at = (date.fromisoformat(week["start_date"]) - date.fromisoformat(phase["start_date"])).days // 7
        is_break = bool(planned[min(at, len(planned) - 1)].get("is_break"))
        intake = week["intake_kcal"]
        weeks.append(
            Week(
                intake, intake, week["days"], is_break, body, after,
                week["protein_g"], week["carbohydrate_g"], None,
            )
        )  # fmt: skip
        body = after
    yield Stretch(phase["kind"], weeks, answer["days_into_phase"] / 7, is_start_settled=False)
