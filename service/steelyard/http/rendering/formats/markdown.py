"""Markdown (CommonMark with tables) that a coach can paste into a message."""

import re
from collections.abc import Iterable, Iterator, Sequence

from ...schemas.shared_fields import Interval
from ..wording import Words

_OF_TISSUES = frozenset(("fat", "lean", "fat_kg", "lean_kg", "fat_percent", "weeks_above"))


def section(title: str, said: Iterable[str]) -> Iterator[str]:
    """A heading and a list; nothing where there is nothing to say."""
    lines = [f"- {_escaped(text)}" for text in said]
    if lines:
        yield from ("", f"## {title}", "", *lines)


def table(words: Words, title: str, columns: Sequence[str], rows: Iterable[tuple[str, ...]]) -> Iterator[str]:
    """A heading and a table; ``columns`` are those of ``document-column``.

    Columns of the body's tissues are left out for those who are spared leanness: of weight, fat, lean tissue and water
    three tell the fourth.
    """
    shown = [place for place, column in enumerate(columns) if not (words.spares and column in _OF_TISSUES)]
    header = [
        words.say("document-column-of-tissue" if column in _OF_TISSUES else "document-column", column=column)
        for column in (columns[place] for place in shown)
    ]
    yield from ("", f"## {title}", "", f"| {' | '.join(header)} |", f"|{' --- |' * len(header)}")
    yield from (f"| {' | '.join(row[place] for place in shown)} |" for row in rows)


def start(words: Words, maintenance: Interval, fat: Interval) -> str:
    """What a plan starts from, and what its ranges are."""
    said = words.say("document-start", maintenance=words.values(maintenance, 0, unit="kcal"), fat=words.percent(fat))
    return f"{said} {words.ranges(maintenance)}"


def _escaped(text: str) -> str:
    """Text that may quote a caller: no links, images, HTML, emphasis or cells come from it."""
    return re.sub(r"([\\<\[*|])", r"\\\1", text)
