"""The season endpoints over HTTP: answers, contradictions, refusals and determinism."""

import copy
from datetime import date, timedelta
from typing import Any

import msgspec
import pytest
from in_process import Running
from properties.season_recheck import violations
from steelyard.http.endpoints.examples.seasons import COMPARISON_EXAMPLES, OPTIMUM_EXAMPLES, SEASON_EXAMPLES

PATHS = {"season": "/v1/seasons", "comparison": "/v1/seasons/comparison", "optimum": "/v1/seasons/optimum"}
BASE: dict[str, dict[str, Any]] = {
    "season": msgspec.to_builtins(SEASON_EXAMPLES["a_year_with_a_holiday"]),
    "comparison": msgspec.to_builtins(COMPARISON_EXAMPLES["all_ready_made"]) | {"horizon_weeks": 30},
    "optimum": msgspec.to_builtins(OPTIMUM_EXAMPLES["inside_a_band"])
    | {"horizon_weeks": 30, "strategies_searched": 500},
}


def request(kind: str = "season", **changes: Any) -> dict[str, Any]:
    """A valid request with some fields changed; ``limits`` are merged in."""
    body = copy.deepcopy(BASE[kind])
    limits = changes.pop("limits", {})
    body.update(changes)
    body["limits"] = {} if kind != "optimum" else body["limits"]
    body["limits"] = body["limits"] | limits
    return body


async def send(service: Running, kind: str, body: dict[str, Any]) -> Any:
    return await service.client.post(PATHS[kind], json=body)


@pytest.mark.parametrize("name", SEASON_EXAMPLES)
async def test_examples_give_seasons_inside_the_rails(service: Running, name: str) -> None:
    body = msgspec.to_builtins(SEASON_EXAMPLES[name])
    answer = await send(service, "season", body)
    assert answer.status_code == 200, answer.text
    assert violations(body, answer.json()) == []
    assert answer.json()["feasible"]


@pytest.mark.parametrize("kind", PATHS)
async def test_the_same_request_gives_the_same_bytes(service: Running, kind: str) -> None:
    first, second = await send(service, kind, request(kind)), await send(service, kind, request(kind))
    assert first.status_code == 200, first.text
    assert first.content == second.content


@pytest.mark.parametrize("kind", PATHS)
async def test_a_log_under_resting_energy_on_its_own_scale_starts_a_season(service: Running, kind: str) -> None:
    """It holds half of what is eaten; the body is like any other, and every other answer is given."""
    heavy = {"height_cm": 178.0, "weight_kg": 108.0, "body_fat": {"fat_fraction": 0.38, "method": "dxa"}}
    days = [str(date(2026, 2, 1) + timedelta(days=day)) for day in range(56)]
    log = {
        "weights": [{"date": day, "weight_kg": 108.0} for day in days],
        "intakes": [{"date": day, "intake_kcal": 1600} for day in days],
    }
    body = request(
        kind, profile={**BASE[kind]["profile"], **heavy}, log=log, maintenance=None, current_intake_kcal=None
    )
    answer = await send(service, kind, body)
    assert answer.status_code == 200, answer.text
    start = answer.json()["start"]
    assert start["maintenance_kcal"]["mean"] < 1850.0


