"""Days as people write them, and which day it is."""

import re
from datetime import UTC, date, datetime
from typing import Any, TypeVar

import click

_Command = TypeVar("_Command", bound=Any)

_FORM = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
YEARS = range(1900, 3000)


class Day(click.ParamType[date]):
    """A day, YYYY-MM-DD."""

    name = "YYYY-MM-DD"

    def convert(
        self,
        value: Any,
        param: click.Parameter | None,
        ctx: click.Context | None,
    ) -> date:
        if isinstance(value, date):
            return value
        try:
            day = date.fromisoformat(value) if _FORM.fullmatch(value) else None
        except ValueError:
            day = None
        if day is None or day.year not in YEARS:
            self.fail(
                f"expected a day YYYY-MM-DD from 1900 on, got {value!r}", param, ctx
            )
        return day


def today_option(command: _Command) -> _Command:
    """Adds ``--today``."""
    added: _Command = click.option(
        "--today",
        type=Day(),
        default=date.today,
        help="Take this day to be today; otherwise the computer's.",
    )(command)
    return added


def moment(today: date) -> datetime:
    """The time at which something is written down, on the day taken to be today."""
    now = datetime.now().astimezone()
    return now.replace(today.year, today.month, today.day).astimezone(UTC)
