"""The forecast against published studies, with the acceptance that ``report.md`` states.

What falls outside is expected by name and with its figures, so that it cannot grow or vanish unseen.
"""

import pytest
from validation import long_horizon, trials
from validation.comparison import Row, compare
from validation.long_horizon import FIRST_YEAR, KCAL_PER_LB, LIFTER, OVERWEIGHT, THREE_YEARS

ROWS = {(row.case.id, row.quantity): row for case in trials.read() for row in compare(case)}

# (case, quantity): measured, forecast [kg]. V2: the arm of high protein hardly lost any water, on the same carbohydrate
# as the other. V4: the long-horizon rule below asks for more lean tissue in a slow loss than this trial saw. V6: on 5 %
# protein lean tissue was lost while fat was gained; on more of it more water was gained. V7: people moved far more.
OUTSIDE = {
    ("V2-protein", "body mass"): (-1.50, -2.49),
    ("V2-protein", "fat-free mass"): (-0.30, -1.12),
    ("V4", "fat-free mass"): (-2.00, -2.80),
    ("V6-low", "body mass"): (3.16, 4.65),
    ("V6-low", "fat-free mass"): (-0.70, 0.77),
    ("V6-high", "body mass"): (6.51, 5.69),
    ("V6-high", "fat-free mass"): (3.18, 2.25),
    ("V7", "body mass"): (4.70, 5.73),
    ("V7", "fat mass"): (2.30, 3.51),
}
# (case, quantity): share of participants in the 80 % interval: few people, or a bias above.
COVERED_OTHERWISE = {
    ("V2-protein", "body mass"): 0.58,
    ("V4", "body mass"): 0.92,
    ("V4", "fat mass"): 0.85,
    ("V6-low", "body mass"): 0.59,
    ("V6-low", "fat-free mass"): 0.54,
}
# Gained where a little was lost: see V6 above.
OTHER_SIGN = {("V6-low", "fat-free mass")}


def _expected(keys: list[tuple[str, str]], misses: dict[tuple[str, str], object], what: str) -> list[object]:
    return [
        pytest.param(
            key,
            id="-".join(key).replace(" ", "_"),
            marks=[pytest.mark.xfail(strict=True, reason=f"{what}: {misses[key]}")] if key in misses else [],
        )
        for key in keys
    ]


JUDGED = [key for key, row in ROWS.items() if row.is_accepted is not None]
SPREAD = [key for key, row in ROWS.items() if row.is_coverage_accepted is not None]


@pytest.mark.parametrize("key", _expected(JUDGED, OUTSIDE, "measured and forecast in kg"))
def test_bias_is_within_the_acceptance(key: tuple[str, str]) -> None:
    row = ROWS[key]
    assert row.is_accepted, f"{row.case.trial.title}, {row.quantity}: bias {row.bias_kg:+.2f} kg, {row.limit}"


@pytest.mark.parametrize("key", _expected(SPREAD, COVERED_OTHERWISE, "share of participants in the interval"))
def test_the_80_percent_interval_holds_about_80_percent_of_participants(key: tuple[str, str]) -> None:
    # 80 % lies in the range of coverage over the 95 % confidence interval of the SD between participants.
    row = ROWS[key]
    assert row.is_coverage_accepted, f"{row.case.trial.title}, {row.quantity}: {row.coverage:.0%} {row.coverage_range}"


@pytest.mark.parametrize("key", OUTSIDE)
def test_what_falls_outside_does_so_by_these_figures(key: tuple[str, str]) -> None:
    row, (measured, forecast) = ROWS[key], OUTSIDE[key]
    assert row.measured.change_kg == measured
    assert row.forecast_kg == pytest.approx(forecast, abs=0.005)


@pytest.mark.parametrize("key", COVERED_OTHERWISE)
def test_coverage_outside_the_range_is_by_these_figures(key: tuple[str, str]) -> None:
    assert ROWS[key].coverage == pytest.approx(COVERED_OTHERWISE[key], abs=0.005)


@pytest.mark.parametrize("row", ROWS.values(), ids=lambda row: f"{row.case.id}-{row.quantity}".replace(" ", "_"))
def test_every_change_has_the_measured_sign(row: Row) -> None:
    has_sign = row.forecast_kg * row.measured.change_kg > 0
    assert has_sign == ((row.case.id, row.quantity) not in OTHER_SIGN)


# --- the long-horizon rule (Hall KD et al. Lancet 2011;378:826-37) ---------------------------------------------


def test_the_average_overweight_adult_follows_the_rule() -> None:
    found = long_horizon.course(OVERWEIGHT)
    assert KCAL_PER_LB[0] < long_horizon.kcal_per_lb(OVERWEIGHT, found) < KCAL_PER_LB[1]
    assert FIRST_YEAR[0] <= found.first_year_share <= FIRST_YEAR[1]
    assert found.three_year_share >= THREE_YEARS


def test_a_larger_change_follows_it_too() -> None:
    larger = OVERWEIGHT._replace(change_kcal=-250.0)
    found = long_horizon.course(larger)
    assert KCAL_PER_LB[0] < long_horizon.kcal_per_lb(larger, found) < KCAL_PER_LB[1]
    assert FIRST_YEAR[0] <= found.first_year_share <= FIRST_YEAR[1]
    assert found.three_year_share >= THREE_YEARS


def test_a_lean_body_changes_less() -> None:
    average, lean, lifter = (long_horizon.course(adult) for adult in (OVERWEIGHT, long_horizon.LEAN, LIFTER))
    assert abs(lean.three_years_kg) < abs(average.three_years_kg)
    assert abs(lifter.three_years_kg) < abs(average.three_years_kg)
    assert lean.first_year_share > average.first_year_share
    # Lean tissue spared: the change is more of it fat, and the scale slower.
    assert abs(lifter.one_year_kg) < abs(lean.one_year_kg)
