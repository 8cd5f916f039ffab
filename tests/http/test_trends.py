"""`POST /v1/trends`: what it answers, and a clear answer to each log that cannot be meant."""

import random
from datetime import date, timedelta
from typing import Any

import pytest
from in_process import Running
from msgspec import to_builtins
from request_people import CLEAR
from steelyard.http.endpoints.examples.examples import TREND_EXAMPLES
from steelyard.science.log.reader import MOST_LOG_DAYS

PATH = "/v1/trends"
FIRST = date(2026, 3, 2)
_ENDS = ("lower", "mean", "upper")
EXAMPLE = to_builtins(TREND_EXAMPLES["three_weeks"])


def day(number: int) -> str:
    return (FIRST + timedelta(days=number)).isoformat()


def weights(*kilograms: float, first: int = 0) -> list[dict[str, Any]]:
    return [{"date": day(first + i), "weight_kg": kg} for i, kg in enumerate(kilograms)]


def steady(days: int, kilograms: float = 84.0) -> list[dict[str, Any]]:
    """Weights that wander by some hundred grams."""
    return weights(*[kilograms + 0.3 * ((i * 7) % 5 - 2) / 2 for i in range(days)])


def intakes(days: int, kcal: float = 2800.0) -> list[dict[str, Any]]:
    return [{"date": day(i), "intake_kcal": kcal + 60 * (i % 3)} for i in range(days)]


def request(
    weighed: list[dict[str, Any]],
    eaten: list[dict[str, Any]] | None = None,
    cycle: list[str] | None = None,
    **more: Any,
) -> dict[str, Any]:
    log = {"weights": weighed, "intakes": eaten or [], "cycle": cycle or []}
    return {"profile": EXAMPLE["profile"], "log": log, **more}


async def read(service: Running, body: dict[str, Any]) -> dict[str, Any]:
    answer = await service.client.post(PATH, json=body)
    assert answer.status_code == 200, answer.text
    found: dict[str, Any] = answer.json()
    return found


def columns(days: dict[str, Any]) -> list[list[Any]]:
    """Every column of the days, those of intervals one by one."""
    intervals = [c for c in days.values() if isinstance(c, dict)]
    return [c for c in days.values() if isinstance(c, list)] + [c[e] for c in intervals for e in _ENDS]


def codes(answer: dict[str, Any]) -> set[str]:
    return {note["code"] for note in answer["notes"]}


REFUSED: list[tuple[str, dict[str, Any], int, str, str]] = [
    ("all missing", request([]), 422, "LOG_WITHOUT_WEIGHT", "#/log/weights"),
    ("intakes alone", request([], intakes(5)), 422, "LOG_WITHOUT_WEIGHT", "#/log/weights"),
    (
        "weight after the as-of date",
        request(steady(10), as_of_date=day(8)),
        422,
        "LOG_ENTRY_IN_FUTURE",
        "#/log/weights/9/date",
    ),
    (
        "everything after the as-of date",
        request(steady(10), as_of_date=day(-3)),
        422,
        "LOG_ENTRY_IN_FUTURE",
        "#/log/weights/9/date",
    ),
    (
        "intake after the as-of date",
        request(steady(5), intakes(8), as_of_date=day(4)),
        422,
        "LOG_ENTRY_IN_FUTURE",
        "#/log/intakes/5/date",
    ),
    (
        "menstruation after the as-of date",
        request(steady(5), cycle=[day(-9), day(19)], as_of_date=day(4)),
        422,
        "LOG_ENTRY_IN_FUTURE",
        "#/log/cycle/1",
    ),
    ("negative weight", request(weights(84.0, -84.0)), 400, "OUT_OF_RANGE", "#/log/weights/1/weight_kg"),
    ("weight of nobody", request(weights(84.0, 9000.0)), 400, "OUT_OF_RANGE", "#/log/weights/1/weight_kg"),
    (
        "10,000 days",
        request([*weights(84.0), {"date": (FIRST + timedelta(days=10_000)).isoformat(), "weight_kg": 84.0}]),
        422,
        "LOG_TOO_LONG",
        "#/log",
    ),
    (
        "as-of date years later",
        request(steady(5), as_of_date=(FIRST + timedelta(days=MOST_LOG_DAYS)).isoformat()),
        422,
        "LOG_TOO_LONG",
        "#/log",
    ),
    ("too many entries", request(weights(*[84.0] * 4001)), 400, "WRONG_LENGTH", "#/log/weights"),
    (
        "date of another century",
        request([{"date": "1926-03-02", "weight_kg": 84.0}]),
        422,
        "DATE_OUT_OF_RANGE",
        "#/log/weights/0/date",
    ),
    (
        "body fat read before the log",
        request(
            steady(9),
            measurements=[
                {"date": day(-1), "measurement": {"kind": "reading", "fat_fraction": 0.2, "method": "dxa"}},
            ],
        ),
        422,
        "MEASUREMENT_OUTSIDE_LOG",
        "#/measurements/0/date",
    ),
]


