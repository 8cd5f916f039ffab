"""What every answer has beside its value."""

from typing import Generic, NamedTuple, TypeVar

from steelyard.science.rails import RailAction
from steelyard.science.register import Message

Value = TypeVar("Value")
Asked = TypeVar("Asked")


class Answered(NamedTuple, Generic[Value]):
    """A value with its reasons, its cautions, what the guard rails did, and the entries it was computed with.

    ``methods`` are ids of the register of evidence, in the order of the alphabet.
    """

    value: Value
    reasons: list[Message]
    cautions: list[Message]
    actions: list[RailAction] = []
    methods: tuple[str, ...] = ()
