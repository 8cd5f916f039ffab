"""Answers to every example and to random requests, for telling whether a fault moves any."""

import random
from collections.abc import Callable, Iterator
from typing import Any

import msgspec
from properties import decision_requests, log_requests, plan_requests, season_requests
from properties.test_review_sweep import request as review_request
from steelyard.http.app import OPERATIONS
from steelyard.http.operation.operation import Operation

EACH = 30
_REQUESTS: dict[str, Any] = {
    "estimate_body_composition": log_requests.composition,
    "estimate_maintenance": log_requests.maintenance,
    "forecast_intake": log_requests.forecast,
    "read_trend": log_requests.trend,
    "plan_phases": plan_requests.request,
    "decide_phase": decision_requests.request,
    "review_phase": review_request,
    "plan_season": season_requests.season,
}
_DOCUMENTS = ("document_plan", "document_season")


def answers() -> Iterator[tuple[str, Any]]:
    """What each operation answers, or what was raised and all that it holds."""
    for operation in OPERATIONS:
        if operation.stream is not None or operation.body_type is None:
            continue
        if not operation.renders:
            yield from ((operation.operation_id, _tried(operation.compute, body)) for body in _bodies(operation, EACH))
        elif operation.operation_id in _DOCUMENTS:
            yield from ((operation.renders, _tried(_documents, operation, body)) for body in _bodies(operation, 10))


def _bodies(operation: Operation, random_ones: int) -> Iterator[Any]:
    yield from operation.request_examples.values()
    operation_id = operation.renders or operation.operation_id
    if make := _REQUESTS.get(operation_id):
        some = (make(random.Random(f"{operation_id}-{i}")) for i in range(random_ones))
        yield from (msgspec.convert(one, operation.body_type, strict=False) for one in some)


def _documents(operation: Operation, body: Any) -> list[Any]:
    """As a briefing for each reader: of the documents the one that is written below HTTP."""
    form = operation.formats["text/plain"]
    asked = form.asked(body)
    computed = operation.compute(asked)
    chosen = [{option.name: value} for option in form.options for value in option.values]
    return [form.make(asked, computed, choice, "en").decode() for choice in chosen]


def _tried(compute: Callable[..., Any], *asked: Any) -> Any:
    try:
        return _settled(msgspec.to_builtins(compute(*asked), enc_hook=list))
    except Exception as error:
        return f"{type(error).__name__}: {error} {vars(error)}"


def _settled(value: Any) -> Any:
    """Without the last bits of numbers: a library's sum over an array may differ there from process to process."""
    if isinstance(value, float):
        return float(f"{value:.11g}")
    if isinstance(value, list):
        return [_settled(one) for one in value]
    return {key: _settled(one) for key, one in value.items()} if isinstance(value, dict) else value
