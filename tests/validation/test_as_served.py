"""What the service says of the trials' participants is what is simulated, and what it refuses, it refuses by a rule."""

import pytest
from validation import held_out, trials
from validation.as_served import is_whole_weeks, served
from validation.comparison import simulate

CASES = {case.id: case for case in (*held_out.cases(), *trials.read())}
SAID = {id: served(case) for id, case in CASES.items()}
# Diets that the service forecasts as they were eaten; the others have too little protein, too large a deficit or
# surplus, or more nutrients than energy.
FORECAST = {
    "H-garthe-slow",
    "H-garthe-fast",
    "H-hall-ultra",
    "H-campbell-control",
    "H-vargas",
    "V1-refeed",
}
# Trials report masses to a tenth of a kilogram: the resting energy that the service computes moves less than that.
_PRINTED_KG = 0.1


def test_what_is_refused_is_refused_by_a_rule_of_deficit_surplus_or_nutrients() -> None:
    assert {id for id, said in SAID.items() if said.refused is None} == FORECAST
    assert {said.refused for said in SAID.values() if said.refused} == {
        "REFUSED_PROTEIN", "REFUSED_DEFICIT", "REFUSED_GAIN_RATE", "NUTRIENTS_EXCEED_INTAKE",
    }  # fmt: skip


@pytest.mark.parametrize("id", sorted(id for id in FORECAST if is_whole_weeks(CASES[id])))
def test_the_service_says_what_is_simulated(id: str) -> None:
    simulated = simulate(CASES[id])
    assert SAID[id].body_kg == pytest.approx(simulated["body mass"].mean, abs=_PRINTED_KG)
    assert SAID[id].fat_kg == pytest.approx(simulated["fat mass"].mean, abs=_PRINTED_KG)


@pytest.mark.parametrize("id", ["H-keys-24", "H-vink-rapid", "H-bryner-lifting", "H-joosen", "H-rozenek"])
def test_starvation_and_forced_feeding_are_refused(id: str) -> None:
    assert SAID[id].refused is not None
