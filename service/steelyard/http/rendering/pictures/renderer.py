"""Drawing off the event loop: one process that draws one picture at a time, started with the first picture."""

import asyncio
import subprocess
import sys
from collections.abc import Mapping
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from pathlib import Path
from threading import Timer
from typing import Any

import msgspec

from .render_process import DONE, FRAME
from .svg_texts import described

_SCRIPT = Path(__file__).with_name("render_process.py")
# The drawing library may keep some kilobytes of each picture, so that its process is replaced now and then.
_PICTURES_A_PROCESS = 1000
_ENVIRONMENT = {"TZ": "UTC", "LC_ALL": "C.UTF-8"}  # nothing of the service's own, which holds secrets


class RenderingError(RuntimeError):
    """A picture could not be drawn."""


class Renderer:
    """Has pictures drawn, one after the other. One that takes more than ``seconds`` ends the process that draws it."""

    def __init__(self, *, seconds: float) -> None:
        self._seconds = seconds
        self._thread: ThreadPoolExecutor | None = None
        self._process: subprocess.Popen[bytes] | None = None
        self._drawn_count = 0

    async def render(self, job: Mapping[str, Any]) -> bytes:
        """The picture of a job of ``render_process.draw``; an SVG is ``described`` with the job's ``id``.

        Raises ``RenderingError``.
        """
        if self._thread is None:
            self._thread = ThreadPoolExecutor(1, "picture")  # waits for the process; more would not draw more
        return await asyncio.get_running_loop().run_in_executor(self._thread, self._render, job)

    def close(self) -> None:
        """Forget what waits, and end the process."""
        thread, self._thread = self._thread, None
        if thread is not None:
            thread.shutdown(wait=False, cancel_futures=True)
        self._end_process()

    def _render(self, job: Mapping[str, Any]) -> bytes:
        if self._process is not None and (self._process.poll() is not None or self._drawn_count >= _PICTURES_A_PROCESS):
            self._end_process()
        try:
            status, answer = self._exchange(msgspec.json.encode(job))
        except (OSError, EOFError, ValueError) as error:  # it was killed, by its timer or from outside
            self._end_process()
            raise RenderingError("the drawing process ended") from error
        if status != DONE:
            raise RenderingError(answer.decode())
        if job["form"] == "svg":
            texts = (job["title"], job["description"], job["language"])
            return described(answer.decode(), job["id"], *texts).encode()
        return answer

    def _exchange(self, content: bytes) -> tuple[bytes, bytes]:
        if self._process is None:
            self._process = subprocess.Popen(  # noqa: S603 - this interpreter, and a file of this package
                (sys.executable, "-I", str(_SCRIPT)),
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=subprocess.DEVNULL,
                env=_ENVIRONMENT,
            )
            self._drawn_count = 0
        process = self._process
        assert process.stdin is not None
        assert process.stdout is not None
        timer = Timer(self._seconds, process.kill)
        timer.start()
        try:
            process.stdin.write(FRAME.pack(b"J", len(content)) + content)
            process.stdin.flush()
            header = process.stdout.read(FRAME.size)
            if len(header) < FRAME.size:
                raise EOFError
            status, length = FRAME.unpack(header)
            answer = process.stdout.read(length)
            if len(answer) < length:
                raise EOFError
        finally:
            timer.cancel()
        self._drawn_count += 1
        return status, answer

    def _end_process(self) -> None:
        process, self._process = self._process, None
        if process is not None:
            process.kill()
            process.wait()
            for pipe in (process.stdin, process.stdout):
                assert pipe is not None
                with suppress(OSError):  # what was not sent is lost with the process
                    pipe.close()
