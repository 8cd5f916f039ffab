"""What a client can be asked: one set of methods. ``make sdk`` writes the ones to be awaited from these."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Any, Literal, Self, Unpack, get_args

from .batch import Chunk, ChunkAnswer, read_lines
from .environment import service_key, service_url
from .exchange import (
    LINES,
    Answer,
    Model,
    Options,
    Steps,
    exchange,
    read_answer,
    read_bytes,
    read_text,
)
from .generated.contract import (
    COMPARE_STRATEGIES,
    DECIDE_PHASE,
    DOCUMENT_OPTIMUM,
    DOCUMENT_PLAN,
    DOCUMENT_SEASON,
    DRAW_COMPARISON,
    DRAW_FORECAST,
    DRAW_OPTIMUM,
    DRAW_PLAN,
    DRAW_SEASON,
    DRAW_TREND,
    ESTIMATE_BODY_COMPOSITION,
    ESTIMATE_MAINTENANCE,
    FORECAST_INTAKE,
    LIST_MESSAGES,
    LIST_METHODS,
    OPTIMISE_SEASON,
    PLAN_PHASES,
    PLAN_SEASON,
    RANK_ROSTER,
    READ_TREND,
    REVIEW_PHASE,
    RUN_BATCH,
    Operation,
)
from .retry import RetryPolicy
from .signatures import asks

if TYPE_CHECKING:
    from .answers import (
        BodyComposition,
        Comparison,
        Decision,
        Forecast,
        Maintenance,
        Methods,
        Optimum,
        Plan,
        Review,
        Roster,
        Season,
        Trend,
    )
    from .generated.request_types import (
        BodyCompositionRequestDict,
        ComparisonRequestDict,
        DecisionRequestDict,
        ForecastRequestDict,
        MaintenanceRequestDict,
        OptimumRequestDict,
        PlanRequestDict,
        ReviewRequestDict,
        RosterRequestDict,
        SeasonRequestDict,
        TrendRequestDict,
    )
    from .messages import Messages
    from .received import Exchange

TIMEOUT_SECONDS = 10.0
CONNECT_TIMEOUT_SECONDS = 2.0

PictureFormat = Literal["svg", "png", "vega_lite"]
PictureTheme = Literal["light", "dark"]
PictureWidth = Literal["page", "phone"]
_PICTURES = {"svg": "image/svg+xml", "png": "image/png", "vega_lite": "application/vnd.vegalite.v6+json"}
BriefingReader = Literal["member", "member_short", "coach", "coach_short"]
DocumentFormat = Literal["calendar", "csv", "markdown"]
_MEDIA_TYPES = {"calendar": "text/calendar", "csv": "text/csv", "markdown": "text/markdown"}


class Client:
    """What both clients share: their options, and the steps of a call."""

    def __init__(
        self,
        url: str | None = None,
        key: str | None = None,
        *,
        timeout_seconds: float = TIMEOUT_SECONDS,
        connect_timeout_seconds: float = CONNECT_TIMEOUT_SECONDS,
        retry: RetryPolicy | None = None,
        check_requests: bool = True,
        on_exchange: Callable[[Exchange], None] | None = None,
    ) -> None:
        self._options = Options(
            url=service_url(url),
            key=service_key(key),
            timeout_seconds=timeout_seconds,
            connect_timeout_seconds=connect_timeout_seconds,
            retry=RetryPolicy() if retry is None else retry,
            check_requests=check_requests,
            on_exchange=on_exchange,
        )

    def with_options(
        self,
        *,
        timeout_seconds: float | None = None,
        retry: RetryPolicy | None = None,
        check_requests: bool | None = None,
    ) -> Self:
        """The same client with other options, on the same connections: ``client.with_options(timeout_seconds=30)``."""
        given = {"timeout_seconds": timeout_seconds, "retry": retry, "check_requests": check_requests}
        changed = {name: value for name, value in given.items() if value is not None}
        other = object.__new__(type(self))
        other.__dict__.update(self.__dict__)
        other._options = replace(self._options, **changed)  # type: ignore[arg-type]
        return other

    def _steps(self, operation: Operation, answer_type: type[Model], request: dict[str, Any]) -> Steps[Model]:
        read = partial(read_answer, answer_type)
        return exchange(operation, read, request, self._options, time.monotonic)

    def _document(
        self, operation: Operation, format: DocumentFormat, language: str, request: dict[str, Any]
    ) -> Steps[str]:
        if format not in _MEDIA_TYPES:
            raise ValueError(f"format must be one of {', '.join(_MEDIA_TYPES)}, not {format!r}")
        return exchange(
            operation, read_text, request, self._options, time.monotonic, _MEDIA_TYPES[format], language=language
        )

    def _briefing(
        self, operation: Operation, reader: BriefingReader, language: str, request: dict[str, Any]
    ) -> Steps[str]:
        readers = get_args(BriefingReader)
        if reader not in readers:
            raise ValueError(f"reader must be one of {', '.join(readers)}, not {reader!r}")
        options, query = self._options, f"?briefing={reader}"
        return exchange(
            operation, read_text, request, options, time.monotonic, "text/plain", query=query, language=language
        )

    def _picture(
        self,
        operation: Operation,
        format: PictureFormat,
        theme: PictureTheme,
        width: PictureWidth,
        request: dict[str, Any],
        language: str,
    ) -> Steps[bytes]:
        if format not in _PICTURES:
            raise ValueError(f"format must be one of {', '.join(_PICTURES)}, not {format!r}")
        for name, asked, offered in (("theme", theme, PictureTheme), ("width", width, PictureWidth)):
            if asked not in get_args(offered):
                raise ValueError(f"{name} must be {' or '.join(get_args(offered))}, not {asked!r}")
        media_type, query, options = _PICTURES[format], f"?theme={theme}&width={width}", self._options
        return exchange(
            operation, read_bytes, request, options, time.monotonic, media_type, query=query, language=language
        )

    def _chunk_steps(self, chunk: Chunk) -> Steps[ChunkAnswer]:
        read = partial(read_lines, chunk)
        return exchange(RUN_BATCH, read, {}, self._options, time.monotonic, LINES, chunk.content)

    def __repr__(self) -> str:
        return f"{type(self).__name__}({self._options.url!r})"  # never the key


class Calls(Client):
    """The calls of a client that blocks."""

    @asks(ESTIMATE_MAINTENANCE)
    def estimate_maintenance(self, **request: Unpack[MaintenanceRequestDict]) -> Maintenance:
        """Maintenance of a person, from their ``profile`` and, where there is one, their ``log``.

        The keywords are the fields of ``MaintenanceRequestDict``; each takes a model or a dictionary.
        """
        from .answers import Maintenance

        return self._call(ESTIMATE_MAINTENANCE, Maintenance, dict(request))

    @asks(PLAN_PHASES)
    def plan_phases(self, **request: Unpack[PlanRequestDict]) -> Plan:
        """A plan for a person: ``profile``, ``start_date``, ``phase``, and their ``screening`` answers.

        The keywords are the fields of ``PlanRequestDict``; each takes a model or a dictionary.
        """
        from .answers import Plan

        return self._call(PLAN_PHASES, Plan, dict(request))

    @asks(DOCUMENT_PLAN)
    def plan_document(self, format: DocumentFormat, *, language: str = "en", **request: Unpack[PlanRequestDict]) -> str:
        """The same plan as text: a ``calendar`` (RFC 5545), a weekly table (``csv``) or a summary (``markdown``).

        Write it with ``newline=""``, so that its line ends stay as the format has them. ``language`` is a tag such as
        ``de``; English where the service does not have it. The keywords are those of ``plan_phases``.
        """
        return self._drive(self._document(DOCUMENT_PLAN, format, language, dict(request)))

    @asks(DOCUMENT_PLAN)
    def plan_briefing(
        self, reader: BriefingReader = "member", *, language: str = "en", **request: Unpack[PlanRequestDict]
    ) -> str:
        """The same plan as a briefing to send or read aloud: what to eat and expect, week by week unless it is short.

        ``language`` is a tag such as ``de``; English where the service does not have it. The keywords are those of
        ``plan_phases``.
        """
        return self._drive(self._briefing(DOCUMENT_PLAN, reader, language, dict(request)))

    @asks(DOCUMENT_SEASON)
    def season_document(
        self, format: DocumentFormat, *, language: str = "en", **request: Unpack[SeasonRequestDict]
    ) -> str:
        """What ``plan_season`` answers as text, as in ``plan_document``."""
        return self._drive(self._document(DOCUMENT_SEASON, format, language, dict(request)))

    @asks(DOCUMENT_SEASON)
    def season_briefing(
        self, reader: BriefingReader = "member", *, language: str = "en", **request: Unpack[SeasonRequestDict]
    ) -> str:
        """What ``plan_season`` answers as a briefing, as in ``plan_briefing``."""
        return self._drive(self._briefing(DOCUMENT_SEASON, reader, language, dict(request)))

    @asks(DOCUMENT_OPTIMUM)
    def optimum_document(
        self, format: DocumentFormat, *, language: str = "en", **request: Unpack[OptimumRequestDict]
    ) -> str:
        """What ``optimise_season`` answers as text, as in ``plan_document``."""
        return self._drive(self._document(DOCUMENT_OPTIMUM, format, language, dict(request)))

    @asks(DOCUMENT_OPTIMUM)
    def optimum_briefing(
        self, reader: BriefingReader = "member", *, language: str = "en", **request: Unpack[OptimumRequestDict]
    ) -> str:
        """What ``optimise_season`` answers as a briefing, as in ``plan_briefing``."""
        return self._drive(self._briefing(DOCUMENT_OPTIMUM, reader, language, dict(request)))

    @asks(DRAW_PLAN)
    def plan_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[PlanRequestDict],
    ) -> bytes:
        """The same plan as a picture: ``svg``, ``png``, or its ``vega_lite`` specification for apps that draw.

        ``theme`` is the page that it is for, ``width`` what it is to fit, ``language`` a tag such as ``de``. The
        keywords are those of ``plan_phases``.
        """
        return self._drive(self._picture(DRAW_PLAN, format, theme, width, dict(request), language))

    @asks(DRAW_FORECAST)
    def forecast_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[ForecastRequestDict],
    ) -> bytes:
        """What ``forecast_intake`` answers as a picture, as in ``plan_picture``."""
        return self._drive(self._picture(DRAW_FORECAST, format, theme, width, dict(request), language))

    @asks(DRAW_TREND)
    def trend_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[TrendRequestDict],
    ) -> bytes:
        """What ``read_trend`` answers as a picture, as in ``plan_picture``."""
        return self._drive(self._picture(DRAW_TREND, format, theme, width, dict(request), language))

    @asks(DRAW_SEASON)
    def season_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[SeasonRequestDict],
    ) -> bytes:
        """What ``plan_season`` answers as a picture, as in ``plan_picture``."""
        return self._drive(self._picture(DRAW_SEASON, format, theme, width, dict(request), language))

    @asks(DRAW_COMPARISON)
    def comparison_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[ComparisonRequestDict],
    ) -> bytes:
        """What ``compare_strategies`` answers as a picture, as in ``plan_picture``."""
        return self._drive(self._picture(DRAW_COMPARISON, format, theme, width, dict(request), language))

    @asks(DRAW_OPTIMUM)
    def optimum_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[OptimumRequestDict],
    ) -> bytes:
        """What ``optimise_season`` answers as a picture, as in ``plan_picture``."""
        return self._drive(self._picture(DRAW_OPTIMUM, format, theme, width, dict(request), language))

    @asks(DECIDE_PHASE)
    def decide_phase(self, **request: Unpack[DecisionRequestDict]) -> Decision:
        """Which phase comes next and why: ``profile``, ``as_of_date``, ``screening``, goal, feeling and history.

        The keywords are the fields of ``DecisionRequestDict``; each takes a model or a dictionary.
        """
        from .answers import Decision

        return self._call(DECIDE_PHASE, Decision, dict(request))

    @asks(READ_TREND)
    def read_trend(self, **request: Unpack[TrendRequestDict]) -> Trend:
        """What a person's ``log`` says: weight freed from noise, its rate, and maintenance now.

        The keywords are the fields of ``TrendRequestDict``; each takes a model or a dictionary.
        """
        from .answers import Trend

        return self._call(READ_TREND, Trend, dict(request))

    @asks(REVIEW_PHASE)
    def review_phase(self, **request: Unpack[ReviewRequestDict]) -> Review:
        """A phase against its plan, from a ``profile``, the ``phase`` and the ``log``; ``screening`` while it runs.

        The keywords are the fields of ``ReviewRequestDict``; each takes a model or a dictionary.
        """
        from .answers import Review

        return self._call(REVIEW_PHASE, Review, dict(request))

    @asks(RANK_ROSTER)
    def rank_roster(self, **request: Unpack[RosterRequestDict]) -> Roster:
        """Up to 500 ``members`` in the order in which to look at them, by the ``attention`` of their reviews.

        The keywords are the fields of ``RosterRequestDict``; each takes a model or a dictionary.
        """
        from .answers import Roster

        return self._call(RANK_ROSTER, Roster, dict(request))

    @asks(FORECAST_INTAKE)
    def forecast_intake(self, **request: Unpack[ForecastRequestDict]) -> Forecast:
        """The body under an intake, or the intake or the date for a target: which, says ``question``.

        The keywords are the fields of ``ForecastRequestDict``; each takes a model or a dictionary.
        """
        from .answers import Forecast

        return self._call(FORECAST_INTAKE, Forecast, dict(request))

    @asks(ESTIMATE_BODY_COMPOSITION)
    def estimate_body_composition(self, **request: Unpack[BodyCompositionRequestDict]) -> BodyComposition:
        """Body fat from one or more ``measurements`` taken together.

        The keywords are the fields of ``BodyCompositionRequestDict``; each takes a model or a dictionary.
        """
        from .answers import BodyComposition

        return self._call(ESTIMATE_BODY_COMPOSITION, BodyComposition, dict(request))

    @asks(PLAN_SEASON)
    def plan_season(self, **request: Unpack[SeasonRequestDict]) -> Season:
        """A chain of phases from today to a horizon, by one strategy, inside the limits.

        The keywords are the fields of ``SeasonRequestDict``; each takes a model or a dictionary.
        """
        from .answers import Season

        return self._call(PLAN_SEASON, Season, dict(request))

    @asks(COMPARE_STRATEGIES)
    def compare_strategies(self, **request: Unpack[ComparisonRequestDict]) -> Comparison:
        """Several strategies for one body side by side.

        The keywords are the fields of ``ComparisonRequestDict``; each takes a model or a dictionary.
        """
        from .answers import Comparison

        return self._call(COMPARE_STRATEGIES, Comparison, dict(request))

    @asks(OPTIMISE_SEASON)
    def optimise_season(self, **request: Unpack[OptimumRequestDict]) -> Optimum:
        """The strategy that gains most lean tissue by the horizon inside the limits.

        The keywords are the fields of ``OptimumRequestDict``; each takes a model or a dictionary.
        """
        from .answers import Optimum

        return self._call(OPTIMISE_SEASON, Optimum, dict(request))

    def list_methods(self) -> Methods:
        """Every equation, constant and rule that answers cite, with its source."""
        from .answers import Methods

        return self._call(LIST_METHODS, Methods, {})

    def list_messages(self) -> Messages:
        """The texts of all message codes in every language, with ``localise`` to say what an answer says."""
        from .messages import Messages

        return self._call(LIST_MESSAGES, Messages, {})

    def _call(self, operation: Operation, answer_type: type[Model], request: dict[str, Any]) -> Model:
        return self._drive(self._steps(operation, answer_type, request))

    def _drive(self, steps: Steps[Answer]) -> Answer:
        """Take the steps of a call, and give what it answers."""
        raise NotImplementedError
