"""What the command line of the benchmarks is given, read and checked."""

import json
from pathlib import Path

import click

from tests.benchmarks.generator import FEWEST_FAULTS, MOST_FAULTS, MOST_MONTHS
from tests.benchmarks.measuring import Measured

Size = tuple[int, int]
"""Faults and months."""


def sizes_named(_: click.Context, __: click.Parameter, value: str) -> tuple[Size, ...]:
    """Sizes such as ``12x6,30x12``."""
    return tuple(_size(text.strip()) for text in value.split(","))


def seeds_named(_: click.Context, __: click.Parameter, value: str) -> tuple[int, ...]:
    """Whole numbers such as ``1,2,3``."""
    try:
        return tuple(int(text) for text in value.split(","))
    except ValueError as error:
        message = f'expected whole numbers such as 1,2,3, got "{value}"'
        raise click.BadParameter(message) from error


def earlier_run(
    _: click.Context, __: click.Parameter, value: Path | None
) -> tuple[str, list[Measured]] | None:
    """The machine and the garages in a file that ``--json`` wrote."""
    if value is None:
        return None
    try:
        told = json.loads(value.read_text(encoding="utf-8"))
        return told["machine"], [Measured(**one) for one in told["garages"]]
    except (ValueError, TypeError, KeyError) as error:
        message = f"{value}: expected a file that --json wrote"
        raise click.BadParameter(message) from error


def _size(text: str) -> Size:
    faults, _, months = text.partition("x")
    if not (faults.isdecimal() and months.isdecimal()):
        raise click.BadParameter(f'expected sizes such as 30x6, got "{text}"')
    if not FEWEST_FAULTS <= int(faults) <= MOST_FAULTS:
        message = f'expected {FEWEST_FAULTS}-{MOST_FAULTS} faults, got "{text}"'
        raise click.BadParameter(message)
    if not 1 <= int(months) <= MOST_MONTHS:
        raise click.BadParameter(f'expected 1-{MOST_MONTHS} months, got "{text}"')
    return int(faults), int(months)
