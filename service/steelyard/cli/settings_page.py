"""``steelyard settings``: what an operator can set, as a page made from the code."""

import inspect
import re

import msgspec
import rich_click as click

from steelyard import settings as module
from steelyard.settings import PREFIX, Settings

_FIELD = re.compile(r"^    (?P<name>\w+): (?P<type>\w+) = .*?  # (?P<meaning>.+)$", re.MULTILINE)
_HEAD = """\
# Settings

Written by `make handbook` from `service/steelyard/settings.py`. Each is an environment variable; a start refuses one
that it does not know. Times are in seconds.

| variable | default | meaning |
|---|---|---|
"""


@click.command("settings")
def settings_command() -> None:
    """Print the page of settings, in Markdown."""
    click.echo(settings_page(), nl=False)


def settings_page() -> str:
    """Every setting, its default and its meaning, which is the comment behind it."""
    meanings = {field["name"]: field["meaning"] for field in _FIELD.finditer(inspect.getsource(module))}
    rows = []
    for field in msgspec.structs.fields(Settings):
        default = msgspec.json.encode(field.default).decode().strip('"')
        shown = f"`{default}`" if default else "none"
        rows.append(f"| `{PREFIX}{field.name.upper()}` | {shown} | {meanings[field.name]} |\n")
    return _HEAD + "".join(rows)
