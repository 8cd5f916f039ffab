"""Cython source for floats, made from the core's own formulas.

The core writes every formula once, for floats and for arrays (``numbers/elementwise.py``). Functions marked
``@compiled`` and ``@inlined`` are rewritten here for floats alone: ``Number`` becomes a C double, ``ops.exp`` the C
function, ``ops is FLOATS`` true, and what only arrays need falls away. Nothing is imported: only the text is read.

What the rewriting takes for granted, and tests on the whole (the answers must agree to the last bit): a local name that
takes part in arithmetic, or is handed to an inlined function as a double, is a double, or an index where it starts from
a whole number; a constant is a number named in capitals; everything else stays a Python object. What it does not know,
and whole numbers where they would become doubles, it refuses (``NotRewritten``) with file and line.
"""

import ast
from pathlib import Path
from types import CodeType
from typing import NamedTuple

from marks import (
    ENTRY,
    Class,
    Known,
    Marked,
    column_fields,
    faces_of,
    fields_of,
    mangled,
    mark_of,
    number_fields,
    origins_of,
    private_tuples,
    row_widths,
    whole_constants,
)
from rewriter import Rewriter
from syntax import DOUBLES

# What the generated functions call.
_HEAD = Path(__file__).with_name("head.pyx")
# What the encoder of answers takes from the same module.
_JSON = Path(__file__).with_name("json_columns.pyx")


class Cython(NamedTuple):
    """The source of the extension module, and the functions that it was made from, by name."""

    text: str
    marked: dict[str, CodeType]


def specialise(core: Path) -> Cython:
    """Rewrite the marked functions of the package in the directory ``core``."""
    found = {path: ast.parse(path.read_text(encoding="utf-8")) for path in sorted(core.glob("*/*.py"))}
    trees = {f"{path.parent.name}.{path.stem}": tree for path, tree in found.items() if path.stem != "__init__"}
    faces = faces_of({path.parent.name: tree for path, tree in found.items() if path.stem == "__init__"})
    functions = {
        (module, node.name): Marked(module, node, mark == ENTRY)
        for module, tree in trees.items()
        for node in tree.body
        if isinstance(node, ast.FunctionDef) and (mark := mark_of(node)) is not None
    }
    classes = {
        (module, node.name): Class(module, node, fields_of(node))
        for module, tree in trees.items()
        for node in tree.body
        if isinstance(node, ast.ClassDef) and mark_of(node) is not None
    }
    columns = {name: fields for tree in trees.values() for name, fields in column_fields(tree).items()}
    widths = {name: width for module, tree in trees.items() for name, width in row_widths(module, tree).items()}
    wholes = {name for module, tree in trees.items() for name in whole_constants(module, tree)}
    numbers = {name: fields for module, tree in trees.items() for name, fields in number_fields(module, tree).items()}
    known = {
        module: Known(
            functions, classes, origins_of(module, tree, faces), private_tuples(tree), columns, widths, wholes, numbers
        )
        for module, tree in trees.items()
    }
    taken: dict[str, tuple[str, str]] = {}  # what is taken from the core: here -> (module, name there)
    bodies = []
    members = []
    for cls in classes.values():
        lines = [f"cdef class {cls.name}:"]
        lines += [f"    cdef public {_field_type(kind)} {field}" for field, kind in cls.fields.items()]
        for method in cls.methods():
            rewriter = Rewriter(method, known[method.module])
            lines += ["    " + line for line in rewriter.text().splitlines()]
            taken |= rewriter.taken
            members.append(method)
        bodies.append("\n".join(lines) + "\n")
    for one in functions.values():
        rewriter = Rewriter(one, known[one.module])
        bodies.append(rewriter.text())
        taken |= rewriter.taken
    parts = [part.read_text(encoding="utf-8") for part in (_HEAD, _JSON)]
    for name in sorted(taken):
        module, there = taken[name]
        is_constant = there.isupper() and there != "FLOATS"
        kind = ("cdef Py_ssize_t " if (module, there) in wholes else "cdef double ") if is_constant else ""
        parts.append(f"from steelyard.science.{module} import {there} as _it\n{kind}{name} = _it\n")
    marked = [*functions.values(), *members]
    # All are loaded with it, so that what it was made from can be told.
    parts += [f"import steelyard.science.{module}" for module in sorted({one.module for one in marked})]
    twins = ", ".join(f"{one.name!r}: {one.name}" for one in functions.values() if one.is_entry)
    parts += [*bodies, f"TWINS = {{{twins}}}\n", f"PLACES = {_places(numbers)}\n"]
    marked_modules = {one.module for one in marked}
    codes = {module: _codes(core / f"{module.replace('.', '/')}.py", module) for module in marked_modules}
    return Cython("\n".join(parts), {one.full_name: codes[one.module][one.full_name] for one in marked})


def _places(numbers: dict[tuple[str, str], dict[str, int]]) -> str:
    """The fields of named tuples that compiled forms take by their place, as text: by module, and by class."""
    found: dict[str, dict[str, dict[str, int]]] = {}
    for (module, name), fields in numbers.items():
        if fields:
            found.setdefault(f"steelyard.science.{module}", {})[name] = fields
    return repr(found)


def _codes(path: Path, module: str) -> dict[str, CodeType]:
    """The code of a module's functions and methods."""
    whole = compile(path.read_text(encoding="utf-8"), str(path), "exec", dont_inherit=True)
    found = {}
    for code in whole.co_consts:
        if isinstance(code, CodeType):
            found[mangled(module, code.co_name)] = code
            inner = [c for c in code.co_consts if isinstance(c, CodeType)]
            found |= {f"{mangled(module, code.co_name)}.{c.co_name}": c for c in inner}
    return found


def _field_type(annotation: str) -> str:
    if annotation in DOUBLES:
        return "double"
    return "list" if annotation.startswith("list[") else "object"
