"""What bulk needs is an extra: the service loads none of it, and does without."""

import os
import subprocess
import sys
from pathlib import Path

SERVICE = str(Path(__file__).resolve().parents[2] / "service")
EXTRA = ("pyarrow", "distributed", "dask", "pandas")

START = f"""
import sys

class Blocked:
    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] in {EXTRA!r}:
            raise ModuleNotFoundError(f"No module named {{name!r}}", name=name.partition(".")[0])

sys.meta_path.insert(0, Blocked())
"""
SERVE = """
import asyncio
from steelyard.cli import cli
from steelyard.http.app import create_app
from steelyard.settings import Settings

async def live():
    async with create_app(Settings(database_url="sqlite+aiosqlite:///:memory:")).lifespan():
        pass

asyncio.run(live())
print("served", "steelyard.bulk" in sys.modules)
"""
COMMAND = "from steelyard.cli import main; sys.argv = ['steelyard', *sys.argv[1:]]; main()"


def run(code: str, *arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", START + code, *arguments],
        env=os.environ | {"PYTHONPATH": SERVICE},
        capture_output=True,
        text=True,
        check=False,
    )


def test_the_service_starts_without_the_extra() -> None:
    done = run(SERVE)
    assert done.returncode == 0, done.stderr
    assert done.stdout.split() == ["served", "False"]


def test_the_command_line_works_without_it_and_says_what_brings_it() -> None:
    assert run(COMMAND, "bulk", "run", "--help").returncode == 0
    for words in (["bulk", "columns"], ["bulk", "run", "a", "b", "--operation", "read_trend"]):
        done = run(COMMAND, *words)
        assert done.returncode == 1
        assert "steelyard[bulk]" in done.stderr
        assert "Traceback" not in done.stderr
