"""What an answer says is what it tells: no sentence against its own fields, nor against another of its sentences."""

import random
import re
from datetime import date, timedelta
from typing import Any

import pytest

from .people import CLEAR, CLEARANCE, START, log, someone
from .service import ask
from .stretches import DEFICITS
from .test_seen import HISTORY, MAN, WOMAN, checked, decided, forecast, planned, reviewed, season
from .words import OWN_REFERRAL, SCALE, URGENT, guard_rails, notes, says

Json = dict[str, Any]


def lost(person: Json, change_a_week: float, *, days: int = 28, kcal: float = 1950.0, food: bool = True) -> Json:
    """A log of somebody whose scale falls so fast, whatever is logged."""
    made = log(
        random.Random(4), person, days=days, eaten=kcal, change_a_week=change_a_week, noise_kg=0.3, partial=0.0,
        profile_ago=days,
    )  # fmt: skip
    return made if food else made | {"intakes": []}


def texts(answer: Json) -> str:
    """All reasons of a review."""
    return " ".join(reason["text"] for reason in answer["reasons"])


def test_nobody_is_told_to_keep_to_a_plan_that_is_over_or_not_safe() -> None:
    """Both on days that are too early for a verdict, and with more logged than planned."""
    logged = log(random.Random(5), WOMAN, days=12, eaten=2150.0, change_a_week=-0.004, noise_kg=0.2, partial=0.0)
    asked = reviewed(WOMAN, "cut", 1900, logged, days=12, maintenance=2300)
    on = checked("review_phase", asked).body
    assert on["verdict"] == "too_early"
    assert "Keep to the plan" in texts(on)
    assert "try to keep to the plan" in texts(on)
    for ended in (asked | {"is_finished": True}, asked | {"screening": CLEAR | {"is_pregnant": True}}):
        answer = checked("review_phase", ended).body
        assert answer["decision"] == "end"
        assert "to the plan" not in texts(answer)


@pytest.mark.parametrize("food", [True, False])
def test_a_fast_loss_is_raised_whoever_logs_the_food(food: bool) -> None:
    """3 % a week is too fast by the scale: what the log says of food, and a reading drawn to it, hides nothing."""
    logged = lost(WOMAN, -0.03, food=food)
    answer = checked("review_phase", reviewed(WOMAN, "cut", 1950, logged, maintenance=2300, weeks=12)).body
    assert answer["correction_kcal"] > 0
    rail = next(rail for rail in answer["guard_rails"] if rail["code"] == "REVIEW_LOST_FAST")
    caution = next(note for note in answer["cautions"] if note["code"] == "WARNED_LOGGED_LOSS")
    assert (rail["id"], rail["action"]) == ("logged_loss", "capped")
    assert caution["params"]["percent"] == pytest.approx(100 * rail["observed"], abs=0.05)


@pytest.mark.parametrize(("change_a_week", "kcal"), [(-0.02, 1950.0), (-0.012, 1400.0), (-0.03, 1950.0)])
def test_nobody_who_should_eat_more_hears_that_there_is_no_need_to(change_a_week: float, kcal: float) -> None:
    """Losing over 1 % a week, logging less than a rail allows, or raised."""
    logged = lost(WOMAN, change_a_week, kcal=kcal)
    answer = checked("review_phase", reviewed(WOMAN, "cut", 1950, logged, maintenance=2300, weeks=12)).body
    assert answer["verdict"] == "faster"
    assert "no need to eat more" not in texts(answer)


def test_who_is_ahead_and_logs_enough_need_not_eat_more() -> None:
    logged = lost(MAN, -0.0095, kcal=2850.0)
    answer = checked("review_phase", reviewed(MAN, "cut", 2850, logged, maintenance=3050, weeks=12)).body
    assert answer["verdict"] == "faster"
    assert "no need to eat more" in texts(answer)


