"""What a broken rule says: one refusal for each, whether a request asks for it or a planned week comes to it."""

from ..person import Sex, TrainingStatus
from ..register import Message, say
from .protein import PROTEIN_FLOOR_DEFICIT
from .subject import RailAction, as_under, stricter
from .table import (
    BMI,
    BMI_FLOOR,
    BODY_FAT,
    FAT_FRACTION_FLOOR,
    GAIN_RATE,
    GAIN_RATE_LIMIT,
    LOSS,
    LOSS_LIMIT,
    PROTEIN,
)


def refusal(rule: str, message: Message, limit: float, observed: float, unit: str) -> RailAction:
    """The refusal of a rule with a limit."""
    return RailAction(rule, "refused", limit, observed, unit, message)


def underweight(bmi: float) -> RailAction:
    """Of a phase that comes to a body mass index [kg/m2] under the floor."""
    return refusal(BMI, say("REFUSED_END_BMI", bmi=as_under(bmi), limit=BMI_FLOOR), BMI_FLOOR, bmi, "kg/m2")


def too_lean(sex: Sex, fat_fraction: float, *, speaks: bool = True) -> RailAction:
    """Of a phase that comes to a body fat under the least: without a figure to those to whom none is told."""
    if not speaks:
        return RailAction(BODY_FAT, "refused", None, None, "", say("REFUSED_END_BODY_FAT", speaks="no"))
    floor = stricter(FAT_FRACTION_FLOOR, sex)
    figures = {"fat_percent": as_under(100 * fat_fraction), "limit_percent": 100 * floor}
    message = say("REFUSED_END_BODY_FAT", speaks="yes", **figures)
    return refusal(BODY_FAT, message, floor, fat_fraction, "1")


def too_fast_a_loss(share_per_week: float) -> RailAction:
    """Of a loss of tissue; ``share_per_week`` of body mass is under 0."""
    message = say("REFUSED_LOSS", percent=-100 * share_per_week, limit_percent=100 * LOSS_LIMIT)
    return refusal(LOSS, message, LOSS_LIMIT, -share_per_week, "of body mass a week")


def too_fast_a_gain(status: TrainingStatus, share_per_week: float) -> RailAction:
    """Of a gain of tissue, as a share of body mass a week."""
    limit = GAIN_RATE_LIMIT[status]
    message = say("REFUSED_GAIN_RATE", percent=100 * share_per_week, limit_percent=100 * limit)
    return refusal(GAIN_RATE, message, limit, share_per_week, "of body mass a week")


def too_little_protein(g_per_kg: float) -> RailAction:
    """Of protein in a deficit [g/kg/d]."""
    message = say("REFUSED_PROTEIN", observed=g_per_kg, limit=PROTEIN_FLOOR_DEFICIT)
    return refusal(PROTEIN, message, PROTEIN_FLOOR_DEFICIT, g_per_kg, "g/kg/d")
