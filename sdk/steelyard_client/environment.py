"""Where the service is and with which key, from arguments or the environment."""

import os
from urllib.parse import urlsplit

from .errors import NotConfigured

URL_VARIABLE = "STEELYARD_URL"
KEY_VARIABLE = "STEELYARD_KEY"


def service_url(url: str | None = None) -> str:
    """``url``, or that of the environment, checked. Raises ``NotConfigured``."""
    found = (os.environ.get(URL_VARIABLE, "") if url is None else url).strip()
    if not found:
        raise NotConfigured(f"No service: give `url`, or set {URL_VARIABLE} to one such as http://127.0.0.1:8000.")
    parts = urlsplit(found)
    if parts.scheme not in {"http", "https"} or not parts.hostname:
        raise NotConfigured(f"{found!r} is not an http or https URL such as http://127.0.0.1:8000.")
    if parts.query or parts.fragment:
        raise NotConfigured(f"{found!r} is not a base URL: leave its query and fragment out.")
    return found.rstrip("/")


def service_key(key: str | None = None) -> str:
    """``key``, or that of the environment, checked. Raises ``NotConfigured``, which does not repeat the key."""
    found = (os.environ.get(KEY_VARIABLE, "") if key is None else key).strip()
    if not found:
        raise NotConfigured(f"No API key: give `key`, or set {KEY_VARIABLE}. The operator makes one.")
    if not (found.isascii() and found.isprintable()) or " " in found:
        raise NotConfigured("The API key holds characters that a key never has; it looks like <prefix>.<secret>.")
    return found
