"""``steelyard serve``."""

import json
import os
import resource
import shlex
import socket
import sys
import tempfile
from datetime import UTC, datetime, timedelta
from functools import partial

import msgspec
import rich_click as click

from steelyard.http.edge.tracing import check_tracing
from steelyard.http.endpoints.maintenance import estimate_maintenance
from steelyard.http.gate.rate_limit import RateLimiter
from steelyard.http.operation.operation import Operation
from steelyard.http.pages.answer_examples import without_nulls
from steelyard.http.pages.site import WORKBENCH
from steelyard.http.wire.observability import MULTIPROCESS_VARIABLE
from steelyard.settings import Settings
from steelyard.store.database import is_embedded
from steelyard.store.keys import Key, Scope
from steelyard.store.store import Store, StoreUnavailable

from . import workers as processes
from .opened import current_settings, open_store, with_store

DEVELOPMENT_LABEL = "development"
_ORGANISATION_IN_DEVELOPMENT = "Development"

_DEVELOPMENT_KEY_LIFE = timedelta(days=30)
_BACKLOG = 4096


@click.command()
@click.option("--host", default="127.0.0.1", show_default=True, help="Address to listen on.")
@click.option("--port", default=8000, show_default=True, type=click.IntRange(0, 65535), help="0 takes a free one.")
@click.option("--workers", default=1, show_default=True, type=click.IntRange(1), help="Processes.")
@click.option("--migrate", is_flag=True, help="Bring the tables up to date first. SQLite's are in any case.")
@click.option(
    "--development",
    is_flag=True,
    help="No rate limit; make a key, print a command to try; serve `/workbench`. SQLite only.",
)
def serve(host: str, port: int, workers: int, migrate: bool, development: bool) -> None:
    """Serve the API until interrupted; then answer what is under way, for `STEELYARD_DRAIN_SECONDS` at most.

    A worker that dies is replaced.
    """
    if development:
        os.environ.setdefault("STEELYARD_RATE_LIMIT_REQUESTS", "0")  # the workers read these as well
        os.environ.setdefault("STEELYARD_WORKBENCH", "true")
    settings = current_settings()
    listening = _bind(host, port)
    port = listening.getsockname()[1]
    if development and not is_embedded(settings.database_url):
        raise click.UsageError("--development makes a key in the database, so it is for SQLite only")
    RateLimiter.of(settings)  # so that a mistake is said here, and once
    _prepare_store(settings, migrate=migrate)  # before the workers, which would race for it
    if workers > 1 and settings.rate_limit_requests and not settings.rate_limit_store_url:
        click.echo(
            f"Each of the {workers} workers keeps the rate limit alone, so that a key may send {workers} times as "
            "much. STEELYARD_RATE_LIMIT_STORE_URL lets them share it.",
            err=True,
        )
    if settings.metrics and workers > 1:  # each worker answers for all of them
        os.environ.setdefault(MULTIPROCESS_VARIABLE, tempfile.mkdtemp(prefix="steelyard-metrics-"))
    _raise_file_limit()
    key: Key | None = None
    shown = _address_of(host)
    if development:
        key, token = with_store(_make_development_key, settings)
        click.echo(f"\nDevelopment key (revoked when this ends):\n\n  {token}\n\nTry it in another shell:\n")
        click.echo(curl_command(estimate_maintenance, f"http://{shown}:{port}", token) + "\n")
        if settings.workbench:
            click.echo(f"Or in a browser, with the key pasted there: http://{shown}:{port}{WORKBENCH.path}\n")
    click.echo(f"Listening at http://{shown}:{port} with {workers} worker{'s' if workers > 1 else ''}.", err=True)
    exit_code = processes.serve(
        listening,
        "steelyard.http.asgi:create",
        workers=workers,
        drain_seconds=settings.drain_seconds,
        backlog=_BACKLOG,
    )
    if key is not None:
        with_store(partial(Store.revoke_key, prefix=key.prefix), settings)
    sys.exit(exit_code)


def _prepare_store(settings: Settings, *, migrate: bool) -> None:
    """See that the tables are as needed. A server that is away is waited for by the workers, which are not ready."""
    check_tracing(settings)
    try:
        with_store(Store.ping, settings, migrate=migrate)
    except StoreUnavailable as error:
        open_store(settings)  # a URL that cannot be used is a mistake
        if is_embedded(settings.database_url):
            raise
        click.echo(f"Starting without the store, not ready until it answers: {error}.", err=True)


def _raise_file_limit() -> None:
    """Let this process and its workers have as many connections as the system allows them."""
    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    if soft < hard:
        resource.setrlimit(resource.RLIMIT_NOFILE, (hard, hard))


def curl_command(operation: Operation, url: str, token: str) -> str:
    """A command for a POSIX shell that calls ``operation`` with its first example."""
    parts = [f"curl {url}{operation.path}", f"-H {shlex.quote(f'Authorization: Bearer {token}')}"]
    if operation.request_examples:
        example = without_nulls(msgspec.to_builtins(next(iter(operation.request_examples.values()))))
        body = json.dumps(example, indent=2)
        parts += ["-H 'Content-Type: application/json'", f"-d {shlex.quote(body)}"]
    return " \\\n  ".join(parts)


async def _make_development_key(store: Store) -> tuple[Key, str]:
    """A key of this start's own: another that runs beside it keeps its key. It expires, should it be left behind."""
    return await store.create_key(
        _ORGANISATION_IN_DEVELOPMENT,
        list(Scope),
        label=DEVELOPMENT_LABEL,
        expiry_time=datetime.now(UTC) + _DEVELOPMENT_KEY_LIFE,
    )


def _address_of(host: str) -> str:
    """How a service that listens on ``host`` is called from this machine, as a URL has it (RFC 3986 3.2.2)."""
    everywhere = {"0.0.0.0": "127.0.0.1", "::": "[::1]"}  # noqa: S104 - compared, not bound
    return everywhere.get(host) or (f"[{host}]" if ":" in host else host)


def _bind(host: str, port: int) -> socket.socket:
    """A socket on ``port``, or on a free one for 0. It listens at once, or another start could have the same."""
    listening = socket.socket(socket.AF_INET6 if ":" in host else socket.AF_INET)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((host, port))
        listening.listen(_BACKLOG)
    except OSError as error:
        listening.close()
        raise click.ClickException(f"cannot listen on {host} port {port}: {error.strerror}") from None
    return listening
