"""The one question that settles what scale and log say against each other, and what its answer means.

Three things explain a change of weight that the log does not: food that is not in it, a body that needs more or less
than was thought, and water. They are ranked by their odds, and asked is what tells the likeliest from the rest.
"""

from collections.abc import Sequence
from datetime import date
from enum import StrEnum
from typing import NamedTuple

import msgspec

from ..log import Cause, EventKind, Explained, Explanation, LoggedEvent, has_acted
from ..person import Sex
from ..register import Basis, Message, constant, say, traced, yes_or_no

WEIGHED_DAYS = int(
    constant(
        "question_weighed_days",
        7,
        unit="d",
        summary="Days for which everything eaten is weighed to settle whether a log is complete",
        basis=Basis.COMMON_PRACTICE,
    )
)
WATER_DAYS = int(
    constant(
        "question_water_days",
        14,
        unit="d",
        summary="Days after which water with a cause has settled: creatine, salt, new training, a cycle's last part",
        basis=Basis.JUDGEMENT,
    )
)
ASK_AGAIN_DAYS = int(
    constant(
        "question_again",
        28,
        unit="d",
        summary="Days after which a question that nobody answered is asked again",
        basis=Basis.JUDGEMENT,
    )
)
SMALL_GAP_KCAL = constant(
    "question_small_gap",
    200.0,
    unit="kcal/d",
    summary="Up to this much a day is what oil, drinks and tastes leave out of a log; more is meals",
    basis=Basis.JUDGEMENT,
)

_IF_MORE = "QUESTION_IF_MORE"
_IF_AS_LOGGED = "QUESTION_IF_AS_LOGGED"
_IF_WATER = "QUESTION_IF_WATER"
_IF_NOT_WATER = "QUESTION_IF_NOT_WATER"
FOUND_MORE = "QUESTION_FOUND_MORE"
FOUND_AS_LOGGED = "QUESTION_FOUND_AS_LOGGED"
FOUND_WATER = "QUESTION_FOUND_WATER"
AGAIN = "QUESTION_AGAIN"


class SettlingTest(StrEnum):
    """What settles a contradiction."""

    WEIGH_FOOD = "weigh_food"
    OIL_AND_ALCOHOL = "oil_and_alcohol"
    WATER = "water"
    CYCLE = "cycle"
    CLINICIAN = "clinician"  # of whom no weighing is asked


_ASKS = {
    SettlingTest.WEIGH_FOOD: "QUESTION_WEIGH_FOOD",
    SettlingTest.OIL_AND_ALCOHOL: "QUESTION_OIL_AND_ALCOHOL",
    SettlingTest.WATER: "QUESTION_WATER",
    SettlingTest.CYCLE: "QUESTION_CYCLE",
    SettlingTest.CLINICIAN: "QUESTION_WITH_CLINICIAN",
}
_OF_WATER = (SettlingTest.WATER, SettlingTest.CYCLE)
# What moves water and is asked about, with the events that tell of it.
_WATER: dict[str, tuple[EventKind, ...]] = {
    "creatine": (EventKind.CREATINE_START, EventKind.CREATINE_STOP),
    "salt": (EventKind.SALTY_DAYS, EventKind.FESTIVE_DAYS),
    "training": (EventKind.NEW_PROGRAMME,),
    "illness": (EventKind.ILLNESS,),
    "travel": (EventKind.TRAVEL,),
}
_ASKED_OF: dict[SettlingTest, tuple[str, ...]] = {
    SettlingTest.WATER: tuple(_WATER),
    SettlingTest.CYCLE: ("creatine", "salt", "training"),
}
_WATER_SINCE_DAYS = 28  # for which the question asks


class Finding(StrEnum):
    """What came out of a question."""

    MORE_THAN_LOGGED = "more_than_logged"
    AS_LOGGED = "as_logged"
    WATER = "water"
    NOT_WATER = "not_water"
    NOT_DONE = "not_done"


class Settled(msgspec.Struct, frozen=True, kw_only=True):
    """The answer to a question: what was found, and on which day."""

    day: int
    found: Finding


class LastAsked(msgspec.Struct, frozen=True, kw_only=True):
    """The question last asked in a phase: on which day, what settles it, and how often it was asked by then."""

    day: int
    test: SettlingTest
    times: int = 1

    @property
    def until_day(self) -> int:
        """The day until which to wait for the answer."""
        return self.day + (WATER_DAYS if self.test in _OF_WATER else WEIGHED_DAYS)


