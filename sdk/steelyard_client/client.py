"""The two clients: one set of methods, blocking or to be awaited."""

from __future__ import annotations

import asyncio
import time
from collections.abc import AsyncIterator, Callable, Iterable, Iterator
from dataclasses import replace
from functools import partial
from os import PathLike
from types import TracebackType
from typing import TYPE_CHECKING, Any, Literal, Self, Unpack, get_args

import httpx

from .batch import NOTHING_SENT, BatchRun, Chunk, ChunkAnswer, LineAnswer, read_lines
from .batch_progress import Progress
from .environment import service_key, service_url
from .errors import SteelyardError
from .exchange import (
    LINES,
    Answer,
    Model,
    Options,
    Reply,
    Send,
    Steps,
    Wait,
    exchange,
    read_answer,
    read_bytes,
    read_text,
    timed_out,
    transport_failure,
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
        Line,
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


class _Client:
    """What both clients share: their options."""

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


class Steelyard(_Client):
    """A client of the service that blocks. Safe to share between threads; close it, or use it in a ``with``.

    Args:
        url: Base URL of the service; ``STEELYARD_URL`` of the environment by default.
        key: API key; ``STEELYARD_KEY`` of the environment by default.
        timeout_seconds: For a whole call, its retries and waits included.
        connect_timeout_seconds: For a connection to be made.
        retry: When to try again; see ``RetryPolicy``.
        check_requests: Whether to check requests against the contract before they are sent. Switch it off to send
            a newer service what this version does not know.
        on_exchange: Told of every try of every call: its status, seconds, request id and limits, never a body. The
            logger ``steelyard_client`` says the same, at DEBUG, and at INFO for what failed.
        transport: An httpx transport to use instead of the network, with proxies and certificates of its own.

    Every method raises ``SteelyardError``; see ``steelyard_client.errors``.
    """

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
        transport: httpx.BaseTransport | None = None,
    ) -> None:
        super().__init__(
            url,
            key,
            timeout_seconds=timeout_seconds,
            connect_timeout_seconds=connect_timeout_seconds,
            retry=retry,
            check_requests=check_requests,
            on_exchange=on_exchange,
        )
        self._http = httpx.Client(transport=transport)

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

    def run_batch(
        self,
        lines: Iterable[Line],
        *,
        keep_in: str | PathLike[str] | None = None,
        progress: bool | Progress = False,
    ) -> Iterator[LineAnswer]:
        """The answers to many calls, one a line and in their order; a line at fault does not touch the others.

        ``lines`` are read as answers are taken, and sent a few at a time, each few with the client's time limit and
        retries. Raises what stops the whole, such as ``TooManyRequests``; what is wrong with a line is its ``problem``.

        ``keep_in`` names a file in which answers are kept by their reference. Run the same lines with the same file
        again after anything broke, and only what is missing is asked for; a line that has changed since is asked
        anew. References are then unique. The file holds what the answers say about people: treat it as such, and
        delete it when done.

        ``progress`` is true for a bar on standard error (needs ``steelyard-client[progress]``), or a function that is
        told the lines done and, where ``lines`` has a length, the lines in all.
        """
        with BatchRun(lines, keep_in, progress) as run:
            for chunk in run.chunks():
                answered = self._drive(self._chunk_steps(chunk)) if chunk.content else NOTHING_SENT
                yield from run.merged(chunk, answered)
                if answered.failure is not None:
                    raise answered.failure

    def list_methods(self) -> Methods:
        """Every equation, constant and rule that answers cite, with its source."""
        from .answers import Methods

        return self._call(LIST_METHODS, Methods, {})

    def list_messages(self) -> Messages:
        """The texts of all message codes in every language, with ``localise`` to say what an answer says."""
        from .messages import Messages

        return self._call(LIST_MESSAGES, Messages, {})

    def close(self) -> None:
        """Close the connections, also those of clients made by ``with_options``."""
        self._http.close()

    def __enter__(self) -> Self:
        self._http.__enter__()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._http.__exit__(kind, error, trace)

    def _call(self, operation: Operation, answer_type: type[Model], request: dict[str, Any]) -> Model:
        return self._drive(self._steps(operation, answer_type, request))

    def _drive(self, steps: Steps[Answer]) -> Answer:
        outcome: Reply | SteelyardError | None = None
        try:
            while True:
                match steps.send(outcome):
                    case Wait(seconds):
                        time.sleep(seconds)
                        outcome = None
                    case Send() as send:
                        outcome = self._send(send)
        except StopIteration as done:
            answer: Answer = done.value
            return answer

    def _send(self, send: Send) -> Reply | SteelyardError:
        deadline = time.monotonic() + send.timeout_seconds
        chunks = []
        try:
            with self._http.stream(
                send.method, send.url, headers=send.headers, content=send.content, timeout=send.timeout
            ) as response:
                for chunk in response.iter_bytes():
                    chunks.append(chunk)
                    if time.monotonic() > deadline:  # httpx limits the wait for each chunk, not for all
                        return timed_out(send)
        except httpx.HTTPError as error:
            return transport_failure(error, send)
        return Reply(response.status_code, response.headers, b"".join(chunks))


