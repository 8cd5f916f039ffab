"""Generated from the contract by regenerate.py: do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Unpack

from ..calls import (
    BriefingReader,
    Client,
    DocumentFormat,
    PictureFormat,
    PictureTheme,
    PictureWidth,
)
from ..exchange import (
    Answer,
    Model,
    Steps,
)
from ..signatures import asks
from .contract import (
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
    Operation,
)

if TYPE_CHECKING:
    from ..answers import (
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
    from ..messages import Messages
    from .request_types import (
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


class AwaitedCalls(Client):
    """The calls of a client to be awaited."""

    @asks(ESTIMATE_MAINTENANCE)
    async def estimate_maintenance(
        self, **request: Unpack[MaintenanceRequestDict]
    ) -> Maintenance:
        """Maintenance of a person, from their ``profile`` and, where there is one, their ``log``.

        The keywords are the fields of ``MaintenanceRequestDict``; each takes a model or a dictionary.
        """
        from ..answers import Maintenance

        return await self._call(ESTIMATE_MAINTENANCE, Maintenance, dict(request))

    @asks(PLAN_PHASES)
    async def plan_phases(self, **request: Unpack[PlanRequestDict]) -> Plan:
        """A plan for a person: ``profile``, ``start_date``, ``phase``, and their ``screening`` answers.

        The keywords are the fields of ``PlanRequestDict``; each takes a model or a dictionary.
        """
        from ..answers import Plan

        return await self._call(PLAN_PHASES, Plan, dict(request))

    @asks(DOCUMENT_PLAN)
    async def plan_document(
        self,
        format: DocumentFormat,
        *,
        language: str = "en",
        **request: Unpack[PlanRequestDict],
    ) -> str:
        """The same plan as text: a ``calendar`` (RFC 5545), a weekly table (``csv``) or a summary (``markdown``).

        Write it with ``newline=""``, so that its line ends stay as the format has them. ``language`` is a tag such as
        ``de``; English where the service does not have it. The keywords are those of ``plan_phases``.
        """
        return await self._drive(
            self._document(DOCUMENT_PLAN, format, language, dict(request))
        )

    @asks(DOCUMENT_PLAN)
    async def plan_briefing(
        self,
        reader: BriefingReader = "member",
        *,
        language: str = "en",
        **request: Unpack[PlanRequestDict],
    ) -> str:
        """The same plan as a briefing to send or read aloud: what to eat and expect, week by week unless it is short.

        ``language`` is a tag such as ``de``; English where the service does not have it. The keywords are those of
        ``plan_phases``.
        """
        return await self._drive(
            self._briefing(DOCUMENT_PLAN, reader, language, dict(request))
        )

    @asks(DOCUMENT_SEASON)
    async def season_document(
        self,
        format: DocumentFormat,
        *,
        language: str = "en",
        **request: Unpack[SeasonRequestDict],
    ) -> str:
        """What ``plan_season`` answers as text, as in ``plan_document``."""
        return await self._drive(
            self._document(DOCUMENT_SEASON, format, language, dict(request))
        )

    @asks(DOCUMENT_SEASON)
    async def season_briefing(
        self,
        reader: BriefingReader = "member",
        *,
        language: str = "en",
        **request: Unpack[SeasonRequestDict],
    ) -> str:
        """What ``plan_season`` answers as a briefing, as in ``plan_briefing``."""
        return await self._drive(
            self._briefing(DOCUMENT_SEASON, reader, language, dict(request))
        )

    @asks(DOCUMENT_OPTIMUM)
    async def optimum_document(
        self,
        format: DocumentFormat,
        *,
        language: str = "en",
        **request: Unpack[OptimumRequestDict],
    ) -> str:
        """What ``optimise_season`` answers as text, as in ``plan_document``."""
        return await self._drive(
            self._document(DOCUMENT_OPTIMUM, format, language, dict(request))
        )

    @asks(DOCUMENT_OPTIMUM)
    async def optimum_briefing(
        self,
        reader: BriefingReader = "member",
        *,
        language: str = "en",
        **request: Unpack[OptimumRequestDict],
    ) -> str:
        """What ``optimise_season`` answers as a briefing, as in ``plan_briefing``."""
        return await self._drive(
            self._briefing(DOCUMENT_OPTIMUM, reader, language, dict(request))
        )

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
        """The same plan as a picture: ``svg``, ``png``, or its ``vega_lite`` specification for apps that draw.

        ``theme`` is the page that it is for, ``width`` what it is to fit, ``language`` a tag such as ``de``. The
        keywords are those of ``plan_phases``.
        """
        return await self._drive(
            self._picture(DRAW_PLAN, format, theme, width, dict(request), language)
        )

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
        """What ``forecast_intake`` answers as a picture, as in ``plan_picture``."""
        return await self._drive(
            self._picture(DRAW_FORECAST, format, theme, width, dict(request), language)
        )

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
        """What ``read_trend`` answers as a picture, as in ``plan_picture``."""
        return await self._drive(
            self._picture(DRAW_TREND, format, theme, width, dict(request), language)
        )

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
        """What ``plan_season`` answers as a picture, as in ``plan_picture``."""
        return await self._drive(
            self._picture(DRAW_SEASON, format, theme, width, dict(request), language)
        )

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
        """What ``compare_strategies`` answers as a picture, as in ``plan_picture``."""
        return await self._drive(
            self._picture(
                DRAW_COMPARISON, format, theme, width, dict(request), language
            )
        )

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
        """What ``optimise_season`` answers as a picture, as in ``plan_picture``."""
        return await self._drive(
            self._picture(DRAW_OPTIMUM, format, theme, width, dict(request), language)
        )

    @asks(DECIDE_PHASE)
    async def decide_phase(self, **request: Unpack[DecisionRequestDict]) -> Decision:
        """Which phase comes next and why: ``profile``, ``as_of_date``, ``screening``, goal, feeling and history.

        The keywords are the fields of ``DecisionRequestDict``; each takes a model or a dictionary.
        """
        from ..answers import Decision

        return await self._call(DECIDE_PHASE, Decision, dict(request))

    @asks(READ_TREND)
    async def read_trend(self, **request: Unpack[TrendRequestDict]) -> Trend:
        """What a person's ``log`` says: weight freed from noise, its rate, and maintenance now.

        The keywords are the fields of ``TrendRequestDict``; each takes a model or a dictionary.
        """
        from ..answers import Trend

        return await self._call(READ_TREND, Trend, dict(request))

    @asks(REVIEW_PHASE)
    async def review_phase(self, **request: Unpack[ReviewRequestDict]) -> Review:
        """A phase against its plan, from a ``profile``, the ``phase`` and the ``log``; ``screening`` while it runs.

        The keywords are the fields of ``ReviewRequestDict``; each takes a model or a dictionary.
        """
        from ..answers import Review

        return await self._call(REVIEW_PHASE, Review, dict(request))

    @asks(RANK_ROSTER)
    async def rank_roster(self, **request: Unpack[RosterRequestDict]) -> Roster:
        """Up to 500 ``members`` in the order in which to look at them, by the ``attention`` of their reviews.

        The keywords are the fields of ``RosterRequestDict``; each takes a model or a dictionary.
        """
        from ..answers import Roster

        return await self._call(RANK_ROSTER, Roster, dict(request))

    @asks(FORECAST_INTAKE)
    async def forecast_intake(self, **request: Unpack[ForecastRequestDict]) -> Forecast:
        """The body under an intake, or the intake or the date for a target: which, says ``question``.

        The keywords are the fields of ``ForecastRequestDict``; each takes a model or a dictionary.
        """
        from ..answers import Forecast

        return await self._call(FORECAST_INTAKE, Forecast, dict(request))

    @asks(ESTIMATE_BODY_COMPOSITION)
    async def estimate_body_composition(
        self, **request: Unpack[BodyCompositionRequestDict]
    ) -> BodyComposition:
        """Body fat from one or more ``measurements`` taken together.

        The keywords are the fields of ``BodyCompositionRequestDict``; each takes a model or a dictionary.
        """
        from ..answers import BodyComposition

        return await self._call(
            ESTIMATE_BODY_COMPOSITION, BodyComposition, dict(request)
        )

    @asks(PLAN_SEASON)
    async def plan_season(self, **request: Unpack[SeasonRequestDict]) -> Season:
        """A chain of phases from today to a horizon, by one strategy, inside the limits.

        The keywords are the fields of ``SeasonRequestDict``; each takes a model or a dictionary.
        """
        from ..answers import Season

        return await self._call(PLAN_SEASON, Season, dict(request))

    @asks(COMPARE_STRATEGIES)
    async def compare_strategies(
        self, **request: Unpack[ComparisonRequestDict]
    ) -> Comparison:
        """Several strategies for one body side by side.

        The keywords are the fields of ``ComparisonRequestDict``; each takes a model or a dictionary.
        """
        from ..answers import Comparison

        return await self._call(COMPARE_STRATEGIES, Comparison, dict(request))

    @asks(OPTIMISE_SEASON)
    async def optimise_season(self, **request: Unpack[OptimumRequestDict]) -> Optimum:
        """The strategy that gains most lean tissue by the horizon inside the limits.

        The keywords are the fields of ``OptimumRequestDict``; each takes a model or a dictionary.
        """
        from ..answers import Optimum

        return await self._call(OPTIMISE_SEASON, Optimum, dict(request))

    async def list_methods(self) -> Methods:
        """Every equation, constant and rule that answers cite, with its source."""
        from ..answers import Methods

        return await self._call(LIST_METHODS, Methods, {})

    async def list_messages(self) -> Messages:
        """The texts of all message codes in every language, with ``localise`` to say what an answer says."""
        from ..messages import Messages

        return await self._call(LIST_MESSAGES, Messages, {})

    async def _call(
        self, operation: Operation, answer_type: type[Model], request: dict[str, Any]
    ) -> Model:
        return await self._drive(self._steps(operation, answer_type, request))

    async def _drive(self, steps: Steps[Answer]) -> Answer:
        """Take the steps of a call, and give what it answers."""
        raise NotImplementedError
