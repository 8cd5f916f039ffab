"""Each guard rail just inside and just outside its limit, and each refusal.

Limits are typed here again; their sources stand beside them in ``rail_table``.
"""

import random
import re
from typing import Any

import pytest
from lifters import CLEAR, screened
from steelyard.http.languages import LANGUAGES, english, said
from steelyard.science import rails
from steelyard.science.person.person import Sex, TrainingStatus
from steelyard.science.person.screening import Clearance, Condition, EatingDisorder, Medicine
from steelyard.science.rails import broken_rules, table
from steelyard.science.rails.subject import Refused, Scale, Subject
from steelyard.science.register import say

CLEARED = Clearance(given_by="physician", reason="well controlled, reviewed this month")


def subject(**changed: Any) -> Subject:
    """A trained man of 80 kg at 15 % fat, unless ``changed``."""
    values = {
        "sex": Sex.MALE,
        "age_years": 30.0,
        "height_cm": 180.0,
        "weight_kg": 80.0,
        "fat_kg": 12.0,
        "maintenance_kcal": 2850.0,
        "resting_kcal": 1780.0,
        "rested_fat_kg": 12.0,
        "rested_lean_kg": 68.0,
        "exercise_kcal": 250.0,
        "training_status": TrainingStatus.INTERMEDIATE,
        "screening": CLEAR,
    }
    return Subject(**{**values, **changed})


def woman(**changed: Any) -> Subject:
    values = {
        "sex": Sex.FEMALE,
        "weight_kg": 62.0,
        "height_cm": 166.0,
        "fat_kg": 16.0,
        "maintenance_kcal": 2100.0,
        "rested_fat_kg": 16.0,
        "rested_lean_kg": 46.0,
    }
    return subject(**{**values, **changed})


# --- refusals --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("who", "rule", "field"),
    [
        pytest.param(subject(age_years=17.9), "age", "age_years", id="under-18"),
        pytest.param(subject(age_years=65.0), "age", "age_years", id="65-without-clearance"),
        pytest.param(subject(screening=None), "screening_unanswered", "screening", id="unanswered"),
        pytest.param(
            woman(screening=screened(is_pregnant=True)), "pregnancy_lactation", "screening.is_pregnant", id="pregnant"
        ),
        pytest.param(
            woman(screening=screened(is_breastfeeding=True)),
            "pregnancy_lactation",
            "screening.is_breastfeeding",
            id="breastfeeding",
        ),
        pytest.param(
            subject(screening=screened(eating_disorder=EatingDisorder.CURRENT)),
            "eating_disorder",
            "screening.eating_disorder",
            id="eating-disorder-current",
        ),
        pytest.param(
            subject(screening=screened(eating_disorder=EatingDisorder.PAST)),
            "eating_disorder",
            "screening.eating_disorder",
            id="eating-disorder-past",
        ),
        pytest.param(subject(height_cm=208.0), "bmi", "weight_kg", id="underweight"),
        pytest.param(subject(fat_kg=0.06 * 80), "body_fat", "body_fat", id="body-fat-man"),
        pytest.param(woman(fat_kg=0.14 * 62), "body_fat", "body_fat", id="body-fat-woman"),
        pytest.param(
            subject(sex=Sex.UNSPECIFIED, fat_kg=0.13 * 80),
            "body_fat",
            "body_fat",
            id="stricter-of-both",
        ),
    ],
)
def test_refused(who: Subject, rule: str, field: str) -> None:
    with pytest.raises(Refused) as refused:
        rails.check_person(who)
    assert refused.value.action.id == rule
    assert refused.value.action.action == "refused"
    assert refused.value.field == field
    assert english(refused.value.action.message)


@pytest.mark.parametrize("under", [0.06, 0.02, 0.004, 0.0001])
@pytest.mark.parametrize("tag", LANGUAGES)
def test_what_lies_under_a_limit_never_reads_as_the_limit(tag: str, under: float) -> None:
    """18.46 is under 18.5, and "at 18.5, under 18.5 is underweight" is no reason."""
    with pytest.raises(Refused) as light:
        rails.check_person(subject(weight_kg=(18.5 - under) * 1.8**2))
    with pytest.raises(Refused) as lean:
        rails.refuse_target(Sex.MALE, 0.06 - under / 100.0, "phase.target_fat_fraction")
    ends = (broken_rules.underweight(18.5 - under), broken_rules.too_lean(Sex.MALE, 0.06 - under / 100.0))
    found = [(light.value.action, 18.5), (lean.value.action, 6.0), (ends[0], 18.5), (ends[1], 6.0)]
    for action, limit in found:
        figures = [float(each.replace(",", ".")) for each in re.findall(r"\d+(?:[.,]\d+)?", said(action.message, tag))]
        assert figures.count(limit) == 1, said(action.message, tag)
        assert limit - under - 0.01 < min(figures) < limit


