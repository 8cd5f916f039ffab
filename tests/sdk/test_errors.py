"""Which exception an answer becomes, and what it carries."""

import json
import pickle
import re
from typing import Any

import httpx
import pytest
from examples.local_service import ROOT
from hypothesis import given
from hypothesis import strategies as st
from sdk_caller import PROFILE, catalogue_answer, problem, problem_answer
from steelyard_client import (
    BadRequest,
    BodyTooLarge,
    BodyTooSlow,
    ConnectionFailed,
    Contradiction,
    Forbidden,
    GuardRailRefusal,
    InvalidRequest,
    MethodNotAllowed,
    NotAcceptable,
    NotConfigured,
    NotFound,
    OutOfDomain,
    ProblemError,
    Refused,
    ServiceFault,
    ServiceUnavailable,
    SteelyardError,
    TimedOut,
    TooManyRequests,
    Unauthorized,
    UnreadableAnswer,
    UnsupportedMediaType,
    errors,
)
from steelyard_client.errors import problem_error
from steelyard_client.models import FieldProblem, FieldProblemParams
from steelyard_client.request_check import plain

LISTED = re.findall(
    r"^## `/problems/([\w-]+)`\n\n(\d{3}),", (ROOT / "contracts" / "problems.md").read_text("utf-8"), re.MULTILINE
)
KINDS = [
    (400, "schema-violation", BadRequest),
    (400, "not-json", BadRequest),
    (401, "key-required", Unauthorized),
    (403, "scope-missing", Forbidden),
    (404, "not-found", NotFound),
    (405, "method-not-allowed", MethodNotAllowed),
    (406, "not-acceptable", NotAcceptable),
    (408, "body-timeout", BodyTooSlow),
    (413, "body-too-large", BodyTooLarge),
    (418, "unheard-of", ProblemError),
    (415, "unsupported-media-type", UnsupportedMediaType),
    (422, "contradiction", Contradiction),
    (422, "out-of-domain", OutOfDomain),
    (422, "guard-rail/age", GuardRailRefusal),
    (422, "unheard-of", Refused),
    (429, "too-many-requests", TooManyRequests),
    (500, "internal-error", ServiceFault),
    (503, "unavailable", ServiceUnavailable),
    (599, "unheard-of", ServiceFault),
]


def test_every_kind_of_the_service_has_a_class_of_its_own() -> None:
    for slug, status in LISTED:
        error = problem_error(
            int(status),
            json.dumps(problem(int(status), slug)).encode(),
            media_type="application/problem+json",
            request_id=None,
            retry_after_seconds=None,
        )
        assert type(error) not in {ProblemError, SteelyardError}, slug
    assert len(LISTED) > 15


@pytest.mark.parametrize(("status", "slug", "kind"), KINDS)
async def test_kinds(answered_by: Any, waits: list[float], status: int, slug: str, kind: type[ProblemError]) -> None:
    pointer = "#/profile/height_cm"
    faults = [{"pointer": pointer, "code": "OUT_OF_RANGE", "detail": "profile.height_cm is out of range."}]
    answer = problem_answer(status, slug, {"X-Request-Id": "of-the-service"}, errors=faults, hint="call us")
    with pytest.raises(ProblemError) as caught:
        await answered_by(lambda request: answer)("list_methods")
    error = caught.value
    assert type(error) is kind
    assert error.status == error.problem.status == status
    assert error.problem.type_ == f"/problems/{slug}"
    assert error.code == "A_CODE"
    assert error.request_id == "of-the-service"
    assert error.pointers == (pointer,)
    assert error.problem.additional_properties == {"hint": "call us"}  # what this version does not know is kept
    for part in (str(status), "A title", "how to mend it", "profile.height_cm is out of range", slug):
        assert part in str(error)


@pytest.mark.parametrize(
    ("type_", "rule"),
    [
        ("/problems/guard-rail/age", "age"),
        ("https://steelyard.test/problems/guard-rail/tissue_loss", "tissue_loss"),
        ("/problems/guard-rail/", None),
        ("/problems/guard-rail", None),
        ("about:blank", None),
    ],
)
def test_rule_ids(type_: str, rule: str | None) -> None:
    content = json.dumps(problem(422, "x") | {"type": type_}).encode()
    error = problem_error(422, content, media_type="", request_id=None, retry_after_seconds=None)
    assert isinstance(error, Refused)
    assert error.rule_id == rule
    assert isinstance(error, GuardRailRefusal) == (rule is not None)


