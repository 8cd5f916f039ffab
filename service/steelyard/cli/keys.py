"""``steelyard keys`` and ``steelyard quotas``: who may call, and how much."""

from datetime import UTC, datetime, timedelta

import rich_click as click
from rich.console import Console
from rich.table import Table

from steelyard.http.operation.operation import Scope
from steelyard.store.keys import Key
from steelyard.store.store import Store

from .opened import current_settings, with_store

_SCOPES = [scope.value for scope in Scope]
_LIFETIME = click.IntRange(1, 3650)


@click.group()
def keys() -> None:
    """Make, list, rotate and revoke API keys."""


@keys.command("create")
@click.option("--organisation", required=True, help="Whom the key is for; made if new.")
@click.option("--label", default="", help="What the key is for.")
@click.option("--scope", "scopes", multiple=True, type=click.Choice(_SCOPES), help="Repeat for several; default all.")
@click.option("--days", type=_LIFETIME, help="Days until the key expires; default never.")
def create_key(organisation: str, label: str, scopes: tuple[str, ...], days: int | None) -> None:
    """Make a key and print it, once: only a hash of it is kept."""

    async def create(store: Store) -> tuple[Key, str]:
        return await store.create_key(organisation, scopes or _SCOPES, label=label, expiry_time=_in_days(days))

    key, token = with_store(create)
    click.echo(token)
    click.echo(f"Key {key.prefix} for {key.organisation}. It is not shown again.", err=True)


@keys.command("list")
def list_keys() -> None:
    """List all keys, without their secrets."""
    table = Table()
    table.add_column("prefix", no_wrap=True, min_width=10)  # it must stay whole: it is what `revoke` takes
    for name in ("organisation", "label", "scopes", "created", "expires", "state", "replaces", "quotas a day"):
        table.add_column(name, overflow="fold")
    now = datetime.now(UTC)
    listed = with_store(Store.list_keys)
    prefixes = {key.id: key.prefix for key in listed}
    for key in listed:
        table.add_row(
            key.prefix,
            key.organisation,
            key.label,
            " ".join(sorted(key.scopes)),
            key.created_time.date().isoformat(),
            _moment(key.expiry_time, now) if key.expiry_time else "never",
            "usable" if key.is_usable(now) else "revoked" if key.revoked_time else "expired",
            prefixes.get(key.replaces_id or 0, ""),
            ", ".join(f"{quota.subject.partition(':')[0]} {quota.daily_units}" for quota in key.quotas),
        )
    Console().print(table)


@keys.command("rotate")
@click.argument("prefix")
@click.option(
    "--overlap-hours",
    default=24.0,
    show_default=True,
    type=click.FloatRange(0, 24 * 90),
    help="How long the old key goes on working; never longer than it would have.",
)
@click.option("--days", type=_LIFETIME, help="Days until the new key expires; default as the old one was made.")
def rotate_key(prefix: str, overlap_hours: float, days: int | None) -> None:
    """Replace the key with this PREFIX by a new one like it, and print that, once."""
    prefix = prefix.partition(".")[0]

    async def rotate(store: Store) -> tuple[Key, str] | None:
        return await store.rotate_key(prefix, overlap=timedelta(hours=overlap_hours), expiry_time=_in_days(days))

    rotated = with_store(rotate)
    if rotated is None:
        raise click.ClickException(f"there is no usable key {prefix} to rotate")
    key, token = rotated
    click.echo(token)
    click.echo(
        f"Key {key.prefix} for {key.organisation}. It is not shown again. "
        f"{prefix} works for {overlap_hours:g} h more at most.",
        err=True,
    )


@keys.command("revoke")
@click.argument("prefix")
def revoke_key(prefix: str) -> None:
    """Revoke the key with this PREFIX, the part before the dot."""
    prefix = prefix.partition(".")[0]

    async def revoke(store: Store) -> bool:
        return await store.revoke_key(prefix)

    settings = current_settings()
    if not with_store(revoke, settings):
        raise click.ClickException(f"there is no key {prefix} to revoke")
    click.echo(f"Revoked. Running services forget it within {settings.key_cache_seconds:g} s.")


@click.group()
def quotas() -> None:
    """Limit what a key or an organisation may use in a day (UTC)."""


@quotas.command("set")
@click.option("--organisation", help="Limit all keys of this organisation together.")
@click.option("--key", "prefix", help="Limit the key with this prefix.")
@click.argument("daily_units", type=click.IntRange(0))
def set_quota(organisation: str | None, prefix: str | None, daily_units: int) -> None:
    """Allow DAILY_UNITS a day: a request costs what its operation weighs in the contract."""
    _change_quota(organisation, prefix, daily_units)
    click.echo(f"Limited to {daily_units} a day. {_delay()}")


@quotas.command("lift")
@click.option("--organisation", help="Lift the limit of this organisation.")
@click.option("--key", "prefix", help="Lift the limit of the key with this prefix.")
def lift_quota(organisation: str | None, prefix: str | None) -> None:
    """Let a key or an organisation use any number again."""
    _change_quota(organisation, prefix, None)
    click.echo(f"Lifted. {_delay()}")


def _change_quota(organisation: str | None, prefix: str | None, daily_units: int | None) -> None:
    if (organisation is None) == (prefix is None):
        raise click.UsageError("name either --organisation or --key")

    async def change(store: Store) -> bool:
        if organisation is not None:
            return await store.set_organisation_quota(organisation, daily_units)
        return await store.set_key_quota((prefix or "").partition(".")[0], daily_units)

    if not with_store(change):
        raise click.ClickException(f"there is no {'organisation' if organisation else 'key'} {organisation or prefix}")


def _delay() -> str:
    return f"Running services learn of it within {current_settings().key_cache_seconds:g} s."


def _in_days(days: int | None) -> datetime | None:
    return datetime.now(UTC) + timedelta(days=days) if days else None


def _moment(moment: datetime, now: datetime) -> str:
    """A date, or to the minute where that matters."""
    return moment.strftime("%Y-%m-%d" if abs(moment - now) > timedelta(days=2) else "%Y-%m-%d %H:%M")
