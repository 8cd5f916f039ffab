"""The OWASP API Security Top 10 of 2023, row by row: what each asks of this service, as tests.

``service/security.md`` has the same rows as a table, with what other tests hold.
"""

import ast
import hmac
import io
import json
import logging
import re
import socket
import sqlite3
import sys
import tomllib
from collections.abc import AsyncIterator, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import httpx
import msgspec
import pytest
from in_process import BASE_URL, Running, running
from lifting_form import EXAMPLE, sum_lifts
from litestar.handlers import HTTPRouteHandler
from msgspec import to_builtins
from steelyard.http.app import OPERATIONS, create_app
from steelyard.http.endpoints.method_catalogue import list_methods
from steelyard.http.operation.operation import OPERATION, PUBLIC, Operation
from steelyard.http.pages.contract import openapi_document
from steelyard.http.wire.observability import log_to
from steelyard.settings import Settings
from steelyard.store import keys
from steelyard.store.keys import Scope, sha256
from steelyard.store.tables import Table

ROOT = Path(__file__).resolve().parents[2]
SERVICE = ROOT / "service" / "steelyard"
DOCUMENT: dict[str, Any] = json.loads(json.dumps(openapi_document(OPERATIONS)))
SCHEMAS: dict[str, Any] = DOCUMENT["components"]["schemas"]
ROWS = [f"API{row}:2023" for row in range(1, 11)]


@pytest.fixture(scope="module")
async def lifting(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    async with running(tmp_path_factory.mktemp("lifting"), (sum_lifts, list_methods)) as started:
        yield started


def plain(example: Any) -> Any:
    """An example as plain JSON values."""
    return msgspec.json.decode(msgspec.json.encode(example))


def content_of(operation: Operation, example: Any) -> tuple[bytes, dict[str, str]]:
    """An example as the operation takes it."""
    end = b"\n" if operation.stream else b""
    content = msgspec.json.encode(example) + end
    return content, {"content-type": operation.media_type, "accept": operation.offered[0]}


async def call(client: httpx.AsyncClient, operation: Operation, example: Any, **headers: str) -> httpx.Response:
    content, given = content_of(operation, example)
    return await client.request(operation.method, operation.path, content=content, headers=given | headers)


def requests() -> Iterator[tuple[Operation, Any]]:
    """Every operation with its first example."""
    for operation in OPERATIONS:
        yield operation, next(iter(operation.request_examples.values()), None)


# API1: Broken Object Level Authorization. There is no object to reach: nothing about members is kept, and no path,
# query or body names a stored thing.


def test_api1_no_request_names_a_stored_object() -> None:
    assert not [path for path in DOCUMENT["paths"] if "{" in path]
    calls = [call for item in DOCUMENT["paths"].values() for call in item.values()]
    parameters = {parameter["name"]: parameter for call in calls for parameter in call.get("parameters", [])}
    # Of other forms: each one of a few words, which name nothing that is kept.
    assert set(parameters) == {"theme", "width", "briefing", "Accept-Language"}
    for name in ("theme", "width", "briefing"):
        assert len(SCHEMAS[parameters[name]["schema"]["$ref"].rsplit("/", 1)[1]]["enum"]) in (2, 4)
    asked = {name for operation in OPERATIONS if operation.body_type for name in reach(operation.body_type.__name__)}
    names = {field for name in asked for field in SCHEMAS[name].get("properties", {})}
    # Ids that a caller makes up to tell their own lines apart are no such names.
    assert {name for name in names if re.search(r"(^|_)(id|uuid|key|organisation|member|user|owner)$", name)} <= {"id"}


async def test_api1_two_callers_get_the_same_bytes(lifting: Running) -> None:
    """Nothing depends on who asks, so nothing can leak from one caller to another."""
    _, other = await lifting.store.create_key("Another Gym", Scope)
    mine = await call(lifting.client, sum_lifts, EXAMPLE)
    theirs = await call(lifting.client, sum_lifts, EXAMPLE, authorization=f"Bearer {other}")
    assert mine.status_code == theirs.status_code == 200
    assert mine.content == theirs.content


# API2: Broken Authentication.


async def test_api2_secrets_are_compared_in_constant_time(lifting: Running, monkeypatch: pytest.MonkeyPatch) -> None:
    """By `hmac.compare_digest`, over hashes, so that not even the length of what was guessed shows."""
    compared: list[tuple[bytes, bytes]] = []
    compare = hmac.compare_digest

    def watch(ours: bytes, theirs: bytes) -> bool:
        compared.append((ours, theirs))
        return compare(ours, theirs)

    monkeypatch.setattr(keys.hmac, "compare_digest", watch)
    prefix, _, secret = lifting.token.partition(".")
    guesses = [secret, secret[:-1], secret[:-1] + "!", "x", secret * 50]
    for guess in guesses:
        answer = await lifting.client.get(list_methods.path, headers={"authorization": f"Bearer {prefix}.{guess}"})
        assert answer.status_code == (200 if guess == secret else 401)
    assert [theirs for _, theirs in compared] == [sha256(guess) for guess in guesses]
    assert {len(ours) for ours, _ in compared} == {32}


def test_api2_no_secret_is_compared_otherwise() -> None:
    """In all of the service, nothing that is called a secret, token or hash stands beside ``==``."""
    suspicious = []
    for path in SERVICE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Compare) and any(isinstance(op, ast.Eq | ast.NotEq) for op in node.ops):
                text = ast.unparse(node)
                if re.search(r"secret|sha256|digest|\btoken\b", text):
                    suspicious.append(f"{path.name}: {text}")
    assert not suspicious


