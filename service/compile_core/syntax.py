"""Small questions about syntax trees of the core, and small trees made."""

import ast
from collections.abc import Iterator, Mapping

DOUBLES = {"Number", "float"}
COLUMNS = {"Column", "Sequence[Number]"}


def is_double(annotation: ast.expr | None) -> bool:
    """Whether what is annotated so is a double."""
    return isinstance(annotation, ast.Name) and annotation.id in DOUBLES


def is_annotated(annotation: ast.expr | None, text: str) -> bool:
    """Whether an annotation reads so."""
    return annotation is not None and ast.unparse(annotation) == text


def is_index(annotation: ast.expr | None) -> bool:
    """Whether what is annotated so is a whole number."""
    return is_annotated(annotation, "int")


def is_column(annotation: ast.expr | None) -> bool:
    """Whether what is annotated so is a column of doubles, or None."""
    return annotation is not None and ast.unparse(annotation).removesuffix(" | None") in COLUMNS


def names_in(node: ast.AST) -> Iterator[str]:
    """The names that occur in a piece of code."""
    return (n.id for n in ast.walk(node) if isinstance(n, ast.Name))


def name_of(name: str) -> ast.Name:
    return ast.Name(name, ast.Load())


def assigned(name: str, value: ast.expr) -> ast.stmt:
    return ast.Assign([ast.Name(name, ast.Store())], value, lineno=0)


def call_of(name: str, *arguments: ast.expr) -> ast.expr:
    return ast.Call(name_of(name), list(arguments), [])


def is_of_column(node: ast.Subscript) -> bool:
    """Whether an element is a double already: that of a ``Column``."""
    return isinstance(node.value, ast.Call)


def is_steps(node: ast.expr) -> bool:
    """Whether an expression is the days of a pass of the filter."""
    return isinstance(node, ast.Attribute) and node.attr == "steps"


def is_step(node: ast.expr) -> bool:
    return isinstance(node, ast.Subscript) and is_steps(node.value)


def is_ops(node: ast.expr) -> bool:
    return (isinstance(node, ast.Name) and node.id == "ops") or ast.unparse(node) == "self._ops"


def truth(node: ast.expr) -> bool | None:
    """What an expression is known to be, or None."""
    return node.value if isinstance(node, ast.Constant) and isinstance(node.value, bool) else None


def is_scalar_flag(node: ast.expr) -> bool:
    """Whether something may hold that this is for floats: a local name, or a class's own note of it."""
    return isinstance(node, ast.Name) or ast.unparse(node) == "self._scalar"


def ops_function(node: ast.expr) -> str | None:
    return node.attr if isinstance(node, ast.Attribute) and is_ops(node.value) else None


def is_floats_test(node: ast.Compare) -> bool:
    (right,) = node.comparators[:1]
    return is_ops(node.left) and isinstance(right, ast.Name) and right.id == "FLOATS"


def is_starred(node: ast.Assign) -> bool:
    return any(isinstance(n, ast.Starred) for n in ast.walk(node))


def c_type_of(annotation: ast.expr | None, records: Mapping[str, str]) -> str:
    """The C type of what an inlined function takes or returns: a double, a tuple of them, or an object.

    ``records`` are the C types of the named tuples that have one.
    """
    if is_double(annotation):
        return "double "
    if isinstance(annotation, ast.Name) and annotation.id in records:
        return f"{records[annotation.id]} "
    if isinstance(annotation, ast.Subscript) and isinstance(annotation.value, ast.Name):
        elements = annotation.slice.elts if isinstance(annotation.slice, ast.Tuple) else []
        if annotation.value.id == "tuple" and elements and all(is_double(e) for e in elements):
            return f"({', '.join(['double'] * len(elements))}) "
    return ""
