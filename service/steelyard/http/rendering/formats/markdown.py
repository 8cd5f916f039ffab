"""Markdown (CommonMark with tables) that a coach can paste into a message."""

import re
from collections.abc import Iterable, Iterator

from ...schemas.quantities import Interval


def section(title: str, said: Iterable[str]) -> Iterator[str]:
    """A heading and a list; nothing where there is nothing to say."""
    lines = [f"- {_escaped(text)}" for text in said]
    if lines:
        yield from ("", f"## {title}", "", *lines)


def table(title: str, header: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> Iterator[str]:
    """A heading and a table."""
    yield from ("", f"## {title}", "", f"| {' | '.join(header)} |", f"|{' --- |' * len(header)}")
    yield from (f"| {' | '.join(row)} |" for row in rows)


def value(of: Interval) -> str:
    """A value with its interval, to a tenth."""
    return f"{of.mean:.1f} ({of.lower:.1f} to {of.upper:.1f})"


def percent(of: Interval) -> str:
    """A fraction as a percentage with its interval."""
    return f"{100 * of.mean:.1f} ({100 * of.lower:.1f} to {100 * of.upper:.1f})"


def start(maintenance: Interval, fat: Interval) -> str:
    """What a plan starts from."""
    return (
        f"Maintenance {maintenance.mean:,.0f} kcal a day ({maintenance.lower:,.0f} to {maintenance.upper:,.0f}), "
        f"body fat {percent(fat).replace(' ', ' % ', 1)}. "
        f"Ranges in parentheses are {100 * maintenance.coverage:.0f} % intervals."
    )


def _escaped(text: str) -> str:
    """Text that may quote a caller: no links, images, HTML, emphasis or cells come from it."""
    return re.sub(r"([\\<\[*|])", r"\\\1", text)