@pytest.mark.parametrize(("body", "status", "code", "pointer"), [r[1:] for r in REFUSED], ids=[r[0] for r in REFUSED])
async def test_what_cannot_be_meant_is_named(
    service: Running, body: dict[str, Any], status: int, code: str, pointer: str
) -> None:
    answer = await service.client.post(PATH, json=body)
    assert answer.status_code == status
    assert answer.headers["content-type"].startswith("application/problem+json")
    (fault,) = answer.json()["errors"]
    assert (fault["code"], fault["pointer"]) == (code, pointer)
    assert len(fault["detail"]) > 15


@pytest.mark.parametrize(
    ("log", "code"),
    [
        (request(weights(84.0, 84.2, 120.0)), "LOG_WEIGHT_SET_ASIDE"),
        (request(weights(84.0, 84.2, 8.43)), "LOG_WEIGHT_DECIMAL"),
        (request(steady(5), [*intakes(5), {"date": day(0), "intake_kcal": 700.0}]), "LOG_INTAKE_TWICE"),
        (request(steady(9), [*intakes(4), {"date": day(5), "intake_kcal": 9800.0}]), "LOG_INTAKE_KILOJOULES"),
    ],
    ids=["a jump nobody makes", "decimal point", "two intakes for a date", "kilojoules"],
)
async def test_a_slip_is_set_aside_and_named(service: Running, log: dict[str, Any], code: str) -> None:
    assert code in codes(await read(service, log))


async def test_girths_that_no_body_has_are_named(service: Running) -> None:
    girths = {"kind": "girths", "neck_cm": 40.0, "abdomen_cm": 40.5}
    body = request(steady(9), measurements=[{"date": day(3), "measurement": girths}])
    answer = await service.client.post(PATH, json=body)
    assert answer.status_code == 422
    assert answer.json()["errors"][0]["pointer"] == "#/measurements/0/measurement"


async def test_one_weighing_is_too_early_to_tell(service: Running) -> None:
    answer = await read(service, request(weights(84.0)))
    assert answer["is_conclusive"] is False
    assert answer["more_days_needed"] > 7
    assert {"TREND_TOO_EARLY", "TREND_TOO_SPARSE"} & codes(answer)
    assert answer["changes"] == []
    assert answer["composition"] is None
    assert {len(column) for column in columns(answer["days"])} == {1}
    assert answer["log_share"] == pytest.approx(0.0, abs=1e-3)


async def test_the_rate_of_the_last_day_is_that_of_the_answer(service: Running) -> None:
    answer = await read(service, request(steady(28), intakes(28)))
    rates = answer["days"]["weekly_rate_kg"]
    assert {end: rates[end][-1] for end in _ENDS} | {"coverage": 0.8} == answer["weekly_rate_kg"]


async def test_the_rate_of_a_day_looks_a_week_back(service: Running) -> None:
    eaten = [{"date": day(i), "intake_kcal": 2900 if i < 14 else 2200} for i in range(28)]
    answer = await read(service, request(steady(28), eaten))
    rates = answer["days"]["weekly_rate_kg"]
    mean = rates["mean"]
    assert all(low < middle < high for low, middle, high in zip(rates["lower"], mean, rates["upper"], strict=True))
    # 700 kcal a day are 4,900 a week, and tissue holds some 7,700 to 11,000 kcal/kg; of logged energy that moves no
    # weight the reader believes less.
    assert 4900 / 14000 < mean[13] - mean[21] < 4900 / 7700
    assert mean[14] > mean[17] > mean[21]


async def test_order_does_not_matter_but_is_noted(service: Running) -> None:
    body = request(steady(15), intakes(15))
    shuffled = request(body["log"]["weights"][::-1], body["log"]["intakes"][::-1])
    straight, turned = await read(service, body), await read(service, shuffled)
    assert "LOG_SORTED" in codes(turned)
    for name in ("days", "maintenance_kcal", "weekly_rate_kg", "changes"):
        assert straight[name] == turned[name]


async def test_several_weighings_on_a_day_are_one_row(service: Running) -> None:
    twice = [*steady(10), {"date": day(4), "weight_kg": 84.6, "order": 1}]
    answer = await read(service, request(twice))
    assert {len(column) for column in columns(answer["days"])} == {10}
    assert answer["days"]["observed_weight_kg"][4] == pytest.approx((twice[4]["weight_kg"] + 84.6) / 2, abs=1e-3)


