"""`POST /v1/plans`."""

from datetime import date
from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from steelyard.science.person import FlexibleKind, TrainingKind, Weekday
from steelyard.science.phase import Pace, PlanChoice
from steelyard.science.rails import CarbohydratePreference

from .explanation import GuardRail, MethodIds, Note, Provenance
from .log import LogAsked
from .phases import DayKind, ForecastPoint, MaintenanceAsked, SourcesAsked
from .profile import Profile, Screening
from .shared_fields import (
    CivilDate,
    CurrentIntakeAsked,
    FatFraction,
    Interval,
    LoggingRatio,
    PhysicalMaintenance,
    Request,
    Response,
)
from .states import State, StateAsked

_FatLossKg = Annotated[float, Meta(ge=0.2, le=30, description="Fat to lose, kilograms.", examples=[2.0])]
_TargetWeightKg = Annotated[
    float, Meta(ge=30, le=300, description="Weight to reach once carried mass has settled, kilograms.")
]
_DeficitKcal = Annotated[
    float,
    Meta(
        ge=100,
        le=1500,
        description="Daily deficit at the start; chosen by body, history and `pace` where neither it nor both a goal "
        "and a time are given.",
        examples=[500],
    ),
]
_ProteinPerKg = Annotated[
    float, Meta(ge=1.2, le=3.5, description="Protein, grams per kilogram; 2.0 by default.", examples=[2.0])
]
_Preference = Annotated[
    CarbohydratePreference, Meta(description="Lower, balanced or higher carbohydrate.", examples=["balanced"])
]
_Pace = Annotated[
    Pace,
    Meta(description="How fast to go where the size is left open: `gentle`, `steady` or `brisk`.", examples=["steady"]),
]
_EventDate = Annotated[
    date,
    Meta(
        description="A day to be ready for: the phase and the maintenance that lets carried mass settle end before it, "
        "as late as will do. Instead of `weeks`.",
        examples=["2026-06-20"],
    ),
]
_EasingInWeeks = Annotated[
    int,
    Meta(
        ge=0,
        le=2,
        description="How many of the first weeks run at half the deficit, to limit hunger; none by default.",
        examples=[0],
    ),
]


class MiniCut(Request, frozen=True, kw_only=True, tag_field="kind", tag="mini_cut"):
    """A short, brisk fat-loss phase of 2 to 6 weeks at one fixed intake.

    Give a goal (one of `fat_loss_kg`, `target_fat_fraction`, `target_weight_kg`), a time (`weeks` or `event_date`),
    or both; the rest is solved.
    """

    fat_loss_kg: _FatLossKg | None = None
    target_fat_fraction: FatFraction | None = None
    target_weight_kg: _TargetWeightKg | None = None
    weeks: Annotated[int, Meta(ge=1, le=6, description="Length in weeks, 2 or more unless some are done.")] | None = (
        None
    )
    event_date: _EventDate | None = None
    deficit_kcal: _DeficitKcal | None = None
    pace: _Pace = Pace.STEADY
    protein_g_per_kg: _ProteinPerKg | None = None
    carbohydrate_preference: _Preference = CarbohydratePreference.BALANCED
    easing_in_weeks: _EasingInWeeks = 0
    weeks_done: Annotated[
        int,
        Meta(
            ge=0,
            le=6,
            description="Weeks of this phase already done, to plan its rest from the body as it is now.",
            examples=[0],
        ),
    ] = 0


class Cut(Request, frozen=True, kw_only=True, tag_field="kind", tag="cut"):
    """A longer fat-loss phase of 7 to 26 weeks, its intake set anew every few weeks, with breaks where wanted."""

    fat_loss_kg: _FatLossKg | None = None
    target_fat_fraction: FatFraction | None = None
    target_weight_kg: _TargetWeightKg | None = None
    weeks: Annotated[int, Meta(ge=1, le=26, description="Length in weeks, 7 or more unless some are done.")] | None = (
        None
    )
    event_date: _EventDate | None = None
    deficit_kcal: _DeficitKcal | None = None
    pace: _Pace = Pace.STEADY
    protein_g_per_kg: _ProteinPerKg | None = None
    carbohydrate_preference: _Preference = CarbohydratePreference.BALANCED
    easing_in_weeks: _EasingInWeeks = 0
    break_every_weeks: (
        Annotated[int, Meta(ge=2, le=16, description="A break at maintenance after this many weeks.", examples=[6])]
        | None
    ) = None
    break_weeks: Annotated[int, Meta(ge=1, le=2, description="Length of a break.", examples=[1])] = 1
    weeks_done: Annotated[
        int,
        Meta(ge=0, le=52, description="Weeks of this phase already done, to plan its rest from the body as it is now."),
    ] = 0


