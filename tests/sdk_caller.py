"""What the tests of the SDK share: an invented person, a caller of either client, answers of a stand-in service."""

import inspect
import json
from datetime import date
from typing import Any

import httpx
from steelyard_client import AsyncSteelyard, Steelyard
from steelyard_client.request_types import ProfileDict, ScreeningDict

PROFILE: ProfileDict = {
    "sex": "female",
    "age_years": 38,
    "height_cm": 171,
    "weight_kg": 70.4,
    "activity": {"kind": "level", "level": "moderate"},
    "training": {"status": "intermediate", "resistance_sessions_per_week": 4},
}
SCREENING: ScreeningDict = {
    "is_pregnant": False,
    "is_breastfeeding": False,
    "eating_disorder": "none",
    "conditions": [],
    "medicines": [],
}
START = date(2026, 5, 4)
KEY = "testing.no-secret"


class Caller:
    """Calls a method of either client by name, so that one test serves both."""

    def __init__(self, client: Steelyard | AsyncSteelyard) -> None:
        self.client = client

    async def __call__(self, method: str, **request: Any) -> Any:
        answer = getattr(self.client, method)(**request)
        return await answer if inspect.isawaitable(answer) else answer

    def with_options(self, **options: Any) -> "Caller":
        return Caller(self.client.with_options(**options))


def problem(status: int, slug: str, **more: Any) -> dict[str, Any]:
    """A problem document as the service writes it."""
    return {
        "type": f"/problems/{slug}",
        "title": "A title",
        "status": status,
        "detail": "What happened, and how to mend it.",
        "instance": "urn:uuid:6f1c1f3a-43f5-4d0c-9a52-0a3f1f0f6b1e",
        "code": "A_CODE",
        **more,
    }


def problem_answer(status: int, slug: str, headers: dict[str, str] | None = None, **more: Any) -> httpx.Response:
    """The same as an answer."""
    return httpx.Response(
        status,
        headers={"Content-Type": "application/problem+json", **(headers or {})},
        content=json.dumps(problem(status, slug, **more)),
    )


CATALOGUE = {"contract_version": "1.0.0", "entries": [], "sources": []}


def catalogue_answer() -> httpx.Response:
    """The smallest answer that fits the contract, to ``list_methods``."""
    return httpx.Response(200, json=CATALOGUE)


def fresh(answer: httpx.Response) -> httpx.Response:
    """A copy of an answer whose body is known, since httpx ties an answer to the first client that reads it."""
    try:
        return httpx.Response(answer.status_code, headers=answer.headers, content=answer.content)
    except httpx.ResponseNotRead:  # a stream of the test's own
        return answer
