"""When both clients try again, how long they wait, and what they leave open."""

import asyncio
import json
from collections.abc import AsyncIterator, Callable, Iterator
from datetime import UTC, datetime, timedelta
from email.utils import format_datetime
from functools import partial
from time import sleep
from typing import Any

import httpx
import pytest
from hypothesis import given
from hypothesis import strategies as st
from sdk_caller import CATALOGUE, KEY, catalogue_answer, problem, problem_answer
from steelyard_client import (
    ConnectionFailed,
    Methods,
    RetryPolicy,
    ServiceFault,
    ServiceUnavailable,
    SteelyardError,
    TimedOut,
    TooManyRequests,
)
from steelyard_client.errors import problem_error
from steelyard_client.exchange import Options, Send, Wait, exchange, read_answer
from steelyard_client.generated.contract import LIST_METHODS
from steelyard_client.retry import retry_after_seconds

NOW = datetime(2026, 5, 4, 12, 0, 0, tzinfo=UTC)


class Script:
    """Answers a request with the next of the given outcomes, the last one for ever; counts requests."""

    def __init__(self, *outcomes: httpx.Response | Exception | Callable[[], httpx.Response]) -> None:
        self.outcomes = list(outcomes)
        self.requests: list[httpx.Request] = []

    def __call__(self, request: httpx.Request) -> httpx.Response:
        self.requests.append(request)
        outcome = self.outcomes.pop(0) if len(self.outcomes) > 1 else self.outcomes[0]
        if isinstance(outcome, Exception):
            raise outcome
        return outcome() if callable(outcome) else outcome


def busy(status: int = 429, retry_after: str | None = None) -> httpx.Response:
    return problem_answer(status, "too-many-requests", {} if retry_after is None else {"Retry-After": retry_after})


@pytest.mark.parametrize(
    "outcome",
    [
        busy(429),
        busy(503),
        httpx.Response(502, html="<h1>Bad gateway</h1>"),
        httpx.Response(503, html="<h1>Upstream is down</h1>"),
        httpx.Response(504, html="<h1>Gateway time-out</h1>"),
        httpx.ConnectError("refused"),
        httpx.ConnectTimeout("slow"),
        httpx.ReadError("reset"),
        httpx.WriteError("broken pipe"),
        httpx.RemoteProtocolError("Server disconnected without sending a response."),
    ],
    ids=lambda o: getattr(o, "status_code", type(o).__name__),
)
async def test_tried_again(answered_by: Any, waits: list[float], outcome: httpx.Response | Exception) -> None:
    script = Script(outcome, catalogue_answer())
    assert isinstance(await answered_by(script)("list_methods"), Methods)
    assert len(script.requests) == 2
    assert len(waits) == 1
    assert 0.125 <= waits[0] <= 0.25
    assert len({request.headers["x-request-id"] for request in script.requests}) == 1


@pytest.mark.parametrize(
    ("outcome", "kind"),
    [
        (problem_answer(500, "internal-error"), ServiceFault),
        (problem_answer(501, "transfer-coding"), ServiceFault),
        (problem_answer(401, "key-rejected"), SteelyardError),
        (problem_answer(422, "contradiction"), SteelyardError),
        (httpx.Response(307, headers={"Location": "https://elsewhere.test"}), SteelyardError),
        (httpx.ReadTimeout("slow"), TimedOut),
        (httpx.LocalProtocolError("bad header"), ConnectionFailed),
        (httpx.ProxyError("407"), ConnectionFailed),
    ],
    ids=lambda o: getattr(o, "status_code", getattr(o, "__name__", type(o).__name__)),
)
async def test_not_tried_again(
    answered_by: Any, waits: list[float], outcome: httpx.Response | Exception, kind: type[SteelyardError]
) -> None:
    script = Script(outcome)
    with pytest.raises(kind) as caught:
        await answered_by(script)("list_methods")
    assert len(script.requests) == 1
    assert not waits
    assert caught.value.request_id == script.requests[0].headers["x-request-id"]


