"""Checks of the tree itself: what is tracked, pinned, layered, packaged and promised."""

import ast
import os
import re
import shutil
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).resolve().parents[1]
REQUIREMENTS = ROOT / "service" / "requirements"
TOOLS = Path(sys.executable).parent
SERVICE = str(ROOT / "service")

TOP_LEVEL = {
    "CHANGELOG.md",
    "DEVELOPERS.md",
    "LICENSE",
    "Makefile",
    "README.md",
    "contracts",
    "docker",
    "pyproject.toml",
    "sdk",
    "service",
    "tests",
}

# Joined here, so that this file holds none of them itself.
REGISTRY_HOSTS = [
    ".".join(labels)
    for labels in [
        ("pypi", "org"),
        ("pythonhosted", "org"),
        ("npmjs", "org"),
        ("npmjs", "com"),
        ("yarnpkg", "com"),
        ("deb", "debian", "org"),
        ("docker", "io"),
        ("ghcr", "io"),
        ("quay", "io"),
        ("crates", "io"),
        ("golang", "org"),
        ("anaconda", "org"),
    ]
]


def run(*command: str | Path, cwd: Path = ROOT, **environment: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [str(part) for part in command],
        cwd=cwd,
        env={**os.environ, **environment},
        capture_output=True,
        text=True,
        check=False,
        stdin=subprocess.DEVNULL,
    )


@pytest.fixture(scope="module")
def tracked() -> list[Path]:
    """Every file of the project: committed, or new and not ignored."""
    listed = run("git", "ls-files", "-z", "--cached", "--others", "--exclude-standard")
    assert listed.returncode == 0, listed.stderr
    return [ROOT / name for name in listed.stdout.split("\0") if name and (ROOT / name).is_file()]


def text_of(path: Path) -> str:
    """The text of a file; empty for a picture or other binary."""
    content = path.read_bytes()
    return "" if b"\0" in content else content.decode("utf-8")


# What is tracked


def test_top_level_holds_only_known_entries(tracked: list[Path]) -> None:
    """Dot-files are the tools' own: whoever hosts the project may add theirs."""
    names = {path.relative_to(ROOT).parts[0] for path in tracked}
    assert {name for name in names if not name.startswith(".")} <= TOP_LEVEL


def test_no_registry_host_is_named(tracked: list[Path]) -> None:
    found = [
        f"{path.relative_to(ROOT)}: {host}"
        for path in tracked
        for host in REGISTRY_HOSTS
        if host in text_of(path).lower()
    ]
    assert not found


def test_no_path_of_this_machine_is_named(tracked: list[Path]) -> None:
    """Paths in examples are welcome; where this checkout or its user lives is nobody's business."""
    own = [str(path) for path in {ROOT, Path.home()} if len(path.parts) > 2]
    found = [f"{path.relative_to(ROOT)}: {place}" for path in tracked for place in own if place in text_of(path)]
    assert not found


def test_text_files_are_utf8_with_unix_line_ends(tracked: list[Path]) -> None:
    texts = {path: text_of(path) for path in tracked}
    wrong = [str(path) for path, text in texts.items() if "\r" in text or (text and not text.endswith("\n"))]
    assert not wrong


def test_modules_are_named_for_what_they_hold(tracked: list[Path]) -> None:
    vague = {"utils.py", "util.py", "helpers.py", "common.py", "misc.py", "base.py"}
    assert not [str(path) for path in tracked if path.name in vague]


def test_a_class_name_means_one_thing() -> None:
    """But for what a person tells, which has one name on the wire and in the science."""
    package = ROOT / "service" / "steelyard"
    homes: dict[str, set[str]] = {}
    for path in package.rglob("*.py"):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.ClassDef):
                homes.setdefault(node.name, set()).add(path.relative_to(package).as_posix())
    several = {name: paths for name, paths in homes.items() if len(paths) > 1}
    assert {name for name, paths in several.items() if not _is_told(paths)} == set()
    assert {"Log", "Screening", "Training"} <= several.keys()  # it sees them


def _is_told(paths: set[str]) -> bool:
    return sorted(path.startswith("http/schemas/") for path in paths) == [False, True] and any(
        path.startswith(("science/person/", "science/log/entries")) for path in paths
    )


def test_both_distributions_carry_the_licence() -> None:
    licence = (ROOT / "LICENSE").read_text()
    assert "Apache License" in licence
    assert "END OF TERMS AND CONDITIONS" in licence
    assert (ROOT / "sdk" / "LICENSE").read_text() == licence
    for project in (ROOT, ROOT / "sdk"):
        assert tomllib.loads((project / "pyproject.toml").read_text())["project"]["license"] == "Apache-2.0"


# Requirements