@pytest.mark.parametrize("kind", ["maintenance", "gain"])
def test_an_unplanned_loss_is_reported_as_a_rail(kind: str) -> None:
    """By the scale as well, and with no step announced that is not taken."""
    intake = 2300 if kind == "maintenance" else 2420
    logged = lost(WOMAN, -0.014, kcal=2000.0)
    answer = checked("review_phase", reviewed(WOMAN, kind, intake, logged, maintenance=2300, weeks=12)).body
    rail = next(rail for rail in answer["guard_rails"] if rail["id"] == "logged_loss")
    assert rail["code"] == "REVIEW_UNEXPLAINED_LOSS"
    assert ("Eat more, in steps" in rail["text"]) is (answer["correction_kcal"] > 0)


def test_a_gain_over_maintenance_is_not_told_of_steps_that_it_does_not_take() -> None:
    logged = lost(WOMAN, -0.0025, days=182, kcal=2000.0)
    asked = reviewed(WOMAN, "gain", 2420, logged, days=182, weeks=40, maintenance=2300)
    answer = checked("review_phase", asked).body
    assert answer["correction_kcal"] == 0
    assert "REVIEW_UNEXPLAINED_LOSS" in {reason["code"] for reason in answer["reasons"]}
    assert "in steps" not in texts(answer)


def test_nothing_is_asked_to_settle_a_phase_whose_purpose_is_met() -> None:
    logged = lost(WOMAN, -0.012, kcal=1700.0)
    asked = reviewed(WOMAN, "cut", 1950, logged, maintenance=2300, weeks=12, fat_loss_kg=1.0)
    answer = checked("review_phase", asked).body
    assert "REVIEW_PURPOSE_MET" in {reason["code"] for reason in answer["reasons"]}
    assert answer["verdict"] == "faster"
    assert answer["question"] is None


@pytest.mark.parametrize("intake", [2180, 1900])
def test_a_check_in_says_what_is_added(intake: int) -> None:
    logged = lost(WOMAN, -0.003, kcal=float(intake))
    logged["check_ins"] = [
        {"date": (START - timedelta(days=ago)).isoformat(), "hunger": 5, "sleep": 1} for ago in (9, 2)
    ]
    answer = checked("review_phase", reviewed(WOMAN, "cut", intake, logged, maintenance=2300, weeks=12)).body
    said = next(note for note in notes(answer) if note["code"] == "CHECK_IN_WORN")
    assert f"eat {answer['correction_kcal']:.0f} kcal a day more" in said["text"]


# --- rails that a corner had forgotten -------------------------------------------------------------------------


def codes(answer: Json) -> set[str]:
    """Codes of every note and rail."""
    return {note["code"] for note in notes(answer)}


def path(kcal: float, **more: Any) -> Json:
    """Six weeks of one intake."""
    return {"kind": "path", "schedule": [{"weeks": 6, "intake_kcal": kcal, **more}]}


@pytest.mark.parametrize("kcal", [1950, 2300, 2400])
def test_little_carbohydrate_is_warned_of_in_forecasts_and_reviews(kcal: int) -> None:
    assert "WARNED_CARBOHYDRATE" in codes(
        checked("forecast_intake", forecast(WOMAN, path(kcal, carbohydrate_g=60))).body
    )
    assert "WARNED_CARBOHYDRATE" not in codes(checked("forecast_intake", forecast(WOMAN, path(kcal))).body)
    kind = {1950: "cut", 2300: "maintenance", 2400: "gain"}[kcal]
    asked = reviewed(WOMAN, kind, kcal, lost(WOMAN, -0.001, kcal=float(kcal)), maintenance=2300)
    assert "WARNED_CARBOHYDRATE" not in codes(checked("review_phase", asked).body)
    for week in asked["phase"]["weeks"]:
        week["carbohydrate_g"] = 60
    assert "WARNED_CARBOHYDRATE" in codes(checked("review_phase", asked).body)


def test_protein_with_kidney_disease_is_warned_of_in_a_forecast() -> None:
    cleared = CLEAR | {"conditions": ["kidney_disease"], "clinical_clearance": CLEARANCE}
    asked = forecast(WOMAN, path(1950, protein_g_per_kg=2.5), screening=cleared)
    assert "WARNED_KIDNEY_PROTEIN" in codes(checked("forecast_intake", asked).body)


