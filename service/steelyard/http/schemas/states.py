"""The state: what an answer knows of a person on a day, handed to the next request as it is.

Version 1. A newer version reads every older one; ``version`` says which it is.
"""

from enum import StrEnum
from typing import Annotated

from msgspec import UNSET, Meta, UnsetType

from steelyard.science.person import BodyFatMethod, Sex
from steelyard.science.review import SettlingTest

from .log import Log
from .phases import PastPhase, PhaseFollowed
from .profile import Training
from .rosters import Attention
from .shared_fields import (
    AdherenceFigure,
    CivilDate,
    EnergyFigure,
    EnergyPerDay,
    FatFraction,
    HeightCm,
    MassFigure,
    RatioFigure,
    Request,
)

STATE_VERSION = 1


class MaintenanceBasis(StrEnum):
    """What maintenance rests on."""

    EQUATIONS = "equations"
    TOLD = "told"
    LOG = "log"


class KnownReading(Request, frozen=True, kw_only=True):
    """A reading of body fat with its error."""

    date: CivilDate
    fat_fraction: FatFraction
    standard_deviation: Annotated[
        float, Meta(ge=0, le=0.3, description="Its error, 1 SD, as a fraction of body mass.", examples=[0.035])
    ]
    method: Annotated[BodyFatMethod, Meta(description="How it was taken.", examples=["dxa"])]


class BodyAsRead(Request, frozen=True, kw_only=True):
    """The body that the first reading of the log took, kept so that nothing drifts by being handed on."""

    prior_kcal: Annotated[float, Meta(gt=100, le=30000, description="Maintenance by the equations, kcal/d.")]
    prior_sd_kcal: Annotated[float, Meta(gt=0, le=15000, description="Its standard deviation.")]
    rho_kcal_per_kg: Annotated[float, Meta(ge=2000, le=14000, description="Energy of a kilogram of tissue.")]
    rho_sd: Annotated[float, Meta(ge=0, le=6000, description="Its standard deviation.")]
    expenditure_slope_kcal_per_kg_day: Annotated[
        float, Meta(ge=0, le=500, description="Expenditure that a kilogram of tissue adds, kilocalories a day.")
    ]
    growth_kg_per_day: Annotated[float, Meta(ge=-0.05, le=0.05, description="Mass that training adds at balance.")]
    growth_sd: Annotated[float, Meta(ge=-0.05, le=0.05, description="Its standard deviation.")]
    adaptation_gain: Annotated[
        float, Meta(ge=-1, le=3, description="Lagging adaptation, as a share of a change of intake.")
    ]
    carried_per_kcal: Annotated[
        float, Meta(ge=0.0001, le=0.01, description="Carried mass that a lasting kilocalorie a day moves, kilograms.")
    ]
    usual_kcal: Annotated[float, Meta(ge=300, le=25000, description="Eaten a day before the log, logging scale.")]
    is_usual_known: Annotated[bool, Meta(description="Whether that was told.")]
    settled_kg: (
        Annotated[float, Meta(ge=20, le=500, description="Weight when the log began; as tissue stands by default.")]
        | None
    ) = None


class AccountAsRead(Request, frozen=True, kw_only=True):
    """One explanation of the log so far, with its odds."""

    log_odds: Annotated[float, Meta(ge=-1000, le=1000, description="Natural logarithm of its odds, up to a constant.")]
    mean: Annotated[
        list[Annotated[float, Meta(ge=-1e6, le=1e6)]],
        Meta(
            min_length=8,
            max_length=10,
            description="Tissue [kg]; tissue made by 1,000 kcal as logged [kg]; tissue spent a day [kg]; error of the "
            "energy of a kilogram, on the log scale; amplitude of expected carried mass; water that fades [kg]; noise "
            "that lingers [kg]; water that stays [kg]; where a cycle is told, the rise around menstruation [kg] and "
            "that times the days by which it comes late [kg d].",
        ),
    ]
    spread: Annotated[
        list[Annotated[float, Meta(ge=-1e9, le=1e9)]],
        Meta(
            min_length=36,
            max_length=55,
            description="Their covariance, in the units of `mean`: its lower triangle, row by row.",
        ),
    ]
    water_days_ago: Annotated[float, Meta(ge=0, le=1000, description="Days since water moved in it.")] = 1000
    water_side: Annotated[float, Meta(ge=-1, le=1, description="To which side it moved.")] = 0
    noise: Annotated[
        float, Meta(gt=0, le=1000, description="Noise variance of the scale, a fraction of the usual.")
    ] = 1
    noise_weighings: Annotated[float, Meta(gt=0, le=10000, description="How many weighings say so.")] = 3


class StepsAsRead(Request, frozen=True, kw_only=True):
    """What was counted of steps so far."""

    days: Annotated[int, Meta(ge=0, le=40000, description="Days counted.")]
    first: Annotated[float, Meta(ge=0, le=60000, description="Steps a day when their mean was first known.")]
    mean: Annotated[float, Meta(ge=0, le=60000, description="Running mean over a week.")]
    settled: Annotated[float, Meta(ge=0, le=60000, description="Running mean over four weeks.")]
    kcal_per_step: Annotated[float, Meta(ge=0, le=0.08, description="Energy of a step above rest, kilocalories.")]


