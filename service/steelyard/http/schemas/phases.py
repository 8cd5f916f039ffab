"""Phases as they are followed and were: their weeks, what was changed of them, and how they ended."""

from enum import StrEnum
from typing import Annotated

from msgspec import UNSET, Meta, UnsetType

from steelyard.science.body import UncertaintySource
from steelyard.science.person import BodyFatMethod
from steelyard.science.phase import PhaseKind

from .shared_fields import (
    AdherenceFigure,
    CivilDate,
    EnergyPerDay,
    FatFraction,
    Interval,
    MassFigure,
    RatioFigure,
    Request,
    Response,
    WeightKg,
)

_Kind = Annotated[PhaseKind, Meta(description="Kind of the phase.", examples=["gain"])]


class ForecastPoint(Response, frozen=True, kw_only=True):
    """The body expected at the end of a week.

    Central values are of a body that eats what is told (of a member who is known to keep to clearly less of a deficit:
    as much as that). Intervals hold that and, in a deficit, what people in general come to who are given it, or this
    member as their state knows them: reaching further towards eating more. Without `adherence` among the sources of
    uncertainty they are of the plan being eaten, alone.
    """

    date: CivilDate
    weight_kg: Annotated[Interval, Meta(description="Scale weight on that day, daily noise included.")]
    fat_kg: Annotated[Interval, Meta(description="Fat mass.")]
    lean_kg: Annotated[Interval, Meta(description="Lean tissue (fat-free mass without glycogen and carried water).")]
    carried_kg: Annotated[Interval, Meta(description="Glycogen, water and gut content against the usual state.")]
    fat_fraction: Annotated[Interval, Meta(description="Fat mass over scale weight, 0 to 1.")]
    maintenance_kcal: Annotated[
        Interval, Meta(description="Maintenance of that day's body, with the adaptation present then.")
    ]


class DayKind(Response, frozen=True, kw_only=True):
    """What to eat on one kind of day of a week."""

    kind: Annotated[
        str,
        Meta(
            description="`higher_carbohydrate` or `lower_carbohydrate`. Extensible.", examples=["higher_carbohydrate"]
        ),
    ]
    days_per_week: Annotated[int, Meta(description="How many such days.", examples=[4])]
    intake_kcal: Annotated[int, Meta(description="Energy of such a day.", examples=[2410])]
    protein_g: Annotated[int, Meta(description="Protein of such a day.", examples=[165])]
    carbohydrate_g: Annotated[int, Meta(description="Carbohydrate of such a day.", examples=[270])]
    fat_g: Annotated[int, Meta(description="Fat of such a day.", examples=[70])]


class KnownMaintenance(Request, frozen=True, kw_only=True):
    """A maintenance estimate to plan from, such as an earlier answer of `/v1/maintenance`."""

    kcal_per_day: EnergyPerDay
    standard_deviation_kcal: Annotated[
        float, Meta(ge=20, le=600, description="Its standard deviation, kilocalories a day.", examples=[120])
    ]


MaintenanceAsked = Annotated[
    KnownMaintenance | None, Meta(description="A known maintenance; else it is estimated from the profile and log.")
]
SourcesAsked = (
    Annotated[
        list[UncertaintySource],
        Meta(max_length=12, description="Which sources of uncertainty the intervals carry; all by default."),
    ]
    | None
)
_Passed = Annotated[float, Meta(ge=-100000, le=100000, description="As in the interval of an answer.")]


class IntervalPassed(Request, frozen=True, kw_only=True):
    """An interval of an answer, as it comes back."""

    lower: _Passed
    mean: _Passed
    upper: _Passed
    coverage: Annotated[float, Meta(ge=0, le=1, description="Probability it is meant to hold.")] = 0.8


class PointPassed(Request, frozen=True, kw_only=True):
    """A forecast point of an answer, as it comes back."""

    date: CivilDate
    weight_kg: IntervalPassed
    fat_kg: IntervalPassed
    lean_kg: IntervalPassed
    carried_kg: IntervalPassed
    fat_fraction: IntervalPassed
    maintenance_kcal: IntervalPassed


