"""`POST /v1/seasons`, `/v1/seasons/comparison` and `/v1/seasons/optimum`."""

from typing import Annotated

from msgspec import Meta

from steelyard.science.season import ReadyMade

from .explanation import GuardRail, MethodIds, Note, Provenance
from .log import LogAsked
from .phases import ForecastPoint, MaintenanceAsked
from .plans import CutHistory, PhaseTotals
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

HorizonWeeks = Annotated[int, Meta(ge=12, le=156, description="Length of the season in weeks.", examples=[52])]


class BodyFatBand(Request, frozen=True, kw_only=True):
    """The body fat a person wants to stay between."""

    lower_fat_fraction: FatFraction
    upper_fat_fraction: FatFraction


class BlockedDates(Request, frozen=True, kw_only=True):
    """Days on which no cut may run: travel, exams, a competition. A week touched by them is blocked."""

    first_date: CivilDate
    last_date: CivilDate


class SeasonEvent(Request, frozen=True, kw_only=True):
    """A day to arrive at with the last cut ended and carried mass settled."""

    date: CivilDate
    most_fat_fraction: Annotated[
        FatFraction | None, Meta(description="Body fat wanted at the event, or less; none by default.")
    ] = None


class SeasonLimits(Request, frozen=True, kw_only=True):
    """What the season must keep to."""

    band: Annotated[BodyFatBand | None, Meta(description="The chosen band of body fat; a usual one by default.")] = None
    blocked_dates: Annotated[list[BlockedDates], Meta(max_length=40, description="When no cut may run.")] = []
    events: Annotated[list[SeasonEvent], Meta(max_length=20, description="Days to arrive at settled.")] = []
    most_cuts: (
        Annotated[int, Meta(ge=0, le=20, description="Most cuts in the whole season; open by default.", examples=[4])]
        | None
    ) = None
    most_cuts_a_year: Annotated[
        int, Meta(ge=0, le=6, description="Most cuts in any 52 weeks. More than three are warned of.", examples=[3])
    ] = 3
    least_weeks_between_cuts: Annotated[
        int,
        Meta(ge=2, le=104, description="From a cut's end to the next. Under eight is warned of.", examples=[8]),
    ] = 8
    most_weeks_above_band: (
        Annotated[
            int,
            Meta(
                ge=0,
                le=156,
                description="Most weeks that may end above the band. By default a season only counts them, and an "
                "optimum keeps to at most a quarter more than the fewest possible.",
                examples=[0],
            ),
        ]
        | None
    ) = None
    most_weeks_dieting: (
        Annotated[int, Meta(ge=0, le=156, description="Most weeks in a deficit; any by default.", examples=[20])] | None
    ) = None


class ReadyMadeStrategy(Request, frozen=True, kw_only=True, tag_field="kind", tag="ready_made"):
    """A ready-made strategy, sized to the person."""

    name: Annotated[
        ReadyMade,
        Meta(
            description="`slow_gain_rare_mini_cuts`: half the fastest gain, a mini-cut only at the upper end of the "
            "band. `fast_gain_long_cut`: the fastest gain, past the band, then one long cut. "
            "`fast_gain_repeated_mini_cuts`: the fastest gain, brisk mini-cuts as soon as possible. "
            "`slow_gain_no_cut`: half the fastest gain up to the band's upper end, and never a cut.",
            examples=["slow_gain_rare_mini_cuts"],
        ),
    ]