class Gain(Request, frozen=True, kw_only=True, tag_field="kind", tag="gain"):
    """A measured surplus: for some weeks (12 by default), or until a settled weight is reached."""

    weeks: Annotated[int, Meta(ge=1, le=52, description="Length in weeks.", examples=[16])] | None = None
    target_weight_kg: _TargetWeightKg | None = None
    surplus_kcal: (
        Annotated[
            float,
            Meta(
                ge=50,
                le=1000,
                description="Daily surplus; set by training status, lean mass and `pace` by default.",
                examples=[250],
            ),
        ]
        | None
    ) = None
    pace: _Pace = Pace.STEADY
    fat_ceiling_fraction: (
        Annotated[
            float,
            Meta(
                ge=0.08,
                le=0.6,
                description="Body fat at which to stop and consider a cut: the weeks left are a hold. A common "
                "value by default.",
                examples=[0.17],
            ),
        ]
        | None
    ) = None
    carbohydrate_preference: _Preference = CarbohydratePreference.BALANCED


class Hold(Request, frozen=True, kw_only=True, tag_field="kind", tag="maintenance"):
    """Weeks at maintenance, as a bridge or a rest; a gain follows as `return_to_gain` says."""

    weeks: Annotated[int, Meta(ge=1, le=26, description="Length in weeks.", examples=[2])]
    carbohydrate_preference: _Preference = CarbohydratePreference.BALANCED


class PauseReason(StrEnum):
    """Why a phase waits."""

    TRAVEL = "travel"
    ILLNESS = "illness"
    INJURY = "injury"
    OTHER = "other"


class Pause(Request, frozen=True, kw_only=True):
    """Weeks at maintenance before the phase starts or resumes."""

    weeks: Annotated[int, Meta(ge=1, le=12, description="Length of the pause in weeks.", examples=[1])]
    reason: Annotated[PauseReason, Meta(description="Why.", examples=["travel"])] = PauseReason.OTHER


class DaySplit(Request, frozen=True, kw_only=True):
    """Eat more carbohydrate on some days of the week and less on the others; the weekly total stays the same."""

    higher_days_per_week: Annotated[
        int, Meta(ge=1, le=6, description="Days with more carbohydrate: training days, for example.", examples=[4])
    ]
    carbohydrate_shift: Annotated[
        float,
        Meta(ge=0.05, le=0.6, description="How much more on those days, as a share of the mean.", examples=[0.2]),
    ] = 0.2


class TrainingDay(Request, frozen=True, kw_only=True):
    """A bout of training on a weekday. It moves food to its day; it adds nothing to the maintenance, which counts the
    usual training already."""

    weekday: Annotated[Weekday, Meta(description="Day of the week.", examples=["monday"])]
    kind: Annotated[TrainingKind, Meta(description="What is trained.", examples=["resistance"])] = (
        TrainingKind.RESISTANCE
    )
    minutes: Annotated[float, Meta(ge=5, le=600, description="Its length.", examples=[60])] = 60
    met: Annotated[float, Meta(ge=1, le=20, description="Intensity in METs; usual for its kind by default.")] | None = (
        None
    )


class FlexibleDayAsked(Request, frozen=True, kw_only=True):
    """A day with more: a weekday of every week, or one date. The other days of its week pay for it."""

    weekday: Annotated[Weekday | None, Meta(description="Day of every week; or set `date`.", examples=["saturday"])] = (
        None
    )
    date: Annotated[CivilDate | None, Meta(description="One day; or set `weekday`.")] = None
    kind: Annotated[FlexibleKind, Meta(description="Why it has more.", examples=["party"])] = FlexibleKind.OTHER
    extra_kcal: Annotated[
        float, Meta(ge=0, le=3000, description="Food beyond a usual day, kilocalories.", examples=[500])
    ] = 0
    alcohol_g: Annotated[
        float,
        Meta(
            ge=0,
            le=150,
            description="Pure alcohol on top, grams, at 7.1 kcal a gram. Half a litre of beer has about 20.",
            examples=[40],
        ),
    ] = 0