class DayKindPassed(Request, frozen=True, kw_only=True):
    """A kind of day of an answer, as it comes back."""

    kind: Annotated[str, Meta(max_length=40, description="As in a plan's week.")]
    days_per_week: Annotated[int, Meta(ge=0, le=7, description="As in a plan's week.")]
    intake_kcal: Annotated[float, Meta(ge=0, le=15000, description="As in a plan's week.")]
    protein_g: Annotated[float, Meta(ge=0, le=1000, description="As in a plan's week.")]
    carbohydrate_g: Annotated[float, Meta(ge=0, le=4000, description="As in a plan's week.")]
    fat_g: Annotated[float, Meta(ge=0, le=2000, description="As in a plan's week.")]


_OfDay = Annotated[float, Meta(ge=0, le=15000, description="As in a plan's week.")]


class DayPassed(Request, frozen=True, kw_only=True):
    """A day of an answer, as it comes back."""

    date: CivilDate
    weekday: Annotated[str, Meta(max_length=40, description="As in a plan's week.")]
    intake_kcal: _OfDay
    protein_g: _OfDay
    carbohydrate_g: _OfDay
    fat_g: _OfDay
    alcohol_g: _OfDay
    training_minutes: _OfDay
    training_kcal: _OfDay
    flexible: Annotated[str, Meta(max_length=40, description="As in a plan's week.")] | None = None
    meals_protein_g: Annotated[list[_OfDay], Meta(max_length=24, description="As in a plan's week.")] = []


# Whatever a plan may hold, of those who burn most as well.
_IntakeOfWeek = Annotated[float, Meta(ge=300, le=25000, description="Energy per day, kilocalories.", examples=[2700])]


class WeekFollowed(Request, frozen=True, kw_only=True, omit_defaults=True):
    """A week as planned. A week of a plan's answer, or of a review's, is taken as it is: what is not needed of it is
    passed over."""

    intake_kcal: _IntakeOfWeek
    protein_g: Annotated[float, Meta(ge=5, le=1000, description="Protein a day, grams.", examples=[165])]
    carbohydrate_g: (
        Annotated[float, Meta(ge=0, le=4000, description="Carbohydrate a day; half of the energy by default.")] | None
    ) = None
    is_break: Annotated[
        bool,
        Meta(description="Whether the week is a break at maintenance, which is never corrected.", examples=[False]),
    ] = False
    planned_intake_kcal: Annotated[
        _IntakeOfWeek | None,
        Meta(
            description="Energy a day as first planned, where `intake_kcal` is what a review made of it: the phase is "
            "held against this one, so that no correction counts as the plan."
        ),
    ] = None
    element: Annotated[str, Meta(max_length=40, description="As in a plan's week; `break` is a break.")] | None = None
    start_date: Annotated[
        CivilDate | None, Meta(description="As in a plan's week; that of the first is the start of the phase.")
    ] = None
    days: Annotated[int, Meta(ge=1, le=7, description="As in a plan's week.")] | None = None
    week: Annotated[int, Meta(ge=1, le=400, description="Number of the week; passed over.")] | None = None
    fat_g: (
        Annotated[float, Meta(ge=0, le=1000, description="Not read: a week of a plan may be sent back whole.")] | None
    ) = None
    fibre_g: (
        Annotated[float, Meta(ge=0, le=500, description="Not read: a week of a plan may be sent back whole.")] | None
    ) = None
    day_kinds: Annotated[
        list[DayKindPassed], Meta(max_length=7, description="Not read: a week of a plan may be sent back whole.")
    ] = []
    by_day: Annotated[
        list[DayPassed], Meta(max_length=7, description="Not read: a week of a plan may be sent back whole.")
    ] = []
    energy_balance_kcal: (
        Annotated[float, Meta(ge=-15000, le=15000, description="Not read: a week of a plan may be sent back whole.")]
        | None
    ) = None
    at_end: Annotated[PointPassed | None, Meta(description="Not read: a week of a plan may be sent back whole.")] = None


