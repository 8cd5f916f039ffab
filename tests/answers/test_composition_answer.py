"""Questions about body composition asked without any web."""

import pytest
from steelyard import answers
from steelyard.science.measures import Girths, HeightAndWeight, MeasuredPerson, Measurement
from steelyard.science.person import Sex, TrainingStatus
from steelyard.science.register import OutOfDomain

GIRTHS = Girths(girths_cm={"neck_cm": 39.0, "abdomen_cm": 88.0})


def ask(*measurements: Measurement, age: float = 30.0) -> answers.CompositionAsked:
    person = MeasuredPerson(
        sex=Sex.MALE, age_years=age, height_cm=180.0, weight_kg=80.0, training=TrainingStatus.NOVICE
    )
    return answers.CompositionAsked(person, measurements)


def test_methods_are_those_of_the_measurements() -> None:
    girths = answers.estimate_composition(ask(GIRTHS))
    size = answers.estimate_composition(ask(HeightAndWeight()))
    assert "hodgdon_beckett_men" in girths.methods
    assert "hodgdon_beckett_men" not in size.methods
    assert {"body_fat_combination", "healthy_body_fat"} <= set(girths.methods) & set(size.methods)


def test_no_adult_range_stands_behind_a_minors_answer() -> None:
    young = answers.estimate_composition(ask(GIRTHS, age=17.0))
    assert young.value.position is None
    assert "healthy_body_fat" not in young.methods
    assert "UNDER_AGE_NO_TARGET" in {caution.code for caution in young.cautions}


def test_the_measurement_at_fault_is_named() -> None:
    with pytest.raises(OutOfDomain) as raised:
        answers.estimate_composition(ask(HeightAndWeight(), Girths(girths_cm={"neck_cm": 39.0})))
    assert raised.value.field == "measurements[1].abdomen_cm"
