"""The processes that answer: started, replaced when they die, and told to end."""

import os
import signal
import socket
import sys
import threading
import time
import traceback
from collections.abc import Callable
from types import FrameType
from typing import NoReturn

from uvicorn import Config, Server

from steelyard.http.wire.observability import MULTIPROCESS_VARIABLE

from .bounded_http import BoundedHttp

_ENDING = frozenset({signal.SIGTERM, signal.SIGINT, signal.SIGHUP})  # SIGHUP: the terminal was closed
_PARENT_SECONDS = 1.0  # how often a worker looks whether its parent is there
_LOOK_SECONDS = 0.1
_START_SECONDS = 30.0  # a worker that gives up within them could not start
_LAST_WRITES_SECONDS = 5.0  # beyond the drain, for what is counted to be written
_CONNECTIONS = 16_384  # of one worker; a request beyond them gets a 503
_IDLE_SECONDS = 75  # how long a connection may wait for its next request; longer than proxies keep theirs


def server_config(factory: str, *, drain_seconds: int, backlog: int) -> Config:
    """How a worker serves the application that ``factory`` makes."""
    return Config(
        factory,
        factory=True,
        interface="asgi3",
        http=BoundedHttp,
        ws="none",
        loop="uvloop",
        lifespan="on",
        log_config=None,
        log_level="error",
        access_log=False,
        proxy_headers=False,
        server_header=False,
        limit_concurrency=_CONNECTIONS,
        backlog=backlog,
        timeout_keep_alive=_IDLE_SECONDS,
        timeout_graceful_shutdown=drain_seconds,
    )


class Workers:
    """Some processes that serve one listening socket."""

    def __init__(
        self,
        count: int,
        listening: socket.socket,
        run: Callable[[], None],
        *,
        end_within_seconds: float,
        on_end: Callable[[int], None] = lambda _: None,
    ) -> None:
        """``run`` serves until the process is told to end (SIGTERM), within ``end_within_seconds``.

        ``on_end`` is told of each process that has ended.
        """
        self._on_end = on_end
        self._count = count
        self._listening = listening
        self._run = run
        self._end_within_seconds = end_within_seconds
        self._started: dict[int, float] = {}  # process ids, and when each was started
        self._is_told_to_end = False

    def serve(self) -> int:
        """Serve until SIGTERM, SIGINT or SIGHUP, and end the workers. Returns the exit code of the whole.

        A worker that dies is replaced; one that cannot start ends them all, since the next could not either.
        """
        before = {each: signal.signal(each, self._end) for each in _ENDING}
        exit_code = 0
        try:
            while not self._is_told_to_end:
                while len(self._started) < self._count:
                    self._start()
                time.sleep(_LOOK_SECONDS)
                if self._gave_up():
                    self._is_told_to_end, exit_code = True, 1
            self._end_all()
        finally:
            for each, handler in before.items():
                signal.signal(each, handler)
        return exit_code

    def _end(self, _signal: int, _frame: FrameType | None) -> None:
        self._is_told_to_end = True

    def _start(self) -> None:
        sys.stdout.flush()
        sys.stderr.flush()
        # Until the new process has handlers of its own a signal must end it, not be remembered by its parent's.
        signals = _ENDING
        signal.pthread_sigmask(signal.SIG_BLOCK, signals)
        parent = os.getpid()
        process = os.fork()
        if not process:
            for each in signals:
                signal.signal(each, signal.SIG_DFL)
            # The terminal is the parent's, which tells this process to end: not with work under way.
            signal.signal(signal.SIGHUP, signal.SIG_IGN)
            threading.Thread(target=_end_with, args=(parent,), daemon=True).start()
            signal.pthread_sigmask(signal.SIG_UNBLOCK, signals)
            self._work()
        signal.pthread_sigmask(signal.SIG_UNBLOCK, signals)
        self._started[process] = time.monotonic()

    def _work(self) -> NoReturn:
        """In the new process: serve, and never return to what the parent was doing."""
        exit_code = 1
        try:
            self._run()
            exit_code = 0
        except SystemExit as ended:
            exit_code = ended.code if isinstance(ended.code, int) else 1
        except BaseException:  # the process ends here whatever happened
            traceback.print_exc()
        finally:
            sys.stdout.flush()
            sys.stderr.flush()
            os._exit(exit_code)

    def _gave_up(self) -> bool:
        """Take note of the workers that have ended. Returns whether one ended by itself while it was starting."""
        has_given_up = False
        for process, started in tuple(self._started.items()):
            found, status = os.waitpid(process, os.WNOHANG)
            if found:
                del self._started[process]
                self._on_end(process)
                is_new = time.monotonic() - started < _START_SECONDS
                has_given_up = has_given_up or (is_new and os.waitstatus_to_exitcode(status) > 0)
        return has_given_up

    def _end_all(self) -> None:
        self._listening.close()  # the last to hold it open, once the workers have: callers are refused, and do not wait
        for process in self._started:
            os.kill(process, signal.SIGTERM)
        deadline = time.monotonic() + self._end_within_seconds
        while self._started:
            self._gave_up()
            if time.monotonic() > deadline:
                for process in self._started:
                    os.kill(process, signal.SIGKILL)
            time.sleep(_LOOK_SECONDS / 2)


def _end_with(parent: int) -> None:
    """End this process when its parent is gone, however it went: nobody would replace or end it."""
    while os.getppid() == parent:
        time.sleep(_PARENT_SECONDS)
    os.kill(os.getpid(), signal.SIGTERM)


def serve(listening: socket.socket, factory: str, *, workers: int, drain_seconds: int, backlog: int) -> int:
    """Serve the application that ``factory`` makes on a bound socket until told to end. Returns the exit code."""
    listening.listen(backlog)  # so that callers wait for the first worker instead of being refused
    listening.setblocking(False)
    config = server_config(factory, drain_seconds=drain_seconds, backlog=backlog)

    def run() -> None:
        Server(config).run([listening])

    end_within_seconds = drain_seconds + _LAST_WRITES_SECONDS
    return Workers(workers, listening, run, end_within_seconds=end_within_seconds, on_end=_forget_gauges).serve()


def _forget_gauges(process: int) -> None:
    """What a worker measured of itself ends with it; what it counted stays."""
    if os.environ.get(MULTIPROCESS_VARIABLE):
        from prometheus_client.multiprocess import mark_process_dead

        mark_process_dead(process)  # type: ignore[no-untyped-call]