class WeekAsked(Request, frozen=True, kw_only=True):
    """How the member lives the week: then each week of the plan tells what to eat on each day. The week's total stays
    exactly as planned, and every day keeps the guard rails."""

    training: Annotated[
        list[TrainingDay],
        Meta(max_length=21, description="When training is: those days have what it burns more, the others less."),
    ] = []
    flexible_days: Annotated[
        list[FlexibleDayAsked], Meta(max_length=60, description="Days with more food or with alcohol.")
    ] = []
    meals_per_day: Annotated[
        int, Meta(ge=1, le=8, description="Meals that the protein is shared among.", examples=[4])
    ] = 4
    is_plant_based: Annotated[
        bool,
        Meta(
            description="Whether all protein is of plants: where `protein_g_per_kg` is left open, a tenth more of it "
            "is planned.",
            examples=[False],
        ),
    ] = False


class ReturnToGain(Request, frozen=True, kw_only=True):
    """What follows a fat-loss phase or a hold: maintenance, then a measured surplus."""

    maintenance_weeks: Annotated[int, Meta(ge=1, le=4, description="Weeks at the new maintenance.", examples=[1])] = 1
    gain_weeks: Annotated[int, Meta(ge=0, le=26, description="Weeks of gain to forecast.", examples=[12])] = 12
    surplus_kcal: (
        Annotated[
            float,
            Meta(
                ge=50,
                le=1000,
                description="Daily surplus; set by training status and lean mass by default.",
                examples=[250],
            ),
        ]
        | None
    ) = None
    fat_ceiling_fraction: (
        Annotated[
            float,
            Meta(
                ge=0.08,
                le=0.6,
                description="Body fat at which to stop the gain and consider a cut: the weeks left are a hold. A "
                "common value by default.",
                examples=[0.17],
            ),
        ]
        | None
    ) = None


class CutHistory(Request, frozen=True, kw_only=True):
    """Cuts already done. Unknown history keeps a plan to the default deficit, and a forecast says so."""

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
    phase: Annotated[MiniCut | Cut | Gain | Hold, Meta(description="The phase to plan.")]
    screening: Annotated[
        Screening | None, Meta(description="Safety questions; without them no deficit and no gain is planned.")
    ] = None
    return_to_gain: ReturnToGain = ReturnToGain()
    pause: Annotated[Pause | None, Meta(description="Weeks at maintenance first: travel, illness, injury.")] = None
    day_split: Annotated[
        DaySplit | None, Meta(description="Higher- and lower-carbohydrate days with the same weekly total.")
    ] = None
    week: Annotated[
        WeekAsked | None,
        Meta(description="How the week is lived, for what to eat on each day. Instead of `day_split`."),
    ] = None
    maintenance: MaintenanceAsked = None
    log: LogAsked = None
    state: StateAsked = None
    current_intake_kcal: CurrentIntakeAsked = None
    cut_history: Annotated[CutHistory | None, Meta(description="Cuts already done.")] = None
    uncertainty_sources: SourcesAsked = None
    include: Annotated[
        list[PlanChoice],
        Meta(
            max_length=12,
            description="What to work out beside the plan, for somebody who may still choose: `sizes`, the phase at "
            "other sizes with the price of each; `levers`, what more steps or cycling would do for a fat loss. The two "
            "together take about as long to compute as the plan itself; none by default.",
            examples=[["sizes", "levers"]],
        ),
    ] = []


class DayPlan(Response, frozen=True, kw_only=True):
    """What to eat on a day. 4 protein + 4 carbohydrate + 9 fat + 7.1 alcohol is its energy, within rounding."""

    date: CivilDate
    weekday: Annotated[str, Meta(description="`monday` to `sunday`.", examples=["monday"])]
    intake_kcal: Annotated[int, Meta(description="Energy, alcohol included, to 10 kcal.", examples=[2380])]
    protein_g: Annotated[int, Meta(description="Protein, to 5 g.", examples=[165])]
    carbohydrate_g: Annotated[int, Meta(description="Carbohydrate, to 5 g.", examples=[260])]
    fat_g: Annotated[int, Meta(description="Fat, to 5 g.", examples=[70])]
    alcohol_g: Annotated[int, Meta(description="Pure alcohol allowed for.", examples=[0])]
    training_minutes: Annotated[float, Meta(description="Length of its training.", examples=[60])]
    training_kcal: Annotated[
        float, Meta(description="What its training burns beyond rest, as burnt and not as logged.", examples=[310])
    ]
    flexible: Annotated[
        str | None,
        Meta(
            description="Why it has more: `party`, `eating_out`, `higher_day` or `other`; null on a usual day. "
            "Extensible.",
            examples=["party"],
        ),
    ]
    meals_protein_g: Annotated[list[int], Meta(description="Protein of each meal, grams.", examples=[[45, 40, 40, 40]])]