@pytest.mark.parametrize("kind", PATHS)
@pytest.mark.parametrize(
    ("limits", "pointer", "code"),
    [
        ({"events": [{"date": "2026-03-29"}]}, "#/limits/events/0/date", "EVENT_BEFORE_START"),
        ({"events": [{"date": "2030-01-01"}]}, "#/limits/events/0/date", "EVENT_AFTER_HORIZON"),
        ({"events": [{"date": "1990-01-01"}]}, "#/limits/events/0/date", "DATE_OUT_OF_RANGE"),
        (
            {"band": {"lower_fat_fraction": 0.2, "upper_fat_fraction": 0.15}},
            "#/limits/band/upper_fat_fraction",
            "BAND_INVERTED",
        ),
        (
            {"blocked_dates": [{"first_date": "2026-05-02", "last_date": "2026-05-01"}]},
            "#/limits/blocked_dates/0/last_date",
            "BLOCKED_DATES_INVERTED",
        ),
        (
            {"blocked_dates": [{"first_date": "2026-01-01", "last_date": "2030-01-01"}]},
            "#/limits/blocked_dates",
            "BLOCKED_DATES_COVER_ALL",
        ),
        (
            {"band": {"lower_fat_fraction": 0.04, "upper_fat_fraction": 0.15}},
            "#/limits/band/lower_fat_fraction",
            "REFUSED_TARGET",
        ),
        (
            {"events": [{"date": "2026-06-01", "most_fat_fraction": 0.05}]},
            "#/limits/events/0/most_fat_fraction",
            "REFUSED_TARGET",
        ),
    ],
)
async def test_contradictory_limits_are_told(
    service: Running, kind: str, limits: dict[str, Any], pointer: str, code: str
) -> None:
    answer = await send(service, kind, request(kind, limits=limits))
    assert answer.status_code == 422, answer.text
    problem = answer.json()
    assert (problem["errors"][0]["pointer"], problem["errors"][0]["code"]) == (pointer, code)


@pytest.mark.parametrize(
    ("changes", "pointer"),
    [
        ({"horizon_weeks": 11}, "#/horizon_weeks"),
        ({"horizon_weeks": 157}, "#/horizon_weeks"),
        ({"limits": {"blocked_dates": [{"first_date": "2026-05-01", "last_date": "2026-05-02"}] * 41}},
         "#/limits/blocked_dates"),
        ({"limits": {"events": [{"date": "2026-05-01"}] * 21}}, "#/limits/events"),
        ({"limits": {"most_cuts": -1}}, "#/limits/most_cuts"),
        ({"strategy": {"kind": "own", "surplus_kcal": -1}}, "#/strategy/surplus_kcal"),
        ({"strategy": {"kind": "ready_made", "name": "no_such_strategy"}}, "#/strategy/name"),
    ],
)  # fmt: skip
async def test_values_out_of_range_are_told(service: Running, changes: dict[str, Any], pointer: str) -> None:
    answer = await send(service, "season", request(**changes))
    assert answer.status_code == 400, answer.text
    assert answer.json()["errors"][0]["pointer"] == pointer


@pytest.mark.parametrize(
    ("strategy", "pointer", "code"),
    [
        ({"cut_to_fat_fraction": 0.12}, "#/strategy/cut_at_fat_fraction", "CUT_WITHOUT_START"),
        (
            {"cut_at_fat_fraction": 0.15, "cut_to_fat_fraction": 0.145},
            "#/strategy/cut_to_fat_fraction",
            "CUT_ENDS_ABOVE_START",
        ),
        (
            {"cut_at_fat_fraction": 0.1, "cut_to_fat_fraction": 0.05},
            "#/strategy/cut_to_fat_fraction",
            "REFUSED_TARGET",
        ),
    ],
)
async def test_contradictory_strategies_are_told(
    service: Running, strategy: dict[str, Any], pointer: str, code: str
) -> None:
    own = {"kind": "own", "surplus_kcal": 150} | strategy
    answer = await send(service, "season", request(strategy=own))
    assert answer.status_code == 422, answer.text
    problem = answer.json()
    assert (problem["errors"][0]["pointer"], problem["errors"][0]["code"]) == (pointer, code)


@pytest.mark.parametrize("kind", PATHS)
@pytest.mark.parametrize(
    ("changes", "pointer"),
    [
        ({"current_intake_kcal": 8000}, "#/current_intake_kcal"),
        ({"maintenance": {"kcal_per_day": 1000, "standard_deviation_kcal": 50}}, "#/maintenance/kcal_per_day"),
    ],
)
async def test_energies_that_no_body_lives_on_are_told(
    service: Running, kind: str, changes: dict[str, Any], pointer: str
) -> None:
    answer = await send(service, kind, request(kind, **changes))
    assert answer.status_code == 422
    assert answer.json()["errors"][0]["pointer"] == pointer


async def test_a_strategy_is_compared_once(service: Running) -> None:
    twice = [{"kind": "ready_made", "name": "slow_gain_no_cut"}] * 2
    answer = await send(service, "comparison", request("comparison", strategies=twice))
    assert answer.status_code == 422
    assert answer.json()["errors"][0]["pointer"] == "#/strategies/1/name"


