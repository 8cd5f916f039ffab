"""Months played through as an app would: plan, weekly review, decision, plan, with nothing but the state handed on."""

from collections.abc import Iterator
from datetime import date
from itertools import pairwise

import pytest
from loopstudy.played import Person, Week, call, followed, planned, year_of
from request_people import CLEAR

STEP_KCAL = 200.0
YEARS = [
    ("male", 95.0, 0.28, "muscle", "content"),
    ("male", 86.0, 0.17, "leanness", "would_like_leaner"),
    ("female", 64.0, 0.27, "leanness", "content"),
    ("male", 78.0, 0.13, "muscle", "content"),
    ("female", 70.0, 0.34, "muscle", "content"),
]


def people(count: int, seed: int, lean: bool = False, over_kcal: float = 0.0) -> Iterator[Person]:
    """Men and women by turns, lean enough for a gain or with fat to lose."""
    # Weight and body fat of the first, and how much further they go.
    women, men = ((60.0, 18.0, 0.25, 0.10), (75.0, 25.0, 0.17, 0.10))
    if lean:
        women, men = ((56.0, 9.0, 0.17, 0.03), (70.0, 11.0, 0.10, 0.03))
    for place in range(count):
        sex, (weight, more_kg, fat, fatter) = (("female", women), ("male", men))[place % 2]
        share = place / count
        yield Person(seed + place, sex, weight + share * more_kg, fat + share * fatter, over_kcal=over_kcal)


def check_steps(weeks: list[Week]) -> None:
    """Nothing told moves by more than one step, but for a rail that raises."""
    for one, then in pairwise(weeks):
        step = then.told_kcal - one.told_kcal
        assert abs(step) <= STEP_KCAL or (step > 0 and "REVIEW_RAISED_BY_RAIL" in one.codes)


def test_a_gain_goes_its_length_and_its_corrections_stop_above_maintenance() -> None:
    for person in people(8, 4_100, lean=True):
        plan = planned(person, {"kind": "gain", "weeks": 20})
        assert plan["phases"][0]["kind"] == "gain"
        person.needs_kcal -= 150.0  # less walking than before
        weeks = followed(person, plan)
        check_steps(weeks)
        assert len(weeks) == 20
        assert sum(week.review["correction_kcal"] != 0 for week in weeks) <= 4
        for week in weeks[:-1]:
            if week.review["correction_kcal"] < 0:
                assert week.review["weeks"][0]["intake_kcal"] >= week.review["maintenance_kcal"]["mean"] - 1.0
        assert person.fat_kg > person.first_fat_kg
        assert person.lean_kg > person.first_lean_kg


def test_a_gain_with_all_the_surplus_that_is_allowed_is_slowed_and_not_broken_off() -> None:
    for person in people(4, 4_200, lean=True):
        plan = planned(person, {"kind": "gain", "weeks": 16, "surplus_kcal": 500})
        person.needs_kcal -= 100.0
        weeks = followed(person, plan)
        check_steps(weeks)
        assert len(weeks) == 16


def test_a_cut_of_a_length_goes_its_length() -> None:
    for person in people(8, 4_300):
        plan = planned(person, {"kind": "cut", "weeks": 10})
        weeks = followed(person, plan)
        check_steps(weeks)
        assert len(weeks) == 10 or "REVIEW_PURPOSE_MET" not in weeks[-1].codes


def test_a_plan_of_usual_size_is_not_raised_by_a_rail_in_its_first_weeks() -> None:
    """Of honest people who keep to it, whatever the first weeks of a log say of what it leaves out."""
    raised = [
        any("REVIEW_RAISED_BY_RAIL" in week.codes for week in followed(person, planned(person, {"kind": "cut"}), 3))
        for person in people(20, 4_400)
    ]
    assert sum(raised) <= 2


