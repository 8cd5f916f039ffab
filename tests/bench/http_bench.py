"""The service over HTTP: each operation's throughput as a share of an empty keyed request's; the choice of server."""

import contextlib
import statistics
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple

import msgspec

from . import bodies
from .bench_service import EMPTY, EMPTY_BODY
from .load import Load, answer, burst, connect, request_bytes
from .rows import Row, over_rounds
from .servers import SERVED_BY, UNHINDERED, Running, commands, own_core, serving

CONNECTIONS = 16
ROUNDS = 9
BURST_SECONDS = 0.6
SERVER_ROUNDS = 5
# Ours: the 99th percentile may grow this much more than throughput falls and still be in proportion.
PROPORTION = 1.5


class Asked(NamedTuple):
    """A measured operation, and the least share of an empty request's throughput asked of it."""

    what: str
    method: str
    path: str
    body: bytes
    at_least: float | None = None
    stretch: float | None = None


OPERATIONS = (
    Asked("maintenance from a profile", "POST", "/v1/maintenance", bodies.maintenance(), 0.60),
    Asked("trends with 90 days", "POST", "/v1/trends", bodies.trend(), 0.15, 0.30),
    Asked("plan of 12 weeks with intervals", "POST", "/v1/plans", bodies.plan(), 0.12, 0.25),
    Asked("the same with sizes and levers", "POST", "/v1/plans", bodies.plan("sizes", "levers")),
    Asked("forecast of 26 weeks with intervals", "POST", "/v1/forecasts", bodies.forecast()),
)


class Burst(NamedTuple):
    """A burst of load and the server's processor time for each answer [s]."""

    load: Load
    cpu_seconds: float


class Measured(NamedTuple):
    """Rows, the processor time of an empty request [s] and a worker's own memory [MiB]."""

    rows: list[Row]
    empty_cpu_seconds: float
    memory_mib: float


class Client:
    """Connections to one server, and the requests that go through them."""

    def __init__(self, server: Running, connections: int = CONNECTIONS) -> None:
        self._server = server
        self._connections = connect(server.port, connections)

    def close(self) -> None:
        """Close the connections."""
        for connection in self._connections:
            connection.close()

    def burst(self, request: bytes, seconds: float = BURST_SECONDS) -> Burst:
        """One burst of one request."""
        before = self._server.cpu_seconds()
        load = burst(self._connections, request, seconds)
        return Burst(load, (self._server.cpu_seconds() - before) / load.answers)


def measure(directory: Path) -> Measured:
    """Each operation against the two empty ones, in alternating bursts on one server."""
    with (
        serving(commands()[SERVED_BY], directory, **UNHINDERED) as server,
        own_core(),
        contextlib.closing(Client(server)) as client,
    ):
        requests = {one.what: request_bytes(one.method, one.path, server.token, one.body) for one in OPERATIONS}
        _check(server, requests)
        empty = request_bytes("GET", EMPTY, server.token)
        empty_body = request_bytes("POST", EMPTY_BODY, server.token, b"{}")
        for request in (empty, empty_body, *requests.values()):
            client.burst(request, 0.3)  # warm
        references: list[Burst] = []
        others: list[Burst] = []
        found: dict[str, list[tuple[Burst, Burst, Burst]]] = {one.what: [] for one in OPERATIONS}
        for i in range(ROUNDS):
            for one in OPERATIONS if i % 2 else OPERATIONS[::-1]:
                before, before_body = client.burst(empty), client.burst(empty_body)
                seen = client.burst(requests[one.what])
                after_body, after = client.burst(empty_body), client.burst(empty)
                found[one.what].append((seen, _mean(before, after), _mean(before_body, after_body)))
                references += [before, after]
                others += [before_body, after_body]
        rows = [row for one in OPERATIONS for row in _rows(one, found[one.what])]
        cpu = statistics.median(b.cpu_seconds for b in references)
        body_share = over_rounds(
            [b.load.per_second / a.load.per_second for a, b in zip(references, others, strict=True)]
        )
        note = "what the server, the framework and the gate leave of it once a body is handed over"
        rows.append(Row("HTTP", "empty keyed request with a body", body_share, note=note))
        return Measured(rows, cpu, server.resident_mib())


