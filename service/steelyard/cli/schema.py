"""``steelyard migrate``."""

import asyncio

import rich_click as click

from steelyard.store.schema import HEAD, is_behind

from .opened import current_settings, opened_store


@click.command()
@click.option("--check", is_flag=True, help="Change nothing; fail if the tables are behind.")
def migrate(check: bool) -> None:
    """Bring the database's tables up to date; harmless when they are.

    Migrations only add to what is there, so that running services go on meanwhile.
    """
    settings = current_settings()

    async def run() -> tuple[str | None, list[str]]:
        async with opened_store(settings) as store:
            return await store.revision(), [] if check else await store.migrate()

    found, applied = asyncio.run(run())
    if check and is_behind(found):
        raise click.ClickException(f"the tables are at revision {found or 'none'}, and this version needs {HEAD}")
    if applied:
        click.echo(f"Applied {', '.join(applied)}.")
    else:
        click.echo(f"The tables are up to date, at revision {found}.")
