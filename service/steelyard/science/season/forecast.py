"""Intervals of a season: its phases as planned, its intakes set anew from the log as the plan says.

The same linear propagation as ``forecast``: every source of uncertainty is moved by one standard deviation. Eaten as
written for years, an error of a tenth in maintenance would carry a body out of all bounds; but a gain is set anew every
few weeks, and from the first review on the log has shown most of the error.
"""

from ..body import (
    ADHERENCE_SPREAD,
    ALL_SOURCES,
    CARRIED_SPREAD,
    Body,
    Diet,
    Forecast,
    Moved,
    UncertaintySource,
    adapting,
    assemble,
    current_maintenance_kcal,
    moved_run,
    start_body,
    unfollowed_share,
    walk,
)
from ..phase import GAIN_RESET_WEEKS
from ..register import (
    HALL_CHOW_2011,
    Basis,
    Kind,
    constant,
    equation,
)
from .run import CUT, WeekRecord

REVIEW_SPREAD = constant(
    "season_review_spread", 25.0, unit="kcal/d", basis=Basis.JUDGEMENT, sources=(HALL_CHOW_2011,),
    summary="SD of the mean error in energy through a season whose intake is set anew from the log every four weeks: "
    "28 days of weights alone give about 94 kcal/d, the mean of a year's 13 such readings 26",
)  # fmt: skip
_MOVED = tuple(s for s in UncertaintySource if s not in (UncertaintySource.CARRIED_MASS, UncertaintySource.DAILY_NOISE))


def left_by_review(body: Body) -> float:
    """Share of an error in energy (maintenance, adherence) that reading the log leaves, 0-1."""
    error = (body.maintenance_kcal.sd**2 + (ADHERENCE_SPREAD * body.maintenance_kcal.mean) ** 2) ** 0.5
    return min(1.0, REVIEW_SPREAD / float(error))


@equation(
    "season_interval",
    summary="80 % interval of every value of a season",
    formula="as forecast_interval, phases as planned; where the plan sets the intake, the balance of the moved "
    f"body sets it, of whose error the log leaves what season_review_spread says from week {GAIN_RESET_WEEKS + 1}",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
)
def season_forecast(
    body: Body, weeks: list[WeekRecord], sources: frozenset[UncertaintySource] = ALL_SOURCES
) -> Forecast:
    """The forecast of a lived season (floats): the expected states, and the moved ones at every week's end."""
    model, _ = start_body(body)
    states = [weeks[0].before, *(week.after for week in weeks)]
    moved: list[UncertaintySource] = [source for source in _MOVED if source in sources]
    runs = _moved_runs(body, weeks, moved) if moved else []
    carried = CARRIED_SPREAD if UncertaintySource.CARRIED_MASS in sources else 0.0
    noise = UncertaintySource.DAILY_NOISE in sources
    return assemble(model, states, list(range(len(states))), runs, carried, noise)


def _moved_runs(body: Body, weeks: list[WeekRecord], sources: list[UncertaintySource]) -> list[Moved]:
    later = left_by_review(body)
    return [_moved_run(body, weeks, source, later) for source in sources]


def _moved_run(body: Body, weeks: list[WeekRecord], source: UncertaintySource, later: float) -> Moved:
    """The season with one source moved by one SD; ``later``: what reviews leave of an error in energy."""
    started, state = start_body(body, source)
    error = body.maintenance_kcal.sd if source is UncertaintySource.MAINTENANCE else 0.0
    adherence = ADHERENCE_SPREAD if source is UncertaintySource.ADHERENCE else 0.0
    model, path, intake = started, [state], 0.0
    for w, week in enumerate(weeks):
        share = 1.0 if w < GAIN_RESET_WEEKS else later
        if week.is_set:
            # As far above or below balance as planned, for the body as it then is.
            seen = current_maintenance_kcal(model, state) - share * error
            intake = seen + (week.intake_kcal - week.maintenance_kcal)
        spread = adherence
        if adherence and body.kept is not None and week.mode == CUT:
            gap = week.maintenance_kcal - week.intake_kcal
            spread = unfollowed_share(week.intake_kcal, gap, 1.0, body.kept.sd, 1.0)
        eaten = intake * (week.diet.intake_kcal / week.intake_kcal) * (1.0 + share * spread)
        carbohydrate = week.diet.carbohydrate_kcal / week.diet.intake_kcal * eaten
        if source is UncertaintySource.ADAPTATION:
            model = adapting(started, eaten, 1.0)
        state = walk(model, state, Diet(eaten, carbohydrate, week.diet.protein_g_per_kg), (7.0,))[0]
        path.append(state)
    return moved_run(source, started, path)
