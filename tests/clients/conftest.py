"""The pinned generators and linters."""

import shutil
import sys
from pathlib import Path

import pytest
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
