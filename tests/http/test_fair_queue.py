"""Turns of keys at what only a few can do at a time."""

import asyncio

import pytest
from steelyard.http.wire.fair_queue import FairQueue
from steelyard.http.wire.problems import OVERLOADED, TOO_MANY_REQUESTS, ProblemError


class Clock:
    seconds = 0.0

    def __call__(self) -> float:
        return self.seconds


async def settle() -> None:
    for _ in range(5):
        await asyncio.sleep(0)


async def order_of_turns(queue: FairQueue, asked: str) -> str:
    """The keys in the order of their turns; each leaves when all others wait."""
    turns: list[str] = []

    async def one(key: str) -> None:
        turn = await queue.enter(key, is_patient=True)
        turns.append(key)
        await settle()
        turn.close()

    await asyncio.gather(*(one(key) for key in asked))
    return "".join(turns)


async def test_keys_take_turns_whoever_asked_first() -> None:
    assert await order_of_turns(FairQueue(1, door_seconds=1.0), "aaaaabbc") == "abcabaaa"


async def test_a_key_leaves_one_slot_to_the_others() -> None:
    queue = FairQueue(3, door_seconds=1.0)
    crowd = [asyncio.create_task(queue.enter("a", is_patient=True)) for _ in range(10)]
    await settle()
    assert sum(each.done() for each in crowd) == 2
    other = asyncio.create_task(queue.enter("b"))
    await settle()
    assert other.done()
    (await other).close()
    await settle()
    assert sum(each.done() for each in crowd) == 2, "the slot stays free for others"
    for each in crowd:
        (await each).close()
    assert (queue.waiting_count, queue._waiting, queue._running, queue._seconds) == (0, {}, {}, {})


async def test_whoever_would_wait_in_vain_is_told_at_the_door() -> None:
    clock = Clock()
    queue = FairQueue(2, door_seconds=5.0, clock=clock)
    turn = await queue.enter("a")
    clock.seconds = 2.0
    waiting = [asyncio.create_task(queue.enter("a"))]
    await settle()
    turn.close()  # a turn of this key takes two seconds
    await settle()
    waiting.append(asyncio.create_task(queue.enter("a")))
    await settle()
    with pytest.raises(ProblemError) as raised:
        await queue.enter("a")
    assert raised.value.kind is TOO_MANY_REQUESTS
    assert raised.value.headers == {"Retry-After": "1"}
    other = await queue.enter("b")
    other.close()
    assert queue.refused_count == 1
    for each in waiting:
        (await each).close()


@pytest.mark.parametrize(("first_seconds", "kept"), [(2.0, 2), (3.0, 1)], ids=["alike", "the first loads"])
async def test_who_came_before_it_was_known_how_long_turns_take_is_told_then(first_seconds: float, kept: int) -> None:
    """A crowd of one key at once, each of which gives up after eight seconds: once two turns were seen."""
    clock = Clock()
    queue = FairQueue(2, door_seconds=5.0, most_seconds=8.0, clock=clock)
    turn = await queue.enter("a")
    patient = asyncio.create_task(queue.enter("a", is_patient=True))
    crowd = [asyncio.create_task(queue.enter("a")) for _ in range(20)]
    last = asyncio.create_task(queue.enter("a", is_patient=True))
    await settle()
    crowd[-1].cancel()  # goes at the same time
    clock.seconds += first_seconds
    turn.close()
    await settle()
    assert [each.done() for each in crowd[:-1]] == [False] * 19, "one turn may have loaded what the others need"
    clock.seconds += 2.0
    patient.result().close()
    await settle()
    sent_away = [each for each in crowd[:-1] if each.done() and each.exception()]
    assert sent_away == crowd[kept:-1]
    for each in sent_away:
        error = each.exception()
        assert isinstance(error, ProblemError)
        assert error.kind is TOO_MANY_REQUESTS
        assert int(error.headers["Retry-After"]) > 0
    for each in (*crowd[:kept], last):
        clock.seconds += 2.0
        await settle()
        (await each).close()
    assert (queue.waiting_count, queue._waiting, queue._running, queue._seconds) == (0, {}, {}, {})
    assert (queue._latest, queue._since) == ({}, {})


async def test_who_is_told_to_come_again_and_cancelled_leaves_no_gap() -> None:
    clock = Clock()
    queue = FairQueue(1, door_seconds=5.0, most_seconds=12.0, clock=clock)
    turn = await queue.enter("a")
    crowd = [asyncio.create_task(queue.enter("a")) for _ in range(10)]
    await settle()
    clock.seconds += 4.0
    turn.close()
    await settle()
    clock.seconds += 4.0
    crowd[0].result().close()
    crowd[-1].cancel()
    await settle()
    assert crowd[-1].done()
    (await crowd[1]).close()
    await settle()
    await asyncio.gather(*crowd[2:], return_exceptions=True)
    (await queue.enter("b")).close()
    assert (queue._free, queue._waiting, queue._running) == (1, {}, {})


async def test_a_key_that_others_keep_waiting_gets_another_word() -> None:
    clock = Clock()
    queue = FairQueue(1, door_seconds=0.1, clock=clock)
    turn = await queue.enter("a")
    with pytest.raises(ProblemError) as raised:
        await queue.enter("b")
    assert raised.value.kind is OVERLOADED
    assert int(raised.value.headers["Retry-After"]) > 0
    turn.close()


async def test_who_is_cancelled_leaves_no_gap() -> None:
    queue = FairQueue(1, door_seconds=60.0)
    turn = await queue.enter("a")
    waiting = [asyncio.create_task(queue.enter(key)) for key in "abab"]
    await settle()
    waiting[0].cancel()
    waiting[1].cancel()
    turn.close()  # before those who are cancelled have noticed
    await settle()
    assert [each.done() for each in waiting[2:]] == [False, True]
    waiting[3].result().close()
    await settle()
    waiting[2].result().close()
    assert queue.waiting_count == 0
    turn = await queue.enter("a")
    last = asyncio.create_task(queue.enter("c"))
    await settle()
    last.cancel()
    await asyncio.gather(last, return_exceptions=True)
    turn.close()
    (await queue.enter("d")).close()
    assert (queue._waiting, queue._running) == ({}, {})
