"""`POST /v1/decisions`."""

from datetime import date
from typing import Annotated

from msgspec import Meta

from steelyard.science.decision import Feeling, Goal
from steelyard.science.phase import PhaseKind

from .explanation import GuardRail, MethodIds, Note, Provenance
from .log import LogAsked
from .phases import MaintenanceAsked, PastPhase
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

_Kind = Annotated[PhaseKind, Meta(description="Kind of the phase.", examples=["gain"])]
_KindOut = Annotated[
    str, Meta(description="`mini_cut`, `cut`, `gain` or `maintenance`. Extensible.", examples=["mini_cut"])
]


class ChosenBand(Request, frozen=True, kw_only=True):
    """The body fat between which the person wants to stay."""

    lower_fat_fraction: FatFraction
    upper_fat_fraction: FatFraction


class PresentPhase(Request, frozen=True, kw_only=True):
    """The phase under way."""

    kind: _Kind
    weeks_done: Annotated[int, Meta(ge=0, le=156, description="Whole weeks done of it.", examples=[5])]


class DecisionRequest(Request, frozen=True, kw_only=True):
    """A person, what they want, and what they have done so far."""

    profile: Profile
    as_of_date: Annotated[date, Meta(description="The day of the decision.", examples=["2026-03-30"])]
    screening: Annotated[
        Screening | None, Meta(description="Safety questions; without them no deficit and no gain is recommended.")
    ] = None
    goal: Annotated[
        Goal,
        Meta(
            description="`muscle`: gain over the next months. `leanness`: be leaner. `event`: be lean on a day "
            "(`event_date`). `hold`: stay as I am.",
            examples=["muscle"],
        ),
    ] = Goal.MUSCLE
    feeling: Annotated[
        Feeling,
        Meta(description="How the person feels about their leanness. A reason of its own.", examples=["content"]),
    ] = Feeling.CONTENT
    band: Annotated[
        ChosenBand | None,
        Meta(description="The chosen band; by default 10-17 % for men, else 18-27 %, as is common practice."),
    ] = None
    event_date: Annotated[date | None, Meta(description="A day to be lean on.", examples=["2026-07-11"])] = None
    event_fat_fraction: Annotated[
        FatFraction | None, Meta(description="Most body fat wanted on that day; set by the band by default.")
    ] = None
    present_phase: Annotated[PresentPhase | None, Meta(description="The phase under way, where there is one.")] = None
    phase_history: (
        Annotated[
            list[PastPhase],
            Meta(max_length=60, description="Phases that are over, oldest first; empty for none. Unknown by default."),
        ]
        | None
    ) = None
    maintenance: MaintenanceAsked = None
    log: LogAsked = None
    state: StateAsked = None
    current_intake_kcal: CurrentIntakeAsked = None


_Weeks = Annotated[int | None, Meta(description="Length in weeks; null where the planner finds it.", examples=[4])]
_Target = Annotated[float | None, Meta(description="Body fat at which to end, 0 to 1.", examples=[0.135])]
_EventDay = Annotated[date | None, Meta(description="The day to be ready for, where the event sets the time.")]
_WeeksDone = Annotated[int, Meta(description="Weeks already done of it.", examples=[0])]
_Surplus = Annotated[
    float | None, Meta(description="Daily surplus; null: as training experience has it.", examples=[120])
]


class SuggestedMiniCut(Response, frozen=True, kw_only=True, tag_field="kind", tag="mini_cut"):
    """A mini-cut to ask for."""

    weeks: _Weeks
    target_fat_fraction: _Target
    event_date: _EventDay
    weeks_done: _WeeksDone


class SuggestedCut(Response, frozen=True, kw_only=True, tag_field="kind", tag="cut"):
    """A longer cut to ask for."""

    weeks: _Weeks
    target_fat_fraction: _Target
    event_date: _EventDay
    weeks_done: _WeeksDone


class SuggestedGain(Response, frozen=True, kw_only=True, tag_field="kind", tag="gain"):
    """A gain to ask for."""

    weeks: _Weeks
    surplus_kcal: _Surplus
    fat_ceiling_fraction: Annotated[
        float | None, Meta(description="Body fat at which to stop and ask again.", examples=[0.168])
    ]


class SuggestedHold(Response, frozen=True, kw_only=True, tag_field="kind", tag="maintenance"):
    """A hold to ask for."""

    weeks: Annotated[int, Meta(description="Length in weeks.", examples=[2])]