@pytest.mark.long
def test_few_who_keep_to_a_cut_are_told_to_eat_otherwise_and_most_who_eat_more_are_named() -> None:
    """Weekly reviews of a cut of twelve weeks, in a world whose bodies lose a third more than the plan says.

    On plan are the honest whose tissue goes what was promised, give or take half of it. Of those who eat 300 kcal a day
    unlogged half are named by day 28, of the honest at most 5 %. What a review goes by was set on people of two other
    seeds, and then on one in twenty false alarms, which cost five in a hundred of those who eat so little more.
    """
    count, on_plan, changed, named = 80, 0, 0, {0.0: 0, 300.0: 0}
    for over_kcal in named:
        for person in people(count, 6_000, over_kcal=over_kcal):
            plan = planned(person, {"kind": "cut", "weeks": 12})
            before_kg = person.fat_kg + person.lean_kg
            weeks = followed(person, plan, 11 if not over_kcal else 4)
            named[over_kcal] += any(week.review["verdict"] in ("slower", "contradicted") for week in weeks[:4])
            promised = weeks[-1].review["change"]["planned_tissue_kg"]["mean"]
            apart = person.fat_kg + person.lean_kg - before_kg - promised
            if not over_kcal and abs(apart) <= 0.5 * abs(promised):
                on_plan += 1
                changed += any(week.review["correction_kcal"] for week in weeks)
    assert on_plan >= 0.6 * count
    assert changed <= 0.15 * on_plan
    assert named[300.0] >= 0.5 * count
    assert named[0.0] <= 0.05 * count


def test_fat_to_lose_is_lost_when_two_readings_say_so() -> None:
    for person in people(6, 4_500):
        target = round(0.02 * person.start_kg, 1)
        plan = planned(person, {"kind": "mini_cut", "fat_loss_kg": target})
        if not plan["feasible"]:
            continue
        weeks = followed(person, plan)
        if "REVIEW_PURPOSE_MET" in weeks[-1].codes:
            assert len(weeks) >= 3
        assert weeks[-1].fat_kg < -0.5 * target


@pytest.mark.parametrize(("sex", "weight_kg", "fat", "goal", "feeling"), YEARS)
def test_a_year_goes_from_decision_to_decision(sex: str, weight_kg: float, fat: float, goal: str, feeling: str) -> None:
    person = Person(40, sex, weight_kg, fat)
    year = year_of(person, goal, feeling)
    first = year[0].fat_before
    for part in year:
        check_steps(part.weeks)
        recommended = part.decision["recommended"]
        assert part.kind == recommended["kind"]
        assert len(part.plan["phases"][0]["weeks"]) == recommended["weeks"]
        ceiling = part.decision["leanness"]["band_upper_fat_fraction"]
        seen = part.decision["leanness"]["fat_fraction"]["mean"]
        if seen > ceiling + 0.005:
            assert all(phase["kind"] != "gain" for phase in part.plan["phases"])
    if goal == "leanness":
        assert person.fat_share < first
    if fat >= 0.28:
        assert person.fat_share < first - 0.015


def test_figures_of_an_alternative_are_those_of_its_plan() -> None:
    for place, person in enumerate(people(9, 4_600)):
        asked = {**person.told, "as_of_date": person.on, "goal": ("muscle", "leanness", "hold")[place % 3]}
        decision = call("decide_phase", {**asked, "log": person.before, "phase_history": []})
        for way in decision["alternatives"]:
            if not way["open"]:
                continue
            plan = call("plan_phases", {**person.told, "log": person.before, **way["plan"]})
            phases = plan["phases"]
            assert len(phases[0]["weeks"]) == way["weeks"]
            assert sum(len(phase["weeks"]) for phase in phases) == way["plan_weeks"]
            for name in ("fat_kg", "lean_kg"):
                total = sum(phase["change"][name]["mean"] for phase in phases)
                assert total == pytest.approx(way[name]["mean"], abs=0.05)
            end = phases[-1]["weeks"][-1]["at_end"]["fat_fraction"]["mean"]
            assert end == pytest.approx(way["end_fat_fraction"]["mean"], abs=0.001)


