"""Reasons, cautions and notes: a stable code with parameters, and its English text.

The text is made from a template and the parameters, so that another language is another set of templates.
"""

import msgspec

_templates: dict[str, str] = {}


class Message(msgspec.Struct, frozen=True):
    """A coded message. ``params`` hold every number of the text, with units in their names."""

    code: str
    params: dict[str, float | int | str]

    @property
    def text(self) -> str:
        """The English text."""
        text = _templates[self.code]
        return text.format(**self.params) if self.params else text


def template(code: str, text: str) -> str:
    """Register the English template of a code (UPPER_SNAKE) and return the code."""
    if code in _templates:
        raise ValueError(f"message code {code!r} is registered twice")
    if "{{" in text or "}}" in text:
        raise ValueError(f"message {code!r}: a text without parameters is taken as it is, so no braces are escaped")
    _templates[code] = text
    return code


def say(code: str, **params: float | int | str) -> Message:
    """A message of a registered code."""
    return Message(code, params)


def templates() -> dict[str, str]:
    """All templates by code."""
    return dict(_templates)
