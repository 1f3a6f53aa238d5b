"""``partsplan faults``"""

from functools import partial
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.look import Look, look_options


@click.command(
    cls=Command,
    example="partsplan faults my-garage --why",
    short_help="Rank the faults: do-not-drive first.",
    no_args_is_help=True,
)
@garage_argument
@click.option("--why", is_flag=True, help="Add a sentence for each reason.")
@look_options()
def faults(garage: Path, why: bool, look: Look) -> None:
    """Rank the faults of GARAGE: do-not-drive first, then by what waiting is worth."""
    from partsplan import reports, usecases

    found, ranking = usecases.faults(garage)
    look.tell(
        text=partial(reports.fault_tables, found, ranking, why=why),
        json=partial(reports.faults_json, found, ranking),
    )
