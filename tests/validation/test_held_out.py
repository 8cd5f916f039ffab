"""The forecast against trials on which no constant was set: what holds, and what is missed, by its figures.

Nothing here is a goal to fit to. What the page says of these trials is asserted, so that it cannot change unseen.
"""

import importlib
import pkgutil
import re

import pytest
import steelyard.science.body
from steelyard.science.numbers.estimate import Z80
from steelyard.science.register import Source
from validation import held_out, long_horizon, trials
from validation.comparison import FAT_FREE_MASS_BIAS_KG, Row, closes
from validation.held_out import GROUPS, bias_of, is_inside

CASES = held_out.cases()
ROWS = held_out.rows(CASES)
BY_KEY = {(row.case.id, row.quantity): row for row in ROWS}
_DOI = re.compile(r"10\.\d{4,}/[^\s;,)]+")

# Of the arms that close, the means outside the 80 % interval for one person: measured, forecast [kg].
OUTSIDE = {
    ("H-josse-adequate", "body mass"): (-4.30, -7.00),
    ("H-josse-adequate", "fat mass"): (-3.60, -6.15),
    ("H-hunter-lifting", "fat mass"): (-12.30, -9.23),
    ("H-bryner-aerobic", "fat mass"): (-14.10, -11.15),
    ("H-bryner-lifting", "fat mass"): (-13.60, -10.20),
}
# Bias of fat-free mass in a deficit [kg], by group of arms.
FAT_FREE_BIAS = {
    "deficit, not lifting": -1.23,
    "deficit, new to lifting": -0.84,
    "deficit, used to lifting": -0.28,
    "deficit, women alone": -1.04,
    "deficit, body mass index over 30": -0.85,
    "deficit, under 55 % of maintenance": -1.64,
}


def test_no_study_is_both_held_out_and_used() -> None:
    used = {case.study for case in trials.read()} | {doi for case in trials.read() for doi in _dois(case)}
    assert not used & ({case.study for case in CASES} | {doi for case in CASES for doi in _dois(case)})
    assert not [case.id for case in CASES if case.trial.in_sample]


def test_no_constant_of_the_body_names_a_held_out_study() -> None:
    found = {
        value.doi
        for module in pkgutil.iter_modules(steelyard.science.body.__path__, "steelyard.science.body.")
        for value in vars(importlib.import_module(module.name)).values()
        if isinstance(value, Source) and value.doi
    }
    assert len(found) > 20  # or nothing was looked at
    assert not found & {doi for case in CASES for doi in _dois(case)}


def _dois(case: trials.Case) -> list[str]:
    return _DOI.findall(case.trial.source)


def _judged() -> list[Row]:
    return [row for row in ROWS if closes(row.case) is not False]


@pytest.mark.parametrize("row", _judged(), ids=lambda row: f"{row.case.id}-{row.quantity}".replace(" ", "_"))
def test_the_measured_mean_is_inside_the_interval_or_named_here(row: Row) -> None:
    named = OUTSIDE.get((row.case.id, row.quantity))
    assert is_inside(row) == (named is None)
    if named is not None:
        assert (row.measured.change_kg, row.forecast_kg) == pytest.approx(named, abs=0.005)


def test_no_more_means_are_outside_than_an_interval_of_80_percent_lets_out() -> None:
    judged = _judged()
    assert len(judged) > 50
    assert sum(map(is_inside, judged)) / len(judged) >= 0.8


@pytest.mark.parametrize("title", FAT_FREE_BIAS)
def test_the_bias_of_fat_free_mass_in_a_deficit_is_by_these_figures(title: str) -> None:
    found = bias_of(ROWS, dict(GROUPS)[title], "fat-free mass")
    assert found is not None
    assert found.mean_kg == pytest.approx(FAT_FREE_BIAS[title], abs=0.005)


def test_lifters_are_forecast_without_a_bias_of_body_or_fat_free_mass() -> None:
    belongs = dict(GROUPS)["deficit, used to lifting"]
    for quantity in ("body mass", "fat-free mass"):
        found = bias_of(ROWS, belongs, quantity)
        assert found is not None
        assert not found.is_systematic


@pytest.mark.parametrize(("study", "measured"), [("ballor", 1.34), ("hunter", 1.80)])
def test_what_lifting_keeps_of_fat_free_mass_is_met(study: str, measured: float) -> None:
    # Within the bias that a figure of fat-free mass is accepted with; the arms without lifting are further off.
    without = "diet" if study == "ballor" else "none"
    with_it, not_it = (BY_KEY[f"H-{study}-{arm}", "fat-free mass"] for arm in ("lifting", without))
    assert with_it.measured.change_kg - not_it.measured.change_kg == pytest.approx(measured)
    assert with_it.forecast_kg - not_it.forecast_kg == pytest.approx(measured, abs=FAT_FREE_MASS_BIAS_KG)


def test_a_smaller_lean_share_would_break_the_long_horizon_rule(monkeypatch: pytest.MonkeyPatch) -> None:
    # Why the bias above is not taken off: nine tenths of the share are too little for the rule.
    calibrated = long_horizon.calibrate

    def with_less(**body: float) -> object:
        model, state = calibrated(**body)
        return model._replace(partition_scale=0.9), state

    monkeypatch.setattr(long_horizon, "calibrate", with_less)
    found = long_horizon.course(long_horizon.OVERWEIGHT)
    assert found.three_year_share < long_horizon.THREE_YEARS
    assert found.three_year_share == pytest.approx(0.87, abs=0.005)


def test_scores_are_in_the_forecasts_sds() -> None:
    row = BY_KEY["H-josse-adequate", "body mass"]
    assert held_out.score(row) == pytest.approx((-4.30 - row.forecast_kg) / row.sd_kg)
    assert abs(held_out.score(row)) > Z80
