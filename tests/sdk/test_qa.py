"""The QA kit: passes a good service, and goes red for each way in which a service can be broken. Loopback only."""

import contextlib
import json
import threading
from collections.abc import Callable, Iterator
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import httpx
import pytest
from examples.local_service import LocalService
from steelyard_client.qa import command, fuzzing
from steelyard_client.qa.command import FAILED, PASSED, UNUSABLE, main
from steelyard_client.qa.deployment import Broken, Deployment, OutOfTime, read_operations
from steelyard_client.qa.fuzzing import fuzz
from steelyard_client.qa.properties import CHECKS, Run

# Enough of the contract to be quick.
KEPT = {
    *("estimate_maintenance", "forecast_intake", "list_messages", "list_methods", "plan_phases"),
    *("draw_forecast", "read_trend", "run_batch"),
}
EXAMPLES = 2

Change = Callable[[httpx.Request, httpx.Response], httpx.Response | None]


def untouched(request: httpx.Request, answer: httpx.Response) -> None:
    """The service as it is."""


@contextlib.contextmanager
def in_front(live: LocalService, change: Change, operations: set[str] = KEPT) -> Iterator[str]:
    """A server that hands on to the live service and changes its answers; its contract is a part of the live one."""
    upstream = httpx.Client(base_url=live.url, transport=httpx.HTTPTransport(), timeout=30)

    class Handler(BaseHTTPRequestHandler):
        protocol_version = "HTTP/1.1"
        wbufsize = -1  # an answer in one piece, which is not held back

        def hand_on(self) -> None:
            content = self.rfile.read(int(self.headers.get("Content-Length", 0)))
            headers = {k: v for k, v in self.headers.items() if k.lower() not in {"host", "accept-encoding"}}
            headers["accept-encoding"] = "identity"
            try:
                answer = upstream.request(self.command, self.path, content=content, headers=headers)
            except httpx.LocalProtocolError:  # a header that httpx does not send on
                answer = httpx.Response(400, request=httpx.Request(self.command, f"{live.url}{self.path}"))
            if self.path == "/openapi.json":
                document = answer.json()
                paths = {
                    path: kept
                    for path, methods in document["paths"].items()
                    if (kept := {m: one for m, one in methods.items() if one["operationId"] in operations})
                }
                answer = httpx.Response(200, json={**document, "paths": paths})
            else:
                answer = change(answer.request, answer) or answer
            self.send_response(answer.status_code)
            for name, value in answer.headers.items():
                if name not in {"content-length", "transfer-encoding", "connection", "date", "server"}:
                    self.send_header(name, value)
            self.send_header("Content-Length", str(len(answer.content)))
            self.end_headers()
            if self.command != "HEAD":
                self.wfile.write(answer.content)

        def log_message(self, format: str, *args: Any) -> None:
            pass

    for method in ("GET", "POST", "PUT", "HEAD", "OPTIONS", "PATCH", "DELETE", "TRACE", "QUERY"):
        setattr(Handler, f"do_{method}", Handler.hand_on)
    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{server.server_port}"
    finally:
        server.shutdown()
        server.server_close()
        upstream.close()


def changed(answer: httpx.Response, status: int | None = None, **members: Any) -> httpx.Response:
    """The answer with other members of its document."""
    headers = {
        name: answer.headers[name] for name in ("content-type", "steelyard-fingerprint") if name in answer.headers
    }
    document = {**answer.json(), **members}
    return httpx.Response(status or answer.status_code, headers=headers, content=json.dumps(document))


def is_computed(answer: httpx.Response) -> bool:
    return answer.status_code == 200 and b'"fingerprint"' in answer.content and b'"summary":' not in answer.content


def path_of(request: httpx.Request) -> str:
    return request.url.path


