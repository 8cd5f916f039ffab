"""What an operator can set: read once from the environment, then frozen."""

import difflib
from collections.abc import Mapping
from typing import Any

import msgspec

PREFIX = "STEELYARD_"
CLIENT_VARIABLES = ("STEELYARD_URL", "STEELYARD_KEY")  # the SDK's, which may share a shell with the service


class SettingsError(ValueError):
    """An environment variable is unknown or malformed; the text names it and what would be accepted."""


class Settings(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The service's settings; ``STEELYARD_DATABASE_URL`` sets ``database_url``, and so on."""

    database_url: str = "sqlite+aiosqlite:///var/steelyard.sqlite3"
    body_limit_bytes: int = 1_048_576
    key_cache_seconds: float = 30.0  # how long a verified key is believed: the delay of a revocation
    key_grace_seconds: float = 900.0  # how long a verified key still works while the store is unreachable
    store_timeout_seconds: float = 2.0
    usage_flush_seconds: float = 5.0  # the most usage that a killed process can lose

    def __post_init__(self) -> None:
        if "://" not in self.database_url:
            example = "sqlite+aiosqlite:///var/steelyard.sqlite3"
            raise ValueError(f"{_variable('database_url')} must be a database URL such as {example}")
        for name in ("body_limit_bytes", "store_timeout_seconds", "usage_flush_seconds"):
            if not getattr(self, name) > 0:
                raise ValueError(f"{_variable(name)} must be above 0")
        for name in ("key_cache_seconds", "key_grace_seconds"):
            if not getattr(self, name) >= 0:
                raise ValueError(f"{_variable(name)} must be 0 or more")


def read_settings(environment: Mapping[str, str], **overrides: Any) -> Settings:
    """Settings from ``STEELYARD_*`` variables; ``overrides`` win over the environment.

    Raises ``SettingsError`` on a variable that is not a setting, or whose value cannot be read.
    """
    known = {_variable(name): name for name in Settings.__struct_fields__}
    values: dict[str, Any] = {}
    for variable, text in environment.items():
        if not variable.startswith(PREFIX) or variable in CLIENT_VARIABLES:
            continue
        if variable not in known:
            close = difflib.get_close_matches(variable, known, 1, cutoff=0.8)
            hint = f"did you mean {close[0]}?" if close else f"known are {', '.join(sorted(known))}"
            raise SettingsError(f"{variable} is not a setting: {hint}")
        values[known[variable]] = text
    try:
        return msgspec.convert(values | overrides, Settings, strict=False)
    except msgspec.ValidationError as error:
        raise SettingsError(_explain(str(error))) from None


def _variable(name: str) -> str:
    return PREFIX + name.upper()


def _explain(message: str) -> str:
    """Turn msgspec's ``Expected `int`, got `str` - at `$.name``` into a sentence about the variable."""
    text, _, path = message.partition(" - at `$.")
    if not path:
        return text
    wanted = "a whole number" if "`int`" in text else "a number" if "`float`" in text else "text"
    return f"{_variable(path.rstrip('`'))} must be {wanted}"