async def test_a_search_that_would_take_too_long_is_refused(service: Running) -> None:
    answer = await send(service, "optimum", request("optimum", horizon_weeks=156, strategies_searched=100000))
    assert answer.status_code == 422
    problem = answer.json()
    assert problem["errors"][0]["pointer"] == "#/strategies_searched"
    assert "6410" in problem["detail"]  # what would fit


@pytest.mark.parametrize(
    ("changes", "rule"),
    [
        ({"screening": BASE["season"]["screening"] | {"is_pregnant": True}}, "pregnancy_lactation"),
        ({"screening": BASE["season"]["screening"] | {"eating_disorder": "past"}}, "eating_disorder"),
        ({"screening": BASE["season"]["screening"] | {"medicines": ["lithium"]}}, "medical"),
        ({"profile": BASE["season"]["profile"] | {"age_years": 16}}, "age"),
        ({"profile": BASE["season"]["profile"] | {"body_fat": None}}, "body_fat"),
        ({"profile": BASE["season"]["profile"] | {"weight_kg": 59}}, "bmi"),
    ],
)
async def test_who_may_not_cut_is_refused_cuts_and_given_the_rest(
    service: Running, changes: dict[str, Any], rule: str
) -> None:
    refused = await send(service, "season", request(**changes))
    assert refused.status_code == 422
    assert refused.json()["type"] == f"/problems/guard-rail/{rule}"

    if rule in ("age", "eating_disorder"):
        # A season is about a band of body fat, of which nothing is said to the young or with an eating disorder.
        for kind in ("comparison", "optimum"):
            other = await send(service, kind, request(kind, **changes))
            assert other.status_code == 422
            assert other.json()["type"] == f"/problems/guard-rail/{rule}"
        return

    no_cut = {"kind": "ready_made", "name": "slow_gain_no_cut"}
    season = await send(service, "season", request(**changes, strategy=no_cut))
    assert season.status_code == 200, season.text
    assert season.json()["plan"]["totals"]["cuts"] == 0

    comparison = (await send(service, "comparison", request("comparison", **changes))).json()
    assert [s["label"] for s in comparison["strategies"]] == ["slow_gain_no_cut"]
    assert {r["rule"] for r in comparison["refused"]} == {rule}
    assert len(comparison["refused"]) == 3

    limits = {"band": None}  # under 18 and with an eating disorder there is no body-fat target
    optimum = (await send(service, "optimum", request("optimum", **changes, limits=limits))).json()
    assert optimum["plan"]["totals"]["cuts"] == 0
    assert (optimum["plan"]["guard_rails"][0]["id"], optimum["plan"]["guard_rails"][0]["action"]) == (rule, "refused")


@pytest.mark.parametrize("kind", ["season", "comparison", "optimum"])
async def test_unanswered_screening_gets_no_season(service: Running, kind: str) -> None:
    refused = await send(service, kind, request(kind, screening=None))
    assert refused.status_code == 422
    assert refused.json()["type"] == "/problems/guard-rail/screening_unanswered"
    assert refused.json()["errors"][0]["pointer"] == "#/screening"


@pytest.mark.parametrize(
    "changes",
    [
        {"profile": BASE["season"]["profile"] | {"age_years": 16}},
        {"screening": BASE["season"]["screening"] | {"eating_disorder": "current"}},
    ],
)
async def test_no_body_fat_target_for_the_young_or_with_an_eating_disorder(
    service: Running, changes: dict[str, Any]
) -> None:
    no_cut = {"kind": "ready_made", "name": "slow_gain_no_cut"}
    band = {"band": {"lower_fat_fraction": 0.12, "upper_fat_fraction": 0.18}}
    event = {"events": [{"date": "2026-06-01", "most_fat_fraction": 0.14}]}
    for limits in (band, event):
        answer = await send(service, "season", request(**changes, strategy=no_cut, limits=limits))
        assert answer.status_code == 422
        assert answer.json()["errors"][0]["code"] in ("REFUSED_UNDER_AGE", "REFUSED_EATING_DISORDER")


