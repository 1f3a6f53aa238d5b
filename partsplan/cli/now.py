"""``partsplan now``"""

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
    example="partsplan now my-garage",
    short_help="Tell what is to be done, and what is left to spend.",
    no_args_is_help=True,
)
@garage_argument
@today_option
@look_options(plain=True)
def now(garage: Path, today: date, look: Look) -> None:
    """Tell where GARAGE stands today: dangers, duties, money, parts and causes."""
    from partsplan import reports, usecases

    found = usecases.now(garage, today)
    look.tell(
        text=partial(reports.now_tables, found),
        json=partial(reports.now_json, found),
        plain=partial(reports.now_plain, found),
    )
