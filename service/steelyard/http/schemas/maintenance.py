"""`POST /v1/maintenance`."""

from typing import Annotated

from msgspec import Meta

from .explanation import MethodIds, Note, Provenance
from .log import Log
from .profile import Profile, Screening
from .shared_fields import CivilDate, Interval, Request, Response
from .states import State, StateAsked


class MaintenanceRequest(Request, frozen=True, kw_only=True):
    """Whose maintenance to estimate, as on the day that the estimate is for, and the log to learn from, where there is
    one."""

    profile: Profile
    log: Annotated[Log | None, Meta(description="Dated weights and intakes.")] = None
    state: StateAsked = None
    screening: Annotated[
        Screening | None,
        Meta(description="Safety questions: who is pregnant or has an eating disorder is told nothing of leanness."),
    ] = None
    as_of_date: Annotated[
        CivilDate | None, Meta(description="The day the estimate is for; the last day of the log by default.")
    ] = None


class EquationRow(Response, frozen=True):
    """One prediction equation: its value for this person, whether it was used and how much it counted."""

    id: Annotated[str, Meta(description="Id of the equation.", examples=["mifflin"])]
    estimates: Annotated[
        str,
        Meta(
            description="`resting` energy, or `total`: the estimate before a log, which the rows of `total` make by "
            "their weights, and by the factor that a note of theirs names.",
            examples=["resting"],
        ),
    ]
    kcal_per_day: Annotated[float, Meta(description="Its value, kilocalories a day.", examples=[1780])]
    is_applicable: Annotated[bool, Meta(description="Whether this person is in its valid range.")]
    is_used: Annotated[bool, Meta(description="Whether it entered the estimate.")]
    weight: Annotated[
        float,
        Meta(description="Its share in the estimate of what it predicts, 0 to 1.", examples=[0.333]),
    ]
    notes: Annotated[list[str], Meta(description="Why it does not apply or was not used, or how it was taken.")]


class Contribution(Response, frozen=True, kw_only=True):
    """What each kind of evidence says and how much it counted."""

    prior_kcal: Annotated[Interval, Meta(description="Prediction equations and activity alone.")]
    prior_share: Annotated[float, Meta(description="Share of the answer that rests on them, 0 to 1.", examples=[0.35])]
    log_share: Annotated[float, Meta(description="Share that rests on the log, 0 to 1.", examples=[0.65])]


class MaintenanceResponse(Provenance, frozen=True, kw_only=True):
    """Settled maintenance: the intake at which tissue is stable at today's body and activity, once adaptation has
    followed intake there. (Plans and forecasts list today's, with the adaptation that a deficit has left.)"""

    as_of_date: Annotated[CivilDate | None, Meta(description="The day the estimate is for.")]
    maintenance_kcal: Annotated[
        Interval, Meta(description="Maintenance on the person's own logging scale, kilocalories a day.")
    ]
    physical_maintenance_kcal: Annotated[
        Interval | None,
        Meta(description="Maintenance in energy really eaten, where it is known to differ from the logging scale."),
    ]
    resting_kcal: Annotated[Interval, Meta(description="Resting energy expenditure, kilocalories a day.")]
    activity_level: Annotated[
        float, Meta(description="Implied physical activity level: maintenance over resting.", examples=[1.6])
    ]
    body_fat_fraction: Annotated[Interval, Meta(description="Body fat the estimate rests on, 0 to 1.")]
    equations: Annotated[list[EquationRow], Meta(description="Every equation, resting and total.")]
    contribution: Contribution
    state: Annotated[State | None, Meta(description="What is known now; null without a day to know it of.")]
    reasons: list[Note]
    cautions: list[Note]
    methods: MethodIds
