"""``steelyard keys`` and ``steelyard quotas``: who may call, and how much."""

from datetime import UTC, datetime, timedelta
from typing import Any

import msgspec
import rich_click as click
from rich.console import Console
from rich.table import Table
from rich.text import Text

from steelyard.store.keys import Key, Scope
from steelyard.store.store import Store

from .opened import current_settings, with_store

_SCOPES = [scope.value for scope in Scope]
_COLUMNS = ("prefix", "organisation", "label", "scopes", "created", "expires", "state", "replaces", "quotas a day")
_ALWAYS_SHOWN = frozenset(_COLUMNS) - {"label", "replaces", "quotas a day"}
_LIFETIME = click.IntRange(1, 3650)
_LONGEST = 200  # of a name, as its column has it
_MOST_UNITS = 2**31 - 1  # of a quota, as its column holds it
_OF_FORMULAS = ("=", "+", "-", "@")  # in a usage report as CSV (OWASP, CSV injection)

_as_json = click.option("--json", "as_json", is_flag=True, help="Print JSON, for scripts.")
_expiring = click.option("--expiring-days", type=_LIFETIME, help="Only keys that expire within so many days.")


def _name(_context: click.Context, _option: click.Parameter, value: str) -> str:
    """A name that can be told from others in a table, a report and a log."""
    name = _label(_context, _option, value)
    if not name:
        raise click.BadParameter("an organisation needs a name")
    return name


def _label(_context: click.Context, _option: click.Parameter, value: str) -> str:
    text = value.strip()
    if len(text) > _LONGEST or not text.isprintable():
        raise click.BadParameter(f"at most {_LONGEST} characters, all of which can be printed")
    if text.startswith(_OF_FORMULAS):
        raise click.BadParameter(f"not with one of {' '.join(_OF_FORMULAS)} first: a spreadsheet would compute it")
    return text


def described(key: Key) -> dict[str, Any]:
    """A key in JSON, without its secret."""
    return {
        "prefix": key.prefix,
        "organisation": key.organisation,
        "label": key.label,
        "scopes": sorted(key.scopes),
        "created_time": key.created_time,
        "expiry_time": key.expiry_time,
        "state": _state(key, datetime.now(UTC)),
        "daily_quotas": {quota.subject.partition(":")[0]: quota.daily_units for quota in key.quotas},
    }


def _json(value: Any) -> str:
    return msgspec.json.format(msgspec.json.encode(value)).decode()


def _state(key: Key, now: datetime) -> str:
    return "usable" if key.is_usable(now) else "revoked" if key.revoked_time else "expired"


def _is_chosen(key: Key, organisation: str | None, expiring_days: int | None, now: datetime) -> bool:
    if organisation is not None and key.organisation != organisation:
        return False
    if expiring_days is None:
        return True
    return key.is_usable(now) and key.expiry_time is not None and key.expiry_time < now + timedelta(days=expiring_days)


@click.group()
def keys() -> None:
    """Make, list, rotate and revoke API keys."""


@keys.command("create")
@click.option("--organisation", required=True, callback=_name, help="Whom the key is for; made if new.")
@click.option("--label", default="", callback=_label, help="What the key is for.")
@click.option("--scope", "scopes", multiple=True, type=click.Choice(_SCOPES), help="Repeat for several; default all.")
@click.option("--days", type=_LIFETIME, help="Days until the key expires; default never.")
@_as_json
def create_key(organisation: str, label: str, scopes: tuple[str, ...], days: int | None, as_json: bool) -> None:
    """Make a key and print it, once: only a hash of it is kept."""

    async def create(store: Store) -> tuple[Key, str]:
        return await store.create_key(organisation, scopes or _SCOPES, label=label, expiry_time=_in_days(days))

    key, token = with_store(create)
    if as_json:
        click.echo(_json(described(key) | {"token": token}))
    else:
        click.echo(token)
    click.echo(f"Key {key.prefix} for {key.organisation}. It is not shown again.", err=True)


