"""Fixtures shared by the tests: the service in this process, with a key."""

import gc
from collections.abc import AsyncIterator, Generator, Iterator
from pathlib import Path

import pytest
from _pytest.terminal import TerminalReporter
from examples.local_service import LocalService, local_service
from hypothesis import settings
from in_process import Running, running
from servers import Server, new_database, postgresql, valkey

# The same examples in every run, and no time limit on one: a loaded machine must not turn a test red.
settings.register_profile("steady", deadline=None, derandomize=True, database=None)
settings.load_profile("steady")


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Generator[None, object, object]:
    """Nothing that is collected is garbage: looking for some took a fifth of the time, and went on in every test."""
    gc.disable()
    try:
        return (yield)
    finally:
        gc.freeze()
        gc.enable()


def pytest_terminal_summary(terminalreporter: TerminalReporter) -> None:
    """Say what the sweeps counted."""
    reports = [report for key in ("passed", "failed", "xfailed") for report in terminalreporter.getreports(key)]
    lines = [value for report in reports for name, value in report.user_properties if name == "sweep"]
    if lines:
        terminalreporter.section("sweeps")
        for line in sorted(lines):
            terminalreporter.write_line(line)


@pytest.fixture(scope="session")
async def service(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    """The whole service with all its operations, started, and a client that carries a key of all scopes."""
    async with running(tmp_path_factory.mktemp("service")) as started:
        yield started


@pytest.fixture(scope="session")
def live() -> Iterator[LocalService]:
    """The service in a process of its own, as `steelyard serve --development` starts it."""
    with local_service() as service:
        yield service


@pytest.fixture
def database_url(tmp_path: Path) -> str:
    """A fresh SQLite database."""
    return f"sqlite+aiosqlite:///{tmp_path}/operator.sqlite3"


@pytest.fixture(scope="session")
def postgresql_server() -> Iterator[Server]:
    """A PostgreSQL server for this process's tests."""
    with postgresql() as server:
        yield server


@pytest.fixture(params=["sqlite", "postgresql"])
def store_url(request: pytest.FixtureRequest, database_url: str) -> str:
    """A fresh database of each kind that the service keeps its store in."""
    if request.param == "sqlite":
        return database_url
    return new_database(request.getfixturevalue("postgresql_server"))


@pytest.fixture(scope="session")
def valkey_server() -> Iterator[Server]:
    """A server of shared counts for this process's tests."""
    with valkey() as server:
        yield server
