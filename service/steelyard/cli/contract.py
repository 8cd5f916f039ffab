"""``steelyard contract``."""

import json
from pathlib import Path

import rich_click as click

from steelyard.http.app import OPERATIONS
from steelyard.http.pages.answer_examples import examples_path, examples_text
from steelyard.http.pages.contract import contract_text
from steelyard.http.pages.problems_page import problems_text


@click.command()
@click.option("--check", is_flag=True, help="Write nothing; fail if a file differs.")
@click.option(
    "--directory",
    default="contracts",
    show_default=True,
    type=click.Path(file_okay=False, path_type=Path),
    help="Where the files are.",
)
def contract(check: bool, directory: Path) -> None:
    """Write the OpenAPI document, its examples of answers and the list of problems from the code."""
    stale = stale_files(directory, examples_text(OPERATIONS))
    for path, text in () if check else stale.items():
        directory.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="\n")
    names = ", ".join(str(path) for path in stale)
    if check and stale:
        raise click.ClickException(f"out of date: {names}; run `steelyard contract`")
    click.echo(f"Wrote {names}" if stale else "The contract is up to date.")


def contract_files(examples: str | None = None) -> dict[str, str]:
    """What is committed of the contract: file names and their texts.

    ``examples`` is the text of the examples of answers; that which is kept, where none is given.
    """
    shown = None if examples is None else json.loads(examples)
    return {"openapi-v1.json": contract_text(OPERATIONS, shown), "problems.md": problems_text()}


def stale_files(directory: Path, examples: str | None = None) -> dict[Path, str]:
    """The files in ``directory`` that are not what the code says, and what they should be.

    With ``examples``, the text of the examples of answers as computed now, the file in which they are kept as well.
    """
    files = {directory / name: text for name, text in contract_files(examples).items()}
    if examples is not None:
        files[examples_path()] = examples
    return {path: text for path, text in files.items() if not path.exists() or path.read_text(encoding="utf-8") != text}
