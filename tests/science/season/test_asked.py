"""What a season is asked for: cuts that a strategy has, limits on them, and the week from which they need clearance."""

import msgspec
import pytest
from msgspec.structs import replace
from plan_people import CLEAR, MAN
from season_people import asked
from steelyard.science.member import Member, Told
from steelyard.science.person import Clearance, Screening
from steelyard.science.season.asked import week_of_clearance
from steelyard.science.season.policy import Policy, ReadyMade


@pytest.mark.parametrize(
    ("policy", "has_cuts"),
    [
        (Policy(150.0), False),
        (Policy(150.0, cut_at=0.18), True),
        (Policy(150.0, cut_at=0.18, cuts_a_year=1, most_cuts=1), True),
        (Policy(150.0, cut_at=0.18, cuts_a_year=0), False),
        (Policy(150.0, cut_at=0.18, most_cuts=0), False),
    ],
)
def test_a_strategy_has_cuts_where_one_may_ever_start(policy: Policy, *, has_cuts: bool) -> None:
    assert policy.has_cuts is has_cuts
    assert not policy.without_cuts.has_cuts


def test_limits_on_cuts_are_those_of_the_strategy_or_the_stricter_asked_for() -> None:
    season = asked(most_cuts=2, cuts_a_year=1, weeks_between_cuts=12)
    for name in ReadyMade:
        policy = season.ready_made(name)
        if policy.has_cuts:
            assert (policy.most_cuts, policy.cuts_a_year, policy.weeks_between_cuts) == (2, 1, 12)
    careful = Policy(150.0, cut_at=0.18, most_cuts=1, cuts_a_year=1, weeks_between_cuts=20)
    assert season.limited(careful) == careful
    uncut = Policy(150.0)
    assert season.limited(uncut) == uncut


@pytest.mark.parametrize(
    ("age_years", "week"),
    [(64.0, 52), (64.9, 5), (60.0, 260), (65.0, None), (72.0, None)],  # 365.25 days a year
)
def test_a_deficit_needs_clearance_from_the_week_of_the_65th_birthday_on(age_years: float, week: int | None) -> None:
    who = replace(MAN, age_years=age_years)
    assert week_of_clearance(Member(Told(who, CLEAR))) == week
    cleared = Screening(
        is_pregnant=False, is_breastfeeding=False, eating_disorder=CLEAR.eating_disorder,
        clearance=Clearance(given_by="physician", reason="reviewed this month"),
    )  # fmt: skip
    assert week_of_clearance(Member(Told(who, cleared))) is None
    # Blanks and signs clear nothing: no professional has said that they may.
    unsaid = msgspec.structs.replace(cleared, clearance=Clearance(given_by="---", reason="-- -- -- --"))
    assert week_of_clearance(Member(Told(who, unsaid))) == week
