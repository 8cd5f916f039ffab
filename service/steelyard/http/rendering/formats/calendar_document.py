"""A calendar (RFC 5545) of all-day events, in one language.

Nothing depends on a clock: the stamp of every event is the day the answer starts on, and its UID comes from the
answer's fingerprint (a UUID, as RFC 7986 5.3 recommends), so that the same answer imported twice is one.
"""

from datetime import UTC, date, datetime, time, timedelta
from uuid import UUID, uuid5


class CalendarDocument:
    """Collects events, and gives the text at the end."""

    def __init__(self, fingerprint: str, stamp: date, language: str) -> None:
        from icalendar import Calendar  # a tenth of a second that only these answers need

        self._of, self._stamp, self._language = UUID(fingerprint), stamp, language
        self._made = Calendar()
        self._made.add("prodid", f"-//Steelyard//Plan//{language.upper()}")
        self._made.add("version", "2.0")
        self._made.add("calscale", "GREGORIAN")

    def add(self, name: str, first: date, last: date, title: str, lines: list[str]) -> None:
        """An event from ``first`` to ``last``, both included; ``name`` is its own within the answer."""
        from icalendar import Event

        event = Event()
        event.add("uid", str(uuid5(self._of, name)))
        event.add("dtstamp", datetime.combine(self._stamp, time(), UTC))
        event.add("dtstart", first)
        event.add("dtend", last + timedelta(days=1))
        event.add("summary", title, parameters={"LANGUAGE": self._language})
        event.add("description", "\n".join(lines), parameters={"LANGUAGE": self._language})
        event.add("transp", "TRANSPARENT")
        self._made.add_component(event)

    def encode(self) -> bytes:
        """The document."""
        document: bytes = self._made.to_ical()
        return document
