"""Strategies under uncertainty: the same draws of every source for each of them.

The draws are a fixed table, not random numbers: Halton points (Halton 1960) and their mirror images, through the
inverse normal distribution. The same input gives the same bytes, and every strategy meets the same people.
"""

from typing import Any, NamedTuple

from ..body import (
    PARTITION_SPREAD,
    SPARING_SPREAD,
    TRAINING_GAIN,
    TRAINING_GAIN_SPREAD,
    Body,
    adapting,
    calibrate,
    settle_at,
)
from ..numbers import Number, arrayed, arrays, many
from ..phase import CLEAR_PROBABILITY
from ..register import Kind, equation, source, traced
from .calendar import Calendar
from .forecast import left_by_review
from .policy import Policy
from .rails_by_week import PersonLimits
from .run import Life, Outcome, live

DRAWS = 256
HALTON_1960 = source(
    "halton_1960",
    "Halton JH. On the efficiency of certain quasi-random sequences of points in evaluating multi-dimensional "
    "integrals. Numer Math 1960;2:84-90",
    "10.1007/BF01386213",
)
_BASES = (2, 3, 5, 7, 11, 13)
# Beyond three standard deviations the assumed spreads mean nothing; the body must stay one that can live.
_LEAST_FAT_SHARE, _MOST_FAT_SHARE, _LEAST_PAL = 0.03, 0.65, 0.9


def _radical_inverse(i: int, base: int) -> float:
    value, weight = 0.0, 1.0
    while i:
        weight /= base
        i, digit = divmod(i, base)
        value += digit * weight
    return value


@equation(
    "season_draws",
    summary="Fixed draws of the sources of uncertainty, common to all strategies",
    formula="Halton points in bases 2 to 13 and their mirror images, each through the inverse normal distribution",
    kind=Kind.MODEL,
    sources=(HALTON_1960,),
)
def normal_scores(draws: int = DRAWS) -> Any:
    """Standard normal scores, shape (draws, 6), of mean exactly 0: maintenance, body fat, partition, training
    response, adaptation, adherence."""
    from statistics import NormalDist  # with the first season, not with the start

    import numpy as np

    normal = NormalDist()
    half = [[normal.inv_cdf(_radical_inverse(i, b)) for b in _BASES] for i in range(1, draws // 2 + 1)]
    scores = np.array(half)
    return np.concatenate([scores, -scores])


@traced
def drawn_lives(body: Body, draws: int = DRAWS) -> Life:
    """The people that ``body`` may be, as arrays over draws. All are believed to be the one expected.

    What the first review leaves of an error in energy is that of reading a log (``season_review_spread``).
    """
    import numpy as np

    ops = arrays()
    z = normal_scores(draws)
    weight, fat, maintenance = body.weight_kg, body.fat_kg, body.maintenance_kcal
    true_fat = np.clip(fat.mean + fat.sd * z[:, 1], _LEAST_FAT_SHARE * weight, _MOST_FAT_SHARE * weight)
    true_maintenance = np.maximum(maintenance.mean + maintenance.sd * z[:, 0], _LEAST_PAL * body.resting_kcal)
    model, state = calibrate(
        weight_kg=weight,
        fat_kg=true_fat,
        maintenance_kcal=true_maintenance,
        resting_kcal=body.resting_kcal,
        experience_years=body.experience_years,
        training_dose=body.training_dose,
        new_training=body.new_training,
        carbohydrate_share=body.carbohydrate_share,
        ops=ops,
    )
    model = model._replace(
        partition_scale=np.exp(PARTITION_SPREAD * z[:, 2]),
        training_gain=TRAINING_GAIN * np.maximum(1.0 + TRAINING_GAIN_SPREAD * z[:, 3], 0.0),
        unspared=-SPARING_SPREAD * z[:, 3],
    )
    if body.usual_intake_kcal is not None:
        model = adapting(model, body.usual_intake_kcal, z[:, 4], ops)
        model, state = settle_at(model, state, body.usual_intake_kcal, ops=ops)
    return Life(
        model,
        state,
        fat_error_kg=true_fat - fat.mean,
        maintenance_error_kcal=true_maintenance - maintenance.mean,
        eaten_score=z[:, 5],
        adaptation_score=z[:, 4],
        error_share=left_by_review(body),
        kept=body.kept,
    )


def stack(policies: list[Policy]) -> Policy:
    """Policies as arrays of shape (policies,)."""
    import numpy as np

    return Policy(*[many(np.array(column, dtype=float)) for column in zip(*policies, strict=True)])


@traced
def live_draws(
    life: Life, policies: Policy, limits: PersonLimits, calendar: Calendar, band_upper: float
) -> Outcome:  # fmt: skip
    """Outcomes of shape (policies, draws): each of ``policies`` (arrays) followed by each of the drawn people.

    A strategy is followed, not a written plan: its cuts start when the body fat that is seen says so, and its
    intakes are set anew from what the log has shown until then.
    """
    columns = Policy(*[many(arrayed(column)[:, None]) for column in policies])
    return live(life, columns, limits, calendar, band_upper, ops=arrays())


class DrawnInterval(NamedTuple):
    """The median and the 80 % interval of a value over the draws."""

    lower: float
    median: float
    upper: float


class DrawnOutcome(NamedTuple):
    """What those who follow a strategy come to, over the draws: as ``Outcome``, with days for weeks of dieting."""

    lean_gained_kg: DrawnInterval
    fat_gained_kg: DrawnInterval
    mean_fat_kg: DrawnInterval
    peak_fat_fraction: DrawnInterval
    final_fat_fraction: DrawnInterval
    weeks_above_band: DrawnInterval
    days_dieting: DrawnInterval
    cuts: DrawnInterval


def drawn_outcome(outcome: Outcome, one: int) -> DrawnOutcome:
    """The intervals of strategy ``one`` over the common draws."""
    import numpy as np

    def over(values: Number) -> DrawnInterval:
        return DrawnInterval(*[float(value) for value in np.percentile(arrayed(values)[one], [10, 50, 90])])

    return DrawnOutcome(
        lean_gained_kg=over(outcome.lean_gained_kg),
        fat_gained_kg=over(outcome.fat_gained_kg),
        mean_fat_kg=over(outcome.mean_fat_kg),
        peak_fat_fraction=over(outcome.peak_fat_fraction),
        final_fat_fraction=over(outcome.final_fat_fraction),
        weeks_above_band=over(outcome.weeks_above_band),
        days_dieting=over(7 * outcome.weeks_dieting),
        cuts=over(outcome.cuts),
    )


class Chance(NamedTuple):
    """Probabilities that one strategy beats another; equal outcomes count half.

    ``is_clear``: whether one of the two clearly gains more lean tissue.
    """

    more_lean: float
    less_fat: float
    fewer_days_dieting: float
    is_clear: bool


def chance_to_beat(outcome: Outcome, one: int, other: int) -> Chance:
    """How probable it is that strategy ``one`` beats ``other``, over the common draws."""
    import numpy as np

    def beats(values: Any, sign: float) -> float:
        # A thousandth of a gram is no difference.
        difference = np.round(sign * (values[one] - values[other]), 6)
        return float(np.mean((difference > 0) + 0.5 * (difference == 0)))

    more_lean = beats(outcome.lean_gained_kg, 1.0)
    is_clear = max(more_lean, 1.0 - more_lean) >= CLEAR_PROBABILITY
    return Chance(more_lean, beats(outcome.mean_fat_kg, -1.0), beats(outcome.weeks_dieting, -1.0), is_clear)
