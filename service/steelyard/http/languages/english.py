"""English, which every answer carries: its messages compiled, since an answer has dozens.

The library that reads the other languages takes some sixty microseconds a message, and a message here two. What is
compiled is the library's own syntax tree, one message at its first use; a test compares every message with the
library. What English does not need is not known here, and is an error when a text with it is compiled.
"""

from collections.abc import Callable, Mapping
from datetime import date
from decimal import Decimal
from functools import cache
from typing import TYPE_CHECKING, Any

from steelyard.science.register import Message

from .parsing import ENGLISH

if TYPE_CHECKING:
    from fluent.syntax import ast

Params = Mapping[str, Any]
_Part = Callable[[Params], str]
_MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
           "November", "December")  # fmt: skip
# Of a number whose text says nothing else (ECMA-402, Intl.NumberFormat).
_MOST_DECIMALS = 3
_SCALES = (1.0, 10.0, 100.0, 1000.0)


def english(message: Message) -> str:
    """The English text of a message. Raises ``KeyError`` for a code or a parameter that is not there."""
    return compiled(message.code)(message.params)


def as_told(message: Message) -> Message:
    """The message with its figures as fine as any text tells them."""
    params = {
        name: round(value, _MOST_DECIMALS) if isinstance(value, float) else value
        for name, value in message.params.items()
    }
    return Message(message.code, params)


@cache
def compiled(name: str) -> _Part:
    """What fills in the parameters of an entry."""
    from fluent.syntax import FluentParser, ast  # with the first message, not with the start

    entry = FluentParser(with_spans=False).parse_entry(ENGLISH.entries[name])
    if not isinstance(entry, ast.Message | ast.Term) or entry.value is None:
        raise ValueError(f"en: {name} cannot be read")
    return _Compiler(ast).pattern(entry.value)


class _Compiler:
    """Makes functions of a syntax tree."""

    def __init__(self, tree: Any) -> None:
        self.ast = tree

    def pattern(self, pattern: "ast.Pattern") -> _Part:
        """What makes the text of a pattern."""
        texts, filled = list[str | None](), list[_Part]()
        for one in pattern.elements:
            shown = getattr(one, "expression", None)
            texts.append(None if shown is not None else one.value)  # type: ignore[union-attr]
            if shown is not None:
                filled.append(self.placeable(shown))
        if not filled:
            whole = "".join(text for text in texts if text is not None)
            return lambda _: whole
        if len(texts) == 1:
            return filled[0]
        form = "".join("%s" if text is None else text.replace("%", "%%") for text in texts)
        if len(filled) == 1:
            (only,) = filled
            return lambda params: form % only(params)
        return lambda params: form % tuple([part(params) for part in filled])

    def placeable(self, shown: Any) -> _Part:
        """What stands between braces."""
        match type(shown).__name__:
            case "VariableReference":
                return _variable(shown.id.name)
            case "FunctionReference":
                return self.call(shown)
            case "SelectExpression":
                return self.select(shown)
            case "MessageReference":
                return compiled(shown.id.name)
            case "TermReference":
                return compiled(f"-{shown.id.name}")
            case "StringLiteral":
                literal = str(shown.value)
                return lambda _: literal
            case other:
                raise ValueError(f"en: {other} is not known")

    def call(self, call: "ast.FunctionReference") -> _Part:
        """A number with at most so many decimals, or a date."""
        (of,) = call.arguments.positional
        name = of.id.name  # type: ignore[union-attr]
        named = {one.name.name: one.value.value for one in call.arguments.named}
        match call.id.name, named:
            case "NUMBER", {"maximumFractionDigits": digits} if len(named) == 1:
                return _number(name, int(digits))
            case "DATETIME", {"dateStyle": "long"} if len(named) == 1:
                return lambda params: _long(date.fromisoformat(params[name]))
        raise ValueError(f"en: {call.id.name} with {', '.join(named)} is not known")

    def select(self, select: "ast.SelectExpression") -> _Part:
        """One of several texts, by a number, its plural, or a code."""
        name = select.selector.id.name  # type: ignore[union-attr]
        texts: dict[Any, _Part] = {}
        default: _Part | None = None
        for variant in select.variants:
            key: Any = getattr(variant.key, "name", None) or float(variant.key.value)  # type: ignore[union-attr]
            texts[key] = self.pattern(variant.value)
            default = texts[key] if variant.default else default

        def chosen(params: Params) -> str:
            value = params[name]
            found = texts.get(value)
            if found is None:
                found = texts.get("one") if value == 1 else None
            return (found or default)(params)  # type: ignore[misc]

        return chosen


def _variable(name: str) -> _Part:
    decimal = _decimal(_MOST_DECIMALS)

    def text(params: Params) -> str:
        value = params[name]
        return value if isinstance(value, str) else decimal(value)

    return text


def _number(name: str, digits: int) -> _Part:
    decimal = _decimal(digits)
    return lambda params: decimal(params[name])


def _decimal(digits: int) -> Callable[[float], str]:
    """Writes a number with groups of three, at most so many decimals, halves to the even digit."""
    scale, form = _SCALES[digits], f"z,.{digits}f"  # no "-0"

    def text(value: float) -> str:
        if isinstance(value, int):
            return f"{value:,}"
        # Of what is printed, not of the binary number, a half is seen in the digits.
        is_half = 0.499999 < abs(value) * scale % 1.0 < 0.500001
        written = format(Decimal(repr(value)) if is_half else value, form)
        return written.rstrip("0").rstrip(".") if digits else written

    return text


def _long(day: date) -> str:
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"
