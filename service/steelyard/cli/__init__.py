"""The operator's command line: serve, manage keys and quotas, report usage, migrate, write the contract, examine."""

import rich_click as click

from steelyard.settings import SettingsError
from steelyard.store.schema import SchemaBehind, SchemaUnknown
from steelyard.store.store import StoreUnavailable

from .bulk import bulk
from .contract import contract, contract_files
from .doctor import doctor
from .keys import keys, quotas
from .schema import migrate
from .serving import curl_command, serve
from .settings_page import settings_command
from .usage import usage

__all__ = ["cli", "contract_files", "curl_command", "main"]


@click.group()
@click.version_option(package_name="steelyard")
def cli() -> None:
    """Steelyard: maintenance energy, training-diet phases and weight logs, over HTTP.

    Settings come from the environment, as `STEELYARD_DATABASE_URL`.
    """


for _command in (serve, keys, quotas, usage, migrate, bulk, contract, settings_command, doctor):
    cli.add_command(_command)


def main() -> None:
    """Run the command line; what the operator can mend is said in one line."""
    try:
        cli()
    except (SettingsError, StoreUnavailable, SchemaBehind, SchemaUnknown) as error:
        raise SystemExit(f"steelyard: {error}") from None
