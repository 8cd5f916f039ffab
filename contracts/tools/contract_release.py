"""Freeze the contract as released: ``make contract-release``, once, when its version is published.

Writes the generated document to ``contracts/released`` and dates its heading in ``contracts/CHANGELOG.md``. From then
on the tests hold every later document against it. Until its heading has a date a version may still change.
"""

import re
import sys
from datetime import UTC, datetime
from pathlib import Path

from steelyard.http.app import OPERATIONS
from steelyard.http.pages.contract import contract_text
from steelyard.http.wire.request_id import CONTRACT_VERSION

CONTRACTS = Path("contracts")
CHANGELOG = "CHANGELOG.md"
UNRELEASED = "unreleased"

_HEADING = re.compile(r"^## (\d+\.\d+\.\d+) \((unreleased|\d{4}-\d{2}-\d{2})\)$", re.MULTILINE)


def headings(changelog: str) -> dict[str, str]:
    """The versions of the changelog, newest first, and when each was released."""
    return dict(_HEADING.findall(changelog))


def released_path(version: str) -> Path:
    """Where the document of a version is kept, below the directory of contracts."""
    return Path("released") / f"openapi-v{version}.json"


def release(contracts: Path, day: str) -> str:
    """Freeze the present version. Returns what was done; raises ``ValueError`` where it was released before."""
    log = contracts / CHANGELOG
    text = log.read_text(encoding="utf-8")
    state = headings(text).get(CONTRACT_VERSION)
    if state is None:
        raise ValueError(f"{log} has no heading `## {CONTRACT_VERSION} ({UNRELEASED})`")
    if state != UNRELEASED:
        raise ValueError(f"{CONTRACT_VERSION} was released on {state}; raise CONTRACT_VERSION first")
    path = contracts / released_path(CONTRACT_VERSION)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(contract_text(OPERATIONS), encoding="utf-8", newline="\n")
    dated = text.replace(f"## {CONTRACT_VERSION} ({UNRELEASED})", f"## {CONTRACT_VERSION} ({day})")
    log.write_text(dated, encoding="utf-8", newline="\n")
    return f"Released {CONTRACT_VERSION} of the contract as {path}."


if __name__ == "__main__":
    try:
        print(release(CONTRACTS, datetime.now(UTC).date().isoformat()))
    except ValueError as error:
        sys.exit(f"contract-release: {error}")