NOVICE = MAN | {"training": MAN["training"] | {"status": "novice"}}


def test_a_fast_gain_is_warned_of_wherever_it_is_told() -> None:
    """0.42 % of body mass a week, of 0.5 for the novice, to whom 0.25 is recommended."""
    held = checked("forecast_intake", forecast(NOVICE, path(3118))).body
    maintenance = round(held["maintenance_kcal"]["mean"])
    fast = checked("forecast_intake", forecast(NOVICE, path(maintenance + 400))).body
    assert "WARNED_GAIN_RATE" in codes(fast)
    assert "WARNED_GAIN_RATE" not in codes(held)
    logged = log(random.Random(6), NOVICE, eaten=maintenance + 400, change_a_week=0.004, noise_kg=0.2, profile_ago=28)
    asked = reviewed(NOVICE, "gain", maintenance + 400, logged, weeks=12, maintenance=maintenance)
    answer = checked("review_phase", asked).body
    assert codes(answer) & {"WARNED_GAIN_RATE", "CAPPED_GAIN_RATE", "REVIEW_GAIN_PAST_CEILING"}


@pytest.mark.parametrize("status", ["untrained", "novice", "intermediate", "advanced"])
@pytest.mark.parametrize("person", [MAN, WOMAN])
def test_the_gain_that_a_plan_chooses_is_warned_of_nowhere(person: Json, status: str) -> None:
    """A brisk one may be: it is asked for."""
    trained = person | {"training": person["training"] | {"status": status}}
    gain = {"kind": "gain", "weeks": 12}
    plan = checked("plan_phases", planned(trained, gain) | {"include": []}).body  # not what other sizes are warned of
    weeks = [week for phase in plan["phases"] for week in phase["weeks"]]
    schedule = [{"weeks": 4, "intake_kcal": weeks[at]["intake_kcal"]} for at in range(0, 12, 4)]
    told = checked("forecast_intake", forecast(trained, {"kind": "path", "schedule": schedule})).body
    assert "WARNED_GAIN_RATE" not in codes(plan) | codes(told)
    brisk = checked("plan_phases", planned(trained, gain | {"pace": "brisk"}) | {"include": []}).body
    assert ("WARNED_GAIN_RATE" in codes(brisk)) is (status in ("untrained", "novice"))


@pytest.mark.parametrize("kind", ["maintenance", "gain", "mini_cut"])
@pytest.mark.parametrize("preference", ["balanced", "higher"])
def test_every_day_keeps_its_fat_and_every_phase_is_warned_of(kind: str, preference: str) -> None:
    """Days with more carbohydrate as well; 15 % of energy at least, warned under 20 %: of the mean, else of a day."""
    phase: Json = {"kind": kind, "carbohydrate_preference": preference} | ({} if kind == "mini_cut" else {"weeks": 6})
    split = {"higher_days_per_week": 2, "carbohydrate_shift": 0.6}
    answer = checked("plan_phases", planned(WOMAN, phase, day_split=split, cut_history=HISTORY)).body
    weeks = [week for phase in answer["phases"] for week in phase["weeks"]]
    days = [day for week in weeks for day in (week, *week["day_kinds"])]
    assert min(9 * day["fat_g"] / day["intake_kcal"] for day in days) >= 0.15
    assert any(week["day_kinds"] for week in weeks)
    is_low = min(9 * week["fat_g"] / week["intake_kcal"] for week in weeks) < 0.20
    assert ("WARNED_DIETARY_FAT" in codes(answer)) is is_low
    has_low_day = min(9 * day["fat_g"] / day["intake_kcal"] for day in days) < 0.20
    assert ("WARNED_DAY_DIETARY_FAT" in codes(answer)) is (has_low_day and not is_low)


