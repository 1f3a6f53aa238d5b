"""The day that counts as today."""

from datetime import date, datetime
from typing import Any, TypeVar

import click

_Command = TypeVar("_Command", bound=Any)


def today_option(command: _Command) -> _Command:
    """Adds ``--today``."""
    added: _Command = click.option(
        "--today",
        type=click.DateTime(["%Y-%m-%d"]),
        metavar="YYYY-MM-DD",
        callback=_day,
        help="Answer as of this day, instead of the machine's own date.",
    )(command)
    return added


def _day(_: click.Context, __: click.Parameter, value: datetime | None) -> date:
    return value.date() if value else date.today()
