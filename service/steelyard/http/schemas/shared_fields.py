"""What the schemas of several answers and requests share: their bases, and kinds of numbers with unit and range.

Bodies and answers are trees: they hold no cycles, so that the garbage collector need not look at them (``gc=False``).
"""

from datetime import date
from typing import Annotated

import msgspec
from msgspec import Meta


class Request(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, gc=False):
    """Base of what a caller sends: unknown fields are refused."""


class Response(msgspec.Struct, frozen=True, kw_only=True, gc=False):
    """Base of what the service answers: fields may be added within a major version."""


WeightKg = Annotated[float, Meta(ge=30, le=300, description="Body mass in kilograms.", examples=[82.4])]
HeightCm = Annotated[float, Meta(ge=120, le=230, description="Height in centimetres.", examples=[178.0])]
AgeYears = Annotated[float, Meta(ge=13, le=100, description="Age in years.", examples=[31])]
FatFraction = Annotated[
    float, Meta(ge=0.03, le=0.6, description="Body fat as a fraction of body mass, 0 to 1.", examples=[0.17])
]
EnergyPerDay = Annotated[float, Meta(ge=800, le=8000, description="Energy per day, kilocalories.", examples=[2700])]
CurrentIntakeAsked = Annotated[
    EnergyPerDay | None, Meta(description="What is eaten a day at present; maintenance by default.")
]
CivilDate = Annotated[
    date,
    Meta(
        description="A civil date (the person's local day), 2000-01-01 to 2100-12-31.",
        examples=["2026-03-02"],
    ),
]


class Interval(Response, frozen=True):
    """A central value with the interval that holds the truth with probability ``coverage``."""

    lower: Annotated[float, Meta(description="Lower end of the interval.", examples=[2480])]
    mean: Annotated[float, Meta(description="Central value.", examples=[2710])]
    upper: Annotated[float, Meta(description="Upper end of the interval.", examples=[2940])]
    coverage: Annotated[float, Meta(description="Probability the interval is meant to hold.", examples=[0.8])] = 0.8


class IntervalColumns(Response, frozen=True):
    """Intervals of many rows, in columns of equal length: a third of the bytes of as many ``Interval``."""

    lower: Annotated[list[float], Meta(description="Lower ends of the intervals.", examples=[[2480, 2475]])]
    mean: Annotated[list[float], Meta(description="Central values.", examples=[[2710, 2704]])]
    upper: Annotated[list[float], Meta(description="Upper ends of the intervals.", examples=[[2940, 2933]])]
    coverage: Annotated[float, Meta(description="Probability each is meant to hold.", examples=[0.8])] = 0.8


PhysicalMaintenance = Annotated[
    Interval | None,
    Meta(
        description="Maintenance in energy really eaten, kilocalories a day, where a log of intakes was read; null "
        "without one. `maintenance_kcal` is on the scale of that log."
    ),
]
LoggingRatio = Annotated[
    Interval | None,
    Meta(
        description="Logged over eaten energy, where a log of intakes was read; null without one. Guard rails on the "
        "body divide what is told by its mean, those that protect by its upper end, 1 at most."
    ),
]


_Error = Annotated[float, Meta(ge=0, le=15000, description="Its standard deviation.", examples=[110])]


class EnergyFigure(Request, frozen=True, kw_only=True):
    """An energy a day with its error."""

    mean: Annotated[float, Meta(ge=-5000, le=30000, description="Kilocalories a day.", examples=[2710])]
    standard_deviation: _Error


class MassFigure(Request, frozen=True, kw_only=True):
    """A mass with its error."""

    mean: Annotated[float, Meta(ge=-30, le=350, description="Mass, kg.", examples=[82.4])]
    standard_deviation: Annotated[float, Meta(ge=0, le=100, description="Its standard deviation.", examples=[0.3])]


class AdherenceFigure(Request, frozen=True, kw_only=True):
    """How well deficits are kept to, learned from the log by reviews: the share of a planned deficit that is really
    followed, 1 for all of it."""

    mean: Annotated[float, Meta(ge=0.2, le=1.5, description="The share, as a fraction.", examples=[0.74])]
    standard_deviation: Annotated[float, Meta(ge=0.01, le=1, description="Its standard deviation.", examples=[0.11])]
    weeks: Annotated[float, Meta(ge=0, le=520, description="Weeks in a deficit that showed it.", examples=[6])]


class RatioFigure(Request, frozen=True, kw_only=True):
    """A ratio with its error."""

    mean: Annotated[float, Meta(ge=0.2, le=1.5, description="The ratio, as a fraction.", examples=[0.88])]
    standard_deviation: Annotated[float, Meta(ge=0, le=1, description="Its standard deviation.", examples=[0.05])]
