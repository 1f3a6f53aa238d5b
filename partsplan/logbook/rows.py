"""Entries as rows of the file."""

from collections.abc import Iterable
from datetime import UTC, date, datetime
from fractions import Fraction
from functools import lru_cache

from partsplan.domain import Entry, EntryKind, Happening
from partsplan.logbook.chain import Row, Table
from partsplan.logbook.failures import Unsound

ENTRIES = Table(
    "entries",
    (
        "number",
        "written",
        "kind",
        "day",
        "subject",
        "amount",
        "deposit",
        "hours",
        "cause",
        "found",
        "reading",
        "who",
        "text",
        "anyway",
        "batch",
    ),
)

_BOOL = {None: None, 0: False, 1: True}
_KIND = {str(kind): kind for kind in EntryKind}

_hours = lru_cache(maxsize=4096)(Fraction)
_day = lru_cache(maxsize=4096)(date.fromisoformat)


def entries(rows: Iterable[Row]) -> tuple[Entry, ...]:
    """The entries that rows hold.

    Raises
    ------
    Unsound
        If a value is none that ``row`` writes.
    """
    try:
        return tuple(map(_entry, rows))
    except (KeyError, ValueError, ZeroDivisionError) as error:
        raise Unsound(f"entries: {error}") from error


def row(entry: Entry) -> Row:
    """The values of an entry, in the order of the columns."""
    what = entry.what
    return (
        entry.number,
        moment_text(entry.written),
        str(what.kind),
        what.day.isoformat(),
        what.subject,
        what.amount,
        what.deposit,
        None if what.hours is None else str(what.hours),
        what.cause,
        None if what.found is None else int(what.found),
        what.reading,
        what.who,
        what.text,
        int(what.anyway),
        what.batch,
    )


def in_utc(moment: datetime) -> datetime:
    """The same moment in UTC.

    Raises
    ------
    ValueError
        If it does not say in which zone it is.
    """
    if moment.tzinfo is None:
        raise ValueError(f"expected a time with its zone, got {moment}")
    return moment.astimezone(UTC)


def moment_text(moment: datetime) -> str:
    """A moment as ISO text in UTC."""
    return in_utc(moment).isoformat(timespec="microseconds")


def _entry(row: Row) -> Entry:
    (
        number,
        written,
        kind,
        day,
        subject,
        amount,
        deposit,
        hours,
        cause,
        found,
        reading,
        who,
        text,
        anyway,
        batch,
    ) = row
    return Entry(
        number=number,
        written=datetime.fromisoformat(written),
        what=Happening(
            kind=_KIND[kind],
            day=_day(day),
            subject=subject,
            amount=amount,
            deposit=deposit,
            hours=None if hours is None else _hours(hours),
            cause=cause,
            found=_BOOL[found],
            reading=reading,
            who=who,
            text=text,
            anyway=_BOOL[anyway] is True,
            batch=batch,
        ),
    )
