"""Seasons asked for without any web: what cannot be asked, what a strategy may be, and what an answer adds up to."""

import itertools
from datetime import date, timedelta
from typing import Any

import msgspec
import pytest
from plan_people import CLEAR, MAN, START, person
from steelyard import answers
from steelyard.science.member import Told
from steelyard.science.numbers import Estimate
from steelyard.science.person import Sex
from steelyard.science.phase import Band
from steelyard.science.rails import Refused
from steelyard.science.register import Contradiction, OutOfDomain
from steelyard.science.season import BlockedDays, Event, ReadyMade

PREGNANT = msgspec.structs.replace(CLEAR, is_pregnant=True)
STEADY = answers.StrategyInNumbers("steady", 150.0, 0.17, 0.14, 500.0, 6, 1)
UNCUT = answers.StrategyInNumbers("uncut", 100.0, None, None, 500.0, 6, 1)


def terms(weeks: int = 26, **limits: Any) -> answers.SeasonTerms:
    return answers.SeasonTerms(START, weeks, answers.LimitsAsked(**limits))


def ask(
    when: answers.SeasonTerms | None = None, strategy: answers.StrategyAsked = STEADY, **told: Any
) -> answers.SeasonAsked:
    return answers.SeasonAsked(Told(**{"person": MAN, "screening": CLEAR, **told}), when or terms(), strategy)


def day(n: int) -> date:
    return START + timedelta(days=n)


@pytest.mark.parametrize(
    ("asked", "code", "name"),
    [
        (ask(terms(band=Band(0.15, 0.165))), "BAND_INVERTED", "limits.band.upper_fat_fraction"),
        (
            ask(terms(blocked=(BlockedDays(day(3), day(2)),))),
            "BLOCKED_DATES_INVERTED", "limits.blocked_dates[0].last_date",
        ),
        (ask(terms(events=(Event(day(-1)),))), "EVENT_BEFORE_START", "limits.events[0].date"),
        (ask(terms(12, events=(Event(day(83)), Event(day(84))))), "EVENT_AFTER_HORIZON", "limits.events[1].date"),
        (ask(terms(blocked=(BlockedDays(day(0), day(400)),))), "BLOCKED_DATES_COVER_ALL", "limits.blocked_dates"),
        (ask(strategy=UNCUT._replace(cut_to=0.14)), "CUT_WITHOUT_START", "strategy.cut_at_fat_fraction"),
        (ask(strategy=STEADY._replace(cut_to=0.161)), "CUT_ENDS_ABOVE_START", "strategy.cut_to_fat_fraction"),
    ],
)  # fmt: skip
def test_what_cannot_stand_together_is_named(asked: answers.SeasonAsked, code: str, name: str) -> None:
    with pytest.raises(Contradiction) as raised:
        answers.plan_season(asked)
    assert (raised.value.code, raised.value.field) == (code, name)


@pytest.mark.parametrize(("lower", "upper"), [(0.1, 0.12), (0.15, 0.17), (0.13, 0.15)])
def test_a_band_of_two_points_and_a_cut_of_one_are_not_too_small(lower: float, upper: float) -> None:
    """Whole points are what people ask for, and few of them are whole in binary: 0.15 less 0.01 is under 0.14."""
    strategy = STEADY._replace(cut_at=upper, cut_to=round(upper - 0.01, 2))
    season = answers.plan_season(ask(terms(12, band=Band(lower, upper)), strategy)).value
    assert season.laid_out.policy.cut_to == pytest.approx(upper - 0.01)


@pytest.mark.parametrize(
    ("asked", "code", "name"),
    [
        (ask(answers.SeasonTerms(date(1999, 1, 1), 12)), "DATE_OUT_OF_RANGE", "start_date"),
        (ask(terms(events=(Event(date(2101, 1, 1)),))), "DATE_OUT_OF_RANGE", "limits.events[0].date"),
        (
            ask(terms(blocked=(BlockedDays(day(0), date(2101, 1, 1)),))),
            "DATE_OUT_OF_RANGE", "limits.blocked_dates[0].last_date",
        ),
        (ask(maintenance=Estimate(1400.0, 50.0)), "MAINTENANCE_IMPLAUSIBLE", "maintenance.kcal_per_day"),
        (
            ask(maintenance=Estimate(2600.0, 50.0), current_intake_kcal=1290.0),
            "CURRENT_INTAKE_IMPLAUSIBLE", "current_intake_kcal",
        ),
        (
            ask(maintenance=Estimate(2600.0, 50.0), current_intake_kcal=3910.0),
            "CURRENT_INTAKE_IMPLAUSIBLE", "current_intake_kcal",
        ),
    ],
)  # fmt: skip
def test_what_no_season_starts_from_is_named(asked: answers.SeasonAsked, code: str, name: str) -> None:
    with pytest.raises(OutOfDomain) as raised:
        answers.plan_season(asked)
    assert (raised.value.code, raised.value.field) == (code, name)


