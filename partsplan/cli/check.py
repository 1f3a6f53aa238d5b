"""``partsplan check``"""

from functools import partial
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.look import JSON, Look, look_options


@click.command(
    cls=Command,
    example="partsplan check my-garage",
    short_help="Tell what is in a garage, and what is wrong with it.",
    no_args_is_help=True,
)
@garage_argument
@click.option(
    "--rows", is_flag=True, help="With --json: every row as it was read, blanks filled."
)
@look_options(tables=False)
def check(garage: Path, rows: bool, look: Look) -> None:
    """Read GARAGE and tell what is in it, what is wrong, and what is assumed."""
    from partsplan import reports, usecases

    if rows and look.shape != JSON:
        raise click.UsageError("--rows: expected --json beside it")
    found = usecases.check(garage)
    look.tell(
        text=partial(reports.check_text, found),
        json=partial(reports.check_json, found, rows=rows),
    )