async def test_where_every_strategy_is_refused_so_is_the_comparison(service: Running) -> None:
    cutting = [{"kind": "ready_made", "name": n} for n in ("fast_gain_long_cut", "slow_gain_rare_mini_cuts")]
    answer = await send(service, "comparison", request("comparison", strategies=cutting, screening=None))
    assert answer.status_code == 422
    assert answer.json()["type"] == "/problems/guard-rail/screening_unanswered"


async def test_no_deficit_reaches_a_65th_birthday_without_clearance(service: Running) -> None:
    profile = BASE["season"]["profile"] | {
        "age_years": 64.6, "body_fat": {"fat_fraction": 0.24, "method": "dxa"},
    }  # fmt: skip
    plan = (await send(service, "season", request(profile=profile))).json()["plan"]
    birthday = int(0.4 * 365.25 / 7)
    cuts = [w["week"] for w in plan["weeks"] if w["kind"] in ("cut", "mini_cut")]
    assert cuts
    assert max(cuts) <= birthday
    assert plan["weeks"][-1]["kind"] == "maintenance"


async def test_a_broken_limit_is_infeasible_with_the_nearest_season(service: Running) -> None:
    limits = {"most_weeks_above_band": 0, "band": {"lower_fat_fraction": 0.1, "upper_fat_fraction": 0.13}}
    answer = (await send(service, "season", request(limits=limits))).json()
    assert not answer["feasible"]
    assert answer["broken_limits"][0]["limit"] == "weeks_above_band"
    assert answer["broken_limits"][0]["found"] > 0
    assert answer["plan"]["phases"]

    optimum = (await send(service, "optimum", request("optimum", limits=limits))).json()
    assert not optimum["feasible"]
    assert optimum["broken_limits"][0]["limit"] == "weeks_above_band"
    # Nearer than the ready-made season is.
    assert optimum["broken_limits"][0]["found"] < answer["broken_limits"][0]["found"]


async def test_the_optimum_is_the_season_of_its_strategy(service: Running) -> None:
    """The plan of the optimum is what the season endpoint says of the strategy it names."""
    optimum = (await send(service, "optimum", request("optimum"))).json()
    numbers = optimum["plan"]["strategy"]
    own = {"kind": "own"} | {key: value for key, value in numbers.items() if value is not None}
    body = request(strategy=own, horizon_weeks=30, limits=request("optimum")["limits"])
    season = (await send(service, "season", body)).json()
    assert season["plan"]["totals"]["cuts"] == optimum["plan"]["totals"]["cuts"]
    ends = [plan["plan"]["totals"]["lean_gained_kg"]["mean"] for plan in (season, optimum)]
    assert ends[0] == pytest.approx(ends[1], abs=1e-3)
    assert optimum["searched"]["strategies"] <= 1000
    front = [point["expected"]["lean_gained_kg"] for point in optimum["trade_off"]]
    assert front == sorted(front)


async def test_a_comparison_agrees_with_the_season(service: Running) -> None:
    comparison = (await send(service, "comparison", request("comparison"))).json()
    for strategy in comparison["strategies"]:
        ready = {"kind": "ready_made", "name": strategy["label"]}
        season = (await send(service, "season", request(strategy=ready, horizon_weeks=30))).json()
        totals = season["plan"]["totals"]
        assert strategy["expected"]["lean_gained_kg"] == totals["lean_gained_kg"]["mean"]
        assert strategy["expected"]["days_dieting"] == totals["days_dieting"]
        assert strategy["expected"]["peak_fat_fraction"] == totals["peak_fat_fraction"]["mean"]
    pairs = {(c["label"], c["over"]): c for c in comparison["chances"]}
    for (one, other), found in pairs.items():
        assert found["more_lean"] + pairs[other, one]["more_lean"] == pytest.approx(1.0)


async def test_every_method_id_is_in_the_catalogue(service: Running) -> None:
    catalogue = {entry["id"] for entry in (await service.client.get("/v1/methods")).json()["entries"]}
    for kind in PATHS:
        assert set((await send(service, kind, request(kind))).json()["methods"]) <= catalogue


