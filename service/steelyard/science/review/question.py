"""The one question that settles what scale and log say against each other, and what its answer means.

Three things explain a change of weight that the log does not: food that is not in it, a body that needs more or less
than was thought, and water. They are ranked by their odds, and asked is what tells the likeliest from the rest.
"""

from collections.abc import Sequence
from datetime import date
from enum import StrEnum
from typing import NamedTuple

import msgspec

from ..log import Cause, Explained, Explanation
from ..person import Sex
from ..register import Basis, Message, constant, say, traced

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
SMALL_GAP_KCAL = constant(
    "question_small_gap",
    200.0,
    unit="kcal/d",
    summary="Up to this much a day is what oil, drinks and tastes leave out of a log; more is meals",
    basis=Basis.JUDGEMENT,
)

_ASK_WEIGHING = "QUESTION_WEIGH_FOOD"
_ASK_OIL = "QUESTION_OIL_AND_ALCOHOL"
_ASK_WATER = "QUESTION_WATER"
_ASK_CYCLE = "QUESTION_CYCLE"
_IF_MORE = "QUESTION_IF_MORE"
_IF_AS_LOGGED = "QUESTION_IF_AS_LOGGED"
_IF_WATER = "QUESTION_IF_WATER"
_IF_NOT_WATER = "QUESTION_IF_NOT_WATER"
FOUND_MORE = "QUESTION_FOUND_MORE"
FOUND_AS_LOGGED = "QUESTION_FOUND_AS_LOGGED"
FOUND_WATER = "QUESTION_FOUND_WATER"


class SettlingTest(StrEnum):
    """What settles a contradiction."""

    WEIGH_FOOD = "weigh_food"
    OIL_AND_ALCOHOL = "oil_and_alcohol"
    WATER = "water"
    CYCLE = "cycle"


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


class OpenQuestion(NamedTuple):
    """What is asked, until when to wait, and what is concluded then; the causes by their odds, likeliest first."""

    causes: Sequence[Explanation]
    test: SettlingTest
    ask: Message
    until_day: int
    conclusions: list[Message]


@traced
def question_of(
    explained: Explained | None, gap_kcal: float, day: int, sex: Sex, *, knows_cycle: bool, settled: Settled | None
) -> OpenQuestion | None:
    """The next question, where one is open.

    Args: ``gap_kcal`` a day between what the scale tells was eaten and what the plan took for it; ``settled``: the
        answer to the last question. A cause that it ruled out is not asked about again.
    """
    if explained is None:
        return None
    causes = [one for one in explained.causes if one.cause is not Cause.AS_LOGGED]
    if settled is not None and settled.found is Finding.NOT_WATER:
        causes = [one for one in causes if one.cause is not Cause.WATER]
    if settled is not None and settled.found in (Finding.AS_LOGGED, Finding.MORE_THAN_LOGGED, Finding.WATER):
        return None
    if causes[0].cause is Cause.WATER:
        until = date.fromordinal(day + WATER_DAYS).isoformat()
        is_of_cycle = sex is not Sex.MALE and not knows_cycle
        test, ask = (SettlingTest.CYCLE, _ASK_CYCLE) if is_of_cycle else (SettlingTest.WATER, _ASK_WATER)
        then = [say(_IF_WATER, date=until), say(_IF_NOT_WATER)]
        return OpenQuestion(explained.causes, test, say(ask, date=until), day + WATER_DAYS, then)
    until = date.fromordinal(day + WEIGHED_DAYS).isoformat()
    is_small = 0.0 <= gap_kcal <= SMALL_GAP_KCAL  # no oil that was left out makes anybody lighter
    test, ask = (SettlingTest.OIL_AND_ALCOHOL, _ASK_OIL) if is_small else (SettlingTest.WEIGH_FOOD, _ASK_WEIGHING)
    then = [say(_IF_MORE), say(_IF_AS_LOGGED)]
    return OpenQuestion(explained.causes, test, say(ask, date=until), day + WEIGHED_DAYS, then)
