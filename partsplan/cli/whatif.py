"""``partsplan whatif``"""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from partsplan.cli import exits
from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.look import Look, look_options
from partsplan.cli.planning_flags import from_option, solver_flags
from partsplan.cli.progress import Bar

if TYPE_CHECKING:
    from partsplan.domain import TwoPlans

_Command = TypeVar("_Command", bound=Callable[..., Any])

CHANGES = (
    ("budget", "[MONTH=]AMOUNT", "Money for every month, or for one."),
    ("price", "OPTION=AMOUNT", "Price of a piece, in the currency of its quote."),
    ("take", "FAULT", "Some job has to be for this fault."),
    ("leave", "FAULT", "No job is for this fault."),
    ("use", "OPTION", "This option has to be used."),
    ("avoid", "OPTION", "This option is not used."),
    ("refuse", "ROUTE[:VEHICLE]", "Nothing comes by this route."),
    ("park", "VEHICLE[=MONTH]", "Not driven before that month, or not at all."),
    ("give-up", "VEHICLE=MONTH", "Gone from that month on."),
    ("hours", "[MONTH=]H", "Own hours for every month, or for one."),
    ("reserve", "AMOUNT", "Balance that no month's end falls below."),
    ("months", "N", "Months to plan."),
)


def _change_flags(command: _Command) -> _Command:
    """Adds a flag for each kind of change; each may be given again and again."""
    for kind, form, said in reversed(CHANGES):
        command = click.option(f"--{kind}", metavar=form, multiple=True, help=said)(
            command
        )
    return command


@click.command(
    cls=Command,
    example="partsplan whatif my-garage --budget 200 --park hatch=2027-03",
    short_help="Plan with something changed, and tell the difference.",
    no_args_is_help=True,
)
@garage_argument
@_change_flags
@from_option()
@solver_flags
@look_options()
def whatif(
    garage: Path,
    from_month: str | None,
    seconds: float,
    gap: float,
    threads: int,
    look: Look,
    **changes: tuple[str, ...],
) -> int:
    """Plan GARAGE as it is and with something changed, and tell the difference.

    Every change may be given more than once. Months are written YYYY-MM.
    """
    asked = [
        (kind, text)
        for kind, _, _ in CHANGES
        for text in changes[kind.replace("-", "_")]
    ]
    if not asked:
        flags = ", ".join(f"--{kind}" for kind, _, _ in CHANGES)
        raise click.UsageError(f"Nothing is changed. Give at least one of {flags}.")

    from partsplan import reports, usecases

    with Bar(2 * seconds) as progress:
        answer = usecases.whatif(
            garage,
            asked,
            from_month=from_month,
            seconds=seconds,
            gap=gap,
            threads=threads,
            progress=progress,
        )
    look.tell(
        text=partial(reports.whatif_tables, answer.changes, answer.plans),
        json=partial(reports.whatif_json, answer.changes, answer.plans),
    )
    return code_of(answer.plans)


def code_of(plans: "TwoPlans") -> int:
    """The exit code of two plans: impossible if one of them is."""
    from partsplan.domain import Plan

    both = plans.plan, plans.other_plan
    if not all(isinstance(plan, Plan) for plan in both):
        return exits.IMPOSSIBLE
    stopped = any(isinstance(plan, Plan) and plan.interrupted for plan in both)
    return exits.INTERRUPTED if stopped else exits.DONE
