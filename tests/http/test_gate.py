"""The gate: who gets in, and in which order things are refused."""

from collections.abc import AsyncIterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import httpx
import msgspec
import pytest
from in_process import BASE_URL, PATIENCE_SECONDS, Running, alive, running
from lifting_form import sum_lifts
from litestar.handlers import HTTPRouteHandler
from steelyard.http.app import OPERATIONS, create_app
from steelyard.http.endpoints.decisions import decide_phase
from steelyard.http.endpoints.method_catalogue import list_methods
from steelyard.http.endpoints.other_forms import draw_plan
from steelyard.http.endpoints.plans import plan_phases
from steelyard.http.gate.gate import Gate
from steelyard.http.operation.operation import OPERATION, PUBLIC, Operation
from steelyard.http.operation.request_costs import PICTURE_UNITS
from steelyard.http.wire.negotiation import JSON, negotiate
from steelyard.settings import Settings
from steelyard.store.keys import Scope
from steelyard.store.store import Store, UsageCount
from steelyard.store.tables import Table


@pytest.fixture(scope="module")
async def lifting(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    async with running(tmp_path_factory.mktemp("lifting"), (sum_lifts, list_methods)) as started:
        yield started


def handlers(service: Running) -> list[tuple[str, HTTPRouteHandler]]:
    return [(r.path, h) for r in service.app.routes for h in r.route_handlers]  # type: ignore[union-attr]


def test_every_route_passes_the_gate(service: Running) -> None:
    routes = handlers(service)
    assert len(routes) > len(OPERATIONS)
    for path, handler in routes:
        assert isinstance(handler.resolve_before_request(), Gate), path


def test_every_route_is_public_or_an_operation(service: Running) -> None:
    """Which are public: ``test_api9_every_route_is_known``."""
    routes = [(path, h) for path, h in handlers(service) if h.http_methods != {"OPTIONS"}]
    assert {path for path, h in routes if OPERATION in h.opt} == {o.path for o in OPERATIONS}
    assert all(bool(h.opt.get(PUBLIC)) != (OPERATION in h.opt) for _, h in routes)


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda o: o.operation_id)
async def test_every_operation_needs_a_key(service: Running, operation: Operation) -> None:
    async with httpx.AsyncClient(transport=httpx.ASGITransport(service.app), base_url=BASE_URL) as stranger:
        answer = await stranger.request(operation.method, operation.path)
    assert (answer.status_code, answer.json()["type"]) == (401, "/problems/key-required")
    assert answer.headers["www-authenticate"] == 'Bearer realm="steelyard"'


@pytest.mark.parametrize(
    "authorization",
    ["", "Bearer", "Bearer ", "Bearer abc", "Bearer .abc", "Bearer abc.", "Basic YTpi", "abc.def", "\xff.\xfe"],
)
async def test_malformed_authorization(service: Running, authorization: str) -> None:
    headers = {"authorization": authorization.encode("latin-1")}
    answer = await service.client.get("/v1/methods", headers=headers)  # type: ignore[arg-type]
    assert (answer.status_code, answer.json()["type"]) == (401, "/problems/key-required")


@pytest.mark.parametrize("change", ["unknown prefix", "wrong secret", "short secret", "odd bytes"])
async def test_wrong_key(service: Running, change: str) -> None:
    prefix, _, secret = service.token.partition(".")
    token = {
        "unknown prefix": f"zzzzzzzzzz.{secret}",
        "wrong secret": f"{prefix}.{secret[:-1]}{'A' if secret[-1] != 'A' else 'B'}",
        "short secret": f"{prefix}.{secret[:-1]}",
        "odd bytes": f"{prefix}.\xff\x80",
    }[change]
    headers = {"authorization": f"Bearer {token}".encode("latin-1")}
    answer = await service.client.get("/v1/methods", headers=headers)  # type: ignore[arg-type]
    assert (answer.status_code, answer.json()["type"]) == (401, "/problems/key-rejected")
    assert 'error="invalid_token"' in answer.headers["www-authenticate"]
    assert secret not in answer.text


