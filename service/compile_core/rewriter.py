"""One marked function of the core, rewritten for floats alone, in Cython."""

import ast
from collections.abc import Iterable
from typing import Any

from local_types import local_types
from marks import Class, Known, Marked, mangled
from syntax import (
    assigned,
    c_type_of,
    call_of,
    is_annotated,
    is_column,
    is_double,
    is_floats_test,
    is_index,
    is_of_column,
    is_ops,
    is_scalar_flag,
    is_starred,
    is_step,
    is_steps,
    name_of,
    ops_function,
    truth,
)
from wholes import Wholes

_OPS = {name: f"_{name}" for name in ("exp", "log", "sqrt", "tanh", "maximum", "minimum")}
# All that is rewritten, or stays as it is and does the same compiled.
_SYNTAX = (
    ast.Assign, ast.AnnAssign, ast.AugAssign, ast.Expr, ast.For, ast.While, ast.If, ast.Return, ast.Break, ast.Continue,
    ast.Pass, ast.Name, ast.Constant, ast.Attribute, ast.Subscript, ast.Slice, ast.Starred, ast.Call, ast.keyword,
    ast.BinOp, ast.UnaryOp, ast.BoolOp, ast.Compare, ast.IfExp, ast.Tuple, ast.List, ast.Dict, ast.ListComp,
    ast.DictComp, ast.GeneratorExp, ast.comprehension, ast.JoinedStr, ast.FormattedValue, ast.expr_context,
    ast.unaryop, ast.boolop, ast.cmpop,
)  # fmt: skip
_OPERATORS = (ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Pow, ast.BitAnd, ast.BitOr)


