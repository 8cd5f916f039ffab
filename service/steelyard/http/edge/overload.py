"""Whether the process has more to do than it can answer in time: how late its event loop is.

Callers who would wait for seconds are better told so at once, and sent to another replica.
"""

import asyncio
import math

_LOOK_SECONDS = 0.25
_CALM_SECONDS = 0.5  # at this it is no longer too late, or sooner where less is too late


class Overload:
    """How late the event loop was at the last look. Later than ``most_seconds`` is too late; 0 is never."""

    def __init__(self, most_seconds: float = 0.0) -> None:
        self._most_seconds = most_seconds or math.inf
        self._calm_seconds = min(_CALM_SECONDS, self._most_seconds)
        self.is_on = False
        self.late_seconds = 0.0
        self.refused_count = 0

    async def run(self) -> None:
        """Look for ever."""
        loop = asyncio.get_running_loop()
        while True:
            due = loop.time() + _LOOK_SECONDS
            await asyncio.sleep(_LOOK_SECONDS)
            self.see(loop.time() - due)

    def see(self, late_seconds: float) -> None:
        """Take note of how late it is."""
        # Late once may be a machine that slept; late again is too much to do.
        was_late, self.late_seconds = self.late_seconds > self._most_seconds, late_seconds
        self.is_on = late_seconds > self._calm_seconds if self.is_on else was_late and late_seconds > self._most_seconds