def test_where_neither_sex_fits_one_band_is_gone_by_which_asks_for_less_leanness() -> None:
    """A cut leads no leaner than for women, and nobody between the ceilings of both is held for years: plans and
    decisions held from 17 % body fat on, and seasons gained to 27."""
    person = Person(77, "male", 80.0, 0.21)
    person.told["profile"]["body_fat"]["fat_fraction"] = 0.21
    asked = {"as_of_date": person.on, "goal": "muscle", "log": person.before, "phase_history": []}
    found = {}
    for sex in ("male", "female", "unspecified"):
        who = {**person.told, "profile": {**person.told["profile"], "sex": sex}}
        found[sex] = call("decide_phase", {**who, **asked})
        plan = call("plan_phases", {**who, "state": found[sex]["state"], **found[sex]["recommended"]["plan"]})
        assert plan["feasible"]
        assert found[sex]["recommended"]["kind"] in {phase["kind"] for phase in plan["phases"]}
    target = {sex: answer["leanness"]["target_fat_fraction"] for sex, answer in found.items()}
    assert target["unspecified"] == max(target["male"], target["female"])
    assert found["male"]["recommended"]["kind"] in ("mini_cut", "cut")
    assert found["female"]["recommended"]["kind"] == found["unspecified"]["recommended"]["kind"] == "gain"
    who = {**person.told, "profile": {**person.told["profile"], "sex": "unspecified"}}
    slow = {"kind": "ready_made", "name": "slow_gain_no_cut"}
    season = {"start_date": person.on, "horizon_weeks": 104, "strategy": slow, "log": person.before}
    first = call("plan_season", {**who, **season})["plan"]["phases"][0]["kind"]
    gain = call(
        "plan_phases", {**who, "start_date": person.on, "phase": {"kind": "gain", "weeks": 4}, "log": person.before}
    )
    assert first == gain["phases"][0]["kind"] == "gain"


def test_a_season_begins_as_the_decision_does_or_says_what_it_asks() -> None:
    """The same body, from one state: the same deficits and ceilings, and what differs is said."""
    alike = 0
    for person in people(8, 4_700):
        asked = {**person.told, "as_of_date": person.on, "log": person.before, "phase_history": []}
        decision = call("decide_phase", asked)
        wanted = decision["recommended"]
        plan = call("plan_phases", {**person.told, "state": decision["state"], **wanted["plan"]})
        question = {
            **person.told,
            "state": plan["state"],
            "start_date": person.on,
            "horizon_weeks": 26,
            "cut_history": {"cuts_last_12_months": 0},
            "strategy": {"kind": "ready_made", "name": "slow_gain_rare_mini_cuts"},
        }
        season = call("plan_season", question)
        assert season["state"]["fat_kg"] == plan["state"]["fat_kg"]
        assert season["start"]["band_upper_fat_fraction"] == decision["leanness"]["band_upper_fat_fraction"]
        assert "SEASON_BESIDE_DECISION" in {reason["code"] for reason in season["plan"]["reasons"]}
        first = season["plan"]["phases"][0]
        if first["kind"] == "mini_cut" and wanted["kind"] == "mini_cut":
            assert season["plan"]["strategy"]["deficit_kcal"] == pytest.approx(plan["deficit_kcal"], abs=60.0)
            alike += 1
    assert alike >= 2


def test_an_open_question_is_not_asked_anew_every_week() -> None:
    """Of people who eat more than they log and answer nothing the verdict stands, and the day to wait for stays."""
    stood = 0
    for person in people(8, 6_000, over_kcal=400.0):
        weeks = followed(person, planned(person, {"kind": "cut", "weeks": 12}))
        asked = [one.review["question"] for one in weeks if one.review["question"] is not None]
        days = sorted({date.fromisoformat(question["asked_date"]) for question in asked})
        assert all((then - one).days >= 28 for one, then in pairwise(days))
        assert len({question["until_date"] for question in asked}) == len(days)
        for week in weeks[:-1]:
            question, on = week.review["question"], week.review["as_of_date"]
            if question is not None:
                assert question["until_date"] >= on
                assert ("QUESTION_AGAIN" in week.codes) is (question["asked_count"] > 1)
            elif week.review["verdict"] == "contradicted" and days and on >= str(days[0]):
                stood += 1
                assert week.review["attention"]["action"]["code"] == "ATTENTION_DO_CHASE"
                assert week.review["attention"]["reason"]["code"] == "ATTENTION_CONTRADICTED"
    assert stood > 0