class OpenQuestion(NamedTuple):
    """What is asked and since when, and what is concluded; the causes by their odds, likeliest first."""

    causes: Sequence[Explanation]
    asked: LastAsked
    ask: Message
    conclusions: list[Message]

    @property
    def test(self) -> SettlingTest:
        """What settles it."""
        return self.asked.test

    @property
    def until_day(self) -> int:
        """The day until which to wait; one that is past is not told any more."""
        return self.asked.until_day


@traced
def question_of(
    explained: Explained | None,
    gap_kcal: float,
    day: int,
    sex: Sex,
    *,
    knows_cycle: bool,
    settled: Settled | None,
    asked: LastAsked | None = None,
    events: Sequence[LoggedEvent] = (),
    speaks: bool = True,
) -> OpenQuestion | None:
    """The question that stands, where one does.

    One that is not answered stays as it was asked, so that the day until which to wait does not move; weeks after that
    day it is asked again, by what is then the likeliest.

    Args: ``gap_kcal`` a day between what the scale tells was eaten and what the plan took for it; ``settled``: the
        answer to the last question. A cause that it ruled out is not asked about again. ``asked``: the last question.
        ``knows_cycle``: whether nothing is to be asked of the cycle, as its days are known or there is none.
        ``events``: what was told of what moves water, about which nothing is asked.
        ``speaks``: whether weighing may be asked of the person; else they are sent to who can help.
    """
    if explained is None:
        return None
    causes = [one for one in explained.causes if one.cause is not Cause.AS_LOGGED]
    is_told = not any(_open(SettlingTest.WATER, events, day, day).values())
    if is_told or (settled is not None and settled.found is Finding.NOT_WATER):
        causes = [one for one in causes if one.cause is not Cause.WATER]
    if settled is not None and settled.found in (Finding.AS_LOGGED, Finding.MORE_THAN_LOGGED, Finding.WATER):
        return None
    test = _test_of(causes[0].cause, gap_kcal, sex, knows_cycle=knows_cycle) if speaks else SettlingTest.CLINICIAN
    if asked is not None and speaks is (asked.test is SettlingTest.CLINICIAN):
        asked = None  # it was asked of somebody who may be asked otherwise by now
    if asked is None or _is_answered(asked, settled, knows_cycle=knows_cycle):
        asked = LastAsked(day=day, test=test)
    elif day >= asked.day + ASK_AGAIN_DAYS:
        asked = LastAsked(day=day, test=test, times=asked.times + 1)
    until = date.fromordinal(asked.until_day).isoformat()
    if not speaks:
        return OpenQuestion(explained.causes, asked, say(_ASKS[asked.test], date=until), [])
    is_of_water = asked.test in _OF_WATER
    about = {name: yes_or_no(is_open) for name, is_open in _open(asked.test, events, asked.day, day).items()}
    then = [say(_IF_WATER, date=until), say(_IF_NOT_WATER)] if is_of_water else [say(_IF_MORE), say(_IF_AS_LOGGED)]
    return OpenQuestion(explained.causes, asked, say(_ASKS[asked.test], date=until, **about), then)


def _open(test: SettlingTest, events: Sequence[LoggedEvent], asked_day: int, day: int) -> dict[str, bool]:
    """What a question asks about, and whether nothing was told of it in the weeks before it was asked, or since."""
    since = asked_day - _WATER_SINCE_DAYS
    acted = {event.kind for event in events if has_acted(event, since, day)}
    return {name: acted.isdisjoint(_WATER[name]) for name in _ASKED_OF.get(test, ())}


def _test_of(cause: Cause, gap_kcal: float, sex: Sex, *, knows_cycle: bool) -> SettlingTest:
    """What settles whether it is the likeliest cause."""
    if cause is Cause.WATER:
        return SettlingTest.CYCLE if sex is not Sex.MALE and not knows_cycle else SettlingTest.WATER
    is_small = 0.0 <= gap_kcal <= SMALL_GAP_KCAL  # no oil that was left out makes anybody lighter
    return SettlingTest.OIL_AND_ALCOHOL if is_small else SettlingTest.WEIGH_FOOD


def _is_answered(asked: LastAsked, settled: Settled | None, *, knows_cycle: bool) -> bool:
    """Whether what was asked is known by now though more is to be asked."""
    if asked.test is SettlingTest.CYCLE and knows_cycle:
        return True
    return asked.test in _OF_WATER and settled is not None and settled.found is Finding.NOT_WATER