@pytest.mark.parametrize("condition", list(Condition))
def test_every_listed_condition_needs_clearance(condition: Condition) -> None:
    with pytest.raises(Refused) as refused:
        rails.check_person(subject(screening=screened(conditions=(condition,))))
    assert refused.value.action.id == "medical"
    assert refused.value.field == "screening.conditions"
    assert refused.value.action.message.params == {"condition": condition, "others": 0}
    assert "physician" in english(refused.value.action.message)
    echoed = rails.check_person(subject(screening=screened(conditions=(condition,), clearance=CLEARED)))
    assert any(CLEARED.reason in english(action.message) and action.id == "medical" for action in echoed)


@pytest.mark.parametrize("medicine", list(Medicine))
def test_every_listed_medicine_needs_clearance(medicine: Medicine) -> None:
    with pytest.raises(Refused) as refused:
        rails.check_person(subject(screening=screened(medicines=(medicine,))))
    assert (refused.value.action.id, refused.value.field) == ("medical", "screening.medicines")
    assert rails.check_person(subject(screening=screened(medicines=(medicine,), clearance=CLEARED)))


@pytest.mark.parametrize(
    "answers",
    [
        {"is_pregnant": True},
        {"is_breastfeeding": True},
        {"eating_disorder": EatingDisorder.CURRENT},
        {"eating_disorder": EatingDisorder.PAST},
    ],
)
def test_no_clearance_opens_what_allows_none(answers: dict[str, Any]) -> None:
    with pytest.raises(Refused):
        rails.check_person(woman(screening=screened(clearance=CLEARED, **answers)))


def test_no_clearance_opens_minor_age_or_low_weight() -> None:
    for who in (subject(age_years=17.0), subject(height_cm=208.0), subject(fat_kg=4.0)):
        with pytest.raises(Refused):
            rails.check_person(who._replace(screening=screened(clearance=CLEARED)))


def test_a_pregnancy_while_breastfeeding_takes_neither_from_the_other() -> None:
    def least(**answers: bool) -> float:
        who = woman(maintenance_kcal=2300.0, physical_kcal=2300.0, screening=screened(**answers))
        return rails.held_kcal(who, 0.0)

    # All of what is needed in pregnancy, nine tenths of it else; milk of 400 kcal a day (Institute of Medicine 2005).
    pregnant, nursing = least(is_pregnant=True), least(is_breastfeeding=True)
    assert (pregnant, nursing) == (2300.0, 2430.0)
    assert least(is_pregnant=True, is_breastfeeding=True) == 2300.0 + 400.0


# --- just inside -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("who", "warned"),
    [
        pytest.param(subject(), set(), id="ordinary-man"),
        pytest.param(woman(), set(), id="ordinary-woman"),
        pytest.param(subject(age_years=18.0), {"age"}, id="18"),
        pytest.param(subject(age_years=19.9), {"age"}, id="19"),
        pytest.param(subject(age_years=20.0), set(), id="20"),
        pytest.param(subject(age_years=64.9), set(), id="64"),
        pytest.param(subject(age_years=65.0, screening=screened(clearance=CLEARED)), {"age"}, id="65-cleared"),
        pytest.param(subject(height_cm=100 * (80 / 18.51) ** 0.5), {"bmi"}, id="bmi-18.5"),
        pytest.param(subject(height_cm=100 * (80 / 19.99) ** 0.5), {"bmi"}, id="bmi-under-20"),
        pytest.param(subject(height_cm=100 * (80 / 20.01) ** 0.5), set(), id="bmi-20"),
        pytest.param(subject(fat_kg=0.061 * 80), set(), id="body-fat-man"),
        pytest.param(woman(fat_kg=0.141 * 62), set(), id="body-fat-woman"),
        pytest.param(
            subject(screening=screened(eating_disorder=EatingDisorder.UNSURE)), {"eating_disorder"}, id="unsure"
        ),
    ],
)
def test_allowed(who: Subject, warned: set[str]) -> None:
    actions = rails.check_person(who)
    assert {action.id for action in actions} == warned
    assert all(action.action == "warned" for action in actions)


# --- limits on a deficit ---------------------------------------------------------------------------------------


def limit(who: Subject, rule: str, weeks: float = 6) -> float:
    return next(found.deficit_kcal for found in rails.deficit_limits(who, weeks) if found.rule == rule)


