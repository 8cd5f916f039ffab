"""The way of a request through the layers, as it is called: ``python -m tests.walk`` prints it for every operation.

A request goes from its endpoint to one answer, from there into the science, and comes back. A step is a call from one
room into another; it climbs where the other stands above (a function handed down and called there, say). Properties and
constructors are no steps: what was made is read. What wraps a function stands aside: its caller calls the function.
"""

import sys
from collections import Counter
from collections.abc import Callable
from types import FrameType
from typing import Any, NamedTuple

from steelyard.http.app import OPERATIONS
from steelyard.science.numbers import twins

_PACKAGE = "steelyard."
_WRAPS = {
    f"{_PACKAGE}science.register.provenance",
    f"{_PACKAGE}science.numbers.twins",
    f"{_PACKAGE}science.member.facet",
    f"{_PACKAGE}answers.answered",
}
# From the top; rooms on one floor do not call each other.
_FLOORS = (
    {"http"}, {"answers"}, {"decision", "review", "season"}, {"phase"}, {"member"}, {"log"}, {"measures"}, {"rails"},
    {"body"}, {"numbers"}, {"person", "register"},
)  # fmt: skip
_FLOOR = {room: number for number, rooms in enumerate(_FLOORS) for room in rooms}


class Step(NamedTuple):
    """A call from one room into another."""

    caller: str
    room: str
    function: str

    @property
    def is_climb(self) -> bool:
        """Whether it leads up."""
        return _FLOOR[self.room] <= _FLOOR[self.caller]


def _module(frame: FrameType) -> str:
    name: str = frame.f_globals.get("__name__", "")
    return name


def room_of(module: str) -> str | None:
    """The layer of a module, or its room in the science; None for what is not ours."""
    if not module.startswith(_PACKAGE) or module in _WRAPS:
        return None
    _, layer, *rest = module.split(".")
    room = rest[0] if layer == "science" and rest else layer
    return room if room in _FLOOR else None


def steps_of(work: Callable[[], Any]) -> list[Step]:
    """The steps that a piece of work takes, as written (compiled forms are not used)."""
    found: list[Step] = []

    def notice(frame: FrameType, event: str, _: Any) -> None:
        name = frame.f_code.co_qualname
        bare = name.replace(".<locals>.", "").replace("<lambda>", "")
        if event != "call" or "<" in bare or "." in bare:
            return  # comprehensions, methods and properties belong to whoever runs or reads them
        room = room_of(_module(frame))
        caller = frame.f_back
        while caller is not None and room_of(_module(caller)) is None:
            caller = caller.f_back
        if room is not None and caller is not None and (above := room_of(_module(caller))) not in (None, room):
            assert above is not None
            found.append(Step(above, room, name))

    twins.use_compiled(False)
    work()  # caches are filled, as with every request but the first
    sys.setprofile(notice)
    try:
        work()
    finally:
        sys.setprofile(None)
        twins.use_compiled(True)
    return found


def main() -> None:
    """Print the way of the first example of each operation."""
    for operation in OPERATIONS:
        if operation.stream is not None or not operation.request_examples:
            continue
        body = next(iter(operation.request_examples.values()))
        steps = steps_of(lambda body=body, compute=operation.compute: compute(body))
        climbs = Counter(step for step in steps if step.is_climb)
        into = [step.function for step in steps if (step.caller, step.room) == ("http", "answers")]
        arrows = {(step.caller, step.room) for step in steps}
        print(f"{operation.operation_id}: into answers {into}; {len(steps)} steps on {len(arrows)} arrows")
        for step, count in sorted(climbs.items()):
            print(f"  up: {step.caller} -> {step.room} {step.function} ({count}x)")


if __name__ == "__main__":
    main()
