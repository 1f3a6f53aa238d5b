"""``partsplan plan``"""

import time
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

import click

from partsplan.cli import exits
from partsplan.cli.command import Command
from partsplan.cli.garages import from_archive, garage_argument
from partsplan.cli.look import Look, look_options
from partsplan.cli.output import (
    may_write,
    may_write_workbook,
    output_options,
    write_bytes,
)
from partsplan.cli.planning_flags import from_option, planning_flags
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
@from_option()
@planning_flags
@look_options(plain=True)
@click.option(
    "--stay",
    metavar="AMOUNT",
    default="0",
    show_default=True,
    help="Net worth that may be given up to stay with the plan kept last.",
)
@click.option("--afresh", is_flag=True, help="Do not look at the plan kept last.")
@click.option(
    "--keep",
    is_flag=True,
    help="Keep this plan in the logbook as the one you mean to follow.",
)
@click.option("--xlsx", metavar="FILE", help="Write it into a workbook, too.")
@output_options
def plan(
    garage: Path,
    from_month: str | None,
    months: int | None,
    budget: str | None,
    seconds: float,
    gap: float,
    threads: int,
    look: Look,
    stay: str,
    afresh: bool,
    keep: bool,
    xlsx: str | None,
    output: str,
    force: bool,
) -> int:
    """Pick jobs, where to get their parts, and months, for GARAGE.

    GARAGE is a folder of tables or a workbook, or - for a tar archive of a folder, or
    a workbook, on standard input.
    """
    if keep and from_archive():
        raise click.UsageError("--keep: expected a folder; an archive keeps no plan")
    may_write(output, force=force)
    if xlsx is not None:
        may_write_workbook(xlsx, force=force, flag="--xlsx")

    from partsplan import usecases
    from partsplan.domain import Needs

    with Bar(seconds) as progress:
        answer = usecases.plan(
            garage,
            from_month=from_month,
            months=months,
            budget=budget,
            seconds=seconds,
            gap=gap,
            threads=threads,
            progress=progress,
            clock=time.monotonic,
            stay=stay,
            afresh=afresh,
        )
    _tell(answer, look, output)
    if xlsx is not None:
        _write_workbook(answer, xlsx)
    if keep:
        number = usecases.keep(garage, answer, now=datetime.now(UTC))
        click.echo(f"Kept as plan {number}.", err=True)
    if isinstance(answer.plan, Needs):
        return exits.IMPOSSIBLE
    return exits.INTERRUPTED if answer.plan.interrupted else exits.DONE


def _write_workbook(answer: "PlanAnswer", target: str) -> None:
    from partsplan import reports
    from partsplan.domain import Needs

    found = answer.plan
    if isinstance(found, Needs):
        click.echo(f"There is no plan to write into {target}.", err=True)
        return
    told = answer.skips, answer.shortfalls, answer.faithfulness
    write_bytes(reports.plan_workbook(answer.garage, found, *told), target)


def _tell(answer: "PlanAnswer", look: Look, output: str) -> None:
    from partsplan import reports
    from partsplan.domain import Needs

    garage, found = answer.garage, answer.plan
    if isinstance(found, Needs):
        look.tell_needs(garage, found, output)
        return
    short = garage, found, answer.skips, answer.shortfalls
    told = *short, answer.faithfulness
    look.tell(
        text=partial(reports.plan_tables, *told),
        json=partial(reports.plan_json, *told),
        plain=partial(reports.plan_plain, *short),
        tables=partial(reports.plan_csv, *told),
        output=output,
    )