@pytest.mark.parametrize("kind", ["maintenance", "mini_cut"])
def test_a_lower_day_over_a_warning_is_warned_of_where_the_mean_is_not(kind: str) -> None:
    """Of its own maintenance: nothing is told of what these days burn beside the others."""
    phase: Json = {"kind": kind, "weeks": 4, "carbohydrate_preference": "higher"}
    phase |= {"deficit_kcal": 250} if kind == "mini_cut" else {}
    asked = planned(WOMAN, phase, cut_history=HISTORY)
    assert "WARNED_DEFICIT_SHARE" not in {rail["code"] for rail in checked("plan_phases", asked).body["guard_rails"]}
    split = {"higher_days_per_week": 5, "carbohydrate_shift": 0.3}
    answer = checked("plan_phases", asked | {"day_split": split}).body
    week = next(phase for phase in answer["phases"] if phase["kind"] == kind)["weeks"][0]
    least = min(day["intake_kcal"] for day in week["day_kinds"])
    share = 1 - least / answer["maintenance_kcal"]["mean"]
    assert share > 0.255
    warned = next(rail for rail in answer["guard_rails"] if rail["code"] == "WARNED_DAY_DEFICIT_SHARE")
    assert (warned["id"], warned["limit"]) == ("deficit_share", 0.25)
    assert share - 0.01 < warned["observed"] <= 0.31  # the strongest of all weeks


def test_a_day_of_rest_is_warned_of_by_what_it_uses() -> None:
    """Who trains four hours on three days eats far less on the others, and uses less on them."""
    phase = {"kind": "maintenance", "weeks": 2}
    week = {"training": [{"weekday": day, "minutes": 90, "kind": "running"} for day in ("monday", "wednesday")]}
    answer = checked("plan_phases", planned(WOMAN, phase, week=week)).body
    eaten = [day["intake_kcal"] for day in answer["phases"][0]["weeks"][0]["by_day"]]
    assert max(eaten) - min(eaten) > 300
    assert not [code for code in codes(answer) if code.startswith("WARNED_DAY_DEFICIT")]


def test_a_lower_day_of_a_hold_is_warned_of() -> None:
    small = someone("female", 30, 150, 47, 0.24)
    phase = {"kind": "maintenance", "weeks": 4, "carbohydrate_preference": "lower"}
    week = {
        "training": [{"weekday": day, "kind": "running", "minutes": 90} for day in ("monday", "tuesday", "wednesday")],
        "flexible_days": [{"weekday": "saturday", "extra_kcal": 600}],
    }
    answer = checked("plan_phases", planned(small, phase, week=week)).body
    least = min(
        day["carbohydrate_g"] for phase in answer["phases"] for week in phase["weeks"] for day in week["by_day"]
    )
    warned = next(rail for rail in answer["guard_rails"] if rail["code"] == "WARNED_CARBOHYDRATE")
    assert warned["observed"] == least < 130


LITTLE = log(random.Random(7), WOMAN, days=56, ratio=0.6, eaten=1600.0, maintenance=1600.0, noise_kg=0.3, partial=0.0)
LONG_CUT = {"kind": "cut", "weeks": 12, "deficit_kcal": 700}
HALF = log(random.Random(8), WOMAN, days=56, ratio=0.7, eaten=2290.0, maintenance=2290.0, noise_kg=0.3, partial=0.0)


@pytest.mark.parametrize(
    ("operation", "asked"),
    [
        ("plan_phases", planned(WOMAN, {"kind": "maintenance", "weeks": 4}, log=LITTLE)),
        ("plan_phases", planned(WOMAN, LONG_CUT, log=HALF, cut_history=HISTORY)),
        ("decide_phase", decided(WOMAN, log=LITTLE, feeling="would_like_leaner", goal="leanness")),
        ("plan_season", season(WOMAN, log=LITTLE)),
        ("forecast_intake", forecast(WOMAN, path(1000), log=HALF)),
    ],
)  # fmt: skip
def test_where_the_logging_ratio_decides_a_week_of_weighed_food_is_asked_for(operation: str, asked: Json) -> None:
    """Also where a floor is only one of a long cut, raises a hold, or refuses a forecast."""
    answered = checked(operation, asked)
    floors = {"intake_floor", "energy_availability", "fat_supply"}
    held = any(rail["id"] in floors and rail["action"] == "capped" for rail in guard_rails(answered.body))
    assert held or any(floor in answered.body.get("type", "") for floor in floors)
    said = next(note for note in notes(answered.body) if note["code"] == "RATIO_DECIDES")
    assert said["pointer"] == "#/log" if "pointer" in said else "Weigh all food" in said["text"]


