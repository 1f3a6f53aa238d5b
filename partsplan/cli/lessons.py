"""``partsplan lessons``"""

from datetime import date
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.days import today_option
from partsplan.cli.garages import garage_argument
from partsplan.cli.output import color_option, json_option, layout, write


@click.command(
    cls=Command,
    example="partsplan lessons my-garage",
    short_help="Tell how good quotes and estimates were.",
    no_args_is_help=True,
)
@garage_argument
@today_option
@json_option
@color_option
def lessons(garage: Path, today: date, as_json: bool, no_color: bool) -> None:
    """Tell how good the quotes and estimates of GARAGE were, after its logbook.

    Delays, bad parts, prices and own hours by supplier and by route, and which lead
    times, chances, prices or hours had better be written down. Changes nothing.
    """
    from partsplan import reports, usecases

    answer = usecases.lessons(garage, today=today)
    if as_json:
        write(reports.lesson_json(*answer))
    else:
        write(reports.lesson_tables(*answer, **layout(no_color=no_color)))