async def test_api2_a_key_is_kept_as_a_hash_and_its_life_ends(lifting: Running) -> None:
    past, soon = datetime.now(UTC) - timedelta(seconds=1), datetime.now(UTC) + timedelta(hours=1)
    _, expired = await lifting.store.create_key("Gym", Scope, expiry_time=past)
    living, token = await lifting.store.create_key("Gym", Scope, expiry_time=soon)
    for given, status in ((expired, 401), (token, 200)):
        answer = await lifting.client.get(list_methods.path, headers={"authorization": f"Bearer {given}"})
        assert answer.status_code == status
    path = Path(lifting.settings.database_url.partition(":///")[2])
    with sqlite3.connect(path) as connection:
        stored = "\n".join(connection.iterdump())
    assert living.prefix in stored
    assert sha256(token.partition(".")[2]).hex().upper() in stored.upper()
    assert token.partition(".")[2] not in stored
    assert len(token.partition(".")[2]) >= 43  # 256 bits in base64


@pytest.mark.parametrize("place", ["query", "cookie", "body", "x-api-key", "basic"])
async def test_api2_a_key_counts_in_one_place_alone(lifting: Running, place: str) -> None:
    """Not in a URL, which logs and histories keep, nor in a cookie, which a browser sends by itself."""
    token = lifting.token
    headers = {
        "cookie": {"cookie": f"authorization=Bearer {token}; key={token}"},
        "x-api-key": {"x-api-key": token},
        "basic": {"authorization": "Basic " + token},
    }.get(place, {})
    url = f"{list_methods.path}?authorization=Bearer%20{token}&key={token}" if place == "query" else list_methods.path
    async with httpx.AsyncClient(transport=httpx.ASGITransport(lifting.app), base_url=BASE_URL) as stranger:
        content = json.dumps({"authorization": token}) if place == "body" else None
        answer = await stranger.request("GET", url, headers=headers, content=content)
    assert answer.status_code == 401


