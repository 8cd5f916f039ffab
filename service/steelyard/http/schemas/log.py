"""The log: dated weights, intakes and steps, what happened, and what was measured."""

from typing import Annotated

from msgspec import Meta

from steelyard.science.log import EventKind
from steelyard.science.person import CycleSaid, StrengthSaid

from .body_composition import GirthMeasurement, ReadingMeasurement, SkinfoldMeasurement
from .shared_fields import CivilDate, Request


class WeightEntry(Request, frozen=True, kw_only=True, omit_defaults=True):
    """A weighing. Several a day are allowed; `order` tells them apart."""

    date: CivilDate
    weight_kg: Annotated[
        float,
        Meta(
            gt=0,
            le=2000,
            description="Body mass in kilograms. One that does not go with those around it is set aside and named.",
            examples=[82.4],
        ),
    ]
    order: Annotated[
        int, Meta(ge=0, le=50, description="Order within the day, for several weighings.", examples=[0])
    ] = 0


class IntakeEntry(Request, frozen=True, kw_only=True, omit_defaults=True):
    """What was eaten on a day. A missing day is an absent entry, not a zero."""

    date: CivilDate
    intake_kcal: Annotated[
        float,
        Meta(
            ge=0,
            le=100000,
            description="Energy eaten in a day, kilocalories. One that cannot be meant so is set aside and named. 0 "
            "counts as a day that was not logged, and is named; of a whole day's fast send 1.",
            examples=[2450],
        ),
    ]
    carbohydrate_g: (
        Annotated[float, Meta(ge=0, le=2000, description="Carbohydrate eaten, grams.", examples=[260])] | None
    ) = None
    is_partial: Annotated[bool, Meta(description="Whether the day was logged only in part.", examples=[False])] = False


class StepsEntry(Request, frozen=True, kw_only=True, omit_defaults=True):
    """Steps counted on a day, by phone or watch. A missing day is an absent entry, not a zero."""

    date: CivilDate
    steps: Annotated[
        int,
        Meta(
            ge=0,
            le=100000,
            description="Steps of the whole day. A number that nobody walks, or that says that the counter was not "
            "carried, is set aside and named.",
            examples=[8200],
        ),
    ]


class DatedEvent(Request, frozen=True, kw_only=True):
    """Something that moves weight without moving tissue, or makes a verdict worthless for a while."""

    kind: Annotated[
        EventKind,
        Meta(
            description="`creatine_start`, `creatine_stop`, `illness`, `travel`, `injury`, `new_programme` (training), "
            "`salty_days`, `festive_days`, `medicine` that moves water or appetite, `alcohol`.",
            examples=["travel"],
        ),
    ]
    date: CivilDate
    until_date: Annotated[CivilDate | None, Meta(description="Its last day; that day where absent.")] = None


class DatedMeasurement(Request, frozen=True, kw_only=True):
    """A measurement of body fat on a day: girths, skinfolds, or a reading and its method, which sets the error."""

    date: CivilDate
    measurement: GirthMeasurement | SkinfoldMeasurement | ReadingMeasurement


class CheckIn(Request, frozen=True, kw_only=True):
    """How somebody is, in five short answers; those left out say nothing."""

    date: CivilDate
    hunger: Annotated[int, Meta(ge=1, le=5, description="1 none to 5 all day long.", examples=[3])] | None = None
    sleep: Annotated[int, Meta(ge=1, le=5, description="1 bad to 5 good.", examples=[4])] | None = None
    mood: Annotated[int, Meta(ge=1, le=5, description="1 bad to 5 good.", examples=[4])] | None = None
    cycle: Annotated[
        CycleSaid | None,
        Meta(
            description="`regular`, `late` by more than a week, `missed`, or `none` to speak of (contraception, "
            "menopause, does not menstruate).",
            examples=["regular"],
        ),
    ] = None
    strength: Annotated[
        StrengthSaid | None,
        Meta(
            description="Main lifts against four weeks ago: `up`, `steady`, `down` (about 5 %), `down_much` (10 % or "
            "more).",
            examples=["steady"],
        ),
    ] = None


class Log(Request, frozen=True, kw_only=True):
    """Weights, intakes and steps in any order; gaps are fine."""

    weights: Annotated[list[WeightEntry], Meta(max_length=4000, description="Weighings.")]
    intakes: Annotated[list[IntakeEntry], Meta(max_length=2000, description="Daily intakes.")] = []
    cycle: Annotated[
        list[CivilDate],
        Meta(
            max_length=60,
            description="First days of menstruation, also the last before the log: the rise of weight around them then "
            "does not read as a change of tissue. One over a week after all else that was logged is kept for a later "
            "day where no `as_of_date` is asked for.",
        ),
    ] = []
    events: Annotated[
        list[DatedEvent],
        Meta(max_length=100, description="What explains weight without tissue: creatine, illness, travel, salt."),
    ] = []
    check_ins: Annotated[
        list[CheckIn], Meta(max_length=400, description="How the person is: what may end, shorten or raise a deficit.")
    ] = []
    measurements: Annotated[
        list[DatedMeasurement], Meta(max_length=200, description="Body-fat readings, girths or skinfolds, dated.")
    ] = []
    steps: Annotated[
        list[StepsEntry],
        Meta(
            max_length=2000,
            description="Steps a day, one entry each, always by the same counter; also those of the weeks before the "
            "log. What they change of expenditure is then known, not guessed.",
        ),
    ] = []


LogAsked = Annotated[Log | None, Meta(description="Dated weights and intakes to estimate maintenance from.")]
