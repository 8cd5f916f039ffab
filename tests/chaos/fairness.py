"""Two keys at once: one asks for what takes long, over many connections; the other sends a batch."""

import asyncio
import json
import time
from collections import Counter

import httpx
import msgspec
from steelyard.http.endpoints.plans import plan_phases
from steelyard.http.endpoints.seasons import optimise_season

from .scenarios import Row, row_of
from .served import HANG_SECONDS, Served, client, headers, served

_MOST_TIMES = 3.0  # what a batch may take beside another key's crowd, in times of what it takes alone
_OPTIMUM = msgspec.json.encode(next(iter(optimise_season.request_examples.values())))


async def batch_beside_optima(store_url: str, *, connections: int = 20, lines: int = 640) -> Row:
    """A batch of one key beside another key's crowd of optima."""
    async with served(store_url, compress_from_bytes=10_000_000) as service:
        await _batch(service, lines // 4)  # loads what there is to load
        alone, _ = await _batch(service, lines)
        told: Counter[int] = Counter()
        stop = asyncio.Event()
        crowd = [asyncio.create_task(_optima(service, stop, told)) for _ in range(connections)]
        try:
            await asyncio.sleep(2.0)
            beside, problems = await _batch(service, lines)
        finally:
            stop.set()
            await asyncio.gather(*crowd)
    return row_of(
        f"A batch of {lines} plans beside {connections} connections of another key on the optimum",
        f"No line fails, and the batch takes at most {_MOST_TIMES:g} times as long as alone; what would wait in vain "
        "gets a 429 with `Retry-After`.",
        f"{beside / alone:.1f} times as long ({alone:.1f} s alone); {problems} lines failed; the other key: "
        f"{dict(told)}.",
        {
            "the batch is not delayed": beside <= _MOST_TIMES * alone,
            "no line fails": problems == 0,
            "the other key is served": told[200] > 0,
            "nothing but 200 and 429": set(told) <= {200, 429},
        },
    )


async def _batch(service: Served, lines: int) -> tuple[float, int]:
    """How long a batch takes, and how many of its lines failed."""
    plan = json.loads(msgspec.json.encode(next(iter(plan_phases.request_examples.values()))))
    body = b"".join(
        json.dumps({"reference": str(number), "operation": "plan_phases", "body": plan}).encode() + b"\n"
        for number in range(lines)
    )
    sent = headers(service.unseen_token) | {"Content-Type": "application/x-ndjson"}
    started = time.monotonic()
    async with httpx.AsyncClient(transport=httpx.AsyncHTTPTransport(verify=False), timeout=600.0) as http:
        answer = await http.post(f"{service.url}/v1/batches", content=body, headers=sent)
    summary = json.loads(answer.text.splitlines()[-1])["summary"]
    assert summary["lines"] == lines, summary
    return time.monotonic() - started, summary["problems"]


async def _optima(service: Served, stop: asyncio.Event, told: Counter[int]) -> None:
    async with client() as http:
        while not stop.is_set():
            answer = await http.post(
                service.url + optimise_season.path,
                content=_OPTIMUM,
                headers=headers(service.token),
                timeout=HANG_SECONDS * 3,
            )
            told[answer.status_code] += 1
            if answer.status_code == 429:
                await asyncio.sleep(min(float(answer.headers["retry-after"]), 1.0))