@pytest.mark.parametrize(
    ("asked", "name"),
    [
        (ask(terms(band=Band(0.05, 0.15))), "limits.band.lower_fat_fraction"),
        (ask(terms(events=(Event(day(100), 0.05),))), "limits.events[0].most_fat_fraction"),
        (ask(strategy=STEADY._replace(cut_to=0.05)), "strategy.cut_to_fat_fraction"),
        (ask(screening=PREGNANT), "is_pregnant"),
    ],
)
def test_what_a_rail_forbids_is_refused(asked: answers.SeasonAsked, name: str) -> None:
    with pytest.raises(Refused) as raised:
        answers.plan_season(asked)
    assert raised.value.field.endswith(name)


def test_intakes_and_weeks_of_the_phases_add_up_to_the_season() -> None:
    answer = answers.plan_season(ask(terms(40)))
    phases = answer.value.laid_out.phases
    weeks = [planned for phase in phases for planned in phase.weeks]
    assert [planned.week.start for planned in weeks] == [day(7 * n) for n in range(40)]
    for phase in phases:
        assert sum(run.weeks for run in phase.runs) == len(phase.weeks)
        eaten = [run.intake for run in phase.runs for _ in range(run.weeks)]
        assert eaten == [planned.week.intake for planned in phase.weeks]
        assert all(one.intake != other.intake for one, other in zip(phase.runs, phase.runs[1:], strict=False))
    sums = answer.value.laid_out.sums
    assert sum(phase.change.lean_kg.mean for phase in phases) == pytest.approx(sums.lean_gained_kg.mean)
    assert sum(phase.change.fat_kg.mean for phase in phases) == pytest.approx(sums.fat_gained_kg.mean)
    fractions = [float(planned.at_end.fat_fraction) for planned in weeks]
    top = max(range(40), key=lambda n: fractions[n])
    assert sums.peak_fat_fraction.mean == fractions[top]
    assert sums.peak_day == weeks[top].week.last_day
    assert sums.final_fat_fraction.mean == fractions[-1]
    above = answer.value.start.band.upper
    assert sums.weeks_above_band.expected == sum(fraction > above for fraction in fractions)
    assert sums.weeks_above_band.lower <= sums.weeks_above_band.expected <= sums.weeks_above_band.upper
    assert sums.mean_fat_kg == pytest.approx(sum(float(planned.at_end.fat_kg) for planned in weeks) / 40)
    assert sums.dieting_weeks == sum(len(p.weeks) for p in phases if p.phase.kind in ("cut", "mini_cut"))
    assert "SEASON_REVIEWED" in {message.code for message in answer.cautions}


def test_a_gain_alone_is_fattest_on_its_last_day() -> None:
    found = answers.plan_season(ask(terms(20), UNCUT)).value.laid_out
    assert found.sums.peak_fat_fraction == found.sums.final_fat_fraction
    assert found.sums.peak_day == day(7 * 20 - 1)


def test_the_cuts_that_are_told_are_the_cuts_that_are_planned() -> None:
    answer = answers.plan_season(ask(terms(104), STEADY._replace(cut_at=0.16, cut_to=0.14)))
    cuts = [phase for phase in answer.value.laid_out.phases if phase.phase.kind in ("cut", "mini_cut")]
    weeks = sum(len(phase.weeks) for phase in cuts)
    assert len(cuts) >= 2
    (told,) = [reason.params for reason in answer.reasons if reason.code == "SEASON_CUTS"]
    assert (told["cuts"], told["weeks"]) == (len(cuts), weeks)
    assert told["share_percent"] == pytest.approx(100.0 * weeks / 104)
    uncut = answers.plan_season(ask(terms(52), UNCUT))
    assert not {"SEASON_CUTS", "SEASON_NO_CUT"} & {reason.code for reason in uncut.reasons}