async def test_api2_no_key_in_logs_metrics_or_answers(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    logger, stream = logging.getLogger("steelyard"), io.StringIO()
    for name in ("handlers", "propagate"):
        monkeypatch.setattr(logger, name, getattr(logger, name))
    log_to(stream)
    told = []
    observed = {"log_requests": True, "metrics": True, "metrics_public": True}
    async with running(tmp_path, (sum_lifts, list_methods), **observed) as started:
        prefix, _, secret = started.token.partition(".")
        wrong = secret[:-3] + "!?!"
        body = to_builtins(EXAMPLE)
        for given in (f"{prefix}.{secret}", f"{prefix}.{wrong}", f"zzzzzzzzzz.{secret}"):
            for note in ("", "nan", "boom", "domain"):
                headers = {"authorization": f"Bearer {given}"}
                told.append(
                    (await started.client.post(sum_lifts.path, json=body | {"note": note}, headers=headers)).text
                )
        told.append((await started.client.get(f"/{secret}?key={secret}")).text)
        told.append((await started.client.get("/metrics")).text)
    everything = "\n".join([*told, capsys.readouterr().err, stream.getvalue()])
    assert prefix in everything  # which is public, and what an operator looks for
    assert secret not in everything
    assert wrong not in everything


# API3: Broken Object Property Level Authorization. Answers are picked field by field, requests are closed.


@pytest.mark.parametrize(
    "name", ["is_admin", "scopes", "organisation", "quota", "__class__", "__proto__", "constructor"]
)
@pytest.mark.parametrize("operation", [o for o in OPERATIONS if o.body_type], ids=lambda o: o.operation_id)
async def test_api3_no_unknown_property_is_taken(service: Running, operation: Operation, name: str) -> None:
    example = plain(next(iter(operation.request_examples.values()))) | {name: True}
    answer = await call(service.client, operation, example)
    problem = json.loads(answer.content.splitlines()[0])
    problem = problem.get("problem", problem)  # of a batch, its line's
    assert (problem["status"], problem["type"]) == (400, "/problems/schema-violation")


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda o: o.operation_id)
async def test_api3_no_property_is_answered_that_the_contract_lacks(service: Running, operation: Operation) -> None:
    """Neither by name, nor of the caller: an organisation, a label or an id of a key."""
    example = next(iter(operation.request_examples.values()), None)
    answer = await call(service.client, operation, example)
    assert answer.status_code == 200
    assert "Quarry Lane Gym" not in answer.text
    assert service.token.partition(".")[0] not in answer.text
    if operation.renders:  # its text has no properties
        return
    reached = [name for type_ in (operation.answer_type, *operation.further_types) for name in reach(type_.__name__)]
    if operation.stream:  # its lines hold the answers of the others
        reached += [name for other in OPERATIONS for name in reach(other.answer_type.__name__)]
    known = {field for name in reached for field in SCHEMAS[name].get("properties", {})}
    maps = {field for name in reached for field, s in SCHEMAS[name].get("properties", {}).items() if is_map(s)}
    for line in answer.text.splitlines() if operation.stream else [answer.text]:
        assert names_of(json.loads(line), maps) <= known


def is_map(schema: dict[str, Any]) -> bool:
    return any(part.get("additionalProperties") for part in [schema, *schema.get("anyOf", [])])


def names_of(value: Any, maps: set[str]) -> set[str]:
    """Names of all properties of a JSON value; the keys of a mapping are none."""
    if isinstance(value, list):
        return {name for item in value for name in names_of(item, maps)}
    if not isinstance(value, dict):
        return set()
    inner = [item for name, item in value.items() if name not in maps]
    return set(value) | names_of(inner, maps)


# API4: Unrestricted Resource Consumption.


async def test_api4_a_key_has_its_limit(tmp_path: Path) -> None:
    limits = {"rate_limit_requests": 3, "rate_limit_window_seconds": 86_400}
    async with running(tmp_path, (sum_lifts,), **limits) as started:
        statuses = [(await call(started.client, sum_lifts, EXAMPLE)).status_code for _ in range(5)]
        refused = await call(started.client, sum_lifts, EXAMPLE)
    assert statuses == [200, 200, 200, 429, 429]
    assert refused.json()["type"] == "/problems/too-many-requests"
    assert int(refused.headers["retry-after"]) > 0


async def test_api4_nothing_grows_with_what_strangers_send(tmp_path: Path) -> None:
    """Guessed keys, unknown paths and types of problems leave nothing behind in the service."""
    async with running(tmp_path, (sum_lifts,)) as started:
        gate = sum_lifts_handler(started).resolve_before_request()
        key_cache = gate._key_cache  # type: ignore[union-attr]
        for i in range(50):
            await started.client.get(f"/{i}", headers={"authorization": f"Bearer guess{i}.secret"})
            await started.client.post(sum_lifts.path, headers={"authorization": f"Bearer guess{i}.secret"})
        assert not key_cache._entries
        assert not key_cache._strangers_lane._waiting


def sum_lifts_handler(started: Running) -> HTTPRouteHandler:
    found = [h for r in started.app.routes for h in r.route_handlers if OPERATION in h.opt]  # type: ignore[union-attr]
    (handler,) = found
    return handler