class ReadSoFar(Request, frozen=True, kw_only=True):
    """What was read of the log before its first entry here. Hand it on as it is; nothing in it is meant to be edited.

    Without `accounts` nothing was read before, and only the body counts.
    """

    body: BodyAsRead
    date: Annotated[CivilDate | None, Meta(description="The day up to which weights are counted.")] = None
    noise_variance: Annotated[float, Meta(ge=0, le=100, description="Noise variance of a weighing, kg squared.")] = 0
    days: Annotated[int, Meta(ge=0, le=40000, description="Days read before.")] = 0
    days_logged: Annotated[int, Meta(ge=0, le=40000, description="Of them, days with an intake.")] = 0
    intakes: Annotated[
        list[Annotated[float, Meta(ge=0, le=100000)] | None],
        Meta(max_length=70, description="Intakes of the days before that day, oldest first; null where none."),
    ] = []
    carbohydrate_kcal: Annotated[
        list[Annotated[float, Meta(ge=0, le=100000)] | None],
        Meta(max_length=70, description="Energy of carbohydrate on the same days, where it was logged."),
    ] = []
    accounts: Annotated[list[AccountAsRead], Meta(max_length=5, description="The explanations held.")] = []
    steps: Annotated[StepsAsRead | None, Meta(description="Steps counted by then; null where none were.")] = None


class QuestionAsked(Request, frozen=True, kw_only=True):
    """The question that reviews last asked in the phase under way; one that is open is not asked anew every week."""

    date: Annotated[CivilDate, Meta(description="The day on which it was asked.")]
    test: Annotated[SettlingTest, Meta(description="What settles it.", examples=["weigh_food"])]
    asked_count: Annotated[int, Meta(ge=1, le=1000, description="How often it was asked by then.", examples=[1])] = 1


class SteeredFigure(Request, frozen=True, kw_only=True):
    """What weight taught of the maintenance of somebody who hardly logs food, as told, in the reviews by a day."""

    date: Annotated[CivilDate, Meta(description="The day of the review that showed it.")]
    mean_kcal: Annotated[float, Meta(gt=100, le=30000, description="Kilocalories a day, as told.", examples=[2480])]
    standard_deviation_kcal: Annotated[
        float, Meta(gt=0, le=15000, description="Its standard deviation.", examples=[160])
    ]


class State(Request, frozen=True, kw_only=True):
    """What is known of a person on a day, each figure with its error. Send it with the next request, as it is, beside
    the same `profile`: it takes the place of the profile's weight and body fat, of the log so far and of the phase, so
    that only what was logged since need be sent. Nothing of it is kept by the service."""

    version: Annotated[int, Meta(ge=1, le=1, description="Version of the state.", examples=[1])] = STATE_VERSION
    as_of_date: CivilDate
    sex: Sex
    height_cm: HeightCm
    weight_kg: Annotated[MassFigure, Meta(description="Weight, noise left out.")]
    fat_kg: Annotated[MassFigure, Meta(description="Fat mass.")]
    lean_kg: Annotated[MassFigure, Meta(description="Lean tissue, usual glycogen and water included.")]
    carried_kg: Annotated[MassFigure, Meta(description="Glycogen, water and gut content against the usual.")]
    fat_method: Annotated[BodyFatMethod, Meta(description="The method that counts most.", examples=["dxa"])]
    fat_is_measured: Annotated[bool, Meta(description="Whether a reading is behind it, rather than height and weight.")]
    maintenance_kcal: Annotated[EnergyFigure, Meta(description="Maintenance on the logging scale.")]
    physical_maintenance_kcal: Annotated[EnergyFigure, Meta(description="Maintenance in energy really eaten.")]
    logging_ratio: Annotated[RatioFigure, Meta(description="Logged over eaten energy.")]
    maintenance_basis: Annotated[
        MaintenanceBasis,
        Meta(description="What maintenance rests on: `equations`, `told` by the caller, or a `log`.", examples=["log"]),
    ]
    adaptation_kcal: Annotated[
        EnergyFigure, Meta(description="Adaptation present: what is spent less (negative) after eating less.")
    ]
    usual_intake_kcal: Annotated[
        EnergyPerDay | None, Meta(description="Eaten a day at present, logging scale; null where not known.")
    ] = None
    training: Training
    adherence: Annotated[
        AdherenceFigure | UnsetType,
        Meta(
            description="How well deficits are kept to, as reviews of them have shown; absent where none has. Plans, "
            "forecasts, decisions and seasons expect of a deficit what it says."
        ),
    ] = UNSET
    steered: Annotated[
        SteeredFigure | UnsetType,
        Meta(
            description="What weight taught of maintenance in phases with hardly any food logged, as reviews of them "
            "read it; absent where none did. Plans start from it, until food is logged."
        ),
    ] = UNSET
    readings: Annotated[
        list[KnownReading], Meta(max_length=40, description="Readings of body fat so far, oldest first.")
    ] = []
    phase: Annotated[PhaseFollowed | None, Meta(description="The phase under way and what changed of it.")] = None
    phase_history: (
        Annotated[list[PastPhase], Meta(max_length=60, description="Past phases, oldest first; null: not known.")]
        | None
    ) = None
    attention: Annotated[Attention | None, Meta(description="That of the last review.")] = None
    question: Annotated[
        QuestionAsked | UnsetType,
        Meta(description="The question last asked in the phase under way; absent where none was."),
    ] = UNSET
    log: Annotated[Log | None, Meta(description="The last weeks of the log, as sent.")] = None
    reading: Annotated[ReadSoFar | None, Meta(description="What was read of the log before those weeks.")] = None


StateAsked = Annotated[
    State | None,
    Meta(
        description="What an earlier answer knew, as it gave it. It takes the place of the profile's weight and body "
        "fat, of the log up to its date, and of the phase; `log` then holds what came since."
    ),
]
