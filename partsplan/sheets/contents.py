"""What stands in a cell of a workbook, whatever column it is in."""

import re
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from math import isfinite
from typing import Protocol

from partsplan.sheets.escapes import unescaped
from partsplan.sheets.quoting import plain

DIGITS = 15
"""Digits of a number that a cell keeps."""

_NOT_SHOWN = re.compile(r'"[^"]*"|\\.|_.|\*.|\[[^\]]*\]')
"""Parts of a number format that say nothing about what of a date is shown."""


@dataclass(frozen=True, slots=True)
class Dated:
    """A date; ``month_only`` where its format shows no day."""

    day: date
    month_only: bool = False


@dataclass(frozen=True, slots=True)
class Wrong:
    """Something that is of no use in any column, as a message names it."""

    what: str


Content = str | Decimal | bool | Dated | Wrong


class Cell(Protocol):
    """What is read of a cell."""

    @property
    def value(self) -> object: ...
    @property
    def data_type(self) -> str: ...
    @property
    def number_format(self) -> str | None: ...


def content(cell: Cell, *, formula: bool) -> Content | None:
    """What stands in a cell; None if it is blank.

    ``formula`` says that a formula stands there, the value being what it last came to.
    """
    value = cell.value
    if value is None:
        if formula and cell.data_type != "str":  # "str": it came to an empty text
            return Wrong(
                "a formula without a stored value; open and save the workbook in a "
                "spreadsheet program"
            )
        return None
    if cell.data_type == "e":
        return Wrong(f"the error {plain(str(value))}")
    if isinstance(value, bool):
        return value
    if isinstance(value, int | float):
        return _number(value)
    if isinstance(value, datetime | date | time | timedelta):
        return _dated(value, cell.number_format or "")
    text = unescaped(str(value)).replace("\r\n", "\n").replace("\r", "\n").strip()
    return text or None


def _number(value: int | float) -> Decimal | Wrong:
    """A number with the digits that a sheet shows: 0.1 + 0.2 is 0.3 there."""
    if not isfinite(value):
        return Wrong("a number that is too big")
    return Decimal(f"{value:.{DIGITS}g}")


def _dated(value: date | time | timedelta, number_format: str) -> Dated | Wrong:
    if isinstance(value, datetime):
        if value.time() != time():
            return Wrong(f"the time {value}")
        value = value.date()
    if not isinstance(value, date):
        return Wrong(f"the time {value}")
    shown = _NOT_SHOWN.sub("", number_format).lower()
    return Dated(value, month_only="d" not in shown and ("m" in shown or "y" in shown))
