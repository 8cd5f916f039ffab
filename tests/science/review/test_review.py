"""Reviews of simulated members: verdicts, false alarms, corrections that bring them back, decisions, rails."""

from datetime import date
from functools import cache
from types import SimpleNamespace
from typing import Any, NamedTuple

import msgspec
import pytest
from review_people import AS_PLANNED, CLEAR, START_DAY, Habits, Member
from steelyard.http.languages import english
from steelyard.science.log import reader as log_reader
from steelyard.science.log.entries import IntakeDay, Log, LogError, Weighing
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.person.screening import Screening
from steelyard.science.phase import FollowedPhase, IntakeChange, PhaseKind, Verdict, corrected_week
from steelyard.science.rails.subject import Refused
from steelyard.science.register.errors import OutOfDomain
from steelyard.science.review.advice import advise
from steelyard.science.review.attention import attention_of
from steelyard.science.review.correction import down, up
from steelyard.science.review.due import Due, read_on
from steelyard.science.review.hold_or_gain_advice import HoldOrGainAdvice
from steelyard.science.review.next_step import Advice, NextStep
from steelyard.science.review.reading import change_over, read_phase
from steelyard.science.review.review import Review, review_phase
from steelyard.science.review.verdict import Probabilities, contradicts, judge, more_days_needed, probabilities

PEOPLE = 240
DAYS = (7, 13, 14, 21, 28)
OVEREATER = Habits(logged_beyond_kcal=300.0)
UNDER_REPORTER = Habits(unlogged_kcal=300.0)
UNDER_EATER = Habits(logged_beyond_kcal=-300.0)
JUMP = Habits(jump_kg=1.5)
ROOMY_DEFICIT_KCAL = 300.0  # leaves a correction room under the rails


def review(
    member: Member, phase: FollowedPhase, *, is_finished: bool = False, screening: Screening | None = CLEAR
) -> Review:
    return review_phase(member.told(screening), phase, member.log, member.day, is_finished=is_finished)


def codes(found: Review) -> set[str]:
    return {reason.code for reason in found.reasons}


def is_capped(found: Review) -> bool:
    """Whether a rail moved the intake, and did not only warn."""
    return any(action.action == "capped" for action in found.actions)


class Case(NamedTuple):
    found: Review
    is_truly_within: bool
    tissue_error_kg: float


@cache
def cases(habits: Habits) -> dict[int, list[Case]]:
    """Reviews of ``PEOPLE`` members of a six-week cut, by day."""
    found: dict[int, list[Case]] = {day: [] for day in DAYS}
    for seed in range(PEOPLE):
        member = Member(seed)
        phase = member.plan(6)
        gone = 0
        for day in DAYS:
            member.follow(phase, day - gone, habits)
            gone = day
            it = review(member, phase)
            planned, truth = it.planned_tissue, member.tissue_change_kg
            found[day].append(Case(it, planned.lower <= truth <= planned.upper, it.tissue.mean - truth))
    return found


def share(habits: Habits, day: int, verdict: Verdict) -> float:
    return sum(case.found.verdict is verdict for case in cases(habits)[day]) / PEOPLE


# --- verdicts ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("day", [21, 28])
def test_who_keeps_to_the_plan_is_within_the_interval(day: int) -> None:
    """As planned is within a third of the way: some who keep to the plan truly are not, as the plan erred on them."""
    within = share(AS_PLANNED, day, Verdict.WITHIN_INTERVAL)
    truly = [case.found.verdict is Verdict.WITHIN_INTERVAL for case in cases(AS_PLANNED)[day] if case.is_truly_within]
    print(f"\nas planned, day {day}: within {within:.0%}; of {len(truly)} truly within {sum(truly) / len(truly):.0%}")
    assert within >= 0.75
    assert sum(truly) >= 0.85 * len(truly)


def test_who_logs_too_much_is_told_so_and_found_slower() -> None:
    # Of these members 60 to 65 % truly lie outside the plan's interval: 300 kcal/d against an SD of the plan of
    # about 0.5 kg at day 28.
    told = sum("REVIEW_ATE_MORE" in codes(case.found) for case in cases(OVEREATER)[21]) / PEOPLE
    slower = {day: share(OVEREATER, day, Verdict.SLOWER) for day in (21, 28)}
    print(f"\n300 kcal/d too much, logged: told {told:.0%}, slower {slower}")
    assert told >= 0.95
    assert slower[21] >= 0.50
    assert slower[28] >= 0.55
    assert share(OVEREATER, 28, Verdict.FASTER) <= 0.02


def test_who_leaves_food_out_of_the_log_is_named_as_the_weight_speaks() -> None:
    """The log says that the plan is kept and only the scale says otherwise, through noise and water."""
    named = {
        day: share(UNDER_REPORTER, day, Verdict.SLOWER) + share(UNDER_REPORTER, day, Verdict.CONTRADICTED)
        for day in (14, 21, 28)
    }
    print(f"\n300 kcal/d unlogged: named {named}")
    assert named[28] >= 0.55
    assert named[14] <= named[28]
    assert share(UNDER_REPORTER, 28, Verdict.FASTER) <= 0.05
    asked = [
        case.found.question is not None
        for case in cases(UNDER_REPORTER)[28]
        if case.found.verdict in (Verdict.SLOWER, Verdict.CONTRADICTED) and "REVIEW_ATE_MORE" not in codes(case.found)
    ]
    assert sum(asked) >= 0.9 * len(asked)


def test_a_little_logged_over_the_plan_does_not_hush_the_question() -> None:
    """100 kcal/d more in the log, 600 on the plate: the scale still says what the log does not."""
    found = [case.found for case in cases(Habits(logged_beyond_kcal=100.0, unlogged_kcal=500.0))[28]]
    off = [it for it in found if it.verdict in (Verdict.SLOWER, Verdict.CONTRADICTED)]
    # Who gained for certain is offered an end, of which nothing is asked any more.
    off = [it for it in off if "REVIEW_GETS_NOWHERE" not in codes(it)]
    said_more = [it for it in off if "REVIEW_ATE_MORE" in codes(it)]
    assert len(said_more) >= 0.3 * PEOPLE
    assert sum(it.question is not None for it in said_more) >= 0.6 * len(said_more)
    # What the log explains by itself is asked of nobody.
    logged = [case.found for case in cases(OVEREATER)[28] if case.found.verdict is Verdict.SLOWER]
    assert sum(it.question is not None for it in logged) <= 0.1 * len(logged)