def test_the_limits_of_an_ordinary_man() -> None:
    # 30 % of 2850; 290 kJ/kg on 12 kg; 25 kcal/kg on 68 kg and 250 of training; floor of 1500.
    man = subject()
    assert limit(man, "deficit_share") == pytest.approx(0.30 * 2850)
    assert limit(man, "fat_supply") == pytest.approx(290 / 4.184 * 12)
    assert limit(man, "energy_availability") == pytest.approx(2850 - 25 * 68 - 250)
    assert limit(man, "intake_floor") == pytest.approx(2850 - 1500)
    small = woman(resting_kcal=1400.0)
    assert limit(small, "intake_floor") == pytest.approx(2100 - 1200)
    assert limit(small._replace(resting_kcal=1780.0), "intake_floor") == pytest.approx(2100 - 0.8 * 1780)
    assert limit(small._replace(sex=Sex.UNSPECIFIED), "intake_floor") == pytest.approx(2100 - 1500)


def test_a_longer_phase_has_stricter_limits() -> None:
    # More than six weeks is a cut: resting energy is the floor, and no low energy availability.
    man = subject()
    assert limit(man, "intake_floor", 6.1) == pytest.approx(2850 - 1780)
    assert limit(man, "energy_availability", 6.1) == pytest.approx(2850 - 30 * 68 - 250)
    assert limit(man, "intake_floor", 6.0) == pytest.approx(2850 - 1500)


def test_the_strictest_limit_comes_first() -> None:
    found = rails.deficit_limits(subject())
    assert [x.deficit_kcal for x in found] == sorted(x.deficit_kcal for x in found)
    assert {x.rule for x in found} == {"deficit_share", "fat_supply", "energy_availability", "intake_floor", "protein"}


def test_an_intake_asked_for_is_refused_just_outside_and_not_just_inside() -> None:
    man = subject()
    strictest = rails.deficit_limits(man)[0]
    least = man.maintenance_kcal - strictest.deficit_kcal
    rails.refuse_deficit(man, least, 4, "schedule[0].intake_kcal")
    with pytest.raises(Refused) as refused:
        rails.refuse_deficit(man, least - 10, 4, "schedule[0].intake_kcal")
    assert refused.value.action.id == strictest.rule
    assert refused.value.field == "schedule[0].intake_kcal"


@pytest.mark.parametrize(
    ("share", "end_fat", "rule"),
    [
        (-0.00999, 0.10, None),
        (-0.01001, 0.10, "tissue_loss"),
        (-0.005, 0.0601, None),
        (-0.005, 0.0599, "body_fat"),
        (0.0, 0.05, None),  # lean already, but not losing
        (0.00249, 0.15, None),
        (0.00251, 0.15, "gain_rate"),
    ],
)
def test_change_of_a_phase(share: float, end_fat: float, rule: str | None) -> None:
    assert rails.breaks_change(subject(), share, end_fat) == rule
    if rule is None:
        rails.refuse_change(subject(), share, end_fat, "/x", is_deficit=False)
    else:
        with pytest.raises(Refused) as refused:
            rails.refuse_change(subject(), share, end_fat, "/x", is_deficit=False)
        assert refused.value.action.id == rule


def test_a_deficit_counts_where_lean_tissue_hides_it() -> None:
    """A beginner's lean tissue may rise by what fat falls, so that tissue as a whole stays."""
    assert rails.breaks_change(subject(), 0.0, 0.0599, is_deficit=True) == "body_fat"
    assert rails.breaks_change(subject(), 0.0, 0.0601, is_deficit=True) is None


@pytest.mark.parametrize(
    ("status", "limit_share"),
    [
        (TrainingStatus.UNTRAINED, 0.005),
        (TrainingStatus.NOVICE, 0.005),
        (TrainingStatus.INTERMEDIATE, 0.0025),
        (TrainingStatus.ADVANCED, 0.0015),
    ],
)
def test_rate_of_gain_by_training_status(status: TrainingStatus, limit_share: float) -> None:
    who = subject(training_status=status)
    assert rails.breaks_change(who, limit_share - 1e-6, 0.15) is None
    assert rails.breaks_change(who, limit_share + 1e-6, 0.15) == "gain_rate"


# --- warnings --------------------------------------------------------------------------------------------------


def warned(who: Subject, intake: float, loss: float = 0.004, end_fat: float = 0.13) -> set[str]:
    return {action.id for action in rails.warn_deficit(who, intake, loss, end_fat)}


