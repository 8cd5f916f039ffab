"""What the log reader needs to know of a body: energy of a kilogram, its slope, growth and carried mass."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from ..body import (
    ADAPTATION_DAYS,
    THERMIC_SHARE,
    BodyModel,
    BodyState,
    Diet,
    advance,
    expected_carried_kg,
    linearise,
)
from ..numbers import FLOATS, Column, Elementwise, Number, compiled
from ..register import Basis, constant

RHO_SPREAD = constant(
    "tissue_energy_spread", 0.13, unit="1", basis=Basis.JUDGEMENT,
    summary="SD between people of the effective energy of a kilogram of tissue, as a fraction: body-fat error, "
    "partition, adaptation and what the model leaves out together (6,000 to 12,000 kcal/kg have been measured)",
)  # fmt: skip
GROWTH_SPREAD = constant(
    "training_growth_spread", 0.5, unit="1", basis=Basis.JUDGEMENT,
    summary="SD between people of mass gained through training at energy balance, as a fraction of the expected",
)  # fmt: skip


# How carried mass hangs on what was usual bends at balance, where salt is spared. The secant over what maintenance is
# uncertain by (a seventh on the logging scale), towards eating more, follows the bend to either side.
_SECANT_STEP = -0.15
_LASTING_STEP = 0.05
_SETTLED_DAYS = 21


class TissueModel(NamedTuple):
    """One person's (or arrays over people's) constants for reading a log, on the physical scale.

    ``carried_kg``: expected deviation of carried mass on each morning of the log (None: not modelled).
    ``growth_kg_per_day``: tissue mass that training adds at energy balance (lean gained for fat lost), with its SD.
    ``carried_per_kcal``: carried mass that a lasting change of intake moves [kg per kcal/d, logging scale].
    ``carried_slope``: derivative of ``carried_kg`` by the intake that the body was settled at, ``usual_kcal``,
    both on the logging scale; None where that intake was known. ``adaptation_gain``: adaptation over what is left
    of a change of intake after adaptation and thermic effect; ``rho`` holds once adaptation has followed intake,
    which takes weeks, and until then a change of intake acts stronger by this share. ``kcal_per_step``: energy of a
    step above rest.
    """

    rho_kcal_per_kg: Number
    rho_sd: Number
    expenditure_slope_kcal_per_kg_day: Number
    carried_kg: Sequence[Number] | None = None
    growth_kg_per_day: Number = 0.0
    growth_sd: Number = 0.0
    carried_slope: Sequence[Number] | None = None
    usual_kcal: Number = 0.0
    adaptation_gain: Number = 0.0
    carried_per_kcal: Number = 0.0011
    kcal_per_step: Number = 0.0

    @property
    def usual_load_kg(self) -> Number:
        """Carried mass that goes with the usual intake, against nothing eaten, were it linear down to there."""
        return self.carried_per_kcal * self.usual_kcal


def tissue_model(
    model: BodyModel,
    state: BodyState,
    protein_g_per_kg: Number,
    *,
    intake_kcal: Sequence[Number],
    usual_intake_kcal: Number,
    is_usual_known: bool = False,
    carbohydrate_kcal: Sequence[Number] | None = None,
    ops: Elementwise = FLOATS,
) -> TissueModel:
    """The constants of a calibrated body, and the carried mass that a log of intakes lets expect.

    Args: ``intake_kcal`` on every day of the log and ``usual_intake_kcal`` (at which the body was settled before
        it), both on the logging scale; not ``is_usual_known`` when the latter is only the expected maintenance;
        ``carbohydrate_kcal`` on every day, on the same scale, where it was logged.
    """
    linear = linearise(model, state.fat_kg, protein_g_per_kg, ops=ops)
    level = Diet(model.maintenance_kcal, model.baseline_carbohydrate_kcal, protein_g_per_kg)
    growth = advance(model, state, level, 1.0, ops=ops).tissue_kg - state.tissue_kg
    share = model.baseline_carbohydrate_kcal / model.maintenance_kcal

    def carried(usual: Number) -> Column:
        return expected_carried_kg(
            intake_kcal,
            usual,
            carbohydrate_kcal=carbohydrate_kcal,
            usual_carbohydrate_kcal=usual * share,
            ops=ops,
        )

    path = carried(usual_intake_kcal)
    slope = None
    lasting = _LASTING_STEP * usual_intake_kcal
    settled = expected_carried_kg([usual_intake_kcal + lasting] * _SETTLED_DAYS, usual_intake_kcal, ops=ops)
    if not is_usual_known:
        step = _SECANT_STEP * usual_intake_kcal
        slope = _slopes(path, carried(usual_intake_kcal + step), step, ops=ops)
    # People differ in the energy of a kilogram, and lose by its reciprocal. The mean of reciprocals is over the
    # reciprocal of the mean by the square of the spread: the energy that goes with the mean loss is the lower by that.
    rho = linear.rho_kcal_per_kg / (1.0 + RHO_SPREAD * RHO_SPREAD)
    return TissueModel(
        rho,
        RHO_SPREAD * rho,
        linear.epsilon_kcal_per_kg_day,
        path,
        growth,
        GROWTH_SPREAD * ops.maximum(growth, -growth),
        slope,
        usual_intake_kcal,
        model.adaptation_share / (1.0 - THERMIC_SHARE - model.adaptation_share),
        settled[-1] / lasting,
    )


@compiled
def _slopes(values: Sequence[Number], further: Sequence[Number], step: Number, *, ops: Elementwise = FLOATS) -> Column:
    """The derivative by difference: of values at a point, and a ``step`` further."""
    slopes: Column = []
    for at, up in zip(values, further, strict=True):
        slopes.append((up - at) / step)
    return slopes


@compiled
def acting_intake(
    intake_kcal: Sequence[Number], settled_kcal: Number, adaptation_gain: Number, *, ops: Elementwise = FLOATS
) -> Column:
    """Intake as tissue feels it while adaptation lags behind: more after a rise, less after a cut [kcal/d].

    Adaptation follows intake with its time constant from ``settled_kcal`` on (Hall 2011).
    """
    follow = 1.0 - math.exp(-1.0 / ADAPTATION_DAYS)
    behind = settled_kcal
    acting: Column = []
    for intake in intake_kcal:
        acting.append(intake + adaptation_gain * (intake - behind))
        behind = behind + follow * (intake - behind)
    return acting
