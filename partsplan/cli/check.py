"""``partsplan check``"""

from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.output import color_option, json_option, layout, write


@click.command(
    cls=Command,
    example="partsplan check my-garage",
    short_help="Tell what is in a garage, and what is wrong with it.",
    no_args_is_help=True,
)
@garage_argument
@json_option
@color_option
def check(garage: Path, as_json: bool, no_color: bool) -> None:
    """Read GARAGE and tell what is in it, what is wrong, and what is assumed."""
    from partsplan import reports, usecases

    found = usecases.check(garage)
    if as_json:
        write(reports.check_json(found))
    else:
        write(reports.check_text(found, **layout(no_color=no_color)))
