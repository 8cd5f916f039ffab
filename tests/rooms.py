"""The rooms of the package and the arrows between them, drawn from the imports: ``python -m tests.rooms``.

A room is a package of the science, the layer of answers, or a layer of HTTP. An arrow goes from a room to one that it
imports. Rooms are printed by floor: each stands above all that it imports; what stands on a circle has no floor.
"""

import sys
from collections import defaultdict

import grimp

TOP = ("answers", "cli", "store", "settings")


def room_of(module: str) -> str | None:
    """The room of a module; None for the package itself."""
    _, *parts = module.split(".")
    if not parts:
        return None
    if parts[0] in ("science", "http"):
        return "/".join(parts[:2]) if len(parts) > 1 else None
    return parts[0]


def arrows() -> dict[str, set[str]]:
    """Which rooms each room imports."""
    graph = grimp.build_graph("steelyard")
    found: dict[str, set[str]] = defaultdict(set)
    for module in graph.modules:
        here = room_of(module)
        if here is None:
            continue
        found[here] |= {
            there
            for imported in graph.find_modules_directly_imported_by(module)
            if (there := room_of(imported)) not in (None, here)
        }
    return dict(found)


def floors(of: dict[str, set[str]]) -> tuple[list[list[str]], set[str]]:
    """Rooms from the ground up, and those on a circle or above one."""
    left, done, levels = {room: set(below) for room, below in of.items()}, set[str](), list[list[str]]()
    while free := sorted(room for room, below in left.items() if below <= done):
        levels.append(free)
        done |= set(free)
        for room in free:
            del left[room]
    return levels, set(left)


def main() -> int:
    """Draw; the exit code says whether there is a circle."""
    of = arrows()
    levels, circles = floors(of)
    for number, level in reversed(list(enumerate(levels))):
        for room in level:
            print(f"{number:2}  {room:24} -> {', '.join(sorted(of[room])) or '-'}")
    print(f"{len(of)} rooms, {sum(map(len, of.values()))} arrows, 0 up, {len(circles)} on a circle {sorted(circles)}")
    return 1 if circles else 0


if __name__ == "__main__":
    sys.exit(main())
