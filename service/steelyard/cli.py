"""The operator's command line: serve, manage keys, write the contract."""

import asyncio
import json
import os
import shlex
import socket
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import TypeVar

import msgspec
import rich_click as click
from granian.constants import Interfaces
from granian.server import Server
from rich.console import Console
from rich.table import Table

from steelyard.http.app import OPERATIONS
from steelyard.http.contract import contract_text, problems_text
from steelyard.http.maintenance import estimate_maintenance
from steelyard.http.operations import Operation, Scope
from steelyard.settings import Settings, SettingsError, read_settings
from steelyard.store.keys import Key
from steelyard.store.store import Store, StoreUnavailable

DEVELOPMENT_LABEL = "development"
_ORGANISATION_IN_DEVELOPMENT = "Development"
_SCOPES = [scope.value for scope in Scope]

T = TypeVar("T")


def main() -> None:
    """Run the command line; what the operator can mend is said in one line."""
    try:
        cli()
    except (SettingsError, StoreUnavailable) as error:
        raise SystemExit(f"steelyard: {error}") from None


@click.group()
@click.version_option(package_name="steelyard")
def cli() -> None:
    """Steelyard: maintenance energy, training-diet phases and weight logs, over HTTP.

    Settings come from the environment, as `STEELYARD_DATABASE_URL`.
    """


@cli.command()
@click.option("--host", default="127.0.0.1", show_default=True, help="Address to listen on.")
@click.option("--port", default=8000, show_default=True, type=click.IntRange(0, 65535), help="0 takes a free one.")
@click.option("--workers", default=1, show_default=True, type=click.IntRange(1), help="Processes.")
@click.option("--development", is_flag=True, help="Make a key and print a command to try. SQLite only.")
def serve(host: str, port: int, workers: int, development: bool) -> None:
    """Serve the API until interrupted."""
    settings = read_settings(os.environ)
    port = _claim_port(host, port)
    if development and not settings.database_url.startswith("sqlite"):
        raise click.UsageError("--development makes a key in the database, so it is for SQLite only")
    _with_store(settings, Store.create_tables)  # before the workers, which would race for it
    if development:
        token = _with_store(settings, _renew_development_key)
        shown = "127.0.0.1" if host == "0.0.0.0" else host  # noqa: S104 - compared, not bound
        click.echo(f"\nDevelopment key (earlier ones are revoked):\n\n  {token}\n\nTry it in another shell:\n")
        click.echo(curl_command(estimate_maintenance, f"http://{shown}:{port}", token) + "\n")
    Server(
        "steelyard.http.asgi:create",
        address=host,
        port=port,
        interface=Interfaces.ASGI,
        workers=workers,
        websockets=False,
        factory=True,
    ).serve()


@cli.group()
def keys() -> None:
    """Make, list and revoke API keys."""


@keys.command("create")
@click.option("--organisation", required=True, help="Whom the key is for; made if new.")
@click.option("--label", default="", help="What the key is for.")
@click.option("--scope", "scopes", multiple=True, type=click.Choice(_SCOPES), help="Repeat for several; default all.")
@click.option("--days", type=click.IntRange(1, 3650), help="Days until the key expires; default never.")
def create_key(organisation: str, label: str, scopes: tuple[str, ...], days: int | None) -> None:
    """Make a key and print it, once: only a hash of it is kept."""
    expiry_time = datetime.now(UTC) + timedelta(days=days) if days else None

    async def create(store: Store) -> tuple[Key, str]:
        return await store.create_key(organisation, scopes or _SCOPES, label=label, expiry_time=expiry_time)

    key, token = _with_store(read_settings(os.environ), create)
    click.echo(token)
    click.echo(f"Key {key.prefix} for {key.organisation}. It is not shown again.", err=True)