class ChangeKind(StrEnum):
    """What was changed of a phase."""

    INTAKE = "intake"
    PAUSE = "pause"
    END = "end"


class PhaseChange(Request, frozen=True, kw_only=True):
    """A dated change of a phase: of its intake, a pause at maintenance, or another end."""

    kind: Annotated[
        ChangeKind,
        Meta(
            description="`intake`: from `date` on, `change_kcal` more is eaten than planned until then. `pause`: at "
            "maintenance from `date` to `until_date`; the rest moves back by whole weeks, 52 at most in all. `end`: "
            "`date` is the last day.",
            examples=["intake"],
        ),
    ]
    date: CivilDate
    change_kcal: Annotated[
        float, Meta(ge=-15000, le=15000, description="Change of the daily intake; changes add up.", examples=[-100])
    ] = 0
    until_date: Annotated[CivilDate | None, Meta(description="Last day of a pause.")] = None
    reason: Annotated[str, Meta(max_length=200, description="Why, in a word.", examples=["slower"])] | None = None


class StartBody(Request, frozen=True, kw_only=True):
    """The body on the phase's first morning."""

    weight_kg: MassFigure
    fat_kg: MassFigure
    fat_method: Annotated[BodyFatMethod, Meta(description="The method that counts most.", examples=["skinfolds"])]
    fat_is_measured: Annotated[bool, Meta(description="Whether a reading is behind it, rather than height and weight.")]


class PhaseFollowed(Request, frozen=True, kw_only=True):
    """The phase that is being followed, or was."""

    kind: Annotated[PhaseKind, Meta(description="What the phase is for.", examples=["mini_cut"])]
    start_date: CivilDate
    weeks: Annotated[
        list[WeekFollowed],
        Meta(
            min_length=1,
            max_length=156,
            description="The weeks as first planned, in order: those of the plan, whatever was corrected since.",
        ),
    ]
    maintenance: Annotated[
        KnownMaintenance, Meta(description="What the plan started from, on the scale of its intakes.")
    ]
    fat_loss_kg: (
        Annotated[
            float,
            Meta(
                ge=0.2,
                le=40,
                description="Fat that the phase is to lose, kilograms; where absent, its length is the target.",
                examples=[1.8],
            ),
        ]
        | None
    ) = None
    fat_ceiling_fraction: (
        Annotated[float, Meta(ge=0.08, le=0.6, description="Body fat that ends a gain.", examples=[0.17])] | None
    ) = None
    usual_intake_kcal: Annotated[
        EnergyPerDay | None, Meta(description="What was eaten a day before the phase; maintenance by default.")
    ] = None
    changes: Annotated[
        list[PhaseChange], Meta(max_length=200, description="What was changed since, in order of the dates.")
    ] = []
    start_body: Annotated[
        StartBody | None, Meta(description="The body on its first morning; the profile's where absent.")
    ] = None
    logging_ratio: Annotated[
        RatioFigure | None, Meta(description="Logged over eaten energy as the plan knew it, where it did.")
    ] = None
    adherence: Annotated[
        AdherenceFigure | UnsetType,
        Meta(description="How well deficits are kept to, as the plan knew it; absent where it did not."),
    ] = UNSET
    weeks_before: (
        Annotated[
            float,
            Meta(
                ge=0,
                le=156,
                description="Weeks of a deficit just before that count as of this one, the weeks between included; "
                "absent where there are none.",
                examples=[6],
            ),
        ]
        | UnsetType
    ) = UNSET


class PastPhase(Request, frozen=True, kw_only=True):
    """A phase that is over. Weights, or else body fat, at both ends say how fast it was."""

    kind: _Kind
    start_date: CivilDate
    weeks: Annotated[int, Meta(ge=1, le=104, description="Length in weeks.", examples=[12])]
    start_weight_kg: WeightKg | None = None
    end_weight_kg: WeightKg | None = None
    start_fat_fraction: FatFraction | None = None
    end_fat_fraction: FatFraction | None = None