PIN = re.compile(
    r"(?P<name>[a-z0-9.-]+)==(?P<version>[\w.!+]+)(?: ; [^#]+?)?"  # a marker may follow
    r"(?:\s+--hash=sha256:[0-9a-f]{64})+"
)


def pins(name: str) -> dict[str, str]:
    """Distribution to version of a compiled requirement file; fails on a line that is not a hashed pin."""
    logical = (REQUIREMENTS / name).read_text().replace("\\\n", " ").splitlines()
    found = {}
    for line in logical:
        if not line.strip() or line.lstrip().startswith("#"):
            continue
        pin = PIN.fullmatch(line.rstrip())
        assert pin, f"{name}: not a hashed pin: {line[:100]}"
        assert pin["name"] not in found, f"{name}: {pin['name']} is pinned twice"
        found[pin["name"]] = pin["version"]
    return found


def direct_requirements(*sources: Path) -> Iterator[Requirement]:
    for path in sources:
        if path.suffix == ".toml":
            lines = tomllib.loads(path.read_text())["project"]["dependencies"]
        else:
            lines = [line for line in path.read_text().splitlines() if line.strip() and line[0] != "#"]
        yield from map(Requirement, lines)


@pytest.mark.parametrize(
    ("compiled", "sources"),
    [
        ("run.txt", ["pyproject.toml"]),
        ("build.txt", ["service/requirements/build.in"]),
        ("foreign.txt", ["service/requirements/foreign.in"]),
        ("sdk.txt", ["sdk/pyproject.toml"]),
        ("image.txt", ["pyproject.toml"]),
        ("bulk.txt", ["pyproject.toml"]),
        (
            "dev.txt",
            [
                "pyproject.toml",
                "sdk/pyproject.toml",
                "service/requirements/build.in",
                "service/requirements/dev.in",
            ],
        ),
    ],
)
def test_compiled_requirements_are_hashed_and_satisfy_their_sources(compiled: str, sources: list[str]) -> None:
    versions = pins(compiled)
    for requirement in direct_requirements(*(ROOT / source for source in sources)):
        version = versions.get(canonicalize_name(requirement.name))
        assert version is not None, f"{compiled} lacks {requirement}; run `make lock`"
        assert requirement.specifier.contains(version), f"{compiled} pins {version} against {requirement}"


def test_the_service_and_its_tests_run_on_the_same_versions() -> None:
    run_pins, build_pins, dev_pins, sdk_pins = (pins(f"{name}.txt") for name in ("run", "build", "dev", "sdk"))
    assert sdk_pins.items() <= dev_pins.items()
    assert run_pins.items() <= pins("image.txt").items()
    assert pins("image.txt").items() <= pins("bulk.txt").items(), "the larger image has all of the other"
    assert {n: v for n, v in pins("bulk.txt").items() if n not in pins("image.txt")}.items() <= dev_pins.items()
    assert run_pins.items() <= dev_pins.items()
    assert build_pins.items() <= dev_pins.items()


@pytest.mark.parametrize(
    "name",
    ["run.txt", "build.txt", "dev.txt", "sdk.txt", "image.txt", "foreign.txt", "bulk.txt", "build.in", "dev.in"],
)
def test_requirements_name_no_index(name: str) -> None:
    text = (REQUIREMENTS / name).read_text()
    assert not re.search(r"--(?:extra-)?index-url|--find-links|--trusted-host|://|^-[ife]\b", text, re.MULTILINE)


# Layers


def test_import_contracts_hold() -> None:
    result = run(TOOLS / "lint-imports", "--no-cache", PYTHONPATH=SERVICE)
    assert result.returncode == 0, result.stdout + result.stderr


@pytest.mark.parametrize(
    ("module", "statement"),
    [
        ("science/numbers/estimate.py", "import litestar"),
        ("science/numbers/estimate.py", "import random"),
        ("science/numbers/estimate.py", "from steelyard import store"),
        ("science/rails/table.py", "from steelyard.science import phase"),
        ("science/season/plan.py", "from steelyard.science import decision"),
        ("science/rails/table.py", "from steelyard.science.body.state import BodyState"),
        ("http/app.py", "from steelyard.science.rails.table import INTAKE_FLOOR"),
        ("store/__init__.py", "from steelyard import http"),
        ("http/app.py", "import pyarrow"),
        ("http/app.py", "from steelyard import bulk"),
        ("bulk/runner.py", "import distributed"),
    ],
)
def test_import_contracts_can_fail(module: str, statement: str, tmp_path: Path) -> None:
    shutil.copytree(ROOT / "service" / "steelyard", tmp_path / "steelyard")
    with (tmp_path / "steelyard" / module).open("a") as file:
        file.write(f"\n{statement}\n")
    result = run(
        TOOLS / "lint-imports",
        "--no-cache",
        ROOT / "pyproject.toml",
        cwd=tmp_path,
        PYTHONPATH=str(tmp_path),
    )
    assert result.returncode == 1, result.stdout + result.stderr
    assert "BROKEN" in result.stdout


