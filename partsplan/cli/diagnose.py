"""``partsplan diagnose``"""

from functools import partial
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import FaultId, garage_argument
from partsplan.cli.look import Look, look_options


@click.command(
    cls=Command,
    example="partsplan diagnose my-garage cold-start",
    short_help="Tell what to check before buying.",
    no_args_is_help=True,
)
@garage_argument
@click.argument("fault", type=FaultId(), required=False)
@look_options()
def diagnose(garage: Path, fault: str | None, look: Look) -> None:
    """Tell what to check before buying, in which order, and what that saves.

    For one FAULT of GARAGE, or for every one that has suspected causes.
    """
    from partsplan import reports, usecases

    answer = usecases.diagnose(garage, fault)
    look.tell(
        text=partial(reports.diagnosis_tables, *answer),
        json=partial(reports.diagnosis_json, *answer),
    )
