"""Which notes say of entries that they did not count as they were sent, and many of a kind as one."""

from collections import Counter
from collections.abc import Iterable

from ..register import Message, say
from .cleaning import STEPS_SLIP, STEPS_TWICE
from .intake_slips import INTAKE_SLIP, INTAKE_TWICE, KILOJOULES
from .weight_slips import DECIMAL_SLIP, SET_ASIDE, UNIT_MIX_UP

SLIPS = frozenset(
    {UNIT_MIX_UP, SET_ASIDE, DECIMAL_SLIP, INTAKE_TWICE, KILOJOULES, INTAKE_SLIP, STEPS_TWICE, STEPS_SLIP}
)
# What an app does to all entries alike: pounds sent as kilograms, each meal sent as a day's intake. Of more than these
# the first is named, and how many others there are (judgement).
_ALIKE, _MOST_NAMED = frozenset({UNIT_MIX_UP, INTAKE_TWICE}), 3


def gathered(notes: Iterable[Message]) -> list[Message]:
    """The notes, many of a kind as one."""
    notes = list(notes)
    counts = Counter(note.code for note in notes if note.code in _ALIKE)
    found: dict[object, Message] = {}
    for at, note in enumerate(notes):
        if counts[note.code] <= _MOST_NAMED:
            found[at] = note
        else:
            found.setdefault(note.code, say(note.code, **{**note.params, "others": counts[note.code] - 1}))
    return list(found.values())
