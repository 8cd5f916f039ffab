"""A request walks down the layers once, and up once."""

from types import FunctionType, ModuleType

import pytest
from steelyard.http.app import OPERATIONS
from walk import Step, steps_of

# What encodes an answer beside the schemas: numbers at the wire's precision, and texts.
READ_BY_HTTP = {"answers", "numbers", "register", "person"}
# The gate on words asks one rule who may hear them, before an answer is asked for: ``http/wire/sparing.py``.
ASKED_BY_GATE = Step("http", "rails", "may_hear_of_leanness")


@pytest.mark.parametrize("operation_id", ["estimate_maintenance", "read_trend", "plan_phases", "forecast_intake"])
def test_a_request_walks_down_once_and_up_once(operation_id: str) -> None:
    (operation,) = (one for one in OPERATIONS if one.operation_id == operation_id)
    body = next(iter(operation.request_examples.values()))
    first, *steps = steps_of(lambda: operation.compute(body))
    assert first == ASKED_BY_GATE
    assert [step.function for step in steps if step.room == "answers"] == [operation_id]
    assert [step for step in steps if step.is_climb] == []
    assert {step.room for step in steps if step.caller == "http"} <= READ_BY_HTTP
    assert {step.caller for step in steps} - {"http", "answers"}  # it sees what the science calls


def _function_of(module: str, name: str, text: str, **known: object) -> FunctionType:
    made = ModuleType(module)
    vars(made).update(known)
    exec(text, vars(made))
    found = vars(made)[name]
    assert isinstance(found, FunctionType)
    return found


def test_a_call_that_leads_up_is_seen() -> None:
    crossing = _function_of("steelyard.science.body.targets", "crossing", "def crossing(f): return f(1.0)")
    text = "def search():\n    def excess(x): return x\n    return crossing(excess)"
    search = _function_of("steelyard.science.phase.plan", "search", text, crossing=crossing)
    assert steps_of(search) == [
        Step("phase", "body", "crossing"),
        Step("body", "phase", "search.<locals>.excess"),
    ]
    assert [step.is_climb for step in steps_of(search)] == [False, True]
