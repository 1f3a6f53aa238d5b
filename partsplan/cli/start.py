"""``partsplan start``"""

from datetime import date
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.output import WORKBOOK, json_option, layout, write


@click.command(
    cls=Command,
    example="partsplan start my-garage",
    short_help="Write a commented garage to be filled in.",
    no_args_is_help=True,
)
@click.argument("folder", type=click.Path(file_okay=False, path_type=Path))
@json_option
def start(folder: Path, as_json: bool) -> None:
    """Write a commented garage into FOLDER to be filled in."""
    if folder.suffix.lower() == WORKBOOK:
        message = f'FOLDER: "partsplan workbook {folder}" makes a workbook'
        raise click.UsageError(message)
    from partsplan import reports, usecases
    from partsplan.domain import Month

    today = date.today()
    usecases.start(folder, Month(today.year, today.month))
    files = sorted(path.name for path in folder.iterdir())
    if as_json:
        write(reports.started_json(str(folder), files))
    else:
        write(reports.started_text(str(folder), files, width=layout()["width"]))
