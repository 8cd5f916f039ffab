"""Signatures of methods as people and editors read them at run time: with the fields of the request as keywords."""

import inspect
from collections.abc import Callable
from typing import Any, TypeVar

from .generated.contract import REQUEST_FIELDS, Operation

Method = TypeVar("Method", bound=Callable[..., Any])


class _Absent:
    """Stands for a field that is not sent, which is not the same as null."""

    def __repr__(self) -> str:
        return "<absent>"


ABSENT = _Absent()


def asks(operation: Operation) -> Callable[[Method], Method]:
    """Show the fields of an operation's request in a method's signature, in place of ``**request``.

    ``help()`` and completion at run time go by it; type checkers go by the annotation as it stands.
    """

    def mark(method: Method) -> Method:
        signature = inspect.signature(method)
        own = [p for p in signature.parameters.values() if p.kind is not inspect.Parameter.VAR_KEYWORD]
        fields = [
            inspect.Parameter(
                name,
                inspect.Parameter.KEYWORD_ONLY,
                default=ABSENT if hint.endswith("?") else inspect.Parameter.empty,
                annotation=hint.removesuffix("?"),
            )
            for name, hint in REQUEST_FIELDS[operation.request or ""].items()
        ]
        method.__signature__ = signature.replace(parameters=[*own, *fields])  # type: ignore[attr-defined]
        return method

    return mark
