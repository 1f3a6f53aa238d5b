"""Flags and bar of the commands that make many plans at once."""

from typing import Any, TypeVar

import click

from partsplan.cli.progress import BAR, Bar

_Command = TypeVar("_Command", bound=Any)

MOST_JOBS = 256


def many_flags(command: _Command) -> _Command:
    """Adds ``--jobs`` and ``--cluster``."""
    command = click.option(
        "--cluster",
        metavar="ADDRESS",
        default="",
        envvar="PARTSPLAN_CLUSTER",
        help="Plan on the machines of a running scheduler of distributed instead; "
        "trusted networks only.",
    )(command)
    added: _Command = click.option(
        "--jobs",
        type=click.IntRange(1, MOST_JOBS),
        metavar="N",
        envvar="PARTSPLAN_JOBS",
        help="Processes that plan at the same time; one for each core unless set.",
    )(command)
    return added


class PlansBar(Bar):
    """Shows how many plans are made, of at most how many."""

    def __init__(self, most: int) -> None:
        super().__init__(seconds=1.0)
        self.most = most
        self.made = 0

    def count(self, made: int) -> None:
        """Take note of how many are made."""
        self.made = made

    def line(self, elapsed: float, width: int) -> str:
        """The bar after so many seconds, cut to the width of the terminal."""
        full = min(BAR, BAR * self.made // self.most)
        bar = "#" * full + "." * (BAR - full)
        plans = f"{self.made} of at most {self.most} plans"
        return f"[{bar}] {plans}, {elapsed:.0f} s"[:width]