def test_an_intake_that_nobody_may_eat_is_not_told() -> None:
    """What a target would take past a rail is no figure to be read: the least that is safe is."""
    question = {
        "kind": "intake_for_target", "target": {"quantity": "weight_kg", "value": 57.0},
        "by_date": (START + timedelta(weeks=4)).isoformat(),
    }  # fmt: skip
    answer = checked("forecast_intake", forecast(WOMAN, question)).body
    assert not answer["feasible"]
    assert "TARGET_NEEDS_INTAKE" not in codes(answer)
    said = next(reason for reason in answer["reasons"] if reason["code"] == "TARGET_BEYOND_RAIL")
    assert said["params"]["least_intake_kcal"] == pytest.approx(answer["nearest"]["intake_kcal"], abs=1)


TOO_LEAN = {"lower_fat_fraction": 0.12, "upper_fat_fraction": 0.22}


@pytest.mark.parametrize(
    ("operation", "asked"),
    [
        ("plan_season", season(WOMAN, limits={"band": TOO_LEAN})),
        ("plan_phases", planned(WOMAN, {"kind": "gain", "weeks": 8, "fat_ceiling_fraction": 0.12})),
        ("plan_phases", planned(WOMAN, {"kind": "maintenance", "weeks": 2},
                                return_to_gain={"gain_weeks": 4, "fat_ceiling_fraction": 0.12})),
    ],
)  # fmt: skip
def test_no_target_lies_under_the_least_body_fat(operation: str, asked: Json) -> None:
    """And it is called a target, not a phase that should be shorter."""
    answered = checked(operation, asked)
    assert answered.status == 422
    assert [error["code"] for error in answered.body["errors"]] == ["REFUSED_TARGET"]


@pytest.mark.parametrize(
    "asked",
    [
        season(WOMAN, strategy={"kind": "own", "surplus_kcal": 100, "cut_at_fat_fraction": 0.5,
                                "cut_to_fat_fraction": 0.17}),
        season(WOMAN, strategy={"kind": "ready_made", "name": "slow_gain_no_cut"},
               limits={"events": [{"date": "2026-07-20", "most_fat_fraction": 0.17}]}),
    ],
)  # fmt: skip
def test_a_season_warns_of_a_lean_target_whether_it_gets_there_or_not(asked: Json) -> None:
    answer = checked("plan_season", asked).body
    warned = next(rail for rail in answer["plan"]["guard_rails"] if rail["id"] == "body_fat")
    assert (warned["code"], warned["observed"]) == ("WARNED_TARGET", 0.17)


def test_a_cut_for_an_event_keeps_the_weeks_between_cuts() -> None:
    """But one that blocked days break off goes on: under four weeks apart the two are one."""
    heavier = someone("female", 40, 168, 75, 0.34)
    limits = {
        "least_weeks_between_cuts": 20,
        "events": [{"date": "2026-07-25", "most_fat_fraction": 0.32}],
        "blocked_dates": [{"first_date": "2026-03-28", "last_date": "2026-06-21"}],
    }
    asked = season(heavier, limits=limits, cut_history=HISTORY)
    answer = checked("plan_season", asked).body
    (first, second), after = _cuts(answer), 7 * 20
    assert (second[0] - first[1]).days > after
    assert [limit["limit"] for limit in answer["broken_limits"]] == ["event_fat_fraction"]
    limits["blocked_dates"] = [{"first_date": "2026-03-23", "last_date": "2026-03-28"}]
    limits["events"] = [{"date": "2026-05-09", "most_fat_fraction": 0.32}]
    (first, second), after = _cuts(checked("plan_season", asked).body), 8
    assert (second[0] - first[1]).days == after


