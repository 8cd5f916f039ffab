"""The client under test: once blocking, once awaited, against a live server or against a handler in its place."""

from collections.abc import AsyncIterator, Callable
from typing import Any

import httpx
import pytest
import pytest_asyncio
from examples.local_service import LocalService
from sdk_caller import KEY, Caller, fresh
from steelyard_client import AsyncSteelyard, Steelyard
from steelyard_client import client as client_module


@pytest_asyncio.fixture(params=["sync", "async"], loop_scope="function")
async def caller(request: pytest.FixtureRequest, live: LocalService) -> AsyncIterator[Caller]:
    """Each client against the live service."""
    if request.param == "sync":
        with Steelyard(*live, transport=httpx.HTTPTransport()) as client:
            yield Caller(client)
    else:
        async with AsyncSteelyard(*live, transport=httpx.AsyncHTTPTransport()) as client:
            yield Caller(client)


Handler = Callable[[httpx.Request], httpx.Response]


@pytest.fixture(params=["sync", "async"])
def answered_by(request: pytest.FixtureRequest) -> Callable[..., Caller]:
    """Makes each client against a handler that stands in for the network."""
    kind = Steelyard if request.param == "sync" else AsyncSteelyard

    def make(handler: Handler, **options: Any) -> Caller:
        transport = httpx.MockTransport(lambda request: fresh(handler(request)))
        return Caller(kind("http://service.test", KEY, transport=transport, **options))

    return make


@pytest.fixture
def waits(monkeypatch: pytest.MonkeyPatch) -> list[float]:
    """The waits between tries, which are then not waited."""
    made: list[float] = []

    async def wait(seconds: float) -> None:
        made.append(seconds)

    class Clock:
        sleep = staticmethod(made.append)
        monotonic = staticmethod(client_module.time.monotonic)

    class Loop:
        sleep = staticmethod(wait)
        timeout = staticmethod(client_module.asyncio.timeout)

    monkeypatch.setattr(client_module, "time", Clock)
    monkeypatch.setattr(client_module, "asyncio", Loop)
    return made