def test_limits_looser_than_usual_count_for_numbers_of_ones_own() -> None:
    strategy = STEADY._replace(cut_at=0.14, cut_to=0.10, longest_cut_weeks=2)

    def told(**limits: int) -> tuple[list[int], set[str]]:
        answer = answers.plan_season(ask(terms(40, **limits), strategy))
        phases = answer.value.laid_out.phases
        starts = [(p.weeks[0].week.start - START).days // 7 for p in phases if p.phase.kind == "mini_cut"]
        return starts, {action.message.code for action in answer.actions}

    warnings = {"WARNED_CUTS_A_YEAR", "WARNED_RECENT_CUT"}
    usual, of_usual = told()
    assert len(usual) <= 3
    assert min(b - a for a, b in itertools.pairwise(usual)) >= 2 + 8
    assert not of_usual & warnings
    loose, of_loose = told(cuts_a_year=6, weeks_between_cuts=2)
    assert 3 < len(loose) <= 6
    assert 2 + 2 <= min(b - a for a, b in itertools.pairwise(loose)) < 2 + 8
    assert of_loose >= warnings


def test_no_cut_reaches_the_birthday_from_which_it_needs_clearance() -> None:
    older = msgspec.structs.replace(MAN, age_years=64.8)
    strategy = STEADY._replace(cut_at=0.13, cut_to=0.11, deficit_kcal=300.0)
    found = answers.plan_season(ask(terms(40), strategy, person=older)).value.laid_out
    cuts = [phase for phase in found.phases if phase.phase.kind in ("cut", "mini_cut")]
    assert cuts
    # 0.2 years are ten weeks and a half.
    assert all(phase.weeks[-1].week.last_day <= day(70) for phase in cuts)


def test_a_season_after_a_diet_begins_at_the_least_of_what_is_needed_without_it() -> None:
    # A little over the least of 1500 kcal, after so little that less is spent for some weeks still.
    told = {
        "person": person(Sex.UNSPECIFIED, 52.0, 158.0, 0.26),
        "maintenance": Estimate(1520.0, 100.0),
        "current_intake_kcal": 950.0,
    }
    found = answers.plan_season(ask(terms(12), UNCUT._replace(surplus_kcal=0.0), **told)).value.laid_out
    intakes = [week.week.intake.intake_kcal for phase in found.phases for week in phase.weeks]
    assert intakes[0] == 1500
    assert min(intakes) == 1500


def test_of_two_strategies_the_refused_is_listed_and_two_refused_are_a_refusal() -> None:
    def compare(*strategies: answers.StrategyAsked, screening: Any = CLEAR) -> Any:
        return answers.compare_strategies(answers.ComparisonAsked(Told(MAN, screening), terms(), list(strategies)))

    both = compare(STEADY, UNCUT).value
    assert [one.label for one in both.followed] == ["steady", "uncut"]
    assert [(pair.label, pair.over) for pair in both.chances] == [("steady", "uncut"), ("uncut", "steady")]
    one, other = (pair.chance for pair in both.chances)
    assert one.more_lean + other.more_lean == pytest.approx(1.0)
    for followed in both.followed:
        low, middle, high = followed.drawn.lean_gained_kg
        assert low < middle < high
        assert low < followed.season.outcome.lean_gained_kg < high
        assert followed.drawn.days_dieting.median % 7 == 0
    partly = compare(STEADY, UNCUT, screening=PREGNANT).value
    assert [one.label for one in partly.followed] == ["uncut"]
    assert [one.label for one in partly.refused] == ["steady"]
    assert partly.chances == []
    with pytest.raises(Refused):
        compare(STEADY, STEADY._replace(label="other"), screening=PREGNANT)
    for strategies, name in (
        ((UNCUT, UNCUT), "strategies[1].label"),
        ((UNCUT, ReadyMade.SLOW_GAIN_NO_CUT, ReadyMade.SLOW_GAIN_NO_CUT), "strategies[2].name"),
    ):
        with pytest.raises(Contradiction) as raised:
            compare(*strategies)
        assert (raised.value.code, raised.value.field) == ("STRATEGY_TWICE", name)


def test_an_optimum_keeps_the_limits_or_says_by_how_much_not() -> None:
    def optimum(weeks: int = 26, searched: int = 600, screening: Any = CLEAR, **limits: Any) -> Any:
        return answers.optimise_season(answers.OptimumAsked(Told(MAN, screening), terms(weeks, **limits), searched))

    found = optimum(most_weeks_dieting=3).value
    assert found.is_feasible
    assert found.unkept == []
    assert found.laid_out.sums.dieting_weeks <= 3
    assert found.laid_out.sums.lean_gained_kg.mean == pytest.approx(
        found.trade_off[-1].value.outcome.lean_gained_kg, abs=0.05
    )
    short = optimum(12, events=(Event(day(60), 0.09),)).value
    assert not short.is_feasible
    assert [unkept.limit for unkept in short.unkept] == ["event_fat_fraction"]
    refused = optimum(screening=PREGNANT)
    assert refused.value.laid_out.sums.cuts == 0
    assert refused.actions[0].action == "refused"
    with pytest.raises(OutOfDomain) as raised:
        optimum(100, 10_001)
    assert (raised.value.code, raised.value.field) == ("SEARCH_TOO_LARGE", "strategies_searched")
    assert "at most 10000 strategies" in raised.value.detail
    # Blocked dates are no matter to whom no cut may be planned anyway, nor where none is wanted.
    everything = (BlockedDays(day(0), day(400)),)
    assert optimum(screening=PREGNANT, blocked=everything).value.laid_out.sums.cuts == 0
    assert optimum(most_cuts=0, blocked=everything).value.laid_out.sums.cuts == 0
    with pytest.raises(Contradiction):
        optimum(blocked=everything)