class OwnStrategy(Request, frozen=True, kw_only=True, tag_field="kind", tag="own"):
    """A strategy in numbers. Rails cap what is too much of any."""

    surplus_kcal: Annotated[
        float, Meta(ge=0, le=1000, description="Daily surplus of a gain; 0 for none.", examples=[150])
    ]
    label: Annotated[
        str, Meta(min_length=1, max_length=40, description="A name for the answer.", examples=["steady"])
    ] = "own"
    cut_at_fat_fraction: Annotated[
        FatFraction | None,
        Meta(
            description="Body fat at which a gain ends and a cut starts, where one may. By default there is no cut, "
            "and a gain ends at the upper end of the band."
        ),
    ] = None
    cut_to_fat_fraction: Annotated[
        FatFraction | None,
        Meta(description="Body fat at which a cut ends. Without it a gain stops at `cut_at_fat_fraction`, uncut."),
    ] = None
    deficit_kcal: (
        Annotated[
            float,
            Meta(ge=100, le=1500, description="Daily deficit at the start of a cut; as plans size it by default."),
        ]
        | None
    ) = None
    longest_cut_weeks: Annotated[
        int, Meta(ge=2, le=26, description="Longest cut; up to 6 is a mini-cut.", examples=[6])
    ] = 6
    maintenance_weeks: Annotated[int, Meta(ge=1, le=12, description="Maintenance after each cut.", examples=[1])] = 1


Strategy = Annotated[ReadyMadeStrategy | OwnStrategy, Meta(description="Ready-made, or in numbers.")]


class SeasonQuestion(Request, frozen=True, kw_only=True):
    """What every question about a season says: a person, a horizon and limits."""

    profile: Profile
    start_date: CivilDate
    horizon_weeks: HorizonWeeks
    limits: SeasonLimits = SeasonLimits()
    screening: Annotated[Screening | None, Meta(description="Safety questions; without them no cut is planned.")] = None
    maintenance: MaintenanceAsked = None
    log: LogAsked = None
    state: StateAsked = None
    current_intake_kcal: CurrentIntakeAsked = None
    cut_history: Annotated[CutHistory | None, Meta(description="Cuts already done.")] = None


class SeasonRequest(SeasonQuestion, frozen=True, kw_only=True):
    """A person, a horizon, limits and a strategy."""

    strategy: Strategy


class ComparisonRequest(SeasonQuestion, frozen=True, kw_only=True):
    """A person, a horizon, limits and the strategies to compare."""

    strategies: Annotated[
        list[Strategy],
        Meta(
            min_length=2, max_length=8, description="The strategies to compare, each under a name or label of its own."
        ),
    ]


class OptimumRequest(SeasonQuestion, frozen=True, kw_only=True):
    """A person, a horizon and limits: which strategy gains most lean tissue inside them?"""

    caution: Annotated[
        float,
        Meta(
            ge=0,
            le=2,
            description="Standard deviations of lean gained that are taken off its mean: above 0, a surer season is "
            "preferred to one that gains more on average.",
            examples=[0],
        ),
    ] = 0.0
    strategies_searched: Annotated[
        int,
        Meta(
            ge=500,
            le=100000,
            description="About how many strategies to search. Times `horizon_weeks` it may be 1,000,000 at most.",
            examples=[6000],
        ),
    ] = 6000


class StrategyNumbers(Response, frozen=True, kw_only=True):
    """A strategy as it was followed. Cut numbers are null where it never cuts."""

    surplus_kcal: Annotated[float, Meta(description="Daily surplus of a gain, before rails.", examples=[150])]
    cut_at_fat_fraction: Annotated[
        float | None, Meta(description="Body fat at which a gain ends; null for never.", examples=[0.17])
    ]
    cut_to_fat_fraction: Annotated[float | None, Meta(description="Body fat at which a cut ends.", examples=[0.135])]
    deficit_kcal: Annotated[float | None, Meta(description="Daily deficit of a cut, before rails.", examples=[500])]
    longest_cut_weeks: Annotated[
        int | None, Meta(description="Most weeks that a cut of it may last; null where it has none.", examples=[6])
    ]
    maintenance_weeks: Annotated[int | None, Meta(description="Maintenance after each cut.", examples=[1])]


