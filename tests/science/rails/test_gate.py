"""The gate lets nothing past a rail, and nothing but the gate makes what an answer tells.

Limits are typed here again; their sources stand beside them in the table of rails.
"""

from typing import Any

import pytest
from lifters import CLEAR, screened
from steelyard.science import rails
from steelyard.science.person.person import Sex, TrainingStatus
from steelyard.science.rails.gate import Cleared, Purpose, ToldWeek, clear, first_broken, nothing_told
from steelyard.science.rails.subject import Scale, Subject

PREGNANT = screened(is_pregnant=True)


def body(**changed: Any) -> Subject:
    """A trained man of 80 kg at 15 % measured fat, unless ``changed``."""
    values: dict[str, Any] = {
        "sex": Sex.MALE, "age_years": 30.0, "height_cm": 180.0, "weight_kg": 80.0, "fat_kg": 12.0,
        "maintenance_kcal": 2850.0, "resting_kcal": 1780.0, "rested_fat_kg": 12.0,
        "rested_lean_kg": 68.0, "exercise_kcal": 250.0, "training_status": TrainingStatus.INTERMEDIATE,
        "screening": CLEAR, "physical_kcal": 2850.0,
    }  # fmt: skip
    return Subject(**{**values, **changed})


def week(intake: float, before: Subject, after: Subject | None = None, purpose: Purpose = Purpose.DEFICIT) -> ToldWeek:
    """A week; the body stays as it is unless ``after`` says otherwise."""
    return ToldWeek(intake, before, before if after is None else after, purpose)


def rule(*weeks: ToldWeek, weeks_before: float = 0.0) -> str | None:
    """The first rule that weeks break."""
    broken = first_broken(weeks, weeks_before=weeks_before)
    return None if broken is None else broken.rule


LEAN = body(fat_kg=8.0)
LOGS_LITTLE = Scale(ratio=0.7, most=0.8)


@pytest.mark.parametrize(
    ("inside", "outside", "broken"),
    [
        # 30 % of 2850 is 855.
        ([week(1996, body(fat_kg=13.0))], [week(1993, body(fat_kg=13.0))], "deficit_share"),
        # 290 kJ on each of 8 kg is 554.5 kcal.
        ([week(2296, LEAN)], [week(2294, LEAN)], "fat_supply"),
        # 25 kcal on 68 kg, and 250 of training.
        ([week(1950, body(maintenance_kcal=2600))], [week(1948, body(maintenance_kcal=2600))], "energy_availability"),
        # On the last day too: 30 kcal on 68 kg and 250 is 2290, past six weeks.
        ([week(2290, body())] * 7, [week(2288, body())] * 7, "energy_availability"),
        ([week(2000, body(fat_kg=13.0))], [week(2000, body(fat_kg=13.0), body(fat_kg=4.7))], "body_fat"),
        # 18.5 kg/m2 at 180 cm is 59.94 kg.
        (
            [week(2500, body(weight_kg=60.5), body(weight_kg=60.0))],
            [week(2500, body(weight_kg=60.5), body(weight_kg=59.9))],
            "bmi",
        ),
        # A week's water is no matter: of 59.5 kg on the scale 0.6 kg is missing water.
        (
            [week(2500, body(weight_kg=60.5), body(weight_kg=59.5, carried_kg=-0.6))],
            [week(2500, body(weight_kg=60.5), body(weight_kg=59.5, carried_kg=-0.4))],
            "bmi",
        ),
        # 1 % of 80 kg a week.
        ([week(2300, body(), body(weight_kg=79.21))], [week(2300, body(), body(weight_kg=79.19))], "tissue_loss"),
    ],
)
def test_a_deficit_is_held_to_each_rule(inside: list[ToldWeek], outside: list[ToldWeek], broken: str) -> None:
    assert rule(*inside) is None
    assert rule(*outside) == broken


def test_protein_in_a_deficit_is_held() -> None:
    assert rule(week(2300, body())._replace(protein_g=128.0)) is None
    assert rule(week(2300, body())._replace(protein_g=127.0)) == "protein"
    assert rule(week(2850, body(), purpose=Purpose.HOLD)._replace(protein_g=60.0)) is None


@pytest.mark.parametrize("purpose", [Purpose.HOLD, Purpose.GAIN])
def test_holds_and_gains_have_floors(purpose: Purpose) -> None:
    assert rule(week(1780, body(), purpose=purpose)) is None
    assert rule(week(1778, body(), purpose=purpose)) == "intake_floor"
    # Somebody who logs eight tenths at the most eats 1780 where 1424 is told, which is 0.8 of rest as well.
    little = body(scale=LOGS_LITTLE, maintenance_kcal=2000.0)
    assert rule(week(1424, little, purpose=purpose)) is None
    assert rule(week(1422, little, purpose=purpose)) == "intake_floor"


# A kilogram of fat and of lean tissue at rest: Hall KD, 2011, 13 and 92 kJ/kg/d. 2 kg and 4 kg are 94 kcal/d.
GAINED = {"weight_kg": 86.0, "fat_kg": 14.0}


@pytest.mark.parametrize("purpose", [Purpose.HOLD, Purpose.GAIN, Purpose.BREAK])
def test_what_was_gained_rests_too_and_has_its_floors(purpose: Purpose) -> None:
    began, gained = body(training_status=TrainingStatus.UNTRAINED), body(**GAINED)
    first = [week(2850, began, purpose=Purpose.HOLD)] * 4
    assert rule(*first, week(1875, gained, purpose=purpose)) is None
    assert rule(*first, week(1872, gained, purpose=purpose)) == "intake_floor"
    # Of what was lost the equations' own figure stays.
    lost = body(weight_kg=76.0, fat_kg=10.0)
    assert rule(*first, week(1780, lost, purpose=purpose)) is None
    assert rule(*first, week(1778, lost, purpose=purpose)) == "intake_floor"


