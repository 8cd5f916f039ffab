"""What a log says as it stands, and what is warned of in it; the limits are typed here again."""

import random

import numpy as np
import pytest
from steelyard.science.rails import judge_logged, logged_of
from steelyard.science.rails.subject import Logged, Scale

from .test_guard_rails import subject


def test_the_loss_is_the_slower_of_two_straight_lines_over_a_fortnight() -> None:
    """Against numpy's least squares."""
    rng = random.Random(6)
    for _ in range(50):
        slope = rng.uniform(-0.15, 0.02)
        weights = [(day, 90.0 + slope * day + rng.gauss(0.0, 0.4)) for day in range(1, 29) if rng.random() < 0.9]
        halves = []
        for first in (1, 15):
            half = [(day, kg) for day, kg in weights if first <= day < first + 14]
            days, kilograms = np.array(half).T
            halves.append(-7.0 * np.polyfit(days, kilograms, 1)[0] / kilograms.mean())
        assert logged_of(weights, [], 28).loss_share == pytest.approx(max(0.0, min(halves)), rel=1e-9, abs=1e-12)


def _line(rows: list[tuple[int, float]]) -> float:
    days, kilograms = np.array(rows).T
    return float(-7.0 * np.polyfit(days, kilograms, 1)[0] / kilograms.mean())


@pytest.mark.parametrize("every", [2, 3, 4, 7, 10])
def test_who_weighs_seldom_is_judged_by_all_four_weeks(every: int) -> None:
    """Against numpy's least squares; nine weights of a fortnight are more than any of them has."""
    weights = [(day, 62.0 - 0.2 * day) for day in range(28, 0, -every)]
    assert logged_of(weights, [], 28).loss_share == pytest.approx(_line(weights), rel=1e-9)
    slip = (27, 2.2 * weights[0][1])
    assert logged_of([*weights, slip], [], 28).loss_share == pytest.approx(_line(weights), rel=1e-9), "pounds"


def test_a_half_with_few_weights_gives_way_to_all_of_it_and_the_slower_counts() -> None:
    rng = random.Random(4)
    for _ in range(30):
        weights = [(day, 90.0 - 0.1 * day + rng.gauss(0.0, 0.4)) for day in [*range(1, 15, 3), *range(15, 29)]]
        found = [_line(weights), _line([row for row in weights if row[0] > 14])]
        assert logged_of(weights, [], 28).loss_share == pytest.approx(max(0.0, min(found)), rel=1e-9, abs=1e-12)


def test_few_weighings_or_full_days_say_nothing() -> None:
    weights = [(day, 90.0 - 0.15 * day) for day in range(1, 29)]
    assert logged_of(weights[-19:], [], 28).loss_share == 0.0, "water of a first week is in a line of three"
    assert logged_of([weights[0], weights[-1]], [], 28).loss_share == 0.0
    assert logged_of([(day - 60, kg) for day, kg in weights], [], 28) == Logged()
    eaten = [(day, 2000.0 + 10.0 * day) for day in range(1, 29)]
    assert logged_of(weights, eaten[-6:], 28).eaten_kcal is None
    assert logged_of(weights, eaten[:1] + eaten[-6:], 28).eaten_kcal == pytest.approx((2010.0 + 6 * 2255.0) / 7)
    assert logged_of(weights, eaten, 28).eaten_kcal == pytest.approx(2000.0 + 10.0 * 21.5)  # the 15th to the 28th day


def test_the_level_is_the_middle_of_the_newest_weights() -> None:
    weights = [(day, 90.0 - 0.1 * day) for day in range(1, 29)]
    assert logged_of(weights, [], 28).weight_kg == pytest.approx(87.4)
    assert logged_of([(1, 60.0), (20, 58.0)], [], 28).weight_kg == 60.0, "of two the one that accuses nobody"
    assert logged_of([(28, 58.0)], [], 28).weight_kg is None
    assert Logged(weight_kg=58.0).lighter_kg(60.0) == 58.0
    assert Logged(weight_kg=59.0).lighter_kg(60.0) is None, "a week's water"
    assert Logged(weight_kg=58.0).lighter_kg(128.0) is None, "a profile in pounds"


def test_a_fast_loss_is_warned_of_and_told_in_percent_of_body_mass() -> None:
    """1 % of body mass a week: Helms et al. 2014."""
    assert judge_logged(subject(logged=Logged(None, 0.0099))) == []
    (action,) = judge_logged(subject(logged=Logged(None, 0.0123)))
    assert (action.id, action.limit, action.observed) == ("tissue_loss", 0.01, 0.0123)
    assert action.message.params["percent"] == pytest.approx(1.23)


def test_what_was_really_eaten_is_held_against_floor_and_availability() -> None:
    """1,500 kcal/d in men (Jensen et al. 2014); 25 kcal/kg of fat-free mass beside training, of 68 kg here."""
    who = subject(scale=Scale(0.8, 0.8), physical_kcal=3000.0)

    def found(logged_kcal: float, **changed: object) -> dict[str, float | None]:
        said = judge_logged(who._replace(logged=Logged(logged_kcal), **changed))
        return {action.id: action.observed for action in said}

    lean = found(0.8 * (25.0 * 68.0 + 250.0 - 1.0))
    assert lean == {"energy_availability": pytest.approx(25.0 - 1.0 / 68.0)}
    assert found(0.8 * (25.0 * 68.0 + 250.0 + 1.0)) == {}
    # A tenth under the floor is said, chance is not.
    obese = {"fat_kg": 32.0}
    assert found(0.8 * 1340.0, **obese)["intake_floor"] == pytest.approx(1340.0)
    assert "intake_floor" not in found(0.8 * 1380.0, **obese)
