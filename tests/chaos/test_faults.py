"""The faults in short; ``make chaos`` breaks more, for longer, and writes the table.

That limits go on without their store is tested in ``tests/http/test_rate_limit.py``.
"""

import shutil

import pytest
from servers import Server, new_database

from . import endings, fairness, proxied, scenarios, strangers
from .scenarios import Row
from .served import migrated, sqlite_url


def kept(row: Row) -> None:
    assert not row.broken, row


async def test_a_worker_is_killed() -> None:
    with sqlite_url() as url:
        kept(await scenarios.worker_killed(url))


async def test_the_database_is_gone(postgresql_server: Server) -> None:
    kept(await scenarios.database_gone(postgresql_server, new_database(postgresql_server), grace_seconds=2.0))


async def test_strangers_with_invented_keys_delay_nobody(postgresql_server: Server) -> None:
    kept(await strangers.invented_keys(new_database(postgresql_server), connections=200, cache_seconds=1.0))


async def test_a_key_is_not_delayed_by_anothers_crowd() -> None:
    with sqlite_url() as url:
        kept(await fairness.batch_beside_optima(url))


@pytest.mark.parametrize("how", endings.Gone)
async def test_the_parent_of_the_workers_is_gone(how: endings.Gone) -> None:
    with sqlite_url() as url:
        kept(await endings.parent_gone(url, how))


async def test_it_is_told_to_stop_with_a_batch_under_way() -> None:
    with sqlite_url() as url:
        kept(await endings.told_to_stop_with_a_batch(url))


async def test_it_starts_without_its_database(postgresql_server: Server) -> None:
    url = new_database(postgresql_server)
    await migrated(url)
    kept(await scenarios.started_without_database(postgresql_server, url))


@pytest.mark.long  # a quarter of a minute of waiting
@pytest.mark.skipif(shutil.which("haproxy") is None, reason="needs haproxy")
async def test_a_known_key_outlives_the_database_behind_the_proxy(postgresql_server: Server) -> None:
    kept(await proxied.grace_behind_the_proxy(postgresql_server, new_database(postgresql_server)))


@pytest.mark.long  # a quarter of a minute of waiting
@pytest.mark.skipif(shutil.which("haproxy") is None, reason="needs haproxy")
async def test_an_address_that_guesses_keys_waits_at_the_proxy() -> None:
    with sqlite_url() as url:
        kept(await proxied.guesses_through_the_proxy(url))


@pytest.mark.skipif(shutil.which("haproxy") is None, reason="needs haproxy")
async def test_a_crowd_is_served_through_the_proxy() -> None:
    with sqlite_url() as url:
        row = await proxied.load_through_the_proxy(url, requests=4_000)
    # How fast is `make load`'s to say: here other tests share the machine.
    assert proxied.ONLY_SHED not in row.broken, row


async def test_it_is_told_to_stop() -> None:
    with sqlite_url() as url:
        kept(await scenarios.told_to_stop(url))