async def test_pounds_sent_as_kilograms_are_caught(service: Running) -> None:
    weighed = steady(12)
    weighed[7]["weight_kg"] = round(weighed[7]["weight_kg"] * 2.20462262, 1)
    answer = await read(service, request(weighed))
    (note,) = [note for note in answer["notes"] if note["code"] == "LOG_UNIT_MIX_UP"]
    assert note["params"]["date"] == day(7)
    assert " 9 March 2026 " in note["text"]
    assert answer["days"]["observed_weight_kg"][7] == pytest.approx(84.0, abs=0.6)


async def test_an_outlier_is_named_with_its_reason(service: Running) -> None:
    weighed = steady(20)
    weighed[12]["weight_kg"] += 4.0
    answer = await read(service, request(weighed, intakes(20)))
    (note,) = [note for note in answer["notes"] if note["code"] == "TREND_OUTLIER"]
    assert note["params"]["date"] == day(12)
    assert note["params"]["deviation_kg"] == pytest.approx(4.0, abs=0.8)
    rows = zip(answer["days"]["date"], answer["days"]["is_outlier"], strict=True)
    assert [date for date, is_outlier in rows if is_outlier] == [day(12)]


async def test_weights_alone_imply_an_intake(service: Running) -> None:
    """Half a kilogram a week costs several hundred kilocalories a day, and no log of food is needed to see it."""
    losing = [w | {"weight_kg": w["weight_kg"] - 0.5 * i / 7} for i, w in enumerate(steady(43))]
    level, cut = await read(service, request(steady(43))), await read(service, request(losing))
    assert "LOG_NO_INTAKE" in codes(cut)
    month = {name: a["changes"][2] for name, a in (("level", level), ("cut", cut))}
    assert month["cut"]["days"] == 28
    fallen = month["level"]["implied_intake_kcal"]["mean"] - month["cut"]["implied_intake_kcal"]["mean"]
    assert 350 < fallen < 1000
    interval = month["cut"]["implied_intake_kcal"]
    assert interval["lower"] < interval["mean"] < interval["upper"]


async def test_an_intake_is_implied_beside_logged_ones_where_a_request_asks(service: Running) -> None:
    """The same as of the weights alone: no intake of the log enters."""
    logged = request(steady(43), intakes(43, 2800.0))
    plain, asked = await read(service, logged), await read(service, logged | {"include": ["implied_intake"]})
    alone = await read(service, request(steady(43)))
    assert {change["implied_intake_kcal"] for change in plain["changes"]} == {None}
    found = [change["implied_intake_kcal"]["mean"] for change in asked["changes"]]
    assert found == pytest.approx([change["implied_intake_kcal"]["mean"] for change in alone["changes"]], rel=0.02)
    assert "implied_intake" in asked["methods"]
    assert "implied_intake" not in plain["methods"]


async def test_logging_bias_is_stated(service: Running) -> None:
    """Steady weight on 1,900 logged kilocalories of someone whose equations expect some 2,900."""
    answer = await read(service, request(steady(60), intakes(60, 1900.0)))
    assert answer["logging_ratio"]["upper"] < 0.95
    assert "TREND_UNDER_LOGGED" in codes(answer)
    assert answer["maintenance_kcal"]["mean"] < 2400


async def test_what_is_said_of_a_scant_log_is_what_the_fields_say(service: Running) -> None:
    """Less is logged than any body of the kind spends: the physical estimate stays, and the texts are of that."""
    answer = await read(service, request(steady(60), intakes(60, 1350.0)))
    (note,) = [note for note in answer["notes"] if note["code"] == "TREND_UNDER_LOGGED"]
    assert note["params"]["percent"] == pytest.approx(100 * (1 - answer["logging_ratio"]["mean"]), abs=0.1)
    (doubt,) = [note for note in answer["cautions"] if note["code"] == "LOG_UNDER_RESTING"]
    causes = {row["cause"]: row["probability"] for row in answer["explained"]["causes"]}
    share = causes["logging"] / (causes["logging"] + causes["maintenance"])
    assert doubt["params"]["unlogged_percent"] == pytest.approx(95 * share, abs=1)