def test_who_eats_too_little_is_found_faster() -> None:
    assert share(UNDER_EATER, 28, Verdict.FASTER) >= 0.50
    assert share(UNDER_EATER, 28, Verdict.SLOWER) <= 0.02


@pytest.mark.parametrize("habits", [AS_PLANNED, OVEREATER, UNDER_EATER, JUMP])
@pytest.mark.parametrize("day", [7, 13])
def test_early_days_are_too_early(habits: Habits, day: int) -> None:
    for case in cases(habits)[day]:
        assert case.found.verdict is Verdict.TOO_EARLY
        assert case.found.more_days_needed >= 14 - day
        assert case.found.advice.correction_kcal >= 0  # only a rail moves it, and rails only raise
    ended = sum(case.found.advice.decision is NextStep.END for case in cases(habits)[day]) / PEOPLE
    assert ended <= 0.02  # what a week tells may put a plan past a rail by more than one step
    moved = sum(case.found.advice.correction_kcal > 0 for case in cases(habits)[day]) / PEOPLE
    assert moved <= 0.15


@pytest.mark.parametrize(("habits", "most"), [(AS_PLANNED, 0.05), (JUMP, 0.14)])
def test_false_corrections_are_rare(habits: Habits, most: float) -> None:
    """The plan is kept and tissue truly lies within its interval, yet the intake is changed (rails included).

    A rise of 1.5 kg overnight that stays and whose cause is not told is no longer granted as water for good: it is what
    eating that is not logged looks like; but where water is in play the review asks before it corrects.
    """
    for day in (21, 28):
        wrong = sum(c.is_truly_within and c.found.advice.correction_kcal != 0 for c in cases(habits)[day]) / PEOPLE
        print(f"\njump of {habits.jump_kg} kg, day {day}: {wrong:.0%} false corrections")
        assert wrong <= most


def test_tissue_is_read_with_honest_errors() -> None:
    """These bodies carry 1.1 kg per 1,000 kcal/d; the reader expects bodies that carry 0.9 to 2.1."""
    errors = [case.tissue_error_kg for case in cases(AS_PLANNED)[28]]
    sds = [case.found.tissue.sd for case in cases(AS_PLANNED)[28]]
    mean = sum(errors) / PEOPLE
    assert abs(mean) <= 0.1
    covered = sum(abs(e) <= 1.2816 * sd for e, sd in zip(errors, sds, strict=True)) / PEOPLE
    assert 0.72 <= covered <= 0.96


def test_probabilities_add_up_and_know_the_direction() -> None:
    planned = Estimate(-2.0, 0.4)
    for kind, observed, expected in (
        (PhaseKind.CUT, Estimate(-4.0, 0.2), "faster"),
        (PhaseKind.CUT, Estimate(0.0, 0.2), "slower"),
        (PhaseKind.GAIN, Estimate(0.0, 0.2), "faster"),
        (PhaseKind.MAINTENANCE, Estimate(-4.0, 0.2), "slower"),
    ):
        likely = probabilities(kind, planned, observed)
        assert likely.within_interval + likely.faster + likely.slower == pytest.approx(1.0)
        assert getattr(likely, expected) > 0.99
        assert judge(kind, likely).value == expected
    assert judge(PhaseKind.CUT, Probabilities(0.4, 0.45, 0.15)) is Verdict.WITHIN_INTERVAL
    assert judge(PhaseKind.CUT, Probabilities(0.25, 0.7, 0.05)) is Verdict.WITHIN_INTERVAL
    assert judge(PhaseKind.GAIN, Probabilities(0.25, 0.7, 0.05)) is Verdict.FASTER
    assert judge(PhaseKind.CUT, Probabilities(0.25, 0.05, 0.7)) is Verdict.SLOWER


LAGS = Probabilities(0.4, 0.05, 0.55)
STAYS, GOES = Estimate(0.6, 0.4), Estimate(-0.3, 0.4)


def test_scale_tissue_and_water_together_contradict_a_plan() -> None:
    behind = Estimate(-0.9, 0.3)
    assert contradicts(-2.0, behind, LAGS, STAYS)
    assert contradicts(-2.0, Estimate(0.5, 0.3), LAGS, STAYS)
    # Each of them on its way leaves the other two without a case.
    assert not contradicts(-2.0, Estimate(-2.6, 0.3), LAGS, STAYS)
    assert not contradicts(-2.0, behind, Probabilities(0.9, 0.08, 0.02), STAYS)
    assert not contradicts(-2.0, behind, LAGS, GOES)
    # Water alone moves the scale: that is no food.
    assert not contradicts(-2.0, Estimate(-1.8, 0.3), Probabilities(0.88, 0.07, 0.05), Estimate(0.9, 0.4))


def test_a_gain_is_contradicted_the_other_way_and_a_small_plan_by_nothing() -> None:
    assert contradicts(2.0, Estimate(0.9, 0.3), LAGS, Estimate(-0.6, 0.4))
    assert not contradicts(2.0, Estimate(0.9, 0.3), LAGS, STAYS)
    assert not contradicts(2.0, Estimate(2.6, 0.3), LAGS, Estimate(-0.6, 0.4))
    assert not contradicts(-0.7, Estimate(0.5, 0.3), LAGS, STAYS)


def test_maintenance_is_told_against_the_one_that_was_planned_with() -> None:
    """A cut of six weeks takes some off (Hall 2011: tissue and adaptation), and its errors join."""
    member = Member(9)
    phase = member.plan(6)
    member.follow(phase, 40, AS_PLANNED)
    found = review(member, phase)
    told, planned, change = found.maintenance_told, phase.maintenance, found.maintenance_change
    assert planned.mean + change.mean == pytest.approx(told.mean)
    assert change.sd**2 == pytest.approx(told.sd**2 + planned.sd**2)
    assert -400.0 < change.mean < 0.0


