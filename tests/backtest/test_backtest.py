"""The forecast's intervals cover what they claim, without being vague, and their sources can be told apart.

The figures come from 2,000 people in each cell of sex and training status: the standard error of a coverage of 80 %
is 0.9 points. The bands are asserted on the estimates themselves, without any allowance for that error.
"""

from functools import cache

import numpy as np
import pytest
from backtest.backtest import (
    MISSPECIFIED_COVERAGE,
    PRIOR_COVERAGE,
    SEED,
    WIDEST,
    Row,
    given,
    intervals,
    run,
)
from backtest.generator import (
    HORIZON_WEEKS,
    OPS,
    Array,
    Generator,
    People,
    Quantity,
    draw_outcomes,
    draw_people,
)
from steelyard.science.body.forecasting import Figures, Forecast, forecast
from steelyard.science.body.uncertainty import ALL_SOURCES, UncertaintySource

# What moves the change of fat: carried mass and noise move only the scale.
FAT_SOURCES = ALL_SOURCES - {UncertaintySource.CARRIED_MASS, UncertaintySource.DAILY_NOISE}


@cache
def _rows(generator: Generator) -> list[Row]:
    return run(generator)


@cache
def _people() -> People:
    return draw_people(np.random.default_rng(SEED), 100)


def _failures(rows: list[Row], low: float, high: float) -> list[str]:
    return [
        f"{r.sex} {r.status} {r.weeks} weeks {r.quantity}: {r.coverage:.3f} (SE {r.standard_error:.3f})"
        for r in rows
        if not low <= r.coverage <= high
    ]


def test_every_cell_is_there() -> None:
    assert len(_rows(Generator.PRIOR)) == 2 * 4 * len(HORIZON_WEEKS) * len(Quantity)
    assert sum(r.people for r in _rows(Generator.PRIOR)) // (len(HORIZON_WEEKS) * len(Quantity)) >= 2_000


def test_covers_truth_drawn_from_its_own_prior() -> None:
    assert _failures(_rows(Generator.PRIOR), *PRIOR_COVERAGE) == []


@pytest.mark.parametrize("generator", [Generator.MISSPECIFIED, Generator.MIRRORED])
def test_covers_worlds_it_was_not_told_of(generator: Generator) -> None:
    assert _failures(_rows(generator), MISSPECIFIED_COVERAGE, 1.0) == []


def test_what_is_shown_of_a_deficit_holds_who_eats_it_and_people_who_are_given_it() -> None:
    """One in ten is to lie over its upper end; over that of the plan being eaten are one in six, at half a year. What
    holds both is a little wider than either: some 85 % are inside, where 80 % are of who eats the plan."""
    rows = given(500)
    print(*rows, sep="\n")
    assert all(0.75 <= row.eats <= 0.89 for row in rows)
    assert all(0.75 <= row.people <= 0.89 for row in rows)
    late = {row.quantity: row for row in rows if row.weeks == 26}
    for quantity in (Quantity.WEIGHT, Quantity.FAT_CHANGE):
        assert late[quantity].over_told > 0.15
        assert late[quantity].over <= 0.105
    assert all(row.width <= 1.2 * row.width_told for row in rows)


@pytest.mark.parametrize("generator", Generator)
def test_is_hardly_wider_than_the_best_possible_forecast(generator: Generator) -> None:
    too_wide = [r for r in _rows(generator) if not r.width_ratio <= WIDEST]
    assert too_wide == []


def test_a_forecast_that_forgets_a_source_is_found_out() -> None:
    rng = np.random.default_rng(SEED)
    people = draw_people(rng, 1_000)
    truth = draw_outcomes(people, Generator.PRIOR, rng)[Quantity.FAT_CHANGE]
    said = intervals(people, ALL_SOURCES - {UncertaintySource.MAINTENANCE})[Quantity.FAT_CHANGE]
    coverage = (np.abs(truth - said.middle) <= said.half_width).mean(axis=1)
    assert (coverage < PRIOR_COVERAGE[0]).all()


def _all_sds(path: Forecast) -> list[Array]:
    """Every SD that a forecast can be asked for, (values, people) for each point."""
    spreads = path.spreads()
    nodes = path.nodes
    changes: list[Figures] = [path.spread_of_change(nodes[0], node) for node in nodes[1:]]
    changes += [path.spread_of_change(nodes[-2], nodes[-1])]
    people = len(np.atleast_1d(path.states[0].fat_kg))
    noisy = [point.weighing_sd_kg for point in path.points()]
    return [
        *[np.array([np.broadcast_to(v, people) for v in spread]) for spread in (*spreads, *changes)],
        *[np.broadcast_to(sd, (1, people)) for sd in noisy],
    ]


