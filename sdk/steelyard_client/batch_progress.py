"""A bar that shows how far a batch is. Needs the extra: ``pip install 'steelyard-client[progress]'``."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import TypeAlias

Progress: TypeAlias = Callable[[int, int | None], None]  # lines done, and lines in all where that is known


@contextmanager
def progress_bar() -> Iterator[Progress]:
    """A bar on standard error, drawn by rich. Raises ``ImportError`` where rich is not installed."""
    try:
        from rich.console import Console
        from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn
    except ImportError as error:
        raise ImportError("progress=True needs rich: pip install 'steelyard-client[progress]'") from error
    columns = TextColumn("lines"), BarColumn(), MofNCompleteColumn(), TimeRemainingColumn()
    with Progress(*columns, console=Console(stderr=True)) as bar:
        task = bar.add_task("", total=None)

        def tell(done: int, total: int | None) -> None:
            bar.update(task, completed=done, total=total)

        yield tell
