"""The kept engine: the one module that knows which it is (Dask; `service/decisions` says why).

It runs a function on values, on processes of this machine or of a cluster, and says what came of each. What is kept of
a run, what is tried again and what is charged is not its business.
"""

import logging
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import CancelledError
from contextlib import contextmanager, suppress
from typing import Any, Generic, TypeVar

import dask
from distributed import Client, LocalCluster, as_completed
from distributed.comm import CommClosedError

T = TypeVar("T")
R = TypeVar("R")

_TASKS_A_THREAD = 2  # under way or next in line, so that no worker waits for the driver
_PATIENCE = "10s"


class EngineLost(RuntimeError):  # noqa: N818 - named for what happened
    """The cluster cannot be reached, or is gone."""


class Engine(Generic[T, R]):
    """Runs ``function`` on values."""

    def __init__(self, client: Client, function: Callable[[T], R]) -> None:
        self._client = client
        self._function = function

    def outcomes(
        self, values: Iterable[T], again: Callable[[T, R | Exception], bool]
    ) -> Iterator[tuple[T, R | Exception]]:
        """What came of each value, as it comes; ``again`` says whether it is tried another time.

        A worker that is lost is none of its values' fault, up to a few times. Raises ``EngineLost``.
        """
        waiting = iter(values)
        under_way: dict[Any, T] = {}
        completed = as_completed(loop=self._client.loop)
        try:
            self._submit(waiting, under_way, completed)
            while under_way:
                future = next(completed)
                value = under_way.pop(future)
                try:
                    outcome: R | Exception = future.result()
                except (CancelledError, CommClosedError, TimeoutError, OSError) as error:
                    if isinstance(error, OSError | TimeoutError) and self._client.status == "running":
                        outcome = error  # its own, and not the cluster's
                    else:
                        raise
                except Exception as error:
                    outcome = error
                if again(value, outcome):
                    self._submit(iter([value]), under_way, completed, at_least=1)
                else:
                    yield value, outcome
                self._submit(waiting, under_way, completed)
        # What a value raised is an outcome by now: any other failure to connect is the engine's.
        except (CancelledError, StopIteration, OSError) as error:
            raise EngineLost("the cluster is gone; what is done is kept, so run the same again") from error
        finally:
            with suppress(OSError):  # of a scheduler that is gone
                for future in under_way:
                    future.release()

    def _submit(
        self, waiting: Iterator[T], under_way: dict[Any, T], completed: as_completed, *, at_least: int = 0
    ) -> None:
        room = max(at_least, self._room() - len(under_way))
        for _ in range(room):
            value = next(waiting, None)
            if value is None:
                return
            future = self._client.submit(self._function, value, pure=False)
            under_way[future] = value
            completed.add(future)

    def _room(self) -> int:
        if self._client.status != "running":
            raise CommClosedError(self._client.status)
        threads = int(sum(self._client.nthreads().values()))
        return max(1, threads * _TASKS_A_THREAD)


@contextmanager
def engine(function: Callable[[T], R], *, cluster: str | None, workers: int) -> Iterator[Engine[T, R]]:
    """The engine on a cluster's address, or on ``workers`` processes of this machine. Raises ``EngineLost``."""
    settings = {
        "distributed.comm.timeouts.connect": _PATIENCE,
        "distributed.scheduler.active-memory-manager.start": False,
        "distributed.admin.tick.limit": "1h",  # a partition takes as long as it takes
        "distributed.worker.profile.enabled": False,  # it keeps every second of an hour: 130 MiB, and some of the time
    }
    for name in [name for name in logging.root.manager.loggerDict if name.split(".")[0] == "distributed"]:
        logging.getLogger(name).setLevel(logging.CRITICAL)  # what matters is raised, and said by who is asked to
    with dask.config.set(settings):
        if cluster is not None:
            try:
                client = Client(cluster, timeout=_PATIENCE, set_as_default=False)
            except (OSError, TimeoutError, ValueError) as error:
                raise EngineLost(f"the cluster at {cluster} cannot be reached: {error}") from None
            try:
                yield Engine(client, function)
            finally:
                with suppress(OSError):
                    client.close()
            return
        with (
            LocalCluster(
                n_workers=workers,
                threads_per_worker=1,  # the work is Python's, which takes one processor a process
                host="127.0.0.1",
                dashboard_address="127.0.0.1:0",
                scheduler_kwargs={"dashboard": False},
                memory_limit=0,
                silence_logs=logging.CRITICAL,
            ) as local,
            Client(local, set_as_default=False) as client,
        ):
            yield Engine(client, function)
