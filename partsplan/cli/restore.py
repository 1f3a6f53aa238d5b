"""``partsplan restore``"""

from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import garage_folder_argument
from partsplan.cli.output import json_option, layout, write


@click.command(
    cls=Command,
    example="partsplan restore my-garage logbook.json",
    short_help="Make a logbook anew from its export.",
    no_args_is_help=True,
)
@garage_folder_argument
@click.argument("export", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@json_option
def restore(garage: Path, export: Path, as_json: bool) -> None:
    """Make GARAGE's logbook anew from EXPORT, a file of "partsplan export".

    A logbook that is there is never overwritten; move it away first.
    """
    from partsplan import reports, usecases

    path, found = usecases.restore(garage, export)
    holds = str(path), len(found.entries), len(found.plans)
    if as_json:
        write(reports.restored_json(*holds))
    else:
        write(reports.restored_text(*holds, width=layout()["width"]))
