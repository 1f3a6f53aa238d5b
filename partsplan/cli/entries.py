"""``partsplan entries``"""

from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.output import (
    color_option,
    json_option,
    layout,
    one_shape,
    plain_option,
    write,
)


@click.command(
    cls=Command,
    example="partsplan entries my-garage",
    short_help="List what has happened.",
    no_args_is_help=True,
)
@garage_argument
@json_option
@plain_option
@color_option
def entries(garage: Path, as_json: bool, plain: bool, no_color: bool) -> None:
    """List all entries of GARAGE's logbook, undone ones too, and what is doubtful."""
    one_shape(as_json=as_json, plain=plain)
    from partsplan import reports, usecases

    found = usecases.where_it_stands(garage)
    if as_json:
        write(reports.entries_json(found))
    elif plain:
        write(reports.entries_plain(found))
    else:
        write(reports.entries_tables(found, **layout(no_color=no_color)))