@pytest.mark.parametrize(
    "answer",
    [
        httpx.Response(404, html="<html>Not here</html>"),
        httpx.Response(404, json={"message": "Not here"}),
        httpx.Response(404, json=["Not here"]),
        httpx.Response(404, json=problem(404, "x") | {"title": None}),
        httpx.Response(404, content=b"\xff\xfe", headers={"Content-Type": "text/plain"}),
        httpx.Response(404),
    ],
    ids=["html", "other json", "a list", "a null title", "bytes", "nothing"],
)
async def test_answers_that_are_no_problem_documents(answered_by: Any, answer: httpx.Response) -> None:
    """A gateway's page under a status that the contract documents."""
    with pytest.raises(NotFound) as caught:
        await answered_by(lambda request: answer)("list_methods")
    assert caught.value.problem.type_ == "about:blank"
    assert caught.value.problem.title == "Not Found"
    assert caught.value.code == "NOT_FOUND"
    assert caught.value.content == answer.content


async def test_a_status_that_python_does_not_know(answered_by: Any) -> None:
    with pytest.raises(ServiceFault, match="520 Unknown status"):
        await answered_by(lambda request: httpx.Response(520, html="origin error"))("list_methods")


@pytest.mark.parametrize(
    "content",
    [
        b"<html>Sign in to the guest network</html>",
        b"",
        b"null",
        b"[]",
        b"{}",
        b'{"contract_version": "1.0.0", "sources": []}',
        b'{"contract_version": "1.0.0", "entries": NaN, "sources": []}',
        b'{"contract_version": "1.0.0", "entries": [1], "sources": []}',
        b'{"contract_version": "1.0.0", "entries": [], "sources',
        b"\xff",
    ],
)
async def test_successes_that_do_not_fit_the_contract(answered_by: Any, content: bytes) -> None:
    answer = httpx.Response(200, content=content, headers={"Steelyard-Contract": "7.1.0"})
    with pytest.raises(UnreadableAnswer, match=r"7\.1\.0") as caught:
        await answered_by(lambda request: answer)("list_methods")
    assert caught.value.content == content
    assert caught.value.request_id


async def test_an_answer_that_cannot_be_unpacked(answered_by: Any) -> None:
    stream = httpx.ByteStream(b"this is not gzip")
    answer = httpx.Response(200, headers={"Content-Encoding": "gzip"}, stream=stream)
    with pytest.raises(UnreadableAnswer, match="unpacked"):
        await answered_by(lambda request: answer)("list_methods")


@pytest.mark.parametrize("number", [float("nan"), float("inf"), -float("inf")])
@pytest.mark.parametrize("check_requests", [True, False])
async def test_numbers_that_json_cannot_hold_are_not_sent(
    answered_by: Any, number: float, check_requests: bool
) -> None:
    sent: list[httpx.Request] = []
    call = answered_by(lambda request: sent.append(request) or catalogue_answer(), check_requests=check_requests)
    with pytest.raises(InvalidRequest, match="finite") as caught:
        await call("estimate_maintenance", profile={**PROFILE, "age_years": number})
    assert caught.value.pointers == ("#/profile/age_years",)
    assert not sent


@given(status=st.integers(300, 999), content=st.binary(max_size=40), media_type=st.text(max_size=20))
def test_any_error_answer_becomes_a_problem(status: int, content: bytes, media_type: str) -> None:
    error = problem_error(status, content, media_type=media_type, request_id="id", retry_after_seconds=None)
    assert error.status == status
    assert error.problem.title
    assert str(error)


def samples() -> list[SteelyardError]:
    faults = [FieldProblem(pointer="#", code="INVALID", detail="bad", params=FieldProblemParams())]
    content = json.dumps(problem(422, "guard-rail/age")).encode()
    return [
        NotConfigured("no key"),
        InvalidRequest(faults),
        ConnectionFailed("refused", request_id="id", is_transient=False),
        TimedOut("slow", request_id="id"),
        UnreadableAnswer("html", request_id="id", content=b"<"),
        problem_error(422, content, media_type="", request_id="id", retry_after_seconds=1.5),
    ]


def vars_of(error: SteelyardError) -> dict[str, Any]:
    """What an error carries, in a form that compares by content."""
    return {name: repr(value) if isinstance(value, bytes) else value for name, value in vars(error).items()}


@pytest.mark.parametrize("error", samples(), ids=lambda e: type(e).__name__)
def test_errors_survive_a_process_pool(error: SteelyardError) -> None:
    copy = pickle.loads(pickle.dumps(error))
    assert type(copy) is type(error)
    assert str(copy) == str(error)
    assert plain(vars_of(copy)) == plain(vars_of(error))


def test_many_faults_are_cut_short() -> None:
    with pytest.raises(InvalidRequest, match="and 3 more") as caught:
        plain([float("nan")] * 8)
    assert len(caught.value.errors) == 8


def test_every_exception_is_in_the_tree_that_the_module_draws() -> None:
    kinds = [k for k in vars(errors).values() if isinstance(k, type) and issubclass(k, SteelyardError)]
    assert len(kinds) == 24
    assert not [kind.__name__ for kind in kinds if kind.__name__ not in (errors.__doc__ or "")]
