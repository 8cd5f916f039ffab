"""Every judgement of the register has one line that says what would settle it, with the value of the code."""

import re
from pathlib import Path

import pytest
from steelyard.science.catalogue import entries
from steelyard.science.register import Basis

ROOT = Path(__file__).resolve().parents[3]
DECISION = ROOT / "service" / "decisions" / "46-what-would-settle-a-judgement.md"
RECALLED = ROOT / "service" / "decisions" / "41-values-recalled-from-memory.md"
JUDGEMENTS = {id for id, entry in entries().items() if entry.basis is Basis.JUDGEMENT}


def lines() -> list[tuple[list[str], str, str]]:
    """Ids, values and what would settle them, of each line of the tables."""
    rows = [
        line.strip("|").split("|") for line in DECISION.read_text(encoding="utf-8").splitlines() if line[:3] == "| `"
    ]
    return [(re.findall(r"`([^`]+)`", ids), values.strip(), settled.strip()) for ids, values, settled in rows]


def test_each_judgement_has_one_line() -> None:
    listed = [id for ids, _, _ in lines() for id in ids]
    assert JUDGEMENTS - set(listed) == set(), "a judgement without its line"
    assert set(listed) - JUDGEMENTS == set(), "no judgement of the register"
    assert len(listed) == len(set(listed)), "listed twice"
    assert all(settled for _, _, settled in lines())


def test_the_count_told_is_the_register_s() -> None:
    assert f"\n{len(JUDGEMENTS)} of the register's entries" in DECISION.read_text(encoding="utf-8")


def test_the_count_recalled_from_memory_is_the_register_s() -> None:
    recalled = sum(entry.basis is Basis.FROM_MEMORY for entry in entries().values())
    assert f"; {recalled} of the register's entries are from memory" in RECALLED.read_text(encoding="utf-8")


def test_the_values_told_are_the_code_s() -> None:
    for ids, values, _ in lines():
        told = [float(part.split()[0]) for part in values.split(", ") if part[0].isdigit()]
        held = [value for id in ids if (value := entries()[id].value) is not None]
        if values.endswith(" each"):
            told *= len(held)
        assert told == pytest.approx(held, rel=1e-4), ids