@keys.command("list")
def list_keys() -> None:
    """List all keys, without their secrets."""
    table = Table()
    table.add_column("prefix", no_wrap=True, min_width=10)  # it must stay whole: it is what `revoke` takes
    for name in ("organisation", "label", "scopes", "created", "expires", "state"):
        table.add_column(name, overflow="fold")
    now = datetime.now(UTC)
    for key in _with_store(read_settings(os.environ), Store.list_keys):
        state = "usable" if key.is_usable(now) else "revoked" if key.revoked_time else "expired"
        created, expires = key.created_time.date().isoformat(), "never"
        if key.expiry_time:
            expires = key.expiry_time.date().isoformat()
        scopes = " ".join(sorted(key.scopes))
        table.add_row(key.prefix, key.organisation, key.label, scopes, created, expires, state)
    Console().print(table)


@keys.command("revoke")
@click.argument("prefix")
def revoke_key(prefix: str) -> None:
    """Revoke the key with this PREFIX, the part before the dot."""

    async def revoke(store: Store) -> bool:
        return await store.revoke_key(prefix.partition(".")[0])

    settings = read_settings(os.environ)
    if not _with_store(settings, revoke):
        raise click.ClickException(f"there is no key {prefix.partition('.')[0]} to revoke")
    click.echo(f"Revoked. Running services forget it within {settings.key_cache_seconds:g} s.")


@cli.command()
@click.option("--check", is_flag=True, help="Write nothing; fail if a file differs.")
@click.option(
    "--directory",
    default="contracts",
    show_default=True,
    type=click.Path(file_okay=False, path_type=Path),
    help="Where the files are.",
)
def contract(check: bool, directory: Path) -> None:
    """Write the OpenAPI document and the list of problems from the code."""
    stale = []
    for name, text in contract_files().items():
        path = directory / name
        if path.exists() and path.read_text(encoding="utf-8") == text:
            continue
        stale.append(str(path))
        if not check:
            directory.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
    if check and stale:
        raise click.ClickException(f"out of date: {', '.join(stale)}; run `steelyard contract`")
    click.echo(("Wrote " + ", ".join(stale)) if stale else "The contract is up to date.")


def contract_files() -> dict[str, str]:
    """What is committed of the contract: file names and their texts."""
    return {"openapi-v1.json": contract_text(OPERATIONS), "problems.md": problems_text()}


def curl_command(operation: Operation, url: str, token: str) -> str:
    """A command for a POSIX shell that calls ``operation`` with its first example."""
    parts = [f"curl {url}{operation.path}", f"-H {shlex.quote(f'Authorization: Bearer {token}')}"]
    if operation.request_examples:
        example = msgspec.to_builtins(next(iter(operation.request_examples.values())))
        body = json.dumps(example, indent=2)
        parts += ["-H 'Content-Type: application/json'", f"-d {shlex.quote(body)}"]
    return " \\\n  ".join(parts)


async def _renew_development_key(store: Store) -> str:
    for key in await store.list_keys():
        if key.label == DEVELOPMENT_LABEL and key.revoked_time is None:
            await store.revoke_key(key.prefix)
    _, token = await store.create_key(_ORGANISATION_IN_DEVELOPMENT, _SCOPES, label=DEVELOPMENT_LABEL)
    return token


def _with_store(settings: Settings, use: Callable[[Store], Awaitable[T]]) -> T:
    """Open the store, use it, close it."""

    async def run() -> T:
        store = Store(settings.database_url, timeout_seconds=settings.store_timeout_seconds)
        try:
            await store.create_tables()
            return await use(store)
        finally:
            await store.close()

    return asyncio.run(run())


def _claim_port(host: str, port: int) -> int:
    """``port`` if it can be had, or a free one for 0."""
    with socket.socket(socket.AF_INET6 if ":" in host else socket.AF_INET) as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((host, port))
        except OSError as error:
            raise click.ClickException(f"cannot listen on {host} port {port}: {error.strerror}") from None
        return int(probe.getsockname()[1])
