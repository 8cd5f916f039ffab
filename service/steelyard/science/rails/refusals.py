"""What is asked for and refused. Each raises ``Refused``, which names the rule and the field."""

from ..person import Sex
from ..register import say, traced
from .broken_rules import too_fast_a_gain, too_fast_a_loss, too_lean, too_little_protein, underweight
from .intake_floors import WITHIN_KCAL
from .largest_deficits import measured_limits
from .person_rails import forbids_fat_target
from .protein import PROTEIN_FLOOR_DEFICIT
from .subject import (
    Refused,
    Subject,
    as_under,
    refusing,
    stricter,
)
from .table import (
    BMI_FLOOR,
    BODY_FAT,
    FAT_FRACTION_FLOOR,
    GAIN_RATE,
    GAIN_RATE_LIMIT,
    LOSS,
    LOSS_LIMIT,
)


@traced
def refuse_deficit(subject: Subject, intake_kcal: float, weeks: float, field: str) -> None:
    """Raise ``Refused`` where an intake asked for is a larger deficit than a rule allows."""
    strictest = measured_limits(subject, weeks)[0]
    deficit = subject.maintenance_kcal - intake_kcal
    if deficit > strictest.deficit_kcal + WITHIN_KCAL:
        message = say(
            "REFUSED_DEFICIT",
            deficit_kcal=deficit,
            limit_kcal=strictest.deficit_kcal,
            rule=strictest.rule,
            why=strictest.why,
            least_intake_kcal=subject.maintenance_kcal - strictest.deficit_kcal,
        )
        raise Refused(*refusing(strictest.rule, field, message, strictest.deficit_kcal, deficit, "kcal/d"))


def breaks_change(
    subject: Subject, tissue_share_per_week: float, end_fat_fraction: float, *, is_deficit: bool = False
) -> str | None:
    """The rule that a phase as a whole breaks, given its mean change of tissue and its end.

    ``is_deficit``: whether less is eaten than maintenance. It need not show in tissue: a beginner's lean tissue may
    rise by what fat falls.
    """
    if tissue_share_per_week < -LOSS_LIMIT:
        return LOSS
    if (is_deficit or tissue_share_per_week < 0.0) and end_fat_fraction < stricter(FAT_FRACTION_FLOOR, subject.sex):
        return BODY_FAT
    if tissue_share_per_week > GAIN_RATE_LIMIT[subject.training_status] + 1e-9:
        return GAIN_RATE
    return None


@traced
def refuse_change(
    subject: Subject, tissue_share_per_week: float, end_fat_fraction: float, field: str, *, is_deficit: bool
) -> None:
    """Raise ``Refused`` where an intake asked for changes the body faster or further than a rule allows."""
    rule = breaks_change(subject, tissue_share_per_week, end_fat_fraction, is_deficit=is_deficit)
    if rule == LOSS:
        raise Refused(too_fast_a_loss(tissue_share_per_week), field)
    if rule == BODY_FAT:
        raise Refused(too_lean(subject.sex, end_fat_fraction, speaks=forbids_fat_target(subject) is None), field)
    if rule == GAIN_RATE:
        raise Refused(too_fast_a_gain(subject.training_status, tissue_share_per_week), field)


@traced
def refuse_target(sex: Sex, target_fat_fraction: float, field: str) -> None:
    """Raise ``Refused`` for a body-fat target under the least that is planned."""
    floor = stricter(FAT_FRACTION_FLOOR, sex)
    if target_fat_fraction < floor:
        message = say("REFUSED_TARGET", fat_percent=as_under(100 * target_fat_fraction), limit_percent=100 * floor)
        raise Refused(*refusing(BODY_FAT, field, message, floor, target_fat_fraction, "1"))


def refuse_weight_target(subject: Subject, target_kg: float, field: str) -> None:
    """Raise ``Refused`` for a weight to reach that is underweight."""
    bmi = target_kg / subject.height_squared
    if bmi < BMI_FLOOR:
        raise Refused(underweight(bmi), field)


def refuse_protein(asked_g_per_kg: float, field: str) -> None:
    """Raise ``Refused`` where protein is less than a deficit needs."""
    if asked_g_per_kg < PROTEIN_FLOOR_DEFICIT - 1e-9:
        raise Refused(too_little_protein(asked_g_per_kg), field)
