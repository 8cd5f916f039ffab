"""The promises of the log reader on simulated people, three of whose four worlds share none of its body model.

Fewer people than the page has, with another seed than the constants were settled with; limits leave the sampling error
of so many people.
"""

import json
from functools import cache

import numpy as np
import pytest
from logstudy.bayes import OF_THE_READER, against
from logstudy.members import rebounds, review
from logstudy.report import CASES
from logstudy.scores import QUANTITIES
from logstudy.study import Cell, Score, coverage, flagged, named, pooled, relative_score, run, stalls, tenths
from logstudy.worlds import OWN, WORLDS

SEED = 90_210


@cache
def study() -> dict[str, dict[Cell, Score]]:
    return run(30, SEED, (14, 28, 90, 365))


@pytest.mark.parametrize("quantity", QUANTITIES)
def test_intervals_hold_over_mixed_people(quantity: str) -> None:
    """64 cells of 30 people: the standard error of a pooled coverage is about 1 point, more where errors cluster."""
    assert 0.76 <= coverage(study()[quantity]) <= 0.86
    least, most = tenths(study()[quantity])
    assert least >= 0.055
    assert most <= 0.145


@pytest.mark.parametrize("quantity", QUANTITIES)
def test_no_simple_reader_is_better_on_average(quantity: str) -> None:
    mean, _ = relative_score(study()[quantity])
    assert mean <= 0.93


@pytest.mark.parametrize("quantity", ["level", "rate", "tissue", "tissue_28", "carried", "physical"])
def test_simple_readers_of_weight_are_beaten_by_a_fifth(quantity: str) -> None:
    assert relative_score(study()[quantity])[0] <= 0.80


def test_in_its_own_world_intervals_are_as_narrow_as_bayes_rule_allows_who_knows_as_much() -> None:
    """A self-test, on logs of four weeks. Means of 16 widths: each has a standard error of about four hundredths."""
    found = against(OF_THE_READER, 4, SEED, (28,))
    print(found)
    assert found["tissue"].logs >= 12
    assert all(each.width <= 1.15 for each in found.values())


def test_nothing_accumulates_over_a_year() -> None:
    error, _ = pooled(study()["tissue"], days=365)
    assert np.sqrt(np.mean(error**2)) <= 0.8
    assert np.mean(np.abs(error) < 1.0) >= 0.85
    assert abs(np.mean(error)) <= 0.25


@pytest.mark.parametrize("world", ["plain", "lapses"])
def test_water_lost_to_a_diet_is_not_taken_for_tissue_as_the_body_shrinks(world: str) -> None:
    """Carried mass follows what is eaten against what was eaten before, not against what a lighter body spends: read
    against the latter a year of a cut lost 0.4 kg (``plain``) and 0.3 kg (``lapses``) more tissue than it did.

    30 people a cell, whose errors have an SD of 0.4 kg: a standard error of 0.08.
    """
    error, _ = pooled(study()["tissue"], world=world, plan="cut", days=365)
    assert abs(np.mean(error)) <= 0.2


def test_maintenance_is_not_biased_by_phase() -> None:
    for plan in ("hold", "gain", "turns"):
        error, _ = pooled(study()["maintenance"], plan=plan)
        assert abs(np.mean(error)) <= 0.3 * np.std(error)
    # Tissue of the foreign worlds is poorer in energy than the body model's, which a steady cut cannot tell.
    error, _ = pooled(study()["maintenance"], plan="cut")
    assert abs(np.mean(error)) <= 0.5 * np.std(error)


def test_who_eats_at_maintenance_is_named_and_who_keeps_the_plan_is_not() -> None:
    found = named(25, 24, SEED)
    assert found.eaters >= 0.85
    assert found.on_plan <= 0.10
    # Fat and lean tissue of these, of whom half hide from the log what they eat: without a spread of what training
    # spares lean tissue is inside in 48 and 38 %.
    assert found.inside["lean_kg", True] >= 0.52
    assert found.inside["lean_kg", False] >= 0.48
    assert found.inside["fat_kg", False] >= 0.48
    # As sure of maintenance as plan and log each are of themselves, 49 and 44 % of it was inside.
    assert found.inside["maintenance_kcal", True] >= 0.65
    assert found.inside["maintenance_kcal", False] >= 0.6


@pytest.mark.parametrize("days", [14, 28, 42])
def test_what_returns_after_a_mini_cut_lies_in_its_interval(days: int) -> None:
    """Without what two mornings differ by on any diet 74 to 78 % of returns were inside in its own world, and 48 to
    55 % in each of the foreign ones; now 90 to 94 and 70 to 81 % are (320 people a world and length), 79.5 % of all.

    120 people a world: standard errors of four points, of two over the foreign ones and over all.
    """
    inside = {world: float(np.mean([rebounds(world, 40, seed, days)[0] for seed in (1, 2, 3)])) for world in WORLDS}
    print(inside)
    assert 0.74 <= np.mean(list(inside.values())) <= 0.86
    # Bodies of the foreign worlds take nothing back while a deficit lasts, where the body model's do (Mettler 2010), so
    # that half a kilogram more returns to them than is told.
    assert np.mean([share for world, share in inside.items() if world != OWN]) >= 0.70
    assert min(inside.values()) >= 0.64


@pytest.mark.long
def test_nine_in_ten_of_them_are_named_at_one_false_alarm_in_twenty() -> None:
    """Six seeds that no bound was set on: 960 who eat at maintenance or above, and some 520 who keep to the plan.

    Of the latter the share has a standard error of one point.
    """
    shares = [named(40, 24, seed) for seed in range(201, 207)]
    print([f"{found.eaters:.3f} {found.on_plan:.3f}" for found in shares])
    assert np.mean([found.eaters for found in shares]) >= 0.90
    assert np.mean([found.on_plan for found in shares]) <= 0.05 + 0.01


def test_a_stall_is_told() -> None:
    found = stalls(30, SEED)
    assert found.told >= 0.85
    assert found.threshold <= 0.5  # what calls it, calls no more false alarms than that


def test_what_is_flagged_is_mostly_wrong() -> None:
    total, right = flagged(15, SEED)
    assert total >= 10
    assert right >= 2 * total / 3


@pytest.mark.parametrize("name", ["scale_up", "slow_rise"])
def test_a_rise_against_the_plan_is_never_as_planned(name: str) -> None:
    found = review(json.loads((CASES / f"{name}.json").read_text(encoding="utf-8")))
    assert found.verdict in ("slower", "contradicted")
    assert found.change.tissue_kg.upper > 0.0
