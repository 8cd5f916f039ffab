"""The operator's command line: serve, manage keys and quotas, report usage, migrate, write the contract, examine.

A command is loaded when it is called, and with it what it needs: making a key needs the store and no science.
"""

from importlib import import_module
from typing import Any

import rich_click as click

__all__ = ["cli", "main"]


class CommandAt(click.RichCommand):
    """A command in a module of its own, of which a list of commands needs only the name and a line."""

    def __init__(self, name: str, module: str, attribute: str, short_help: str) -> None:
        super().__init__(name=name, short_help=short_help)
        self._module, self._attribute = module, attribute

    def loaded(self) -> click.Command:
        """The command itself."""
        command: click.Command = getattr(import_module(self._module, __package__), self._attribute)
        return command

    def make_context(self, info_name: str | None, args: list[str], *further: Any, **extra: Any) -> click.Context:
        """Read the arguments by the command itself, which is what is then invoked."""
        return self.loaded().make_context(info_name, args, *further, **extra)


@click.group()
@click.version_option(package_name="steelyard")
def cli() -> None:
    """Steelyard: maintenance energy, training-diet phases and weight logs, over HTTP.

    Settings come from the environment, as `STEELYARD_DATABASE_URL`.
    """


for _command in (
    CommandAt("serve", ".serving", "serve", "Serve the API until interrupted."),
    CommandAt("keys", ".keys", "keys", "Make, list, rotate and revoke API keys."),
    CommandAt("quotas", ".keys", "quotas", "Limit what a key or an organisation may use in a day."),
    CommandAt("usage", ".usage", "usage", "Report what was used."),
    CommandAt("migrate", ".schema", "migrate", "Bring the database's tables up to date."),
    CommandAt("bulk", ".bulk", "bulk", "Answer members by the million, from Parquet to Parquet."),
    CommandAt("contract", ".contract", "contract", "Write the contract from the code."),
    CommandAt("settings", ".settings_page", "settings_command", "Print the page of settings, in Markdown."),
    CommandAt("doctor", ".doctor", "doctor", "Check whether a service with these settings could serve."),
):
    cli.add_command(_command)


def main() -> None:
    """Run the command line; what the operator can mend is said in one line."""
    try:
        cli()
    except Exception as error:
        if not isinstance(error, _mendable()):
            raise
        raise SystemExit(f"steelyard: {error}") from None


def _mendable() -> tuple[type[Exception], ...]:
    from steelyard.settings import SettingsError
    from steelyard.store.schema import SchemaBehind, SchemaUnknown
    from steelyard.store.store import StoreUnavailable

    return SettingsError, StoreUnavailable, SchemaBehind, SchemaUnknown