class AsyncSteelyard(_Client):
    """``Steelyard`` to be awaited, with the same arguments and methods, under asyncio.

    Close it with ``await client.aclose()``, or use it in an ``async with``.
    """

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
        transport: httpx.AsyncBaseTransport | None = None,
    ) -> None:
        super().__init__(
            url,
            key,
            timeout_seconds=timeout_seconds,
            connect_timeout_seconds=connect_timeout_seconds,
            retry=retry,
            check_requests=check_requests,
            on_exchange=on_exchange,
        )
        self._http = httpx.AsyncClient(transport=transport)

    @asks(ESTIMATE_MAINTENANCE)
    async def estimate_maintenance(self, **request: Unpack[MaintenanceRequestDict]) -> Maintenance:
        """As ``Steelyard.estimate_maintenance``."""
        from .answers import Maintenance

        return await self._call(ESTIMATE_MAINTENANCE, Maintenance, dict(request))

    @asks(PLAN_PHASES)
    async def plan_phases(self, **request: Unpack[PlanRequestDict]) -> Plan:
        """As ``Steelyard.plan_phases``."""
        from .answers import Plan

        return await self._call(PLAN_PHASES, Plan, dict(request))

    @asks(DOCUMENT_PLAN)
    async def plan_document(
        self, format: DocumentFormat, *, language: str = "en", **request: Unpack[PlanRequestDict]
    ) -> str:
        """As ``Steelyard.plan_document``."""
        return await self._drive(self._document(DOCUMENT_PLAN, format, language, dict(request)))

    @asks(DOCUMENT_PLAN)
    async def plan_briefing(
        self, reader: BriefingReader = "member", *, language: str = "en", **request: Unpack[PlanRequestDict]
    ) -> str:
        """As ``Steelyard.plan_briefing``."""
        return await self._drive(self._briefing(DOCUMENT_PLAN, reader, language, dict(request)))

    @asks(DOCUMENT_SEASON)
    async def season_document(
        self, format: DocumentFormat, *, language: str = "en", **request: Unpack[SeasonRequestDict]
    ) -> str:
        """As ``Steelyard.season_document``."""
        return await self._drive(self._document(DOCUMENT_SEASON, format, language, dict(request)))

    @asks(DOCUMENT_SEASON)
    async def season_briefing(
        self, reader: BriefingReader = "member", *, language: str = "en", **request: Unpack[SeasonRequestDict]
    ) -> str:
        """As ``Steelyard.season_briefing``."""
        return await self._drive(self._briefing(DOCUMENT_SEASON, reader, language, dict(request)))

    @asks(DOCUMENT_OPTIMUM)
    async def optimum_document(
        self, format: DocumentFormat, *, language: str = "en", **request: Unpack[OptimumRequestDict]
    ) -> str:
        """As ``Steelyard.optimum_document``."""
        return await self._drive(self._document(DOCUMENT_OPTIMUM, format, language, dict(request)))

    @asks(DOCUMENT_OPTIMUM)
    async def optimum_briefing(
        self, reader: BriefingReader = "member", *, language: str = "en", **request: Unpack[OptimumRequestDict]
    ) -> str:
        """As ``Steelyard.optimum_briefing``."""
        return await self._drive(self._briefing(DOCUMENT_OPTIMUM, reader, language, dict(request)))

    @asks(DRAW_PLAN)
    async def plan_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[PlanRequestDict],
    ) -> bytes:
        """As ``Steelyard.plan_picture``."""
        return await self._drive(self._picture(DRAW_PLAN, format, theme, width, dict(request), language))

    @asks(DRAW_FORECAST)
    async def forecast_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[ForecastRequestDict],
    ) -> bytes:
        """As ``Steelyard.forecast_picture``."""
        return await self._drive(self._picture(DRAW_FORECAST, format, theme, width, dict(request), language))

    @asks(DRAW_TREND)
    async def trend_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[TrendRequestDict],
    ) -> bytes:
        """As ``Steelyard.trend_picture``."""
        return await self._drive(self._picture(DRAW_TREND, format, theme, width, dict(request), language))

    @asks(DRAW_SEASON)
    async def season_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[SeasonRequestDict],
    ) -> bytes:
        """As ``Steelyard.season_picture``."""
        return await self._drive(self._picture(DRAW_SEASON, format, theme, width, dict(request), language))

    @asks(DRAW_COMPARISON)
    async def comparison_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[ComparisonRequestDict],
    ) -> bytes:
        """As ``Steelyard.comparison_picture``."""
        return await self._drive(self._picture(DRAW_COMPARISON, format, theme, width, dict(request), language))

    @asks(DRAW_OPTIMUM)
    async def optimum_picture(
        self,
        format: PictureFormat = "svg",
        *,
        theme: PictureTheme = "light",
        width: PictureWidth = "page",
        language: str = "en",
        **request: Unpack[OptimumRequestDict],
    ) -> bytes:
        """As ``Steelyard.optimum_picture``."""
        return await self._drive(self._picture(DRAW_OPTIMUM, format, theme, width, dict(request), language))

    @asks(DECIDE_PHASE)
    async def decide_phase(self, **request: Unpack[DecisionRequestDict]) -> Decision:
        """As ``Steelyard.decide_phase``."""
        from .answers import Decision

        return await self._call(DECIDE_PHASE, Decision, dict(request))

    @asks(READ_TREND)
    async def read_trend(self, **request: Unpack[TrendRequestDict]) -> Trend:
        """As ``Steelyard.read_trend``."""
        from .answers import Trend

        return await self._call(READ_TREND, Trend, dict(request))

    @asks(REVIEW_PHASE)
    async def review_phase(self, **request: Unpack[ReviewRequestDict]) -> Review:
        """As ``Steelyard.review_phase``."""
        from .answers import Review

        return await self._call(REVIEW_PHASE, Review, dict(request))

    @asks(RANK_ROSTER)
    async def rank_roster(self, **request: Unpack[RosterRequestDict]) -> Roster:
        """As ``Steelyard.rank_roster``."""
        from .answers import Roster

        return await self._call(RANK_ROSTER, Roster, dict(request))

    @asks(FORECAST_INTAKE)
    async def forecast_intake(self, **request: Unpack[ForecastRequestDict]) -> Forecast:
        """As ``Steelyard.forecast_intake``."""
        from .answers import Forecast

        return await self._call(FORECAST_INTAKE, Forecast, dict(request))

    @asks(ESTIMATE_BODY_COMPOSITION)
    async def estimate_body_composition(self, **request: Unpack[BodyCompositionRequestDict]) -> BodyComposition:
        """As ``Steelyard.estimate_body_composition``."""
        from .answers import BodyComposition

        return await self._call(ESTIMATE_BODY_COMPOSITION, BodyComposition, dict(request))

    @asks(PLAN_SEASON)
    async def plan_season(self, **request: Unpack[SeasonRequestDict]) -> Season:
        """As ``Steelyard.plan_season``."""
        from .answers import Season

        return await self._call(PLAN_SEASON, Season, dict(request))

    @asks(COMPARE_STRATEGIES)
    async def compare_strategies(self, **request: Unpack[ComparisonRequestDict]) -> Comparison:
        """As ``Steelyard.compare_strategies``."""
        from .answers import Comparison

        return await self._call(COMPARE_STRATEGIES, Comparison, dict(request))

    @asks(OPTIMISE_SEASON)
    async def optimise_season(self, **request: Unpack[OptimumRequestDict]) -> Optimum:
        """As ``Steelyard.optimise_season``."""
        from .answers import Optimum

        return await self._call(OPTIMISE_SEASON, Optimum, dict(request))

    async def run_batch(
        self,
        lines: Iterable[Line],
        *,
        keep_in: str | PathLike[str] | None = None,
        progress: bool | Progress = False,
    ) -> AsyncIterator[LineAnswer]:
        """As ``Steelyard.run_batch``, with ``async for``."""
        with BatchRun(lines, keep_in, progress) as run:
            for chunk in run.chunks():
                answered = await self._drive(self._chunk_steps(chunk)) if chunk.content else NOTHING_SENT
                for answer in run.merged(chunk, answered):
                    yield answer
                if answered.failure is not None:
                    raise answered.failure

    async def list_methods(self) -> Methods:
        """As ``Steelyard.list_methods``."""
        from .answers import Methods

        return await self._call(LIST_METHODS, Methods, {})

    async def list_messages(self) -> Messages:
        """As ``Steelyard.list_messages``."""
        from .messages import Messages

        return await self._call(LIST_MESSAGES, Messages, {})

    async def aclose(self) -> None:
        """Close the connections, also those of clients made by ``with_options``."""
        await self._http.aclose()

    async def __aenter__(self) -> Self:
        await self._http.__aenter__()
        return self

    async def __aexit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        await self._http.__aexit__(kind, error, trace)

    async def _call(self, operation: Operation, answer_type: type[Model], request: dict[str, Any]) -> Model:
        return await self._drive(self._steps(operation, answer_type, request))

    async def _drive(self, steps: Steps[Answer]) -> Answer:
        outcome: Reply | SteelyardError | None = None
        try:
            while True:
                match steps.send(outcome):
                    case Wait(seconds):
                        await asyncio.sleep(seconds)
                        outcome = None
                    case Send() as send:
                        outcome = await self._send(send)
        except StopIteration as done:
            answer: Answer = done.value
            return answer

    async def _send(self, send: Send) -> Reply | SteelyardError:
        try:
            async with asyncio.timeout(send.timeout_seconds):
                async with self._http.stream(
                    send.method, send.url, headers=send.headers, content=send.content, timeout=send.timeout
                ) as response:
                    content = await response.aread()
        except TimeoutError:
            return timed_out(send)
        except httpx.HTTPError as error:
            return transport_failure(error, send)
        return Reply(response.status_code, response.headers, content)
