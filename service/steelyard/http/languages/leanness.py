"""What of a message is told to those to whom no leanness is spoken of, and who are not asked to weigh themselves daily.

The catalogue declares it, so that nobody who says something has to know who may hear it:

- a message in a group ``of leanness`` is not told to them; where there is one of the same code with ``_SPARED`` after
  it, that is told in its place;
- a message with a parameter ``speaks`` is told them without its figure;
- no reason (``why``) is one of body fat;
- a text of pictures and documents in such a group is not shown to them (``spared_text``).
"""

from collections.abc import Mapping
from typing import Any

from steelyard.science.rails import Why
from steelyard.science.register import Message

from .english import compiled
from .parsing import ENGLISH, parameters

SPEAKS, WHY = "speaks", "why"
_OF_FAT = frozenset(why for why in Why if why.startswith("fat_"))
# In the place of a message that has to say something, of which nothing is left.
INSTEAD = Message("TALK_TO_WHO_CARES", {})


def spared(message: Message) -> Message | None:
    """The message as they are told it: with no figure that it then does not show. None where nothing is left."""
    code, params = message.code, dict(message.params)
    if code in ENGLISH.of_leanness:
        code = f"{code}_SPARED"
        if code not in ENGLISH.entries:
            return None
    elif SPEAKS in parameters(code) and params.get(SPEAKS) != "no":
        params[SPEAKS] = "no"
    elif params.get(WHY) not in _OF_FAT:
        return message
    if params.get(WHY) in _OF_FAT:
        params[WHY] = Why.THIS_PERSON
    shown = _Shown(params)
    compiled(code)(shown)
    return Message(code, {name: params[name] for name in params if name in shown.names})


def spared_text(name: str) -> str:
    """The name of the text that a picture or a document has for them in the place of one.

    Raises ``LookupError`` where it is of leanness and there is none: whoever makes the form leaves out what it names.
    """
    if name not in ENGLISH.of_leanness:
        return name
    instead = f"{name}-spared"
    if instead not in ENGLISH.entries:
        raise LookupError(f"{name} speaks of leanness, and nothing is told in its place")
    return instead


class _Shown(dict[str, Any]):
    """Parameters that note which of them a text shows."""

    def __init__(self, params: Mapping[str, Any]) -> None:
        super().__init__(params)
        self.names: set[str] = set()

    def __getitem__(self, name: str) -> Any:
        self.names.add(name)
        return super().__getitem__(name)
