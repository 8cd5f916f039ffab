"""What can be moved: every registered constant, and every coefficient of an equation, where it is written."""

import ast
import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

SCIENCE = Path(__file__).resolve().parents[2] / "service" / "steelyard" / "science"
# Rows of coefficients, by the class that holds them. The fields that tell where a row applies count as well.
_ROWS = {
    "Terms",
    "_TwoComponent",
    "_Girths",
    "_Quadratic",
    "_Band",
    "_Jackson",
    "_Deurenberg",
    "_Gallagher",
    "FatRange",
}


class Move(NamedTuple):
    """A change of one number: of a constant by its id, or of a literal by its place in a module.

    ``named_by``: the entries of which one must be told by every answer that it moves; empty for a constant, which is
    told itself or by the equations that own it.
    """

    name: str
    factor: float
    constant: str = ""
    is_whole: bool = False
    module: str = ""
    line: int = 0
    column: int = 0
    named_by: tuple[str, ...] = ()


def moved(value: float, factor: float, is_whole: bool) -> float:
    """A number changed by a factor, or the next whole number, or off zero."""
    if is_whole:
        return value + 1
    return value * factor if value else factor - 1.0


def constants(ids: Mapping[str, object], factor: float) -> list[Move]:
    """Every constant. Those that are made whole numbers take the next one."""
    wholes = {
        id
        for path in SCIENCE.glob("*/*.py")
        for id in re.findall(r'\bint\(\s*constant\(\s*"(\w+)"', path.read_text(encoding="utf-8"))
    }
    return [Move(id, factor, constant=id, is_whole=id in wholes) for id in ids]


def coefficients(factor: float) -> list[Move]:
    """Every coefficient that is held as data."""
    return [move._replace(factor=factor) for path in sorted(SCIENCE.glob("*/*.py")) for move in _in_module(path)]


def _in_module(path: Path) -> Iterator[Move]:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    module = f"steelyard.science.{path.parent.name}.{path.stem}"
    names = _names_by_statement(tree)
    equations = dict(_equations(tree, names))
    for statement in tree.body:
        defined = _defined(statement)
        for call, literal in _literals(statement):
            owners = tuple(_ids_around(statement, call)) or tuple(
                id for id, reached in equations.items() if reached & defined
            )
            if not owners:
                continue
            value = literal.value
            assert isinstance(value, int | float)
            text = f"{path.stem}:{literal.lineno}:{literal.col_offset} {value}"
            # A whole number in a band is an age.
            is_whole = type(value) is int and isinstance(call, ast.Call) and ast.unparse(call.func) == "_Band"
            yield Move(text, 1.0, "", is_whole, module, literal.lineno, literal.col_offset, owners)


def _literals(statement: ast.stmt) -> Iterator[tuple[ast.AST, ast.Constant]]:
    """The numbers in rows of coefficients, with the row."""
    rows: list[ast.AST] = [
        node for node in ast.walk(statement) if isinstance(node, ast.Call) and ast.unparse(node.func) in _ROWS
    ]
    if isinstance(statement, ast.ClassDef) and statement.name in _ROWS:
        rows.append(statement)
    for row in rows:
        for node in ast.walk(row):
            if isinstance(node, ast.Constant) and type(node.value) in (int, float) and node.value:
                if isinstance(row, ast.ClassDef) and not _is_default(row, node):
                    continue
                yield row, node


def _is_default(cls: ast.ClassDef, literal: ast.Constant) -> bool:
    fields = [n.value for n in cls.body if isinstance(n, ast.AnnAssign) and n.value is not None]
    return any(literal in ast.walk(value) for value in fields)


def _ids_around(statement: ast.stmt, row: ast.AST) -> Iterator[str]:
    """The id of the equation that is defined around a row."""
    for call in ast.walk(statement):
        if not isinstance(call, ast.Call) or row not in ast.walk(call):
            continue
        for keyword in call.keywords:
            if keyword.arg == "id" and isinstance(keyword.value, ast.Constant):
                yield str(keyword.value.value)
        if ast.unparse(call.func) == "_eer":
            yield f"eer_{ast.unparse(call.args[0]).split('.')[1].lower()}"


def _defined(statement: ast.stmt) -> set[str]:
    if isinstance(statement, ast.FunctionDef | ast.ClassDef):
        return {statement.name}
    return {n.id for n in ast.walk(statement) if isinstance(n, ast.Name) and isinstance(n.ctx, ast.Store)}


def _names_by_statement(tree: ast.Module) -> dict[str, set[str]]:
    """What each name of a module is made from."""
    found: dict[str, set[str]] = {}
    for statement in tree.body:
        parts: list[ast.AST] = [statement]
        if isinstance(statement, ast.FunctionDef):
            parts = [*statement.args.defaults, *statement.body]
        names = {n.id for part in parts for n in ast.walk(part) if isinstance(n, ast.Name)}
        for name in _defined(statement):
            found.setdefault(name, set()).update(names)
    return found


def _equations(tree: ast.Module, names: Mapping[str, set[str]]) -> Iterator[tuple[str, set[str]]]:
    """The equations of a module, with all the names of it that their functions reach."""
    for function in tree.body:
        if not isinstance(function, ast.FunctionDef):
            continue
        for decorator in function.decorator_list:
            if isinstance(decorator, ast.Call) and ast.unparse(decorator.func) == "equation":
                (id,) = (a.value for a in decorator.args[:1] if isinstance(a, ast.Constant))
                reached: set[str] = set()
                more = {function.name}
                while more:
                    reached |= more
                    more = {name for one in more for name in names.get(one, ())} - reached
                yield str(id), reached
