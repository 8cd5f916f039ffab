"""The log: dated weights and intakes."""

from typing import Annotated

from msgspec import Meta

from .quantities import CivilDate, Request


class WeightEntry(Request, frozen=True, kw_only=True):
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


class IntakeEntry(Request, frozen=True, kw_only=True):
    """What was eaten on a day. A missing day is an absent entry, not a zero."""

    date: CivilDate
    intake_kcal: Annotated[
        float,
        Meta(
            ge=0,
            le=100000,
            description="Energy eaten in a day, kilocalories. One that cannot be meant so is set aside and named.",
            examples=[2450],
        ),
    ]
    carbohydrate_g: (
        Annotated[float, Meta(ge=0, le=2000, description="Carbohydrate eaten, grams.", examples=[260])] | None
    ) = None
    is_partial: Annotated[bool, Meta(description="Whether the day was logged only in part.", examples=[False])] = False


class Log(Request, frozen=True, kw_only=True):
    """Weights and intakes in any order; gaps are fine."""

    weights: Annotated[list[WeightEntry], Meta(max_length=4000, description="Weighings.")]
    intakes: Annotated[list[IntakeEntry], Meta(max_length=2000, description="Daily intakes.")] = []
    cycle: Annotated[
        list[CivilDate],
        Meta(
            max_length=60,
            description="First days of menstruation, also the last before the log: the rise of weight around them then "
            "does not read as a change of tissue.",
        ),
    ] = []
