"""API keys: how one is made, written, read and compared."""

import hashlib
import hmac
import secrets
from datetime import date, datetime
from enum import StrEnum

import msgspec

_PREFIX_ALPHABET = "abcdefghijkmnpqrstuvwxyz23456789"  # nothing that is easily misread
_PREFIX_LETTERS = frozenset(_PREFIX_ALPHABET)
_PREFIX_LENGTH = 10
_SECRET_BYTES = 32


class Scope(StrEnum):
    """What a key may be used for."""

    COMPUTE = "compute"
    METHODS = "methods"


class Quota(msgspec.Struct, frozen=True, kw_only=True):
    """How many units a key, or all keys of an organisation together, may use in a day (UTC).

    ``subject`` tells one quota from another (``key:7``, ``organisation:3``). ``used_units`` is what the ledger says
    was used on ``day``, when the key was read.
    """

    subject: str
    daily_units: int
    used_units: int
    day: date


class Key(msgspec.Struct, frozen=True, kw_only=True):
    """A stored key. A plain hash does for the secret, which is 256 random bits: there is nothing to guess."""

    id: int
    organisation: str
    prefix: str
    secret_sha256: bytes
    label: str
    scopes: frozenset[str]
    created_time: datetime
    expiry_time: datetime | None = None
    revoked_time: datetime | None = None
    replaces_id: int | None = None
    quotas: tuple[Quota, ...] = ()

    def is_usable(self, now: datetime) -> bool:
        """Whether the key is neither revoked nor expired."""
        return self.revoked_time is None and (self.expiry_time is None or now < self.expiry_time)

    def fits(self, secret: str) -> bool:
        """Whether ``secret`` is this key's, compared in constant time."""
        return hmac.compare_digest(self.secret_sha256, sha256(secret))


def sha256(secret: str) -> bytes:
    """What is stored of a secret."""
    return hashlib.sha256(secret.encode("utf-8", "surrogateescape")).digest()


def new_prefix() -> str:
    """A fresh public prefix."""
    return "".join(secrets.choice(_PREFIX_ALPHABET) for _ in range(_PREFIX_LENGTH))


def is_prefix(text: str) -> bool:
    """Whether ``text`` may be a prefix: a cheap look before one at the store."""
    return len(text) == _PREFIX_LENGTH and not set(text) - _PREFIX_LETTERS


def new_secret() -> str:
    """A fresh secret of 256 random bits."""
    return secrets.token_urlsafe(_SECRET_BYTES)