def test_a_long_deficit_is_held_to_the_rest_of_the_body_that_it_begins_with() -> None:
    def cut(kcal: float, **changed: Any) -> list[ToldWeek]:
        return [week(kcal, body(exercise_kcal=-400.0, maintenance_kcal=2400.0, **changed))] * 7

    assert rule(*cut(1780)) is None
    assert rule(*cut(1778)) == "intake_floor"
    assert rule(*cut(1875, **GAINED)) is None
    assert rule(*cut(1872, **GAINED)) == "intake_floor"


def test_what_is_carried_on_the_first_day_is_no_tissue_that_rests() -> None:
    # Of 80 kg a kilogram is water: who has gained a kilogram of lean tissue and lost the water rests 22 kcal more.
    began = body().rested_with(1.0)
    assert began.resting_now_kcal == pytest.approx(1780.0 + 92.0 / 4.184)
    assert began._replace(carried_kg=1.0).resting_now_kcal == pytest.approx(1780.0)


def test_need_is_told_to_those_whose_intake_may_not_be_lowered() -> None:
    # In pregnancy nothing is taken off; else 10 %. A ratio under 0.8 is not believed.
    assert rule(week(2850, body(screening=PREGNANT), purpose=Purpose.HOLD)) is None
    assert rule(week(2840, body(screening=PREGNANT), purpose=Purpose.HOLD)) == "intake_floor"
    young = body(age_years=16.0)
    assert rule(week(2565, young, purpose=Purpose.HOLD)) is None
    assert rule(week(2560, young, purpose=Purpose.HOLD)) == "intake_floor"
    logs = young._replace(scale=LOGS_LITTLE)
    assert rule(week(0.8 * 2565, logs, purpose=Purpose.HOLD)) is None
    assert rule(week(0.8 * 2560, logs, purpose=Purpose.HOLD)) == "intake_floor"


def test_deficits_less_than_four_weeks_apart_are_one() -> None:
    cut = [week(2000, body(maintenance_kcal=2700.0, fat_kg=13.0))] * 4
    hold = [week(2850, body(), purpose=Purpose.HOLD)]
    assert rule(*cut, *hold * 4, *cut) is None
    assert rule(*cut, *hold * 3, *cut) == "energy_availability"
    assert rule(*cut, weeks_before=3.0) == "energy_availability"
    # A hold before the first of them is no deficit.
    assert rule(*hold * 3, *cut) is None


def test_what_was_eaten_before_makes_no_deficit_larger() -> None:
    # 30 % of 2850 is 855, whatever the days after eating more need besides.
    first, later = body(fat_kg=16.0), body(fat_kg=16.0, maintenance_kcal=2900.0)
    assert rule(week(1996, first, later), week(1996, later, first)) is None
    assert rule(week(1993, first, later)) == "deficit_share"


def test_a_gain_is_held_to_its_rate() -> None:
    # 0.25 % of 80 kg a week, trained for some years.
    assert rule(week(3200, body(), body(weight_kg=80.2), Purpose.GAIN)) is None
    assert rule(week(3200, body(), body(weight_kg=80.21), Purpose.GAIN)) == "gain_rate"
    pregnant = body(screening=PREGNANT)
    assert rule(week(3200, pregnant, pregnant._replace(weight_kg=80.4), Purpose.GAIN)) is None


def test_only_the_gate_clears() -> None:
    assert clear([2300], [week(2300, body())], "phase").value == [2300]
    with pytest.raises(rails.Refused) as refused:
        clear([1000], [week(1000, body())], "phase.weeks")
    assert refused.value.field == "phase.weeks"
    with pytest.raises(TypeError):
        Cleared([1000], object())
    with pytest.raises(TypeError):
        nothing_told([1000])
    assert nothing_told([]).value == []


def test_another_body_is_the_same_person() -> None:
    start = body()
    changed = start._replace(weight_kg=79.0, fat_kg=13.5, maintenance_kcal=2555.0, carried_kg=-0.7)
    assert start.with_body(79.0, 13.5, 2555.0, -0.7) == changed
    assert type(changed) is Subject


def test_a_body_between_two_weeks_is_judged_at_the_lower_intake() -> None:
    between = body()
    enough, little = week(2300, body(), between), week(900, between, body())
    assert rule(enough) is None
    assert rule(enough, little) is not None
    assert rule(week(2300, body(), between), week(2400, between, body())) is None


def test_a_refusal_names_the_field_of_its_week() -> None:
    weeks = [week(2300, body()), week(900, body())]
    with pytest.raises(rails.Refused) as refused:
        clear(weeks, weeks, ["first", "second"])
    assert refused.value.field == "second"


def test_weeks_that_rise_to_a_gain_are_part_of_its_rate() -> None:
    """0.25 % of 80 kg a week is 0.2 kg: over all of the weeks, and not over those alone that are over maintenance."""
    start, then = body(), body(weight_kg=79.95)
    grown, fast = body(weight_kg=80.2), body(weight_kg=80.4)
    rising = week(2800, start, then, Purpose.RISING)
    assert rule(rising, week(3000, then, grown, Purpose.GAIN)) is None
    assert rule(week(3000, then, grown, Purpose.GAIN)) == "gain_rate"
    assert rule(rising, week(3100, then, body(weight_kg=80.45), Purpose.GAIN)) == "gain_rate"
    assert rule(rising, week(2850, then, then, Purpose.HOLD), week(3000, then, fast, Purpose.GAIN)) == "gain_rate"