@pytest.mark.parametrize(("intake_kcal", "rises"), [(1700, True), (4000, False)])
async def test_the_scale_is_said_to_rise_after_a_cut_where_it_does(
    service: Running, intake_kcal: int, rises: bool
) -> None:
    body = request(current_intake_kcal=intake_kcal, cut_history={"cuts_last_12_months": 1, "weeks_since_last_cut": 0})
    first = (await send(service, "season", body)).json()["plan"]["phases"][0]
    assert first["kind"] == "maintenance"
    said = [note for note in first["cautions"] if note["code"] == "REBOUND"]
    assert bool(said) is rises
    assert all(note["params"]["carried_kg"] >= 0.1 for note in said)
    # Without it nothing else says so either.
    assert ("SEASON_BRIDGE" in {note["code"] for note in first["reasons"]}) is rises


HEAVY = {
    "sex": "male",
    "age_years": 45,
    "height_cm": 180,
    "activity": {"kind": "level", "level": "sedentary"},
    "training": {"status": "novice", "resistance_sessions_per_week": 2},
}


@pytest.mark.parametrize(
    ("weight_kg", "fat_fraction", "deficit_kcal", "history", "rule"),
    [
        (120.0, 0.36, 500, None, "cut_history"),  # 2 kcal short of it, by what the cut before left of adaptation
        (84.5, 0.23, 1400, None, "cut_history"),
        (120.0, 0.36, 1400, {"cuts_last_12_months": 0}, "deficit_share"),
        (84.5, 0.12, 900, {"cuts_last_12_months": 0}, "fat_supply"),
    ],
)
async def test_a_cut_is_held_by_the_rule_that_holds_it(
    service: Running, weight_kg: float, fat_fraction: float, deficit_kcal: float, history: Any, rule: str
) -> None:
    """Somebody of 120 kg who loses a quarter of a percent a week was told to lose weight too fast."""
    profile = {**HEAVY, "weight_kg": weight_kg, "body_fat": {"fat_fraction": fat_fraction, "method": "dxa"}}
    strategy = {"kind": "own", "surplus_kcal": 200, "cut_at_fat_fraction": 0.11, "cut_to_fat_fraction": 0.08}
    strategy["deficit_kcal"] = deficit_kcal
    body = request(profile=profile, strategy=strategy, cut_history=history, log=None, maintenance=None)
    plan = (await send(service, "season", body | {"horizon_weeks": 52})).json()["plan"]
    held = [rail for rail in plan["guard_rails"] if rail["action"] == "capped"]
    assert [rail["id"] for rail in held] == [rule]
    if fat_fraction > 0.3:
        codes = [reason["code"] for reason in plan["phases"][0]["reasons"]]
        assert codes[codes.index("PROTEIN_WHY") + 1] == "PROTEIN_REFERENCE"


@pytest.mark.parametrize("kind", PATHS)
async def test_nobody_at_the_ceiling_of_a_gain_is_planned_a_season_of_it(service: Running, kind: str) -> None:
    """The best season of somebody at 36 % was half a year of a surplus of 617 kcal/d; a plan of it holds."""
    profile = {**HEAVY, "weight_kg": 120.0, "body_fat": {"fat_fraction": 0.36, "method": "dxa"}}
    body = request(kind, profile=profile, log=None, maintenance=None, current_intake_kcal=None, horizon_weeks=26)
    if kind == "season":
        body["strategy"] = {"kind": "ready_made", "name": "slow_gain_no_cut"}
    answer = await send(service, kind, body)
    assert answer.status_code == 200, answer.text
    found = answer.json()
    if kind == "comparison":
        (uncut,) = (one for one in found["strategies"] if one["strategy"]["cut_to_fat_fraction"] is None)
        assert uncut["expected"]["fat_gained_kg"] < 0.5
        return
    phases = found["plan"]["phases"]
    assert "gain" not in {phase["kind"] for phase in phases}
    codes = {reason["code"] for phase in phases for reason in phase["reasons"]}
    assert "SEASON_HOLD_UNCUT" in codes or kind == "optimum"


WOMAN = BASE["season"]["profile"] | {"sex": "female", "height_cm": 166.0, "weight_kg": 68.0}
NO_CUT = {"kind": "ready_made", "name": "slow_gain_no_cut"}


