"""Answers to every example and to random requests, for telling whether a fault moves any."""

import random
from collections.abc import Iterator
from typing import Any

import msgspec
from properties import decision_requests, log_requests, plan_requests, season_requests
from properties.test_review_sweep import request as review_request
from steelyard.http.app import OPERATIONS

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


def answers() -> Iterator[tuple[str, Any]]:
    """What each operation answers, or what was raised and all that it holds."""
    for operation in OPERATIONS:
        if operation.stream is not None or operation.body_type is None or operation.renders:
            continue
        bodies = list(operation.request_examples.values())
        if make := _REQUESTS.get(operation.operation_id):
            some = (make(random.Random(f"{operation.operation_id}-{i}")) for i in range(EACH))
            bodies += [msgspec.convert(one, operation.body_type, strict=False) for one in some]
        for body in bodies:
            try:
                answer = msgspec.to_builtins(operation.compute(body), enc_hook=list)
            except Exception as error:
                answer = f"{type(error).__name__}: {error} {vars(error)}"
            yield operation.operation_id, answer
