"""`POST /v1/reviews`."""

from typing import Annotated

from msgspec import Meta

from steelyard.science.review import Finding

from .explanation import GuardRail, MethodIds, Note, Provenance
from .log import Log
from .phases import ForecastPoint, PhaseFollowed
from .profile import Profile, Screening
from .rosters import Attention
from .shared_fields import CivilDate, Interval, LoggingRatio, Request, Response
from .states import State, StateAsked
from .trends import ExplanationRow


class SettledQuestion(Request, frozen=True, kw_only=True):
    """The answer to the question that an earlier review of this phase asked."""

    date: CivilDate
    found: Annotated[
        Finding,
        Meta(
            description="`more_than_logged`: food was missing in the log, and is in it from that day on; `as_logged`: "
            "everything was weighed, and the log was complete; `water`: something moves water; `not_water`: nothing "
            "does; `not_done`: nobody looked into it.",
            examples=["as_logged"],
        ),
    ]


class ReviewRequest(Request, frozen=True, kw_only=True):
    """A person as at the phase's start, the plan, and the log so far.

    A log that begins some weeks before the phase tells more: it shows what is usual.
    """

    profile: Profile
    phase: Annotated[PhaseFollowed | None, Meta(description="The phase to review; that of the state by default.")] = (
        None
    )
    log: Annotated[
        Log | None, Meta(description="Weights and intakes; with a state those since, and none where there are none.")
    ] = None
    state: StateAsked = None
    screening: Annotated[
        Screening | None, Meta(description="Safety questions; without them a deficit is not reviewed any further.")
    ] = None
    as_of_date: Annotated[
        CivilDate | None, Meta(description="The day to review on; the last day of the log by default.")
    ] = None
    is_finished: Annotated[
        bool, Meta(description="Whether the phase ended on that day, before its last.", examples=[False])
    ] = False
    settled: Annotated[
        SettledQuestion | None, Meta(description="What came out of the `question` of an earlier review.")
    ] = None


class VerdictProbabilities(Response, frozen=True, kw_only=True):
    """Where the change of tissue lies against what counts as planned; they add up to 1."""

    within_interval: Annotated[float, Meta(description="Inside the interval.", examples=[0.81])]
    faster: Annotated[
        float, Meta(description="Beyond it, towards the purpose; at maintenance, above.", examples=[0.02])
    ]
    slower: Annotated[float, Meta(description="Short of it; at maintenance, below.", examples=[0.17])]


class EatenAgainstPlan(Response, frozen=True, kw_only=True):
    """Intake as logged against intake as planned, both on the logging scale."""

    days: Annotated[int, Meta(description="Days of the phase so far.", examples=[21])]
    days_logged: Annotated[int, Meta(description="Of them, days with a full log.", examples=[18])]
    logged_kcal: Annotated[float | None, Meta(description="Mean of the logged days.", examples=[2290])]
    planned_kcal: Annotated[float, Meta(description="Mean of the plan over all days.", examples=[2240])]
    difference_kcal: Annotated[
        Interval | None, Meta(description="Logged less planned, mean a day; wider where days are missing.")
    ]
    implied_difference_kcal: Annotated[
        Interval | None,
        Meta(description="Eaten less planned as the weight tells it, if maintenance were what the plan started from."),
    ]


class ChangeSoFar(Response, frozen=True, kw_only=True):
    """Change since the phase's start. Tissue is fat and lean; carried mass is glycogen, water and gut content."""

    since_date: Annotated[CivilDate, Meta(description="The start, or the first weighing after it.")]
    weight_kg: Annotated[Interval, Meta(description="Change of weight, noise left out, since that day.")]
    tissue_kg: Annotated[Interval, Meta(description="Change of tissue since that day.")]
    carried_kg: Annotated[Interval, Meta(description="Change of carried mass since that day.")]
    planned_tissue_kg: Annotated[
        Interval,
        Meta(
            description="What counts as planned for tissue by now: the plan's own interval, or a third of the way that "
            "it expects if that is less."
        ),
    ]
    fat_kg: Annotated[Interval, Meta(description="Change of fat mass since the phase's start.")]
    lean_kg: Annotated[Interval, Meta(description="Change of lean tissue since the phase's start.")]


class ReviewedWeek(Response, frozen=True, kw_only=True):
    """Days to come of one week of the phase: the corrected intake and where it leads."""

    start_date: CivilDate
    days: Annotated[int, Meta(description="Days in it, up to 7.", examples=[7])]
    intake_kcal: Annotated[float, Meta(description="Energy a day, correction included.", examples=[2180])]
    protein_g: Annotated[float, Meta(description="Protein a day, grams.", examples=[165])]
    carbohydrate_g: Annotated[
        float | None, Meta(description="Carbohydrate a day, to 5 g, where the plan named it.", examples=[210])
    ]
    planned_intake_kcal: Annotated[
        float, Meta(description="Energy a day as first planned: the correction is the difference.", examples=[2240])
    ]
    at_end: ForecastPoint


