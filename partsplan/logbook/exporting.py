"""A logbook as text for other programs, from which it can be made anew."""

from collections.abc import Iterable
from itertools import chain
from pathlib import Path
from sqlite3 import Connection

from partsplan.domain import Currency, Entry
from partsplan.errors import InvalidRequest
from partsplan.logbook.contents import Export
from partsplan.logbook.entries import add_entries
from partsplan.logbook.opening import create
from partsplan.logbook.plans import add_plans
from partsplan.logbook.rows import ENTRIES, moment_text
from partsplan.sheets import csv_text, decimal, one_line, protected

_YES_NO = {None: "", True: "yes", False: "no"}


def as_json(export: Export) -> str:
    """Everything as JSON, schema 1: money in minor units, days and months as ISO text.

    ``restored`` makes the same of it.
    """
    from partsplan.logbook.shapes import shaped

    return shaped(export) + "\n"


def restored(text: str) -> Export:
    """What ``as_json`` was given.

    Raises
    ------
    InvalidRequest
        If the text is not an export.
    """
    from partsplan.logbook.shapes import unshaped

    return unshaped(text)


def restore(path: Path, export: Export) -> None:
    """Make a logbook file anew; it appears whole or not at all.

    Raises
    ------
    InvalidRequest
        If there is a file already, or the export does not fit together.
    LogbookUnavailable
        If the folder cannot be written.
    """

    def fill(connection: Connection) -> None:
        add_entries(connection, export.entries)
        add_plans(connection, export.plans)

    if not create(path, fill):
        raise InvalidRequest(
            f"{one_line(str(path))}: there is a logbook already; move it away first"
        )


def as_csv(entries: Iterable[Entry], currency: Currency) -> str:
    """All entries as a table after RFC 4180, money as decimal text.

    Text that a spreadsheet would take for a formula gets a ' before it.
    """
    rows = (_cells(entry, currency) for entry in entries)
    return csv_text(chain([ENTRIES.columns], rows))


def _cells(entry: Entry, currency: Currency) -> tuple[str, ...]:
    what = entry.what

    def money(amount: int | None) -> str:
        return "" if amount is None else currency.format(amount)

    return (
        str(entry.number),
        moment_text(entry.written),
        str(what.kind),
        what.day.isoformat(),
        protected(what.subject),
        money(what.amount),
        money(what.deposit),
        "" if what.hours is None else decimal(what.hours),
        protected(what.cause),
        _YES_NO[what.found],
        "" if what.reading is None else str(what.reading),
        protected(what.who),
        protected(what.text),
        _YES_NO[what.anyway],
        protected(what.batch),
    )