@pytest.mark.parametrize("kind", [PhaseKind.CUT, PhaseKind.GAIN])
@pytest.mark.parametrize("told", [Verdict.FASTER, Verdict.SLOWER])
def test_what_was_told_needs_less_to_be_told_again_and_nothing_else_does(kind: PhaseKind, told: Verdict) -> None:
    bound = 0.8 if kind is PhaseKind.CUT and told is Verdict.FASTER else 0.65
    for share, today, stays in ((bound + 0.01, told, told), (bound - 0.14, None, told), (bound - 0.16, None, None)):
        rest = 1.0 - share
        likely = Probabilities(rest, share, 0.0) if told is Verdict.FASTER else Probabilities(rest, 0.0, share)
        assert judge(kind, likely) is (today or Verdict.WITHIN_INTERVAL)
        assert judge(kind, likely, told=told) is (stays or Verdict.WITHIN_INTERVAL)
        assert judge(kind, likely, told=Verdict.CONTRADICTED) is judge(kind, likely)


def test_against_the_log_slower_has_to_be_clearer() -> None:
    likely = Probabilities(0.25, 0.05, 0.7)
    assert judge(PhaseKind.CUT, likely, is_logged_as_planned=True) is Verdict.WITHIN_INTERVAL
    assert judge(PhaseKind.CUT, Probabilities(0.15, 0.05, 0.8), is_logged_as_planned=True) is Verdict.SLOWER
    assert judge(PhaseKind.GAIN, likely, is_logged_as_planned=True) is Verdict.SLOWER


def test_more_days_needed() -> None:
    clear = Estimate(-2.0, 0.2)
    assert more_days_needed(14, 7, Estimate(-2.0, 0.4), clear) == 0
    assert more_days_needed(10, 10, Estimate(-2.0, 0.4), clear) == 4
    assert more_days_needed(20, 3, Estimate(-2.0, 0.4), clear) == 4
    # The half interval of 0.256 kg grows with the days; an error of 0.4 kg stays.
    assert more_days_needed(20, 20, Estimate(-2.0, 0.2), Estimate(-2.0, 0.4)) == 12
    assert more_days_needed(0, 1, Estimate(0.0, 0.0), Estimate(0.0, 0.0)) == 14


def test_any_window_agrees_with_the_trend() -> None:
    member = Member(3)
    member.follow(member.plan(4), 20, AS_PLANNED)
    trend, _ = log_reader.trend_of_log(member.person, member.assessed, member.log, member.day)
    for change in trend.changes:
        found = change_over(trend, change.days)
        assert (found.weight, found.tissue, found.carried) == (change.weight, change.tissue, change.carried)
        split = trend.smoothed.tissue_kg
        assert found.tissue.mean == pytest.approx(split[-1] - split[-1 - change.days], abs=1e-9)
    between = change_over(trend, 20)
    assert between.weight.mean == pytest.approx(between.tissue.mean + between.carried.mean, abs=1e-9)
    assert change_over(trend, 14).tissue.sd <= between.tissue.sd <= change_over(trend, 28).tissue.sd
    assert change_over(trend, 0).tissue == Estimate(0.0, 0.0)


# --- corrections -------------------------------------------------------------------------------------------------


# Of food that never was logged the weight has told only a part by day 21.
@pytest.mark.parametrize(
    ("habits", "most_bias_kg"), [(UNDER_REPORTER, 0.5), (Habits(logged_beyond_kcal=100.0, unlogged_kcal=300.0), 0.5)]
)
def test_a_correction_brings_the_member_back_to_target(habits: Habits, most_bias_kg: float) -> None:
    """From day 21 on the corrected plan is eaten (as logged, what was unlogged stays unlogged) until day 42."""
    with_it, without = [], []
    for seed in range(120):
        member = Member(seed)
        phase = member.plan(6, ROOMY_DEFICIT_KCAL)
        member.follow(phase, 21, habits)
        found = review(member, phase)
        correction = found.advice.correction_kcal
        if found.verdict not in (Verdict.SLOWER, Verdict.FASTER) or not correction or is_capped(found):
            continue  # nothing to correct, or a rail has its say
        then = habits._replace(logged_beyond_kcal=0.0)
        twin = Member(seed)
        twin.follow(twin.plan(6, ROOMY_DEFICIT_KCAL), 21, habits)
        target = expected_fat_change(member, phase, found)
        member.follow(phase, 21, then, float(correction))
        twin.follow(phase, 21, then)
        with_it.append(member.fat_change_kg - target)
        without.append(twin.fat_change_kg - target)
    n = len(with_it)
    rms = [(sum(x * x for x in miss) / n) ** 0.5 for miss in (with_it, without)]
    mean = sum(with_it) / n
    print(f"\n{habits}: {n} corrected, miss {rms[0]:.2f} kg with and {rms[1]:.2f} kg without, mean {mean:+.2f} kg")
    assert n >= 6
    assert rms[0] < rms[1]
    assert abs(mean) <= most_bias_kg


def test_who_logs_more_than_the_plan_is_to_keep_it_before_it_tells_less() -> None:
    """What is logged over a plan explains the lag: nothing is lowered, and kept to from then on it goes its way."""
    stands = 0
    apart = []
    for seed in range(80):
        member = Member(seed)
        phase = member.plan(6, ROOMY_DEFICIT_KCAL)
        member.follow(phase, 28, Habits(logged_beyond_kcal=400.0))
        found = review(member, phase)
        if found.verdict is Verdict.SLOWER and "REVIEW_ATE_MORE" in codes(found):
            lowered = found.advice.correction_kcal < 0
            # Only what was logged clearly falls short of what weight tells is lowered for.
            assert found.implied_difference is not None
            assert found.eaten.difference is not None
            assert not lowered or found.eaten.difference.upper < found.implied_difference.lower
            is_said = "REVIEW_PLAN_STANDS" in codes(found)
            assert is_said is (found.advice.correction_kcal == 0 and found.advice.decision is NextStep.CONTINUE)
            stands += is_said
            if is_said:
                target = expected_fat_change(member, phase, found)
                member.follow(phase, 14, AS_PLANNED)
                apart.append(member.fat_change_kg - target)
        else:
            assert "REVIEW_PLAN_STANDS" not in codes(found)
    mean = sum(apart) / len(apart)
    print(f"\n{stands} of 80 are to keep to the plan; kept to, {mean:+.2f} kg of fat from what was said")
    assert stands >= 20
    assert abs(mean) <= 0.2


