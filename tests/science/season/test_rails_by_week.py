"""The rails of a season's weeks, one by one, against numbers worked out by hand or the model itself."""

import math
import random

import pytest
from season_people import asked
from steelyard.science import rails
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.state import Diet, current_maintenance_kcal
from steelyard.science.person.person import Sex, TrainingStatus
from steelyard.science.phase import History
from steelyard.science.rails import Subject
from steelyard.science.season.rails_by_week import (
    least_held_kcal,
    least_start_weight_kg,
    most_deficit_kcal,
    settling_kcal,
    surplus_for_gain_rate,
)

# A kilogram of fat and of lean tissue at rest [kcal/d]: Hall KD et al. Lancet 2011;378:826-37, 13 and 92 kJ/kg/d.
FAT_UPKEEP, LEAN_UPKEEP = 13.0 / 4.184, 92.0 / 4.184
# The thermic effect of feeding takes a tenth of a change of intake, and adaptation 14 %: same source.
THERMIC, ADAPTATION = 0.1, 0.14


def test_the_least_weight_is_that_of_a_body_mass_index_of_18_5() -> None:
    # WHO technical report 894 (2000): underweight is under 18.5 kg/m2. 18.5 x 1.8 x 1.8 = 59.94 kg.
    limits = asked(height_cm=180.0).person()
    assert limits.least_weight_kg == pytest.approx(59.94)
    assert least_start_weight_kg(limits) == pytest.approx(1.05 * 59.94)


def test_an_unknown_last_cut_counts_as_a_year_ago_and_a_known_one_as_told() -> None:
    assert asked(history=History(0, None)).person().weeks_since_cut == 52
    told = asked(history=History(2, 9)).person()
    assert (told.weeks_since_cut, told.cuts_last_year) == (9, 2)
    assert asked(history=History()).person().cuts_last_year == 0


def test_growth_is_what_training_builds_a_day_at_balance() -> None:
    season = asked(status=TrainingStatus.NOVICE, years=0.5)
    model, state = season.life[:2]
    level = Diet(model.maintenance_kcal, model.baseline_carbohydrate_kcal, 1.8)
    built = float(advance(model, state, level, 2.0).tissue_kg - state.tissue_kg) / 2.0
    assert built > 0.0
    assert season.person().growth_kg_per_day == pytest.approx(built, rel=0.02)
    assert asked(dose=0.0).person().growth_kg_per_day == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize(("fat_kg", "lean_kg"), [(-6.0, 2.0), (0.0, 0.0), (-6.0, -2.0)])
def test_the_least_of_a_hold_follows_what_came_and_keeps_what_went(fat_kg: float, lean_kg: float) -> None:
    season = asked(weight_kg=80.0, fat_fraction=0.25, dose=0.0)
    limits, model = season.person(), season.life.model
    resting = limits.resting_kcal + max(0.0, fat_kg * FAT_UPKEEP + lean_kg * LEAN_UPKEEP)
    now = least_held_kcal(limits, model, limits.start_fat_kg + fat_kg, limits.start_lean_kg + lean_kg, 2800.0)
    assert now == math.ceil(resting / 10.0) * 10.0


def test_the_least_of_a_hold_over_maintenance_is_enough_at_the_end_of_its_week() -> None:
    season = asked(weight_kg=80.0, fat_fraction=0.12, status=TrainingStatus.UNTRAINED, years=0.0)
    limits, (model, state) = season.person(), season.life[:2]
    model = model._replace(offset_kcal=model.offset_kcal - 1300.0)  # who needs far less than rest is said to take
    needs = current_maintenance_kcal(model, state)
    assert needs < limits.resting_kcal - 200.0
    told = least_held_kcal(limits, model, state.fat_kg, state.lean_kg, needs)
    after = advance(model, state, Diet(told, 0.45 * told, 1.8), 7.0)
    rests = LEAN_UPKEEP * (after.lean_kg - state.lean_kg) + FAT_UPKEEP * (after.fat_kg - state.fat_kg)
    assert rests > 1.0
    assert limits.resting_kcal + rests <= told <= limits.resting_kcal + 2.0 * rests + 10.0


