"""``partsplan calendar``"""

import time
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import click

from partsplan.cli import exits
from partsplan.cli.command import Command
from partsplan.cli.days import today_option
from partsplan.cli.garages import garage_argument
from partsplan.cli.output import (
    json_option,
    may_write,
    output_options,
    write,
    write_bytes,
)
from partsplan.cli.planning_flags import from_option, planning_flags
from partsplan.cli.progress import Bar


@click.command(
    cls=Command,
    example="partsplan calendar my-garage -o my-garage.ics",
    short_help="Put orders, fittings, returns and deadlines into a calendar.",
    no_args_is_help=True,
)
@garage_argument
@today_option
@from_option()
@planning_flags
@json_option
@output_options
def calendar(
    garage: Path,
    today: date,
    seconds: float,
    as_json: bool,
    output: str,
    force: bool,
    **planning: Any,
) -> int:
    """Put the days of the plan for GARAGE into a calendar file (iCalendar).

    Orders, fittings, last days to send old units back, ends of quotes, deadlines and
    milestones, each with a reminder. The same thing has the same UID in every file, so
    that a day that moved is moved in the calendar, too.
    """
    may_write(output, force=force)

    from partsplan import reports, usecases
    from partsplan.domain import Needs

    with Bar(seconds) as progress:
        answer = usecases.calendar(
            garage,
            seconds=seconds,
            progress=progress,
            clock=time.monotonic,
            **planning,
        )
    made, plan = answer.garage, answer.plan
    if isinstance(plan, Needs):
        if as_json:
            write(reports.needs_json(made, plan), output)
        else:
            click.echo(reports.needs_tables(made, plan), err=True)
        return exits.IMPOSSIBLE
    days = reports.occasions(made, plan, answer.ledger, today)
    if as_json:
        write(reports.calendar_json(made, plan, days), output)
    elif days:
        now = datetime.now(UTC)
        write_bytes(reports.calendar_ics(made, plan, days, now=now), output)
    else:  # a calendar without events is none
        click.echo("There is nothing to put into a calendar.", err=True)
    return exits.INTERRUPTED if plan.interrupted else exits.DONE