@pytest.mark.parametrize(("end", "status"), [(" ", 200), ("\t", 200), ("\xa0", 401), ("\x85", 401)])
async def test_only_what_http_calls_white_space_is_left_off(service: Running, end: str, status: int) -> None:
    """RFC 9110 5.6.3: a blank and a tab."""
    headers = {"authorization": f"Bearer {service.token}{end}".encode("latin-1")}
    assert (await service.client.get("/v1/methods", headers=headers)).status_code == status  # type: ignore[arg-type]


async def test_scheme_is_case_insensitive(service: Running) -> None:
    answer = await service.client.get("/v1/methods", headers={"authorization": f"bEARER {service.token}"})
    assert answer.status_code == 200


async def test_expired_and_revoked_keys(lifting: Running) -> None:
    past = datetime.now(UTC) - timedelta(seconds=1)
    _, expired = await lifting.store.create_key("Gym", Scope, expiry_time=past)
    key, revoked = await lifting.store.create_key("Gym", Scope)
    assert await lifting.store.revoke_key(key.prefix)
    for token in (expired, revoked):
        answer = await lifting.client.get("/v1/methods", headers={"authorization": f"Bearer {token}"})
        assert (answer.status_code, answer.json()["type"]) == (401, "/problems/key-rejected")


async def test_scope(lifting: Running) -> None:
    _, token = await lifting.store.create_key("Gym", [Scope.METHODS])
    headers = {"authorization": f"Bearer {token}"}
    assert (await lifting.client.get("/v1/methods", headers=headers)).status_code == 200
    answer = await lifting.client.post(sum_lifts.path, json={}, headers=headers)
    assert (answer.status_code, answer.json()["type"]) == (403, "/problems/scope-missing")
    assert "`compute`" in answer.json()["detail"]


async def test_key_goes_before_the_body(lifting: Running) -> None:
    """A stranger learns nothing of the body's faults, and the body is not even read."""
    async with httpx.AsyncClient(transport=httpx.ASGITransport(lifting.app), base_url=BASE_URL) as stranger:

        async def unread() -> AsyncIterator[bytes]:
            raise AssertionError("the body was read")
            yield b""

        for headers in ({}, {"content-type": "text/plain"}, {"accept": "text/html"}):
            answer = await stranger.post(sum_lifts.path, content=b"{", headers=headers)
            assert answer.status_code == 401
        assert (await stranger.post(sum_lifts.path, content=unread())).status_code == 401
        assert (await stranger.post(sum_lifts.path, content=b"x" * 2_000_000)).status_code == 401


async def test_order_of_the_other_checks(lifting: Running) -> None:
    headers = {"accept": "text/html", "content-type": "text/plain"}
    assert (await lifting.client.post(sum_lifts.path, content=b"{", headers=headers)).status_code == 406
    answer = await lifting.client.post(sum_lifts.path, content=b"{", headers={"content-type": "text/plain"})
    assert answer.status_code == 415


async def test_options_needs_no_key(service: Running) -> None:
    answer = await service.client.options("/v1/methods", headers={"authorization": ""})
    assert (answer.status_code, answer.headers["allow"]) == (204, "GET, HEAD, OPTIONS")


@pytest.mark.parametrize(
    ("accept", "allowed"),
    [
        ("", True),
        ("*/*", True),
        ("application/json", True),
        ("APPLICATION/JSON", True),
        ("application/*", True),
        ("text/html, */*;q=0.1", True),
        ("application/json;q=0.2, text/html", True),
        ("application/json; q=1.0; charset=utf-8", True),
        ("application/json;q=0", False),
        ("application/json;q=0, */*", False),
        ("application/*;q=0, */*", False),
        ("*/*;q=0", False),
        ("*/*;q=0, application/json", True),
        ("text/html", False),
        ("application/problem+json", False),
        ("application/jsonp", False),
        (",;,", False),
        ("application/json;q=nonsense", True),
        ("application/json;q=nan", True),
        ("\xff", False),
    ],
)
async def test_accept(service: Running, accept: str, allowed: bool) -> None:
    assert (negotiate(accept.encode("latin-1"), (JSON,)) == JSON) is allowed
    headers = {"accept": accept.encode("latin-1")}
    answer = await service.client.get("/v1/methods", headers=headers)  # type: ignore[arg-type]
    assert answer.status_code == (200 if allowed else 406)
    if not allowed:
        assert answer.json()["type"] == "/problems/not-acceptable"


