"""The days of a plan's weeks: do they add up, is each inside the rails, and is what was asked for told?

Worked out again from the answer's own numbers. That a day's food keeps the rails on intake is judged with the weeks, by
the food of the leanest day; here the rest.
"""

from collections.abc import Iterator
from datetime import date, timedelta
from typing import Any

from . import limits
from .limits import Person

Json = dict[str, Any]
ALCOHOL = 7.1  # kcal/g; heat of combustion of ethanol, 29.7 kJ/g (NIST Chemistry WebBook)
ROUNDED = 10.0  # kcal; a day's energy is told to 10 and its grams to 5


def food(day: Json) -> float:
    """Energy of a day without alcohol."""
    return float(day["intake_kcal"] - ALCOHOL * day["alcohol_g"])


def violations(request: Json, person: Person, answer: Json) -> Iterator[str]:
    """What is wrong with the days of a plan."""
    asked = request.get("week")
    short = False
    for phase in answer["phases"]:
        for week in phase["weeks"]:
            days = week["by_day"]
            if asked is None:
                if days:
                    yield "days: told unasked"
                continue
            where = f"({phase['kind']}, week {week['week']})"
            if len(days) != 7:
                yield f"days: {len(days)} in a week {where}"
                continue
            for found in (*_sums(week), *_each(asked, person, week)):
                yield f"{found} {where}"
            short = short or _is_short(asked, week)
    codes = {rail["code"] for rail in answer["guard_rails"]}
    if short and "CAPPED_FLEXIBLE_DAYS" not in codes:
        yield "flexible_days: less fits than was asked for, and nothing says so"


def _sums(week: Json) -> Iterator[str]:
    total = sum(day["intake_kcal"] for day in week["by_day"])
    if total != 7 * week["intake_kcal"]:
        yield f"week_total: {total} of {7 * week['intake_kcal']}"


def _each(asked: Json, person: Person, week: Json) -> Iterator[str]:
    start = date.fromisoformat(week["start_date"])
    least_kg = min(person.weight, week["at_end"]["weight_kg"]["mean"])
    for i, day in enumerate(week["by_day"]):
        on = start + timedelta(days=i)
        if day["date"] != on.isoformat() or day["weekday"] != on.strftime("%A").lower():
            yield f"days: {day['date']} {day['weekday']} for {on}"
        energy = 4 * day["protein_g"] + 4 * day["carbohydrate_g"] + 9 * day["fat_g"]
        if abs(energy - food(day)) > ROUNDED + 5:
            yield f"day_nutrients: {energy} in food of {food(day):.0f}"
        if min(day[key] for key in ("protein_g", "carbohydrate_g", "fat_g", "alcohol_g", "training_kcal")) < 0:
            yield f"day_nutrients: a negative amount on {on}"
        if day["protein_g"] != week["protein_g"]:
            yield f"day_protein: {day['protein_g']} of {week['protein_g']}"
        least_fat = max(limits.DIETARY_FAT * least_kg, limits.DIETARY_FAT_SHARE * day["intake_kcal"] / 9)
        if day["fat_g"] < least_fat - 0.5:
            yield f"day_fat: {day['fat_g']} g, least {least_fat:.0f}"
        meals = day["meals_protein_g"]
        if sum(meals) != day["protein_g"] or len(meals) != asked.get("meals_per_day", 4) or max(meals) - min(meals) > 5:
            yield f"meals: {meals} of {day['protein_g']} g"
        yield from _as_asked(asked, on, day)


def _on(asked: Json, on: date) -> list[Json]:
    """Flexible days that fall on a date."""
    return [
        one
        for one in asked.get("flexible_days", [])
        if one.get("date") == on.isoformat() or one.get("weekday") == on.strftime("%A").lower()
    ]


def _as_asked(asked: Json, on: date, day: Json) -> Iterator[str]:
    minutes = sum(b.get("minutes", 60) for b in asked.get("training", []) if b["weekday"] == day["weekday"])
    if abs(day["training_minutes"] - minutes) > 1e-6 or (day["training_kcal"] > 0) != (minutes > 0):
        yield f"training: {day['training_minutes']} min, {day['training_kcal']} kcal on {on}"
    flexible = _on(asked, on)
    if (day["flexible"] is not None) != bool(flexible):
        yield f"flexible_days: {day['flexible']} on {on}"
    if day["alcohol_g"] > sum(one.get("alcohol_g", 0) for one in flexible):
        yield f"alcohol: {day['alcohol_g']} g, more than was asked for"


def _is_short(asked: Json, week: Json) -> bool:
    """Whether flexible days have less alcohol than they asked for."""
    return any(
        day["alcohol_g"] < int(sum(one.get("alcohol_g", 0) for one in _on(asked, date.fromisoformat(day["date"]))))
        for day in week["by_day"]
    )