def daily_verdicts(person: Person, *, is_told_before: bool) -> list[str]:
    """The verdicts of daily calls in the third to sixth week of a gain; what was told before is handed on, or not."""
    plan = planned(person, {"kind": "gain", "weeks": 12})
    state, told_kcal = plan["state"], plan["phases"][0]["weeks"][0]["intake_kcal"]
    found = []
    for _ in range(40):
        asked = {**person.told, "state": state, "log": person.live(1, told_kcal), "as_of_date": person.on}
        review = call("review_phase", asked)
        state = review["state"] if is_told_before else {**review["state"], "attention": None}
        found.append(review["verdict"])
        if not review["weeks"]:
            break
        told_kcal = review["weeks"][0]["intake_kcal"]
    return found[14:]


def test_a_verdict_seldom_changes_from_one_day_to_the_next() -> None:
    """With the last one handed on it stays while its own bounds, which are wider, hold; the first is named no later."""

    def changes(verdicts: list[str]) -> int:
        return sum(one != then for one, then in pairwise(verdicts))

    with_it = [daily_verdicts(person, is_told_before=True) for person in people(12, 5_200, lean=True)]
    without = [daily_verdicts(person, is_told_before=False) for person in people(12, 5_200, lean=True)]
    assert sum(map(changes, with_it)) <= 0.75 * sum(map(changes, without))
    for told, alone in zip(with_it, without, strict=True):
        off = [next((i for i, one in enumerate(each) if one != "within_interval"), None) for each in (told, alone)]
        assert off[0] == off[1]


def test_in_pregnancy_no_hold_tells_less_than_the_one_before() -> None:
    """Two holds of ten weeks in which 0.4 kg a week grow that no log of food explains, from what was known before."""
    for person in people(6, 6_400):
        person.told["profile"]["sex"] = "female"
        state = planned(person, {"kind": "maintenance", "weeks": 4})["state"]
        person.told["screening"] = {**CLEAR, "is_pregnant": True}
        holds: list[list[float]] = []
        expected = []
        for _ in range(2):
            body = {
                **person.told,
                "state": state,
                "start_date": person.on,
                "phase": {"kind": "maintenance", "weeks": 10},
            }
            plan = call("plan_phases", body)
            state = plan["state"]
            holds.append([plan["phases"][0]["weeks"][0]["intake_kcal"]])
            for _ in range(9):
                log = person.live(7, holds[-1][-1])
                person.lean_kg += 0.4
                review = call("review_phase", {**person.told, "state": state, "log": log, "as_of_date": person.on})
                state = review["state"]
                holds[-1].append(review["weeks"][0]["intake_kcal"])
                assert review["verdict"] in ("too_early", "within_interval")
                assert review["correction_kcal"] >= 0.0
                assert review["probabilities"]["faster"] == 0.0
                assert review["eaten"]["implied_difference_kcal"] is None
                expected += [
                    one["params"] for one in review["reasons"] if one["code"] == "REVIEW_EXPECTED_IN_PREGNANCY"
                ]
        # To the 10 kcal that a plan is told in; nor is gain taken for more and more maintenance.
        assert min(holds[1]) >= min(holds[0]) - 10.0, holds
        assert max(holds[1]) <= 1.1 * max(holds[0]), holds
        assert len(expected) >= 10
        assert all(0.0 < each["expected_kg"] <= 0.5 * 10 for each in expected)
