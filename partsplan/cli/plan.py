"""``partsplan plan``"""

import time
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from partsplan.cli import exits
from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.output import (
    STDOUT,
    color_option,
    json_option,
    layout,
    may_write,
    one_shape,
    output_options,
    plain_option,
    write,
)
from partsplan.cli.planning_flags import planning_flags
from partsplan.cli.progress import Bar

if TYPE_CHECKING:
    from partsplan.usecases import PlanAnswer


@click.command(
    cls=Command,
    example="partsplan plan my-garage --months 6 --budget 220",
    short_help="Pick jobs, where to get their parts, and months.",
    no_args_is_help=True,
)
@garage_argument
@planning_flags
@json_option
@plain_option
@output_options
@color_option
def plan(
    garage: Path,
    months: int | None,
    budget: str | None,
    seconds: float,
    gap: float,
    threads: int,
    as_json: bool,
    plain: bool,
    output: str,
    force: bool,
    no_color: bool,
) -> int:
    """Pick jobs, where to get their parts, and months, for GARAGE.

    GARAGE is a folder of tables, or - for a tar archive of one on standard input.
    """
    one_shape(as_json=as_json, plain=plain)
    may_write(output, force=force)

    from partsplan import usecases
    from partsplan.domain import Needs

    with Bar(seconds) as progress:
        answer = usecases.plan(
            garage,
            months=months,
            budget=budget,
            seconds=seconds,
            gap=gap,
            threads=threads,
            progress=progress,
            clock=time.monotonic,
        )
    shape = "json" if as_json else "plain" if plain else "tables"
    look = layout(no_color=no_color, to_file=output != STDOUT)
    write(_rendered(answer, shape, look), output)
    if isinstance(answer.plan, Needs):
        return exits.IMPOSSIBLE
    return exits.INTERRUPTED if answer.plan.interrupted else exits.DONE


def _rendered(answer: "PlanAnswer", shape: str, look: dict[str, Any]) -> str:
    from partsplan import reports
    from partsplan.domain import Needs

    garage, found = answer.garage, answer.plan
    if isinstance(found, Needs):
        if shape == "tables":
            return reports.needs_tables(garage, found, **look)
        show = reports.needs_json if shape == "json" else reports.needs_plain
        return show(garage, found)
    if shape == "json":
        return reports.plan_json(garage, found, answer.skips, answer.shortfalls)
    if shape == "plain":
        return reports.plan_plain(garage, found, answer.skips, answer.shortfalls)
    return reports.plan_tables(garage, found, answer.skips, answer.shortfalls, **look)