IMPORT_CORE = """
import importlib, pkgutil, sys

class Blocked:
    roots = {"litestar", "sqlalchemy", "httpx", "uvicorn", "click", "rich", "rich_click", "scipy", "statsmodels"}

    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] in self.roots:
            raise ModuleNotFoundError(f"{name} is blocked", name=name)

sys.meta_path.insert(0, Blocked())
if sys.argv[1:]:
    importlib.import_module(sys.argv[1])
import steelyard.science
names = [m.name for m in pkgutil.walk_packages(steelyard.science.__path__, "steelyard.science.")]
for name in names:
    importlib.import_module(name)
print(len(names), "numpy" in sys.modules)
"""


def test_core_imports_without_web_store_or_optimiser() -> None:
    """Holds at run time what the import contracts say of the source; numpy waits until arrays are asked for."""
    result = run(sys.executable, "-c", IMPORT_CORE, PYTHONPATH=SERVICE)
    assert result.returncode == 0, result.stderr
    count, numpy_loaded = result.stdout.split()
    modules = [p for p in (ROOT / "service" / "steelyard" / "science").rglob("*.py") if p.name != "__init__.py"]
    assert int(count) >= len(modules) > 0
    assert numpy_loaded == "False"


def test_the_import_block_bites() -> None:
    result = run(sys.executable, "-c", IMPORT_CORE, "litestar", PYTHONPATH=SERVICE)
    assert result.returncode != 0
    assert "litestar is blocked" in result.stderr


# Commands and pages


def make_targets() -> dict[str, str]:
    """Documented target to its one-line help."""
    return dict(re.findall(r"^([a-z-]+):.*?## (.+)$", (ROOT / "Makefile").read_text(), re.MULTILINE))


def test_make_prints_help_for_every_phony_target() -> None:
    result = run("make", MAKEFLAGS="")
    assert result.returncode == 0, result.stderr
    phony = re.search(r"^\.PHONY: (.+)$", (ROOT / "Makefile").read_text(), re.MULTILINE)
    assert phony
    assert set(phony[1].split()) == set(make_targets())
    for target in make_targets():
        assert f"make {target} " in result.stdout


def test_make_targets_run_what_exists() -> None:
    """Each script, module and subcommand that a recipe names is there."""
    recipes = (ROOT / "Makefile").read_text()
    scripts = set(re.findall(r"\$\(bin\)/python ([\w/]+\.py)", recipes))
    modules = set(re.findall(r"\$\(bin\)/python -m (tests\.[\w.]+)", recipes))
    assert not [script for script in scripts if not (ROOT / script).is_file()]
    stems = [ROOT / module.replace(".", "/") for module in modules]
    assert not [stem for stem in stems if not (stem.with_suffix(".py").is_file() or (stem / "__main__.py").is_file())]
    subcommands = set(re.findall(r"\$\(bin\)/steelyard (\w+)", recipes))
    assert subcommands
    for subcommand in subcommands:
        result = run(sys.executable, "-m", "steelyard", subcommand, "--help", PYTHONPATH=SERVICE)
        assert result.returncode == 0, result.stderr


def test_only_make_targets_that_exist_are_named(tracked: list[Path]) -> None:
    """In the pages' prose and shell blocks, and in the code's docstrings and messages."""
    mention = re.compile(r"(?:`|^\s*\$?\s*)make ([a-z][a-z-]*)", re.MULTILINE)
    in_code = re.compile(r"`make ([a-z][a-z-]*)")
    found = {
        f"{path.relative_to(ROOT)}: make {target}"
        for path in tracked
        if path.suffix in {".md", ".py"} and path.name != Path(__file__).name
        for target in (mention if path.suffix == ".md" else in_code).findall(text_of(path))
        if target not in make_targets()
    }
    assert not found


def test_readme_opens_with_the_two_commands() -> None:
    readme = (ROOT / "README.md").read_text()
    assert {"run", "test"} <= set(re.findall(r"\bmake ([a-z-]+)", readme))


def test_relative_links_lead_somewhere(tracked: list[Path]) -> None:
    broken = [
        f"{path.relative_to(ROOT)}: {link}"
        for path in tracked
        if path.suffix == ".md"
        for link in re.findall(r"\]\(([^)#\s]+)(?:#[^)]*)?\)", text_of(path))
        if not re.match(r"[a-z]+:", link) and not (path.parent / link).exists()
    ]
    assert not broken


def test_developers_page_names_only_paths_that_exist() -> None:
    """Every path in the contributor guide's backticks or layout tree that starts in a known folder exists."""
    text = (ROOT / "DEVELOPERS.md").read_text()
    roots = "|".join(re.escape(entry) for entry in sorted(TOP_LEVEL))
    named = set(re.findall(rf"`((?:{roots})(?:/[\w./-]*)?)`", text))
    assert len(named) > 10
    assert not [name for name in named if not (ROOT / name).exists()]


