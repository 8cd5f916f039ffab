"""What every answer has beside its value."""

from collections.abc import Callable
from functools import wraps
from typing import Generic, NamedTuple, TypeVar

from steelyard.science.numbers import Z80
from steelyard.science.rails import RailAction
from steelyard.science.register import Message, Recording, entries_in, record, traced

Value = TypeVar("Value")
Asked = TypeVar("Asked")
_SHOWN_WITH = entries_in(Z80)  # whoever shows an estimate shows the ends of its interval


class Answered(NamedTuple, Generic[Value]):
    """A value with its reasons, its cautions, what the guard rails did, and the entries it was computed with.

    ``methods`` are ids of the register of evidence, in the order of the alphabet: noted by what computed the answer
    (``answering``), so that whoever makes one leaves them out.
    """

    value: Value
    reasons: list[Message]
    cautions: list[Message]
    actions: list[RailAction] = []
    methods: tuple[str, ...] = ()


def answering(answer: Callable[[Asked], Answered[Value]]) -> Callable[[Asked], Answered[Value]]:
    """Have an answer say what it was computed with."""
    noting = traced(answer)

    @wraps(answer)
    def answered(asked: Asked) -> Answered[Value]:
        with Recording() as recording:
            record(*_SHOWN_WITH)
            made = noting(asked)
        return made._replace(methods=recording.entries())

    return answered