def test_api4_limits_are_on_by_default() -> None:
    """Body, time, lines and requests. The schemas' own bounds are held by the rules for contracts."""
    settings = Settings()
    assert settings.body_limit_bytes <= 1_048_576
    assert 0 < settings.body_seconds <= 30
    assert 0 < settings.computation_seconds <= 60
    assert settings.batch_lines
    assert settings.rate_limit_requests


# API5: Broken Function Level Authorization.


@pytest.mark.parametrize("held", list(Scope))
async def test_api5_a_key_does_what_its_scope_says(service: Running, held: Scope) -> None:
    _, token = await service.store.create_key("Gym", [held])
    for operation, example in requests():
        content, headers = content_of(operation, example)
        if operation.in_thread and operation.scope is held:
            content = b"{}"  # the gate is what matters, not the long computation
        answer = await service.client.request(
            operation.method, operation.path, content=content, headers=headers | {"authorization": f"Bearer {token}"}
        )
        is_admitted = operation.scope is held
        assert (answer.status_code == 403) is not is_admitted, operation.operation_id
        if not is_admitted:
            assert answer.json()["type"] == "/problems/scope-missing"


def test_api5_nothing_is_administered_over_http(service: Running) -> None:
    """Keys, quotas and migrations are for the command line, on the operator's own machines."""
    methods = {
        method
        for route in service.app.routes
        for handler in route.route_handlers  # type: ignore[union-attr]
        for method in handler.http_methods
    }
    assert methods == {"GET", "HEAD", "OPTIONS", "POST"}
    assert {o.scope for o in OPERATIONS} == set(Scope)
    for path in (SERVICE / "http").rglob("*.py"):
        text = path.read_text(encoding="utf-8")
        assert not re.search(r"\.(create_key|revoke_key|rotate_key|list_keys|set_\w+_quota)\(", text), path.name


# API6: Unrestricted Access to Sensitive Business Flows. Nothing is bought, booked, posted or kept: automation is what
# the service is for. What is left is use of the operator's machines, which API4 limits and the usage ledger counts.


async def test_api6_calls_change_nothing_but_the_count_of_calls(tmp_path: Path) -> None:
    quick = [(operation, example) for operation, example in requests() if not operation.in_thread]

    def content(path: Path) -> dict[str, list[tuple[Any, ...]]]:
        with sqlite3.connect(path) as connection:
            return {t.name: sorted(connection.execute(f"SELECT * FROM {t.name}")) for t in Table.metadata.sorted_tables}

    database = tmp_path / "operator.sqlite3"
    async with running(tmp_path, [operation for operation, _ in quick]) as started:
        before = content(database)
        for operation, example in quick:
            assert (await call(started.client, operation, example)).status_code == 200
    after = content(database)
    changed = {name for name in after if after[name] != before[name]}
    assert changed == {"usage", "usage_writers"}
    assert all(value is None or isinstance(value, int) or len(value) < 60 for row in after["usage"] for value in row)


# API7: Server Side Request Forgery. The service fetches nothing, least of all what a caller names.


def test_api7_no_request_holds_an_address() -> None:
    text = json.dumps([SCHEMAS[n] for o in OPERATIONS if o.body_type for n in reach(o.body_type.__name__)])
    assert not re.search(r'"format": "(uri|url|hostname|ipv4|ipv6|iri)', text)
    assert not re.search(r'"\w*(url|uri|host|webhook|callback)\w*": \{', text)


async def test_api7_no_connection_is_opened_by_a_request(service: Running, monkeypatch: pytest.MonkeyPatch) -> None:
    async def once() -> None:
        for operation, example in requests():
            assert (await call(service.client, operation, example)).status_code == 200

    def refuse(*_: Any) -> None:
        raise AssertionError("a request opened a connection")

    await once()  # whatever is made on first use is made
    for name in ("connect", "connect_ex", "sendto"):
        monkeypatch.setattr(socket.socket, name, refuse)
    monkeypatch.setattr(socket, "getaddrinfo", refuse)
    await once()


# API8: Security Misconfiguration. The headers of every response are held by the tests of headers.


def test_api8_nothing_is_open_by_default(service: Running) -> None:
    settings = Settings()
    assert settings.allowed_origins == ()
    assert (settings.metrics, settings.tracing) == (False, False)
    app = create_app(settings, ())
    assert app.debug is False
    assert app.cors_config is None
    assert app.pdb_on_exception is not True