def test_makefile_refuses_an_old_python(tmp_path: Path) -> None:
    old = tmp_path / "python3"
    old.write_text('#!/bin/sh\ncase "$1" in --version) echo "Python 3.9.1";; *) exit 1;; esac\n', encoding="utf-8")
    old.chmod(0o755)
    environment = tmp_path / "environment"
    result = run("make", f"PYTHON={old}", f"venv={environment}", f"{environment}/.made", MAKEFLAGS="")
    assert result.returncode != 0
    assert "3.11 or newer is needed" in result.stdout
    assert not environment.exists()


# The gate and the containers


def test_gate_script_is_sound() -> None:
    script = ROOT / ".ci" / "run"
    assert os.access(script, os.X_OK)
    assert "make test" in script.read_text()
    result = run(TOOLS / "shellcheck", script)
    assert result.returncode == 0, result.stdout + result.stderr


def stages() -> list[list[tuple[str, str]]]:
    """The Dockerfile's stages as lists of (instruction, arguments)."""
    text = re.sub(r"^\s*#.*\n", "", (ROOT / "docker" / "Dockerfile").read_text(), flags=re.MULTILINE)
    found: list[list[tuple[str, str]]] = []
    for line in text.replace("\\\n", " ").splitlines():
        instruction, _, arguments = line.strip().partition(" ")
        if instruction == "ARG" and not found:  # before the first stage: what the stages are built on
            continue
        if instruction == "FROM":
            found.append([])
        if instruction:
            found[-1].append((instruction, " ".join(arguments.split())))
    return found


def shell_steps(stage: list[tuple[str, str]]) -> list[str]:
    return [step for instruction, arguments in stage if instruction == "RUN" for step in arguments.split("&&")]


def test_dockerfile_passes_its_linter() -> None:
    result = run(TOOLS / "hadolint", "--failure-threshold", "style", ROOT / "docker" / "Dockerfile")
    assert result.returncode == 0, result.stdout + result.stderr


def test_image_is_built_from_hashes_and_keeps_no_build_tool() -> None:
    *build, final = stages()
    installs = [step for stage in build for step in shell_steps(stage) if re.search(r"\bpip\b.*\binstall\b", step)]
    assert installs
    assert all("--require-hashes" in step or "--no-deps" in step for step in installs)
    assert not [step for step in shell_steps(final) if re.search(r"\bpip\b.*\binstall\b|hatch|apt", step)]
    assert not [a for i, a in final if i == "COPY" and not a.startswith("--from=")]


def test_image_runs_unprivileged_with_a_health_check() -> None:
    final = dict(stages()[-1])
    assert final["USER"].split(":")[0] not in {"root", "0"}
    assert final["HEALTHCHECK"].partition("CMD ")[2].startswith('["python"')
    assert final["CMD"].startswith('["steelyard", "serve"')


def test_dockerfile_copies_only_what_the_build_context_has() -> None:
    patterns = [line for line in (ROOT / ".dockerignore").read_text().splitlines() if line and not line.startswith("#")]
    assert patterns[0] == "**", "the context is closed by default and opened entry by entry"
    opened = [pattern.removeprefix("!") for pattern in patterns if pattern.startswith("!")]
    copied = [
        source
        for stage in stages()
        for instruction, arguments in stage
        if instruction == "COPY" and "--from=" not in arguments
        for source in arguments.split()[:-1]
    ]
    assert copied
    for source in copied:
        assert (ROOT / source).exists(), source
        assert any(source == entry or source.startswith(f"{entry}/") for entry in opened), source


def test_compose_file_fits_the_compose_specification() -> None:
    result = run(
        TOOLS / "check-jsonschema",
        "--builtin-schema",
        "vendor.compose-spec",
        ROOT / "docker" / "compose.yaml",
    )
    assert result.returncode == 0, result.stdout + result.stderr


def test_composed_service_is_confined() -> None:
    compose = yaml.safe_load((ROOT / "docker" / "compose.yaml").read_text())
    service = compose["services"]["steelyard"]
    assert service["read_only"] is True
    assert service["cap_drop"] == ["ALL"]
    assert "no-new-privileges:true" in service["security_opt"]
    assert service["tmpfs"]
    assert all(port.startswith("127.0.0.1:") for port in service["ports"])
    dockerfile = ROOT / "docker" / service["build"]["context"] / service["build"]["dockerfile"]
    assert dockerfile.resolve() == ROOT / "docker" / "Dockerfile"
    named = {mount.partition(":")[0] for mount in service["volumes"]}
    assert named <= set(compose["volumes"])
