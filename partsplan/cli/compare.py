"""``partsplan compare``"""

from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import FaultId, garage_argument
from partsplan.cli.output import color_option, json_option, layout, write


@click.command(
    cls=Command,
    example="partsplan compare my-garage cold-start",
    short_help="Set every option of one fault side by side.",
    no_args_is_help=True,
)
@garage_argument
@click.argument("fault", type=FaultId())
@json_option
@color_option
def compare(garage: Path, fault: str, as_json: bool, no_color: bool) -> None:
    """Set every option of one FAULT of GARAGE side by side."""
    from partsplan import reports, usecases

    found, comparison = usecases.compare(garage, fault)
    if as_json:
        write(reports.comparison_json(found, comparison))
    else:
        write(reports.compare_tables(found, comparison, **layout(no_color=no_color)))
