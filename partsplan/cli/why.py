"""``partsplan why``"""

import time
from functools import partial
from pathlib import Path

import click

from partsplan.cli import exits
from partsplan.cli.command import Command
from partsplan.cli.garages import Subject, garage_argument
from partsplan.cli.look import Look, look_options
from partsplan.cli.planning_flags import Number, from_option, planning_flags
from partsplan.cli.progress import Bar


@click.command(
    cls=Command,
    example="partsplan why my-garage hatch-headlining",
    short_help="Defend a plan: why this job, why not that one.",
    no_args_is_help=True,
)
@garage_argument
@click.argument("subjects", nargs=-1, type=Subject(), metavar="[FAULT|OPTION]...")
@click.option(
    "--all", "everything", is_flag=True, help="Ask about every job of the plan, too."
)
@click.option(
    "--search",
    "search_seconds",
    type=Number(0),
    metavar="S",
    default=2.5,
    show_default=True,
    help="Longest search for the price, points and budget of each.",
)
@from_option()
@planning_flags
@look_options(tables=False)
def why(
    garage: Path,
    subjects: tuple[str, ...],
    everything: bool,
    search_seconds: float,
    from_month: str | None,
    months: int | None,
    budget: str | None,
    seconds: float,
    gap: float,
    threads: int,
    look: Look,
) -> int:
    """Why each FAULT or OPTION of GARAGE is in the plan, or waits.

    Without any, all that the plan leaves alone. Each answer plans again, with it forced
    in, without it, and at other prices, points and budgets.
    """
    from partsplan import reports, usecases
    from partsplan.domain import Needs

    with Bar(seconds) as progress:
        answer = usecases.why(
            garage,
            subjects,
            everything=everything,
            from_month=from_month,
            months=months,
            budget=budget,
            seconds=seconds,
            gap=gap,
            threads=threads,
            search_seconds=search_seconds,
            clock=time.monotonic,
            progress=progress,
        )
    if isinstance(answer.plan, Needs):
        look.tell_needs(answer.garage, answer.plan)
        return exits.IMPOSSIBLE
    defences = [(one.subject, one.answers) for one in answer.answers]
    told = answer.garage, answer.plan, defences
    look.tell(
        text=partial(reports.why_text, *told, stopped=answer.stopped),
        json=partial(reports.why_json, *told),
    )
    return exits.INTERRUPTED if answer.stopped else exits.DONE