class PlanWeek(Response, frozen=True, kw_only=True):
    """A week of a phase: what to eat and what to expect at its end."""

    week: Annotated[int, Meta(description="Number within the phase, from 1.", examples=[1])]
    start_date: CivilDate
    days: Annotated[int, Meta(description="Days in it.", examples=[7])]
    element: Annotated[
        str,
        Meta(
            description="Its purpose: `easing_in`, `deficit`, `break`, `maintenance` or `surplus`. Extensible.",
            examples=["deficit"],
        ),
    ]
    intake_kcal: Annotated[int, Meta(description="Energy a day, to 10 kcal.", examples=[2210])]
    protein_g: Annotated[int, Meta(description="Protein a day, to 5 g.", examples=[165])]
    carbohydrate_g: Annotated[int, Meta(description="Carbohydrate a day, to 5 g.", examples=[220])]
    fat_g: Annotated[int, Meta(description="Fat a day, to 5 g.", examples=[70])]
    fibre_g: Annotated[int, Meta(description="Fibre a day, within the carbohydrate.", examples=[31])]
    day_kinds: Annotated[list[DayKind], Meta(description="The week's kinds of day, where a split was asked for.")]
    by_day: Annotated[
        list[DayPlan],
        Meta(description="Each day of the week, where `week` was sent. They add up to seven times `intake_kcal`."),
    ]
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
    weeks: Annotated[
        int | None,
        Meta(
            description="Fewest weeks for the goal asked, 0 where it is met; without a goal the most that leave a "
            "deficit worth it. Of the kind `weeks_kind`, which may be another than asked."
        ),
    ]
    weeks_kind: Annotated[
        str | None,
        Meta(
            description="Kind of phase that so many weeks are: `gain`, `mini_cut` up to 6 in all, those done included, "
            "else `cut`; null where `weeks` names none. Extensible.",
            examples=["cut"],
        ),
    ]
    deficit_kcal: Annotated[float | None, Meta(description="Largest deficit inside every guard rail.")]
    target_weight_kg: Annotated[
        float | None,
        Meta(description="Of a gain to a weight: the settled weight that it gets to in its weeks, or at its ceiling."),
    ]


class PhaseSize(Response, frozen=True, kw_only=True):
    """The phase at one size, with its price: a goal is kept, else the weeks. Inside every guard rail."""

    size: Annotated[
        str,
        Meta(
            description="`gentle`, `steady` or `brisk`; `own`: as asked or solved for; `largest`: the most that the "
            "guard rails allow. Extensible.",
            examples=["brisk"],
        ),
    ]
    is_planned: Annotated[bool, Meta(description="Whether `phases` is planned at this size.", examples=[False])]
    deficit_kcal: Annotated[float | None, Meta(description="Daily deficit at the start.", examples=[700])]
    surplus_kcal: Annotated[float | None, Meta(description="Daily surplus of a gain.")]
    intake_kcal: Annotated[int, Meta(description="Energy a day in the first full week.", examples=[2100])]
    last_intake_kcal: Annotated[
        int, Meta(description="Energy a day in the last week; a longer phase sets it anew.", examples=[2100])
    ]
    weeks: Annotated[int, Meta(description="Length of the phase.", examples=[4])]
    end_date: Annotated[CivilDate, Meta(description="Last day of the phase.")]
    change: Annotated[PhaseTotals, Meta(description="What the phase does at this size.")]
    at_end: ForecastPoint
    tissue_rate_percent: Annotated[
        float,
        Meta(
            description="Fat and lean tissue gained a week outside breaks, percent of body mass; negative where lost.",
            examples=[-0.71],
        ),
    ]
    guard_rails: Annotated[list[GuardRail], Meta(description="Rails that warn of this size.")]
    reasons: list[Note]


class ActivityUse(Response, frozen=True, kw_only=True):
    """A way to use a lever. Inside every guard rail, with the activity counted."""

    intake_kcal: Annotated[int, Meta(description="Energy a day in the first full week.", examples=[2060])]
    last_intake_kcal: Annotated[int, Meta(description="Energy a day in the last week.", examples=[2060])]
    fat_change_kg: Annotated[Interval, Meta(description="Change of fat mass over the phase.")]
    end_weight_kg: Annotated[float, Meta(description="Expected on the scale on the last day.", examples=[78.2])]
    availability_kcal_per_kg: Annotated[
        float,
        Meta(description="Energy left for the body a day, per kg of fat-free mass, at the start.", examples=[31.5]),
    ]
    guard_rails: Annotated[list[GuardRail], Meta(description="Rails that warn of it.")]