async def test_accept_in_two_headers(service: Running) -> None:
    headers = [("accept", "text/html"), ("accept", "application/json")]
    request = service.client.build_request("GET", "/v1/methods")
    request.headers = httpx.Headers([*[(k, v) for k, v in request.headers.items() if k != "accept"], *headers])
    assert (await service.client.send(request)).status_code == 200


async def test_store_gone(tmp_path: Path) -> None:
    """Without its store a key that the service has not seen gets a 503."""
    async with running(tmp_path, (list_methods,), key_cache_seconds=0.0) as started:
        assert (await started.client.get("/health/ready")).status_code == 200
        assert (await started.client.get("/v1/methods")).status_code == 200
        _, unseen = await started.store.create_key("Gym", Scope)
        await _drop_tables(started)
        assert (await started.client.get("/health/ready")).status_code == 200, "for as long as the grace of its keys"
        assert (await started.client.get("/health/live")).status_code == 200
        answer = await started.client.get("/v1/methods", headers={"authorization": f"Bearer {unseen}"})
        assert (answer.status_code, answer.json()["type"]) == (503, "/problems/unavailable")
        assert int(answer.headers["retry-after"]) > 0
        # The verified key goes on for its grace time.
        assert (await started.client.get("/v1/methods")).status_code == 200


async def _drop_tables(started: Running) -> None:
    async with started.store._writing() as connection:
        await connection.run_sync(Table.metadata.drop_all)


async def test_usage_is_counted_and_survives_a_shutdown(tmp_path: Path) -> None:
    async with running(tmp_path, (sum_lifts, list_methods), usage_flush_seconds=3600.0) as started:
        for _ in range(3):
            await started.client.get("/v1/methods")
        await started.client.post(sum_lifts.path, content=b"{", headers={"content-type": "application/json"})
        await started.client.get("/v1/methods", headers={"authorization": "Bearer no.body"})
        assert await started.store.usage() == {}
        settings = started.settings
    async with alive(create_app(settings, ())):
        pass
    store = Store(settings.database_url, timeout_seconds=PATIENCE_SECONDS)
    counts = {cell.operation_id: count.requests for cell, count in (await store.usage()).items()}
    await store.close()
    assert counts == {"list_methods": 3, "sum_lifts": 1}


async def test_settings_reach_the_application(tmp_path: Path) -> None:
    app = create_app(Settings(database_url=f"sqlite+aiosqlite:///{tmp_path}/x.sqlite3", body_limit_bytes=7))
    assert app.request_max_body_size == 7


async def test_a_request_costs_what_its_operation_weighs(tmp_path: Path) -> None:
    """In the limit, as the answer tells, and in the ledger; a drawn picture more than the answer it shows."""
    weighed = ((plan_phases, 1), (decide_phase, 10))
    svg = 1 + PICTURE_UNITS
    specification = "application/vnd.vegalite.v6+json"
    operations = [plan_phases, decide_phase, draw_plan]
    async with running(tmp_path, operations, rate_limit_requests=1000, rate_limit_window_seconds=86_400) as started:
        left = 1000
        for operation, cost in weighed:
            body = msgspec.json.encode(next(iter(operation.request_examples.values())))
            sent = {"content-type": "application/json"}
            answer = await started.client.post(operation.path, content=body, headers=sent)
            left -= cost
            assert (answer.status_code, f"r={left};" in answer.headers["ratelimit"]) == (200, True)
        for accept, cost in (("*/*", svg), ("image/png", svg), (specification, 1), ("x/y", 1)):
            sent = {"content-type": "application/json", "accept": accept}
            refused = await started.client.post(draw_plan.path, content=b"{", headers=sent)
            left -= cost
            assert f"r={left};" in refused.headers["ratelimit"], accept
    used = {cell.operation_id: count for cell, count in (await started.store.usage()).items()}
    assert used == {
        "plan_phases": UsageCount(1, 1),
        "decide_phase": UsageCount(1, 10),
        "draw_plan": UsageCount(4, 2 * svg + 2),
    }