class SeasonOutcome(Response, frozen=True, kw_only=True):
    """What a season comes to for the expected body."""

    lean_gained_kg: Annotated[float, Meta(description="Change of lean tissue.", examples=[2.4])]
    fat_gained_kg: Annotated[float, Meta(description="Change of fat mass.", examples=[0.8])]
    mean_fat_kg: Annotated[float, Meta(description="Fat mass carried, mean of all weeks.", examples=[13.2])]
    peak_fat_fraction: Annotated[float, Meta(description="Highest body fat at the end of a week.", examples=[0.171])]
    final_fat_fraction: Annotated[float, Meta(description="Body fat at the horizon.", examples=[0.15])]
    weeks_above_band: Annotated[int, Meta(description="Weeks that end above the band.", examples=[2])]
    days_dieting: Annotated[int, Meta(description="Days in a deficit.", examples=[42])]
    cuts: Annotated[int, Meta(description="Cuts started.", examples=[1])]


class SeasonTotals(Response, frozen=True, kw_only=True):
    """What the season as planned comes to, with 80 % intervals."""

    lean_gained_kg: Annotated[Interval, Meta(description="Change of lean tissue.")]
    fat_gained_kg: Annotated[Interval, Meta(description="Change of fat mass.")]
    mean_fat_kg: Annotated[float, Meta(description="Fat mass carried, mean of all weeks.", examples=[13.2])]
    peak_fat_fraction: Annotated[Interval, Meta(description="Body fat at the end of its highest week.")]
    peak_date: Annotated[CivilDate, Meta(description="End of the week of highest body fat.")]
    final_fat_fraction: Annotated[Interval, Meta(description="Body fat at the horizon.")]
    weeks_above_band: Annotated[
        Interval,
        Meta(description="Weeks that end above the band: along lower ends, expected, and upper ends."),
    ]
    days_dieting: Annotated[int, Meta(description="Days in a deficit, as planned.", examples=[42])]
    cuts: Annotated[int, Meta(description="Cuts planned.", examples=[1])]


class IntakeStep(Response, frozen=True, kw_only=True):
    """An intake that stays the same for some weeks."""

    start_date: CivilDate
    weeks: Annotated[int, Meta(description="How long.", examples=[4])]
    intake_kcal: Annotated[int, Meta(description="Energy a day, to 10 kcal.", examples=[2980])]
    protein_g: Annotated[int, Meta(description="Protein a day, to 5 g.", examples=[150])]
    carbohydrate_g: Annotated[int, Meta(description="Carbohydrate a day, to 5 g.", examples=[395])]
    fat_g: Annotated[int, Meta(description="Fat a day, to 5 g.", examples=[90])]
    fibre_g: Annotated[int, Meta(description="Fibre a day, within the carbohydrate.", examples=[42])]


class SeasonPhase(Response, frozen=True, kw_only=True):
    """One phase of the season."""

    kind: Annotated[str, Meta(description="`mini_cut`, `cut`, `gain` or `maintenance`. Extensible.", examples=["gain"])]
    start_date: CivilDate
    end_date: Annotated[CivilDate, Meta(description="Last day of the phase.")]
    weeks: Annotated[int, Meta(description="Its length.", examples=[20])]
    intakes: Annotated[list[IntakeStep], Meta(description="What to eat, in order.")]
    change: PhaseTotals
    ends_early_when: Annotated[list[Note], Meta(description="What ends the phase before its last day.")]
    guidance: Annotated[list[Note], Meta(description="Training and eating reminders.")]
    reasons: list[Note]
    cautions: list[Note]


class SeasonWeek(Response, frozen=True, kw_only=True):
    """A week of the season."""

    week: Annotated[int, Meta(description="Number from 1.", examples=[1])]
    start_date: CivilDate
    kind: Annotated[str, Meta(description="Kind of its phase. Extensible.", examples=["gain"])]
    intake_kcal: Annotated[int, Meta(description="Energy a day, to 10 kcal.", examples=[2980])]
    energy_balance_kcal: Annotated[float, Meta(description="Expected intake minus expenditure, mean of the week.")]
    at_end: ForecastPoint


