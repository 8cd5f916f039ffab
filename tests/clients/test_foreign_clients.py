"""From any language: clients of other generators compile strictly and are answered; linters find nothing.

Each client sends the smallest plan there is, a plan that is refused, and, in TypeScript, asks for a picture and a
calendar. That what it gets has the types of the contract is the compiler's word: see the sources beside this.
"""

import json
import shutil
from pathlib import Path
from typing import Any

import pytest
from examples.local_service import LocalService
from foreign_clients import CONTRACT, HERE, ROOT, run
from npm_lock import without_addresses

TYPESCRIPT = HERE / "typescript"


def tool(node: Path, name: str, *arguments: str | Path, cwd: Path | None = None, **environment: str) -> str:
    return run(node / "node_modules" / ".bin" / name, *arguments, cwd=cwd or node, **environment)


def environment(live: LocalService) -> dict[str, str]:
    return {"STEELYARD_URL": live.url, "STEELYARD_KEY": live.key, "NO_PROXY": "127.0.0.1"}


@pytest.fixture(scope="module")
def built(node: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Both TypeScript clients, generated anew and compiled."""
    folder = tmp_path_factory.mktemp("typescript")
    for file in [*TYPESCRIPT.iterdir(), HERE / "package.json"]:
        shutil.copy(file, folder)
    (folder / "node_modules").symlink_to(node / "node_modules")
    tool(node, "openapi-typescript", CONTRACT, "--output", folder / "schema" / "contract.d.ts")
    tool(
        node, "openapi-ts", "--input", CONTRACT, "--file", folder / "openapi-ts.config.js", "--no-log-file", cwd=folder
    )
    tool(node, "tsc", "--project", folder, cwd=folder)
    return folder


@pytest.mark.parametrize("client", ["with_fetch", "with_functions"])
def test_a_typescript_client_compiles_and_is_answered(built: Path, live: LocalService, client: str) -> None:
    got: dict[str, Any] = json.loads(run("node", built / "built" / f"{client}.js", cwd=built, **environment(live)))
    assert 1500 < got.pop("mean") < 3500
    assert got == {"feasible": True, "refused": 422, "svg": "<svg", "calendar": "BEGIN:VCALENDAR"}


def test_a_python_client_of_another_generator_compiles_and_is_answered(
    python: Path, live: LocalService, tmp_path: Path
) -> None:
    shutil.copy(HERE / "python" / "with_clientele.py", tmp_path)
    programs = python / "bin"
    path = f"{programs}:/usr/bin:/bin"
    run(programs / "clientele", "start-api", "--file", CONTRACT, "--output", "generated", cwd=tmp_path, PATH=path)
    run(programs / "mypy", "--strict", "with_clientele.py", "generated", cwd=tmp_path)
    got = json.loads(run(programs / "python", "with_clientele.py", cwd=tmp_path, **environment(live)))
    assert 1500 < got.pop("mean") < 3500
    assert got == {"feasible": True, "refused": 422}


def test_spectral_finds_nothing(node: Path) -> None:
    rules = ROOT / "contracts" / "spectral.yaml"
    tool(node, "spectral", "lint", CONTRACT, "--ruleset", rules, "--fail-severity", "hint")


def test_redocly_finds_nothing(node: Path) -> None:
    told = tool(node, "redocly", "lint", CONTRACT, "--config", ROOT / "contracts" / "redocly.yaml", "--format", "json",
                REDOCLY_TELEMETRY="off", REDOCLY_SUPPRESS_UPDATE_NOTICE="true")  # fmt: skip
    assert json.loads(told)["totals"] == {"errors": 0, "warnings": 0, "ignored": 0}


@pytest.mark.parametrize(("linter", "arguments"), [("spectral", ["--fail-severity", "hint"]), ("redocly", [])])
def test_the_linters_find_what_is_there(node: Path, tmp_path: Path, linter: str, arguments: list[str]) -> None:
    document = json.loads(CONTRACT.read_text(encoding="utf-8")) | {"paths": {}, "components": {}}  # to be quick
    del document["info"]["title"]
    broken = tmp_path / "openapi.json"
    broken.write_text(json.dumps(document), encoding="utf-8")
    rules = {"spectral": ["--ruleset", ROOT / "contracts" / "spectral.yaml"],
             "redocly": ["--config", ROOT / "contracts" / "redocly.yaml"]}[linter]  # fmt: skip
    with pytest.raises(AssertionError, match="title"):
        tool(node, linter, "lint", broken, *rules, *arguments, REDOCLY_TELEMETRY="off")


def test_pins_are_exact_and_hold_no_address() -> None:
    package = json.loads((HERE / "package.json").read_text(encoding="utf-8"))
    pins = package["dependencies"] | package["devDependencies"]
    assert all(version[0].isdigit() for version in pins.values())
    lock = (HERE / "package-lock.json").read_text(encoding="utf-8")
    assert "://" not in lock
    assert lock == without_addresses(lock)
    kept = json.loads(lock)["packages"]
    assert {name: kept[f"node_modules/{name}"]["version"] for name in pins} == pins
    assert all("integrity" in entry for name, entry in kept.items() if name and not entry.get("inBundle"))
