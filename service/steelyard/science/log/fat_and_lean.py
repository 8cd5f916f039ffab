"""How a change of tissue splits into fat and lean, from the body model and from readings of body fat, where there are.

Unknown are the fat mass on the last day, the fat share of a change, what training alone has added, and the bias of each
method of reading. All enter linearly, so that readings are taken in one by one (recursive least squares, Bayes). What a
method gets wrong each time cancels in a change: two readings by one method say more of it than one by each of two.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from ..body import PARTITION_SPREAD, SPARING_SPREAD, BodyModel, BodyState, Diet, advance, otherwise
from ..measures import FatValue
from ..numbers import FLOATS, Column, Elementwise, Estimate, Number, compiled
from ..register import FORBES_1987, HALL_2007, Basis, Kind, equation
from .tissue_model import GROWTH_SPREAD

_TRIAL_DAYS = 28.0
_TRIAL_SHARE = 0.15  # of maintenance: an ordinary deficit or surplus


class Partition(NamedTuple):
    """What a body model expects. ``fat_share`` of a change of tissue that energy makes, with its SD between people;
    ``fat_kg_per_day`` and ``tissue_kg_per_day`` that training moves at energy balance."""

    fat_share: float
    share_sd: float
    fat_kg_per_day: float
    tissue_kg_per_day: float

    @property
    def by_training_kg_per_day(self) -> float:
        """Fat that training moves beyond its share of what it moves of tissue."""
        return self.fat_kg_per_day - self.fat_share * self.tissue_kg_per_day

    def sharing_sd_kg(self, tissue_kg: float, days: float) -> float:
        """SD of how a known change of tissue is shared between fat and lean, where no reading told."""
        return math.hypot(self.share_sd * tissue_kg, GROWTH_SPREAD * self.by_training_kg_per_day * days)


class FatReading(NamedTuple):
    """Body fat read on a day of the log."""

    day: int
    value: FatValue


class CompositionChange(NamedTuple):
    """Fat mass on the last day and the changes over the log [kg]; they add up to the change of tissue."""

    days: int
    fat_kg: Estimate
    fat_fraction: Estimate
    fat_change_kg: Estimate
    lean_change_kg: Estimate
    reading_count: int


def partition_of(model: BodyModel, state: BodyState, protein_g_per_kg: float, *, is_gaining: bool) -> Partition:
    """The partition of a body in a deficit, or in a surplus."""

    def after(share: float, model: BodyModel) -> BodyState:
        intake = model.maintenance_kcal * (1.0 + share)
        carbohydrate = model.baseline_carbohydrate_kcal * (1.0 + share)
        return advance(model, state, Diet(intake, carbohydrate, protein_g_per_kg), _TRIAL_DAYS, ops=FLOATS)

    level = after(0.0, model)

    def fat_share(model: BodyModel) -> float:
        moved = after(_TRIAL_SHARE if is_gaining else -_TRIAL_SHARE, model)
        return float((moved.fat_kg - level.fat_kg) / (moved.tissue_kg - level.tissue_kg))

    share = fat_share(model)
    # Where training spares most, next to nothing is lean, and a spread in proportion to it says nothing.
    unspared = share if is_gaining else fat_share(otherwise(model, "unspared", SPARING_SPREAD))
    return Partition(
        share,
        math.hypot(PARTITION_SPREAD * (1.0 - share), unspared - share),
        (level.fat_kg - state.fat_kg) / _TRIAL_DAYS,
        (level.tissue_kg - state.tissue_kg) / _TRIAL_DAYS,
    )


@equation(
    "composition_change",
    summary="Fat and lean part of a change of tissue, from the body model and repeated readings of body fat",
    formula=(
        "fat change = share x (tissue change - training's) + training's fat change; reading x weight = fat mass + bias "
        "of its method x weight + error; all updated by each reading (Bayes, linear)"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(HALL_2007, FORBES_1987),
    valid_range="adults; between readings the body model speaks",
)
def composition_change(
    prior_fat_kg: Estimate,
    partition: Partition,
    readings: Sequence[FatReading],
    weight_kg: Sequence[float],
    tissue_kg: Sequence[float],
    tissue_sd_kg: float,
) -> CompositionChange:
    """Split the change of tissue over a log.

    Args: ``prior_fat_kg`` on the last day without readings; ``readings`` with days counted from the log's first;
        smoothed weight and tissue on each day [kg]; ``tissue_sd_kg`` of the change over the log.
    """
    last = len(weight_kg) - 1
    methods = list(dict.fromkeys(reading.value.method for reading in readings))
    # Fat on the last day, share of a change, factor on what training moves, then one bias for each method.
    mean = [prior_fat_kg.mean, partition.fat_share, 1.0, *[0.0] * len(methods)]
    bias = {reading.value.method: reading.value.error.bias_sd for reading in readings}
    sds = [prior_fat_kg.sd, partition.share_sd, GROWTH_SPREAD, *[bias[method] for method in methods]]
    size = len(mean)
    covariance = [0.0] * (size * size)  # row by row
    covariance[:: size + 1] = [sd * sd for sd in sds]

    def since(day: int) -> tuple[float, float]:
        """Change of tissue from ``day`` to the last, and what the factor on training moves of it into fat."""
        gone = last - day
        return tissue_kg[last] - tissue_kg[day], partition.by_training_kg_per_day * gone

    for reading in readings:
        change, by_training = since(reading.day)
        weight = weight_kg[reading.day]
        load = [1.0, -change, -by_training, *[weight if m == reading.value.method else 0.0 for m in methods]]
        error = reading.value.error.day_to_day_sd * weight
        mean, covariance = _taken_in(mean, covariance, load, reading.value.fat_fraction * weight, error * error)

    change, by_training = since(0)
    fat_change = mean[1] * change + mean[2] * by_training
    of_share, of_training, of_both = covariance[size + 1], covariance[2 * size + 2], covariance[size + 2]
    variance = of_share * change**2 + of_training * by_training**2 + 2.0 * of_both * change * by_training
    weight, fat_sd = weight_kg[last], covariance[0] ** 0.5
    return CompositionChange(
        last,
        Estimate(mean[0], fat_sd),
        Estimate(mean[0] / weight, fat_sd / weight),
        Estimate(fat_change, (variance + (mean[1] * tissue_sd_kg) ** 2) ** 0.5),
        Estimate(change - fat_change, (variance + ((1.0 - mean[1]) * tissue_sd_kg) ** 2) ** 0.5),
        len(readings),
    )


@compiled
def _taken_in(
    mean: Sequence[Number],
    covariance: Sequence[Number],
    load: Sequence[Number],
    value: Number,
    variance: Number,
    *,
    ops: Elementwise = FLOATS,
) -> tuple[Column, Column]:
    """Mean and covariance of what is unknown, given that ``load`` times it was read as ``value``."""
    size = len(mean)
    spread: Column = []
    total, surprise = variance, value
    for i in range(size):
        along = 0.0
        for j in range(size):
            along = along + covariance[i * size + j] * load[j]
        spread.append(along)
        total = total + load[i] * along
        surprise = surprise - load[i] * mean[i]
    new_mean: Column = []
    new_covariance: Column = []
    for i in range(size):
        gain = spread[i] / total
        new_mean.append(mean[i] + gain * surprise)
        for j in range(size):
            new_covariance.append(covariance[i * size + j] - gain * spread[j])
    return new_mean, new_covariance