def _rows(one: Asked, rounds: list[tuple[Burst, Burst, Burst]]) -> list[Row]:
    throughput = over_rounds([seen.load.per_second / empty.load.per_second for seen, empty, _ in rounds])
    with_body = over_rounds([seen.load.per_second / empty.load.per_second for seen, _, empty in rounds])
    cpu = over_rounds([empty.cpu_seconds / seen.cpu_seconds for seen, empty, _ in rounds])
    tail = over_rounds(
        [
            (seen.load.p99_seconds / empty.load.p99_seconds) * (seen.load.per_second / empty.load.per_second)
            for seen, empty, _ in rounds
        ]
    )
    return [
        Row("HTTP", f"{one.what}: throughput", throughput, at_least=one.at_least, stretch=one.stretch),
        Row("HTTP", f"{one.what}: against the empty one with a body", with_body),
        Row("HTTP", f"{one.what}: by the server's processor time", cpu),
        Row("HTTP", f"{one.what}: p99, in proportion", tail, at_most=PROPORTION),
    ]


def _mean(a: Burst, b: Burst) -> Burst:
    load = Load(
        (a.load.per_second + b.load.per_second) / 2.0,
        (a.load.p99_seconds + b.load.p99_seconds) / 2.0,
        a.load.answers + b.load.answers,
    )
    return Burst(load, (a.cpu_seconds + b.cpu_seconds) / 2.0)


def _check(server: Running, requests: dict[str, bytes]) -> None:
    """What is measured is what is claimed: weeks and days counted in the answers."""
    counted: dict[str, tuple[int, Callable[[dict[str, Any]], int]]] = {
        "trends with 90 days": (90, lambda a: len(a["days"]["date"])),
        "plan of 12 weeks with intervals": (12, lambda a: sum(len(phase["weeks"]) for phase in a["phases"])),
        "the same with sizes and levers": (2, lambda a: len(a["levers"])),
        "forecast of 26 weeks with intervals": (26, lambda a: len(a["weeks"])),
    }
    for what, request in requests.items():
        decoded = msgspec.json.decode(answer(server.port, request))
        if what in counted:
            expected, count = counted[what]
            if count(decoded) != expected:
                raise RuntimeError(f"{what}: the answer has {count(decoded)}")


def compare_servers(directory: Path) -> list[Row]:
    """The server that is used over each other one installed, all started at once and loaded in turn."""
    with contextlib.ExitStack() as stack:
        stack.enter_context(own_core())
        servers: dict[str, Running] = {}
        for i, (name, command) in enumerate(commands().items()):
            place = directory / str(i)
            place.mkdir()
            servers[name] = stack.enter_context(serving(command, place, **UNHINDERED))
        clients: dict[str, tuple[Client, dict[str, bytes]]] = {}
        for name, server in servers.items():  # once all are there: a connection that stays mute is closed
            client = stack.enter_context(contextlib.closing(Client(server)))
            clients[name] = (
                client,
                {
                    "empty": request_bytes("GET", EMPTY, server.token),
                    OPERATIONS[0].what: request_bytes("POST", OPERATIONS[0].path, server.token, OPERATIONS[0].body),
                },
            )
        found: dict[tuple[str, str], list[Load]] = {}
        for i in range(SERVER_ROUNDS + 1):
            for name, (client, requests) in clients.items():
                for what, request in requests.items():
                    seen = client.burst(request).load
                    if i:  # the first round warms
                        found.setdefault((name, what), []).append(seen)
        rows = []
        for other in clients:
            for what in ("empty", OPERATIONS[0].what):
                if other != SERVED_BY:
                    pairs = list(zip(found[SERVED_BY, what], found[other, what], strict=True))
                    at_least = 1.0 if what == "empty" else None
                    throughput = over_rounds([a.per_second / b.per_second for a, b in pairs])
                    tail = over_rounds([a.p99_seconds / b.p99_seconds for a, b in pairs])
                    label = f"{SERVED_BY} over {other}, {what}"
                    rows += [Row("Server", f"{label}: throughput", throughput, at_least=at_least)]
                    rows += [Row("Server", f"{label}: p99", tail)]
        return rows
