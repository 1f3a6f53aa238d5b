"""``partsplan bring-in``"""

from datetime import date
from functools import partial
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.days import moment, today_option
from partsplan.cli.garages import garage_folder_argument
from partsplan.cli.look import Look, look_options


@click.command(
    cls=Command,
    example="partsplan bring-in my-garage spent.csv --column day=Date "
    "--column amount=Cost",
    short_help="Take over past spending from a table.",
    no_args_is_help=True,
)
@garage_folder_argument
@click.argument(
    "spending", type=click.Path(exists=True, dir_okay=False, path_type=Path)
)
@click.option(
    "--column",
    "columns",
    metavar="FIELD=NAME",
    multiple=True,
    help="Which column has the day and the amount, maybe text, who and subject.",
)
@click.option(
    "--day-format",
    metavar="FORMAT",
    default="",
    help="How days are written, such as %d.%m.%Y; otherwise YYYY-MM-DD.",
)
@click.option("--decimal-comma", is_flag=True, help="12,50 stands for 12.50.")
@today_option
@look_options(headed=False, tables=False)
def bring_in(
    garage: Path,
    spending: Path,
    columns: tuple[str, ...],
    day_format: str,
    decimal_comma: bool,
    today: date,
    look: Look,
) -> None:
    """Take over the rows of SPENDING, a CSV file, into GARAGE's logbook as "paid".

    All of them or none, as one batch that can be undone at once.
    """
    from partsplan import reports, usecases

    brought = usecases.bring_in(
        garage,
        spending,
        dict(map(_named, columns)),
        day_format=day_format,
        decimal_comma=decimal_comma,
        today=today,
        now=moment(today),
    )
    look.tell(
        text=partial(reports.brought_in_text, brought, str(garage)),
        json=partial(reports.brought_in_json, brought),
    )


def _named(text: str) -> tuple[str, str]:
    field, equals, name = text.partition("=")
    if not equals:
        raise click.UsageError(f"--column: expected FIELD=NAME, got {text!r}")
    return field, name