def of_woman(kind: str, fat_fraction: float, weeks: int, weight_kg: float = 68.0, **more: Any) -> dict[str, Any]:
    profile = WOMAN | {"weight_kg": weight_kg, "body_fat": {"fat_fraction": fat_fraction, "method": "dxa"}}
    energies = {"log": None, "maintenance": None, "current_intake_kcal": None}
    asked = {"strategy": NO_CUT} if kind == "season" else {}
    return request(kind, profile=profile, horizon_weeks=weeks, **energies, **asked, **more) | {
        "limits": {"most_cuts": 0} if kind == "season" else {}
    }


def why(plan: dict[str, Any]) -> list[list[str]]:
    """The kind of each phase and the codes of its reasons."""
    return [[phase["kind"], *(reason["code"] for reason in phase["reasons"])] for phase in plan["phases"]]


@pytest.mark.parametrize("kind", ["season", "optimum"])
@pytest.mark.parametrize("who", ["is_pregnant", "is_breastfeeding"])
async def test_who_may_not_diet_is_told_of_no_gain_and_of_no_body_fat(service: Running, kind: str, who: str) -> None:
    """In pregnancy a hold at the ceiling had no reason at all; who breastfeeds was told of 27 % and of cuts."""
    screening = BASE["season"]["screening"] | {who: True}
    at_ceiling = (await send(service, kind, of_woman(kind, 0.36, 26, screening=screening))).json()["plan"]
    assert why(at_ceiling) == [["maintenance", "GAIN_NOT_NOW"]]


async def test_a_gain_in_pregnancy_is_over_at_its_ceiling(service: Running) -> None:
    screening = BASE["season"]["screening"] | {"is_pregnant": True}
    own = {"kind": "own", "surplus_kcal": 500}
    body = of_woman("season", 0.265, 52, screening=screening) | {"strategy": own}
    plan = (await send(service, "season", body)).json()["plan"]
    assert [why(plan)[0][0], why(plan)[1]] == ["gain", ["maintenance", "GAIN_OVER"]]
    assert plan["phases"][1]["reasons"][0]["params"]["date"] == plan["phases"][1]["start_date"]
    assert plan["totals"]["peak_fat_fraction"]["mean"] < 0.275


async def test_who_is_held_at_need_near_the_ceiling_is_not_told_that_it_is_for_that(service: Running) -> None:
    screening = BASE["season"]["screening"] | {"is_breastfeeding": True}
    plan = (await send(service, "season", of_woman("season", 0.262, 26, screening=screening))).json()["plan"]
    assert why(plan) == [["maintenance", "SEASON_HELD_AT_NEED"]]


async def test_a_gain_that_is_never_cut_ends_at_its_ceiling_and_says_so(service: Running) -> None:
    profile = BASE["season"]["profile"] | {"body_fat": {"fat_fraction": 0.165, "method": "dxa"}}
    for strategy in (
        NO_CUT,
        {"kind": "own", "surplus_kcal": 300},
        {"kind": "ready_made", "name": "fast_gain_long_cut"},
    ):
        body = request(profile=profile, strategy=strategy, limits={"most_cuts": 0}, horizon_weeks=104)
        plan = (await send(service, "season", body)).json()["plan"]
        assert plan["phases"][0]["kind"] == "gain"
        assert "CEILING_REACHED" in {note["code"] for note in plan["phases"][0]["ends_early_when"]}
        assert why(plan)[1] == ["maintenance", "SEASON_HOLD_UNCUT"]
        assert plan["totals"]["peak_fat_fraction"]["mean"] < 0.175
        assert plan["strategy"]["cut_at_fat_fraction"] == 0.17


async def test_an_own_ceiling_holds_in_the_place_of_the_band_s(service: Running) -> None:
    profile = BASE["season"]["profile"] | {"body_fat": {"fat_fraction": 0.18, "method": "dxa"}}
    own = {"kind": "own", "surplus_kcal": 300, "cut_at_fat_fraction": 0.2}
    plan = (await send(service, "season", request(profile=profile, strategy=own, horizon_weeks=104))).json()["plan"]
    assert plan["phases"][0]["kind"] == "gain"
    assert 0.195 < plan["totals"]["peak_fat_fraction"]["mean"] < 0.205