def expected_fat_change(member: Member, phase: FollowedPhase, found: Review) -> float:
    """The fat that the phase was to lose, as its own review tells it: what the corrected path ends at."""
    assert found.path is not None
    ahead = float(found.path.states[-1].fat_kg - found.path.states[0].fat_kg)
    return found.fat.mean + ahead


def test_a_correction_is_a_step_of_ten_and_the_smallest() -> None:
    for case in cases(OVEREATER)[21]:
        found = case.found
        assert found.advice.correction_kcal % 10 == 0
        if found.verdict is Verdict.SLOWER:
            assert found.advice.correction_kcal <= 0 or is_capped(found)
        if found.verdict is Verdict.WITHIN_INTERVAL:
            assert found.advice.correction_kcal >= 0
            assert found.advice.correction_kcal == 0 or is_capped(found)
    assert [down(x) for x in (-14.0, -10.0, 14.0, 0.0)] == [-20, -10, 10, 0]
    assert [up(x) for x in (-14.0, -10.0, 14.0, 0.0)] == [-10, -10, 20, 0]


def test_a_corrected_week_keeps_protein_and_the_floor_of_fat() -> None:
    week = Member(1).plan(4).weeks[0]
    assert week.carbohydrate_g is not None

    def fat_g(it: type(week)) -> float:  # type: ignore[valid-type]
        return (it.intake_kcal - 4.0 * it.protein_g - 4.0 * it.carbohydrate_g) / 9.0

    for change in (-300.0, -100.0, 0.0, 100.0, 300.0):
        corrected = corrected_week(week, change)
        assert corrected.intake_kcal == week.intake_kcal + change
        assert corrected.protein_g == week.protein_g
        assert fat_g(corrected) >= fat_g(week) - 1.2  # half of a step of 5 g of carbohydrate


# --- decisions ---------------------------------------------------------------------------------------------------


def test_it_ends_when_the_purpose_is_met() -> None:
    member = Member(3)
    phase = member.plan(6)
    member.follow(phase, 28, AS_PLANNED)
    phase = msgspec.structs.replace(phase, fat_loss_kg=-0.9 * review(member, phase).fat.mean)
    found = review(member, phase)
    assert found.advice.decision is NextStep.END
    assert "REVIEW_PURPOSE_MET" in codes(found)
    assert found.path is None
    assert found.aftermath is not None
    assert found.aftermath.rebound.mean > 0.2


def told_date(found: Review, code: str) -> str:
    (date,) = (str(reason.params["date"]) for reason in found.reasons if reason.code == code)
    return date


def last_day(found: Review) -> str:
    """The last day of the phase, as an answer tells it."""
    return date.fromordinal(found.day + found.advice.days_ahead - 1).isoformat()


def test_who_is_faster_shortens_a_phase_with_fat_to_lose() -> None:
    shortened = 0
    for seed in range(20):
        member = Member(seed)
        phase = member.plan(6)
        expected = review_of_target(member, phase)
        phase = msgspec.structs.replace(phase, fat_loss_kg=expected)
        member.follow(phase, 23, UNDER_EATER)
        found = review(member, phase)
        assert is_capped(found) or found.advice.correction_kcal == 0
        if found.advice.decision is NextStep.SHORTEN:
            shortened += 1
            assert found.advice.days_ahead <= 42 - 23 - 4
            assert told_date(found, "REVIEW_SHORTEN") == last_day(found)
            assert found.path is not None
            assert found.stints[-1].end == found.advice.days_ahead
    assert shortened >= 3


def test_who_is_ahead_of_a_length_may_stop_early_and_is_not_told_to_eat_more() -> None:
    told = 0
    for seed in range(30):
        member = Member(seed)
        phase = member.plan(6)
        member.follow(phase, 28, UNDER_EATER)
        found = review(member, phase)
        assert "REVIEW_PURPOSE_MET" not in codes(found)
        assert is_capped(found) or found.advice.correction_kcal == 0
        told += "REVIEW_MAY_STOP_EARLY" in codes(found)
    assert told >= 10


def review_of_target(member: Member, phase: FollowedPhase) -> float:
    """About the fat that a plan of six weeks loses [kg]."""
    deficit = phase.maintenance.mean - phase.weeks[0].intake_kcal
    return deficit / 0.9 * 42 * 0.85 / 9000.0


def test_who_is_slower_extends_a_cut_before_eating_less() -> None:
    extended = out_of_reach = 0
    for seed in range(30):
        member = Member(seed)
        phase = member.plan(8, deficit_kcal=900.0)
        if phase.weeks[0].intake_kcal >= phase.maintenance.mean:
            continue  # the rails leave this one no deficit
        phase = msgspec.structs.replace(phase, fat_loss_kg=1.1 * review_of_target(member, phase) * 56 / 42)
        member.follow(phase, 35, Habits(logged_beyond_kcal=150.0))
        found = review(member, phase)
        if found.advice.decision is NextStep.EXTEND:
            extended += 1
            assert found.advice.days_ahead > 56 - 35
            assert found.advice.days_ahead <= 56 - 35 + 42
            assert told_date(found, "REVIEW_EXTEND") == last_day(found)
            assert found.advice.correction_kcal >= 0  # a rail may raise it
        out_of_reach += "REVIEW_OUT_OF_REACH" in codes(found)
    assert extended >= 3


