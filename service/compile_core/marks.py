"""What is marked in the core to be compiled, read from its text."""

import ast
from collections.abc import Iterator
from typing import NamedTuple

from syntax import c_type_of, is_column, is_double, names_in

ENTRY, INLINED = "compiled", "inlined"


class NotRewritten(Exception):  # noqa: N818 - named for what happened
    """A marked function has something whose compiled form might not do the same."""


def mangled(module: str, name: str) -> str:
    """The name in the extension module of what the core has as ``name`` in ``module`` (``room.module``)."""
    return f"{module.replace('.', '_')}__{name}"


class Marked(NamedTuple):
    """A function to rewrite, and the module it is from."""

    module: str
    node: ast.FunctionDef
    is_entry: bool  # called from Python, and not only from what is compiled as well
    owner: ast.ClassDef | None = None

    def refusal(self, node: ast.AST, why: str) -> "NotRewritten":
        """That ``node`` of it cannot be rewritten, with file and line."""
        return NotRewritten(f"{self.module.replace('.', '/')}.py:{getattr(node, 'lineno', self.node.lineno)}: {why}")

    @property
    def name(self) -> str:
        return self.node.name if self.owner else mangled(self.module, self.node.name)

    @property
    def full_name(self) -> str:
        """Under which the core knows it."""
        return f"{mangled(self.module, self.owner.name)}.{self.node.name}" if self.owner else self.name


class Class(NamedTuple):
    """A class to rewrite, with the annotations of its fields."""

    module: str
    node: ast.ClassDef
    fields: dict[str, str]

    @property
    def name(self) -> str:
        return mangled(self.module, self.node.name)

    def methods(self) -> list[Marked]:
        return [
            Marked(self.module, node, node.name == "__init__" or bool(node.decorator_list), self.node)
            for node in self.node.body
            if isinstance(node, ast.FunctionDef)
        ]


class Known(NamedTuple):
    """All that is marked, by module and name; and of one module, where its global names come from."""

    functions: dict[tuple[str, str], Marked]
    classes: dict[tuple[str, str], Class]
    origins: dict[str, tuple[str, str]]
    private: dict[str, str]  # the named tuples that never leave their module, with their C types where they have one
    column_fields: dict[str, set[str]]  # of the core's classes, by name: which fields are columns
    widths: dict[tuple[str, str], int]  # how many numbers a row has, by what describes it
    wholes: set[tuple[str, str]]  # constants that are whole numbers
    numbers: dict[tuple[str, str], dict[str, int]]  # of named tuples: the fields that are numbers, with their places


def fields_of(node: ast.ClassDef) -> dict[str, str]:
    """The fields that ``__init__`` sets, with their annotations or those of the parameters they are set to."""
    (init,) = (n for n in node.body if isinstance(n, ast.FunctionDef) and n.name == "__init__")
    parameters = {a.arg: ast.unparse(a.annotation) for a in init.args.args if a.annotation is not None}
    found = {}
    for statement in init.body:
        if isinstance(statement, ast.AnnAssign) and isinstance(statement.target, ast.Attribute):
            found[statement.target.attr] = ast.unparse(statement.annotation)
        elif isinstance(statement, ast.Assign) and isinstance(statement.value, ast.Name):
            (target,) = statement.targets
            if isinstance(target, ast.Attribute) and statement.value.id != "ops":
                found[target.attr] = parameters[statement.value.id]
    return found


def mark_of(node: ast.FunctionDef | ast.ClassDef) -> str | None:
    """The mark that a function or class carries."""
    for decorator in node.decorator_list:
        if isinstance(decorator, ast.Name) and decorator.id in (ENTRY, INLINED):
            return decorator.id
    return None