async def test_an_underweight_body_gains_whatever_its_body_fat(service: Running) -> None:
    body = of_woman("season", 0.28, 52, weight_kg=50.5)
    plan = (await send(service, "season", body)).json()["plan"]
    assert plan["phases"][0]["kind"] == "gain"
    ends = {week["week"]: week["at_end"] for week in plan["weeks"]}
    last = ends[plan["phases"][0]["weeks"]]
    # And no longer once it is not.
    assert (last["weight_kg"]["mean"] - last["carried_kg"]["mean"]) / 1.66**2 == pytest.approx(18.5, abs=0.1)
    assert plan["phases"][1]["kind"] == "maintenance"


async def test_the_best_season_from_far_over_the_band_says_how_far_it_gets(service: Running) -> None:
    profile = {**HEAVY, "weight_kg": 120.0, "body_fat": {"fat_fraction": 0.36, "method": "dxa"}}
    body = request("optimum", profile=profile, log=None, maintenance=None, current_intake_kcal=None, horizon_weeks=26)
    body["limits"] = {}
    found = (await send(service, "optimum", body)).json()
    assert found["feasible"]
    assert found["allowed_weeks_above_band"] == 26
    totals = found["plan"]["totals"]
    assert totals["cuts"] > 0
    assert totals["final_fat_fraction"]["mean"] <= found["allowed_final_fat_fraction"] + 0.001
    assert "OPTIMUM_LATE_IN_BAND" in {reason["code"] for reason in found["plan"]["reasons"]}
    for phase in found["plan"]["phases"]:
        for reason in phase["reasons"]:
            if reason["code"] == "SEASON_CUT_FOR_WEEKS":
                assert reason["params"]["weeks"] == phase["weeks"]
                assert 30 < reason["params"]["end_percent"] < reason["params"]["fat_percent"]
    assert "SEASON_CUT_FOR_WEEKS" in {code for phase in why(found["plan"]) for code in phase}
    near = body | {"profile": profile | {"weight_kg": 85.0, "body_fat": {"fat_fraction": 0.16, "method": "dxa"}}}
    assert (await send(service, "optimum", near)).json()["allowed_final_fat_fraction"] is None


async def test_a_cut_for_an_event_goes_on_after_blocked_days_and_arrives(service: Running) -> None:
    """It began as if it might run through them, with three weeks left, and missed its target by a point."""
    profile = WOMAN | {"body_fat": {"fat_fraction": 0.24, "method": "dxa"}}
    limits = {
        "events": [{"date": "2026-06-13", "most_fat_fraction": 0.22}],
        "blocked_dates": [{"first_date": "2026-04-29", "last_date": "2026-05-05"}],
    }
    strategy = {"kind": "ready_made", "name": "slow_gain_rare_mini_cuts"}
    energies = {"log": None, "maintenance": None, "current_intake_kcal": None}
    body = request(profile=profile, horizon_weeks=12, strategy=strategy, limits=limits, **energies)
    found = (await send(service, "season", body)).json()
    assert found["feasible"]
    assert violations(body, found) == []
    kinds = [phase["kind"] for phase in found["plan"]["phases"]]
    # Nothing is gained in between, and what goes on is no new cut.
    first = kinds.index("mini_cut")
    assert kinds[first : first + 3] == ["mini_cut", "maintenance", "mini_cut"]
    assert "WARNED_RECENT_CUT" not in {rail["code"] for rail in found["plan"]["guard_rails"]}


