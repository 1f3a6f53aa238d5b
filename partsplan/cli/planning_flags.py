"""The flags of every command that makes a plan."""

import math
from collections.abc import Callable
from typing import Any, TypeVar

import click

from partsplan.cli.settings import setting

_Command = TypeVar("_Command", bound=Any)


class Number(click.FloatRange):
    """A number in a range; what is no number at all is refused too."""

    def convert(
        self, value: Any, param: click.Parameter | None, ctx: click.Context | None
    ) -> Any:
        found = super().convert(value, param, ctx)
        if math.isnan(found):
            self.fail(f"{value!r} is no number.", param, ctx)
        return found


_ASKED = (
    click.option(
        "--months",
        type=click.IntRange(1, 36),
        metavar="N",
        envvar="PARTSPLAN_MONTHS",
        help="Months to plan, instead of the garage's own.",
    ),
    click.option(
        "--budget",
        metavar="AMOUNT",
        envvar="PARTSPLAN_BUDGET",
        help="Money for every month, instead of the garage's own.",
    ),
)
_SOLVER = (
    click.option(
        "--seconds",
        type=Number(0, min_open=True),
        metavar="S",
        default=setting("seconds"),
        envvar="PARTSPLAN_SECONDS",
        help="Longest solver time; 30 unless set.",
    ),
    click.option(
        "--gap",
        type=Number(0),
        metavar="G",
        default=setting("gap"),
        envvar="PARTSPLAN_GAP",
        help="Share of the net worth that may be missing; 0.0001 unless set.",
    ),
    click.option(
        "--threads",
        type=click.IntRange(1),
        metavar="N",
        default=setting("threads"),
        envvar="PARTSPLAN_THREADS",
        help="Threads of the solver; 1 unless set.",
    ),
)


def from_option(name: str = "--from") -> Callable[[_Command], _Command]:
    """Adds the flag for the first month to plan."""
    return click.option(
        name,
        "from_month",
        metavar="MONTH",
        envvar="PARTSPLAN_FROM",
        help="First month to plan, YYYY-MM; else that of the logbook's latest entry.",
    )


def planning_flags(command: _Command) -> _Command:
    """Adds ``--months`` and ``--budget`` to what ``solver_flags`` adds."""
    command = solver_flags(command)
    for flag in reversed(_ASKED):
        command = flag(command)
    return command


def solver_flags(command: _Command) -> _Command:
    """Adds ``--seconds``, ``--gap`` and ``--threads``."""
    for flag in reversed(_SOLVER):
        command = flag(command)
    return command
