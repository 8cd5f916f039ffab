"""`POST /v1/forecasts`."""

from typing import Annotated

from msgspec import Meta

from steelyard.science.body import TargetQuantity

from .explanation import GuardRail, MethodIds, Note, Provenance
from .log import LogAsked
from .phases import ForecastPoint, MaintenanceAsked, SourcesAsked
from .plans import CutHistory
from .profile import Profile, Screening, TrainingSession
from .shared_fields import (
    CivilDate,
    CurrentIntakeAsked,
    EnergyPerDay,
    Interval,
    LoggingRatio,
    PhysicalMaintenance,
    Request,
    Response,
)
from .states import State, StateAsked


class IntakeStretch(Request, frozen=True, kw_only=True):
    """An intake held for some weeks. What is not given stays as usual."""

    weeks: Annotated[int, Meta(ge=1, le=156, description="How long, in weeks.", examples=[4])]
    intake_kcal: Annotated[float, Meta(ge=800, le=8000, description="Energy a day.", examples=[2300])]
    protein_g_per_kg: Annotated[
        float, Meta(ge=0.3, le=5, description="Protein, grams per kilogram of body mass.", examples=[2.0])
    ] = 1.6
    carbohydrate_g: (
        Annotated[float, Meta(ge=0, le=1500, description="Carbohydrate a day; half of the energy by default.")] | None
    ) = None
    sodium_change_mg: Annotated[
        float, Meta(ge=-5000, le=10000, description="Sodium a day against the usual.", examples=[0])
    ] = 0.0
    added_sessions: Annotated[
        list[TrainingSession],
        Meta(max_length=20, description="Training added to the usual; it raises expenditure."),
    ] = []


class PathQuestion(Request, frozen=True, kw_only=True, tag_field="kind", tag="path"):
    """Where does this schedule of intakes lead?"""

    schedule: Annotated[
        list[IntakeStretch], Meta(min_length=1, max_length=40, description="Stretches in order, 156 weeks in all.")
    ]


class Target(Request, frozen=True, kw_only=True):
    """A value to reach."""

    quantity: Annotated[TargetQuantity, Meta(description="What the target is set in.", examples=["weight_kg"])]
    value: Annotated[float, Meta(gt=0, le=300, description="Its value, in the unit of the quantity.", examples=[80.0])]


class IntakeQuestion(Request, frozen=True, kw_only=True, tag_field="kind", tag="intake_for_target"):
    """Which constant intake reaches a target by a date?"""

    target: Target
    by_date: CivilDate
    protein_g_per_kg: Annotated[
        float, Meta(ge=0.3, le=5, description="Protein, grams per kilogram of body mass.", examples=[2.0])
    ] = 1.6


class DateQuestion(Request, frozen=True, kw_only=True, tag_field="kind", tag="date_for_target"):
    """When does a constant intake reach a target?"""

    target: Target
    intake_kcal: EnergyPerDay
    protein_g_per_kg: Annotated[
        float, Meta(ge=0.3, le=5, description="Protein, grams per kilogram of body mass.", examples=[2.0])
    ] = 1.6


class ForecastRequest(Request, frozen=True, kw_only=True):
    """A person and a question about what an intake does."""

    profile: Profile
    start_date: CivilDate
    question: Annotated[
        PathQuestion | IntakeQuestion | DateQuestion, Meta(description="What to forecast or to solve for.")
    ]
    screening: Annotated[
        Screening | None, Meta(description="Safety questions; without them no deficit and no gain is forecast.")
    ] = None
    maintenance: MaintenanceAsked = None
    log: LogAsked = None
    state: StateAsked = None
    current_intake_kcal: CurrentIntakeAsked = None
    cut_history: Annotated[
        CutHistory | None,
        Meta(description="Cuts already done, for the rails that count them; else as the state knows them."),
    ] = None
    uncertainty_sources: SourcesAsked = None


class NearestTarget(Response, frozen=True, kw_only=True):
    """How near a safe intake comes, on each axis. Absent where there is nothing safe on it."""

    value: Annotated[
        float | None,
        Meta(
            description="The value reached by the date at the nearest safe intake; for `date_for_target` after 26 "
            "weeks at the intake asked about."
        ),
    ]
    by_date: Annotated[
        CivilDate | None,
        Meta(
            description="The date nearest to the one asked for on which the nearest safe intake reaches it: earlier "
            "where it has gone past it by then."
        ),
    ]
    intake_kcal: Annotated[float | None, Meta(description="The nearest safe intake.", examples=[1900])]


class ForecastWeek(Response, frozen=True, kw_only=True):
    """A week: what is eaten and where it leads."""

    start_date: CivilDate
    intake_kcal: Annotated[float, Meta(description="Energy eaten a day.", examples=[2300])]
    energy_balance_kcal: Annotated[float, Meta(description="Expected intake minus expenditure, mean of the week.")]
    at_end: ForecastPoint


class SourceEffect(Response, frozen=True, kw_only=True):
    """How much one source of uncertainty moves the forecast."""

    source: Annotated[str, Meta(description="The source. Extensible.", examples=["maintenance"])]
    fat_kg: Annotated[float, Meta(description="One-SD effect on the change of fat mass at the end, kilograms.")]


class ForecastResponse(Provenance, frozen=True, kw_only=True):
    """The forecast. `feasible` is false when no safe intake reaches the target: then `nearest` says what would."""

    feasible: Annotated[
        bool,
        Meta(description="Whether the target is reached by a safe intake; always true for a `path`.", examples=[True]),
    ]
    nearest: Annotated[NearestTarget | None, Meta(description="Set when not feasible.")]
    intake_kcal: Annotated[
        float | None, Meta(description="The intake asked about or found, for targets.", examples=[2240])
    ]
    reached_on: Annotated[CivilDate | None, Meta(description="When the target is reached, for targets.")]
    maintenance_kcal: Annotated[Interval, Meta(description="Maintenance the forecast starts from.")]
    physical_maintenance_kcal: PhysicalMaintenance
    logging_ratio: LoggingRatio
    protein_reference_kg: Annotated[
        float,
        Meta(
            description="Body mass that the least protein is for: all of it, or less where body fat is high.",
            examples=[84.6],
        ),
    ]
    weeks: list[ForecastWeek]
    uncertainty: Annotated[list[SourceEffect], Meta(description="What makes the forecast uncertain, largest first.")]
    guard_rails: Annotated[list[GuardRail], Meta(description="Rails that warned.")]
    state: State
    reasons: list[Note]
    cautions: list[Note]
    methods: MethodIds
