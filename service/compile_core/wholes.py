"""Where a whole number may stand in what is rewritten: it would become a double wherever else, 7.0 for 7."""

import ast
from collections.abc import Iterator

from syntax import is_annotated, is_index, names_in

_COUNTING = {"range", "enumerate", "len", "int"}


class Wholes:
    """The whole numbers of one function: its local names that hold nothing else, and where literals may stand."""

    def __init__(self, node: ast.FunctionDef, constants: set[str]) -> None:
        self._constants = constants
        self._parents = {child: parent for parent in ast.walk(node) for child in ast.iter_child_nodes(parent)}
        self._returns_whole = is_index(node.returns)
        parameters = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
        self._defaults = {
            default: parameter
            for parameter, default in (
                *zip(reversed(node.args.args), reversed(node.args.defaults), strict=False),
                *zip(node.args.kwonlyargs, node.args.kw_defaults, strict=True),
            )
        }
        columns = {a.arg for a in parameters if is_annotated(a.annotation, "Sequence[int]")}
        self._names = {a.arg for a in parameters if is_index(a.annotation)} | set(_counted(node, columns))
        values = _assigned(node)
        others = {a.arg for a in parameters} | _set_otherwise(node)
        self._names |= values.keys() - others
        # What is assigned anything else even once is no whole number, nor what is made from it.
        while odd := {name for name, of in values.items() if name in self._names and not all(map(self._is, of))}:
            self._names -= odd

    def may_stand(self, literal: ast.Constant) -> bool:
        """Whether a literal whole number stays one where it stands."""
        node: ast.AST = literal
        parent = self._parents[node]
        while isinstance(parent, ast.UnaryOp):
            node, parent = parent, self._parents[parent]
        match parent:
            case ast.Subscript() | ast.Slice():
                return True
            case ast.Call(func=ast.Name(id=called)):
                return called in _COUNTING
            case ast.BinOp(op=ast.Pow(), right=right) if right is node:
                return True
            case ast.BinOp(op=ast.Mult(), left=ast.List()):
                return True
            case ast.BinOp():
                return self._is(parent)
            case ast.AugAssign(target=target):
                return self._is(target)
            case ast.Compare(left=left, comparators=others):
                return all(map(self._is, (left, *others)))
            case ast.Assign(targets=[ast.Name() as target]) | ast.AnnAssign(target=ast.Name() as target):
                return self._is(target)
            case ast.Return():
                return self._returns_whole
            case ast.arguments():
                return is_index(self._defaults[node].annotation) if node in self._defaults else False
        return False

    def _is(self, node: ast.expr) -> bool:
        """Whether an expression is a whole number whatever happens."""
        match node:
            case ast.Constant(value=value):
                return type(value) is int
            case ast.Name(id=name):
                return name in self._names or name in self._constants
            case ast.UnaryOp(operand=operand):
                return self._is(operand)
            case ast.BinOp(left=left, op=ast.Add() | ast.Sub() | ast.Mult(), right=right):
                return self._is(left) and self._is(right)
            case ast.IfExp(body=body, orelse=orelse):
                return self._is(body) and self._is(orelse)
            case ast.Call(func=ast.Name(id=called)):
                return called in ("len", "int")
        return False


def _counted(node: ast.FunctionDef, columns: set[str]) -> Iterator[str]:
    """The names that loops count with."""
    for loop in ast.walk(node):
        match loop:
            case ast.For(target=ast.Name(id=name), iter=ast.Call(func=ast.Name(id="range"))):
                yield name
            case ast.For(target=ast.Tuple(elts=[first, *_]), iter=ast.Call(func=ast.Name(id="enumerate"))):
                yield from names_in(first)
            case ast.For(target=ast.Name(id=name), iter=ast.Name(id=over)) if over in columns:
                yield name


def _assigned(node: ast.FunctionDef) -> dict[str, list[ast.expr]]:
    """What each name is assigned where it is assigned alone."""
    found: dict[str, list[ast.expr]] = {}
    for statement in ast.walk(node):
        match statement:
            case (
                ast.Assign(targets=[ast.Name(id=name)], value=value)
                | ast.AnnAssign(target=ast.Name(id=name), value=ast.expr() as value)
                | ast.AugAssign(target=ast.Name(id=name), value=value)
            ):
                found.setdefault(name, []).append(value)
    return found


def _set_otherwise(node: ast.FunctionDef) -> set[str]:
    """The names that are set in tuples, by loops or in comprehensions."""
    alone = set()
    for statement in ast.walk(node):
        match statement:
            case ast.Assign(targets=[target]) | ast.AnnAssign(target=target) | ast.AugAssign(target=target):
                alone.add(target)
    names = [n for n in ast.walk(node) if isinstance(n, ast.Name) and isinstance(n.ctx, ast.Store)]
    return {name.id for name in names if name not in alone}
