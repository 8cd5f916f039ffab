"""The headers that every response carries."""

from uuid import UUID

import pytest
from in_process import Running
from steelyard.http.wire.request_id import CONTRACT_VERSION

CALLERS = "6F1C1F3A-43f5-4d0c-9a52-0a3f1f0f6b1e"


@pytest.mark.parametrize(
    ("method", "path"),
    [
        ("GET", "/v1/methods"),
        ("HEAD", "/v1/methods"),
        ("OPTIONS", "/v1/methods"),
        ("DELETE", "/v1/methods"),
        ("GET", "/nothing"),
        ("GET", "/health/live"),
        ("GET", "/openapi.json"),
        ("GET", "/problems/not-json"),
    ],
)
async def test_every_response_has_them(service: Running, method: str, path: str) -> None:
    answers = [await service.client.request(method, path) for _ in range(2)]
    ids = {str(UUID(answer.headers["x-request-id"])) for answer in answers}
    assert len(ids) == 2
    assert all(answer.headers.get_list("steelyard-contract") == [CONTRACT_VERSION] for answer in answers)


async def test_callers_id_is_kept(service: Running) -> None:
    answer = await service.client.get("/nothing", headers={"x-request-id": CALLERS})
    assert answer.headers["x-request-id"] == CALLERS.lower()
    assert answer.json()["instance"] == f"urn:uuid:{CALLERS.lower()}"


@pytest.mark.parametrize("odd", ["", "42", CALLERS + "0", "x" * 5000, CALLERS.replace("-", ""), "{" + CALLERS + "}"])
async def test_callers_odd_id_is_replaced(service: Running, odd: str) -> None:
    answer = await service.client.get("/nothing", headers={"x-request-id": odd})
    assert answer.headers["x-request-id"] != odd
    UUID(answer.headers["x-request-id"])
