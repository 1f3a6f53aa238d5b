"""``partsplan plan``"""

import math
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
    write,
)
from partsplan.cli.progress import Bar
from partsplan.cli.settings import setting

if TYPE_CHECKING:
    from partsplan.usecases import PlanAnswer


class Number(click.FloatRange):
    """A number in a range; what is no number at all is refused too."""

    def convert(
        self, value: Any, param: click.Parameter | None, ctx: click.Context | None
    ) -> Any:
        found = super().convert(value, param, ctx)
        if math.isnan(found):
            self.fail(f"{value!r} is no number.", param, ctx)
        return found


@click.command(
    cls=Command,
    example="partsplan plan my-garage --months 6 --budget 220",
    short_help="Pick jobs, where to get their parts, and months.",
    no_args_is_help=True,
)
@garage_argument
@click.option(
    "--months",
    type=click.IntRange(1, 36),
    metavar="N",
    envvar="PARTSPLAN_MONTHS",
    help="Months to plan, instead of the garage's own.",
)
@click.option(
    "--budget",
    metavar="AMOUNT",
    envvar="PARTSPLAN_BUDGET",
    help="Money for every month, instead of the garage's own.",
)
@click.option(
    "--seconds",
    type=Number(0, min_open=True),
    metavar="S",
    default=setting("seconds"),
    envvar="PARTSPLAN_SECONDS",
    help="Longest solver time; 30 unless set.",
)
@click.option(
    "--gap",
    type=Number(0),
    metavar="G",
    default=setting("gap"),
    envvar="PARTSPLAN_GAP",
    help="Share of the net worth that may be missing; 0.0001 unless set.",
)
@click.option(
    "--threads",
    type=click.IntRange(1),
    metavar="N",
    default=setting("threads"),
    envvar="PARTSPLAN_THREADS",
    help="Threads of the solver; 1 unless set.",
)
@json_option
@click.option("--plain", is_flag=True, help="Print one record a line, split by tabs.")
@click.option(
    "-o",
    "--output",
    metavar="FILE",
    default=STDOUT,
    help="Write into a file instead of to standard output (-).",
)
@click.option("--force", is_flag=True, help="Overwrite that file if it is there.")
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
    if as_json and plain:
        raise click.UsageError("--json and --plain exclude each other")
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
