"""The batch over HTTP: members a second and the server's peak memory by the length of the batch.

``python -m tests.bench.batch_bench [lines ...]`` (1,000, 10,000 and 100,000 by default; the last takes minutes) sends
a gym's nightly job: one line a member, each with four weeks of log. A fresh server for each length, so that its peak
resident memory is that batch's; lines are made while they are sent and dropped as they are answered.
"""

import socket
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import AbstractContextManager
from pathlib import Path
from typing import NamedTuple

import msgspec

from . import bodies
from .servers import SERVED_BY, Running, commands, own_core, serving

LENGTHS = (1_000, 10_000, 100_000)
EACH_OPERATION_LINES = 300
_LINES_A_CHUNK = 50
_PATIENCE_SECONDS = 120.0
# From the requirements: memory at 100,000 lines against that at 10,000.
MEMORY_RATIO_AT_MOST = 1.1


class Measured(NamedTuple):
    """One batch."""

    lines: int
    seconds: float
    peak_mib: float  # resident, of the worker since its start
    idle_mib: float  # the same before the batch
    answer_mib: float

    @property
    def per_second(self) -> float:
        """Lines answered a second."""
        return self.lines / self.seconds


def nightly() -> list[bytes]:
    """What members' lines hold after the reference: maintenance from four weeks of log, of bodies that differ."""
    log = bodies.trend(28)
    weights = [b'"weight_kg":%.1f,"body_fat"' % (84.0 + 0.1 * i) for i in range(20)]
    assert log.count(b'"weight_kg":84.6,"body_fat"') == 1
    return [
        single("estimate_maintenance", log.replace(b'"weight_kg":84.6,"body_fat"', weight))[0] for weight in weights
    ]


def single(operation: str, body: bytes) -> list[bytes]:
    """The same for any operation and one body."""
    return [b'","operation":"%b","body":%b}\n' % (operation.encode(), body)]


def peak_mib(worker: int) -> float:
    """The most memory that a process has had resident."""
    for line in Path(f"/proc/{worker}/status").read_text().splitlines():
        if line.startswith("VmHWM:"):
            return float(line.split()[1]) / 1024.0
    raise RuntimeError("this system does not tell a process's peak memory")


def send_batch(server: Running, lines: int, rest: list[bytes]) -> Measured:
    """Send a batch and take its answers at the same time. Raises where a line is not answered with a result."""
    idle = peak_mib(server.worker)
    started = time.perf_counter()
    with socket.create_connection(("127.0.0.1", server.port), timeout=_PATIENCE_SECONDS) as connection:
        sending = threading.Thread(target=_send, args=(connection, server.token, lines, rest), daemon=True)
        sending.start()
        length, last = _receive(connection)
        sending.join()
    seconds = time.perf_counter() - started
    counts = msgspec.json.decode(last)["summary"]
    if counts != {
        "lines": lines,
        "results": lines,
        "problems": 0,
        "problems_by_status": {},
        "is_complete": True,
    }:
        raise RuntimeError(f"not every line was answered: {counts}")
    return Measured(lines, seconds, peak_mib(server.worker), idle, length / 2**20)


def _send(connection: socket.socket, token: str, lines: int, rest: list[bytes]) -> None:
    head = (
        "POST /v1/batches HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/x-ndjson\r\n"
        f"Authorization: Bearer {token}\r\nTransfer-Encoding: chunked\r\n\r\n"
    )
    connection.sendall(head.encode())
    for first in range(0, lines, _LINES_A_CHUNK):
        numbers = range(first, min(lines, first + _LINES_A_CHUNK))
        content = b"".join(b'{"reference":"member-%d%b' % (number, rest[number % len(rest)]) for number in numbers)
        connection.sendall(b"%x\r\n%b\r\n" % (len(content), content))
    connection.sendall(b"0\r\n\r\n")


def _receive(connection: socket.socket) -> tuple[int, bytes]:
    """The length of the answer and its last line. The chunks of the answer are parsed as they come."""
    length, tail = 0, b""
    for piece in _chunks(connection):
        length += len(piece)
        tail = (tail + piece)[-4096:]
    return length, tail.splitlines()[-1]