class SuggestedReturn(Response, frozen=True, kw_only=True):
    """What follows."""

    maintenance_weeks: Annotated[int, Meta(description="Weeks at maintenance.", examples=[1])]
    gain_weeks: Annotated[int, Meta(description="Weeks of gain after it.", examples=[12])]
    surplus_kcal: _Surplus
    fat_ceiling_fraction: Annotated[
        float | None, Meta(description="Body fat at which that gain is to stop: the band's upper end.", examples=[0.17])
    ]


class KnownCuts(Response, frozen=True, kw_only=True):
    """Cuts already done, counted in the phase history."""

    cuts_last_12_months: Annotated[int, Meta(description="Cuts that ended in the last twelve months.", examples=[1])]
    weeks_since_last_cut: Annotated[int | None, Meta(description="Weeks since the last one ended.", examples=[20])]


class PlanFragment(Response, frozen=True, kw_only=True):
    """Part of a request to `/v1/plans`: add `profile`, `screening`, `maintenance`, `log` or `state` as sent here."""

    start_date: CivilDate
    phase: Annotated[
        SuggestedMiniCut | SuggestedCut | SuggestedGain | SuggestedHold, Meta(description="The phase to plan.")
    ]
    return_to_gain: SuggestedReturn
    cut_history: Annotated[KnownCuts | None, Meta(description="From the phase history, where it was told.")]
    current_intake_kcal: Annotated[float | None, Meta(description="As it was sent.", examples=[3050])]


class ScoreParts(Response, frozen=True, kw_only=True):
    """Why an alternative scores as it does, in kilograms of lean tissue over the horizon."""

    lean_kg: Annotated[float, Meta(description="Lean tissue expected to be gained.", examples=[1.21])]
    dieting_price_kg: Annotated[float, Meta(description="Price of the weeks in a deficit.", examples=[0.2])]
    leanness_price_kg: Annotated[
        float, Meta(description="Price of the weeks with body fat over the line of the motive.", examples=[0.35])
    ]
    total_kg: Annotated[float, Meta(description="The first less the other two.", examples=[0.66])]


class PhaseAlternative(Response, frozen=True, kw_only=True):
    """One way on. Its figures are for the weeks that its `plan` asks for; its score is over the horizon of all of them.
    Where `open` is false only `closed_because` is set."""

    kind: _KindOut
    open: Annotated[bool, Meta(description="Whether it is open to this person.", examples=[True])]
    closed_because: Annotated[Note | None, Meta(description="Why not, where it is not.")]
    weeks: Annotated[int | None, Meta(description="Length of its first phase.", examples=[4])]
    plan_weeks: Annotated[int | None, Meta(description="Weeks that its plan and its figures are for.", examples=[26])]
    lean_kg: Annotated[Interval | None, Meta(description="Change of lean tissue over these weeks.")]
    fat_kg: Annotated[Interval | None, Meta(description="Change of fat mass over these weeks.")]
    end_fat_fraction: Annotated[Interval | None, Meta(description="Body fat at the end of these weeks.")]
    days_dieting: Annotated[int | None, Meta(description="Days in a deficit.", examples=[28])]
    weeks_above_band: Annotated[int | None, Meta(description="Weeks that end above the band.", examples=[0])]
    score: ScoreParts | None
    plan: Annotated[PlanFragment | None, Meta(description="What to ask `/v1/plans` for.")]


class NextPhase(Response, frozen=True, kw_only=True):
    """The phase that comes next."""

    kind: _KindOut
    weeks: Annotated[int, Meta(description="Its length.", examples=[4])]
    plan: Annotated[PlanFragment, Meta(description="What to ask `/v1/plans` for.")]


