"""What every answer has beside its value."""

from collections.abc import Callable, Iterable
from functools import wraps
from typing import Generic, NamedTuple, TypeVar

from steelyard.science.measures import doubts_about_body
from steelyard.science.member import Member, Told
from steelyard.science.numbers import Z80
from steelyard.science.rails import BY_RATIO, RailAction, Refused, ratio_decides
from steelyard.science.register import Message, entries_in, recorded

from .state import StateNow

Value = TypeVar("Value")
Asked = TypeVar("Asked")
_SHOWN_WITH = entries_in(Z80)  # whoever shows an estimate shows the ends of its interval


def _told_of(asked: object) -> Told | None:
    told = getattr(asked, "told", None)
    return told if isinstance(told, Told) else None


def _by_ratio(told: Told, refusal: Refused) -> list[Message]:
    """That the logging ratio decides, where it is what refuses."""
    # Whoever is refused by another rule may have sent a log that nobody has read.
    if told.log is None or not refusal.ids & BY_RATIO:
        return []
    return ratio_decides(Member(told).subject, *refusal.ids)


class Answered(NamedTuple, Generic[Value]):
    """A value with its reasons, its cautions, what the guard rails did, and the entries it was computed with.

    ``state`` is what is known of the member now, where the answer hands it on. ``methods`` are ids of the register of
    evidence, in the order of the alphabet: noted by what computed the answer (``answering``), so that whoever makes one
    leaves them out.
    """

    value: Value
    reasons: list[Message]
    cautions: list[Message]
    actions: list[RailAction] = []
    methods: list[str] = []
    state: StateNow | None = None


def answering(answer: Callable[[Asked], Answered[Value]]) -> Callable[[Asked], Answered[Value]]:
    """Have an answer say what it was computed with, and a refusal ask about a body that few have."""
    return _answering(answer, _SHOWN_WITH)


def answering_without_estimates(answer: Callable[[Asked], Answered[Value]]) -> Callable[[Asked], Answered[Value]]:
    """``answering``, for an answer that shows no estimate, and so no interval."""
    return _answering(answer, ())


def _answering(
    answer: Callable[[Asked], Answered[Value]], shown_with: Iterable[str]
) -> Callable[[Asked], Answered[Value]]:
    recording = recorded(answer, *shown_with)

    @wraps(answer)
    def answered(asked: Asked) -> Answered[Value]:
        try:
            (value, reasons, cautions, actions, _, state), methods = recording(asked)
        except Refused as refusal:
            told = _told_of(asked)
            doubts = () if told is None else (*doubts_about_body(told.person), *_by_ratio(told, refusal))
            if not doubts:
                raise
            raise refusal.doubting(doubts) from refusal
        return Answered(value, reasons, cautions, actions, methods, state)

    return answered
