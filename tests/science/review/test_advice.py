"""What is told of a phase whose days to come do not pass the gate."""

from typing import Any

import pytest
from steelyard.science.rails import Refused
from steelyard.science.rails.subject import refusing
from steelyard.science.register import Message
from steelyard.science.review import advice as module
from steelyard.science.review.next_step import Advice, NextStep


def test_a_phase_that_the_gate_stops_says_nothing_of_its_days_to_come(monkeypatch: pytest.MonkeyPatch) -> None:
    """Neither a step nor another end stands beside `end the phase`; what else was found does."""

    def gate(course: Any, advice: Advice, after: Any) -> Any:
        if advice.decision is not NextStep.END:
            raise Refused(*refusing("deficit_share", "phase", Message("REFUSED_DEFICIT", {})))
        return advice

    monkeypatch.setattr(module, "_clear", gate)
    codes = ("REVIEW_RAISED_BY_RAIL", "REVIEW_EXTEND", "REVIEW_WAITS", "REVIEW_EATEN_UNDER_RAIL")
    found: Any = module.cleared(None, Advice(NextStep.EXTEND, 60, 21, [Message(code, {}) for code in codes], []))  # type: ignore[arg-type]
    told = [reason.code for reason in found.reasons]
    assert told == ["REVIEW_EATEN_UNDER_RAIL", "REVIEW_STOPPED_BY_RAIL", "REFUSED_DEFICIT"]
