"""The one place where what is told to minors, in pregnancy and with an eating disorder passes: no word of leanness.

Every operation's answer and refusal goes through it (``operation``), before any form is made of it; which messages are
of leanness is declared in the catalogue of languages. What is told of the body in fields is for programs, but for a
body fat at which something ends: that is a target, and null. What is made of it for people to look at or read is told
whom it is about (``negotiation.Format``), and shows them no body fat.
"""

from collections.abc import Callable
from functools import cache, wraps
from typing import Any, get_args, get_type_hints

import msgspec

from steelyard.science.rails import ADULT_YEARS, Refused, may_hear_of_leanness
from steelyard.science.register import Message

from ..languages import INSTEAD, english, is_of_attention, spared

_CODED = frozenset(("code", "text"))
_TARGETS = frozenset(("cut_at_fat_fraction", "cut_to_fat_fraction"))


def is_spared(body: Any) -> bool:
    """Whether no leanness is spoken of to whom a request is about."""
    person = getattr(body, "profile", body)
    return not may_hear_of_leanness(getattr(person, "age_years", ADULT_YEARS), getattr(body, "screening", None))


def sparing(compute: Callable[..., Any]) -> Callable[..., Any]:
    """``compute``, whose answers and refusals speak of no leanness to those who are spared it."""

    @wraps(compute)
    def computed(body: Any, **how: Any) -> Any:
        if not is_spared(body):
            return compute(body, **how)
        try:
            return _without(compute(body, **how))
        except Refused as refused:
            raise _spared_refusal(refused) from refused

    return computed


def _spared_refusal(refused: Refused) -> Refused:
    each = [(_silent(action), field) for action, field in refused.all]
    doubts = tuple(told for doubt in refused.doubts if (told := spared(doubt)) is not None)
    return Refused(*each[0], *each[1:], doubts=doubts)


def _silent(action: Any) -> Any:
    """What a rail did, its figures left out where they are of leanness."""
    told = spared(action.message)
    if told is action.message:
        return action
    return msgspec.structs.replace(action, message=told or INSTEAD, limit=None, observed=None, unit="")


def _without(value: Any) -> Any:
    """A part of an answer without what speaks of leanness."""
    if isinstance(value, list | tuple):
        kind: Any = type(value[0]) if value else str
        if not _holds_words(kind):
            return value
        return type(value)([kept for item in value if (kept := _without_or_none(item)) is not None])
    if not isinstance(value, msgspec.Struct):
        return value
    if _is_coded(type(value)):
        kept = _without_or_none(value)
        return _told(value, INSTEAD) if kept is None else kept
    changed: dict[str, Any] = dict.fromkeys(_TARGETS.intersection(value.__struct_fields__))
    for name in _fields_with_words(type(value)):
        before = getattr(value, name)
        after = _without(before)
        if after is not before:
            changed[name] = after
    return msgspec.structs.replace(value, **changed) if changed else value


def _without_or_none(value: Any) -> Any:
    """A member of a list without what speaks of leanness: None where nothing is left of a note."""
    if not isinstance(value, msgspec.Struct) or not _is_coded(type(value)):
        return _without(value)
    coded: Any = value
    if "params" not in value.__struct_fields__ and not is_of_attention(coded.code):
        return None  # handed on from a state, and none of ours: nobody knows what it speaks of
    message = Message(coded.code, getattr(value, "params", {}))
    told = spared(message)
    if told is message:
        return value
    # What a rail did is reported, whatever is left of it to say.
    is_report = "action" in value.__struct_fields__
    return _told(value, told or INSTEAD) if told is not None or is_report else None


def _told(value: Any, message: Message) -> Any:
    """A note or a report with another message."""
    more: dict[str, Any] = {"params": message.params} if "params" in value.__struct_fields__ else {}
    if "observed" in value.__struct_fields__:
        more |= {"limit": None, "observed": None, "unit": ""}
    return msgspec.structs.replace(value, code=message.code, text=english(message), **more)


def _is_coded(kind: type) -> bool:
    return set(getattr(kind, "__struct_fields__", ())) >= _CODED


@cache
def _fields_with_words(kind: type) -> tuple[str, ...]:
    """The fields of a struct under which there may be a note, or a target."""
    hints = get_type_hints(kind)
    return tuple(name for name in hints if any(_holds_words(part) for part in _parts(hints[name])))


@cache
def _holds_words(kind: type) -> bool:
    """Whether there may be a note in a struct, or a target."""
    if _is_coded(kind):
        return True
    return issubclass(kind, msgspec.Struct) and bool(
        _TARGETS.intersection(kind.__struct_fields__) or _fields_with_words(kind)
    )


def _parts(hint: Any) -> list[type]:
    """The classes that a type hint names."""
    if isinstance(hint, type) and not get_args(hint):
        return [hint]
    return [part for inner in get_args(hint) for part in _parts(inner)]