async def test_api8_a_fault_tells_nothing_of_the_inside(lifting: Running) -> None:
    answer = await lifting.client.post(sum_lifts.path, json=to_builtins(EXAMPLE) | {"note": "boom"})
    assert answer.status_code == 500
    assert not re.search(r"Traceback|\.py|[a-z]Error\b|line \d|litestar|uvicorn|python", answer.text)
    assert not {"server", "x-powered-by", "via"} & set(answer.headers)


@pytest.mark.parametrize("method", ["TRACE", "TRACK", "CONNECT", "PUT", "DELETE", "PATCH", "PROPFIND"])
async def test_api8_no_other_method_does_anything(lifting: Running, method: str) -> None:
    answer = await lifting.client.request(method, sum_lifts.path, headers={"x-http-method-override": "POST"})
    assert answer.status_code == 405


def test_api8_the_linter_for_security_is_on() -> None:
    """Ruff's `S` rules are bandit's; what is exempt is named in the configuration or on its line."""
    lint = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["ruff"]["lint"]
    assert "S" in lint["select"]
    assert {rule for rule in lint["ignore"] if rule.startswith("S")} == {"S101"}
    exempt = [
        (path.relative_to(SERVICE).as_posix(), rule)
        for path in SERVICE.rglob("*.py")
        for rule in re.findall(r"# noqa: (S\d+)", path.read_text(encoding="utf-8"))
    ]
    # The process that draws is this interpreter with a file of the service; nothing of a request is in its command.
    assert set(exempt) <= {("cli/serving.py", "S104"), ("http/rendering/pictures/renderer.py", "S603")}


# API9: Improper Inventory Management.

OWN_PATHS = {
    "/",
    "/guides",
    "/guides/{name:str}",
    "/science",
    "/science/forecast_against_measured.svg",
    "/science/validation",
    "/health/live",
    "/health/ready",
    "/openapi.json",
    "/problems/{slug:path}",
    "/reference",
    "/site/reading.css",
    "/site/site.css",
}


async def test_api9_every_route_is_known(service: Running) -> None:
    routed = {route.path: route.route_handlers for route in service.app.routes}  # type: ignore[union-attr]
    assert set(routed) == OWN_PATHS | set(DOCUMENT["paths"])
    public = {path for path, handlers in routed.items() if any(h.opt.get(PUBLIC) for h in handlers)}
    assert public == OWN_PATHS
    assert (await service.client.get("/openapi.json")).json() == DOCUMENT


def test_api9_what_is_old_says_when_it_ends() -> None:
    assert all(path.startswith("/v1/") for path in DOCUMENT["paths"])
    for operation in OPERATIONS:
        assert operation.deprecation is None or operation.deprecation.sunset, operation.operation_id


# API10: Unsafe Consumption of APIs. The service consumes none; its database and the store of limits are the operator's.


def test_api10_no_other_service_is_called() -> None:
    clients = {
        "httpx",
        "requests",
        "aiohttp",
        "urllib3",
        "http.client",
        "urllib.request",
        "ftplib",
        "smtplib",
        "xmlrpc",
        "grpc",
    }
    found = set()
    for path in SERVICE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [a.name for a in node.names] if isinstance(node, ast.Import) else []
            if isinstance(node, ast.ImportFrom) and not node.level:
                names = [node.module or "", *(f"{node.module}.{alias.name}" for alias in node.names)]
            found |= {name for name in names if name in clients or name.split(".")[0] in clients}
    assert not found


def test_every_row_is_in_the_contributors_table_and_has_a_test() -> None:
    table = (ROOT / "service" / "security.md").read_text(encoding="utf-8")
    tests = [name for name in vars(sys.modules[__name__]) if name.startswith("test_api")]
    for row in ROWS:
        assert f"| {row} " in table
        assert any(name.startswith(f"test_{row.partition(':')[0].lower()}_") for name in tests)


def reach(name: str) -> set[str]:
    """A schema of the contract and all below it."""
    found: set[str] = set()
    waiting = {name}
    while waiting:
        name = waiting.pop()
        found.add(name)
        waiting |= set(re.findall(r"#/components/schemas/(\w+)", json.dumps(SCHEMAS[name]))) - found
    return found
