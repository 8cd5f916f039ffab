"""The common draws of uncertainty, and the chances counted over them."""

import numpy as np
import pytest
from scipy import stats
from scipy.stats import qmc
from season_people import asked, having
from steelyard.science.body.state import current_maintenance_kcal
from steelyard.science.body.uncertainty import Body
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.season.asked import Asked
from steelyard.science.season.draws import DRAWS, chance_to_beat, drawn_lives, live_draws, normal_scores, stack
from steelyard.science.season.policy import Policy, ReadyMade
from steelyard.science.season.run import Outcome, live


def outcomes(season: Asked, policies: list[Policy]) -> Outcome:
    return live_draws(
        drawn_lives(season.member.body), stack(policies), season.person(), season.calendar, season.limits.band.upper
    )


def test_scores_are_halton_points_through_the_normal_distribution() -> None:
    """Outside check: scipy's Halton sequence (unscrambled) and its normal quantile."""
    points = qmc.Halton(d=6, scramble=False).random(DRAWS // 2 + 1)[1:]
    expected = stats.norm.ppf(points)
    scores = normal_scores()
    assert scores.shape == (DRAWS, 6)
    np.testing.assert_allclose(scores[: DRAWS // 2], expected, rtol=1e-9, atol=1e-12)
    np.testing.assert_array_equal(scores[DRAWS // 2 :], -scores[: DRAWS // 2])


def test_scores_are_spread_like_independent_normals() -> None:
    scores = normal_scores()
    np.testing.assert_allclose(scores.mean(axis=0), 0.0, atol=1e-12)
    # The tails beyond 1 - 1/128 are not reached, which takes some of the variance.
    assert np.all((scores.std(axis=0) > 0.93) & (scores.std(axis=0) < 1.01))
    off_diagonal = np.corrcoef(scores.T)[~np.eye(6, dtype=bool)]
    # The standard error of a correlation of 256 independent pairs is 0.0625.
    assert np.abs(off_diagonal).max() < 0.125


def test_the_drawn_are_believed_to_be_the_expected() -> None:
    season = asked()
    life = drawn_lives(season.member.body)
    np.testing.assert_allclose(life.state.fat_kg - life.fat_error_kg, season.member.body.fat_kg.mean)
    balance = current_maintenance_kcal(life.model, life.state)
    np.testing.assert_allclose(balance - life.maintenance_error_kcal, season.member.body.maintenance_kcal.mean)
    np.testing.assert_allclose(life.state.weight_kg, season.member.body.weight_kg)


def test_without_uncertainty_in_the_body_draws_surround_the_expected() -> None:
    season = asked()
    sure = Body(*season.member.body)._replace(fat_kg=Estimate(12.0, 1e-9), maintenance_kcal=Estimate(2800.0, 1e-9))
    known = season._replace(member=having(season.member, body=sure))
    policy = known.ready_made(ReadyMade.SLOW_GAIN_NO_CUT)
    expected = live(known.life, policy, known.person(), known.calendar, 0.17)
    lean = outcomes(known, [policy]).lean_gained_kg[0]
    assert np.percentile(lean, 10) < expected.lean_gained_kg < np.percentile(lean, 90)


def test_the_same_strategy_ties_with_itself() -> None:
    season = asked()
    policy = season.ready_made(ReadyMade.SLOW_GAIN_RARE_MINI_CUTS)
    assert chance_to_beat(outcomes(season, [policy, policy]), 0, 1) == (0.5, 0.5, 0.5, False)


def test_chances_of_a_pair_add_up_and_order_the_clear_cases() -> None:
    season = asked(weeks=104)
    policies = [season.ready_made(name) for name in ReadyMade]
    drawn = outcomes(season, policies)
    for i in range(4):
        for j in range(4):
            one, other = chance_to_beat(drawn, i, j), chance_to_beat(drawn, j, i)
            assert one.is_clear is other.is_clear
            for a, b in zip(one[:3], other[:3], strict=True):
                assert a + b == pytest.approx(1.0)
    fast_long, often = 1, 2
    assert chance_to_beat(drawn, often, fast_long).less_fat > 0.9
    no_cut = 3
    assert chance_to_beat(drawn, no_cut, often).fewer_days_dieting > 0.9


def test_order_and_company_do_not_change_an_outcome() -> None:
    """Common draws: what a strategy comes to does not depend on what it is compared with."""
    season = asked()
    policies = [season.ready_made(name) for name in ReadyMade]
    together = outcomes(season, policies)
    alone = outcomes(season, policies[2:3])
    for both, one in zip(together, alone, strict=True):
        np.testing.assert_allclose(both[2], one[0], rtol=1e-12)
