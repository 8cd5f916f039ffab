"""Groups whose total expenditure was measured, by labelled water or on a ward, against the estimate before a log.

None of them was used for the estimate: the reference equations and the bands of activity are other people's. Figures
marked (recalled) in ``assumed`` were not seen; the level is the one whose description by the service fits.
"""

from typing import NamedTuple

from steelyard.science.measures import total_energy
from steelyard.science.measures.assessment import assess
from steelyard.science.measures.resting_energy import INDIVIDUAL_ERROR
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.person.person import ActivityLevel, Person, Sex, Training, TrainingStatus


class Cohort(NamedTuple):
    """A measured group: body, level, resting energy where measured, mean total energy and its SD [kcal/d]."""

    title: str
    male_share: float
    age_years: float
    height_cm: float
    weight_kg: float
    level: ActivityLevel
    total_kcal: float
    sd_kcal: float | None
    participants: int
    resting_kcal: float | None = None
    assumed: str = ""
    status: TrainingStatus = TrainingStatus.UNTRAINED


_MJ = 1000.0 / 4.184
COHORTS = (
    # Levine 1999 and the trials below: see trials.toml.
    Cohort("Levine 1999, before overfeeding", 0.75, 30, 174, 65.8, ActivityLevel.LIGHT, 2807, None, 16, 1693.0,
           "height (recalled)"),
    Cohort("CALERIE-2, before restriction", 0.3, 38, 169.4, 72.0, ActivityLevel.LIGHT, 2470, None, 218,
           assumed="body and expenditure (recalled)"),
    Cohort("Bray 2012, weight-stable on a ward", 0.64, 25, 171, 74.0, ActivityLevel.SEDENTARY, 2385, None, 25,
           assumed="body (recalled)"),
    # Van Etten LM et al. J Appl Physiol 1997;82:298-304: sleeping rate 4.8 kJ/min, 5 % under resting (from memory).
    Cohort("Van Etten 1997, men before lifting", 1.0, 33, 180, 77.0, ActivityLevel.LIGHT, 12.4 * _MJ, 1.2 * _MJ, 12,
           4.8 * 1.44 * _MJ / 0.95, "body (recalled)"),
    Cohort("Van Etten 1997, after 18 weeks of it", 1.0, 33, 180, 77.0, ActivityLevel.MODERATE, 13.5 * _MJ, 1.9 * _MJ,
           12, 4.8 * 1.44 * _MJ / 0.95, "body (recalled)"),
    # International women's rugby, doi 10.1139/apnm-2023-0596; men's, doi 10.20463/pan.2023.0009: 3862-5784 kcal/d.
    Cohort("women's rugby, internationals", 0.0, 25, 168, 75.0, ActivityLevel.VERY_ACTIVE, 3229, 545, 15, 1578.0,
           "body (recalled)"),
    Cohort("men's rugby, professionals", 1.0, 25, 184, 100.0, ActivityLevel.VERY_ACTIVE, 4823, 700, 14, None,
           "body and SD (recalled); the middle of the range of group means", TrainingStatus.ADVANCED),
)  # fmt: skip
CLASS_BIAS = 0.05


def estimated(cohort: Cohort) -> Estimate:
    """Total energy before a log of the mean person of a group [kcal/d], by the service."""
    means, sds = 0.0, 0.0
    for sex, share in ((Sex.MALE, cohort.male_share), (Sex.FEMALE, 1.0 - cohort.male_share)):
        person = Person(
            sex=sex,
            age_years=cohort.age_years,
            height_cm=cohort.height_cm,
            weight_kg=cohort.weight_kg,
            activity=cohort.level,
            training=Training(status=cohort.status, resistance_sessions_per_week=0.0),
        )
        measured = cohort.resting_kcal
        resting = assess(person).resting if measured is None else Estimate(measured, INDIVIDUAL_ERROR * measured)
        found = total_energy.estimate(person, resting)
        means += share * found.mean
        sds += share * found.sd
    return Estimate(means, sds)


def class_bias() -> dict[ActivityLevel, float]:
    """Mean of estimated over measured less 1, by level."""
    ratios: dict[ActivityLevel, list[float]] = {}
    for cohort in COHORTS:
        ratios.setdefault(cohort.level, []).append(estimated(cohort).mean / cohort.total_kcal - 1.0)
    return {level: sum(found) / len(found) for level, found in ratios.items()}