class FirstWeeksAfter(Response, frozen=True, kw_only=True):
    """The first two weeks after the phase, at the maintenance of the body there is."""

    intake_kcal: Annotated[int, Meta(description="Energy a day that holds tissue, logging scale.", examples=[2610])]
    rebound_kg: Annotated[Interval, Meta(description="Carried mass that returns within two weeks. It is not fat.")]
    points: Annotated[list[ForecastPoint], Meta(description="Expected on days 3, 7 and 14.")]


class SettlingQuestion(Response, frozen=True, kw_only=True):
    """One question that settles what scale and log say against each other."""

    causes: Annotated[list[ExplanationRow], Meta(description="What may explain it, the likeliest first.")]
    test: Annotated[
        str,
        Meta(
            description="`weigh_food`, `oil_and_alcohol`, `water` (creatine, salt, new training, another hour, "
            "illness, travel), `cycle` or, where no weighing is asked of the person, `clinician`. Extensible.",
            examples=["weigh_food"],
        ),
    ]
    ask: Annotated[Note, Meta(description="What to ask, or to have done.")]
    asked_date: Annotated[
        CivilDate, Meta(description="The day on which it was asked: with the `state` handed on an open one keeps it.")
    ]
    asked_count: Annotated[int, Meta(description="How often, unanswered ones included.", examples=[1])]
    until_date: Annotated[
        CivilDate,
        Meta(
            description="Until then nothing is changed for its sake; what a guard rail or two readings a week apart "
            "ask for does not wait. Unanswered by then it is left out, and asked again four weeks after it was asked."
        ),
    ]
    conclusions: Annotated[list[Note], Meta(description="What is concluded from either answer.")]


class ReviewResponse(Provenance, frozen=True, kw_only=True):
    """The phase reviewed."""

    as_of_date: CivilDate
    days_into_phase: Annotated[int, Meta(description="Days of the phase so far.", examples=[21])]
    is_finished: Annotated[bool, Meta(description="Whether the phase is over.", examples=[False])]
    verdict: Annotated[
        str,
        Meta(
            description="`within_interval`, `faster`, `slower`, `contradicted` (the scale moves against what plan and "
            "log say: the reasons name what settles it) or `too_early`. Extensible.",
            examples=["within_interval"],
        ),
    ]
    probabilities: VerdictProbabilities
    more_days_needed: Annotated[
        int | None, Meta(description="Where it is too early: about how many more days of logging a verdict needs.")
    ]
    question: Annotated[
        SettlingQuestion | None,
        Meta(description="Where scale and log do not agree: what settles it. Send its answer as `settled`."),
    ]
    eaten: EatenAgainstPlan
    change: ChangeSoFar
    body_fat_fraction: Annotated[Interval, Meta(description="Body fat now, 0 to 1.")]
    maintenance_kcal: Annotated[Interval, Meta(description="Maintenance as re-estimated, on the logging scale.")]
    physical_maintenance_kcal: Annotated[Interval, Meta(description="The same in energy really eaten.")]
    logging_ratio: LoggingRatio
    maintenance_change_kcal: Annotated[
        Interval, Meta(description="Maintenance now less that which the plan started from.")
    ]
    correction_kcal: Annotated[
        int,
        Meta(
            description="One step towards what the purpose takes, at most 200 and a multiple of 10, once two readings "
            "a week apart agree on it; else 0, unless a guard rail moves the intake.",
            examples=[-60],
        ),
    ]
    decision: Annotated[
        str, Meta(description="`continue`, `end`, `shorten` or `extend`. Extensible.", examples=["continue"])
    ]
    end_date: Annotated[CivilDate, Meta(description="Last day of the phase, as decided.")]
    weeks: Annotated[list[ReviewedWeek], Meta(description="The days to come; empty where the phase ends.")]
    protein_reference_kg: Annotated[
        float | None, Meta(description="Body mass that the least protein of a deficit is reckoned by.", examples=[80.0])
    ]
    ends_early_when: Annotated[
        list[Note], Meta(description="What ends the days to come before their last; empty where no deficit goes on.")
    ]
    after: Annotated[FirstWeeksAfter | None, Meta(description="Set where the phase ends or is over.")]
    guard_rails: Annotated[list[GuardRail], Meta(description="Rails that refused, capped or warned.")]
    notes: Annotated[list[Note], Meta(description="Data quality: outliers, gaps, unit mix-ups.")]
    attention: Annotated[
        Attention, Meta(description="Whether a coach should look, why, and since when; a roster ranks by it.")
    ]
    state: State
    reasons: list[Note]
    cautions: list[Note]
    methods: MethodIds