def _held_by_loss() -> tuple[float, float, float]:
    """The deficit where the rate of loss binds, that of a body adapted to less, and the rate on the first day."""
    season = asked(weight_kg=62.0, fat_fraction=0.33, maintenance_kcal=3400.0, sex=Sex.FEMALE, height_cm=166.0)
    limits, (model, state) = season.person(), season.life[:2]
    adapted = state._replace(adaptation_kcal=-60.0)
    most, less = (most_deficit_kcal(limits, model, body, body.fat_kg, 3400.0, 4.0) for body in (state, adapted))
    diet = Diet(3400.0 - most, model.baseline_carbohydrate_kcal, 2.0)
    lost = 7.0 * float(state.tissue_kg - advance(model, state, diet, 1.0).tissue_kg)
    return float(most), float(less), lost / 62.0


def test_the_rate_of_loss_is_held_at_a_hundredth_a_week() -> None:
    most, less, rate = _held_by_loss()
    # The linear model of tissue's energy is a few parts in a hundred on the safe side.
    assert 0.95 * 0.01 < rate <= 0.01
    # What adaptation may give back counts in full, and as a larger deficit takes a little more lean tissue.
    assert most - 60.1 < less <= most - 60.0


def test_an_adaptation_to_more_is_no_room_for_a_larger_deficit() -> None:
    season = asked(weight_kg=62.0, fat_fraction=0.33, maintenance_kcal=3400.0, sex=Sex.FEMALE, height_cm=166.0)
    limits, (model, state) = season.person(), season.life[:2]
    fed = state._replace(adaptation_kcal=60.0)
    most = [most_deficit_kcal(limits, model, body, body.fat_kg, 3400.0, 4.0) for body in (state, fed)]
    assert most[0] == pytest.approx(most[1])


def _surplus(years: float = 2.5, day: float = 0.0, adaptation_kcal: float = 0.0, above_kcal: float = 0.0) -> float:
    """The surplus at which half a percent is gained a week, of a body whose maintenance rose by ``above_kcal``."""
    season = asked(status=TrainingStatus.NOVICE, years=years)
    model, state = season.life[:2]
    state = state._replace(day=day, adaptation_kcal=adaptation_kcal)
    kcal = model.maintenance_kcal + above_kcal
    return float(surplus_for_gain_rate(season.person(), model, state, state.fat_kg, kcal, 80.0, 0.005))


def test_as_training_builds_less_the_years_on_more_surplus_is_needed() -> None:
    # A year on, training builds as it does in somebody a year more experienced; the surplus makes up for the rest.
    now, later = _surplus(years=0.5), _surplus(years=0.5, day=365.25)
    assert later > now + 5.0
    season = asked(status=TrainingStatus.NOVICE, years=0.5)
    model, state = season.life[:2]
    state = state._replace(day=365.25)
    diet = Diet(model.maintenance_kcal + later, model.baseline_carbohydrate_kcal, 1.8)
    rate = float(advance(model, state, diet, 2.0).tissue_kg - state.tissue_kg) / 80.0 * 7.0 / 2.0
    assert 0.93 * 0.005 < rate <= 0.005


@pytest.mark.parametrize("scale", [0.6, 1.5])
def test_whoever_stores_more_as_lean_tissue_is_held_to_the_same_rate(scale: float) -> None:
    season = asked(status=TrainingStatus.NOVICE, years=0.5)
    model, state = season.life[:2]
    model = model._replace(partition_scale=scale)
    surplus = surplus_for_gain_rate(season.person(), model, state, state.fat_kg, model.maintenance_kcal, 80.0, 0.005)
    diet = Diet(model.maintenance_kcal + surplus, model.baseline_carbohydrate_kcal, 1.8)
    rate = float(advance(model, state, diet, 2.0).tissue_kg - state.tissue_kg) / 80.0 * 7.0 / 2.0
    assert 0.93 * 0.005 < rate <= 0.005


