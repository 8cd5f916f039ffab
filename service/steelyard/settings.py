"""What an operator can set: read once from the environment, then frozen."""

import re
from collections.abc import Mapping
from typing import Any

import msgspec

PREFIX = "STEELYARD_"
# As browsers write them: in lower case, and other letters as punycode. Never `*`: a key has no business in any page.
_ORIGIN = re.compile(r"https?://[a-z0-9_.-]+(?::\d{1,5})?")
_TOKEN = re.compile(r"(?:[!-~](?:[ -~]*[!-~])?)?")  # what a header field holds untrimmed: no newline of a file
_MOST = 1_000_000_000  # of any number, in seconds 30 years; "for ever" would be an error where it is waited for
_MOST_DAYS = 36_500
CLIENT_VARIABLES = ("STEELYARD_URL", "STEELYARD_KEY")  # the SDK's, which may share a shell with the service


class SettingsError(ValueError):
    """An environment variable is unknown or malformed; the text names it and what would be accepted."""


class Settings(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The service's settings; ``STEELYARD_DATABASE_URL`` sets ``database_url``, and so on."""

    database_url: str = "sqlite+aiosqlite:///var/steelyard.sqlite3"  # where keys, quotas and the ledger are
    migrate_at_start: bool = False  # whether a start may change the tables; those of SQLite it may in any case
    body_limit_bytes: int = 1_048_576  # the longest body, and the longest line of a batch
    key_cache_seconds: float = 5.0  # how long a verified key is believed: the delay of a revocation
    key_grace_seconds: float = 900.0  # how long a verified key still works while the store is unreachable
    store_timeout_seconds: float = 2.0  # the most time for one exchange with the database or the limits' store
    usage_flush_seconds: float = 5.0  # the most usage that a killed process can lose
    usage_days: int = 0  # how many days of use the ledger keeps beside today; 0 is all
    rate_limit_requests: int = 60_000  # units of each key in a window (`x-steelyard-units`); 0 is any number
    rate_limit_window_seconds: int = 60  # how long a window of the rate limit is
    rate_limit_store_url: str = ""  # valkey://... where several processes share limits; none is each process's memory
    rate_limit_sync_seconds: float = 0.2  # how old the counts of the other processes may be
    drain_seconds: int = 20  # how long a stopping server waits for the requests under way
    body_seconds: float = 10.0  # the most time a body may take to arrive
    computation_seconds: float = 20.0  # the most time a long computation may take, its wait for a thread included
    queue_seconds: float = 5.0  # the longest expected wait for a turn at a long computation; beyond it, a 429 or 503
    overload_seconds: float = 5.0  # requests are shed while the event loop is later than this; 0 is never
    batch_lines: int = 200_000  # the most lines of one batch; `body_limit_bytes` holds for each of them
    batch_idle_seconds: float = 60.0  # the most time until the next line of a batch arrives
    compress_from_bytes: int = 4096  # shorter answers are not worth compressing
    cors_origins: str = ""  # origins of web pages that may call, separated by commas; none by default
    log_requests: bool = True  # one JSON line per request, without anything that a request says of a person
    metrics: bool = False  # whether `/metrics` exists; needs `metrics_token` or `metrics_public`
    metrics_token: str = ""  # what a scraper must send as its bearer token
    metrics_public: bool = False  # whether `/metrics` is for anyone who reaches the port, without a token
    workbench: bool = False  # whether `/workbench`, a page for trying the operations, exists
    tracing: bool = False  # a span per request; needs the extra `tracing`, which OTEL_* variables configure

    def __post_init__(self) -> None:
        if "://" not in self.database_url:
            example = "sqlite+aiosqlite:///var/steelyard.sqlite3"
            raise ValueError(f"{_variable('database_url')} must be a database URL such as {example}")
        for name in (
            "body_limit_bytes",
            "store_timeout_seconds",
            "usage_flush_seconds",
            "rate_limit_window_seconds",
            "rate_limit_sync_seconds",
            "drain_seconds",
            "body_seconds",
            "computation_seconds",
            "queue_seconds",
            "batch_lines",
            "batch_idle_seconds",
            "compress_from_bytes",
        ):
            if not getattr(self, name) > 0:
                raise ValueError(f"{_variable(name)} must be above 0")
        for name in ("key_cache_seconds", "key_grace_seconds", "usage_days", "rate_limit_requests", "overload_seconds"):
            if not getattr(self, name) >= 0:
                raise ValueError(f"{_variable(name)} must be 0 or more")
        for name in self.__struct_fields__:
            value = getattr(self, name)
            if isinstance(value, int | float) and value > _most(name):
                raise ValueError(f"{_variable(name)} must be at most {_most(name):,}")
        if not _TOKEN.fullmatch(self.metrics_token):
            ends = "with no blank or line end around them"
            raise ValueError(f"{_variable('metrics_token')} must be letters, digits and signs of ASCII, {ends}")
        if self.rate_limit_store_url and "://" not in self.rate_limit_store_url:
            raise ValueError(f"{_variable('rate_limit_store_url')} must be a URL such as valkey://localhost:6379/0")
        if self.metrics and not (self.metrics_token or self.metrics_public):
            token, public = _variable("metrics_token"), _variable("metrics_public")
            raise ValueError(
                f"{_variable('metrics')} needs a token that scrapers send, {token}; {public}=true lets anyone "
                "read them who reaches the port"
            )
        if any(not _ORIGIN.fullmatch(origin) for origin in self.allowed_origins):
            raise ValueError(f"{_variable('cors_origins')} must be origins such as https://desk.example")

    @property
    def allowed_origins(self) -> tuple[str, ...]:
        """``cors_origins`` one by one."""
        return tuple(origin.strip() for origin in self.cors_origins.split(",") if origin.strip())


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
            import difflib  # where a name is unknown, and not with the start

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


def _most(name: str) -> int:
    return _MOST_DAYS if name == "usage_days" else _MOST


def _explain(message: str) -> str:
    """Turn msgspec's ``Expected `int`, got `str` - at `$.name``` into a sentence about the variable."""
    text, _, path = message.partition(" - at `$.")
    if not path:
        return text
    words = {"`int`": "a whole number", "`float`": "a number", "`bool`": "true or false"}
    name = path.rstrip("`")
    if "out of range" in text:
        return f"{_variable(name)} must be at most {_most(name):,}"
    wanted = next((said for kind, said in words.items() if kind in text), "text")
    return f"{_variable(name)} must be {wanted}"
