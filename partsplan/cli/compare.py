"""``partsplan compare``"""

from functools import partial
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import FaultId, garage_argument
from partsplan.cli.look import Look, look_options


@click.command(
    cls=Command,
    example="partsplan compare my-garage cold-start",
    short_help="Set every option of one fault side by side.",
    no_args_is_help=True,
)
@garage_argument
@click.argument("fault", type=FaultId())
@look_options()
def compare(garage: Path, fault: str, look: Look) -> None:
    """Set every option of one FAULT of GARAGE side by side."""
    from partsplan import reports, usecases

    found, comparison = usecases.compare(garage, fault)
    look.tell(
        text=partial(reports.compare_tables, found, comparison),
        json=partial(reports.comparison_json, found, comparison),
    )