async def test_given_up_after_the_last_retry(answered_by: Any, waits: list[float]) -> None:
    script = Script(busy())
    policy = RetryPolicy(max_retries=3, first_wait_seconds=0.5, longest_wait_seconds=1.0)
    with pytest.raises(TooManyRequests):
        await answered_by(script, retry=policy)("list_methods")
    assert len(script.requests) == 4
    assert len(waits) == 3
    for wait, full in zip(waits, (0.5, 1.0, 1.0), strict=True):  # doubled, then held at the longest
        assert full / 2 <= wait <= full


async def test_no_retries_when_switched_off(answered_by: Any, waits: list[float]) -> None:
    script = Script(busy())
    with pytest.raises(TooManyRequests):
        await answered_by(script, retry=RetryPolicy(max_retries=0))("list_methods")
    assert len(script.requests) == 1


async def test_retry_after_is_waited(answered_by: Any, waits: list[float]) -> None:
    script = Script(busy(429, "3"), busy(503, "1"), catalogue_answer())
    await answered_by(script)("list_methods")
    assert len(waits) == 2
    assert 3 <= waits[0] <= 3.25  # never sooner, and not all at the same moment
    assert 1 <= waits[1] <= 1.25


@pytest.mark.parametrize("asked", ["9", "3600", "a date an hour from now"])
async def test_a_retry_after_beyond_the_ceiling_is_raised(answered_by: Any, waits: list[float], asked: str) -> None:
    an_hour_from_now = format_datetime(datetime.now(UTC) + timedelta(hours=1), usegmt=True)
    script = Script(busy(503, an_hour_from_now if asked.startswith("a date") else asked))
    with pytest.raises(ServiceUnavailable) as caught:
        await answered_by(script)("list_methods")
    assert len(script.requests) == 1
    assert caught.value.retry_after_seconds is not None
    assert caught.value.retry_after_seconds > 8


async def test_a_wait_beyond_the_time_left_is_raised(answered_by: Any, waits: list[float]) -> None:
    script = Script(busy(429, "5"))
    with pytest.raises(TooManyRequests) as caught:
        await answered_by(script, timeout_seconds=4)("list_methods")
    assert len(script.requests) == 1
    assert caught.value.retry_after_seconds == 5


@pytest.mark.parametrize(
    ("header", "seconds"),
    [
        ("0", 0),
        ("7", 7),
        (" 7 ", 7),
        ("Mon, 04 May 2026 12:00:30 GMT", 30),
        ("Monday, 04-May-26 12:00:30 GMT", 30),  # the obsolete RFC 850 form, which RFC 9110 5.6.7 wants accepted
        ("Mon May  4 12:00:30 2026", 30),  # and asctime
        ("Mon, 04 May 2026 12:00:30 -0000", 30),
        ("Mon, 04 May 2026 11:00:00 GMT", 0),
        (None, None),
        ("", None),
        ("-5", None),
        ("1.5", None),
        ("soon", None),
        ("٣", None),
        ("Mon, 99 May 2026 12:00:30 GMT", None),
    ],
)
def test_forms_of_retry_after(header: str | None, seconds: float | None) -> None:
    assert retry_after_seconds(header, NOW) == seconds


@given(
    retries=st.integers(0, 6),
    draw=st.floats(0, 1),
    asked=st.none() | st.floats(0, 20),
    status=st.sampled_from([429, 502, 503, 504]),
)
def test_waits_are_bounded(retries: int, draw: float, asked: float | None, status: int) -> None:
    policy = RetryPolicy(max_retries=5)
    content = json.dumps(problem(status, "unavailable")).encode()
    failure = problem_error(status, content, media_type="", request_id=None, retry_after_seconds=asked)
    wait = policy.wait_seconds(failure, retries, lambda: draw)
    if retries >= 5 or (asked is not None and asked > policy.longest_retry_after_seconds):
        assert wait is None
        return
    assert wait is not None
    assert wait >= (asked or 0)
    assert wait <= max(policy.longest_wait_seconds, (asked or 0) + policy.first_wait_seconds)