def test_a_last_day_is_not_extended_to_itself() -> None:
    """What the readings find due may lie behind a phase on its last day: then nothing is moved."""
    member = Member(3)
    phase = msgspec.structs.replace(member.plan(6), fat_loss_kg=2.0)
    member.follow(phase, 41, Habits())
    read = read_on(member.told(), phase, member.log, member.day)
    due = Due(end_day=member.day - 2)
    found = advise(phase, read.course, read.now, read.promised, Verdict.WITHIN_INTERVAL, False, due)
    assert (found.decision, found.days_ahead) == (NextStep.CONTINUE, 1)
    assert not {"REVIEW_EXTEND", "REVIEW_SHORTEN"} & {reason.code for reason in found.reasons}


def test_a_mini_cut_is_never_extended_past_six_weeks() -> None:
    for seed in range(20):
        member = Member(seed)
        phase = member.plan(5, deficit_kcal=900.0)
        phase = msgspec.structs.replace(phase, fat_loss_kg=2.0 * review_of_target(member, phase))
        member.follow(phase, 28, OVEREATER)
        found = review(member, phase)
        assert 28 + found.advice.days_ahead <= 42
        if found.verdict is Verdict.SLOWER and found.advice.decision is not NextStep.END:
            assert codes(found) & {"REVIEW_EXTEND", "REVIEW_OUT_OF_REACH"}


@pytest.mark.parametrize("is_early", [False, True])
def test_after_the_phase(is_early: bool) -> None:
    member = Member(5)
    phase = member.plan(4)
    member.follow(phase, 24 if is_early else 28, AS_PLANNED)
    if not is_early:
        for _ in range(5):
            member.live(phase.maintenance.mean)
    found = review(member, phase, is_finished=is_early)
    assert found.is_finished
    assert found.days == (24 if is_early else 28)
    assert found.advice.decision is NextStep.END
    assert found.advice.correction_kcal == 0
    assert found.fat.mean + found.lean.mean == pytest.approx(found.tissue.mean)
    assert found.fat.mean < -0.5
    assert found.changes.carried.mean < 0.0
    assert found.aftermath is not None
    carried = [float(s.carried_kg) for s in found.aftermath.path.states]
    assert carried == sorted(carried)
    assert abs(found.aftermath.intake_kcal - found.maintenance.maintenance.mean) < 200.0
    left_out = {note.code: note.params for note in found.notes}
    if not is_early:
        assert left_out["REVIEW_LATER_ENTRIES"]["count"] >= 5


def test_a_cycle_that_begins_after_a_phase_is_left_out_and_not_refused() -> None:
    member = Member(6)
    phase = member.plan(2)
    member.follow(phase, 14, AS_PLANNED)
    member.follow(phase, 7, AS_PLANNED)
    log = msgspec.structs.replace(member.log, cycle_starts=(phase.start_day + 2, phase.end_day + 3))
    found = review_phase(member.told(CLEAR), phase, log, member.day)
    assert found.day == phase.end_day
    assert "REVIEW_LATER_ENTRIES" in {note.code for note in found.notes}


def test_screening_unanswered_is_refused_and_a_new_condition_ends_the_phase() -> None:
    member = Member(6)
    phase = member.plan(6)
    member.follow(phase, 21, AS_PLANNED)
    with pytest.raises(Refused):
        review(member, phase, screening=None)
    pregnant = msgspec.structs.replace(CLEAR, is_pregnant=True)
    found = review(member, phase, screening=pregnant)
    assert found.advice.decision is NextStep.END
    assert [action.action for action in found.actions] == ["refused"]
    assert found.aftermath is not None
    # Nobody expecting is told to eat less, nor that growing means food missing in the log.
    assert not {"REVIEW_ATE_MORE", "REVIEW_ATE_LESS", "REVIEW_NEEDS_LESS"} & codes(found)
    assert not {"TREND_UNDER_LOGGED", "TREND_LOGGING_CHANGED"} & {note.code for note in found.notes}
    # What is over can be told to anyone.
    assert review(member, phase, is_finished=True, screening=None).advice.decision is NextStep.END


def steady(
    kind: PhaseKind, extra_kcal: float, days: int, seed: int = 8, *, is_logged: bool = True
) -> tuple[Member, FollowedPhase]:
    """A hold, or a gain of 120 kcal/d, with something eaten beyond it."""
    member = Member(seed)
    cut = member.plan(8)
    surplus = 120.0 if kind is PhaseKind.GAIN else 0.0
    intake = 10.0 * round((cut.maintenance.mean + surplus) / 10.0)
    week = msgspec.structs.replace(cut.weeks[0], intake_kcal=intake, carbohydrate_g=None)
    phase = msgspec.structs.replace(cut, kind=kind, weeks=(week,) * 10)
    extra = Habits(logged_beyond_kcal=extra_kcal) if is_logged else Habits(unlogged_kcal=extra_kcal)
    member.follow(phase, days, extra)
    return member, phase


@pytest.mark.parametrize("kind", [PhaseKind.GAIN, PhaseKind.MAINTENANCE])
def test_a_gain_or_a_hold_off_its_plan_is_corrected_to_its_rate(kind: PhaseKind) -> None:
    seen: dict[Verdict, list[int]] = {verdict: [] for verdict in Verdict}
    for seed in range(18):
        for extra in (-450.0, 0.0, 450.0):
            member, phase = steady(kind, extra, 35, seed)
            found = review(member, phase)
            if not is_capped(found):
                seen[found.verdict].append(found.advice.correction_kcal)
            # What one step does not bring under the ceiling of a gain ends it, and eating far over it for weeks.
            is_past = bool({"REVIEW_GAIN_PAST_CEILING", "REVIEW_GAIN_OVERRUN"} & set(codes(found)))
            assert found.advice.decision is (NextStep.END if is_past else NextStep.CONTINUE)
            assert extra > 0.0 or not is_past, extra
            if found.verdict is Verdict.FASTER:
                assert extra > 0.0 or found.advice.correction_kcal <= 0
            if found.advice.correction_kcal < 0:
                # Nobody is told to eat less than maintenance, but for rounding.
                told = phase.weeks[0].intake_kcal + found.advice.correction_kcal
                assert told >= found.maintenance.maintenance.mean - 10.0
    assert len(seen[Verdict.FASTER]) >= 5
    assert len(seen[Verdict.SLOWER]) >= 5
    assert all(kcal <= 0 for kcal in seen[Verdict.FASTER])
    assert all(kcal >= 0 for kcal in seen[Verdict.SLOWER])


