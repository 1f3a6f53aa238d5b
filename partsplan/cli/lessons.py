"""``partsplan lessons``"""

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
    example="partsplan lessons my-garage",
    short_help="Tell how good quotes and estimates were.",
    no_args_is_help=True,
)
@garage_argument
@today_option
@look_options()
def lessons(garage: Path, today: date, look: Look) -> None:
    """Tell how good the quotes and estimates of GARAGE were, after its logbook.

    Delays, bad parts, prices and own hours by supplier and by route, and which lead
    times, chances, prices or hours had better be written down. Changes nothing.
    """
    from partsplan import reports, usecases

    answer = usecases.lessons(garage, today=today)
    look.tell(
        text=partial(reports.lesson_tables, *answer),
        json=partial(reports.lesson_json, *answer),
    )