class ActivityLever(Response, frozen=True, kw_only=True):
    """More activity beside a fat loss: what it burns, what of that counts, and what it is good for."""

    kind: Annotated[str, Meta(description="`steps` or `cycling`. Extensible.", examples=["steps"])]
    steps_per_day: Annotated[float | None, Meta(description="Beyond those taken now.", examples=[3000])]
    minutes_per_week: Annotated[float | None, Meta(description="Beyond those done now.", examples=[150])]
    burnt_kcal: Annotated[Interval, Meta(description="Burnt a day above rest, mean of a week.")]
    kept_kcal: Annotated[
        Interval,
        Meta(description="What of it counts a day: the body takes back the rest elsewhere."),
    ]
    planned_availability_kcal_per_kg: Annotated[
        float, Meta(description="Energy left for the body as planned, per kg of fat-free mass.", examples=[33.1])
    ]
    instead: Annotated[
        ActivityUse | None,
        Meta(description="More is eaten, never over maintenance, for about the same fat; null where that is unsafe."),
    ]
    together: Annotated[ActivityUse | None, Meta(description="Eaten as planned, for more fat; null if unsafe.")]
    guard_rails: Annotated[list[GuardRail], Meta(description="Rails that refuse a use that is null.")]
    reasons: list[Note]


class RuleOfThumb(Response, frozen=True, kw_only=True):
    """What simple rules say beside the forecast."""

    fat_loss_static_kg: Annotated[
        float,
        Meta(
            description="Loss by 7,700 kcal a kilogram at a deficit that stays as it begins: half of it while easing "
            "in, none in breaks.",
            examples=[2.27],
        ),
    ]
    fat_loss_common_practice_kg: Annotated[
        list[float], Meta(description="Loss commonly quoted, lower and upper.", examples=[[2.3, 4.5]])
    ]
    first_week_drop_common_practice_kg: Annotated[
        list[float], Meta(description="Scale drop of the first days commonly quoted.", examples=[[1.4, 1.8]])
    ]
    first_week_drop_forecast_kg: Annotated[
        float, Meta(description="What the forecast has for that drop, kilograms.", examples=[1.1])
    ]


class PlanResponse(Provenance, frozen=True, kw_only=True):
    """The plan. `feasible` is false when no safe plan does what was asked: then `nearest` says what would."""

    feasible: Annotated[bool, Meta(description="Whether a safe plan does what was asked.", examples=[True])]
    nearest: Annotated[Nearest | None, Meta(description="Set when not feasible.")]
    maintenance_kcal: Annotated[Interval, Meta(description="Maintenance the plan starts from.")]
    physical_maintenance_kcal: PhysicalMaintenance
    logging_ratio: LoggingRatio
    resting_kcal: Annotated[Interval, Meta(description="Resting energy expenditure.")]
    body_fat_fraction: Annotated[Interval, Meta(description="Body fat the plan starts from, 0 to 1.")]
    start_weight_kg: Annotated[
        float,
        Meta(
            description="Scale weight the plan starts from: as given, as a `state` knows it, or that of the log where "
            "it is clearly less.",
            examples=[84.6],
        ),
    ]
    protein_reference_kg: Annotated[
        float,
        Meta(
            description="Body mass that protein is shared out for: the start weight, or less of it where body fat is "
            "high.",
            examples=[84.6],
        ),
    ]
    deficit_kcal: Annotated[
        float | None,
        Meta(
            description="Daily deficit in full, at the start of the mini-cut or the cut and under the maintenance by "
            "then; null where none is planned.",
            examples=[500],
        ),
    ]
    phases: list[Phase]
    sizes: Annotated[
        list[PhaseSize],
        Meta(
            description="The phase at other sizes, smallest first, and as planned; empty where `include` does not ask "
            "for them, or there is no choice."
        ),
    ]
    levers: Annotated[
        list[ActivityLever],
        Meta(
            description="Activity beside a fat loss; empty where `include` does not ask for it, or a clinician comes "
            "first."
        ),
    ]
    guard_rails: Annotated[list[GuardRail], Meta(description="Rails that refused, capped or warned.")]
    rule_of_thumb: Annotated[
        RuleOfThumb | None,
        Meta(description="Simple rules beside the forecast of a mini-cut or a cut; null where none is planned."),
    ]
    dominant_uncertainty: Annotated[
        str | None,
        Meta(
            description="Source that widens the fat forecast most at the end of the phase that was asked for. "
            "Extensible."
        ),
    ]
    state: State
    reasons: list[Note]
    cautions: list[Note]
    methods: MethodIds
