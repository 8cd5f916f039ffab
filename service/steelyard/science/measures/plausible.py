"""What no body has, and what is asked about: fat-free mass for the height, hours in a week, energy over rest.

A slip of units or a zero too many is refused before anything is built on it; what is rare is asked about.
"""

from ..person import ActivityWeek, Person
from ..register import (
    KOURI_1995,
    THURBER_2019,
    Basis,
    Kind,
    Message,
    OutOfDomain,
    constant,
    equation,
    say,
)
from .body_mass_index import bmi, ffmi, ffmi_notes

FFMI_OF_NO_BODY = constant(
    "ffmi_of_no_body",
    36.0,
    unit="kg/m²",
    summary="Fat-free mass index over which no figure is believed",
    basis=Basis.JUDGEMENT,
    sources=(KOURI_1995,),
)
BMI_ASKED_ABOUT = constant(
    "bmi_asked_about",
    40.0,
    unit="kg/m²",
    summary="Body mass index over which, without a body-fat reading, the unit of the weight is asked about",
    basis=Basis.JUDGEMENT,
)
HOURS_A_WEEK = 168.0
EXPENDITURE_BELIEVED = constant(
    "expenditure_believed",
    1.1,
    unit="x resting energy",
    summary="Maintenance under which none is believed: food and sitting up alone take more",
    basis=Basis.JUDGEMENT,
)
EXPENDITURE_SURELY_BELIEVED = constant(
    "expenditure_surely_believed",
    1.2,
    unit="x resting energy",
    summary="Maintenance from which a log is believed in full: a day in bed or in a chair takes about as much. Under "
    "it belief fades to none at the least that is believed",
    basis=Basis.JUDGEMENT,
)
EXPENDITURE_ASKED = constant(
    "expenditure_asked",
    2.5,
    unit="x resting energy",
    summary="Maintenance over which it is asked about: about what can be kept up for months",
    sources=(THURBER_2019,),
)
EXPENDITURE_REFUSED = constant(
    "expenditure_refused",
    5.0,
    unit="x resting energy",
    summary="Maintenance over which none is believed: more than stage races of three weeks take",
    basis=Basis.JUDGEMENT,
    sources=(THURBER_2019,),
)


def check_body(person: Person) -> None:
    """Raises ``OutOfDomain`` for a measured fat-free mass that no body has, or a week of more than its hours."""
    if person.body_fat is not None:
        check_fat_free_mass(ffmi(person.weight_kg, person.height_cm, person.body_fat.fat_fraction))
    if isinstance(person.activity, ActivityWeek):
        hours = sum(each.minutes / 60.0 * each.times_per_week for each in person.activity.sessions)
        if hours > HOURS_A_WEEK:
            detail = f"The sessions add up to {hours:.0f} hours a week, which has {HOURS_A_WEEK:g}: mend their length."
            raise OutOfDomain("WEEK_TOO_LONG", "activity.sessions", detail)


def check_fat_free_mass(index: float) -> None:
    """Raises ``OutOfDomain`` for a fat-free mass index [kg/m²] that no body has."""
    if index > FFMI_OF_NO_BODY:
        detail = (
            f"A fat-free mass index of {index:.1f} kg/m² is more than any body has ({FFMI_OF_NO_BODY:g}): check the "
            "weight (kilograms, or pounds?), the height and the body-fat reading."
        )
        raise OutOfDomain("FAT_FREE_MASS_IMPLAUSIBLE", "weight_kg", detail)


def doubts_about_body(person: Person) -> tuple[Message, ...]:
    """What to ask about a body that few have: whether the weight is in pounds."""
    if person.body_fat is not None:
        return ffmi_notes(person.sex, ffmi(person.weight_kg, person.height_cm, person.body_fat.fat_fraction))
    index = bmi(person.weight_kg, person.height_cm)
    return (say("WEIGHT_IN_POUNDS", bmi=index),) if index > BMI_ASKED_ABOUT else ()


@equation(
    "plausible_expenditure",
    summary="Maintenance that is believed, asked about or refused, over resting energy",
    formula=(
        f"refused over {EXPENDITURE_REFUSED:g} or, as told, under {EXPENDITURE_BELIEVED:g}; asked about over "
        f"{EXPENDITURE_ASKED:g}"
    ),
    kind=Kind.RULE,
    basis=Basis.JUDGEMENT,
    sources=(THURBER_2019,),
)
def check_expenditure(maintenance_kcal: float, resting_kcal: float, field: str) -> None:
    """Raises ``OutOfDomain`` for a maintenance [kcal/d] that no body has; ``field`` names what it comes from."""
    times = maintenance_kcal / resting_kcal
    if not EXPENDITURE_BELIEVED <= times <= EXPENDITURE_REFUSED:
        detail = (
            f"{maintenance_kcal:.0f} kcal/d is {times:.1f} times resting energy ({resting_kcal:.0f}): no body lives on "
            f"less than {EXPENDITURE_BELIEVED:g} or more than {EXPENDITURE_REFUSED:g} times. Check the figures."
        )
        raise OutOfDomain("MAINTENANCE_IMPLAUSIBLE", field, detail)


def doubts_about_expenditure(maintenance_kcal: float, resting_kcal: float) -> tuple[Message, ...]:
    """What to ask about a maintenance [kcal/d] that few have."""
    times = maintenance_kcal / resting_kcal
    if times <= EXPENDITURE_ASKED:
        return ()
    return (say("MAINTENANCE_UNUSUAL", maintenance_kcal=maintenance_kcal, times=times),)