@pytest.mark.parametrize(
    ("path", "more"),
    [
        ("/v1/maintenance", {}),
        ("/v1/plans", {"start_date": "2026-05-04", "phase": {"kind": "maintenance", "weeks": 2}}),
        ("/v1/decisions", {"as_of_date": "2026-05-04"}),
        ("/v1/forecasts", {
            "start_date": "2026-05-04",
            "question": {"kind": "path", "schedule": [{"weeks": 2, "intake_kcal": 1700}]},
        }),
        ("/v1/seasons", {
            "start_date": "2026-05-04",
            "horizon_weeks": 12,
            "strategy": {"kind": "ready_made", "name": "slow_gain_no_cut"},
        }),
    ],
)  # fmt: skip
async def test_a_log_of_less_than_resting_energy_names_its_likely_causes(
    service: Running, path: str, more: dict[str, Any]
) -> None:
    body = request(steady(60), intakes(60, 1350.0), screening=CLEAR) | more
    answer = await service.client.post(path, json=body)
    assert answer.status_code == 200, answer.text
    (doubt,) = [note for note in answer.json()["cautions"] if note["code"] == "LOG_UNDER_RESTING"]
    assert sum(doubt["params"].values()) == 100
    assert "see a clinician" in doubt["text"]


async def test_readings_of_body_fat_split_the_change(service: Running) -> None:
    losing = [w | {"weight_kg": w["weight_kg"] - 0.5 * i / 7} for i, w in enumerate(steady(57))]
    readings = [
        {"date": day(0), "measurement": {"kind": "reading", "fat_fraction": 0.20, "method": "dxa"}},
        {"date": day(55), "measurement": {"kind": "reading", "fat_fraction": 0.16, "method": "dxa"}},
        {"date": day(56), "measurement": {"kind": "girths", "neck_cm": 39.5, "abdomen_cm": 86.0}},
    ]
    plain = (await read(service, request(losing)))["composition"]
    told = (await read(service, request(losing, measurements=readings)))["composition"]
    assert told["reading_count"] == plain["reading_count"] + 3
    width = {name: c["fat_kg"]["upper"] - c["fat_kg"]["lower"] for name, c in (("a", plain), ("b", told))}
    assert width["b"] < width["a"]
    change = (await read(service, request(losing)))["changes"][-1]["tissue_kg"]["mean"]
    assert told["fat_change_kg"]["mean"] + told["lean_change_kg"]["mean"] == pytest.approx(change, abs=0.01)


async def test_days_of_menstruation_bring_their_rise(service: Running) -> None:
    without = await read(service, request(steady(40)))
    told = await read(service, request(steady(40), cycle=[day(-20), day(8), day(36)]))
    assert without["cycle_rise_kg"] is None
    # These weights know of none, so less than what is usual is read.
    assert told["cycle_rise_kg"]["mean"] < 0.45


async def test_the_split_of_a_day_adds_up(service: Running) -> None:
    answer = await read(service, EXAMPLE)
    days = answer["days"]
    parts = [
        tissue + carried for tissue, carried in zip(days["tissue_kg"]["mean"], days["carried_kg"]["mean"], strict=True)
    ]
    assert parts == pytest.approx(days["smoothed_weight_kg"]["mean"], abs=2e-3)


async def test_a_log_without_intakes_says_nothing_of_its_own_scale(service: Running) -> None:
    answer = await read(service, request(steady(30)))
    assert answer["log_share"] == 0.0
    assert {"FROM_EQUATIONS"} <= {caution["code"] for caution in answer["cautions"]} or not any(
        "logging scale" in caution["text"] for caution in answer["cautions"]
    )
    assert answer["explained"] is None


async def test_a_stall_is_told_only_where_a_loss_is_meant(service: Running) -> None:
    body = request(steady(40), intakes(40, 2900.0))
    assert (await read(service, body | {"aim": "hold"}))["stall_probability"] is None
    told = (await read(service, body | {"aim": "lose"}))["stall_probability"]
    assert 0.5 < told <= 1.0


async def test_food_that_is_not_logged_or_a_body_that_needs_less_is_named(service: Running) -> None:
    """Eight weeks of 1,900 logged kilocalories of someone whose equations expect some 2,900, and steady weight."""
    explained = (await read(service, request(steady(60), intakes(60, 1900.0))))["explained"]
    # A body that needs less looks the same from here, so the two share the odds, and one thing settles both.
    likely = {row["cause"]: row["probability"] for row in explained["causes"]}
    assert likely["logging"] + likely["maintenance"] > 0.9
    assert likely["logging"] > 0.3
    assert sum(row["probability"] for row in explained["causes"]) == pytest.approx(1.0, abs=0.002)
    assert explained["tissue_beyond_log_kg"]["lower"] > 0.0
    assert explained["settles"]["code"] == "SETTLE_WEIGH_FOOD"


# --- steps -----------------------------------------------------------------------------------------------


