"""Schemathesis against the whole service, with all its checks."""

import asyncio
import tempfile
from typing import Any

import pytest
import schemathesis
from hypothesis import HealthCheck, settings
from in_process import BASE_URL, PATIENCE_SECONDS
from steelyard.http.app import OPERATIONS, create_app
from steelyard.http.pages.contract import openapi_document
from steelyard.settings import Settings
from steelyard.store.keys import Scope
from steelyard.store.store import Store

EXAMPLES_PER_OPERATION = 30  # beside the some hundred of schemathesis's own coverage phase
# Operations that search or draw take up to a second each, so that they get fewer.
SLOW = ["compare_strategies", "optimise_season", "plan_season"]
EXAMPLES_PER_SLOW_OPERATION = 5

# One answer is expected beyond the checks' own reading: a body that fits the schema may be refused with 422, since
# what the rules ask of several fields together (an order of dates, screening answers, guard rails) cannot be written
# in a schema. The 422 is documented on each operation, and its body is still checked against `Problem`.
#
# The coverage phase sends hundreds of cases for the fields of an operation. It is left out where each would search, and
# where a picture or a document is asked for with the fields of an operation that has it.
UNCOVERED = [
    "compare_strategies", "optimise_season", "plan_season", "decide_phase",
    "draw_plan", "draw_forecast", "draw_trend", "document_plan",
]  # fmt: skip
CONFIGURATION = schemathesis.Config.from_dict(
    {
        "checks": {"positive_data_acceptance": {"expected-statuses": ["2xx", "422"]}},
        # A link sets the body of a request, whatever was wrong with the one that was drawn.
        "phases": {"stateful": {"generation": {"mode": "positive"}}},
        "operations": [
            {"include-operation-id": operation, "phases": {"coverage": {"enabled": False}}} for operation in UNCOVERED
        ],
    }
)

DIRECTORY = tempfile.TemporaryDirectory(prefix="steelyard-fuzz-")
SETTINGS = Settings(
    database_url=f"sqlite+aiosqlite:///{DIRECTORY.name}/operator.sqlite3",
    store_timeout_seconds=PATIENCE_SECONDS,
    rate_limit_requests=0,  # searches and pictures would spend a minute's units
)

# Streamed operations have bodies of lines, which OpenAPI cannot describe; `test_batches` sends them arbitrary ones.
# Of pictures and documents those of short computations are searched: what is asked is the same as without them.
WHOLE = tuple(o for o in OPERATIONS if o.stream is None and not (o.renders and o.in_thread))
schema = schemathesis.openapi.from_dict(openapi_document(WHOLE), config=CONFIGURATION)
schema.app = create_app(SETTINGS)
schema.config.update(base_url=BASE_URL)


@pytest.fixture(scope="module")
def token() -> str:
    """A key of all scopes for the service behind the schema."""

    async def make() -> str:
        store = Store(SETTINGS.database_url, timeout_seconds=PATIENCE_SECONDS)
        await store.migrate()
        _, made = await store.create_key("Quarry Lane Gym", Scope)
        await store.close()
        return made

    return asyncio.run(make())


@schema.exclude(operation_id=SLOW).parametrize()
@settings(max_examples=EXAMPLES_PER_OPERATION, suppress_health_check=list(HealthCheck))
def test_service_keeps_its_contract(case: schemathesis.Case, token: str) -> None:
    case.call_and_validate(headers={"Authorization": f"Bearer {token}"})


@schema.include(operation_id=SLOW).parametrize()
@settings(max_examples=EXAMPLES_PER_SLOW_OPERATION, suppress_health_check=list(HealthCheck))
def test_slow_operations_keep_the_contract(case: schemathesis.Case, token: str) -> None:
    case.call_and_validate(headers={"Authorization": f"Bearer {token}"})


STEPS = 4
CHAINS = 15


def test_chains_of_answers_keep_the_contract(token: str) -> None:
    """What an answer knew is handed on as the contract's links say; what was answered is asked for in other forms."""
    asked: list[tuple[str, int]] = []

    class Chains(schema.exclude(operation_id=SLOW).as_state_machine()):  # type: ignore[misc]
        def get_call_kwargs(self, case: schemathesis.Case) -> dict[str, Any]:
            return {"headers": {"Authorization": f"Bearer {token}"}}

        def after_call(self, response: Any, case: schemathesis.Case) -> None:
            asked.append((case.operation.definition.raw["operationId"], response.status_code))

    Chains.run(
        settings=settings(
            max_examples=CHAINS,
            stateful_step_count=STEPS,
            deadline=None,
            derandomize=True,
            suppress_health_check=list(HealthCheck),
        )
    )
    assert len(asked) > CHAINS, "no link was followed"
    assert {status for _, status in asked} <= {200, 400, 401, 422}