@pytest.mark.parametrize("source", UncertaintySource)
def test_dropping_a_source_narrows_and_never_widens(source: UncertaintySource) -> None:
    people = _people()
    full = _all_sds(forecast(people.body, people.stretches(), ops=OPS))
    less = _all_sds(forecast(people.body, people.stretches(), sources=ALL_SOURCES - {source}, ops=OPS))
    narrowed = np.zeros(len(people.male), dtype=bool)
    for with_it, without in zip(full, less, strict=True):
        assert (without <= with_it * (1.0 + 1e-12) + 1e-12).all()
        narrowed |= (without < with_it * (1.0 - 1e-9)).any(axis=0)
    # A source that cannot touch someone (training, in those who do none) narrows nothing for them.
    touched = people.body.training_dose > 0 if source is UncertaintySource.TRAINING_RESPONSE else True
    assert narrowed[np.broadcast_to(touched, narrowed.shape)].all()


def test_no_sources_no_interval() -> None:
    people = _people()
    path = forecast(people.body, people.stretches(), sources=frozenset(), ops=OPS)
    assert all((sd == 0.0).all() for sd in _all_sds(path))


@cache
def _simulated_effects(count: int, draws: int) -> dict[UncertaintySource, Array]:
    """SD of the half-year change of fat with one source at a time let loose, by simulation."""
    people = _people()
    few = people.take(np.repeat(np.linspace(0, len(people.male) - 1, count).astype(np.int64), draws))
    rng = np.random.default_rng(SEED)
    effects = {}
    for source in sorted(FAT_SOURCES):  # a set's order differs between processes, and with it the draws
        change = draw_outcomes(few, Generator.PRIOR, rng, frozenset({source}))[Quantity.FAT_CHANGE][-1]
        effects[source] = change.reshape(count, draws).std(axis=1)
    return effects


@pytest.mark.xfail(
    strict=True,
    reason="one in a hundred, near balance, where a surplus does not mirror a deficit of its size",
)
def test_the_dominant_source_is_the_one_that_simulation_finds() -> None:
    count, draws = 100, 2_000
    people = _people()
    who = np.linspace(0, len(people.male) - 1, count).astype(np.int64)
    simulated = _simulated_effects(count, draws)
    sources = sorted(FAT_SOURCES)
    clear = set()
    for k, i in enumerate(who):
        person = people.person(int(i))
        path = forecast(person.body, person.stretches())
        sds = {source: float(simulated[source][k]) for source in sources}
        first, second = sorted(sources, key=lambda source: -sds[source])[:2]
        dominant = path.dominant_source(HORIZON_WEEKS[-1])
        assert dominant is not None
        # Sources closer than an eighth are a tie: the ratio of two SDs of 2,000 draws has an error of 2.2 %, and a
        # move of one SD to one side is not the SD of both (for the maintenance of a lean gainer whose fat has an SD
        # of 30 %, it is a tenth short).
        if sds[first] > 1.125 * sds[second]:
            assert dominant is first, (dominant, sds)
            clear.add(first)
        without = forecast(person.body, person.stretches(), sources=ALL_SOURCES - {dominant})
        assert without.dominant_source(HORIZON_WEEKS[-1]) not in {dominant, None}
    # The check is empty if one source always leads.
    assert len(clear) >= 2


def test_one_person_and_many_agree() -> None:
    people = _people()
    many = forecast(people.body, people.stretches(), ops=OPS)
    spreads = many.spreads()
    for i in (0, 250, 799):
        person = people.person(i)
        one = forecast(person.body, person.stretches())
        for at_one, at_many in zip(one.spreads(), spreads, strict=True):
            assert at_one == pytest.approx(
                [np.broadcast_to(v, len(people.male))[i] for v in at_many], rel=1e-9, abs=1e-12
            )


def test_asking_for_spreads_changes_nothing() -> None:
    people = _people()
    path = forecast(people.body, people.stretches(), ops=OPS)
    first = path.spreads()
    path.spread_of_change(0, HORIZON_WEEKS[-1])
    for before, after in zip(first, path.spreads(), strict=True):
        np.testing.assert_array_equal(before.fat_kg, after.fat_kg)


def test_spreads_between_nodes_are_those_at_nodes() -> None:
    """Between nodes SDs are interpolated.

    An SD 2 % off moves a coverage of 80 % by 0.9 points, the standard error of a cell: that much is allowed on
    average, and 10 % (4.5 points) for any one person.
    """
    people = _people()
    weeks = tuple(range(1, HORIZON_WEEKS[-1] + 1))
    whole = forecast(people.body, people.stretches((HORIZON_WEEKS[-1],)), ops=OPS)
    cut = forecast(people.body, people.stretches(weeks), ops=OPS)
    assert len(whole.nodes) < len(weeks) / 2
    whole_points, cut_points = whole.points(), cut.points()
    for week, said, exact in zip(weeks, whole.spreads()[1:], cut.spreads()[1:], strict=True):
        at_week = list(zip(said, exact, strict=True))
        at_week.append((whole_points[week].weighing_sd_kg, cut_points[week].weighing_sd_kg))
        for sd, right in at_week:
            np.testing.assert_allclose(sd, right, rtol=0.10)
            assert abs(np.mean(sd) / np.mean(right) - 1.0) < 0.02
