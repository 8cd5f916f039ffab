"""Total energy expenditure: resting energy times activity, combined with what labelled water says of such people.

Two ways in, never both: a physical activity level (PAL), which already holds training and the thermic effect
of food, or a composed week, in which a day of sitting, the steps and the sessions are added up. Nothing is
ever added on top of a PAL. The reference equations, fitted to total expenditure by doubly labelled water, are read at
the same level. Both err alike where the person differs from others or their activity is misjudged, so they are weighed
with their covariance.
"""

import math

import msgspec

from ..body import THERMIC_SHARE
from ..numbers import Estimate
from ..person import ActivityLevel, ActivityWeek, Person
from ..register import (
    BYRNE_2005,
    FAO_2004,
    HEALTH_CANADA_DRI,
    NASEM_2023,
    THURBER_2019,
    Basis,
    Kind,
    Message,
    constant,
    equation,
    record,
    say,
    traced,
)
from .activity_energy import (
    ACTIVITY_ERROR,
    LIFTING_BOUT_MINUTES,
    RESISTANCE_SQUAT_DEADLIFT_MET,
    session_kcal,
    week_energy,
)
from .activity_levels import (
    PAL,
    PAL_PLAUSIBLE_FROM,
    PAL_SUPPLY_LIMIT,
    PAL_WITHOUT_EXERCISE,
    SITTING_PAL,
    SITTING_PAL_SD,
    pal_notes,
)
from .energy_requirements import EER_IDS, EER_SAMPLE, EER_YOUNG, PAL_MIDDLES, between_categories, requirements
from .resting_energy import INDIVIDUAL_ERROR

PRODUCT_ERROR = constant(
    "resting_times_activity_error",
    0.06,
    unit="1",
    summary="Error of resting energy times activity for a whole group, beside that of its parts: equations of athletes "
    "and lifters ran 2 to 16 % over the reference equations of the same activity in 18 of 21 people tried",
    basis=Basis.JUDGEMENT,
)


class TotalRow(msgspec.Struct, frozen=True, gc=False):
    """One estimate of total energy and its share in the answer, 0 to 1.

    A category of the reference equations, or resting energy times activity. ``note``: why it does not apply, or how it
    was taken.
    """

    id: str
    kcal_per_day: float
    standard_error: float
    weight: float
    is_applicable: bool
    note: Message | None = None


class TotalEnergy(Estimate, frozen=True, kw_only=True):
    """Total energy expenditure in kcal/d, and the implied PAL.

    ``exercise_kcal`` is the net energy of training sessions in kcal/d, as energy availability needs it. Of a person who
    told only a level it is part of that: what the level has over ``PAL_WITHOUT_EXERCISE``, and no less than
    their weekly resistance sessions.
    """

    pal: float
    exercise_kcal: float
    notes: tuple[Message, ...]
    rows: tuple[TotalRow, ...] = ()


class Product(Estimate, frozen=True, kw_only=True):
    """Resting energy times activity, kcal/d. ``pal_sd`` is the error of the level alone."""

    id: str
    pal: float
    pal_sd: float
    exercise_kcal: float


def resting_times_activity(person: Person, resting: Estimate) -> Product:
    """Total energy in kcal/d as resting energy (kcal/d) times the level of the person's activity."""
    activity = person.activity
    if isinstance(activity, ActivityLevel):
        return _from_level(activity, resting, person.training.resistance_sessions_per_week)
    return _from_week(activity, resting)


@traced
@equation(
    "total_energy_from_pal",
    kind=Kind.MODEL,
    summary="Total energy from an activity level that already holds training and the thermic effect",
    formula=(
        "TEE = PAL REE with the middle of the band; sd of PAL = half the width of the band "
        "(wider than uniform, since people misjudge their level: ours)"
    ),
    basis=Basis.PUBLISHED,
    sources=(FAO_2004,),
)
def _from_level(activity: ActivityLevel, resting: Estimate, sessions_per_week: float) -> Product:
    level = PAL[activity]
    lifting = session_kcal(RESISTANCE_SQUAT_DEADLIFT_MET, LIFTING_BOUT_MINUTES, sessions_per_week, resting.mean)
    # What the level has over a day of walking and seated work is training, or work as hard.
    exercise = max(lifting, (1.0 - THERMIC_SHARE) * (level.mean - PAL_WITHOUT_EXERCISE) * resting.mean)
    return _product("total_energy_from_pal", resting, level.mean, level.sd, exercise)


