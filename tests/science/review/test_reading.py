"""What a review reads of a phase: maintenance with the plan's own, how well it is kept to, and fat and lean apart."""

import math
from types import SimpleNamespace
from typing import Any

import pytest
from review_people import AS_PLANNED, START_DAY, Member
from steelyard.science.body import advance, start_body
from steelyard.science.log import LogMaintenance
from steelyard.science.measures import body_of
from steelyard.science.numbers import Estimate
from steelyard.science.phase import PhaseKind, diet_of_week
from steelyard.science.review import reading
from steelyard.science.review.reading import body_now, maintenance_told, read_phase, with_plan

NOTHING = Estimate(0.0, 0.0)

# --- maintenance -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("days", "share"), [(0, 1.0), (30, 1.0 / 1.25), (60, 0.5), (120, 0.2)])
def test_the_plan_counts_for_half_after_the_days_it_fades_in(days: int, share: float) -> None:
    """Means by precision; the plan's falls as 1 / (1 + (days / 60)^2)."""
    found = LogMaintenance(Estimate(2400.0, 150.0), Estimate(2700.0, 150.0), Estimate(2400.0 / 2700.0, 0.05), 0.2, 0.8)
    both = with_plan(found, Estimate(2600.0, 150.0), days, 60.0)
    assert both.maintenance.mean == pytest.approx((2400.0 + share * 2600.0) / (1.0 + share))
    assert both.maintenance.sd == pytest.approx(150.0 / math.sqrt(1.0 + share))
    # The physical estimate stays what the log says.
    assert both.maintenance.mean / both.logging_ratio.mean == pytest.approx(2700.0)


@pytest.mark.parametrize(("plan_kcal", "told_sd"), [(2400.0, 100.0), (2600.0, 141.42), (2800.0, 223.61)])
def test_maintenance_is_told_less_surely_where_log_and_plan_disagree(plan_kcal: float, told_sd: float) -> None:
    """Two of one SD count for half each, so that what lies between them adds a quarter of its square."""
    found = LogMaintenance(Estimate(2400.0, 141.42), Estimate(2400.0, 150.0), Estimate(1.0, 0.05), 0.2, 0.8)
    plan = Estimate(plan_kcal, 141.42)
    beside = with_plan(found, plan, 0, 60.0).maintenance
    told = maintenance_told(beside, found.maintenance, plan)
    assert told.mean == beside.mean == pytest.approx(0.5 * (2400.0 + plan_kcal))
    assert told.sd == pytest.approx(told_sd, rel=1e-3)


# --- where hardly any food is logged ---------------------------------------------------------------------------------


def beside_plan(
    plan_sd: float,
    kind: PhaseKind,
    *,
    is_steered: bool = True,
    is_logged: bool = True,
    plan_ratio: Estimate | None = None,
) -> LogMaintenance:
    """A reading of 2,400 kcal on day 28 of a phase whose plan started from 2,600; 330 kcal is the equations' error, of
    what is eaten, and 345 what is made of it on a logging scale."""
    found = LogMaintenance(Estimate(2400.0, 150.0), Estimate(2400.0, 150.0), Estimate(1.0, 0.05), 0.2, 0.8)
    plan = Estimate(2600.0, plan_sd)
    phase: Any = SimpleNamespace(kind=kind, start_day=START_DAY, maintenance=plan, ratio=plan_ratio)
    fit = SimpleNamespace(prior=Estimate(2260.0, 345.0), is_logged=is_logged)
    read: Any = SimpleNamespace(fit=fit, prior=Estimate(2600.0, 330.0))
    return reading.beside_plan(found, phase, START_DAY + 28, read, is_steered=is_steered)


@pytest.mark.parametrize("is_steered", [True, False])
@pytest.mark.parametrize("kind", [PhaseKind.MAINTENANCE, PhaseKind.CUT])
def test_a_plan_from_the_equations_tells_the_reading_nothing_that_it_does_not_start_from(
    kind: PhaseKind, is_steered: bool
) -> None:
    """It stands on the scale of what is eaten, and the log on its own: beside each other they raised maintenance as
    logged by what food is left out."""
    assert beside_plan(330.0, kind, is_steered=is_steered).maintenance == Estimate(2400.0, 150.0)
    assert beside_plan(200.0, kind, is_steered=is_steered).maintenance.mean > 2400.0
    # A plan that knew the member's scale knew more than the equations.
    knew = Estimate(0.87, 0.075)
    assert beside_plan(330.0, kind, is_steered=is_steered, plan_ratio=knew).maintenance.mean > 2400.0


@pytest.mark.parametrize("kind", [PhaseKind.MAINTENANCE, PhaseKind.CUT])
def test_too_early_for_weight_and_without_a_log_the_plan_stands(kind: PhaseKind) -> None:
    told = beside_plan(200.0, kind, is_steered=False, is_logged=False)
    assert told.maintenance == Estimate(2600.0, 200.0)


def test_a_plan_counts_as_long_in_a_hold_without_food_logged_as_in_a_deficit() -> None:
    hold, cut = (beside_plan(150.0, kind).maintenance.mean for kind in (PhaseKind.MAINTENANCE, PhaseKind.CUT))
    assert hold == cut == pytest.approx((2400.0 + 0.8 * 2600.0) / 1.8)
    logged = beside_plan(150.0, PhaseKind.MAINTENANCE, is_steered=False)
    assert logged.maintenance.mean == pytest.approx((2400.0 + 0.2 * 2600.0) / 1.2)


