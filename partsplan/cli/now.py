"""``partsplan now``"""

from datetime import date
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.days import today_option
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
    example="partsplan now my-garage",
    short_help="Tell what is to be done, and what is left to spend.",
    no_args_is_help=True,
)
@garage_argument
@today_option
@json_option
@plain_option
@color_option
def now(garage: Path, today: date, as_json: bool, plain: bool, no_color: bool) -> None:
    """Tell where GARAGE stands today: dangers, duties, money, parts and causes."""
    one_shape(as_json=as_json, plain=plain)
    from partsplan import reports, usecases

    found = usecases.now(garage, today)
    if as_json:
        write(reports.now_json(found))
    elif plain:
        write(reports.now_plain(found))
    else:
        write(reports.now_tables(found, **layout(no_color=no_color)))