def _cuts(answer: Json) -> list[tuple[date, date]]:
    phases = [phase for phase in answer["plan"]["phases"] if phase["kind"] in DEFICITS]
    return [(date.fromisoformat(phase["start_date"]), date.fromisoformat(phase["end_date"])) for phase in phases]


@pytest.mark.parametrize(("quantity", "value"), [("weight_kg", 48.0), ("fat_fraction", 0.18), ("fat_kg", 9.0)])
@pytest.mark.parametrize("kind", ["intake_for_target", "date_for_target"])
def test_a_target_that_is_refused_hides_no_refusal_of_the_person(kind: str, quantity: str, value: float) -> None:
    who = CLEAR | {"is_pregnant": True, "eating_disorder": "past"}
    question: Json = {"kind": kind, "target": {"quantity": quantity, "value": value}}
    question |= {"by_date": "2026-09-28"} if kind == "intake_for_target" else {"intake_kcal": 1700}
    light = someone("female", 30, 168, 53.0, 0.24)
    answered = checked("forecast_intake", forecast(light, question, screening=who))
    told = [error["code"] for error in answered.body["errors"]]
    assert told[0] == ("REFUSED_END_BMI" if quantity == "weight_kg" else "REFUSED_FAT_TARGET")
    assert {"REFUSED_PREGNANCY", "REFUSED_EATING_DISORDER"} <= {*told}
    assert all(OWN_REFERRAL[error["code"]].search(error["detail"]) for error in answered.body["errors"][1:])


STARVED = someone("female", 24, 168, 44.0, 0.16)  # BMI 15.6
AMOUNTS = re.compile(
    r"amount to log|hold the weight|soll genau diese Menge|halten das Gewicht|go by the amounts|weigh (all|and log)"
)


@pytest.mark.parametrize("language", ["en", "de", "es"])
def test_no_estimate_is_told_as_an_amount_to_who_needs_a_doctor_first(language: str) -> None:
    """Refeeding can kill: neither the picture's headline nor a caution or note says what holds the weight."""
    logged = log(random.Random(9), STARVED, days=42, eaten=1500.0, change_a_week=-0.001, noise_kg=0.2, partial=0.0)
    asked = {"profile": STARVED, "log": logged, "screening": CLEAR}
    trend = checked("read_trend", asked)
    estimate = checked("estimate_maintenance", asked)
    for answer in (trend, estimate):
        assert says(answer.body, URGENT)
        assert says(answer.body, SCALE)
        assert not AMOUNTS.search(answer.text)
    drawn = ask("read_trend", asked, accept="image/svg+xml", language=language, form="/picture")
    assert drawn.status == 200
    assert not AMOUNTS.search(drawn.text)
    assert not re.search(r"kcal (a day|am Tag|al día) (hold|halten|mantienen)", drawn.text)
    # Somebody of an ordinary weight is told what holds it.
    well = {"profile": WOMAN, "log": lost(WOMAN, 0.0, days=42, kcal=2200.0), "screening": CLEAR}
    assert "ON_LOGGING_SCALE" in codes(checked("read_trend", well).body)
    drawn = ask("read_trend", well, accept="image/svg+xml", language=language, form="/picture")
    assert re.search(r"kcal (a day|am Tag|al día) (hold|halten|mantienen)", drawn.text)


@pytest.mark.parametrize("operation", ["plan_phases", "review_phase"])
def test_whoever_is_and_ends_near_underweight_is_warned_of_it_once(operation: str) -> None:
    near = someone("female", 30, 168, 55.5, 0.33)  # BMI 19.7
    asked = planned(near, {"kind": "mini_cut", "weeks": 3, "deficit_kcal": 200}, cut_history=HISTORY)
    if operation == "review_phase":
        logged = log(random.Random(5), near, days=14, eaten=1650.0, change_a_week=-0.002, noise_kg=0.2, partial=0.0)
        asked = reviewed(near, "mini_cut", 1700, logged, days=14, weeks=6, maintenance=1950)
    warned = [rail["code"] for rail in checked(operation, asked).body["guard_rails"]]
    assert warned.count("WARNED_BMI") == 1