def test_adaptation_left_from_more_food_is_taken_off_the_surplus() -> None:
    usual = _surplus()
    # What is left of it is energy that is no longer burnt; a tenth of eating it would be.
    assert _surplus(adaptation_kcal=45.0) == pytest.approx(usual - 45.0 / (1.0 - THERMIC))
    assert _surplus(adaptation_kcal=-45.0) == pytest.approx(usual)
    # The adaptation that a higher maintenance keeps up does not fade.
    assert _surplus(adaptation_kcal=45.0, above_kcal=200.0) == pytest.approx(
        usual - (45.0 - ADAPTATION * 200.0) / (1.0 - THERMIC)
    )


def test_a_body_leaving_much_food_has_its_glycogen_and_the_moving_of_its_water_over() -> None:
    model, state = asked().life[:2]
    # 0.2 kg of glycogen over the usual half kilogram at 17.6 MJ/kg (Hall KD. Int J Obes 2008;32:573-6), in 28 days.
    full = state._replace(glycogen_kg=0.7, water_kg=state.water_kg)
    per_day = 0.2 * 17.6e3 / 4.184 / 28.0
    carried = max(0.0, float(full.carried_kg))
    assert carried > 0.1
    moved = float(model.activity_kcal_per_kg) * carried
    assert settling_kcal(model, full, 28.0) == pytest.approx(per_day + moved, rel=1e-3)
    # Too little glycogen owes nothing.
    empty = state._replace(glycogen_kg=0.3, water_kg=state.water_kg)
    assert settling_kcal(model, empty, 28.0) == pytest.approx(
        float(model.activity_kcal_per_kg) * max(0.0, float(empty.carried_kg)), abs=1e-9
    )


def test_the_largest_deficit_still_holds_when_the_shortest_cut_of_it_is_over() -> None:
    """Against bisection with the rails of single people, where energy availability binds and fades as fat is lost.

    Two weeks at 9,441 kcal for a kilogram of fat (39.5 MJ: Hall KD. Int J Obes 2008;32:573-6).
    """
    rng = random.Random(8)
    compared = 0
    for _ in range(500):
        weight, fraction = rng.uniform(50.0, 130.0), rng.uniform(0.16, 0.32)
        season = asked(
            weight_kg=weight, fat_fraction=fraction, maintenance_kcal=weight * rng.uniform(26.0, 36.0),
            sex=rng.choice([Sex.MALE, Sex.FEMALE, Sex.UNSPECIFIED]),
        )  # fmt: skip
        who, (model, state) = season.member.subject, season.life[:2]
        weeks = rng.choice([2, 7])

        def least(deficit: float, who: Subject = who, weeks: int = weeks) -> tuple[float, str]:
            """The least intake of the body that two weeks of a deficit leave, and its rule."""
            lost = 14.0 / 9441.0 * deficit
            # With 0.2 kg of water, as new training may bring, which is not fat either.
            then = who._replace(weight_kg=who.weight_kg - lost + 0.2, fat_kg=who.fat_kg - lost)
            return rails.least_on_day_kcal(then, weeks)

        low, high = 0.0, rails.deficit_limits(who, weeks)[0].deficit_kcal
        # Less than none is none.
        most = most_deficit_kcal(season.person(), model, state, state.fat_kg, who.maintenance_kcal, float(weeks))
        found = max(0.0, float(most))
        if who.maintenance_kcal - least(high)[0] >= high or least(found)[1] != rails.AVAILABILITY:
            continue
        for _ in range(40):
            middle = 0.5 * (low + high)
            low, high = (middle, high) if who.maintenance_kcal - least(middle)[0] >= middle else (low, middle)
        assert found == pytest.approx(low, abs=1.0) or found < low - 40.0  # there the rate of loss binds
        compared += found > low - 40.0
    assert compared > 10