def faces_of(trees: dict[str, ast.Module]) -> dict[tuple[str, str], tuple[str, str]]:
    """Where the names that a room's ``__init__`` shows come from: (room, name) -> (room.module, name)."""
    return {
        (room, alias.asname or alias.name): (f"{room}.{node.module}", alias.name)
        for room, tree in trees.items()
        for node in tree.body
        if isinstance(node, ast.ImportFrom) and node.level == 1
        for alias in node.names
    }


def origins_of(
    module: str, tree: ast.Module, faces: dict[tuple[str, str], tuple[str, str]]
) -> dict[str, tuple[str, str]]:
    """Where the global names of a module come from, within the package."""
    room = module.partition(".")[0]
    found: dict[str, tuple[str, str]] = {}
    for node in tree.body:
        if isinstance(node, ast.ImportFrom) and node.level == 1 and node.module:
            found |= {alias.asname or alias.name: (f"{room}.{node.module}", alias.name) for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.level == 2 and node.module:
            found |= {alias.asname or alias.name: faces[node.module, alias.name] for alias in node.names}
        elif isinstance(node, ast.ClassDef | ast.FunctionDef):
            found[node.name] = (module, node.name)
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            found |= {n.id: (module, n.id) for t in targets for n in ast.walk(t) if isinstance(n, ast.Name)}
    return found


def private_tuples(tree: ast.Module) -> dict[str, str]:
    """The named tuples of a module that never leave it, with the C type of those that hold numbers alone."""
    found: dict[str, str] = {}
    for name, fields in _named_tuples(tree):
        if name[0] == "_":
            kinds = [c_type_of(field.annotation, found).strip() for field in fields]
            found[name] = f"({', '.join(kinds)})" if all(kinds) else ""
    return found


def number_fields(module: str, tree: ast.Module) -> dict[tuple[str, str], dict[str, int]]:
    """The fields of a module's named tuples that are numbers, with their places."""
    return {
        (module, name): {f.target.id: i for i, f in enumerate(fields) if is_double(f.annotation)}  # type: ignore[union-attr]
        for name, fields in _named_tuples(tree)
    }


def _named_tuples(tree: ast.Module) -> Iterator[tuple[str, list[ast.AnnAssign]]]:
    for node in tree.body:
        if isinstance(node, ast.ClassDef) and any("NamedTuple" in names_in(base) for base in node.bases):
            yield node.name, [field for field in node.body if isinstance(field, ast.AnnAssign)]


def column_fields(tree: ast.Module) -> dict[str, set[str]]:
    """The fields of a module's classes that are columns."""
    found = {}
    for cls in tree.body:
        if isinstance(cls, ast.ClassDef):
            fields = [n for n in cls.body if isinstance(n, ast.AnnAssign) and is_column(n.annotation)]
            found[cls.name] = {n.target.id for n in fields if isinstance(n.target, ast.Name)}
    return found


def row_widths(module: str, tree: ast.Module) -> dict[tuple[str, str], int]:
    """How many numbers there are in what may describe a row: a named tuple, or a name for a tuple's type."""
    found = {}
    for node in tree.body:
        match node:
            case ast.ClassDef(name=name, bases=[ast.Name(id="NamedTuple")]):
                found[module, name] = sum(isinstance(n, ast.AnnAssign) for n in node.body)
            case ast.Assign(
                targets=[ast.Name(id=name)],
                value=ast.Subscript(value=ast.Name(id="tuple"), slice=ast.Tuple(elts=elements)),
            ):
                found[module, name] = len(elements)
    return found


def whole_constants(module: str, tree: ast.Module) -> set[tuple[str, str]]:
    """The constants of a module that are whole numbers: written as one, or made one."""
    found = set()
    for node in tree.body:
        match node:
            case ast.Assign(targets=[ast.Name(id=name)], value=ast.Constant(value=value)) if type(value) is int:
                found.add((module, name))
            case ast.Assign(targets=[ast.Name(id=name)], value=ast.Call(func=ast.Name(id="int" | "whole_constant"))):
                found.add((module, name))
    return found