class Stamped:
    """A service that writes a running number into its answers."""

    number = 0

    def __call__(self, request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
        self.number += 1
        return changed(answer, number=self.number) if is_computed(answer) else None


def without_cautions(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    return changed(answer, cautions=[]) if is_computed(answer) else None


def without_methods(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    return changed(answer, methods=[]) if is_computed(answer) else None


def with_an_unknown_method(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    return changed(answer, methods=["astrology"]) if is_computed(answer) else None


def with_an_unknown_code(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    said = [{"code": "NOT_MEDICAL_ADVICE_AT_ALL", "params": {}, "text": "?"}]
    return changed(answer, cautions=said) if is_computed(answer) else None


def with_intervals_upside_down(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    if not is_computed(answer):
        return None
    return httpx.Response(
        200,
        headers=answer.headers,
        content=answer.content.replace(b'"lower"', b'"_"').replace(b'"upper"', b'"lower"').replace(b'"_"', b'"upper"'),
    )


def with_errors_as_pages(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    if answer.status_code < 400:
        return None
    return httpx.Response(answer.status_code, headers={"Content-Type": "text/html"}, content="<h1>Oops</h1>")


def with_refusals_as_successes(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    return changed(answer, status=200) if answer.status_code == 422 else None


def with_keys_unasked(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    return changed(answer, status=200) if answer.status_code == 401 else None


def with_pictures_for_anyone(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    is_asked = answer.status_code == 401 and path_of(request).endswith("/picture")
    return changed(answer, status=200) if is_asked else None


def without_options(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    return httpx.Response(204) if request.method == "OPTIONS" else None


def with_weight_falling_by_intake(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    """Forecasts mirrored about 100 kg."""
    if path_of(request) != "/v1/forecasts" or not is_computed(answer):
        return None
    document = answer.json()
    for week in document["weeks"]:
        week["at_end"]["weight_kg"]["mean"] = 200 - week["at_end"]["weight_kg"]["mean"]
    return changed(answer, weeks=document["weeks"])


def with_examples_refused(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    return httpx.Response(500, text="no") if path_of(request) == "/v1/trends" and is_computed(answer) else None


def with_lines_out_of_order(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    if path_of(request) != "/v1/batches":
        return None
    *lines, last = answer.content.splitlines(keepends=True)
    return httpx.Response(200, headers=answer.headers, content=b"".join([*reversed(lines), last]))


BROKEN: list[tuple[Change, str]] = [
    (Stamped(), "repeats_are_the_same_bytes"),
    (without_cautions, "cautions_are_present"),
    (without_methods, "methods_are_in_the_catalogue"),
    (with_an_unknown_method, "methods_are_in_the_catalogue"),
    (with_an_unknown_code, "codes_are_in_the_messages"),
    (with_intervals_upside_down, "intervals_are_in_order"),
    (with_errors_as_pages, "errors_are_problem_documents"),
    (with_refusals_as_successes, "no_deficit_without_screening"),
    (with_keys_unasked, "keys_are_asked_for"),
    (with_pictures_for_anyone, "keys_are_asked_for"),
    (without_options, "head_and_options_are_answered"),
    (with_weight_falling_by_intake, "more_intake_never_gives_less_mass"),
    (with_examples_refused, "examples_are_answered"),
    (with_lines_out_of_order, "lines_are_answered_like_single_calls"),
]


@contextlib.contextmanager
def a_run(url: str, key: str, **options: Any) -> Iterator[Run]:
    chosen: dict[str, Any] = {"seconds": 120, "requests_per_second": 1000} | options
    deployment = Deployment(url, key, transport=httpx.HTTPTransport(), **chosen)
    operations = read_operations(deployment.send("GET", "/openapi.json", key=None).json())
    yield Run(deployment, operations, EXAMPLES, seed=1)
    deployment.close()


@pytest.mark.parametrize(("change", "name"), BROKEN, ids=[f"{name}-{i}" for i, (_, name) in enumerate(BROKEN)])
def test_each_fault_is_found_by_its_check(change: Change, name: str, live: LocalService) -> None:
    checks = {check.__name__: check for check in CHECKS}
    with in_front(live, change) as url, a_run(url, live.key) as run, pytest.raises(Broken):
        checks[name](run)


def test_every_check_has_a_fault_that_it_finds() -> None:
    assert {name for _, name in BROKEN} == {check.__name__ for check in CHECKS}


def test_a_good_service_passes_and_is_reported(
    live: LocalService, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    report = tmp_path / "new" / "report.xml"
    options = ["--examples", "1", "--requests-per-second", "500", "--no-fuzzing", "--junit", str(report)]
    with in_front(live, untouched) as url:
        status = main([url, "--key", live.key, *options], httpx.HTTPTransport())
    printed = capsys.readouterr().out
    assert status == PASSED, printed
    (suite,) = ElementTree.parse(report).getroot().iter("testsuite")
    assert suite.attrib["tests"] == str(len(CHECKS))
    assert suite.attrib["failures"] == suite.attrib["skipped"] == "0"
    assert [case.attrib["name"] for case in suite] == [check.__name__ for check in CHECKS]


FUZZED = {"list_messages", "list_methods", "run_batch"}  # lines cannot be fuzzed


def test_a_good_service_keeps_its_contract(live: LocalService, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("NO_PROXY", "127.0.0.1")
    with a_run(live.url, live.key) as run:
        found = fuzz(run.deployment, seconds=100, examples=2, seed=1, directory=tmp_path, method="GET")  # to be quick
    assert found.failure is None
    assert not found.was_stopped
    assert found.report is not None
    cases = {case.attrib["name"] for case in found.report.iter("testcase")}
    assert cases == {"GET /v1/messages", "GET /v1/methods"}


def test_what_takes_too_long_is_stopped_and_still_reported(
    live: LocalService, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NO_PROXY", "127.0.0.1")
    monkeypatch.setattr(fuzzing, "_GRACE_SECONDS", 5.0)  # on a busy machine it is interrupted before it can hear of it
    operations = {"estimate_maintenance"}  # of which there is no end, and which it reads quickly
    with in_front(live, untouched, operations) as url, a_run(url, live.key) as run:
        found = fuzz(run.deployment, seconds=4, examples=100_000, seed=1, directory=tmp_path)
    assert found.was_stopped
    assert found.failure is None


def without_a_required_field(request: httpx.Request, answer: httpx.Response) -> httpx.Response | None:
    if path_of(request) != "/v1/methods" or answer.status_code != 200 or not answer.content:
        return None
    document = answer.json()
    del document["contract_version"]
    return httpx.Response(200, headers=answer.headers, content=json.dumps(document))


def test_what_schemathesis_finds_is_reported(
    live: LocalService, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """No property asks for this field, but the contract does; other checks lack their operations here."""
    monkeypatch.setenv("NO_PROXY", "127.0.0.1")
    report = tmp_path / "report.xml"
    options = ["--examples", "1", "--requests-per-second", "500", "--junit", str(report)]
    with in_front(live, without_a_required_field, FUZZED) as url:
        status = main([url, "--key", live.key, *options])
    printed = capsys.readouterr().out
    assert status == FAILED
    assert "FAILED   schemathesis" in printed
    suites = {suite.attrib["name"]: suite for suite in ElementTree.parse(report).getroot().iter("testsuite")}
    assert suites["contract"].attrib["failures"] == "1"
    failures = [failure.text or "" for failure in suites["schemathesis"].iter("failure")]
    assert [text for text in failures if "contract_version" in text]
    assert live.key not in printed
    assert live.key not in report.read_text(encoding="utf-8")


def answering(change: Callable[[httpx.Request], httpx.Response]) -> httpx.MockTransport:
    return httpx.MockTransport(change)


@pytest.mark.parametrize(
    "answer",
    [
        httpx.Response(404),
        httpx.Response(200, text="<html>"),
        httpx.Response(200, json=[]),
        httpx.Response(200, json={}),
    ],
    ids=["missing", "no JSON", "no object", "no contract"],
)
def test_what_is_no_such_service_cannot_be_tested(answer: httpx.Response, capsys: pytest.CaptureFixture[str]) -> None:
    transport = answering(lambda request: httpx.Response(answer.status_code, content=answer.content))
    assert main(["http://service.test", "--key", "a.b", "--no-fuzzing"], transport) == UNUSABLE
    assert "openapi.json cannot be read" in capsys.readouterr().err


def test_a_service_that_is_not_there(capsys: pytest.CaptureFixture[str]) -> None:
    def refuse(request: httpx.Request) -> httpx.Response:
        raise httpx.ConnectError("refused")

    assert main(["http://service.test", "--key", "a.b", "--no-fuzzing"], answering(refuse)) == UNUSABLE
    assert "nothing came back" in capsys.readouterr().err


@pytest.mark.parametrize("missing", [["--key", "a.b"], ["http://service.test"]], ids=["address", "key"])
def test_address_and_key_are_needed(missing: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("STEELYARD_URL", raising=False)
    monkeypatch.delenv("STEELYARD_KEY", raising=False)
    assert main([*missing, "--no-fuzzing"]) == UNUSABLE


@pytest.mark.parametrize("wrong", [["--seconds", "0"], ["--examples", "0"], ["--seconds", "inf"]])
def test_limits_that_make_no_sense_are_refused(wrong: list[str]) -> None:
    with pytest.raises(SystemExit):
        main(["http://service.test", "--key", "a.b", *wrong])


def test_a_busy_service_is_waited_for_and_its_rate_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    slept: list[float] = []
    answers = [httpx.Response(429, headers={"Retry-After": "3"}), httpx.Response(503), httpx.Response(200)]
    limit = {"RateLimit-Policy": '"requests";q=120;w=60'}

    class Clock:
        now = 1000.0

        def monotonic(self) -> float:
            return self.now

        def sleep(self, seconds: float) -> None:
            slept.append(seconds)
            self.now += seconds

    monkeypatch.setattr("steelyard_client.qa.deployment.time", Clock())
    transport = answering(lambda request: answers.pop(0) if len(answers) > 1 else httpx.Response(200, headers=limit))
    deployment = Deployment("http://service.test", "a.b", seconds=60, requests_per_second=10, transport=transport)
    assert deployment.send("GET", "/").status_code == 200
    assert slept == pytest.approx([0, 3, 0, 1, 0])
    assert deployment.requests_per_second == 1.5
    deployment.send("GET", "/")
    deployment.send("GET", "/")
    assert slept[-1] == pytest.approx(1 / 1.5)
    deployment.close()


def test_the_time_given_is_kept() -> None:
    busy = answering(lambda request: httpx.Response(429, headers={"Retry-After": "3600"}))
    deployment = Deployment("http://service.test", "a.b", seconds=5, requests_per_second=10, transport=busy)
    with pytest.raises(OutOfTime):
        deployment.send("GET", "/")
    deployment.close()


def test_fuzzing_that_was_left_out_is_no_success(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the properties used up the time, what was asked for was not done."""
    monkeypatch.setattr(command, "CHECKS", [])
    monkeypatch.setattr(command, "_LEAST_FUZZING_SECONDS", 3600.0)
    document = {"paths": {}}
    options = ["http://service.test", "--key", "a.b", "--seconds", "5"]
    assert main(options, answering(lambda request: httpx.Response(200, json=document))) == FAILED
    assert "not run: the time was used up" in capsys.readouterr().out


def test_a_run_in_which_nothing_could_be_checked_is_no_success(capsys: pytest.CaptureFixture[str]) -> None:
    def answer(request: httpx.Request) -> httpx.Response:
        if request.url.path == "/openapi.json":
            operation = {"operationId": "estimate_maintenance"}
            return httpx.Response(200, json={"paths": {"/v1/maintenance": {"post": operation}}})
        return httpx.Response(429, headers={"Retry-After": "3600"})

    options = ["http://service.test", "--key", "a.b", "--no-fuzzing", "--seconds", "5"]
    assert main(options, answering(answer)) == FAILED
    assert "the time was used up" in capsys.readouterr().out
