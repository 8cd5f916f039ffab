"""The application, assembled.

To add an operation, write a plain function from the decoded body to the answer, decorate it, and name it in
``OPERATIONS``::

    @computation(
        "/v1/maintenance",
        operation_id="estimate_maintenance",
        tag="maintenance",
        summary="Estimate maintenance energy",
        request_examples={"profile_only": MaintenanceRequest(...)},
    )
    def estimate_maintenance(body: MaintenanceRequest) -> MaintenanceAnswer:
        \"\"\"Contract text for the reader of the SDK.\"\"\"
        return maintenance_answer(maintenance.estimate(person(body.profile)))

Both types are msgspec structs, requests with ``frozen, kw_only, forbid_unknown_fields``. Route, key check, strict
decoding, finite encoding, usage count and contract follow from the record that the decorator makes; the function
itself stays callable as ``estimate_maintenance.compute(body)``. To refuse a well-formed body raise
``problems.Unprocessable`` or ``problems.GuardRailRefusal``; what the core raises (``OutOfDomain``, ``Refused``) is
answered as a 422 by ``http/refusals.py``.
"""

import asyncio
import contextlib
import logging
from collections.abc import AsyncIterator, Sequence

from litestar import Litestar

from steelyard.settings import Settings
from steelyard.store.store import Store, StoreUnavailable

from .edge.beside import Beside, kept_running
from .edge.cors import Cors
from .edge.edge import Edge
from .edge.gauges import gauges_of
from .edge.health import health_routes
from .edge.observers import observers_and_routes
from .edge.overload import Overload
from .edge.readiness import Readiness
from .endpoints.batch_kinds import BATCHED
from .endpoints.batches import run_batch
from .endpoints.messages import list_messages
from .endpoints.method_catalogue import list_methods
from .endpoints.other_forms import OTHER_FORMS
from .endpoints.rosters import rank_roster
from .endpoints.seasons import compare_strategies, optimise_season, plan_season
from .gate.gate import Gate
from .gate.key_cache import KeyCache
from .gate.rate_limit import RateLimiter
from .gate.retention import Retention
from .gate.usage import UsageCounter
from .operation.operation import Operation
from .pages.contract_routes import document_routes
from .pages.site import Site
from .pages.workbench import workbench_routes
from .rendering.pictures.renderer import Renderer
from .wire.problems import handle_exception
from .wire.request_bounds import RequestBounds

_log = logging.getLogger(__name__)

OPERATIONS: tuple[Operation, ...] = (
    *BATCHED,
    rank_roster,
    run_batch,
    plan_season,
    compare_strategies,
    optimise_season,
    *OTHER_FORMS,
    list_methods,
    list_messages,
)


def create_app(settings: Settings, operations: Sequence[Operation] = OPERATIONS) -> Litestar:
    """The ASGI application. Its store is opened at start-up and closed, with all usage written, at shutdown."""
    store = Store(settings.database_url, timeout_seconds=settings.store_timeout_seconds)
    usage = UsageCounter(store, flush_seconds=settings.usage_flush_seconds)
    key_cache = KeyCache(store, cache_seconds=settings.key_cache_seconds, grace_seconds=settings.key_grace_seconds)

    limiter = RateLimiter.of(settings)
    limits = RequestBounds(
        body_bytes=settings.body_limit_bytes,
        body_seconds=settings.body_seconds,
        computation_seconds=settings.computation_seconds,
        batch_lines=settings.batch_lines,
        batch_idle_seconds=settings.batch_idle_seconds,
        queue_seconds=settings.queue_seconds,
    )
    readiness = Readiness(
        store,
        grace_seconds=settings.key_grace_seconds,
        is_full=lambda: usage.is_full,
        write_fault=lambda: usage.fault,
    )
    overload = Overload(settings.overload_seconds)
    renderer = Renderer(seconds=settings.computation_seconds)
    observers, observer_routes = observers_and_routes(
        settings,
        gauges_of(limiter, limits, readiness, overload, usage),
    )

    beside: list[Beside] = [usage, limiter, readiness, overload, *observers]
    if settings.usage_days:
        beside.append(Retention(store, days=settings.usage_days))

    @contextlib.asynccontextmanager
    async def lifespan(_app: Litestar) -> AsyncIterator[None]:
        try:
            await store.prepare(migrate=settings.migrate_at_start)
        except StoreUnavailable as error:  # the process starts all the same, and is not ready until the store is
            _log.warning("started without the store: %s", error)
        await readiness.look()
        running = [asyncio.create_task(kept_running(each)) for each in beside]
        try:
            yield
        finally:
            for task in running:
                task.cancel()
            await asyncio.gather(*running, return_exceptions=True)
            for part in (key_cache, limits, renderer):
                part.close()
            await store.close()
            for observer in observers:
                observer.close()

    routes = [operation.route(limits, renderer.render) for operation in operations]
    site = Site(has_workbench=settings.workbench)
    if site.has_workbench:
        routes += workbench_routes(operations, site)
    app = Litestar(
        [*routes, *health_routes(readiness), *document_routes(operations, site), *observer_routes],
        before_request=Gate(key_cache, limiter, usage),
        exception_handlers={Exception: handle_exception},
        lifespan=[lifespan],
        logging_config=None,
        openapi_config=None,
        request_max_body_size=settings.body_limit_bytes,
        stores={"rate_limit": limiter.counts},  # type: ignore[dict-item]  # counts with the part of a store it needs
    )
    handler = Cors(app.asgi_handler, settings.allowed_origins) if settings.allowed_origins else app.asgi_handler
    app.asgi_handler = Edge(
        handler, compress_from_bytes=settings.compress_from_bytes, observers=observers, overload=overload
    )
    return app
