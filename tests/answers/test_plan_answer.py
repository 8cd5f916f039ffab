"""A plan asked for without any web: what cannot stand together, what an answer carries, and its intervals."""

from datetime import date, timedelta
from typing import Any

import pytest
from msgspec.structs import replace
from plan_people import CLEAR, MAN, START, WOMAN, forget_the_floor_of_holds, person
from steelyard import answers
from steelyard.science.body import ALL_SOURCES, UncertaintySource
from steelyard.science.log import IntakeDay, Log, Weighing
from steelyard.science.member import Told
from steelyard.science.numbers import Estimate
from steelyard.science.person import Person, Sex
from steelyard.science.phase import DeficitAim, DeficitKind, GainAim, History, HoldAim, ReturnAim
from steelyard.science.rails import Refused
from steelyard.science.register import Contradiction, OutOfDomain

THEN = ReturnAim(gain_weeks=2)
KNOWN = Estimate(2700.0, 100.0)


def ask(aim: DeficitAim | GainAim | HoldAim, who: Person = MAN, **others: Any) -> answers.PlanAsked:
    return answers.PlanAsked(**{"told": Told(who, CLEAR), "start": START, "aim": aim, "then": THEN, **others})


@pytest.mark.parametrize(
    ("asked", "code", "name"),
    [
        (ask(HoldAim(weeks=4), pause_weeks=1), "PAUSE_OF_HOLD", "pause"),
        (ask(GainAim(target_weight_kg=80.0)), "TARGET_ON_WRONG_SIDE", "phase.target_weight_kg"),
        (ask(DeficitAim(target_weight_kg=80.0)), "TARGET_ON_WRONG_SIDE", "phase.target_weight_kg"),
        (ask(DeficitAim(target_fat_fraction=0.15)), "TARGET_ON_WRONG_SIDE", "phase.target_fat_fraction"),
        (ask(DeficitAim(fat_loss_kg=1.0, target_weight_kg=79.0)), "SEVERAL_GOALS", "phase.target_weight_kg"),
        (ask(DeficitAim(weeks=4), event=START + timedelta(days=90)), "SEVERAL_TIMES", "phase.event_date"),
        (ask(DeficitAim(fat_loss_kg=1.0, weeks=4, deficit_kcal=400.0)), "PHASE_OVERDETERMINED", "phase.deficit_kcal"),
        (ask(DeficitAim(kind=DeficitKind.CUT, break_weeks=2)), "BREAKS_WITHOUT_INTERVAL", "phase.break_weeks"),
        (ask(DeficitAim(weeks=2, easing_in_weeks=2)), "EASING_FILLS_PHASE", "phase.easing_in_weeks"),
        (ask(DeficitAim(weeks_done=5, easing_in_weeks=1)), "EASING_FILLS_PHASE", "phase.easing_in_weeks"),
        (ask(DeficitAim(weeks=1)), "TOO_SHORT_FOR_KIND", "phase.weeks"),
        (ask(DeficitAim(weeks=6, weeks_done=1)), "TOO_LONG_FOR_KIND", "phase.weeks"),
        (ask(DeficitAim(), event=START), "EVENT_BEFORE_START", "phase.event_date"),
        (ask(DeficitAim(), event=START + timedelta(days=20)), "EVENT_TOO_SOON", "phase.event_date"),
        (ask(DeficitAim(fat_loss_kg=12.0)), "GOAL_BEYOND_BODY", "phase.fat_loss_kg"),
    ],
)  # fmt: skip
def test_what_cannot_stand_together_is_named(asked: answers.PlanAsked, code: str, name: str) -> None:
    with pytest.raises(Contradiction) as raised:
        answers.plan_phases(asked)
    assert (raised.value.code, raised.value.field) == (code, name)


def test_the_last_week_and_the_last_event_that_stand() -> None:
    """The neighbours of what is refused: the checks are no stricter than they say."""
    assert answers.plan_phases(ask(DeficitAim(weeks=2, easing_in_weeks=1))).value.phases
    # A mini-cut of two weeks and the week that follows it, to the day.
    found = answers.plan_phases(ask(DeficitAim(), event=START + timedelta(days=21))).value
    assert [len(planned.weeks) for planned in found.phases] == [2, 1, 2]
    for weeks, is_open in ((157, True), (158, False)):
        asked = ask(DeficitAim(fat_loss_kg=1.0), event=START + timedelta(weeks=weeks))
        if is_open:
            assert answers.plan_phases(asked).value.phases
        else:
            with pytest.raises(OutOfDomain) as raised:
                answers.plan_phases(asked)
            assert (raised.value.code, raised.value.field) == ("EVENT_TOO_FAR", "phase.event_date")