class LeannessView(Response, frozen=True, kw_only=True):
    """What the decision rests on in body fat. Fractions of body mass, 0 to 1."""

    fat_fraction: Annotated[Interval, Meta(description="Body fat now.")]
    band_lower_fat_fraction: Annotated[float, Meta(description="Lower end of the band.", examples=[0.1])]
    band_upper_fat_fraction: Annotated[float, Meta(description="Upper end of the band.", examples=[0.17])]
    band_basis: Annotated[
        str,
        Meta(
            description="`chosen`, or where the default comes from: `common practice` (men), `judgement` by analogy "
            "(women, unspecified). Extensible.",
            examples=["chosen"],
        ),
    ]
    counts_from_fat_fraction: Annotated[
        float, Meta(description="From here on body fat has a price, by the motive.", examples=[0.15])
    ]
    target_fat_fraction: Annotated[float, Meta(description="Where a cut leads, by the motive.", examples=[0.135])]
    cut_due_fat_fraction: Annotated[
        float | None, Meta(description="From here on a cut is the better trade; null where nowhere.", examples=[0.168])
    ]
    cut_due_date: Annotated[
        date | None, Meta(description="When it is expected at the present rate; null where not within the horizon.")
    ]
    healthy_lower_fat_fraction: Annotated[
        float | None, Meta(description="Lower end of the healthy range for age and sex.", examples=[0.08])
    ]
    healthy_upper_fat_fraction: Annotated[
        float | None, Meta(description="Upper end of the healthy range for age and sex.", examples=[0.2])
    ]
    reading_is_good_enough: Annotated[
        bool, Meta(description="Whether this reading may start a cut at this body fat.", examples=[True])
    ]
    reading_sd: Annotated[float, Meta(description="Error of the reading, 1 SD.", examples=[0.035])]
    probability_over_line: Annotated[
        float, Meta(description="Probability that body fat is over `counts_from_fat_fraction`.", examples=[0.8])
    ]
    margin_over_due: Annotated[
        float | None, Meta(description="Body fat less `cut_due_fat_fraction`.", examples=[0.012])
    ]
    probability_other_side: Annotated[
        float | None,
        Meta(description="Probability that body fat is truly on the other side of that value.", examples=[0.3]),
    ]


class CyclingPattern(Response, frozen=True, kw_only=True):
    """Repeated fast gain and cut, against a slow gain on the same body through the same weeks."""

    cycles: Annotated[int, Meta(description="Cuts from the first fast gain on.", examples=[3])]
    weeks: Annotated[int, Meta(description="Weeks of all these phases.", examples=[60])]
    weeks_dieting: Annotated[int, Meta(description="Weeks of them in a deficit.", examples=[18])]
    lean_cost_kg: Annotated[Interval, Meta(description="Lean tissue that the slow gain gains more.")]
    fat_cost_kg: Annotated[Interval, Meta(description="Fat that the slow gain gains less; negative where more.")]
    weeks_lost: Annotated[
        int | None,
        Meta(description="How much sooner the slow gain has the same lean tissue; null where it never has."),
    ]
    slow_weeks_dieting: Annotated[
        int, Meta(description="Weeks of dieting that the slow gain needs to come to the same fat.", examples=[9])
    ]
    phases_assumed: Annotated[int, Meta(description="Phases without figures, taken at their usual size.", examples=[0])]
    notes: list[Note]


class DecisionResponse(Provenance, frozen=True, kw_only=True):
    """The phase that comes next, what else there is and what it costs, why, and what would change the answer."""

    situation: Annotated[
        str,
        Meta(
            description="Which rule decided: `no_deficit`, `cut_refused`, `cut_too_long`, `cut_done`, "
            "`cut_under_way`, `cut_just_ended`, `cut_too_recent`, `too_many_cuts`, `event_ready`, `event_too_near`, "
            "`event_later`, `event_now`, `measure_first`, `wants_hold`, `lean_enough`, `not_yet`, `cut_due` or "
            "`cut_for_leanness`. Extensible.",
            examples=["not_yet"],
        ),
    ]
    decided_by: Annotated[str, Meta(description="`trade` (the scores) or `rule`. Extensible.", examples=["trade"])]
    recommended: NextPhase
    alternatives: Annotated[list[PhaseAlternative], Meta(description="Best score first, the recommended among them.")]
    horizon_weeks: Annotated[int, Meta(description="Horizon of the alternatives.", examples=[26])]
    leanness: Annotated[
        LeannessView | None, Meta(description="Null where nothing about leanness is to be said to this person.")
    ]
    pattern: Annotated[CyclingPattern | None, Meta(description="Set where the history shows one.")]
    reasons: list[Note]
    what_would_change: list[Note]
    maintenance_kcal: Annotated[Interval, Meta(description="Maintenance that the answer starts from.")]
    physical_maintenance_kcal: PhysicalMaintenance
    logging_ratio: LoggingRatio
    guard_rails: Annotated[list[GuardRail], Meta(description="Rails that refused, capped or warned.")]
    state: State
    cautions: list[Note]
    methods: MethodIds
