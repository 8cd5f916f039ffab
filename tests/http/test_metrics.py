"""Prometheus metrics: right, few, and for the operator alone."""

import os
import subprocess
import sys
from collections.abc import AsyncIterator
from pathlib import Path

import pytest
from in_process import Running, running
from lifting_form import EXAMPLE, sum_lifts
from msgspec import to_builtins
from prometheus_client.parser import text_string_to_metric_families

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
async def measured(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    async with running(tmp_path_factory.mktemp("measured"), (sum_lifts,), metrics=True, metrics_public=True) as started:
        yield started


async def samples(service: Running, **headers: str) -> dict[tuple[str, frozenset[tuple[str, str]]], float]:
    """Every sample by name and labels, read by the reference parser."""
    answer = await service.client.get("/metrics", headers={"authorization": "", **headers})
    assert answer.status_code == 200
    assert answer.headers["content-type"].startswith("text/plain; version=")
    families = text_string_to_metric_families(answer.text)
    return {(s.name, frozenset(s.labels.items())): s.value for family in families for s in family.samples}


def labels(**values: str) -> frozenset[tuple[str, str]]:
    return frozenset(values.items())


async def test_requests_are_counted_by_operation_method_and_status(measured: Running) -> None:
    before = await samples(measured)
    for _ in range(3):
        await measured.client.post(sum_lifts.path, json=to_builtins(EXAMPLE))
    await measured.client.post(sum_lifts.path, json={})
    after = await samples(measured)
    good = labels(operation="sum_lifts", method="POST", status="200")
    bad = labels(operation="sum_lifts", method="POST", status="400")

    def rise(name: str, which: frozenset[tuple[str, str]]) -> float:
        return after[name, which] - before.get((name, which), 0.0)

    assert rise("steelyard_request_seconds_count", good) == 3
    assert rise("steelyard_request_seconds_count", bad) == 1
    assert rise("steelyard_request_seconds_sum", good) > 0
    assert rise("steelyard_request_seconds_bucket", good | labels(le="+Inf")) == 3
    assert rise("steelyard_problems_total", labels(operation="sum_lifts", code="SCHEMA_VIOLATION")) == 1
    assert rise("steelyard_answer_bytes_total", labels(operation="sum_lifts")) > 3 * len('{"total_kg":500.0}')
    assert after["steelyard_limits_degraded", frozenset()] == 0


async def test_callers_cannot_make_new_series(measured: Running) -> None:
    """Series are memory: whatever a caller invents falls into one that is there."""

    async def invent() -> None:
        for i in range(20):
            await measured.client.get(f"/nothing/{i}?x={i}", headers={"x-request-id": str(i)})
            await measured.client.request(f"BREW{i}", sum_lifts.path)
            await measured.client.get(f"/problems/{i}", headers={"authorization": f"Bearer a{i}.b"})

    await invent()
    names = set(await samples(measured))
    await invent()
    assert set(await samples(measured)) == names


async def test_switched_off_there_is_nothing(service: Running) -> None:
    assert (await service.client.get("/metrics")).status_code == 404


async def test_a_token_keeps_others_out(tmp_path: Path) -> None:
    async with running(tmp_path, (sum_lifts,), metrics=True, metrics_token="for the scraper") as started:
        for given in ("", "Bearer", "Bearer for the scrape", "Bearer for the scraper ", f"Bearer {started.token}"):
            answer = await started.client.get("/metrics", headers={"authorization": given})
            assert (answer.status_code, answer.json()["type"]) == (401, "/problems/key-required")
            assert "steelyard_request" not in answer.text
        assert await samples(started, authorization="Bearer for the scraper")


ONE_WORKER = """
import sys
from datetime import UTC, datetime
from steelyard.http.edge.metrics import Metrics
from steelyard.http.wire.observability import RequestRecord
metrics = Metrics()
for _ in range(int(sys.argv[1])):
    metrics(
        RequestRecord(
            time=datetime.now(UTC),
            event="request",
            request_id="x",
            method="GET",
            operation="list_methods",
            status=200,
            duration_ms=1.0,
            answer_bytes=1,
        )
    )
print(metrics.text().decode())
"""


def test_workers_that_share_a_port_answer_for_each_other(tmp_path: Path) -> None:
    environment = os.environ | {"PYTHONPATH": str(ROOT / "service"), "PROMETHEUS_MULTIPROC_DIR": str(tmp_path)}
    for count in ("2", "3"):
        run = subprocess.run(
            [sys.executable, "-c", ONE_WORKER, count], env=environment, capture_output=True, text=True, check=True
        )
    count = 'steelyard_request_seconds_count{method="GET",operation="list_methods",status="200"} 5.0'
    assert count in run.stdout.splitlines()


ONE_GAUGE = """
import sys
from steelyard.http.edge.metrics import Metrics
from steelyard.http.wire.observability import GaugeSource
number = float(sys.argv[1])
metrics = Metrics({
    "waiting": GaugeSource("Added up.", lambda: number),
    "longest": GaugeSource("The longest.", lambda: number, "livemax"),
})
print(metrics.text().decode())
if number == 3:
    from steelyard.cli.workers import _forget_gauges
    import os
    _forget_gauges(os.getpid())
"""


def test_numbers_of_workers_are_put_together_while_they_live(tmp_path: Path) -> None:
    environment = os.environ | {"PYTHONPATH": str(ROOT / "service"), "PROMETHEUS_MULTIPROC_DIR": str(tmp_path)}
    told = []
    for number in ("2", "3", "4"):
        command = [sys.executable, "-c", ONE_GAUGE, number]
        told.append(subprocess.run(command, env=environment, capture_output=True, text=True, check=True).stdout)
    assert "steelyard_waiting 5.0" in told[1]
    assert "steelyard_longest 3.0" in told[1]
    assert "steelyard_waiting 6.0" in told[2], "the second has ended"
    assert "steelyard_longest 4.0" in told[2]


def test_without_metrics_their_library_is_not_even_loaded() -> None:
    check = (
        "import sys, steelyard.http.app; sys.exit('prometheus_client' in sys.modules or 'opentelemetry' in sys.modules)"
    )
    run = subprocess.run([sys.executable, "-c", check], env=os.environ | {"PYTHONPATH": str(ROOT / "service")})
    assert run.returncode == 0
