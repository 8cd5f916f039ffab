"""Energy of movement, above rest: sessions from their MET, walking from steps, and what of it counts.

A MET here multiplies the person's *own* resting rate (Byrne 2005), not the conventional 1 kcal/kg/h: measured
rest was 0.84 ± 0.16 kcal/kg/h in 769 adults. Everything is *net*: the rest that would have been spent anyway
is counted once, with the resting energy. Compendium values hold the pauses between sets only loosely.
"""

import msgspec

from ..numbers import FLOATS, Elementwise, Estimate, Number
from ..person import ActivityWeek, TrainingKind
from ..register import (
    AINSWORTH_2011,
    BYRNE_2005,
    CAREAU_2021,
    DHURANDHAR_2015,
    HERRMANN_2024,
    TUDOR_LOCKE_2019,
    Basis,
    Choice,
    Source,
    constant,
    equation,
    traced,
)

_2011 = (AINSWORTH_2011,)
_2024 = (HERRMANN_2024,)


# Read in transcriptions of the two lists that agree with each other.
def _met(code: str, value: float, activity: str, sources: tuple[Source, ...] = _2011) -> float:
    return constant(
        f"compendium_{code}",
        value,
        unit="MET",
        summary=f"{activity} (Compendium code {code})",
        sources=sources,
    )


RESISTANCE_VIGOROUS_MET = _met("02050", 6.0, "Resistance training, free weights or machines, vigorous effort")
RESISTANCE_SQUAT_DEADLIFT_MET = _met("02052", 5.0, "Resistance training, squats or deadlift, slow or explosive")
RESISTANCE_GENERAL_MET = _met("02054", 3.5, "Resistance training, multiple exercises, 8-15 repetitions")
WALKING_SLOW_MET = _met("17170", 3.0, "Walking 4.0 km/h, level", _2024)
WALKING_MET = _met("17190", 3.8, "Walking 4.5-5.5 km/h, level", _2024)
WALKING_BRISK_MET = _met("17200", 4.3, "Walking 5.6 km/h, level, brisk")
WALKING_FAST_MET = _met("17220", 5.0, "Walking 6.4 km/h, level")
CYCLING_LIGHT_MET = _met("01020", 6.8, "Cycling 16-19 km/h", _2024)
CYCLING_MODERATE_MET = _met("01030", 8.0, "Cycling 19-22.5 km/h")
CYCLING_STATIONARY_MET = _met("02010", 7.0, "Stationary cycling, general")
RUNNING_8_KMH_MET = _met("12030", 8.3, "Running 8 km/h")
RUNNING_9_7_KMH_MET = _met("12050", 9.8, "Running 9.7 km/h")
RUNNING_11_3_KMH_MET = _met("12070", 11.0, "Running 11.3 km/h")

STEPS_PER_MINUTE = constant(
    "walking_cadence",
    100.0,
    unit="steps/min",
    summary="Cadence at which adults walk at about 3 MET (96-102 by two methods in 76 adults)",
    sources=(TUDOR_LOCKE_2019,),
)
ACTIVITY_ERROR = constant(
    "activity_energy_error",
    0.30,
    unit="1",
    summary="Relative error (1 SD) of a person's net energy of sessions or steps from table values",
    basis=Basis.JUDGEMENT,
)
COMPENSATED_SHARE = constant(
    "activity_compensated",
    0.50,
    unit="1",
    summary="Share of what more activity burns in a deficit that the body takes back: 28 % by lower energy at rest in "
    "1754 adults living as usual; in trials of monitored exercise 55-64 % of the loss expected was missing, more food "
    "included",
    basis=Basis.JUDGEMENT,
    sources=(CAREAU_2021, DHURANDHAR_2015),
)
COMPENSATED_SD = constant(
    "activity_compensated_sd",
    0.30,
    unit="1",
    summary="Standard deviation between people of the share taken back",
    basis=Basis.JUDGEMENT,
)
LIFTING_BOUT_MINUTES = constant(
    "resistance_bout_minutes",
    60.0,
    unit="min",
    summary="Length of a resistance session whose length was not told",
    basis=Basis.COMMON_PRACTICE,
)

