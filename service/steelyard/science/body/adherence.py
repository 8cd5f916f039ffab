"""How well somebody keeps to deficits: the share of a planned deficit that is really followed.

It is learned in reviews, handed on in the state, and used where a deficit is planned or forecast: what is told stays as
it was written, and what is expected to be eaten lies between that and maintenance.
"""

import math
from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Estimate, Number
from ..register import Basis, Kind, constant, equation, traced
from .state import BodyModel, BodyState, Diet, current_maintenance_kcal
from .uncertainty import ADHERENCE_SPREAD

SHARE_SPREAD = constant(
    "adherence_share_spread",
    4.0 * ADHERENCE_SPREAD,
    unit="1",
    summary="SD between people of the share of a planned deficit that is followed: adherence_spread, in a deficit of a "
    "fifth of maintenance, whose intake is four times the deficit. On the mean all of it is followed",
    basis=Basis.JUDGEMENT,
)
FADES_DAYS = constant(
    "adherence_fades",
    365.0,
    unit="d",
    summary="Time in which what is known of somebody's adherence fades to a third (1/e), towards that of all people",
    basis=Basis.JUDGEMENT,
)
COUNTS_UNDER = constant(
    "adherence_counts_under",
    0.9,
    unit="1",
    summary="Share from which on a deficit counts as kept: nearer to the whole no plan and no forecast is changed, so "
    "that whoever keeps to plans is not moved by chance",
    basis=Basis.JUDGEMENT,
)
DEFICIT_FROM = constant(
    "adherence_deficit_from",
    50.0,
    unit="kcal/d",
    summary="Less than this under maintenance is no deficit that somebody keeps to or not",
    basis=Basis.JUDGEMENT,
)


class Adherence(NamedTuple):
    """The share of planned deficits that was really followed, with its error, and the weeks in which that was seen."""

    share: Estimate
    weeks: float

    @property
    @traced
    def kept(self) -> Estimate | None:
        """The share to count on; None where deficits are kept well enough for none to be counted."""
        return self.share if self.share.mean < COUNTS_UNDER else None

    @traced
    def faded(self, days: float) -> "Adherence":
        """What is still known some days later: people change."""
        left = math.exp(-max(0.0, days) / FADES_DAYS)
        mean = 1.0 + left * (self.share.mean - 1.0)
        return self._replace(share=Estimate(mean, math.hypot(left * self.share.sd, _spread_after(left))))


def _spread_after(left: float) -> float:
    return SHARE_SPREAD * math.sqrt(1.0 - left * left)


OF_PEOPLE = Adherence(Estimate(1.0, SHARE_SPREAD), 0.0)


@equation(
    "adherence_learned",
    summary="How well somebody keeps to deficits, from what was known and what a phase showed",
    formula="precision-weighted mean of the share known before and the share seen; before any phase 1 +- "
    "adherence_share_spread; known towards that with exp(-t / adherence_fades)",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="deficits",
)
def learned(before: Adherence, seen: Estimate, weeks: float) -> Adherence:
    """What is known after some weeks that showed the share ``seen``."""
    of_before, of_seen = before.share.sd**-2.0, seen.sd**-2.0
    mean = (of_before * before.share.mean + of_seen * seen.mean) / (of_before + of_seen)
    return Adherence(Estimate(mean, (of_before + of_seen) ** -0.5), before.weeks + weeks)


@traced
def unfollowed_share(
    intake_kcal: Number, gap_kcal: Number, kept: Estimate, score: float | Number = 0.0, ops: Elementwise = FLOATS
) -> Number:
    """What is eaten beyond an intake, as a share of it, by somebody ``score`` SDs from what they are known to follow.

    ``gap_kcal``: by how much the intake lies under maintenance; where it does not, the error is that of all people.
    Of nothing, nothing is more than a share: an intake counts as a kilocalorie at least.
    """
    in_deficit = ((1.0 - kept.mean) + score * kept.sd) * gap_kcal / ops.maximum(intake_kcal, 1.0)
    return ops.where(gap_kcal > DEFICIT_FROM, in_deficit, score * ADHERENCE_SPREAD)


def as_followed(model: BodyModel, state: BodyState, diet: Diet, kept: Estimate, score: float = 0.0) -> Diet:
    """What is expected to be eaten of a diet that is told to a body."""
    needed = current_maintenance_kcal(model, state) + diet.activity_change_kcal_per_kg * state.weight_kg
    scale = 1.0 + unfollowed_share(diet.intake_kcal, needed - diet.intake_kcal, kept, score)
    return diet._replace(intake_kcal=scale * diet.intake_kcal, carbohydrate_kcal=scale * diet.carbohydrate_kcal)
