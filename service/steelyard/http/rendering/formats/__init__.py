"""Answers in other media types than JSON."""

from collections.abc import Callable, Mapping
from enum import StrEnum
from typing import Any, ClassVar

from steelyard.science.phase import PlanChoice

from ...wire.negotiation import Format
from ..wording import Words
from . import (
    plan_briefing,
    plan_calendar,
    plan_summary,
    plan_table,
    season_briefing,
    season_calendar,
    season_summary,
    season_table,
)

_Encode = Callable[[Any, Any, Words], bytes]
# A plan is written down for people who may still choose.
_CHOICES: Mapping[str, Any] = {"include": list(PlanChoice)}


class _DocumentFormat(Format, frozen=True, kw_only=True):
    """A document of an answer, with its words in the caller's language."""

    has_words: ClassVar[bool] = True

    def _make(self, body: Any, answer: Any, chosen: Mapping[str, StrEnum], language: str, *, spares: bool) -> bytes:
        made: bytes = self.encode(body, answer, Words(language, spares))
        return made


def _formats(
    calendar: _Encode, table: _Encode, summary: _Encode, briefing: Callable[..., bytes], asks: Mapping[str, Any]
) -> dict[str, Format]:
    return {
        "text/calendar": _DocumentFormat(
            name="CalendarText",
            content_type="text/calendar; charset=utf-8",
            encode=calendar,
            schema={"type": "string", "description": "A calendar (RFC 5545)."},
        ),
        "text/csv": _DocumentFormat(
            name="TableText",
            content_type="text/csv; charset=utf-8; header=present",
            encode=table,
            schema={"type": "string", "description": "A table with a header (RFC 4180)."},
        ),
        "text/markdown": _DocumentFormat(
            name="SummaryText",
            content_type="text/markdown; charset=utf-8",
            encode=summary,
            schema={"type": "string", "description": "A summary in CommonMark."},
            asks=asks,
        ),
        "text/plain": plan_briefing.BriefingFormat(
            name="BriefingText",
            content_type="text/plain; charset=utf-8",
            encode=briefing,
            schema={"type": "string", "description": "A briefing to send or read aloud, in the caller's language."},
            asks=asks,
        ),
    }


PLAN_FORMATS = _formats(
    plan_calendar.calendar, plan_table.table, plan_summary.summary, plan_briefing.briefing, _CHOICES
)
SEASON_FORMATS = _formats(
    season_calendar.calendar, season_table.table, season_summary.summary, season_briefing.briefing, {}
)
