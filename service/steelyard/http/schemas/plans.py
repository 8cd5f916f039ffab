"""`POST /v1/plans`."""

from typing import Annotated

from msgspec import Meta

from steelyard.core.forecast import UncertaintySource
from steelyard.core.macronutrients import CarbohydratePreference

from .explanation import GuardRail, MethodIds, Note, Provenance
from .log import Log
from .profile import Profile, Screening
from .quantities import CivilDate, EnergyPerDay, Interval, Request, Response


class MiniCut(Request, frozen=True, kw_only=True, tag_field="kind", tag="mini_cut"):
    """A short, brisk fat-loss phase of 2 to 6 weeks. Give fat, weeks or both; the rest is solved."""

    fat_loss_kg: Annotated[float, Meta(ge=0.2, le=15, description="Fat to lose, kilograms.", examples=[2.0])] | None = (
        None
    )
    weeks: Annotated[int, Meta(ge=2, le=6, description="Length in weeks.", examples=[5])] | None = None
    deficit_kcal: (
        Annotated[
            float,
            Meta(
                ge=100,
                le=1500,
                description="Daily deficit against maintenance at the start; 500 where neither it nor both fat and "
                "weeks are given.",
                examples=[500],
            ),
        ]
        | None
    ) = None
    protein_g_per_kg: (
        Annotated[
            float,
            Meta(ge=1.2, le=3.5, description="Protein, grams per kilogram; 2.0 by default.", examples=[2.0]),
        ]
        | None
    ) = None
    carbohydrate_preference: Annotated[
        CarbohydratePreference, Meta(description="Lower, balanced or higher carbohydrate.", examples=["balanced"])
    ] = CarbohydratePreference.BALANCED
    easing_in_weeks: Annotated[
        int,
        Meta(
            ge=0,
            le=2,
            description="How many of the first weeks run at half the deficit, to limit hunger; none by default.",
            examples=[0],
        ),
    ] = 0


class ReturnToGain(Request, frozen=True, kw_only=True):
    """What follows the mini-cut: maintenance, then a measured surplus."""

    maintenance_weeks: Annotated[int, Meta(ge=1, le=4, description="Weeks at the new maintenance.", examples=[1])] = 1
    gain_weeks: Annotated[int, Meta(ge=0, le=26, description="Weeks of gain to forecast.", examples=[12])] = 12
    surplus_kcal: (
        Annotated[
            float,
            Meta(ge=50, le=1000, description="Daily surplus; set by training status by default.", examples=[250]),
        ]
        | None
    ) = None
    fat_ceiling_fraction: (
        Annotated[
            float,
            Meta(
                ge=0.08,
                le=0.4,
                description="Body fat at which to stop the gain and consider a cut; a common value by default.",
                examples=[0.17],
            ),
        ]
        | None
    ) = None


class KnownMaintenance(Request, frozen=True, kw_only=True):
    """A maintenance estimate to plan from, such as an earlier answer of `/v1/maintenance`."""

    kcal_per_day: EnergyPerDay
    standard_deviation_kcal: Annotated[
        float, Meta(ge=20, le=600, description="Its standard deviation, kilocalories a day.", examples=[120])
    ]


class CutHistory(Request, frozen=True, kw_only=True):
    """Cuts already done. Unknown history keeps the plan to the default deficit."""

    cuts_last_12_months: Annotated[
        int, Meta(ge=0, le=12, description="Fat-loss phases in the last twelve months.", examples=[1])
    ]
    weeks_since_last_cut: (
        Annotated[int, Meta(ge=0, le=520, description="Weeks since the last one ended.", examples=[20])] | None
    ) = None


class PlanRequest(Request, frozen=True, kw_only=True):
    """A person, their screening answers, and the phase to plan."""

    profile: Profile
    start_date: CivilDate
    phase: Annotated[MiniCut, Meta(description="The phase to plan.")]
    screening: Annotated[
        Screening | None, Meta(description="Safety questions; without them no deficit is planned.")
    ] = None
    return_to_gain: ReturnToGain = ReturnToGain()
    maintenance: Annotated[
        KnownMaintenance | None,
        Meta(description="A known maintenance; else it is estimated from the profile and log."),
    ] = None
    log: Annotated[Log | None, Meta(description="Dated weights and intakes to estimate maintenance from.")] = None
    current_intake_kcal: Annotated[
        EnergyPerDay | None, Meta(description="What is eaten a day at present; maintenance by default.")
    ] = None
    cut_history: Annotated[CutHistory | None, Meta(description="Cuts already done.")] = None
    uncertainty_sources: (
        Annotated[
            list[UncertaintySource],
            Meta(max_length=12, description="Which sources of uncertainty the intervals carry; all by default."),
        ]
        | None
    ) = None


