"""`POST /v1/trends`."""

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from steelyard.science.log import TrendChoice

from .explanation import MethodIds, Note, Provenance
from .log import DatedMeasurement, Log
from .profile import Profile, Screening
from .shared_fields import CivilDate, EnergyPerDay, Interval, IntervalColumns, Request, Response
from .states import State, StateAsked


class Aim(StrEnum):
    """What someone means their weight to do."""

    LOSE = "lose"
    HOLD = "hold"
    GAIN = "gain"


class TrendRequest(Request, frozen=True, kw_only=True):
    """A log to read, and whose it is: the person as on the day read at.

    Body fat that was measured on an earlier day goes into the log's `measurements`, with its date: in the profile it
    counts as that of the last day.
    """

    profile: Profile
    log: Annotated[Log | None, Meta(description="Weights and intakes; with a state those since.")] = None
    state: StateAsked = None
    screening: Annotated[
        Screening | None,
        Meta(description="Safety questions: who is pregnant or has an eating disorder is told nothing of leanness."),
    ] = None
    as_of_date: Annotated[
        CivilDate | None, Meta(description="The day to read the log at; its last day by default.")
    ] = None
    usual_intake_kcal: Annotated[
        EnergyPerDay | None,
        Meta(description="What was eaten a day before the log began; maintenance by default."),
    ] = None
    aim: Annotated[
        Aim | None,
        Meta(
            description="What weight is meant to do; by default what the phase of a state is for, else it is read from "
            "the log. A stall is told only where it is meant to fall."
        ),
    ] = None
    measurements: Annotated[
        list[DatedMeasurement],
        Meta(max_length=200, description="Body-fat readings, girths or skinfolds during the log."),
    ] = []
    include: Annotated[
        list[TrendChoice],
        Meta(
            max_length=12,
            description="What to read beside the trend: `implied_intake`, mean intake from weight alone, also of "
            "someone who logs food; none by default.",
            examples=[["implied_intake"]],
        ),
    ] = []


class TrendDays(Response, frozen=True):
    """Every day from the first entry to the day read at, in columns of equal length: row `i` of each is `date[i]`.

    `weight_kg` uses only the past; all else also what came after.
    """

    date: Annotated[list[CivilDate], Meta(description="The days, one after the other.")]
    observed_weight_kg: Annotated[
        list[float | None],
        Meta(description="Mean of the day's weighings; null on days without.", examples=[[81.9, None, 82.3]]),
    ]
    is_outlier: Annotated[
        list[bool],
        Meta(description="Whether the day's weight stands out and counts for less.", examples=[[False, False, True]]),
    ]
    weight_kg: Annotated[IntervalColumns, Meta(description="Weight freed from noise, from the past only.")]
    smoothed_weight_kg: Annotated[IntervalColumns, Meta(description="Weight freed from noise, from the whole log.")]
    tissue_kg: Annotated[
        IntervalColumns, Meta(description="Smoothed weight less carried mass: fat and lean tissue, kilograms.")
    ]
    carried_kg: Annotated[
        IntervalColumns,
        Meta(
            description="Glycogen, water and gut content against what they were before the log, kilograms. Water that "
            "intake does not explain is in it while it lasts; it fades."
        ),
    ]
    weekly_rate_kg: Annotated[
        IntervalColumns,
        Meta(
            description="Rate of tissue change at the intake of the week before, from the whole log, kilograms a week."
        ),
    ]
    maintenance_kcal: Annotated[IntervalColumns, Meta(description="Maintenance that day, from the whole log.")]


class ChangeSplit(Response, frozen=True, kw_only=True):
    """The change over a window, split into tissue and carried mass."""

    days: Annotated[int, Meta(description="Length of the window in days.", examples=[14])]
    weight_kg: Annotated[Interval, Meta(description="Change of weight.")]
    tissue_kg: Annotated[Interval, Meta(description="Change of fat and lean tissue.")]
    carried_kg: Annotated[Interval, Meta(description="Change of glycogen, water and gut content.")]
    implied_intake_kcal: Annotated[
        Interval | None,
        Meta(
            description="Mean intake over the window read from weight alone, in energy really eaten: maintenance by "
            "the equations and the energy of the tissue gained or lost. No intake of the log enters. Null where food "
            "is logged and `include` does not ask for it."
        ),
    ]


class CompositionOverLog(Response, frozen=True, kw_only=True):
    """The change of tissue over the log, split into fat and lean. Without readings the body model speaks alone."""

    fat_kg: Annotated[Interval, Meta(description="Fat mass on the day read at.")]
    fat_fraction: Annotated[Interval, Meta(description="Body fat on that day, 0 to 1.")]
    fat_change_kg: Annotated[Interval, Meta(description="Change of fat mass.")]
    lean_change_kg: Annotated[Interval, Meta(description="Change of lean tissue, without glycogen and water.")]
    reading_count: Annotated[
        int, Meta(description="How many readings entered, that of the profile included.", examples=[2])
    ]