def rising_gain(seed: int, surplus_kcal: float) -> tuple[Member, FollowedPhase]:
    """A week of a gain that rises after four, as planned gains do, so that its rest is faster than all of it."""
    member = Member(seed)
    cut = member.plan(8)
    first = 10.0 * round((cut.maintenance.mean + surplus_kcal) / 10.0)
    weeks = tuple(
        msgspec.structs.replace(cut.weeks[0], intake_kcal=kcal, carbohydrate_g=None)
        for kcal in (*(first,) * 4, *(first + 50.0,) * 8)
    )
    phase = msgspec.structs.replace(cut, kind=PhaseKind.GAIN, weeks=weeks)
    member.follow(phase, 7, AS_PLANNED)
    return member, phase


def test_no_gain_near_its_ceiling_is_lowered_before_a_verdict() -> None:
    for seed in range(16):
        for surplus in (200.0, 240.0, 280.0):
            found = review(*rising_gain(seed, surplus))
            assert found.verdict is Verdict.TOO_EARLY
            assert found.advice.decision is NextStep.CONTINUE
            assert found.advice.correction_kcal == 0
        # What is over it by more than the plan may err does not wait: 0.25 % of body mass a week.
        found = review(*rising_gain(seed, 600.0))
        assert found.advice.decision is NextStep.END
        (past,) = [reason for reason in found.reasons if reason.code == "REVIEW_GAIN_PAST_CEILING"]
        assert past.params["limit_percent"] == pytest.approx(0.25)


def test_a_change_before_a_verdict_says_why_it_cannot_wait() -> None:
    said = 0
    for seed in range(12):
        member = Member(seed)
        phase = member.plan(6)
        low = msgspec.structs.replace(phase.weeks[0], intake_kcal=phase.weeks[0].intake_kcal - 130.0)
        phase = msgspec.structs.replace(phase, weeks=(low,) * 6)
        member.follow(phase, 7, AS_PLANNED)
        found = review(member, phase)
        assert found.verdict is Verdict.TOO_EARLY
        is_changed = found.advice.decision is not NextStep.END and found.advice.correction_kcal != 0
        assert ("REVIEW_CANNOT_WAIT" in codes(found)) is is_changed
        said += is_changed
    assert said >= 3


def test_who_gains_too_fast_on_what_the_plan_tells_eats_less() -> None:
    """By the log the plan is kept. Who logs more than it tells is to keep to it first."""
    lowered = dict.fromkeys((True, False), 0)
    for is_logged in lowered:
        for seed in range(18):
            found = review(*steady(PhaseKind.GAIN, 450.0, 35, seed, is_logged=is_logged))
            lowered[is_logged] += found.verdict is Verdict.FASTER and found.advice.correction_kcal < 0
    print(lowered)
    assert lowered[False] >= 3
    assert lowered[True] <= 2


def test_reasons_do_not_contradict_their_numbers() -> None:
    """Within is inside, or near; who needs less has less maintenance than planned, and who needs more has more."""
    seen: dict[str, int] = {}
    found = [case.found for habits in (AS_PLANNED, UNDER_REPORTER, JUMP) for day in DAYS for case in cases(habits)[day]]
    for seed in range(12):
        # A hold planned 200 kcal too low and raised by too much: more is needed than was planned, less than is told.
        member = Member(seed)
        cut = member.plan(8)
        maintenance = msgspec.structs.replace(cut.maintenance, mean=cut.maintenance.mean - 200.0)
        week = msgspec.structs.replace(cut.weeks[0], intake_kcal=10.0 * round(maintenance.mean / 10.0))
        raised = (IntakeChange(day=cut.start_day + 7, change_kcal=700.0),)
        hold = msgspec.structs.replace(
            cut, kind=PhaseKind.MAINTENANCE, weeks=(week,) * 12, maintenance=maintenance, changes=raised
        )
        member.follow(hold, 56, AS_PLANNED)
        found.append(review(member, hold))
    for one in found:
        for reason in one.reasons:
            numbers = {name: value for name, value in reason.params.items() if isinstance(value, float)}
            seen[reason.code] = seen.get(reason.code, 0) + 1
            if reason.code in ("REVIEW_WITHIN_INTERVAL", "REVIEW_NEAR_INTERVAL"):
                # By the tenths that are told: 0.7 kg is not near 0.1 to 0.7 kg, but inside.
                told = {name: round(value, 1) for name, value in numbers.items()}
                inside = told["lower_kg"] <= told["observed_kg"] <= told["upper_kg"]
                assert inside == (reason.code == "REVIEW_WITHIN_INTERVAL")
            elif reason.code in ("REVIEW_NEEDS_LESS", "REVIEW_NEEDS_MORE"):
                less_than_planned = numbers["maintenance_kcal"] < numbers["planned_kcal"]
                assert less_than_planned == (reason.code == "REVIEW_NEEDS_LESS")
    assert min(seen[f"REVIEW_{code}"] for code in ("WITHIN_INTERVAL", "NEAR_INTERVAL", "NEEDS_LESS")) >= 5


def test_a_gain_under_way_is_not_corrected_unscreened() -> None:
    member, phase = steady(PhaseKind.GAIN, 0.0, 28)
    with pytest.raises(Refused):
        review(member, phase, screening=None)
    member, phase = steady(PhaseKind.MAINTENANCE, 0.0, 28)
    assert review(member, phase, screening=None).advice.decision is NextStep.CONTINUE


def test_a_gain_ends_at_its_ceiling() -> None:
    member, phase = steady(PhaseKind.GAIN, 0.0, 28)
    lean = msgspec.structs.replace(phase, fat_ceiling=0.08)
    assert review(member, lean).advice.decision is NextStep.END
    (met,) = [reason for reason in review(member, lean).reasons if reason.code == "REVIEW_CEILING_MET"]
    assert met.params["ceiling_percent"] == pytest.approx(8.0)
    assert review(member, msgspec.structs.replace(phase, fat_ceiling=0.4)).advice.decision is NextStep.CONTINUE


