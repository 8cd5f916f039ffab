"""The one way in: a request to the whole service as JSON, and what came back. Nothing else here knows the service.

The application is called as an ASGI server would call it, so that what is judged is what is served: a fault that the
service did not foresee is an answer of 500 here as there.
"""

import asyncio
import atexit
import functools
import json
import tempfile
from contextlib import AsyncExitStack
from pathlib import Path
from typing import Any, NamedTuple

from in_process import Running, running
from steelyard.http.app import OPERATIONS

Json = dict[str, Any]
_PATHS = {operation.operation_id: operation.path for operation in OPERATIONS}


class Answered(NamedTuple):
    """Status and decoded body; ``text`` is the body as it was sent, for other formats than JSON."""

    status: int
    body: Json
    text: str = ""

    @property
    def is_answer(self) -> bool:
        """Whether it is an answer and no problem document."""
        return self.status == 200


class _Served(NamedTuple):
    loop: asyncio.AbstractEventLoop
    service: Running


@functools.cache
def _served() -> _Served:
    """The service started once for the process, in a loop of its own, stopped at exit."""
    loop = asyncio.new_event_loop()
    directory = tempfile.TemporaryDirectory()
    stack = AsyncExitStack()
    service = loop.run_until_complete(stack.enter_async_context(running(Path(directory.name))))

    def stop() -> None:
        loop.run_until_complete(stack.aclose())
        loop.close()
        directory.cleanup()

    atexit.register(stop)
    return _Served(loop, service)


def ask(
    operation: str, request: Json, *, accept: str = "application/json", language: str = "", form: str = ""
) -> Answered:
    """Send ``request`` to an operation by its id, or to another ``form`` of it, and wait for the answer."""
    served = _served()
    status, content = served.loop.run_until_complete(
        _call(served.service, _PATHS[operation] + form, request, accept, language)
    )
    text = content.decode("utf-8")
    is_json = text[:1] in "{["
    return Answered(status, json.loads(text) if is_json else {}, text)


async def _call(service: Running, path: str, request: Json, accept: str, language: str) -> tuple[int, bytes]:
    content = json.dumps(request).encode()
    headers = {
        "host": "service.test", "authorization": f"Bearer {service.token}", "content-type": "application/json",
        "content-length": str(len(content)), "accept": accept, "accept-language": language,
    }  # fmt: skip
    scope = {
        "type": "http", "asgi": {"version": "3.0", "spec_version": "2.3"}, "http_version": "1.1", "method": "POST",
        "scheme": "http", "path": path, "raw_path": path.encode(), "query_string": b"", "root_path": "",
        "headers": [(name.encode(), value.encode()) for name, value in headers.items()],
        "client": ("127.0.0.1", 1), "server": ("service.test", 80), "state": {},
    }  # fmt: skip
    sent = [{"type": "http.request", "body": content, "more_body": False}]
    status, parts = 0, []

    async def receive() -> Json:
        if sent:
            return sent.pop()
        await asyncio.Event().wait()
        raise AssertionError

    async def send(message: Any) -> None:
        nonlocal status
        if message["type"] == "http.response.start":
            status = message["status"]
        elif message["type"] == "http.response.body":
            parts.append(message.get("body", b""))

    await service.app(scope, receive, send)  # type: ignore[arg-type]
    return status, b"".join(parts)
