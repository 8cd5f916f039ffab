"""Fixtures shared by the tests: the service in this process, with a key."""

from collections.abc import AsyncIterator
from pathlib import Path

import pytest
from hypothesis import settings
from in_process import Running, running

# The same examples in every run, and no time limit on one: a loaded machine must not turn a test red.
settings.register_profile("steady", deadline=None, derandomize=True, database=None)
settings.load_profile("steady")


@pytest.fixture(scope="session")
async def service(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    """The whole service with all its operations, started, and a client that carries a key of all scopes."""
    async with running(tmp_path_factory.mktemp("service")) as started:
        yield started


@pytest.fixture
def database_url(tmp_path: Path) -> str:
    """A fresh SQLite database."""
    return f"sqlite+aiosqlite:///{tmp_path}/operator.sqlite3"