# --- how well it is kept to ------------------------------------------------------------------------------------------


def followed(told: list[float], logged: list[float | None], *, before: int = 0) -> float:
    """The share of what was told that is kept to; ``before``: days of the log before the phase, of fasts."""
    phase: Any = SimpleNamespace(start_day=START_DAY)
    intake = [1000.0] * before + [0.0 if kcal is None else kcal for kcal in logged]
    is_logged = [1.0] * before + [0.0 if kcal is None else 1.0 for kcal in logged]
    return reading._share_followed(phase, told, intake, is_logged, START_DAY - before)


def drawn(apart: float, days: int) -> float:
    """Drawn to 1 as far as the error of logged days explains it, 4.5 % of one (judgement)."""
    return 1.0 + apart * apart**2 / (apart**2 + 0.045**2 / days)


@pytest.mark.parametrize("before", [0, 5])
@pytest.mark.parametrize(
    ("told", "logged", "share"),
    [
        ([2000.0] * 14, [2100.0] * 14, drawn(0.05, 14)),
        ([2000.0] * 14, [1900.0] * 14, drawn(-0.05, 14)),
        ([2000.0] * 14, [1400.0] * 14, 0.9),  # more than a tenth is not the plan's to make up for
        ([2000.0] * 14, [2300.0] * 14, 1.2 - (drawn(0.15, 14) - 1.0)),  # and over it less and less
        ([2000.0] * 14, [2400.0] * 14, 1.2 - (drawn(0.20, 14) - 1.0)),
        ([2000.0] * 14, [2600.0] * 14, 1.0),  # nothing of it where the plan is not followed
        ([2000.0], [1840.0], drawn(-0.08, 1)),  # the first day counts
        ([2000.0] * 14, [None] * 7 + [1900.0] * 7, drawn(-0.05, 7)),
        ([2000.0] * 10, [None] * 10, 1.0),
        # Four weeks are looked at: what came before is forgotten, what was told then as well.
        ([2500.0] * 30 + [2000.0] * 28, [1500.0] * 30 + [1900.0] * 28, drawn(-0.05, 28)),
        ([2500.0] * 3 + [2000.0] * 28, [1500.0] * 3 + [1900.0] * 28, drawn(-0.05, 28)),
    ],
)
def test_what_is_told_is_kept_to_as_far_as_the_last_four_weeks_show(
    told: list[float], logged: list[float | None], share: float, before: int
) -> None:
    assert followed(told, logged, before=before) == pytest.approx(share)


# --- fat and lean ----------------------------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def read() -> tuple[Any, ...]:
    member = Member(3)
    phase = member.plan(6, deficit_kcal=300.0)
    member.follow(phase, 24, AS_PLANNED)
    told = member.told()
    return told, phase, read_phase(told, phase, member.log, member.day)


def split(read: tuple[Any, ...], tissue: Estimate) -> Any:
    told, phase, now = read
    return body_now(told, phase, now._replace(window=now.window._replace(tissue=tissue)), NOTHING)


def test_fat_and_lean_add_up_to_the_tissue_that_went(read: tuple[Any, ...]) -> None:
    for mean in (-3.0, -1.0, 0.5):
        found = split(read, Estimate(mean, 0.4))
        assert found.fat.mean + found.lean.mean == pytest.approx(mean)
        assert found.tissue == Estimate(mean, 0.4)


def test_the_error_of_tissue_is_shared_and_the_error_of_sharing_is_of_both(read: tuple[Any, ...]) -> None:
    """What of a kilogram is fat in doubt is lean in doubt: with tissue known, both have the same error."""
    known, unsure = split(read, Estimate(-1.5, 0.0)), split(read, Estimate(-1.5, 0.7))
    assert known.fat.sd == pytest.approx(known.lean.sd)
    assert known.fat.sd > 0.02
    of_fat, of_lean = (
        math.sqrt(after.sd**2 - before.sd**2) for before, after in ((known.fat, unsure.fat), (known.lean, unsure.lean))
    )
    assert of_fat + of_lean == pytest.approx(0.7)
    assert of_fat > of_lean  # of tissue that goes in a deficit more is fat


def test_tissue_that_goes_as_the_model_expects_is_shared_as_it_shares_it(read: tuple[Any, ...]) -> None:
    """Against the walk of the same body on the same food, made in one go."""
    told, phase, now = read
    scale = 1.0 / now.ratio
    settled = now.maintenance.maintenance
    body = body_of(told.person, told.assessed, Estimate(scale * settled.mean, scale * settled.sd), None)
    model, start = start_body(body)
    week = phase.weeks[0]
    diet = diet_of_week(week, told.subject.protein_kg)
    eaten = scale * (now.eaten.planned_kcal + now.eaten.difference.mean)
    diet = diet._replace(intake_kcal=eaten, carbohydrate_kcal=eaten * diet.carbohydrate_kcal / diet.intake_kcal)
    end = advance(model, start, diet, float(now.days))
    found = split(read, Estimate(float(end.tissue_kg - start.tissue_kg), 0.0))
    assert found.fat.mean == pytest.approx(float(end.fat_kg - start.fat_kg), rel=0.01)