class Rewriter(ast.NodeTransformer):
    """One function, for floats."""

    def __init__(self, one: Marked, known: Known) -> None:
        self._one = one
        (
            self._functions,
            self._classes,
            self._origins,
            self._private,
            self._column_fields,
            self._widths,
            wholes,
            self._numbers,
        ) = known
        self._whole = Wholes(one.node, {name for name, origin in self._origins.items() if origin in wholes})
        self._records = {name: kind for name, kind in self._private.items() if kind}
        self._typed: dict[str, str] = {}  # local names that hold an object of a rewritten class -> its C type
        self._aliases: dict[str, str] = {}  # local names of the functions of ``ops``
        self._unused_names = 0
        self._true: set[str] = set()  # local names that are true on floats
        self._rows: dict[str, int] = {}  # local names of ``Rows``, with their widths
        self._made: dict[str, list[str]] = {}  # names made up here, by their C type
        self._columns: dict[str, str] = {}  # local names of columns, with the names of their ``Column``
        self._given: dict[str, str] = {}  # those of parameters that are read as columns
        self._indices: set[str] = set()  # names of loops over whole numbers
        self._given_as_doubles: set[str] = set()  # local names that an inlined function takes as doubles
        self.taken: dict[str, tuple[str, str]] = {}
        arguments = one.node.args
        if arguments.vararg or arguments.kwarg:
            raise one.refusal(one.node, "parameters with a star are not known to the rewriter")
        self._parameters = [*arguments.posonlyargs, *arguments.args, *arguments.kwonlyargs]
        self._locals = {a.arg for a in self._parameters} | {
            n.id for n in ast.walk(one.node) if isinstance(n, ast.Name) and isinstance(n.ctx, ast.Store)
        }
        self._columns |= {a.arg: f"_of_{a.arg}" for a in self._parameters if is_column(a.annotation)}
        self._wholes = {a.arg for a in self._parameters if is_annotated(a.annotation, "Sequence[int]")}
        self._classes_of = {a.arg: a.annotation.id for a in self._parameters if isinstance(a.annotation, ast.Name)}

    def text(self) -> str:
        node = self._one.node
        body = node.body[1:] if ast.get_docstring(node, clean=False) is not None else node.body
        rewritten = ast.Module(self._block(body), [])
        parameters = {a.arg for a in self._parameters}
        doubles = {a.arg for a in self._parameters if is_double(a.annotation)}
        indices, floats = local_types(rewritten)
        indices |= self._indices
        floats |= self._given_as_doubles
        columns = set(self._columns.values()) & self._locals | set(self._given.values())
        floats -= columns
        self._refuse_none(rewritten, floats)
        lines = []
        lines += [f"    cdef {kind} {name}" for name, kind in sorted(self._typed.items())]
        for kind, made in self._made.items():
            lines += [f"    cdef {kind} {name}" for name in made]
        for kind, names in (("Py_ssize_t", indices), ("double", floats - indices), ("Rows", set(self._rows))):
            own = sorted(names & self._locals - parameters - {"_"})
            if own:
                lines.append(f"    cdef {kind} {', '.join(own)}")
        lines += [f"    cdef Column {name}" for name in sorted(columns)]
        lines += [f"    {name} = _column_of({given})" for given, name in sorted(self._given.items())]
        lines += ["    " + line for line in ast.unparse(ast.fix_missing_locations(rewritten)).splitlines()]
        return f"{self._signature(doubles)}\n" + "\n".join(lines) + "\n"

    def visit(self, node: ast.AST) -> Any:
        if isinstance(node, ast.BinOp | ast.AugAssign) and not isinstance(node.op, _OPERATORS):
            raise self._one.refusal(node, f"{type(node.op).__name__} is not known to the rewriter")
        if not isinstance(node, (*_SYNTAX, *_OPERATORS)):
            raise self._one.refusal(node, f"{type(node).__name__} is not known to the rewriter")
        if isinstance(node, ast.For | ast.While) and node.orelse:
            raise self._one.refusal(node, "a loop with an else is not known to the rewriter")
        if isinstance(node, ast.Constant) and type(node.value) is int and not self._whole.may_stand(node):
            raise self._one.refusal(node, f"write {node.value}.0: the whole number {node.value} would become it")
        return super().visit(node)

    def _refuse_none(self, tree: ast.Module, floats: set[str]) -> None:
        """A double cannot hold the None of a parameter: such a name would fail only when None comes."""
        optional = {a.arg for a in self._parameters if a.annotation is not None and "None" in ast.unparse(a.annotation)}
        for node in ast.walk(tree):
            if isinstance(node, ast.Assign) and isinstance(node.value, ast.Name) and node.value.id in optional:
                for name in floats & {t.id for t in node.targets if isinstance(t, ast.Name)}:
                    raise self._one.refusal(self._one.node, f"{name} may be None and takes part in arithmetic")

    def _signature(self, doubles: set[str]) -> str:
        arguments = self._one.node.args
        defaults: dict[str, ast.expr | None] = {
            a.arg: d for a, d in zip(arguments.args[::-1], arguments.defaults[::-1], strict=False)
        }
        defaults |= {a.arg: d for a, d in zip(arguments.kwonlyargs, arguments.kw_defaults, strict=True)}
        keyword_only = [a for a in arguments.kwonlyargs if a.arg != "ops"] if self._one.is_entry else []
        shown = []
        for a in self._parameters:
            if a.arg == "ops":
                continue
            if keyword_only and a is keyword_only[0]:
                shown.append("*")
            default = defaults.get(a.arg)
            kind = "Py_ssize_t " if is_index(a.annotation) else c_type_of(a.annotation, self._records)
            text = f"{kind}{a.arg}"
            shown.append(text if default is None else f"{text}={ast.unparse(self.visit(default))}")
        head = f"{self._one.name}({', '.join(shown)}):"
        if self._one.owner and self._one.node.decorator_list:
            return f"@property\ndef {head}"
        return f"def {head}" if self._one.is_entry else f"cdef {c_type_of(self._one.node.returns, self._records)}{head}"

    def _block(self, body: Iterable[ast.stmt]) -> list[ast.stmt]:
        made: list[ast.stmt] = []
        for statement in body:
            rewritten = self.visit(statement)
            if isinstance(rewritten, list):
                made += rewritten
            elif rewritten is not None:
                made.append(rewritten)
            if made and isinstance(made[-1], ast.Return | ast.Break | ast.Continue):
                break
        return made or [ast.Pass()]

    # Statements

    def visit_Assign(self, node: ast.Assign) -> ast.stmt | list[ast.stmt] | None:
        if is_step(node.value) and isinstance(node.targets[0], ast.Tuple):
            value = node.value
            assert isinstance(value, ast.Subscript)
            rows = self._make("Rows", "rows")
            return [
                assigned(rows, self._rows_of(value.value, node.targets[0].elts)),
                *self._unpacked(rows, self.visit(value.slice), node.targets[0].elts),
            ]
        if len(node.targets) > 1:  # a = b = 0.0
            return ast.Assign(node.targets, self.visit(node.value), lineno=0)
        target = self._named(node.targets[0])
        pairs = (
            list(zip(target.elts, node.value.elts, strict=True))
            if isinstance(target, ast.Tuple) and isinstance(node.value, ast.Tuple) and not is_starred(node)
            else [(target, node.value)]
        )
        kept = []
        for to, value in pairs:
            if is_ops(value):
                continue
            if isinstance(to, ast.Name) and isinstance(value, ast.Call) and isinstance(value.func, ast.Name):
                self._hold(to.id, self._origins.get(value.func.id))
            function = ops_function(value)
            if function is not None and isinstance(to, ast.Name):
                self._aliases[to.id] = function
                continue
            made = self.visit(value)
            if not isinstance(value, ast.Constant) and truth(made) and is_scalar_flag(to):
                if isinstance(to, ast.Name):
                    self._true.add(to.id)
                continue
            kept.append((to, made))
        if not kept:
            return None
        if len(pairs) == 1:
            return ast.Assign([self.visit(kept[0][0])], kept[0][1], lineno=0)
        return ast.Assign(
            [ast.Tuple([to for to, _ in kept], ast.Store())], ast.Tuple([v for _, v in kept], ast.Load()), lineno=0
        )

    def _named(self, target: ast.expr) -> ast.expr:
        """A target in which every ``_`` is a name of its own, so that a number that is not needed stays a double."""
        if not isinstance(target, ast.Tuple):
            return target
        names = [self._unused() if isinstance(to, ast.Name) and to.id == "_" else to for to in target.elts]
        return ast.Tuple(names, ast.Store())

    def _unused(self) -> ast.expr:
        self._unused_names += 1
        return ast.Name(f"_unused_{self._unused_names}", ast.Store())

    def visit_AnnAssign(self, node: ast.AnnAssign) -> ast.stmt | list[ast.stmt] | None:
        if node.value is None:
            return None
        width = self._row_width(node.value)
        if is_column(node.annotation) and isinstance(node.target, ast.Name):
            self._columns[node.target.id] = node.target.id
            return assigned(node.target.id, self._column(node.value))
        if width is not None and isinstance(node.target, ast.Name):
            self._rows[node.target.id] = width
            return assigned(node.target.id, call_of("Rows", ast.Constant(width)))
        return self.visit_Assign(ast.Assign([node.target], node.value, lineno=0))

    def _row_width(self, value: ast.expr) -> int | None:
        """How many numbers there are in the rows that ``rows(...)`` makes a list for, if it is that."""
        if not (isinstance(value, ast.Call) and isinstance(value.func, ast.Name) and value.func.id == "rows"):
            return None
        (kind,) = value.args
        width = self._widths.get(self._origins.get(ast.unparse(kind), ("", "")))
        if width is None:
            raise self._one.refusal(value, f"{ast.unparse(kind)} is neither a named tuple nor a tuple's type by name")
        return width

    def _column(self, value: ast.expr) -> ast.expr:
        """What a column begins as."""
        if isinstance(value, ast.List) and not value.elts:
            return call_of("Column")
        if isinstance(value, ast.BinOp) and isinstance(value.left, ast.List):
            return call_of("_column_repeated", self.visit(value.left.elts[0]), self.visit(value.right))
        return call_of("_column_of", self.visit(value))

    def _column_name(self, node: ast.expr) -> str | None:
        """The name of the ``Column`` that an expression is, if it is one by name."""
        if not isinstance(node, ast.Name) or node.id not in self._columns:
            return None
        name = self._columns[node.id]
        if name != node.id:
            self._given[node.id] = name
        return name

    def _is_column(self, node: ast.expr) -> bool:
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
            return node.attr in self._column_fields.get(self._classes_of.get(node.value.id, ""), ())
        return isinstance(node, ast.Name) and node.id in self._columns

    def visit_If(self, node: ast.If) -> ast.stmt | list[ast.stmt] | None:
        test = self.visit(node.test)
        if (is_true := truth(test)) is not None:
            chosen = node.body if is_true else node.orelse
            return self._block(chosen) if chosen else None
        return ast.If(test, self._block(node.body), self._block(node.orelse) if node.orelse else [])

    def visit_Expr(self, node: ast.Expr) -> ast.stmt | list[ast.stmt]:
        call = node.value
        if (
            isinstance(call, ast.Call)
            and isinstance(call.func, ast.Attribute)
            and call.func.attr == "append"
            and isinstance(call.func.value, ast.Name)
            and call.func.value.id in self._rows
        ):
            (row,) = call.args
            width = self._rows[call.func.value.id]
            if not isinstance(row, ast.Tuple) or len(row.elts) != width:
                raise self._one.refusal(node, f"a row here is a tuple of {width} numbers, written out")
            to = self._make("double*", "row")
            return [
                ast.parse(f"{to} = {call.func.value.id}.grow()").body[0],
                *(
                    ast.Assign([ast.Subscript(name_of(to), ast.Constant(i), ast.Store())], self.visit(value), lineno=0)
                    for i, value in enumerate(row.elts)
                ),
            ]
        return self.generic_visit(node)  # type: ignore[return-value]

    def visit_For(self, node: ast.For) -> ast.stmt | list[ast.stmt]:
        over = node.iter
        if isinstance(over, ast.Call) and isinstance(over.func, ast.Name) and isinstance(node.target, ast.Tuple):
            if over.func.id == "reversed" and is_steps(over.args[0]):
                at = self._make("Py_ssize_t", "at")
                return self._over_rows(over.args[0], at, "range({}.count - 1, -1, -1)", node.target.elts, node.body)
            day, row = (*node.target.elts, None)[:2]
            if over.func.id == "enumerate" and isinstance(day, ast.Name) and self._is_column(over.args[0]):
                assert isinstance(row, ast.Name)
                return self._indexed(node, over.args, [row], day.id)
            if over.func.id == "enumerate" and isinstance(row, ast.Tuple) and isinstance(day, ast.Name):
                what = over.args[0]
                if isinstance(what, ast.Call) and isinstance(what.func, ast.Name) and what.func.id == "zip":
                    return self._indexed(node, what.args, row.elts, day.id)
                return self._over_rows(what, day.id, "range({}.count)", row.elts, node.body)
            if over.func.id == "zip" and all(isinstance(t, ast.Name) for t in node.target.elts):
                return self._indexed(node, over.args, node.target.elts)
        if self._one.owner and isinstance(over, ast.Attribute) and isinstance(node.target, ast.Name):
            of = self._classes[self._one.module, self._one.owner.name].fields.get(over.attr, "")
            self._hold(node.target.id, self._origins.get(of.removeprefix("list[").removesuffix("]")))
        if self._is_column(over):
            return self._indexed(node, [over], [node.target])
        if isinstance(over, ast.Name) and over.id in self._wholes and isinstance(node.target, ast.Name):
            self._indices.add(node.target.id)
        return self._plain_for(node)

    def _hold(self, name: str, origin: tuple[str, str] | None) -> None:
        """Note that a name holds objects of a rewritten class, if that is what ``origin`` is."""
        if origin in self._classes:
            self._typed[name] = self._classes[origin].name

    def _over_rows(
        self, what: ast.expr, at: str, order: str, targets: list[ast.expr], body: list[ast.stmt]
    ) -> list[ast.stmt]:
        """A loop over rows, by index."""
        rows = self._make("Rows", "rows")
        loop = ast.parse(f"for {at} in {order.format(rows)}: pass").body[0]
        assert isinstance(loop, ast.For)
        loop.body = [*self._unpacked(rows, name_of(at), targets), *self._block(body)]
        return [assigned(rows, self._rows_of(what, targets)), loop]

    def _rows_of(self, what: ast.expr, targets: list[ast.expr]) -> ast.expr:
        """``what`` as rows, which have as many numbers as there are targets, or more where one is starred."""
        starred = sum(isinstance(target, ast.Starred) for target in targets)
        least = ast.Constant(len(targets) - starred)
        return call_of("_rows_of", self.visit(what), least, ast.Constant(bool(starred)))

    def _indexed(
        self, node: ast.For, columns: list[ast.expr], targets: list[ast.expr], at: str | None = None
    ) -> list[ast.stmt]:
        """A loop over columns of one length, by index: no tuple is made for each row."""
        at = at or self._make("Py_ssize_t", "at")
        taken: list[ast.stmt] = []
        names = []
        elements: list[ast.stmt] = []
        for target, column in zip(targets, columns, strict=True):
            name = self._column_name(column)
            if name is None:
                is_column = self._is_column(column)
                name = self._make("Column" if is_column else "object", "column")
                taken.append(assigned(name, call_of("_column_of", column) if is_column else self.visit(column)))
            names.append(name)
            of = f"{name}.data" if self._is_column(column) else name
            elements += ast.parse(f"{ast.unparse(target)} = {of}[{at}]").body
        lengths = " == ".join(f"len({name})" for name in names)
        check = f"if not {lengths}: raise ValueError('columns of different lengths')" if len(names) > 1 else ""
        loop = ast.parse(f"for {at} in range(len({names[0]})): pass").body[0]
        assert isinstance(loop, ast.For)
        loop.body = elements
        loop.body += self._block(node.body)
        return [*taken, *ast.parse(check).body, loop]

    def _unpacked(self, rows: str, day: ast.expr, targets: list[ast.expr]) -> list[ast.stmt]:
        """The numbers of a row, to the names of a tuple; ``_`` takes none and ``*_`` the most."""
        row = self._make("double*", "row")
        made: list[ast.stmt] = [assigned(row, ast.Call(ast.Attribute(name_of(rows), "at", ast.Load()), [day], []))]
        for position, target in enumerate(targets):
            is_after = any(isinstance(t, ast.Starred) for t in targets[:position])
            if isinstance(target, ast.Name) and target.id != "_":
                at = f"{rows}.width - {len(targets) - position}" if is_after else str(position)
                made += ast.parse(f"{target.id} = {row}[{at}]").body
        return made

    def _make(self, kind: str, name: str) -> str:
        made = self._made.setdefault(kind, [])
        made.append(f"_{name}_{sum(map(len, self._made.values()))}")
        return made[-1]

    def _plain_for(self, node: ast.For) -> ast.stmt:
        return ast.For(node.target, self.visit(node.iter), self._block(node.body), [], lineno=0)

    # Expressions

    def visit_BinOp(self, node: ast.BinOp) -> ast.expr:
        made: ast.BinOp = self.generic_visit(node)  # type: ignore[assignment]
        if not isinstance(made.left, ast.List | ast.ListComp):
            made.left, made.right = self._number(made.left), self._number(made.right)
        return made

    def _number(self, node: ast.expr) -> ast.expr:
        """What takes part in arithmetic, as a double where it is an element of a column or a field of an object."""
        is_element = (
            isinstance(node, ast.Subscript) and not isinstance(node.slice, ast.Slice) and not is_of_column(node)
        )
        is_field = (
            isinstance(node, ast.Attribute)
            and isinstance(node.value, ast.Name)
            and node.value.id not in self._typed
            and node.value.id not in ("self", "_math")
        )
        return call_of("_number", node) if is_element or is_field else node

    def visit_Compare(self, node: ast.Compare) -> ast.expr:
        if is_floats_test(node):
            return ast.Constant(isinstance(node.ops[0], ast.Is))
        return self.generic_visit(node)  # type: ignore[return-value]

    def visit_UnaryOp(self, node: ast.UnaryOp) -> ast.expr:
        made: ast.UnaryOp = self.generic_visit(node)  # type: ignore[assignment]
        if isinstance(made.op, ast.Not) and (is_true := truth(made.operand)) is not None:
            return ast.Constant(not is_true)
        return made

    def visit_BoolOp(self, node: ast.BoolOp) -> ast.expr:
        decides = isinstance(node.op, ast.Or)
        values: list[ast.expr] = []
        for value in node.values:
            made = self.visit(value)
            if (is_true := truth(made)) is not None:
                if is_true is decides:
                    return made if not values else ast.BoolOp(node.op, [*values, made])
                continue
            values.append(made)
        if not values:
            return ast.Constant(not decides)
        return values[0] if len(values) == 1 else ast.BoolOp(node.op, values)

    def visit_IfExp(self, node: ast.IfExp) -> ast.expr:
        test = self.visit(node.test)
        if (is_true := truth(test)) is not None:
            return self.visit(node.body if is_true else node.orelse)  # type: ignore[no-any-return]
        return ast.IfExp(test, self.visit(node.body), self.visit(node.orelse))

    def visit_Call(self, node: ast.Call) -> ast.expr:
        function = ops_function(node.func)
        if function is None and isinstance(node.func, ast.Name):
            function = self._aliases.get(node.func.id)
        if function == "where":
            condition, if_true, if_false = (self.visit(a) for a in node.args)
            return ast.IfExp(condition, if_true, if_false)
        if function is not None:
            return call_of(_OPS[function], *(self.visit(a) for a in node.args))
        if isinstance(node.func, ast.Name) and node.func.id not in self._locals:
            # Named tuples that never leave their module are read by position alone, and plain ones are made faster.
            if node.func.id in self._private and not node.keywords:
                return ast.Tuple([self.visit(a) for a in node.args], ast.Load())
            if node.func.id == "is_any":
                return self.visit(node.args[0])  # type: ignore[no-any-return]
            origin = self._origins.get(node.func.id, ("", ""))
            one = self._functions.get(origin) or self._classes.get(origin)
            if one is not None:
                self._note_doubles(one, node)
                return ast.Call(
                    name_of(one.name),
                    [self.visit(a) for a in node.args if not is_ops(a)],
                    [ast.keyword(k.arg, self.visit(k.value)) for k in node.keywords if k.arg != "ops"],
                )
        return self.generic_visit(node)  # type: ignore[return-value]

    def _note_doubles(self, one: Marked | Class, call: ast.Call) -> None:
        """Note the local names that a call hands to parameters that are doubles."""
        if isinstance(one, Marked) and not one.is_entry:
            for parameter, given in zip(one.node.args.args, call.args, strict=False):
                if is_double(parameter.annotation) and isinstance(given, ast.Name) and given.id in self._locals:
                    self._given_as_doubles.add(given.id)

    def visit_Subscript(self, node: ast.Subscript) -> ast.expr:
        name = None if isinstance(node.slice, ast.Slice) else self._column_name(node.value)
        if name is None:
            return self.generic_visit(node)  # type: ignore[return-value]
        element = ast.Call(ast.Attribute(name_of(name), "at", ast.Load()), [self.visit(node.slice)], [])
        return ast.Subscript(element, ast.Constant(0), node.ctx)

    def visit_Attribute(self, node: ast.Attribute) -> ast.expr:
        if is_scalar_flag(node) and isinstance(node.ctx, ast.Load):
            return ast.Constant(True)
        if isinstance(node.value, ast.Name) and node.value.id == "math":
            if node.attr in _OPS or node.attr == "inf":
                return name_of(_OPS.get(node.attr, "_INFINITY"))
            return ast.Attribute(name_of("_math"), node.attr, ast.Load())
        if isinstance(node.value, ast.Name) and isinstance(node.ctx, ast.Load):
            kind = self._origins.get(self._classes_of.get(node.value.id, ""), ("", ""))
            place = self._numbers.get(kind, {}).get(node.attr)
            if place is not None:
                return call_of("_field", name_of(node.value.id), ast.Constant(place))
        return self.generic_visit(node)  # type: ignore[return-value]

    def visit_Name(self, node: ast.Name) -> ast.expr:
        if node.id in self._true and isinstance(node.ctx, ast.Load):
            return ast.Constant(True)
        if node.id == "ops" and node.id in self._locals:
            return name_of(self._take("numbers.elementwise", "FLOATS"))
        if node.id in self._locals or node.id not in self._origins:
            return node
        return name_of(self._take(*self._origins[node.id]))

    def _take(self, module: str, there: str) -> str:
        name = mangled(module, there)
        self.taken[name] = (module, there)
        return name