@pytest.mark.parametrize(
    ("person", "history", "limits", "shut"),
    [
        ({"age_years": 64.9}, (0, 52), {}, "age"),
        ({}, (3, 1), {}, "year"),
        ({}, (1, 2), {"least_weeks_between_cuts": 50}, "recent"),
        ({}, (0, 52), {"blocked_dates": [{"first_date": "2026-04-20", "last_date": "2026-07-20"}]}, "dates"),
        ({}, (0, 52), {"most_cuts": 1}, "most"),
    ],
)
async def test_a_hold_says_why_no_cut_may_start(
    service: Running, person: dict[str, Any], history: tuple[int, int], limits: dict[str, Any], shut: str
) -> None:
    profile = BASE["season"]["profile"] | {"body_fat": {"fat_fraction": 0.26, "method": "dxa"}} | person
    cuts, weeks = history
    body = request(
        profile=profile,
        horizon_weeks=26,
        limits=limits,
        strategy={"kind": "ready_made", "name": "slow_gain_rare_mini_cuts"},
        cut_history={"cuts_last_12_months": cuts, "weeks_since_last_cut": weeks},
    )
    answer = await send(service, "season", body)
    assert answer.status_code == 200, answer.text
    phases = answer.json()["plan"]["phases"]
    told = [r["params"]["shut"] for phase in phases for r in phase["reasons"] if r["code"] == "SEASON_HOLD"]
    assert shut in told


async def test_the_best_season_whose_body_fat_was_never_measured_gains_no_more_of_it(service: Running) -> None:
    """Nobody may cut it, and who is likely above the band was told to gain 17 kg in a year."""
    profile = BASE["optimum"]["profile"] | {"weight_kg": 95.0, "body_fat": None}
    body = request("optimum", profile=profile, horizon_weeks=26, log=None, maintenance=None, current_intake_kcal=None)
    body["limits"] = {}
    found = (await send(service, "optimum", body)).json()
    start = found["start"]["body_fat_fraction"]["mean"]
    assert start > 0.17
    assert found["plan"]["totals"]["final_fat_fraction"]["mean"] <= start


@pytest.mark.parametrize("who", ["is_pregnant", "is_breastfeeding", None])
async def test_a_comparison_says_which_strategy_holds(service: Running, who: str | None) -> None:
    """At the ceiling `slow_gain_no_cut` is no gain, and only its figures showed it."""
    screening = BASE["season"]["screening"] | ({who: True} if who else {})
    body = of_woman("comparison", 0.34, 26, screening=screening)
    found = (await send(service, "comparison", body)).json()
    told = {one["label"]: [reason["code"] for reason in one["reasons"]] for one in found["strategies"]}
    assert told["slow_gain_no_cut"] == [("GAIN_NOT_NOW" if who else "SEASON_HOLD_UNCUT")]
    cautions = {caution["code"] for caution in found["cautions"]}
    assert ("PLAN_PROVISIONAL" in cautions) is (who != "is_pregnant")
    if who is None:
        assert {"SEASON_CUTS", "SEASON_HOLD"} <= set(told["slow_gain_rare_mini_cuts"])


async def test_a_surplus_that_later_gains_exceed_is_told_as_the_first(service: Running) -> None:
    """ "Your surplus stays at 234 kcal" stood above a gain on 403, after a cut."""
    own = {"kind": "own", "surplus_kcal": 1000, "cut_at_fat_fraction": 0.16, "cut_to_fat_fraction": 0.12}
    profile = BASE["season"]["profile"] | {"body_fat": {"fat_fraction": 0.14, "method": "dxa"}}
    plan = (await send(service, "season", request(profile=profile, strategy=own, horizon_weeks=78))).json()["plan"]
    gains = [r["params"]["surplus_kcal"] for p in plan["phases"] for r in p["reasons"] if r["code"] == "SEASON_GAIN"]
    assert max(gains) - min(gains) >= 20
    capped = [rail for rail in plan["guard_rails"] if rail["id"] == "gain_rate"]
    assert [rail["code"] for rail in capped][:1] == ["CAPPED_GAIN_RATE_AT_FIRST"]
    assert capped[0]["params"]["surplus_kcal"] == gains[0]


async def test_maintenance_after_a_cut_that_no_water_follows_has_a_reason(service: Running) -> None:
    """Who told of a cut that has just ended, and of no intake, held for a week without a word of why."""
    history = {"cuts_last_12_months": 1, "weeks_since_last_cut": 0}
    body = request(strategy=NO_CUT, cut_history=history, current_intake_kcal=None, log=None, maintenance=None)
    plan = (await send(service, "season", body)).json()["plan"]
    assert why(plan)[0] == ["maintenance", "SEASON_AFTER_CUT"]