def test_a_deficit_held_at_what_an_unmeasured_body_may_have_says_so_once() -> None:
    unmeasured = Told(replace(MAN, body_fat=None), CLEAR)
    history = History(cuts_last_12_months=0)
    asked = ask(DeficitAim(weeks=4, deficit_kcal=900.0), told=unmeasured, history=history)
    said = [(each.action, each.message.code) for each in answers.plan_phases(asked).actions]
    assert [each for each in said if each[1] == "MEASURE_FIRST"] == [("capped", "MEASURE_FIRST")]
    # One that nothing holds is warned.
    asked = ask(DeficitAim(weeks=4, deficit_kcal=400.0), told=unmeasured, history=history)
    assert "warned" in [each.action for each in answers.plan_phases(asked).actions if each.id == "body_fat"]


def test_days_that_cannot_be_counted_from_are_named() -> None:
    log = Log([Weighing(date(1999, 12, 31).toordinal(), 80.0)])
    odd = Told(MAN, CLEAR, log=log)
    for asked, name in (
        (ask(HoldAim(weeks=2), start=date(1999, 12, 31)), "start_date"),
        (ask(DeficitAim(), event=date(2101, 1, 1)), "phase.event_date"),
        (ask(HoldAim(weeks=2), told=odd), "log.weights[0].date"),
    ):
        with pytest.raises(OutOfDomain) as raised:
            answers.plan_phases(asked)
        assert (raised.value.code, raised.value.field) == ("DATE_OUT_OF_RANGE", name)
    # Nothing is read from a log where maintenance is known.
    known = odd._replace(maintenance=Estimate(2600.0, 100.0))
    assert answers.plan_phases(ask(HoldAim(weeks=2), told=known)).value.maintenance.mean == 2600.0


@pytest.mark.parametrize("aim", [GainAim(weeks=4), HoldAim(weeks=4)])
def test_lower_days_are_days_in_a_deficit(aim: GainAim | HoldAim) -> None:
    minor = Told(replace(MAN, age_years=17), CLEAR)
    assert answers.plan_phases(ask(aim, told=minor)).value.phases
    with pytest.raises(Refused) as refused:
        answers.plan_phases(ask(aim, told=minor, split=answers.SplitAsked(3, 0.2)))
    assert refused.value.action.id == "age"


def test_the_days_of_a_split_come_as_often_as_asked_and_keep_the_week() -> None:
    found = answers.plan_phases(ask(DeficitAim(), split=answers.SplitAsked(3, 0.2))).value
    for planned in found.phases:
        for week in planned.weeks:
            assert week.split is not None
            assert week.split.higher_days == 3
            total = 3 * week.split.higher.intake_kcal + 4 * week.split.lower.intake_kcal
            assert total == 7 * week.week.intake.intake_kcal


def test_simple_rules_count_the_weeks_in_a_deficit() -> None:
    """Six weeks at 500 kcal/d and 7,700 kcal a kilogram; 0.45-0.9 kg a week as commonly quoted."""
    found = answers.plan_phases(ask(DeficitAim(weeks=6, deficit_kcal=500.0))).value
    assert found.rules is not None
    assert found.deficit_kcal == 500.0
    assert found.rules.static_loss_kg == pytest.approx(500 * 42 / 7700)
    assert found.rules.common_loss_kg == pytest.approx((2.7, 5.4))
    states = [planned.at_end for planned in found.phases[0].weeks]
    assert found.rules.forecast_first_drop_kg == pytest.approx(80.0 - states[0].weight_kg, abs=1e-6)
    assert answers.plan_phases(ask(HoldAim(weeks=2))).value.rules is None


@pytest.mark.parametrize("who", [MAN, WOMAN])
def test_a_weighing_has_its_noise_twice(who: Person) -> None:
    """That of the day, and that of the weighing that the plan starts from.

    1.18 (at home) of 0.55 % of body mass, of 0.3 kg at least (Robinson and Watson 1965; Turicchi et al. 2020), so that
    the plan is not compared with itself.
    """
    exact = ask(DeficitAim(), who, sources=ALL_SOURCES - {UncertaintySource.DAILY_NOISE})
    quiet, noisy = answers.plan_phases(exact).value, answers.plan_phases(ask(DeficitAim(), who)).value
    for phase, other in zip(noisy.phases, quiet.phases, strict=True):
        assert phase.change == other.change
        for week, same in zip(phase.weeks, other.weeks, strict=True):
            at, calm = week.at_end, same.at_end
            noise = 1.18 * max(0.0055 * at.weight_kg, 0.3)
            assert at.weighing_sd_kg**2 - calm.weighing_sd_kg**2 == pytest.approx(2 * noise**2)
            assert at._replace(weighing_sd_kg=calm.weighing_sd_kg, people=calm.people) == calm
            assert calm.weighing_sd_kg == calm.spread.weight_kg
            assert at.people is not None
            assert calm.people is not None
            assert at.people.weighing_sd_kg**2 - calm.people.weighing_sd_kg**2 == pytest.approx(2 * noise**2)
            assert at.people[:2] == calm.people[:2]


# --- the gate ---------------------------------------------------------------------------------------------------------