class BrokenLimit(Response, frozen=True, kw_only=True):
    """A limit that the season does not keep."""

    limit: Annotated[
        str,
        Meta(
            description="`weeks_above_band`, `weeks_dieting`, `event_fat_fraction` (by how much body fat is over "
            "the target of an event), or `final_fat_fraction` (body fat at the horizon). Extensible.",
            examples=["weeks_above_band"],
        ),
    ]
    allowed: Annotated[float, Meta(description="What was allowed.", examples=[0])]
    found: Annotated[float, Meta(description="The nearest that was found.", examples=[3])]


class SeasonPlan(Response, frozen=True, kw_only=True):
    """A season laid out."""

    strategy: StrategyNumbers
    totals: SeasonTotals
    phases: list[SeasonPhase]
    weeks: list[SeasonWeek]
    guard_rails: Annotated[list[GuardRail], Meta(description="Rails that capped, warned or refused.")]
    reasons: list[Note]


class SeasonStart(Response, frozen=True, kw_only=True):
    """What the season starts from."""

    maintenance_kcal: Annotated[Interval, Meta(description="Maintenance at the start, kilocalories a day.")]
    physical_maintenance_kcal: PhysicalMaintenance
    logging_ratio: LoggingRatio
    resting_kcal: Annotated[Interval, Meta(description="Resting energy expenditure.")]
    body_fat_fraction: Annotated[Interval, Meta(description="Body fat, 0 to 1.")]
    band_lower_fat_fraction: Annotated[float, Meta(description="Lower end of the band.", examples=[0.1])]
    band_upper_fat_fraction: Annotated[float, Meta(description="Upper end of the band.", examples=[0.17])]


_ProteinReference = Annotated[
    float,
    Meta(
        description="Body mass that protein is shared out for at the start: all of it, or less where body fat is high. "
        "Each phase shares it out for the body that it begins with.",
        examples=[79.4],
    ),
]


class SeasonResponse(Provenance, frozen=True, kw_only=True):
    """The season. Where `feasible` is false it is the nearest the strategy gets to the limits; every rail holds."""

    feasible: Annotated[bool, Meta(description="Whether every limit is kept.", examples=[True])]
    broken_limits: Annotated[list[BrokenLimit], Meta(description="Limits that are not kept.")]
    start: SeasonStart
    protein_reference_kg: _ProteinReference
    plan: SeasonPlan
    state: State
    cautions: list[Note]
    methods: MethodIds


class OutcomeIntervals(Response, frozen=True, kw_only=True):
    """Median and 80 % interval over the draws of those who follow the strategy."""

    lean_gained_kg: Annotated[Interval, Meta(description="Change of lean tissue.")]
    fat_gained_kg: Annotated[Interval, Meta(description="Change of fat mass.")]
    mean_fat_kg: Annotated[Interval, Meta(description="Fat mass carried, mean of all weeks.")]
    peak_fat_fraction: Annotated[Interval, Meta(description="Highest body fat at the end of a week.")]
    final_fat_fraction: Annotated[Interval, Meta(description="Body fat at the horizon.")]
    weeks_above_band: Annotated[Interval, Meta(description="Weeks that end above the band.")]
    days_dieting: Annotated[Interval, Meta(description="Days in a deficit.")]
    cuts: Annotated[Interval, Meta(description="Cuts started.")]


class ComparedStrategy(Response, frozen=True, kw_only=True):
    """One strategy of a comparison."""

    label: Annotated[str, Meta(description="Name of a ready-made strategy, or the label given.")]
    strategy: StrategyNumbers
    feasible: Annotated[bool, Meta(description="Whether every limit is kept for the expected body.", examples=[True])]
    broken_limits: Annotated[list[BrokenLimit], Meta(description="Limits that are not kept.")]
    expected: Annotated[SeasonOutcome, Meta(description="For the expected body.")]
    intervals: OutcomeIntervals
    guard_rails: Annotated[list[GuardRail], Meta(description="Rails that capped or warned.")]
    reasons: Annotated[list[Note], Meta(description="Why it holds where it would gain, and its cuts.")] = []