class StepsLately(Response, frozen=True, kw_only=True):
    """Steps of the last fortnight against the one before it."""

    steps_per_day: Annotated[
        float, Meta(description="Mean over the 14 days before the day read at, of those counted.", examples=[6100])
    ]
    steps_before: Annotated[
        float | None,
        Meta(description="Mean over the 14 days before those; null with too few counted.", examples=[9200]),
    ]
    change: Annotated[float | None, Meta(description="Steps a day more; negative: fewer.", examples=[-3100])]
    worth_kcal: Annotated[
        Interval | None,
        Meta(
            description="What that changes of expenditure, kilocalories a day, once the body has taken back its part. "
            "Maintenance has followed it already."
        ),
    ]
    says: Annotated[Note | None, Meta(description="The same for the member; null with too few counted.")]


class ExplanationRow(Response, frozen=True):
    """An explanation and its probability."""

    cause: Annotated[
        str,
        Meta(
            description="`as_logged`: weight did what log and equations lead to expect; `logging`: more, or less, was "
            "eaten than the usual share that is logged; `maintenance`: the body spends more, or less, than the "
            "equations say (logged steps speak for it or against it); `water`: carried mass moved without intake as "
            "its cause. Extensible.",
            examples=["as_logged"],
        ),
    ]
    probability: Annotated[float, Meta(description="0 to 1; all of them add up to 1.", examples=[0.64])]


class ExplainedChange(Response, frozen=True, kw_only=True):
    """Scale, log and equations against each other over the last weeks: explanations by their odds."""

    days: Annotated[int, Meta(description="So many days up to the day read at.", examples=[28])]
    tissue_beyond_log_kg: Annotated[
        Interval, Meta(description="Change of tissue beyond what the log at its word leads to expect.")
    ]
    carried_beyond_log_kg: Annotated[
        Interval, Meta(description="Change of carried mass beyond what intake leads to expect.")
    ]
    causes: Annotated[list[ExplanationRow], Meta(description="The explanations, the likeliest first.")]
    settles: Annotated[
        Note | None,
        Meta(
            description="What would settle between them; null where all goes as logged, or where it is water that "
            "events which were told lead to expect."
        ),
    ]


class TrendResponse(Provenance, frozen=True, kw_only=True):
    """The log read: weight freed from noise, its rate, what changed, and maintenance now."""

    as_of_date: CivilDate
    is_conclusive: Annotated[
        bool,
        Meta(
            description="False while there is too little data to tell a direction, in the first fortnight of the phase "
            "of a state, and while an event moves weight.",
            examples=[True],
        ),
    ]
    more_days_needed: Annotated[
        int | None, Meta(description="About how many more days of data a direction needs.", examples=[9])
    ]
    weekly_rate_kg: Annotated[Interval, Meta(description="Rate of tissue change now, kilograms a week.")]
    plateau_probability: Annotated[
        float,
        Meta(
            description="Probability that tissue has been steady for a fortnight (within 0.175 kg a week), 0 to 1.",
            examples=[0.07],
        ),
    ]
    stall_probability: Annotated[
        float | None,
        Meta(
            description="Probability that tissue has not been falling over the last fortnight (by 0.175 kg a week or "
            "more), 0 to 1; a stall is called from 0.5 on. Null where no loss is meant.",
            examples=[0.12],
        ),
    ]
    maintenance_kcal: Annotated[
        Interval,
        Meta(
            description="Settled maintenance now, on the logging scale: the intake at which tissue would hold once "
            "adaptation has followed intake there. Someone deep in a deficit needs less for the first weeks."
        ),
    ]
    physical_maintenance_kcal: Annotated[
        Interval, Meta(description="The same in energy really eaten: what the body spends.")
    ]
    logging_ratio: Annotated[
        Interval,
        Meta(
            description="Logged over eaten energy, as far as weight and equations tell: 0.9 means a tenth is left out."
        ),
    ]
    log_share: Annotated[
        float, Meta(description="Share of the maintenance estimate that rests on the log, 0 to 1.", examples=[0.7])
    ]
    cycle_rise_kg: Annotated[
        Interval | None,
        Meta(description="Rise of weight around menstruation, where its days were given; the trend leaves it out."),
    ]
    composition: Annotated[
        CompositionOverLog | None, Meta(description="Fat and lean part of the change over the log; null for one day.")
    ]
    explained: Annotated[
        ExplainedChange | None,
        Meta(description="What explains the last four weeks; null with fewer than ten days or without intakes."),
    ]
    steps: Annotated[
        StepsLately | None, Meta(description="What logged steps say; null without, or with fewer than five days of 14.")
    ]
    changes: Annotated[list[ChangeSplit], Meta(description="Changes over the last days and over the log.")]
    days: Annotated[TrendDays, Meta(description="The trend day by day, in columns.")]
    notes: Annotated[list[Note], Meta(description="Data quality: outliers, gaps, unit mix-ups.")]
    state: State
    reasons: list[Note]
    cautions: list[Note]
    methods: MethodIds