_DAYS_A_WEEK = 7.0
_HOURS_A_DAY = 24.0
_MINUTES_AN_HOUR = 60.0


@equation(
    "session_energy",
    summary="Net energy of a bout on the person's own resting rate, a day",
    formula="(MET − 1) REE / 24 × minutes / 60 × bouts a week / 7 kcal/d, nothing below 1 MET",
    sources=(BYRNE_2005,),
)
def session_kcal(
    met: Number, minutes: Number, times_per_week: Number, resting_kcal: Number, ops: Elementwise = FLOATS
) -> Number:
    """Net energy in kcal/d of a bout of ``minutes`` at ``met``, repeated ``times_per_week``."""
    hours_a_day = minutes / _MINUTES_AN_HOUR * times_per_week / _DAYS_A_WEEK
    return ops.maximum(met - 1.0, 0.0) * resting_kcal / _HOURS_A_DAY * hours_a_day


@equation(
    "step_energy",
    summary="Net energy of walking from steps, on the person's own resting rate",
    formula=(f"({WALKING_SLOW_MET:g} − 1) REE / 24 × steps a day / ({STEPS_PER_MINUTE:g} steps/min × 60 min/h) kcal/d"),
    sources=(TUDOR_LOCKE_2019, HERRMANN_2024, BYRNE_2005),
)
def step_kcal(steps_per_day: Number, resting_kcal: Number, ops: Elementwise = FLOATS) -> Number:
    """Net energy in kcal/d of ``steps_per_day`` taken outside sessions."""
    minutes = steps_per_day / STEPS_PER_MINUTE
    return session_kcal(WALKING_SLOW_MET, minutes, _DAYS_A_WEEK, resting_kcal, ops)


# Of lifting as of a level's sessions; of what has no kind, a moderate effort.
_USUAL_MET = Choice(
    {
        TrainingKind.RESISTANCE: RESISTANCE_SQUAT_DEADLIFT_MET,
        TrainingKind.WALKING: WALKING_BRISK_MET,
        TrainingKind.RUNNING: RUNNING_9_7_KMH_MET,
        TrainingKind.CYCLING: CYCLING_STATIONARY_MET,
        TrainingKind.OTHER: WALKING_FAST_MET,
    }
)


@traced
def bout_kcal(kind: TrainingKind, minutes: float, resting_kcal: float, met: float | None = None) -> float:
    """Net energy of one bout [kcal], at the intensity usual for its kind unless ``met`` says another."""
    return float(session_kcal(_USUAL_MET[kind] if met is None else met, minutes, _DAYS_A_WEEK, resting_kcal))


@traced
@equation(
    "activity_kept",
    summary="What is left of the energy that activity burns in a deficit",
    formula=f"burnt x (1 - {COMPENSATED_SHARE:g}); SD of a product of two independent errors",
    basis=Basis.JUDGEMENT,
    sources=(CAREAU_2021, DHURANDHAR_2015),
)
def kept_kcal(burnt: Estimate) -> Estimate:
    """What counts of what is burnt [kcal/d]."""
    kept, sd = 1.0 - COMPENSATED_SHARE, COMPENSATED_SD
    variance = (burnt.mean * sd) ** 2 + (kept * burnt.sd) ** 2 + (sd * burnt.sd) ** 2
    return Estimate(burnt.mean * kept, variance**0.5)


class WeekEnergy(msgspec.Struct, frozen=True):
    """Net energy of a composed week in kcal/d."""

    steps_kcal: float
    sessions_kcal: float


def week_energy(week: ActivityWeek, resting_kcal: float) -> WeekEnergy:
    """Net energy in kcal/d of the steps and the sessions of a composed week."""
    sessions = 0.0
    for session in week.sessions:
        sessions += session_kcal(session.met, session.minutes, session.times_per_week, resting_kcal)
    return WeekEnergy(step_kcal(week.steps_per_day, resting_kcal), sessions)
