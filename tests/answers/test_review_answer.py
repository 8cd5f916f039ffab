"""Questions about a phase in its course asked without any web."""

from datetime import date, timedelta
from typing import Any

import msgspec
import pytest
from review_people import AS_PLANNED, START_DAY, Member
from steelyard import answers
from steelyard.science.body import BASELINE_GLYCOGEN_KG, Forecast
from steelyard.science.log import Log
from steelyard.science.member import Told
from steelyard.science.phase import FollowedPhase
from steelyard.science.rails import Refused
from steelyard.science.register import OutOfDomain

START = date.fromordinal(START_DAY)


@pytest.fixture(scope="module")
def member() -> Member:
    lived = Member(4)
    lived.follow(lived.plan(4), 20, AS_PLANNED)
    return lived


@pytest.fixture(scope="module")
def phase() -> FollowedPhase:
    return Member(4).plan(4)


def ask(member: Member, phase: FollowedPhase, entries: Log | None = None, **others: Any) -> answers.ReviewAsked:
    told = member.told().told._replace(log=member.log if entries is None else entries)
    return answers.ReviewAsked(told, phase, **{"as_of": date.fromordinal(member.day), **others})


def refused(asked: answers.ReviewAsked) -> tuple[str, str]:
    with pytest.raises(OutOfDomain) as raised:
        answers.review_phase(asked)
    return raised.value.code, raised.value.field


def test_what_is_refused_is_named(member: Member, phase: FollowedPhase) -> None:
    early = msgspec.structs.replace(phase, start_day=date(1999, 12, 31).toordinal())
    assert refused(ask(member, early)) == ("DATE_OUT_OF_RANGE", "phase.start_date")
    ahead = msgspec.structs.replace(phase, start_day=member.day + 1)
    assert refused(ask(member, ahead)) == ("REVIEW_BEFORE_START", "phase.start_date")
    assert refused(ask(member, phase, as_of=date(1999, 12, 31))) == ("DATE_OUT_OF_RANGE", "as_of_date")


@pytest.mark.parametrize(("over_kcal", "is_refused"), [(19.9, False), (20.1, True)])
def test_grams_may_exceed_their_energy_by_rounding_alone(
    member: Member, phase: FollowedPhase, over_kcal: float, is_refused: bool
) -> None:
    week = phase.weeks[1]
    # 4 kcal a gram of protein as of carbohydrate (Atwater).
    carbohydrate = (week.intake_kcal + over_kcal) / 4.0 - week.protein_g
    heavy = msgspec.structs.replace(week, carbohydrate_g=carbohydrate)
    asked = ask(member, msgspec.structs.replace(phase, weeks=(phase.weeks[0], heavy, *phase.weeks[2:])))
    if is_refused:
        assert refused(asked) == ("NUTRIENTS_EXCEED_INTAKE", "phase.weeks[1].intake_kcal")
    else:
        assert answers.review_phase(asked).value.review.days == 20


def test_a_deficit_that_runs_needs_screening(member: Member, phase: FollowedPhase) -> None:
    asked = ask(member, phase)
    unscreened = asked._replace(told=asked.told._replace(screening=None))
    with pytest.raises(Refused) as raised:
        answers.review_phase(unscreened)
    assert raised.value.field == "screening"


def test_weeks_to_come_follow_each_other_to_the_last_day(member: Member, phase: FollowedPhase) -> None:
    reviewed = answers.review_phase(ask(member, phase)).value
    days = reviewed.as_of
    for week in reviewed.weeks:
        assert week.start == days
        days += timedelta(days=week.days)
        assert week.last_day == days - timedelta(days=1)
    assert reviewed.last_date == days - timedelta(days=1)
    assert reviewed.after is None


def test_a_single_weighing_ahead_carries_todays_error_and_daily_noise(member: Member, phase: FollowedPhase) -> None:
    found = answers.review_phase(ask(member, phase)).value.review
    assert isinstance(found.path, Forecast)
    first = found.points_of(found.path)[0]
    forecast, start, then = found.path.spreads()[1], *found.path.states[:2]
    water = found.carried.beyond_model(then.carried_kg - start.carried_kg, then.day - start.day)
    assert first.weighing_sd_kg**2 == pytest.approx(
        forecast.weight_kg**2 + water.sd**2 + found.weight_kg.sd**2 + found.noise_sd_kg**2
    )
    assert first.weight_kg == pytest.approx(then.weight_kg + water.mean)
    assert first.weight_kg == pytest.approx(first.fat_kg + first.lean_kg + first.carried_kg + BASELINE_GLYCOGEN_KG)
    assert first.fat_fraction == pytest.approx(first.fat_kg / first.weight_kg)
    assert first.maintenance_kcal == pytest.approx(found.ratio * found.path.maintenance_kcal(1))
    assert first.spread.maintenance_kcal == pytest.approx(found.ratio * forecast.maintenance_kcal)


def test_a_phase_that_ended_shows_the_weeks_after_it(member: Member, phase: FollowedPhase) -> None:
    reviewed = answers.review_phase(ask(member, phase, is_finished=True)).value
    assert reviewed.weeks == []
    assert reviewed.last_date == reviewed.as_of - timedelta(days=1)
    assert reviewed.after is not None
    assert [(day - reviewed.as_of).days + 1 for day, _ in reviewed.after.points] == [3, 7, 14]


def test_a_log_that_goes_on_after_a_phase_is_read_up_to_its_end_and_handed_on_whole(member: Member) -> None:
    phase = Member(4).plan(2)
    answer = answers.review_phase(ask(member, phase))
    assert phase.end_day < member.day
    assert answer.value.review.day == phase.end_day
    assert answer.state is not None
    assert answer.state.log is not None
    assert answer.state.log.last_day == member.log.last_day
    assert answer.state.day == answer.value.as_of.toordinal() > phase.end_day


def test_a_phase_has_at_least_its_first_day(member: Member) -> None:
    phase = Member(4).plan(4)
    today = Log([w for w in member.log.weighings if w.day <= START_DAY], [])
    reviewed = answers.review_phase(ask(member, phase, today, as_of=START, is_finished=True)).value
    assert reviewed.last_date == START


def test_maintenance_at_the_start_is_not_the_logs(member: Member, phase: FollowedPhase) -> None:
    asked = ask(member, phase)
    bare = answers.review_phase(asked._replace(told=Told(member.person, asked.told.screening, log=member.log)))
    known = asked.told._replace(current_intake_kcal=4000.0)
    assert bare.value.review == answers.review_phase(asked._replace(told=known)).value.review
