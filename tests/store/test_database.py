"""Opening a SQLite file beside others that open it."""

import sqlite3
from typing import Any

import pytest
from steelyard.store.database import _write_ahead


class Cursor:
    """A cursor that is told so many times that the file is locked."""

    def __init__(self, times: float, said: str = "database is locked") -> None:
        self.times, self.said = times, said
        self.tries = 0

    def execute(self, _: str) -> Any:
        """Say it, or go on."""
        self.tries += 1
        if self.tries <= self.times:
            raise sqlite3.OperationalError(self.said)


def test_who_opens_a_new_file_beside_others_tries_again() -> None:
    """Of those that turn on write-ahead logging at once some are refused without any waiting."""
    cursor = Cursor(3)
    _write_ahead(cursor, 5.0)
    assert cursor.tries == 4


def test_a_file_that_stays_locked_or_is_no_database_is_told() -> None:
    with pytest.raises(sqlite3.OperationalError, match="locked"):
        _write_ahead(Cursor(float("inf")), 0.05)
    other = Cursor(1, "file is not a database")
    with pytest.raises(sqlite3.OperationalError, match="not a database"):
        _write_ahead(other, 5.0)
    assert other.tries == 1
