"""``partsplan faults``"""

from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.output import color_option, json_option, layout, write


@click.command(
    cls=Command,
    example="partsplan faults my-garage --why",
    short_help="Rank the faults: do-not-drive first.",
    no_args_is_help=True,
)
@garage_argument
@json_option
@click.option("--why", is_flag=True, help="Add a sentence for each reason.")
@color_option
def faults(garage: Path, as_json: bool, why: bool, no_color: bool) -> None:
    """Rank the faults of GARAGE: do-not-drive first, then by what waiting is worth."""
    from partsplan import reports, usecases

    found, ranking = usecases.faults(garage)
    if as_json:
        write(reports.faults_json(found, ranking))
    else:
        look = layout(no_color=no_color)
        write(reports.fault_tables(found, ranking, why=why, **look))
