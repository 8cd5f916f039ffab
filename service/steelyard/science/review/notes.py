"""Which notes on a log a review tells: what is odd about one day, once, and what goes on, as long as it does."""

from collections.abc import Sequence
from datetime import date

from ..log import ABOUT_DIRECTION, ABOUT_ONE_DAY, WATER_JUMP
from ..register import Basis, Message, constant

NOTED_DAYS = constant(
    "review_noted_days", 14.0, unit="d", basis=Basis.JUDGEMENT,
    summary="What is odd about one day of a log is noted by reviews up to so many days after it",
)  # fmt: skip
SEEN_LATE_DAYS = constant(
    "review_noted_late", 3.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Nor of days so long before the last review, which noted it: that one is odd, the days after it may show",
)  # fmt: skip


def still_to_note(notes: Sequence[Message], day: int, told_day: int | None) -> list[Message]:
    """The notes of a review on ``day`` without what is old, or was told by the last one, on ``told_day``.

    Whether it is too early to tell is the verdict's to say, of the phase: a week's rate may still be open then.
    A change of water is seen by what follows it, and is noted for as long as what is odd may be.
    """
    lately = day - NOTED_DAYS
    since = lately if told_day is None or told_day > day else max(lately, told_day - SEEN_LATE_DAYS)

    def is_to_tell(note: Message) -> bool:
        if note.code not in ABOUT_ONE_DAY:
            return note.code not in ABOUT_DIRECTION
        on = date.fromisoformat(str(note.params["date"])).toordinal()
        return on >= (lately if note.code == WATER_JUMP else since)

    return [note for note in notes if is_to_tell(note)]
