"""What an answer was computed with: noted as it runs, and followed through the code of what ran."""

import ast
from collections.abc import Callable
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any, NamedTuple

import pytest
from steelyard import science
from steelyard.science.body import energy_balance, lean_partition
from steelyard.science.catalogue import entries
from steelyard.science.measures.body_composition import METHOD_ERRORS
from steelyard.science.person import BodyFatMethod
from steelyard.science.register import evidence, provenance, reach, record, recorded, traced

ENTRIES = entries()
CONSTANTS = sorted(id for id, entry in ENTRIES.items() if entry.kind == "constant")


@pytest.fixture
def module(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """A module that counts as one of the science."""
    import sys

    made = ModuleType("steelyard.science.made_up")
    monkeypatch.setitem(sys.modules, made.__name__, made)
    return made


def define(module: ModuleType, text: str) -> dict[str, Any]:
    exec(text, vars(module))
    return vars(module)


def test_every_constant_is_known_by_its_own_object() -> None:
    kept = [(value, id) for value, id in evidence._constants.values()]
    assert sorted(id for _, id in kept) == CONSTANTS
    assert all(evidence.constant_id(value) == id for value, id in kept)
    assert evidence.constant_id(1.5) is None


LEAN, FAT = "energy_density_lean_tissue", "energy_density_fat_mass"


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("def f(): return LEAN_ENERGY", {LEAN}),
        ("def f(): return g()\ndef g(): return LEAN_ENERGY", {LEAN}),
        ("def f(): return [LEAN_ENERGY * x for x in ()]", {LEAN}),
        ("def f(x=LEAN_ENERGY): return x", {LEAN}),
        ("def f(): return (lambda: LEAN_ENERGY)()", {LEAN}),
        ("table = {'a': (LEAN_ENERGY, 1.0)}\ndef f(): return table", {LEAN}),
        ("def f(): return C().m()\nclass C:\n    def m(self): return LEAN_ENERGY", {LEAN}),
        ("def f(): return C.m\nclass C:\n    m = property(lambda self: LEAN_ENERGY)", {LEAN}),
        ("def f(): return C\nclass C:\n    def m(self): return LEAN_ENERGY", set()),
        ("class B:\n    def m(self): return LEAN_ENERGY\nclass C(B): pass\ndef f(): return C().m()", {LEAN}),
        ("class B: pass\nclass C(B):\n    def m(self): return LEAN_ENERGY\ndef f(x: B): return x.m()", {LEAN}),
        ("class C:\n    def m(self): return LEAN_ENERGY\ndef g() -> C: ...\ndef f(): return g().m()", {LEAN}),
        ("class C(NamedTuple):\n    x: float = LEAN_ENERGY\ndef f(): return C()", {LEAN}),
        ("def f(): return kind\nkind = 'fat_supply'", {"fat_supply"}),
        ("def f(): return 'fat_supply'", set()),
        ("@traced\ndef g(): return LEAN_ENERGY\ndef f(): return g()", set()),
        ("@traced\ndef g(): return LEAN_ENERGY\n@cache\ndef h(): return g()\ndef f(): return h()", {LEAN}),
        ("def f(): return deficit_factor()", {"lean_partition"}),
        ("def f(): return deficit_factor() * LEAN_ENERGY", {"lean_partition", LEAN}),
        ("def f(): return other.PARTITION_KG", {LEAN, FAT, "forbes_slope"}),  # made of three
    ],
)
def test_what_code_can_reach(module: ModuleType, text: str, found: set[str]) -> None:
    names = {
        "__name__": module.__name__, "traced": traced, "cache": cache, "NamedTuple": NamedTuple,
        "deficit_factor": lean_partition.deficit_factor, "LEAN_ENERGY": energy_balance.LEAN_ENERGY,
        "other": lean_partition,
    }  # fmt: skip
    vars(module).update(names)
    assert reach.reached(define(module, text)["f"]) == found


def test_a_whole_number_is_told_by_the_statement_that_made_it() -> None:
    from steelyard.science.season import forecast

    walk = reach._Walk()
    walk._global(forecast, "GAIN_RESET_WEEKS", reach._Way())
    assert walk.found == {"gain_reset_weeks"}


def test_an_equation_owns_what_its_function_reaches() -> None:
    assert {"protein_sparing", "protein_ordinary"} <= reach.owned_by("lean_partition")
    assert "gut_content" not in reach.owned_by("lean_partition")


def test_a_default_that_is_made_of_a_constant_is_told() -> None:
    assert "typical_deficit" in reach.owned_by("linearised_energy_balance")


def test_no_default_is_computed_where_a_function_is_defined() -> None:
    """No name would be left by which the constants that it was made of are found."""
    computed = [
        f"{path.name}:{default.lineno}"
        for path in Path(science.__file__).parent.rglob("*.py")
        for function in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(function, ast.FunctionDef | ast.Lambda)
        for default in (*function.args.defaults, *function.args.kw_defaults)
        if isinstance(default, ast.UnaryOp | ast.BinOp)
        and any(isinstance(part, ast.Name) for part in ast.walk(default))
    ]
    assert computed == []


EITHER = """
@traced
def lean(): return LEAN_ENERGY

@traced
def fat(): return FAT_ENERGY

def either(is_lean): return lean() if is_lean else fat()
"""


def _noted(function: Callable[..., object], *args: object) -> list[str]:
    return recorded(function)(*args)[1]


def test_what_ran_is_noted_and_what_did_not_is_not(module: ModuleType) -> None:
    names = {"LEAN_ENERGY": energy_balance.LEAN_ENERGY, "FAT_ENERGY": energy_balance.FAT_ENERGY}
    vars(module).update(names, __name__=module.__name__, traced=traced)
    either = define(module, EITHER)["either"]
    assert _noted(either, True) == [LEAN]
    assert _noted(either, False) == [FAT]
    assert _noted(lambda: record("age")) == ["age"]
    assert _noted(lambda: None) == []


def test_a_recording_tells_the_one_around_it() -> None:
    def around() -> list[str]:
        record("age")
        _, inner = recorded(record)("bmi")
        record("medical")
        return inner

    inner, outer = recorded(around)()
    record("protein")  # no one listens
    assert inner == ["bmi"]
    assert outer == ["age", "bmi", "medical"]


def test_what_raises_leaves_no_recording_behind() -> None:
    def fails() -> None:
        record("age")
        raise KeyError

    def around() -> None:
        with pytest.raises(KeyError):
            recorded(fails)()
        record("bmi")

    assert recorded(around)()[1] == ["bmi"]


def test_a_choice_tells_what_was_chosen() -> None:
    error, by_day, shared = (f"body_fat_{part}_dxa" for part in ("error", "repeatability", "shape_loading"))
    assert _noted(lambda: METHOD_ERRORS[BodyFatMethod.DXA]) == [error, by_day, shared]
    with pytest.raises(TypeError):
        METHOD_ERRORS.get(BodyFatMethod.DXA)
    assert isinstance(METHOD_ERRORS, provenance.Choice)