@traced
@equation(
    "total_energy_from_week",
    kind=Kind.MODEL,
    summary="Total energy from a composed week; the thermic effect of the food that pays for it counted once",
    formula=(
        f"TEE = {SITTING_PAL:g} REE + (net steps + net sessions) / (1 − {THERMIC_SHARE:g}); "
        f"sd² = (PAL sd(REE))² + ({SITTING_PAL_SD:g} REE)² "
        f"+ ({ACTIVITY_ERROR:g} / {1 - THERMIC_SHARE:g})² (steps² + sessions²)"
    ),
    basis=Basis.JUDGEMENT,
    sources=(FAO_2004, BYRNE_2005),
)
def _from_week(activity: ActivityWeek, resting: Estimate) -> Product:
    rest = resting.mean
    week = week_energy(activity, rest)
    paid = 1.0 / (1.0 - THERMIC_SHARE)  # food for the movement has its own thermic effect
    pal = SITTING_PAL + paid * (week.steps_kcal + week.sessions_kcal) / rest
    error = ACTIVITY_ERROR * paid / rest
    steps, sessions = error * week.steps_kcal, error * week.sessions_kcal
    pal_sd = math.sqrt(SITTING_PAL_SD**2 + steps * steps + sessions * sessions)
    return _product("total_energy_from_week", resting, pal, pal_sd, week.sessions_kcal)


def _product(id: str, resting: Estimate, pal: float, pal_sd: float, exercise_kcal: float) -> Product:
    sd = math.sqrt((pal * resting.sd) ** 2 + (resting.mean * pal_sd) ** 2)
    return Product(pal * resting.mean, sd, id=id, pal=pal, pal_sd=pal_sd, exercise_kcal=exercise_kcal)


@traced
@equation(
    "total_energy_combined",
    summary="Total energy: resting energy times activity and the reference equations, weighed with their covariance",
    formula=(
        "mean = w R + (1 - w) P, R the reference equations read at the activity level, P = PAL REE; "
        "w = (sP² - c) / (sR² + sP² - 2c); sR² = (relative error R)² + (slope sd(PAL))²; "
        f"sP² = sd(P)² + ({PRODUCT_ERROR:g} P)²; c = {INDIVIDUAL_ERROR:g}² R P + slope REE sd(PAL)²; "
        "sd² = (sR² sP² - c²) / (sR² + sP² - 2c); "
        f"never under {PAL_PLAUSIBLE_FROM:g} REE, nor over {PAL_SUPPLY_LIMIT:g} REE where P is not"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(NASEM_2023, HEALTH_CANADA_DRI, FAO_2004, THURBER_2019),
    valid_range="the reference equations from 9 years; before, resting energy times activity alone; under 19 years "
    "with the levels of activity and the relative error of adults (our judgement)",
)
def estimate(person: Person, resting: Estimate) -> TotalEnergy:
    """Total energy expenditure in kcal/d from resting energy (kcal/d), the person's activity and the references."""
    product = resting_times_activity(person, resting)
    pal, pal_sd = product.pal, product.pal_sd
    values, errors, spread = requirements(person)
    low, share, outside = between_categories(pal)
    reference = outside * ((1.0 - share) * values[low] + share * values[low + 1])
    applicable = EER_SAMPLE.holds_at(person.age_years)
    slope = (values[-1] - values[0]) / (PAL_MIDDLES[-1] - PAL_MIDDLES[0])
    of_reference = (spread * reference) ** 2 + (slope * pal_sd) ** 2
    of_product = product.sd * product.sd + (PRODUCT_ERROR * product.mean) ** 2
    shared = INDIVIDUAL_ERROR**2 * reference * product.mean + slope * resting.mean * pal_sd * pal_sd
    apart = of_reference + of_product - 2.0 * shared
    weight = min(max((of_product - shared) / apart, 0.0), 1.0) if applicable and apart > 0.0 else 0.0
    rest_weight = 1.0 - weight
    mean = weight * reference + rest_weight * product.mean
    # A week told in full that comes to more than can be kept up for months is asked about, and not cut down.
    mean = min(max(mean, PAL_PLAUSIBLE_FROM * resting.mean), max(PAL_SUPPLY_LIMIT * resting.mean, product.mean))
    variance = (
        weight * weight * of_reference + rest_weight * rest_weight * of_product + 2.0 * weight * rest_weight * shared
    )
    record(*EER_IDS)  # the outer two give the slope
    weights = [0.0] * len(values)
    weights[low], weights[low + 1] = weight * (1.0 - share), weight * share
    # Beyond the outer categories the nearest is taken in proportion.
    beyond = None if outside == 1.0 else say("EER_BEYOND_CLASS", factor=outside)
    rows = [
        TotalRow(id, value, error, of, applicable, (beyond if of else None) if applicable else EER_YOUNG)
        for id, value, error, of in zip(EER_IDS, values, errors, weights, strict=True)
    ]
    rows.append(TotalRow(product.id, product.mean, math.sqrt(of_product), rest_weight, True))
    return TotalEnergy(
        mean,
        math.sqrt(variance),
        pal=mean / resting.mean,
        exercise_kcal=product.exercise_kcal,
        notes=pal_notes(pal),
        rows=tuple(rows),
    )
