"""The pinned generators and linters, and a live service."""

import shutil
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from examples.local_service import LocalService, local_service
from foreign_clients import HERE, PYTHON_PINS, installed
from servers import missing

NODE_FILES = ("package.json", "package-lock.json", ".npmrc")


@pytest.fixture(scope="session")
def node() -> Path:
    """The folder of the pinned npm packages."""
    if not (shutil.which("node") and shutil.which("npm")):
        missing("node with npm")
    pins = [HERE / name for name in NODE_FILES]
    return installed("node", pins, [["cp", *pins, "."], ["npm", "ci"]])


@pytest.fixture(scope="session")
def python() -> Path:
    """The folder of a Python environment with the pinned packages."""
    pip = [sys.executable, "-m", "pip", "--python", "env/bin/python"]
    install: list[list[str | Path]] = [
        [sys.executable, "-m", "venv", "--without-pip", "env"],
        [*pip, "install", "--quiet", "--no-compile", "--require-hashes", "-r", PYTHON_PINS],
    ]
    return installed("python", [PYTHON_PINS], install) / "env"


@pytest.fixture(scope="session")
def live() -> Iterator[LocalService]:
    """The service in a process of its own."""
    with local_service() as service:
        yield service
