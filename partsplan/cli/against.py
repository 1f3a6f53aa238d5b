"""``partsplan against``"""

from datetime import date
from functools import partial
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.days import today_option
from partsplan.cli.garages import garage_argument
from partsplan.cli.look import Look, look_options


@click.command(
    cls=Command,
    example="partsplan against my-garage",
    short_help="Hold a kept plan against what really happened.",
    no_args_is_help=True,
)
@garage_argument
@click.option(
    "--plan",
    "number",
    type=click.IntRange(1),
    metavar="N",
    help="Number of the kept plan, from 1 on; the last one unless said.",
)
@today_option
@look_options()
def against(garage: Path, number: int | None, today: date, look: Look) -> None:
    """Hold a plan that was kept for GARAGE against what its logbook says.

    What was to be ordered and fitted when, for how much and with how many own hours,
    beside what was; what was not begun, and what was done without being planned.
    """
    from partsplan import reports, usecases

    answer = usecases.against(garage, today=today, number=number)
    look.tell(
        text=partial(reports.against_tables, *answer),
        json=partial(reports.against_json, *answer),
    )