def test_warnings_on_a_deficit_just_inside_and_outside() -> None:
    # Each alone: the man's other values are moved out of the way.
    plenty = subject(fat_kg=20.0, exercise_kcal=0.0)
    assert warned(plenty, 2850 * 0.751) == set()
    assert warned(plenty, 2850 * 0.749) == {"deficit_share"}
    lean = subject(exercise_kcal=0.0)
    supply = 203 / 4.184 * 12
    assert warned(lean, 2850 - supply + 1) == set()
    assert warned(lean, 2850 - supply - 1) == {"fat_supply"}
    assert warned(plenty, 2400, loss=0.0079) == set()
    assert warned(plenty, 2400, loss=0.0081) == {"tissue_loss"}
    active = subject(fat_kg=20.0, exercise_kcal=600.0)
    assert warned(active, 30 * 60 + 600 + 1) == set()
    assert warned(active, 30 * 60 + 600 - 1) == {"energy_availability"}
    slow = subject(fat_kg=40.0, exercise_kcal=0.0, maintenance_kcal=2300.0)
    assert warned(slow, 1781, end_fat=0.45) == set()
    assert warned(slow, 1779, end_fat=0.45) == {"intake_floor"}
    assert warned(plenty, 2600, end_fat=0.081) == set()
    assert warned(plenty, 2600, end_fat=0.079) == {"body_fat"}
    assert warned(woman(fat_kg=25.0, exercise_kcal=0.0), 1900, end_fat=0.179) == {"body_fat"}


def test_a_floor_that_logging_decides_tells_the_share_that_is_logged() -> None:
    """1,780 kcal of resting energy, told on the scale of somebody who logs four fifths of what is eaten."""
    who = subject(scale=Scale(0.8, 0.8), fat_kg=20.0, exercise_kcal=0.0)
    (action,) = [x for x in rails.warn_deficit(who, 1210.0, 0.004, 0.2) if x.message.code == "RATIO_DECIDES"]
    assert action.message.params["percent"] == pytest.approx(80.0)


def test_a_warning_in_percent_tells_what_was_observed() -> None:
    rng = random.Random(2)
    told = 0
    for _ in range(300):
        who = subject(fat_kg=rng.uniform(8.0, 30.0), exercise_kcal=rng.uniform(0.0, 700.0))
        found = rails.warn_deficit(who, rng.uniform(1500.0, 2600.0), rng.uniform(0.0, 0.012), rng.uniform(0.05, 0.3))
        found += rails.warn_gain(TrainingStatus.NOVICE, rng.uniform(0.0, 0.005))
        for action in found:
            for name in {"percent", "share_percent"} & set(action.message.params):
                assert action.message.params[name] == pytest.approx(100.0 * (action.observed or 0.0))
                told += 1
    assert told > 300


def test_warnings_on_nutrients() -> None:
    assert rails.warn_macronutrients(2000, 0.201 * 2000, 131) == []
    assert {x.id for x in rails.warn_macronutrients(2000, 0.199 * 2000, 131)} == {"dietary_fat"}
    assert {x.id for x in rails.warn_macronutrients(2000, 0.201 * 2000, 129)} == {"carbohydrate"}


def test_warnings_on_history() -> None:
    assert rails.warn_history(2, 8) == []
    assert len(rails.warn_history(3, 8)) == 1
    assert len(rails.warn_history(2, 7)) == 1
    assert len(rails.warn_history(3, 7)) == 2
    (unknown,) = rails.warn_history(None, None)
    assert unknown.message.code == "WARNED_HISTORY_UNKNOWN"


def told(rule: str, did: str, code: str, observed: float) -> rails.RailAction:
    return rails.RailAction(rule, did, None, observed, "kcal/d", say(code))


def test_a_warning_is_told_once_whichever_of_its_rules_is_near() -> None:
    """The logging ratio decides the floor at first and energy availability later: one warning of one ratio."""
    by_floor, by_availability = (
        told(rule, "warned", "RATIO_DECIDES", 1.0) for rule in ("intake_floor", "availability")
    )
    assert rails.each_once([by_floor, by_availability, by_floor]) == [by_floor]


def test_what_two_rules_cap_is_told_for_each() -> None:
    by_share, by_fat = (told(rule, "capped", "CAPPED_DEFICIT", 1.0) for rule in ("deficit_share", "fat_supply"))
    assert rails.each_once([by_share, by_fat, by_share]) == [by_share, by_fat]


def test_the_least_observed_of_each_is_told_where_it_first_stood() -> None:
    carbohydrate, less = (told("carbohydrate", "warned", "WARNED_CARBOHYDRATE", grams) for grams in (120.0, 90.0))
    fat = told("dietary_fat", "warned", "WARNED_DIETARY_FAT", 0.19)
    assert rails.each_once([carbohydrate, fat, less, carbohydrate], is_least=True) == [less, fat]
    assert rails.each_once([carbohydrate, fat, less]) == [carbohydrate, fat]


