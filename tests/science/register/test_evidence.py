"""The catalogue of methods: complete, sourced, cited by the answers, and one with the code."""

import compileall
import inspect
import json
import py_compile
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import msgspec
import pytest
import steelyard
from steelyard.http.app import OPERATIONS
from steelyard.http.endpoints.method_catalogue import list_methods
from steelyard.http.wire.encoding import encode_finite
from steelyard.science import catalogue
from steelyard.science.register import evidence
from steelyard.science.register.evidence import Basis, Kind

ENTRIES = catalogue.entries()
SOURCES = catalogue.sources()
WITHOUT_SOURCE = {Basis.COMMON_PRACTICE, Basis.JUDGEMENT}


def test_registering_an_id_twice_is_an_error() -> None:
    known = next(iter(ENTRIES.values()))
    with pytest.raises(ValueError, match="twice"):
        evidence.register(known)
    with pytest.raises(ValueError, match="twice"):
        evidence.source(next(iter(SOURCES)), "again")


@pytest.mark.parametrize("id", sorted(ENTRIES))
def test_every_entry_is_told_and_sourced(id: str) -> None:
    entry = ENTRIES[id]
    assert entry.id == id
    assert re.fullmatch(r"[a-z0-9_]+", id)
    assert entry.summary
    assert entry.formula
    assert set(entry.source_ids) <= set(SOURCES)
    if entry.kind is Kind.CONSTANT:
        assert entry.value is not None
        assert entry.unit


def test_every_source_is_cited() -> None:
    assert set(SOURCES) == {source for entry in ENTRIES.values() for source in entry.source_ids}


# Exact by definition, or mathematics: they need no paper.
DEFINED = {"kilojoules_per_kilocalorie", "normal_quantile_90", "pounds_per_kilogram"}


@pytest.mark.parametrize("id", sorted(id for id, entry in ENTRIES.items() if entry.basis not in WITHOUT_SOURCE))
def test_what_is_called_published_names_where(id: str) -> None:
    if id not in DEFINED and ENTRIES[id].basis is Basis.PUBLISHED:
        assert ENTRIES[id].source_ids, "published, but no source is named"


# Living pages and a textbook of many editions.
UNDATED = {"health_canada_dri", "nice_obesity", "mcardle_textbook"}


@pytest.mark.parametrize("id", sorted(SOURCES))
def test_every_source_can_be_found(id: str) -> None:
    source = SOURCES[id]
    assert len(source.citation) > 20
    assert id in UNDATED or re.search(r"\b(19|20)\d\d\b", source.citation), "a year"
    assert source.doi is None or re.fullmatch(r"10\.\d{4,9}/\S+", source.doi)


def method_ids(value: Any) -> set[str]:
    """Ids under any ``methods`` of an answer."""
    found: set[str] = set()
    if isinstance(value, dict):
        for key, item in value.items():
            found |= set(item) if key == "methods" else method_ids(item)
    elif isinstance(value, list):
        for item in value:
            found |= method_ids(item)
    return found


EXAMPLES = [
    pytest.param(operation, body, id=f"{operation.operation_id}-{name}")
    for operation in OPERATIONS
    if not operation.renders
    for name, body in operation.request_examples.items()
]


@pytest.mark.parametrize(("operation", "body"), EXAMPLES)
def test_every_method_an_answer_names_is_in_the_catalogue(operation: Any, body: Any) -> None:
    answer = msgspec.json.decode(encode_finite(operation.compute(body)))
    named = method_ids(answer)
    assert named
    assert named <= set(ENTRIES), named - set(ENTRIES)
    rails = {rail["id"] for rail in answer.get("guard_rails", [])}
    assert rails <= set(ENTRIES)


def test_the_catalogue_served_is_the_register() -> None:
    served = list_methods.compute()
    assert {entry.id for entry in served.entries} == set(ENTRIES)
    assert {source.id for source in served.sources} == set(SOURCES)
    for entry in served.entries:
        assert entry.value == ENTRIES[entry.id].value
        assert entry.formula == ENTRIES[entry.id].formula


# --- one literal moves answer and catalogue --------------------------------------------------------------------

_ASK = """
import json, msgspec
from steelyard.science import catalogue
from steelyard.http.endpoints.examples.examples import {examples}
from steelyard.http.app import OPERATIONS
from steelyard.http.wire.encoding import encode_finite
operation = next(o for o in OPERATIONS if o.operation_id == {operation!r})
answer = msgspec.json.decode(encode_finite(operation.compute(next(iter({examples}.values())))))
for key in ("fingerprint", "model_version", "contract_version"):
    answer.pop(key)
print(json.dumps({{"answer": answer, "entry": catalogue.entries()[{id!r}].value}}))
"""


def asked_of(package_parent: Path, operation: str, examples: str, id: str) -> Any:
    """The answer to an example and a catalogue value, from a package in another process."""
    code = _ASK.format(examples=examples, operation=operation, id=id)
    # Without new bytecode files: an edit within the second that keeps the length would be answered by the old one.
    done = subprocess.run(
        [sys.executable, "-B", "-c", code],
        cwd=package_parent,
        env={"PYTHONPATH": str(package_parent)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


@pytest.fixture(scope="module")
def copied(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the package that a test may change."""
    parent = tmp_path_factory.mktemp("changed")
    package = Path(inspect.getfile(steelyard)).parent
    shutil.copytree(package, parent / "steelyard", ignore=shutil.ignore_patterns("__pycache__"))
    # Compiled once for all processes; what is edited is known by its hash, and compiled again by each.
    compileall.compile_dir(parent, quiet=1, invalidation_mode=py_compile.PycInvalidationMode.CHECKED_HASH)
    return parent


@pytest.mark.parametrize(
    ("id", "operation", "examples"),
    [
        pytest.param("energy_density_fat_mass", "plan_phases", "PLAN_EXAMPLES", id="fat-energy-moves-a-plan"),
        pytest.param("deficit_share_limit", "plan_phases", "PLAN_EXAMPLES", id="a-rail-moves-a-plan"),
        pytest.param("pal_sitting", "estimate_maintenance", "MAINTENANCE_EXAMPLES", id="activity-moves-maintenance"),
    ],
)
def test_one_literal_moves_answer_and_catalogue(copied: Path, id: str, operation: str, examples: str) -> None:
    before = asked_of(copied, operation, examples, id)
    # The limit must bind to move the plan, so it is divided by five; the others change by a tenth.
    factor = 0.2 if "limit" in id else 0.9
    changed = 0
    for module in (copied / "steelyard" / "science").rglob("*.py"):
        text = module.read_text(encoding="utf-8")
        edited = re.sub(
            rf'(constant\(\s*"{id}",\s*)([0-9.]+)',
            lambda found: f"{found[1]}{float(found[2]) * factor!r}",
            text,
        )
        if edited != text:
            changed += 1
            module.write_text(edited, encoding="utf-8")
            try:
                after = asked_of(copied, operation, examples, id)
            finally:
                module.write_text(text, encoding="utf-8")
    assert changed == 1, f"{id} is defined in {changed} places"
    assert after["entry"] == pytest.approx(before["entry"] * factor)
    assert after["answer"] != before["answer"]
    assert asked_of(copied, operation, examples, id) == before


def test_nothing_is_imported_for_what_importing_it_does() -> None:
    """The catalogue imports every module of the science; no other import stands for registering something."""
    service = Path(steelyard.__file__).parent
    unused = re.compile(r"noqa:.*F401")
    assert not [path.name for path in service.rglob("*.py") if unused.search(path.read_text(encoding="utf-8"))]
