"""Reasons, cautions and notes: a stable code with parameters.

What a code says stands outside the science, in one file a language. Parameters are numbers, dates (ISO 8601), codes in
lower_snake, or words of the caller's own; never words of ours, which would stay in one language.
"""

import msgspec


class Message(msgspec.Struct, frozen=True):
    """A coded message. ``params`` hold every number of the text, with units in their names."""

    code: str
    params: dict[str, float | int | str]


def say(code: str, **params: float | int | str) -> Message:
    """A message of a code (UPPER_SNAKE)."""
    return Message(code, params)


def yes_or_no(is_so: bool) -> str:
    """A parameter by which a text leaves a part out."""
    return "yes" if is_so else "no"
