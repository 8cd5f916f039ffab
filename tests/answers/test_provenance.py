"""What an answer says it was computed with: whatever moves it is named by it.

Every constant and every coefficient is moved, a fresh process for each, and all examples are answered again: this knows
nothing of how an answer notes what it was computed with, and reads no code for it.
"""

import contextlib
import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from provenance.moves import Move, coefficients, constants
from steelyard.http.app import OPERATIONS
from steelyard.science.catalogue import entries
from steelyard.science.register import Kind
from steelyard.science.register.reach import owned_by

ROOT = Path(__file__).resolve().parents[2]
ENTRIES = entries()
UNREACHED = dict(
    line.split(": ", 1)
    for line in (ROOT / "tests" / "provenance" / "unreached.txt").read_text(encoding="utf-8").splitlines()
    if not line.startswith("#")
)
NOTHING = Move("nothing", 1.0)
# Of constants: of one behind a whole number, one that others are made of, one behind a table, ...; of equations, one of
# each way in which coefficients are held.
SAMPLE = {
    "pal_moderate_from", "kilojoules_per_kilocalorie", "forbes_slope", "body_fat_error_skinfolds", "deficit_share_warn",
    "experience_novice", "weight_noise",
}  # fmt: skip
SAMPLE_OF_EQUATIONS = {"cunningham_1980": 1, "siri": 1}


class Moved(NamedTuple):
    """A move, and the examples whose answers it changed."""

    move: Move
    changed: tuple[str, ...]


class Answers(NamedTuple):
    """What each example's answer names, and what each move changed."""

    named: dict[str, set[str]]
    moved: list[Moved]

    def unnamed(self) -> Iterator[str]:
        """Moves of an answer that it does not name."""
        for move, changed in self.moved:
            for example in changed:
                if example in self.named and not is_named(move, self.named[example]):
                    yield f"{move.name} x {move.factor:g} moves {example}"

    def movers(self) -> set[str]:
        """Entries that move an answer: constants, and equations by a coefficient."""
        return {id for move, changed in self.moved if changed for id in (move.constant, *move.named_by) if id}


def is_named(move: Move, named: set[str]) -> bool:
    """Whether an answer names what moved it: by itself, or by an equation that owns it."""
    if not move.constant:
        return bool(named & set(move.named_by))
    owners = (id for id in named if ENTRIES[id].kind is not Kind.CONSTANT)
    return move.constant in named or any(move.constant in owned_by(id) for id in owners)


def answers_after(moves: Sequence[Move], processes: int = 1) -> Answers:
    """The answers with each of the moves made, shared among so many processes."""
    paths = os.pathsep.join(str(ROOT / part) for part in ("service", "sdk", "tests"))
    command, environment = [sys.executable, "-m", "provenance.runner"], {**os.environ, "PYTHONPATH": paths}
    shares = [[NOTHING, *moves[k::processes]] for k in range(processes)]
    named: dict[str, set[str]] = {}
    moved: list[Moved] = []
    with contextlib.ExitStack() as stack:
        # Into files: a pipe that nobody reads yet would hold its process up.
        out = [stack.enter_context(tempfile.TemporaryFile("w+")) for _ in shares]
        running = [
            subprocess.Popen(command, stdin=subprocess.PIPE, stdout=file, text=True, env=environment) for file in out
        ]
        for one, share in zip(running, shares, strict=True):
            assert one.stdin is not None
            one.stdin.write("\n".join(map(json.dumps, share)))
            one.stdin.close()
        assert [one.wait() for one in running] == [0] * len(running)
        answered: list[list[dict[str, Any]]] = []
        for file in out:
            file.seek(0)
            answered.append([json.loads(line) for line in file])
    for share, told in zip(shares, answered, strict=True):
        before = told[0]
        named |= {example: set(methods) for example, (_, methods) in before.items() if methods is not None}
        for move, after in zip(share[1:], told[1:], strict=True):
            moved.append(Moved(move, tuple(e for e, (digest, _) in before.items() if after[e][0] != digest)))
    return Answers(named, moved)


def _constant_ids() -> list[str]:
    return sorted(id for id, entry in ENTRIES.items() if entry.kind is Kind.CONSTANT)


def test_whatever_moves_an_answer_is_named_by_it() -> None:
    """A sample; the long test below moves all."""
    left = dict(SAMPLE_OF_EQUATIONS)
    chosen = constants(sorted(SAMPLE), 1.2)
    for move in coefficients(1.2):
        for id in move.named_by:
            if left.get(id, 0) > 0:
                left[id] -= 1
                chosen.append(move)
    found = answers_after(chosen)
    assert not list(found.unnamed())
    assert found.movers() >= SAMPLE | set(SAMPLE_OF_EQUATIONS)


@pytest.mark.long
def test_whatever_moves_an_answer_is_named_by_it_all() -> None:
    moves = [move for factor in (1.01, 1.2) for move in (*constants(_constant_ids(), factor), *coefficients(factor))]
    found = answers_after(moves, processes=os.cpu_count() or 1)
    assert not list(found.unnamed())
    unmoved = {id for id in ENTRIES if id not in found.movers()}
    told = set.union(*found.named.values())
    # Rules and models have no number of their own: they are told by some example.
    unreached = {id for id in unmoved if ENTRIES[id].kind is Kind.CONSTANT or id not in told}
    assert unreached == set(UNREACHED), "tests/provenance/unreached.txt lists what no example reaches"


def test_an_answer_that_leaves_a_mover_out_is_found() -> None:
    move = Move("protein_sparing", 1.2, constant="protein_sparing")
    found = Answers({"plan": {"age"}, "other": {"lean_partition"}}, [Moved(move, ("plan", "other"))])
    assert list(found.unnamed()) == ["protein_sparing x 1.2 moves plan"]


def test_maintenance_from_a_level_and_from_a_week_name_how_it_was_made() -> None:
    (operation,) = (o for o in OPERATIONS if o.operation_id == "estimate_maintenance")
    named = {name: operation.compute(body).methods for name, body in operation.request_examples.items()}
    ways = {"total_energy_from_pal", "total_energy_from_week"}
    assert ways & set(named["profile_only"]) == {"total_energy_from_week"}
    assert ways & set(named["profile_and_log"]) == {"total_energy_from_pal"}


def test_what_is_not_reached_is_in_the_catalogue_and_says_why() -> None:
    assert set(UNREACHED) <= set(ENTRIES)
    assert list(UNREACHED) == sorted(UNREACHED)
    assert all(len(why) > 10 for why in UNREACHED.values())
