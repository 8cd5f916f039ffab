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


@pytest.mark.parametrize(
    ("sent", "instance"),
    [
        (CALLERS, f"urn:uuid:{CALLERS.lower()}"),
        ("01ARZ3NDEKTSV4RRFFQ69G5FAV", "#01ARZ3NDEKTSV4RRFFQ69G5FAV"),
        ("Root=1-67891233-abcdef012345678912345678", "#Root=1-67891233-abcdef012345678912345678"),
    ],
)
async def test_callers_id_is_kept(service: Running, sent: str, instance: str) -> None:
    answer = await service.client.get("/nothing", headers={"x-request-id": sent})
    assert answer.headers["x-request-id"] == sent
    assert answer.json()["instance"] == instance


@pytest.mark.parametrize(
    "odd",
    [
        "",
        "x" * 129,
        "{" + CALLERS + "}",
        "42",
        "1234567",
        "87.654321",
        "m@gym.test",
        "a b c d e",
        'abcdefg"',
        "abcdefg%0d",
        "äääääääää",
    ],
)
async def test_callers_odd_id_is_replaced(service: Running, odd: str) -> None:
    answer = await service.client.get("/nothing", headers=[(b"x-request-id", odd.encode("latin-1"))])
    assert answer.headers["x-request-id"] != odd
    UUID(answer.headers["x-request-id"])
