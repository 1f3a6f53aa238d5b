"""``partsplan export``"""

from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import garage_folder_argument
from partsplan.cli.output import json_option, may_write, output_options, write


@click.command(
    cls=Command,
    example="partsplan export my-garage -o logbook.json",
    short_help="Hand out all of a logbook as text.",
    no_args_is_help=True,
)
@garage_folder_argument
@click.option("--csv", "as_csv", is_flag=True, help="Only the entries, as a table.")
@json_option
@output_options
def export(garage: Path, as_csv: bool, as_json: bool, output: str, force: bool) -> None:
    """Hand out all of GARAGE's logbook as JSON, which "restore" takes back."""
    if as_csv and as_json:
        raise click.UsageError("--csv and --json exclude each other")
    may_write(output, force=force)
    from partsplan import usecases

    write(usecases.export(garage, as_csv=as_csv).removesuffix("\n"), output)
