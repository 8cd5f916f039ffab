"""Start-up: processor time of the application, of commands and of the SDK, against importing what they need."""

import os
import resource
import subprocess
import sys
from pathlib import Path

from .rows import Row, paired
from .servers import ROOT

# Litestar loads its plugins for these wherever they are installed. The tests' tools bring them, a plain install of the
# service has neither, so they are hidden from both sides.
_PLAIN = """
import sys
sys.modules.update(dict.fromkeys(("pydantic", "pydantic.v1", "attr", "attrs")))
"""
# What a service on these two cannot do without: of SQLAlchemy, its asynchronous part, which brings the mapper along.
_LIBRARIES = _PLAIN + "import litestar, sqlalchemy.ext.asyncio"
_LEAST = _PLAIN + "import litestar, sqlalchemy"
_APPLICATION = (
    _PLAIN
    + """
from steelyard.http.asgi import create
application = create()
"""
)
_STARTED = (
    _APPLICATION
    + """
import asyncio
async def start():
    async with application.lifespan():
        pass
asyncio.run(start())
"""
)
# A command asks the store, or only lists its kind.
_COMMAND = (
    _PLAIN
    + """
import sys
from steelyard.cli import main
sys.argv = ["steelyard", *{arguments!r}]
try:
    main()
except SystemExit as ended:
    assert not ended.code, ended
"""
)
_KEYS, _HELP = _COMMAND.format(arguments=["keys", "list"]), _COMMAND.format(arguments=["--help"])
_NEEDED_BY_KEYS = (
    _PLAIN + "import rich_click, rich.console, rich.table, sqlalchemy.ext.asyncio, sqlalchemy.dialects.sqlite.aiosqlite"
)
_NEEDED_BY_HELP = _PLAIN + "import rich_click.rich_help_rendering, rich.console, rich.table"
_SDK = _PLAIN + "from steelyard_client import Steelyard"
_NEEDED_BY_SDK = _PLAIN + "import httpx"
_ROUNDS = 5

_PATH = os.pathsep.join([str(ROOT / "service"), str(ROOT / "sdk")])


def _seconds(code: str, url: str) -> float:
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    kept = {name: value for name, value in os.environ.items() if not name.startswith("STEELYARD_")}
    subprocess.run(
        [sys.executable, "-c", code],
        check=True,
        cwd=ROOT,
        env={**kept, "PYTHONPATH": _PATH, "STEELYARD_DATABASE_URL": url},
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
    )
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def rows(directory: Path) -> list[Row]:
    """Ratios of processor time from nothing to the application, and on to its open and checked store."""
    url = f"sqlite+aiosqlite:///{directory}/start.sqlite3"
    _seconds(_STARTED, url)  # compiles what is not compiled yet, and makes the tables
    made = paired(lambda: _seconds(_APPLICATION, url), lambda: _seconds(_LIBRARIES, url), _ROUNDS)
    started = paired(lambda: _seconds(_STARTED, url), lambda: _seconds(_LIBRARIES, url), _ROUNDS)
    strictly = paired(lambda: _seconds(_APPLICATION, url), lambda: _seconds(_LEAST, url), _ROUNDS)
    keys = paired(lambda: _seconds(_KEYS, url), lambda: _seconds(_NEEDED_BY_KEYS, url), _ROUNDS)
    help_ = paired(lambda: _seconds(_HELP, url), lambda: _seconds(_NEEDED_BY_HELP, url), _ROUNDS)
    sdk = paired(lambda: _seconds(_SDK, url), lambda: _seconds(_NEEDED_BY_SDK, url), _ROUNDS)
    return [
        Row("Start-up", "application made, over importing litestar and sqlalchemy.ext.asyncio", made, at_most=1.5),
        Row("Start-up", "the same with the store opened and checked", started),
        Row("Start-up", "application made, over importing litestar and sqlalchemy without asyncio", strictly),
        Row(
            "Start-up",
            "`steelyard keys list`, over importing what reads the store and draws tables",
            keys,
            at_most=1.5,
        ),
        Row("Start-up", "`steelyard --help`, over importing what draws it", help_, at_most=1.5),
        Row("Start-up", "the SDK's client imported, over importing httpx", sdk, at_most=1.5),
    ]