def test_a_planner_that_forgets_the_rails_is_stopped_by_the_gate(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is planned passes the gate whoever planned it: without that call this plan would be told."""
    monkeypatch.setattr("steelyard.science.phase.deficit.DeficitPhase.cap", lambda *_, **__: None)
    wild = answers.plan_phases(ask(DeficitAim(weeks=4, deficit_kcal=1900.0)))
    assert wild.value.phases == []
    assert wild.value.nearest is not None
    # Nothing is given instead, and nothing says that it is.
    assert {"INFEASIBLE_NOTHING", "REFUSED_DEFICIT"} <= {reason.code for reason in wild.reasons}
    assert "refused" in {action.action for action in wild.actions}


def test_a_hold_that_forgets_its_floor_is_stopped_by_the_gate(monkeypatch: pytest.MonkeyPatch) -> None:
    forget_the_floor_of_holds(monkeypatch)
    held = answers.plan_phases(ask(HoldAim(weeks=4)))
    assert held.value.phases == []
    assert "REFUSED_HELD" in {reason.code for reason in held.reasons}


# Needs a little over the least of 1500 kcal, and ate so little of late that less is spent for some weeks still.
LEAVING_A_DIET = Told(
    person(Sex.UNSPECIFIED, 52.0, 158.0, 0.26), CLEAR, Estimate(1520.0, 100.0), current_intake_kcal=950.0
)


@pytest.mark.parametrize("aim", [HoldAim(weeks=4), GainAim(weeks=1, surplus_kcal=50.0, fat_ceiling=0.4)])
def test_who_leaves_a_diet_is_told_the_least_of_what_they_need_without_it(aim: HoldAim | GainAim) -> None:
    answer = answers.plan_phases(ask(aim, told=LEAVING_A_DIET))
    intakes = [planned.week.intake.intake_kcal for planned in answer.value.phases[0].weeks]
    assert intakes[0] == 1500
    assert intakes == sorted(intakes)
    assert "RAISED_TO_FLOOR" in {action.message.code for action in answer.actions}


def test_phases_that_did_not_pass_the_gate_are_no_answer() -> None:
    told = answers.plan_phases(ask(HoldAim(weeks=4))).value
    assert told.phases
    with pytest.raises(AttributeError):
        _ = told._replace(told=told.phases).phases  # type: ignore[arg-type]


@pytest.mark.parametrize("share", [0.6, 1.3])
def test_what_is_carried_on_the_first_day_is_no_tissue_to_the_gate(share: float) -> None:
    """Somebody who eats little or much now gets the gain of somebody who eats at maintenance."""
    known = Estimate(2700.0, 120.0)
    told = Told(MAN, CLEAR, known, current_intake_kcal=share * known.mean)
    assert [planned.phase.kind for planned in answers.plan_phases(ask(GainAim(weeks=12), told=told)).value.phases] == [
        "gain"
    ]


def test_what_people_eat_of_a_deficit_widens_what_is_shown_and_moves_nothing_that_is_told() -> None:
    aim = DeficitAim(kind=DeficitKind.CUT, weeks=12, deficit_kcal=450.0)
    shown = answers.plan_phases(ask(aim))
    alone = answers.plan_phases(ask(aim, sources=ALL_SOURCES - {UncertaintySource.ADHERENCE}))
    told, of_plan = shown.value.phases[0], alone.value.phases[0]
    assert [week.week for week in told.weeks] == [week.week for week in of_plan.weeks]
    assert [action.id for action in shown.actions] == [action.id for action in alone.actions]
    fat, exactly = told.change.fat_kg, of_plan.change.fat_kg
    assert fat.mean == exactly.mean
    assert fat.upper - exactly.upper > 3.0 * abs(fat.lower - exactly.lower)
    # 85 % of six weeks and 65 % of six are three quarters; (84 - 0.85 x 42) / 0.65 + 42 days are 17 weeks.
    (said,) = (reason for reason in told.phase.reasons if reason.code == "PLANNED_AS_EATEN")
    assert said.params == pytest.approx({"percent": 75.0, "weeks": 12, "usual_weeks": 17})


def test_a_deficit_that_is_eaten_already_is_not_said_to_be_slipped_from() -> None:
    days = range(START.toordinal() - 28, START.toordinal())
    weights = [Weighing(day, 80.0) for day in days]
    aim = DeficitAim(kind=DeficitKind.CUT, weeks=12, deficit_kcal=450.0)

    def upper_kg(kcal: float) -> tuple[float, bool]:
        told = Told(MAN, CLEAR, log=Log(weights, [IntakeDay(day, kcal) for day in days]), maintenance=KNOWN)
        phase = answers.plan_phases(ask(aim, told=told)).value.phases[0]
        is_said = "PLANNED_AS_EATEN" in {reason.code for reason in phase.phase.reasons}
        return phase.change.fat_kg.upper - phase.change.fat_kg.mean, is_said

    (eaten, eaten_said), (fresh, fresh_said) = upper_kg(2200.0), upper_kg(2700.0)
    assert not eaten_said
    assert fresh_said
    assert eaten < fresh - 0.3