@keys.command("list")
@click.option("--organisation", help="Only this organisation's.")
@_expiring
@_as_json
def list_keys(organisation: str | None, expiring_days: int | None, as_json: bool) -> None:
    """List keys, without their secrets."""
    now = datetime.now(UTC)
    listed = with_store(Store.list_keys)
    prefixes = {key.id: key.prefix for key in listed}
    chosen = [key for key in listed if _is_chosen(key, organisation, expiring_days, now)]
    if as_json:
        click.echo(_json([described(key) | {"replaces": prefixes.get(key.replaces_id or 0)} for key in chosen]))
        return
    rows = [
        {
            "prefix": key.prefix,
            "organisation": key.organisation,
            "label": key.label,
            "scopes": "all" if len(key.scopes) == len(_SCOPES) else " ".join(sorted(key.scopes)),
            "created": key.created_time.date().isoformat(),
            "expires": _moment(key.expiry_time, now) if key.expiry_time else "never",
            "state": _state(key, now),
            "replaces": prefixes.get(key.replaces_id or 0, ""),
            "quotas a day": ", ".join(f"{quota.subject.partition(':')[0]} {quota.daily_units}" for quota in key.quotas),
        }
        for key in chosen
    ]
    table = Table()
    # A column that is empty throughout takes the room of those that are read. What `revoke` takes must stay whole.
    shown = [name for name in _COLUMNS if name in _ALWAYS_SHOWN or any(row[name] for row in rows)]
    for name in shown:
        table.add_column(name, overflow="fold", no_wrap=name == "prefix", min_width=10 if name == "prefix" else None)
    for row in rows:
        table.add_row(*(Text(row[name]) for name in shown))  # as it is: a name may look like markup
    Console().print(table)


@keys.command("rotate")
@click.argument("prefixes", nargs=-1, metavar="[PREFIX]...")
@click.option("--organisation", help="All usable keys of this organisation.")
@_expiring
@click.option(
    "--overlap-hours",
    default=24.0,
    show_default=True,
    type=click.FloatRange(0, 24 * 90),
    help="How long the old key goes on working; never longer than it would have.",
)
@click.option("--days", type=_LIFETIME, help="Days until a new key expires; default as the old one was made.")
@_as_json
def rotate_keys(
    prefixes: tuple[str, ...],
    organisation: str | None,
    expiring_days: int | None,
    overlap_hours: float,
    days: int | None,
    as_json: bool,
) -> None:
    """Replace keys by new ones like them, and print those, once: by PREFIX, or all that the options choose.

    A key that a newer one replaces already is passed over, unless it is named.
    """
    if bool(prefixes) == bool(organisation or expiring_days):
        raise click.UsageError("name either prefixes, or --organisation or --expiring-days or both")
    named = [prefix.partition(".")[0] for prefix in prefixes]

    async def rotate(store: Store) -> list[tuple[str, Key, str]]:
        now = datetime.now(UTC)
        listed = await store.list_keys()
        if organisation is not None and all(key.organisation != organisation for key in listed):
            raise click.ClickException(f"there is no key of an organisation {organisation}")
        replaced = {key.replaces_id for key in listed if key.is_usable(now)}  # by one that is revoked none is
        chosen = named or [
            key.prefix
            for key in listed
            if _is_chosen(key, organisation, expiring_days, now) and key.is_usable(now) and key.id not in replaced
        ]
        usable = {key.prefix for key in listed if key.is_usable(now)}
        for prefix in chosen:  # before the first is changed
            if prefix not in usable:
                raise click.ClickException(f"there is no usable key {prefix} to rotate")
        made = []
        for prefix in chosen:
            rotated = await store.rotate_key(prefix, overlap=timedelta(hours=overlap_hours), expiry_time=_in_days(days))
            if rotated is not None:
                made.append((prefix, *rotated))
                if not as_json:  # at once: what is made and not shown is lost
                    click.echo(rotated[1])
        return made

    made = with_store(rotate)
    if as_json:
        click.echo(_json([described(key) | {"replaces": old, "token": token} for old, key, token in made]))
    for old, key, _ in made:
        click.echo(
            f"Key {key.prefix} for {key.organisation} replaces {old}: that works for {overlap_hours:g} h more at most.",
            err=True,
        )
    click.echo(f"{len(made)} rotated. The new keys are not shown again.", err=True)
    short = sum(_is_chosen(key, None, expiring_days, datetime.now(UTC)) for _, key, _ in made) if expiring_days else 0
    if short:
        click.echo(
            f"{short} of the new keys expire within {expiring_days} days as well, and the next run would rotate them: "
            "give them longer with --days.",
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
@click.argument("daily_units", type=click.IntRange(0, _MOST_UNITS))
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
