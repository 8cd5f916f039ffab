"""Schemathesis against the whole service, with all its checks."""

import asyncio
import os
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Any

import pytest
import schemathesis
from examples.local_service import local_service
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from in_process import BASE_URL, PATIENCE_SECONDS
from schemathesis.core.parameters import ParameterLocation
from steelyard.http.app import OPERATIONS, create_app
from steelyard.http.pages.contract import openapi_document
from steelyard.settings import Settings
from steelyard.store.keys import Scope
from steelyard.store.store import Store

EXAMPLES_PER_OPERATION = 30
# Operations that search or draw take up to a second each, so that they get fewer.
SLOW = {"compare_strategies", "optimise_season", "plan_season"}
EXAMPLES_PER_SLOW_OPERATION = 5
# The coverage phase sends thousands of cases for the fields of an operation: in every run for the smallest body.
COVERED = "estimate_body_composition"

# One answer is expected beyond the checks' own reading: a body that fits the schema may be refused with 422, since
# what the rules ask of several fields together (an order of dates, screening answers, guard rails) cannot be written
# in a schema. The 422 is documented on each operation, and its body is still checked against `Problem`.
CONFIGURATION = {
    "checks": {"positive_data_acceptance": {"expected-statuses": ["2xx", "422"]}},
    "phases": {
        "examples": {"enabled": False},  # `test_contract` asks them
        # A link sets the body of a request, whatever was wrong with the one that was drawn.
        "stateful": {"generation": {"mode": "positive"}},
    },
}

GIVEN = Path(__file__).resolve().parents[2] / "sdk" / "steelyard_client" / "qa" / "schemathesis.toml"
DIRECTORY = tempfile.TemporaryDirectory(prefix="steelyard-fuzz-")
SETTINGS = Settings(
    database_url=f"sqlite+aiosqlite:///{DIRECTORY.name}/operator.sqlite3",
    store_timeout_seconds=PATIENCE_SECONDS,
    rate_limit_requests=0,  # searches and pictures would spend a minute's units
)

# Streamed operations have bodies of lines, which OpenAPI cannot describe; `test_batches` sends them arbitrary ones.
# Of pictures and documents those of short computations are searched: what is asked is the same as without them.
WHOLE = tuple(o for o in OPERATIONS if o.stream is None and not (o.renders and o.in_thread))


schema = schemathesis.openapi.from_dict(openapi_document(WHOLE), config=schemathesis.Config.from_dict(CONFIGURATION))
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


def has_bad_body(case: schemathesis.Case) -> bool:
    """Keys and unknown query parameters have tests of their own."""
    component = case.meta.components.get(ParameterLocation.BODY) if case.meta else None
    return component is not None and component.mode.is_negative


@pytest.mark.parametrize("operation_id", [each.operation_id for each in WHOLE])
def test_service_keeps_its_contract(operation_id: str, token: str) -> None:
    """Bodies that the schema allows and bodies that it does not, drawn in the test's own time.

    The marks of schemathesis draw at collection, where every process would draw for all operations.
    """
    operation = schema.find_operation_by_id(operation_id)
    kinds = [operation.as_strategy(generation_mode=schemathesis.GenerationMode.POSITIVE)]
    if operation.body:
        kinds.append(operation.as_strategy(generation_mode=schemathesis.GenerationMode.NEGATIVE).filter(has_bad_body))
    examples = EXAMPLES_PER_SLOW_OPERATION if operation_id in SLOW else EXAMPLES_PER_OPERATION

    @settings(max_examples=examples, suppress_health_check=list(HealthCheck), deadline=None)
    @given(st.one_of(kinds))
    def ask(case: schemathesis.Case) -> None:
        case.call_and_validate(headers={"Authorization": f"Bearer {token}"})

    ask()


@schema.include(operation_id=COVERED).parametrize()
@settings(max_examples=1, suppress_health_check=list(HealthCheck))
def test_service_keeps_its_contract_at_the_edges_of_each_field(case: schemathesis.Case, token: str) -> None:
    case.call_and_validate(headers={"Authorization": f"Bearer {token}"})


@pytest.mark.long
def test_a_live_service_keeps_its_contract_at_all_edges(tmp_path: Path) -> None:
    """All phases, by the configuration that testers of a deployed service are given."""
    with local_service(rate_limit_requests="0") as live:
        done = subprocess.run(
            [
                *(sys.executable, "-m", "schemathesis.cli", "--config-file", str(GIVEN), "run"),
                *(f"{live.url}/openapi.json", "--max-examples", "100", "--no-color"),
            ],
            env={**os.environ, "STEELYARD_KEY": live.key},
            cwd=tmp_path,
            capture_output=True,
            text=True,
            check=False,
        )
    assert done.returncode == 0, done.stdout[-8000:]


STEPS = 4
CHAINS = 15


def test_chains_of_answers_keep_the_contract(token: str) -> None:
    """What an answer knew is handed on as the contract's links say; what was answered is asked for in other forms."""
    asked: list[tuple[str, int]] = []

    class Chains(schema.exclude(operation_id=sorted(SLOW)).as_state_machine()):  # type: ignore[misc]
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
