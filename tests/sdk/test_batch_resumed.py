"""A batch that breaks off and is run again: what was answered is not asked for twice, and nothing is lost."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import httpx
import pytest
from examples.local_service import LocalService
from sdk_caller import PROFILE, Caller, problem
from steelyard_client import AsyncSteelyard, ConnectionFailed, Maintenance, RetryPolicy, Steelyard, UnreadableAnswer
from steelyard_client.batch import LineAnswer

LINES = 450  # three bodies of 200, 200 and 50 lines


def maintenance(reference: str, weight_kg: float = 70.4) -> Any:
    body = {"profile": {**PROFILE, "weight_kg": weight_kg}}
    return {"reference": reference, "operation": "estimate_maintenance", "body": body}


async def run(caller: Caller, lines: Any, **options: Any) -> list[LineAnswer]:
    client = caller.client
    if isinstance(client, AsyncSteelyard):
        return [answer async for answer in client.run_batch(lines, **options)]
    return list(client.run_batch(lines, **options))


class StandIn:
    """A service that answers each line with a problem of its own, and can break off."""

    def __init__(self) -> None:
        self.asked: list[str] = []
        self.status = 422
        self.breaks_at: str | None = None
        self.cuts_at: str | None = None

    def __call__(self, request: httpx.Request) -> httpx.Response:
        references = [json.loads(text)["reference"] for text in request.content.splitlines()]
        if self.breaks_at in references:
            raise httpx.ReadError("the connection broke", request=request)
        self.asked += references
        answers = [
            {"line": i, "reference": reference, "problem": problem(self.status, "out-of-domain", detail=reference)}
            for i, reference in enumerate(references, 1)
        ]
        summary = {
            "lines": len(answers),
            "results": 0,
            "problems": len(answers),
            "problems_by_status": {},
            "is_complete": True,
        }
        text = "".join(json.dumps(one) + "\n" for one in [*answers, {"summary": summary}])
        if self.cuts_at in references:
            text = text[: len(text) // 2]
        return httpx.Response(200, headers={"Content-Type": "application/x-ndjson"}, content=text)


@pytest.fixture
def stand_in() -> StandIn:
    return StandIn()


@pytest.fixture
def once(answered_by: Callable[..., Caller], stand_in: StandIn) -> Caller:
    """Each client against the stand-in, without retries."""
    return answered_by(stand_in, retry=RetryPolicy(max_retries=0))


REFERENCES = [str(number) for number in range(LINES)]


async def test_a_broken_run_goes_on_where_it_stopped(once: Caller, stand_in: StandIn, tmp_path: Path) -> None:
    file = tmp_path / "answers.ndjson"
    lines = [maintenance(reference) for reference in REFERENCES]
    stand_in.breaks_at = "420"
    with pytest.raises(ConnectionFailed):
        await run(once, lines, keep_in=file)
    assert stand_in.asked == REFERENCES[:400]

    stand_in.breaks_at = None
    answers = await run(once, lines, keep_in=file)
    assert [answer.reference for answer in answers] == REFERENCES
    assert [answer.problem and answer.problem.problem.detail for answer in answers] == REFERENCES
    assert stand_in.asked == REFERENCES  # each once over both runs

    assert [answer.reference for answer in await run(once, lines, keep_in=file)] == REFERENCES
    assert len(stand_in.asked) == LINES


async def test_an_answer_cut_off_is_asked_for_again(once: Caller, stand_in: StandIn, tmp_path: Path) -> None:
    file = tmp_path / "answers.ndjson"
    lines = [maintenance(reference) for reference in REFERENCES]
    stand_in.cuts_at = "200"
    with pytest.raises(UnreadableAnswer):
        await run(once, lines, keep_in=file)
    stand_in.cuts_at = None
    stand_in.asked.clear()
    answers = await run(once, lines, keep_in=file)
    assert [answer.reference for answer in answers] == REFERENCES
    assert stand_in.asked == REFERENCES[200:]


async def test_lines_that_are_new_or_changed_are_asked_and_stand_in_their_order(
    once: Caller, stand_in: StandIn, tmp_path: Path
) -> None:
    file = tmp_path / "answers.ndjson"
    await run(once, [maintenance("a"), maintenance("b"), maintenance("c")], keep_in=file)
    stand_in.asked.clear()
    lines = [maintenance("c"), maintenance("new"), maintenance("b", weight_kg=71.0), maintenance("a")]
    answers = await run(once, lines, keep_in=file)
    assert [answer.reference for answer in answers] == ["c", "new", "b", "a"]
    assert stand_in.asked == ["new", "b"]
    stand_in.asked.clear()
    await run(once, lines, keep_in=file)
    assert stand_in.asked == []


@pytest.mark.parametrize("status", [401, 403, 429, 500, 503])
async def test_what_may_pass_is_asked_again(status: int, once: Caller, stand_in: StandIn, tmp_path: Path) -> None:
    stand_in.status = status
    for _ in range(2):
        (answer,) = await run(once, [maintenance("a")], keep_in=tmp_path / "answers.ndjson")
        assert answer.problem is not None
        assert answer.problem.status == status
    assert stand_in.asked == ["a", "a"]


async def test_a_torn_last_line_is_dropped(once: Caller, stand_in: StandIn, tmp_path: Path) -> None:
    file = tmp_path / "answers.ndjson"
    lines = [maintenance("a"), maintenance("b")]
    await run(once, lines, keep_in=file)
    whole = file.read_bytes()
    for length in (len(whole) - 1, len(whole) - 40, 10, 0):
        file.write_bytes(whole[:length])
        assert [answer.reference for answer in await run(once, lines, keep_in=file)] == ["a", "b"]
        assert file.read_bytes() == whole


@pytest.mark.parametrize("content", [b"dear diary", b"{}\n", b'{"steelyard_answers":2}\n', b'{"steel', b"x"])
async def test_a_file_of_another_kind_is_left_alone(content: bytes, once: Caller, tmp_path: Path) -> None:
    file = tmp_path / "mine.txt"
    file.write_bytes(content + b" and more")
    with pytest.raises(ValueError, match="is no file of answers"):
        await run(once, [maintenance("a")], keep_in=file)
    assert file.read_bytes() == content + b" and more"


async def test_a_damaged_line_is_noticed(once: Caller, tmp_path: Path) -> None:
    file = tmp_path / "answers.ndjson"
    await run(once, [maintenance("a"), maintenance("b")], keep_in=file)
    lines = file.read_bytes().splitlines(keepends=True)
    file.write_bytes(lines[0] + b"{}\n" + lines[2])
    with pytest.raises(ValueError, match="damaged"):
        await run(once, [maintenance("a")], keep_in=file)


async def test_references_are_unique_where_answers_are_kept(once: Caller, tmp_path: Path) -> None:
    lines = [maintenance("a"), maintenance("a")]
    assert len(await run(once, lines)) == 2
    with pytest.raises(ValueError, match="'a' of line 2 is that of line 1 too"):
        await run(once, lines, keep_in=tmp_path / "answers.ndjson")


async def test_kept_results_equal_fresh_ones(caller: Caller, tmp_path: Path) -> None:
    file = tmp_path / "answers.ndjson"
    lines = [maintenance("a"), {"reference": "b", "operation": "fly", "body": {}}]
    fresh = await run(caller, lines, keep_in=file)
    kept = await run(caller, lines, keep_in=file)
    assert isinstance(kept[0].result, Maintenance)
    assert isinstance(fresh[0].result, Maintenance)
    assert kept[0].result.to_dict() == fresh[0].result.to_dict()
    assert kept[1].problem is not None
    assert fresh[1].problem is not None
    assert type(kept[1].problem) is type(fresh[1].problem)
    assert kept[1].problem.errors == fresh[1].problem.errors


def test_a_service_that_dies_under_way(live: LocalService, tmp_path: Path) -> None:
    """A transport that loses the connection after the first body, then the real service again."""
    file = tmp_path / "answers.ndjson"
    lines = [maintenance(reference) for reference in REFERENCES[:250]]

    class Failing(httpx.HTTPTransport):
        sent = 0

        def handle_request(self, request: httpx.Request) -> httpx.Response:
            self.sent += 1
            if self.sent > 1:
                raise httpx.RemoteProtocolError("peer closed connection without sending complete message body")
            return super().handle_request(request)

    with (
        Steelyard(*live, transport=Failing(), retry=RetryPolicy(max_retries=0)) as client,
        pytest.raises(ConnectionFailed),
    ):
        list(client.run_batch(lines, keep_in=file))
    with Steelyard(*live, transport=httpx.HTTPTransport()) as client:
        answers = list(client.run_batch(lines, keep_in=file))
    assert [answer.reference for answer in answers] == REFERENCES[:250]
    assert all(isinstance(answer.result, Maintenance) for answer in answers)


async def test_progress_is_told(once: Caller, capsys: pytest.CaptureFixture[str]) -> None:
    told: list[tuple[int, int | None]] = []
    lines = [maintenance("a"), maintenance("b")]
    await run(once, lines, progress=lambda done, total: told.append((done, total)))
    await run(once, iter(lines), progress=lambda done, total: told.append((done, total)))
    assert told == [(1, 2), (2, 2), (1, None), (2, None)]
    await run(once, lines, progress=True)
    captured = capsys.readouterr()
    assert "2/2" in captured.err
    assert not captured.out
