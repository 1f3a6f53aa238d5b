"""``partsplan report``"""

import time
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from partsplan.cli import exits
from partsplan.cli.command import Command
from partsplan.cli.days import today_option
from partsplan.cli.garages import garage_argument
from partsplan.cli.look import JSON, Look, look_options
from partsplan.cli.many import PlansBar, many_flags
from partsplan.cli.output import may_write, output_options, write
from partsplan.cli.planning_flags import from_option, planning_flags
from partsplan.cli.progress import Bar

if TYPE_CHECKING:
    from partsplan.usecases import CurveAnswer


@click.command(
    cls=Command,
    example="partsplan report my-garage -o my-garage.html",
    short_help="Put the plan on one page for a browser, a phone and paper.",
    no_args_is_help=True,
)
@garage_argument
@today_option
@click.option(
    "--curve",
    is_flag=True,
    help="Show what other monthly sums would buy, too; makes more plans.",
)
@from_option()
@planning_flags
@many_flags
@look_options(headed=False, tables=False)
@output_options
def report(
    garage: Path,
    today: date,
    curve: bool,
    seconds: float,
    jobs: int | None,
    cluster: str,
    look: Look,
    output: str,
    force: bool,
    **planning: Any,
) -> int:
    """Put the plan for GARAGE on one HTML page: lists to tick, months and charts.

    The file needs no network and no script, and can be read on a phone, sent by mail
    and printed.
    """
    may_write(output, force=force)

    from partsplan import reports, usecases
    from partsplan.domain import Needs

    planning["seconds"] = seconds
    other_sums = _curve(garage, jobs, cluster, planning) if curve else None
    with Bar(seconds) as progress:
        answer = usecases.report(
            garage,
            today,
            progress=progress,
            clock=time.monotonic,
            curve=other_sums,
            **planning,
        )
    found = answer.found
    if isinstance(found, Needs):
        if look.shape == JSON:
            write(reports.needs_json(answer.garage, found), output)
        else:
            click.echo(reports.needs_tables(answer.garage, found), err=True)
        return exits.IMPOSSIBLE
    if look.shape == JSON:
        write(reports.report_json(found), output)
    else:
        write(reports.report_html(found, look.locale or reports.PLAIN), output)
    stopped = found.plan.interrupted or (found.curve and found.curve.interrupted)
    return exits.INTERRUPTED if stopped else exits.DONE


def _curve(
    garage: Path, jobs: int | None, cluster: str, planning: dict[str, Any]
) -> "CurveAnswer":
    from partsplan import usecases

    bar = PlansBar(most=usecases.CURVE_STEPS + 1)  # the garage's own sum comes on top
    with bar, usecases.executor(jobs, cluster) as executor:
        return usecases.curve(
            garage,
            executor=executor,
            steps=usecases.CURVE_STEPS,
            tell=bar.count,
            **planning,
        )