def test_losing_fast_as_logged_raises_the_intake() -> None:
    """Of those who eat far under the plan and log it, and of those who log more than they eat."""
    raised, steps = 0, []
    for seed in range(12):
        for habits in (Habits(logged_beyond_kcal=-1300.0), Habits(logged_beyond_kcal=-300.0, unlogged_kcal=-1000.0)):
            member = Member(seed)
            phase = member.plan(8, deficit_kcal=500.0, fat_loss_kg=9.0)
            member.follow(phase, 28, habits)
            found = review(member, phase)
            acted = [a for a in found.actions if a.id == "logged_loss"]
            if any(a.action == "capped" for a in acted):
                raised += 1
                assert acted[0].observed is not None
                assert acted[0].observed > 0.015
                eaten = found.eaten.logged_kcal
                assert eaten is not None
                if found.stints:
                    assert min(s.week.intake_kcal for s in found.stints) > eaten + 100.0
                # More than was eaten by what was lost beyond 1 % a week (Helms et al. 2014), but one step at most.
                now = read_phase(member.told(), phase, member.log, member.day)
                assert now.fortnight_tissue is not None
                assert now.fortnight_intake_kcal is not None
                # By tissue, or by the scale where that falls faster.
                assert acted[0].observed >= -now.fortnight_tissue.mean / 2.0 / now.weight_kg.mean
                beyond_kg = (acted[0].observed - 0.01) * now.weight_kg.mean
                needed = now.fortnight_intake_kcal + beyond_kg * now.rho_kcal_per_kg / 7.0
                step = up(needed - phase.weeks[0].intake_kcal)
                # A rise leaves room of 50 kcal where there is any.
                least, most = min(200, max(0, step)), min(200, step + 50) if step > 0 else 0
                assert least - 10 <= found.advice.correction_kcal <= most + 10
                steps.append(found.advice.correction_kcal)
    assert raised >= 3
    assert 0 in steps
    assert 200 in steps


def eaten_lately(member: Member) -> float:
    """Mean of what was logged in the fortnight before the last day."""
    kcal = [entry.intake_kcal for entry in member.log.intakes if member.day - 14 <= entry.day < member.day]
    return pytest.approx(sum(kcal) / len(kcal))  # type: ignore[no-any-return]


def test_what_is_eaten_under_a_rail_is_said_and_what_is_not_is_not() -> None:
    for seed in range(8):
        member = Member(seed)
        phase = member.plan(8, deficit_kcal=ROOMY_DEFICIT_KCAL)
        member.follow(phase, 28, Habits(logged_beyond_kcal=-1300.0))
        found = review(member, phase)
        assert "REVIEW_EATEN_UNDER_RAIL" in codes(found)
        (told,) = [reason.params for reason in found.reasons if reason.code == "REVIEW_EATEN_UNDER_RAIL"]
        assert told["intake_kcal"] == eaten_lately(member)
        assert any(a.action == "warned" and a.observed == told["intake_kcal"] for a in found.actions)
        plain = Member(seed)
        plain.follow(phase := plain.plan(8, deficit_kcal=ROOMY_DEFICIT_KCAL), 28, AS_PLANNED)
        assert "REVIEW_EATEN_UNDER_RAIL" not in codes(review(plain, phase))


def test_a_weighing_to_come_has_the_error_of_the_path_of_today_and_of_a_day() -> None:
    """Independent errors add up in squares."""
    member = Member(2)
    member.follow(phase := member.plan(6), 21, AS_PLANNED)
    found = review(member, phase)
    assert found.path is not None
    points = found.points_of(found.path)
    assert len(points) == len(found.stints)
    for point in points:
        parts = (point.spread.weight_kg, found.weight_kg.sd, found.noise_sd_kg)
        assert point.weighing_sd_kg == pytest.approx(sum(part**2 for part in parts) ** 0.5)


# --- what cannot be reviewed -------------------------------------------------------------------------------------


def test_bad_input_is_named() -> None:
    member = Member(9)
    phase = member.plan(4)
    member.follow(phase, 10, AS_PLANNED)

    def attempt(**changes: object) -> str:
        changed = msgspec.structs.replace(phase, **changes)
        with pytest.raises(OutOfDomain) as refused:
            review_phase(member.told(), changed, member.log, member.day)
        return refused.value.code

    assert attempt(start_day=START_DAY + 30) == "REVIEW_BEFORE_START"
    assert attempt(weeks=phase.weeks * 2) == "MINI_CUT_TOO_LONG"
    assert attempt(kind=PhaseKind.GAIN, fat_loss_kg=1.0) == "FAT_LOSS_WITHOUT_DEFICIT"
    with pytest.raises(LogError):
        review_phase(member.told(), phase, Log([]), member.day)
    ahead = Log([*member.log.weighings, Weighing(member.day + 3, 80.0)], member.log.intakes)
    with pytest.raises(LogError):
        review_phase(member.told(), phase, ahead, member.day)
    feasting = Log([Weighing(START_DAY - 400 + i, 80.0) for i in range(410)],
                  [IntakeDay(START_DAY - 400 + i, 15_000.0) for i in range(409)])  # fmt: skip
    found = review_phase(member.told(), phase, feasting, START_DAY + 9)
    # Nobody eats that: it is set aside as kilojoules, and said, before it reaches maintenance.
    assert "LOG_INTAKE_KILOJOULES" in {note.code for note in found.notes}
    assert found.maintenance.log_share == 0.0