def _chunks(connection: socket.socket) -> Iterator[bytes]:
    stream = connection.makefile("rb")
    status = stream.readline()
    if b" 200 " not in status:
        raise RuntimeError(f"answered {status!r}")
    is_chunked = False
    while (line := stream.readline()) not in (b"\r\n", b""):
        is_chunked = is_chunked or line.lower().startswith(b"transfer-encoding: chunked")
    if not is_chunked:
        raise RuntimeError("the answer is not streamed")
    while size := int(stream.readline().split(b";")[0], 16):
        yield stream.read(size)
        stream.readline()
    stream.readline()


def _serving(directory: str) -> AbstractContextManager[Running]:
    """The server as it is, but that no key's rate holds a batch back and no line is written per request."""
    return serving(commands()[SERVED_BY], Path(directory), rate_limit_requests="0", log_requests="false")


def by_length(lengths: tuple[int, ...]) -> list[Measured]:
    """One batch of each length, each to a fresh server."""
    rest, found = nightly(), []
    for lines in lengths:
        with tempfile.TemporaryDirectory() as directory, _serving(directory) as server:
            send_batch(server, 20, rest)  # what the first request loads belongs to no length
            found.append(send_batch(server, lines, rest))
    return found


def by_operation(lines: int) -> dict[str, float]:
    """Lines a second of each operation."""
    asked = {
        "estimate_maintenance, profile alone": single("estimate_maintenance", bodies.maintenance()),
        "estimate_maintenance, 28 days": nightly(),
        "read_trend, 90 days": single("read_trend", bodies.trend()),
        "plan_phases, 12 weeks": single("plan_phases", bodies.plan()),
        "forecast_intake, 26 weeks": single("forecast_intake", bodies.forecast()),
        "review_phase, 35 days": single("review_phase", review()),
        "estimate_body_composition": single("estimate_body_composition", composition()),
    }
    with tempfile.TemporaryDirectory() as directory, _serving(directory) as server:
        rates = {}
        for what, rest in asked.items():
            send_batch(server, 20, rest)
            rates[what] = send_batch(server, lines, rest).per_second
        return rates


def review() -> bytes:
    """A review midway through a mini-cut, as in the contract's example."""
    from steelyard.http.endpoints.examples.reviews import REVIEW_EXAMPLES

    return msgspec.json.encode(REVIEW_EXAMPLES["midway"])


def composition() -> bytes:
    """Body composition, as in the contract's example."""
    from steelyard.http.endpoints.examples.examples import BODY_COMPOSITION_EXAMPLES

    return msgspec.json.encode(BODY_COMPOSITION_EXAMPLES["skinfolds_girths_and_readings"])


def main(arguments: list[str]) -> None:
    """Measure and print."""
    lengths = tuple(int(text) for text in arguments) or LENGTHS
    with own_core():
        _measure(lengths)


def _measure(lengths: tuple[int, ...]) -> None:
    print(f"{'lines':>8}  {'seconds':>8}  {'members/s':>9}  {'peak MiB':>8}  {'before':>8}  {'answer MiB':>10}")
    found = by_length(lengths)
    for m in found:
        row = f"{m.lines:>8}  {m.seconds:>8.1f}  {m.per_second:>9.0f}  {m.peak_mib:>8.1f}  {m.idle_mib:>8.1f}"
        print(f"{row}  {m.answer_mib:>10.1f}")
    peaks = {m.lines: m.peak_mib for m in found}
    if {10_000, 100_000} <= peaks.keys():
        ratio = peaks[100_000] / peaks[10_000]
        print(f"memory at 100,000 lines over that at 10,000: {ratio:.3f} (at most {MEMORY_RATIO_AT_MOST})")
    for what, rate in by_operation(EACH_OPERATION_LINES).items():
        print(f"{what:<38} {rate:>7.0f} lines/s")


if __name__ == "__main__":
    main(sys.argv[1:])