@pytest.mark.parametrize("name", ["max_retries", "first_wait_seconds", "longest_retry_after_seconds"])
def test_impossible_policies(name: str) -> None:
    with pytest.raises(ValueError, match=name):
        RetryPolicy(**{name: -1})
    with pytest.raises(ValueError, match=name):
        RetryPolicy(**{name: float("inf")})


# The time limit, on a clock of its own


def test_the_time_limit_holds_for_all_tries_together() -> None:
    now = 0.0
    options = Options(
        url="http://service.test",
        key=KEY,
        timeout_seconds=10,
        connect_timeout_seconds=2,
        retry=RetryPolicy(max_retries=100, longest_wait_seconds=1),
        check_requests=True,
    )
    steps = exchange(LIST_METHODS, partial(read_answer, Methods), {}, options, lambda: now)
    sent = 0

    def run_to_the_end() -> None:
        nonlocal now, sent
        outcome = None
        while True:
            match steps.send(outcome):
                case Wait(seconds):
                    now += seconds
                    outcome = None
                case Send() as send:
                    assert send.timeout_seconds == pytest.approx(10 - now)
                    assert send.timeout.read == send.timeout_seconds
                    assert send.timeout.connect == min(2, send.timeout_seconds)
                    sent += 1
                    now += 1.5
                    outcome = ConnectionFailed("refused")

    with pytest.raises(ConnectionFailed):
        run_to_the_end()
    assert sent > 2
    assert now <= 10 + 1.5


def test_a_request_whose_time_is_over_before_it_is_sent_times_out() -> None:
    """Checking a long log may take longer than somebody gives the whole call; a transport takes no time below 0."""
    ticks = iter((0.0, 0.2, 0.2, 0.2))
    options = Options(
        url="http://service.test",
        key=KEY,
        timeout_seconds=0.1,
        connect_timeout_seconds=2,
        retry=RetryPolicy(),
        check_requests=True,
    )
    steps = exchange(LIST_METHODS, partial(read_answer, Methods), {}, options, lambda: next(ticks))
    with pytest.raises(TimedOut):
        next(steps)


class Drip(httpx.SyncByteStream, httpx.AsyncByteStream):
    """A body that comes byte by byte, each in time, and all of it never."""

    def __init__(self) -> None:
        self.count = 0
        self.is_closed = False

    def __iter__(self) -> Iterator[bytes]:
        for _ in range(500):
            self.count += 1
            sleep(0.01)
            yield b" "

    async def __aiter__(self) -> AsyncIterator[bytes]:
        for _ in range(500):
            self.count += 1
            await asyncio.sleep(0.01)
            yield b" "

    def close(self) -> None:
        self.is_closed = True

    async def aclose(self) -> None:
        self.is_closed = True


async def test_a_dripping_answer_is_cut_off(answered_by: Any) -> None:
    drip = Drip()
    with pytest.raises(TimedOut):
        await answered_by(Script(httpx.Response(200, stream=drip)), timeout_seconds=0.2)("list_methods")
    assert 0 < drip.count < 500
    assert drip.is_closed


# Nothing is left open


class Tracked(httpx.ByteStream):
    """A body that remembers that it was closed."""

    def __init__(self, content: bytes) -> None:
        super().__init__(content)
        self.closed = 0

    def close(self) -> None:
        self.closed += 1

    async def aclose(self) -> None:
        self.closed += 1


@pytest.mark.parametrize("last", [200, 503, 418])
async def test_every_answer_is_closed(answered_by: Any, waits: list[float], last: int) -> None:
    streams: list[Tracked] = []

    def handler(request: httpx.Request) -> httpx.Response:
        status = 503 if len(streams) < 2 else last
        content = json.dumps(CATALOGUE if status == 200 else problem(status, "unavailable")).encode()
        streams.append(Tracked(content))
        return httpx.Response(status, stream=streams[-1])

    call = answered_by(handler)
    if last == 200:
        await call("list_methods")
    else:
        with pytest.raises(SteelyardError):
            await call("list_methods")
    assert [stream.closed for stream in streams] == [1, 1, 1]
