"""``partsplan diagnose``"""

from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import FaultId, garage_argument
from partsplan.cli.output import color_option, json_option, layout, write


@click.command(
    cls=Command,
    example="partsplan diagnose my-garage cold-start",
    short_help="Tell what to check before buying.",
    no_args_is_help=True,
)
@garage_argument
@click.argument("fault", type=FaultId(), required=False)
@json_option
@color_option
def diagnose(garage: Path, fault: str | None, as_json: bool, no_color: bool) -> None:
    """Tell what to check before buying, in which order, and what that saves.

    For one FAULT of GARAGE, or for every one that has suspected causes.
    """
    from partsplan import reports, usecases

    answer = usecases.diagnose(garage, fault)
    if as_json:
        write(reports.diagnosis_json(*answer))
    else:
        write(reports.diagnosis_tables(*answer, **layout(no_color=no_color)))