class RefusedStrategy(Response, frozen=True, kw_only=True):
    """A strategy that a rule refuses for this person."""

    label: Annotated[str, Meta(description="Name of a ready-made strategy, or the label given.")]
    rule: Annotated[str, Meta(description="Id of the rule, as in `/v1/methods`.", examples=["screening_unanswered"])]
    code: Annotated[str, Meta(description="Code of the text, as in `/v1/messages`.", examples=["REFUSED_UNANSWERED"])]
    text: Annotated[str, Meta(description="Why, and what to do.")]
    params: Annotated[dict[str, float | str], Meta(description="Parameters of the text, units in the names.")]


class BeatChance(Response, frozen=True, kw_only=True):
    """How probable it is that one strategy beats another. Equal outcomes count half."""

    label: Annotated[str, Meta(description="Label of the strategy whose chances these are.")]
    over: Annotated[str, Meta(description="Label of the strategy that it is held against.")]
    more_lean: Annotated[float, Meta(description="Probability of more lean tissue gained.", examples=[0.8])]
    more_lean_is_clear: Annotated[
        bool, Meta(description="Whether one of the two clearly gains more; else there is no order to tell.")
    ]
    less_fat: Annotated[float, Meta(description="Probability of less fat carried on average.", examples=[0.3])]
    fewer_days_dieting: Annotated[float, Meta(description="Probability of fewer days in a deficit.", examples=[0.5])]


class ComparisonResponse(Provenance, frozen=True, kw_only=True):
    """Strategies side by side on the same body and the same draws of uncertainty."""

    start: SeasonStart
    strategies: list[ComparedStrategy]
    refused: Annotated[list[RefusedStrategy], Meta(description="Strategies that a rule refuses.")]
    chances: Annotated[list[BeatChance], Meta(description="The chances of each strategy against each other one.")]
    draws: Annotated[int, Meta(description="Draws of the sources of uncertainty, the same for all.", examples=[256])]
    state: State
    cautions: list[Note]
    methods: MethodIds


class OtherSeason(Response, frozen=True, kw_only=True):
    """Another strategy of the search and what it comes to."""

    strategy: StrategyNumbers
    expected: SeasonOutcome


class SearchSize(Response, frozen=True, kw_only=True):
    """How much was searched."""

    strategies: Annotated[int, Meta(description="Strategies lived to the horizon.", examples=[5400])]
    within_limits: Annotated[int, Meta(description="How many of them keep every limit.", examples=[3100])]
    strategy_weeks: Annotated[int, Meta(description="Strategies times weeks.", examples=[280800])]


class OptimumResponse(Provenance, frozen=True, kw_only=True):
    """The season with the most lean tissue inside the limits, the next unlike it, and the trade-off.

    Where `feasible` is false no searched season keeps the limits: the plan is the nearest.
    """

    feasible: Annotated[bool, Meta(description="Whether every limit is kept.", examples=[True])]
    broken_limits: Annotated[list[BrokenLimit], Meta(description="Limits that the nearest season does not keep.")]
    start: SeasonStart
    protein_reference_kg: _ProteinReference
    plan: SeasonPlan
    lean_sd_kg: Annotated[
        float | None, Meta(description="SD of lean gained over the draws, where `caution` asked for it.")
    ]
    allowed_weeks_above_band: Annotated[
        int, Meta(description="Weeks above the band that were allowed, as asked or by default.", examples=[0])
    ]
    allowed_final_fat_fraction: Annotated[
        float | None,
        Meta(
            description="Body fat at the horizon that was allowed, where every week may be above the band since it "
            "starts far above it; null elsewhere.",
            examples=[None],
        ),
    ] = None
    runner_up: Annotated[OtherSeason | None, Meta(description="The best that differs in surplus or in its cuts.")]
    trade_off: Annotated[
        list[OtherSeason],
        Meta(
            description="Most lean tissue for each number of weeks above the band, fewest weeks first. With an "
            "`allowed_final_fat_fraction`, for each body fat at the horizon, the least first."
        ),
    ]
    searched: SearchSize
    state: State
    cautions: list[Note]
    methods: MethodIds
