"""How a service ends: with its parent, with its terminal, and in the middle of a batch."""

import asyncio
import contextlib
import json
import os
import re
import signal
import socket
import time
from enum import Enum

from .scenarios import Row, row_of
from .served import BODY, HANG_SECONDS, headers, served

_PATH = "/v1/batches"


class Gone(Enum):
    """What becomes of the parent of the workers."""

    KILLED = signal.SIGKILL
    HUNG_UP = signal.SIGHUP  # its terminal was closed


async def parent_gone(store_url: str, how: Gone) -> Row:
    """The parent of two workers is gone; a request is under way."""
    async with served(store_url, workers=2) as service:
        before = service.workers()
        answered = (await service.ask()).status_code
        os.kill(service.process.pid, how.value)
        service.process.wait()
        gone_at = time.monotonic()
        while (alive := {pid for pid in before if _is_alive(pid)}) and time.monotonic() - gone_at < HANG_SECONDS:
            await asyncio.sleep(0.1)
        seconds = time.monotonic() - gone_at
        is_free = _is_free(service.port)
        counted = await service.ledger()
    return row_of(
        "The parent of the workers is " + ("killed" if how is Gone.KILLED else "told that its terminal is gone"),
        "The workers end as on SIGTERM, all use is written, and nobody holds the port.",
        f"Of two workers {len(alive)} were left after {seconds:.1f} s; the port is {'free' if is_free else 'taken'}; "
        f"{counted} of 1 counted.",
        {"no orphan": not alive, "the port is free": is_free, "all use is written": counted == 1 and answered == 200},
    )


def _is_alive(pid: int) -> bool:
    try:
        with open(f"/proc/{pid}/stat") as stat:
            return stat.read().rpartition(")")[2].split()[0] != "Z"
    except OSError:
        return False


def _is_free(port: int) -> bool:
    with socket.socket() as one, contextlib.suppress(OSError):
        one.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        one.bind(("127.0.0.1", port))
        return True
    return False


async def told_to_stop_with_a_batch(store_url: str, *, lines: int = 50) -> Row:
    """SIGTERM while a batch is half sent."""
    async with served(store_url, drain_seconds=10) as service:
        reader, writer = await asyncio.open_connection("127.0.0.1", service.port)
        fields = headers(service.token) | {"Content-Type": "application/x-ndjson", "Transfer-Encoding": "chunked"}
        head = "".join(f"{name}: {value}\r\n" for name, value in {"Host": "127.0.0.1", **fields}.items())
        writer.write(f"POST {_PATH} HTTP/1.1\r\n{head}\r\n".encode())
        for number in range(lines):
            line = {"reference": str(number), "operation": "estimate_maintenance", "body": json.loads(BODY)}
            sent = json.dumps(line).encode() + b"\n"
            writer.write(b"%x\r\n%b\r\n" % (len(sent), sent))
        await writer.drain()
        told = b""
        async with asyncio.timeout(HANG_SECONDS):
            while told.count(b'"reference"') < lines:
                told += await reader.read(65_536)
            started = time.monotonic()
            service.terminate()
            told += await reader.read()
        seconds = time.monotonic() - started
        exit_code = await service.ended()
        counted = await service.ledger()
        log = service.log()
        writer.close()
    answers = [json.loads(line) for line in told.replace(b"\r\n", b"\n").split(b"\n") if line.startswith(b"{")]
    last, summary = answers[-2], answers[-1]["summary"]
    return row_of(
        f"SIGTERM in the middle of a batch, {lines} lines of which were sent",
        "The batch ends at once with the line from which to go on, and its summary.",
        f"{summary['results']} lines answered; then line {last['line']} with `{last['problem']['type']}`, and a "
        f"summary that is {'complete' if summary['is_complete'] else 'not complete'}, within {seconds:.1f} s; exit "
        f"code {exit_code}.",
        {
            "all that came is answered": summary["results"] == lines,
            "it says where to go on": (last["line"], last["problem"]["type"])
            == (lines + 1, "/problems/service-ending"),
            "the summary says that it is cut off": summary["is_complete"] is False,
            "the stream ends well": told.endswith(b"0\r\n\r\n"),
            "clean end": exit_code == 0 and counted == 1,
            "no fault in the log": not re.search("Traceback|Error|error", log),
        },
    )
