"""What clients of other generators are made with, installed in places of its own under ``var``.

It is pinned: by ``clients/package-lock.json`` (versions and hashes, no addresses) and by
``service/requirements/foreign.txt``. Where it cannot be installed, the tests are skipped; with
``TEST_SERVICES_REQUIRED=1`` in the environment they fail instead.
"""

import fcntl
import hashlib
import os
import subprocess
import sys
from pathlib import Path

from servers import missing

ROOT = Path(__file__).resolve().parents[1]
HERE = ROOT / "tests" / "clients"
CONTRACT = ROOT / "contracts" / "openapi-v1.json"
PYTHON_PINS = ROOT / "service" / "requirements" / "foreign.txt"
INSTALL_SECONDS = 600.0


def run(*command: str | Path, cwd: Path, **environment: str) -> str:
    """What a command prints. Fails with all that it said where it fails."""
    done = subprocess.run(
        [str(part) for part in command],
        cwd=cwd,
        env={**os.environ, **environment},
        capture_output=True,
        text=True,
        check=False,
        stdin=subprocess.DEVNULL,
        timeout=INSTALL_SECONDS,
    )
    assert done.returncode == 0, f"{command}:\n{done.stdout}\n{done.stderr}"
    return done.stdout


def installed(name: str, pins: list[Path], install: list[list[str | Path]]) -> Path:
    """A folder for these pins in which ``install`` was run, once for all processes of all runs."""
    digest = hashlib.sha256(b"\0".join(pin.read_bytes() for pin in pins)).hexdigest()[:16]
    folder = ROOT / "var" / "clients" / f"{name}-{digest}"
    folder.mkdir(parents=True, exist_ok=True)
    with (folder / ".lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not (folder / ".done").exists():
            for command in install:
                try:
                    run(*command, cwd=folder)
                except (AssertionError, subprocess.TimeoutExpired) as error:
                    print(error, file=sys.stderr)
                    missing(f"what the {name} clients are made with (is a package registry reached?)")
            (folder / ".done").touch()
    return folder