class ForecastPoint(Response, frozen=True, kw_only=True):
    """The body expected at the end of a week."""

    date: CivilDate
    weight_kg: Annotated[Interval, Meta(description="Scale weight on that day, daily noise included.")]
    fat_kg: Annotated[Interval, Meta(description="Fat mass.")]
    lean_kg: Annotated[Interval, Meta(description="Lean tissue (fat-free mass without glycogen and carried water).")]
    carried_kg: Annotated[Interval, Meta(description="Glycogen, water and gut content against the usual state.")]
    fat_fraction: Annotated[Interval, Meta(description="Fat mass over scale weight, 0 to 1.")]
    maintenance_kcal: Annotated[Interval, Meta(description="Maintenance of that day's body.")]


class PlanWeek(Response, frozen=True, kw_only=True):
    """A week of a phase: what to eat and what to expect at its end."""

    week: Annotated[int, Meta(description="Number within the phase, from 1.", examples=[1])]
    start_date: CivilDate
    days: Annotated[int, Meta(description="Days in it.", examples=[7])]
    intake_kcal: Annotated[int, Meta(description="Energy a day, to 10 kcal.", examples=[2210])]
    protein_g: Annotated[int, Meta(description="Protein a day, to 5 g.", examples=[165])]
    carbohydrate_g: Annotated[int, Meta(description="Carbohydrate a day, to 5 g.", examples=[220])]
    fat_g: Annotated[int, Meta(description="Fat a day, to 5 g.", examples=[70])]
    fibre_g: Annotated[int, Meta(description="Fibre a day, within the carbohydrate.", examples=[31])]
    energy_balance_kcal: Annotated[
        float, Meta(description="Expected intake minus expenditure, mean of the week.", examples=[-430])
    ]
    at_end: ForecastPoint


class PhaseTotals(Response, frozen=True, kw_only=True):
    """What a phase is expected to do from its first to its last day."""

    weight_kg: Annotated[Interval, Meta(description="Change of scale weight, noise left out.")]
    fat_kg: Annotated[Interval, Meta(description="Change of fat mass.")]
    lean_kg: Annotated[Interval, Meta(description="Change of lean tissue.")]
    carried_kg: Annotated[Interval, Meta(description="Change of carried mass, which comes back with intake.")]


class Phase(Response, frozen=True, kw_only=True):
    """One phase of the plan."""

    kind: Annotated[
        str, Meta(description="`mini_cut`, `cut`, `gain` or `maintenance`. Extensible.", examples=["mini_cut"])
    ]
    start_date: CivilDate
    end_date: Annotated[CivilDate, Meta(description="Last day of the phase.")]
    weeks: list[PlanWeek]
    change: PhaseTotals
    ends_early_when: Annotated[list[Note], Meta(description="What ends the phase before its last day.")]
    guidance: Annotated[list[Note], Meta(description="Training and eating reminders.")]
    reasons: list[Note]
    cautions: list[Note]


class Nearest(Response, frozen=True, kw_only=True):
    """The nearest a safe plan comes on each axis, the others kept as asked. Absent where none exists."""

    fat_loss_kg: Annotated[float | None, Meta(description="Most fat that can be lost in the time asked.")]
    weeks: Annotated[int | None, Meta(description="Fewest weeks for the fat asked; above 6 it is an ordinary cut.")]
    deficit_kcal: Annotated[float | None, Meta(description="Largest deficit inside every guard rail.")]


class RuleOfThumb(Response, frozen=True, kw_only=True):
    """What simple rules say beside the forecast."""

    fat_loss_static_kg: Annotated[
        float, Meta(description="Loss by 7,700 kcal a kilogram at a constant deficit.", examples=[2.27])
    ]
    fat_loss_common_practice_kg: Annotated[
        list[float], Meta(description="Loss commonly quoted, lower and upper.", examples=[[2.3, 4.5]])
    ]
    first_week_drop_common_practice_kg: Annotated[
        list[float], Meta(description="Scale drop of the first days commonly quoted.", examples=[[1.4, 1.8]])
    ]
    first_week_drop_forecast_kg: Annotated[float, Meta(description="Scale drop forecast.", examples=[1.1])]


class PlanResponse(Provenance, frozen=True, kw_only=True):
    """The plan. `feasible` is false when no safe plan does what was asked: then `nearest` says what would."""

    feasible: Annotated[bool, Meta(description="Whether a safe plan does what was asked.", examples=[True])]
    nearest: Annotated[Nearest | None, Meta(description="Set when not feasible.")]
    maintenance_kcal: Annotated[Interval, Meta(description="Maintenance the plan starts from.")]
    resting_kcal: Annotated[Interval, Meta(description="Resting energy expenditure.")]
    body_fat_fraction: Annotated[Interval, Meta(description="Body fat the plan starts from, 0 to 1.")]
    deficit_kcal: Annotated[
        float | None,
        Meta(description="Deficit at the start of the mini-cut, where one is planned.", examples=[500]),
    ]
    phases: list[Phase]
    guard_rails: Annotated[list[GuardRail], Meta(description="Rails that capped or warned.")]
    rule_of_thumb: Annotated[RuleOfThumb | None, Meta(description="Simple rules beside the forecast.")]
    dominant_uncertainty: Annotated[
        str | None,
        Meta(description="Source that widens the fat forecast most at the end of the cut. Extensible."),
    ]
    reasons: list[Note]
    cautions: list[Note]
    methods: MethodIds