def steps(*fortnights: int) -> list[dict[str, Any]]:
    """Fortnights of steps a day about the same mean each."""
    counts = [mean + 500 * (i % 7 - 3) for mean in fortnights for i in range(14)]
    return [{"date": day(i), "steps": count} for i, count in enumerate(counts)]


async def test_a_fall_of_steps_is_told_and_lowers_maintenance(service: Running) -> None:
    body = request(steady(29), intakes(29))
    plain = await read(service, body)
    assert plain["steps"] is None
    assert plain["state"]["log"]["steps"] == []
    assert plain["state"]["reading"]["steps"] is None
    body["log"]["steps"] = steps(9500, 6500)
    answer = await read(service, body)
    told = answer["steps"]
    assert (told["steps_before"], told["steps_per_day"], told["change"]) == (9500, 6500, -3000)
    worth = told["worth_kcal"]
    assert worth["lower"] < worth["mean"] < 0.0
    assert told["says"]["code"] == "TREND_STEPS_FEWER"
    assert told["says"]["params"]["steps"] == 3000
    assert answer["maintenance_kcal"]["mean"] < plain["maintenance_kcal"]["mean"]
    assert {"steps_followed", "activity_kept", "step_energy"} <= set(answer["methods"])
    assert not {"steps_followed", "activity_kept", "step_energy"} & set(plain["methods"])


async def test_steps_go_on_with_the_state(service: Running) -> None:
    """Three months of steps handed on after two: what is said of the third is what the whole log says."""
    counted = steps(9500, 9500, 9500, 9500, 4500, 4500)
    whole = request(steady(84), intakes(84))
    whole["log"]["steps"] = counted
    early = {**whole, "log": {name: rows[:70] for name, rows in whole["log"].items()}}
    state = (await read(service, early))["state"]
    assert state["reading"]["steps"]["days"] == 84 - 14 - len(state["log"]["steps"])
    later = {**whole, "state": state, "log": {name: rows[70:] for name, rows in whole["log"].items()}}
    one, other = await read(service, whole), await read(service, later)
    assert one["steps"] == other["steps"]
    for name in ("maintenance_kcal", "physical_maintenance_kcal"):
        sd = one[name]["upper"] - one[name]["mean"]
        assert abs(one[name]["mean"] - other[name]["mean"]) <= max(1.0, 0.05 * sd)


@pytest.mark.parametrize("count", [-1, 100_001, 8000.5, "many"])
async def test_steps_outside_their_range_are_named(service: Running, count: object) -> None:
    body = request(steady(5))
    body["log"]["steps"] = [{"date": day(0), "steps": count}]
    answer = await service.client.post(PATH, json=body)
    assert answer.status_code == 400
    assert "steps" in answer.text


async def test_steps_after_the_day_read_at_are_refused_by_name(service: Running) -> None:
    body = request(steady(5), as_of_date=day(4))
    body["log"]["steps"] = [{"date": day(5), "steps": 8000}]
    answer = await service.client.post(PATH, json=body)
    assert answer.status_code == 422
    assert "/log/steps/0/date" in answer.text


async def test_the_rate_of_the_last_day_is_told_once_where_explanations_compete(service: Running) -> None:
    """Unlikely explanations, which no other day in hindsight has, count on the last day of the column as well."""
    rng = random.Random(57)
    length = rng.choice([40, 60, 90])
    kilograms = [84.0 - 0.07 * i + rng.gauss(0, 0.45) for i in range(length)]
    begins = length - rng.randint(4, 14)
    for i in range(begins, length):
        kilograms[i] += rng.choice([-1, 1]) * rng.uniform(0.6, 1.6) * 0.9 ** (i - begins)
    found = await read(service, request(weights(*kilograms), intakes(length, 2300.0)))
    for end in _ENDS:
        assert found["days"]["weekly_rate_kg"][end][-1] == found["weekly_rate_kg"][end]


@pytest.mark.parametrize(("events", "is_asked"), [([], True), (["creatine_start"], False), (["alcohol"], True)])
async def test_water_of_a_told_cause_is_not_waited_for(service: Running, events: list[str], is_asked: bool) -> None:
    """Creatine's stays: to wait until water without a cause fades would settle nothing."""
    kilograms = [w["weight_kg"] + (1.4 if i >= 25 else 0.0) for i, w in enumerate(steady(40))]
    body = request(weights(*kilograms), intakes(40, 2800.0))
    body["log"]["events"] = [{"kind": kind, "date": day(21)} for kind in events]
    explained = (await read(service, body))["explained"]
    assert explained["causes"][0]["cause"] == "water"
    assert (explained["settles"] is not None) is is_asked