# --- what is held at a limit -----------------------------------------------------------------------------------


def test_protein_in_a_deficit_has_a_floor() -> None:
    """1.6 g/kg/d: Morton et al. 2018."""
    assert rails.protein_in_deficit(subject(), None) == (2.0, [])
    assert rails.protein_in_deficit(subject(), 1.6) == (1.6, [])
    given, (action,) = rails.protein_in_deficit(subject(), 1.59)
    assert given == 1.6
    assert (action.id, action.action, action.limit, action.observed) == ("protein", "capped", 1.6, 1.59)


def test_protein_with_kidney_disease_is_warned_of_even_where_cleared() -> None:
    screening = screened(conditions=(Condition.KIDNEY_DISEASE,), clearance=CLEARED)
    given, (action,) = rails.protein_in_deficit(subject(screening=screening), 2.4)
    assert given == 2.4
    assert (action.id, action.action, action.message.code) == ("protein", "warned", "WARNED_KIDNEY_PROTEIN")


def test_protein_short_of_what_was_asked_is_said_beyond_rounding() -> None:
    assert rails.cap_protein_to_room(1.95, 2.0) == []
    (action,) = rails.cap_protein_to_room(1.94, 2.0)
    assert (action.id, action.action, action.limit, action.observed) == ("dietary_fat", "capped", 1.94, 2.0)


def test_no_gain_follows_a_hold_where_screening_is_not_answered() -> None:
    assert rails.gain_weeks_allowed(subject(), 12) == (12, [])
    assert rails.gain_weeks_allowed(subject(screening=None), 0) == (0, [])
    weeks, (action,) = rails.gain_weeks_allowed(subject(screening=None), 12)
    assert weeks == 0
    assert (action.id, action.action, action.observed) == ("screening_unanswered", "capped", 12)


def test_a_gain_is_warned_of_half_above_the_recommended() -> None:
    """0.25 % of body mass a week, the lower end of Iraki et al. 2019 (Sports 7:154, doi 10.3390/sports7070154)."""
    assert rails.warn_gain(TrainingStatus.NOVICE, 0.003749) == []
    (action,) = rails.warn_gain(TrainingStatus.NOVICE, 0.003751)
    assert (action.id, action.action, action.observed) == ("gain_rate", "warned", 0.003751)
    # The ceiling of the trained lies under that: it holds, and nothing under it is warned of.
    assert rails.warn_gain(TrainingStatus.INTERMEDIATE, 0.0025) == []
    capped = rails.capped_gain(TrainingStatus.INTERMEDIATE, 180.0, 0.004)
    assert (capped.id, capped.action, capped.limit, capped.observed) == ("gain_rate", "capped", 0.0025, 0.004)


def test_unknown_history_is_told_from_other_caps() -> None:
    assert rails.capped(rails.HISTORY_LIMIT, 700.0).message.code == "CAPPED_HISTORY_UNKNOWN"
    assert rails.capped(rails.DeficitLimit("deficit_share", 600.0, "why"), 700.0).message.code == "CAPPED_DEFICIT"


def test_protein_and_fat_shared_out_for_the_start_leave_less_room_later() -> None:
    lighter = subject(weight_kg=70.0, fat_kg=20.0, maintenance_kcal=1700.0, resting_kcal=1400.0, exercise_kcal=0.0)
    room = {limit.rule: limit.deficit_kcal for limit in rails.deficit_limits(lighter)}["protein"]
    before = lighter._replace(weight_kg=80.0)
    fed = {limit.rule: limit.deficit_kcal for limit in rails.deficit_limits(lighter, fed=before)}["protein"]
    thinner = lighter._replace(weight_kg=60.0)
    heavier = {limit.rule: limit.deficit_kcal for limit in rails.deficit_limits(lighter, fed=thinner)}["protein"]
    assert fed == 1700.0 - rails.least_intake_kcal(80.0, protein_for_kg=before.protein_kg)
    assert fed < room == heavier


def test_every_rule_is_in_the_catalogue_and_every_action_names_one() -> None:
    from steelyard.science import catalogue

    entries = catalogue.entries()
    ids = {value for name, value in vars(table).items() if name[0] != "_" and isinstance(value, str) and name.isupper()}
    assert len(ids) >= 18
    assert ids <= set(entries)
    assert all(entries[id].kind == "rule" for id in ids)
