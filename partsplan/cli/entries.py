"""``partsplan entries``"""

from functools import partial
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.look import Look, look_options


@click.command(
    cls=Command,
    example="partsplan entries my-garage",
    short_help="List what has happened.",
    no_args_is_help=True,
)
@garage_argument
@look_options(plain=True)
def entries(garage: Path, look: Look) -> None:
    """List all entries of GARAGE's logbook, undone ones too, and what is doubtful."""
    from partsplan import reports, usecases

    found = usecases.where_it_stands(garage)
    look.tell(
        text=partial(reports.entries_tables, found),
        json=partial(reports.entries_json, found),
        plain=partial(reports.entries_plain, found),
    )