def test_the_first_day_and_a_log_that_begins_late() -> None:
    member = Member(10)
    phase = member.plan(4)
    first = Log([Weighing(START_DAY, member.person.weight_kg)])
    found = review_phase(member.told(), phase, first, START_DAY)
    assert found.verdict is Verdict.TOO_EARLY
    assert found.eaten.difference is None
    assert found.advice.days_ahead == 28
    member.follow(phase, 20, AS_PLANNED)
    late = Log([w for w in member.log.weighings if w.day >= START_DAY + 6], member.log.intakes)
    found = review_phase(member.told(), phase, late, member.day)
    assert found.since_day >= START_DAY + 6
    assert "REVIEW_WINDOW_SHORTER" in {note.code for note in found.notes}
    assert found.tissue.mean < found.changes.tissue.mean


# --- whom a coach looks at -------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("change", "code", "level"), [(0, "NONE", 0), (60, "RAISED", 2), (-60, "LOWERED", 2)])
@pytest.mark.parametrize("verdict", [Verdict.WITHIN_INTERVAL, Verdict.TOO_EARLY])
def test_an_intake_that_moves_is_told_to_the_coach_whatever_the_verdict(
    change: int, code: str, level: int, verdict: Verdict
) -> None:
    """A rail may lower a gain, or a hold may give back what it was given, while nothing is off the plan."""
    advice = Advice(NextStep.CONTINUE, change, 14, [], [])
    told: Any = SimpleNamespace(reasons=[], advice=advice, question=None, is_unanswered=False, verdict=verdict)
    asked = attention_of(told, date(2026, 5, 11), date(2026, 5, 10))
    assert (asked.reason.code, asked.level, asked.change_kcal) == (f"ATTENTION_{code}", level, change)
    assert ("kcal" in english(asked.action)) == bool(change)


@pytest.mark.parametrize(
    ("is_breastfeeding", "code", "level"), [(False, "UNEXPLAINED_LOSS", 3), (True, "LOSS_BREASTFEEDING", 2)]
)
def test_who_loses_unplanned_is_sent_to_somebody_and_the_coach_told(
    *, is_breastfeeding: bool, code: str, level: int
) -> None:
    """A clinician's business is today's for a coach as well. After a birth nobody calls what goes unexplained."""
    member = Member(9)
    phase = msgspec.structs.replace(member.plan(6), kind=PhaseKind.MAINTENANCE)
    weeks = tuple(msgspec.structs.replace(week, intake_kcal=phase.maintenance.mean) for week in phase.weeks)
    phase = msgspec.structs.replace(phase, weeks=weeks)
    member.follow(phase, 35, Habits(logged_beyond_kcal=-1900.0))
    screening = msgspec.structs.replace(CLEAR, is_breastfeeding=is_breastfeeding)
    found = review(member, phase, screening=screening)
    assert {each for each in codes(found) if "_LOSS" in each} == {f"REVIEW_{code}"}
    asked = attention_of(found, date(2026, 5, 11), date(2026, 5, 10))
    assert asked.level == level
    assert (asked.reason.code == "ATTENTION_SAFETY") is not is_breastfeeding


@pytest.mark.parametrize(("said", "code", "level"), [(["REVIEW_EATEN_UNDER_RAIL"], "UNDER_RAIL", 1), ([], "NONE", 0)])
def test_a_coach_is_not_told_that_there_is_nothing_to_do_where_less_is_logged_than_is_safe(
    said: list[str], code: str, level: int
) -> None:
    told: Any = SimpleNamespace(
        reasons=[SimpleNamespace(code=each) for each in said],
        advice=Advice(NextStep.CONTINUE, 0, 14, [], []),
        question=None,
        is_unanswered=False,
        verdict=Verdict.WITHIN_INTERVAL,
    )
    asked = attention_of(told, date(2026, 5, 11), date(2026, 5, 10))
    assert (asked.reason.code, asked.level) == (f"ATTENTION_{code}", level)


def test_a_step_beside_an_open_question_says_why_it_does_not_wait() -> None:
    """One line said to eat less from now on, and the next that nothing changes until the question is answered."""
    told = {"REVIEW_CANNOT_WAIT", "REVIEW_STEP_MEANWHILE"}
    said: list[str] = []
    for seed in range(14):
        for extra in (250.0, 450.0):
            found = review(*steady(PhaseKind.GAIN, extra, 35, seed, is_logged=False))
            goes_on = found.advice.decision is NextStep.CONTINUE
            if found.question is not None and found.advice.correction_kcal and goes_on:
                (why,) = codes(found) & told
                assert ("CAPPED_GAIN_RATE" in codes(found)) <= (why == "REVIEW_CANNOT_WAIT")
                said.append(why)
            else:
                assert "REVIEW_STEP_MEANWHILE" not in codes(found)
    assert said.count("REVIEW_STEP_MEANWHILE") >= 3


@pytest.mark.parametrize(("seen_kg", "is_said"), [(0.4, True), (1.2, False)])
def test_that_the_scale_bears_a_lower_need_out_is_not_denied(seen_kg: float, is_said: bool) -> None:
    """A gain at the upper end of its interval, whose log needs less: only a scale under the plan speaks against it."""
    advice = object.__new__(HoldOrGainAdvice)
    tissue = SimpleNamespace(expenditure_slope_kcal_per_kg_day=20.0)
    advice.now = SimpleNamespace(  # type: ignore[assignment]
        days=42, window_days=42, is_unseen=False, eaten=SimpleNamespace(is_hardly_logged=False),
        reading=SimpleNamespace(tissue=tissue),
        window=SimpleNamespace(tissue=Estimate(seen_kg, 0.3)),
    )  # fmt: skip
    promised = SimpleNamespace(tissue=Estimate(0.8, 0.3))
    advice.promised = SimpleNamespace(change=lambda first, last: promised)  # type: ignore[assignment]
    advice.phase = SimpleNamespace(maintenance=Estimate(2500.0, 100.0), changes=())  # type: ignore[assignment]
    supposed: list[Estimate] = []
    advice.course = SimpleNamespace(ratio=0.9, suppose=supposed.append)  # type: ignore[assignment]
    advice.verdict, advice.reasons = Verdict.WITHIN_INTERVAL, []
    advice._as_planned()
    assert len(supposed) == 1
    assert [reason.code for reason in advice.reasons] == ["REVIEW_AS_PLANNED"] * is_said
