"""Entries are written down and read; none is ever changed."""

import sqlite3
from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import datetime
from itertools import count
from pathlib import Path

from partsplan.domain import Entry, Happening
from partsplan.errors import InvalidRequest
from partsplan.logbook.chain import add, last, rows_after
from partsplan.logbook.failures import told, unavailable
from partsplan.logbook.opening import ensure, reading, writing
from partsplan.logbook.rows import ENTRIES, entries, in_utc, row

FILE = "logbook.sqlite"
"""The name of the logbook in a garage's folder."""

Check = Callable[[tuple[Entry, ...]], None]
"""Is given entries, and raises if nothing may be written after them."""


def append(
    path: Path,
    happenings: Iterable[Happening],
    *,
    now: datetime,
    known: int = 0,
    check: Check | None = None,
    as_batch: bool = False,
) -> tuple[Entry, ...]:
    """Write down what happened, all of it or nothing; the file is made if need be.

    When this returns, the entries are on the disk. Pages that it does not touch are not
    checked for damage; ``read`` checks them all.

    Parameters
    ----------
    now
        The time, with its zone.
    known
        How many entries the caller has read before: to read 100,000 takes far longer
        than to write one.
    check
        Called in the transaction that writes, so no other process can write between the
        two, with the entries behind the ``known`` ones, mostly none. What it raises is
        passed on, and nothing is written.
    as_batch
        Give all of them the next free name of a batch: import-1, import-2, ...

    Raises
    ------
    DamagedLogbook, LogbookUnavailable
    InvalidRequest
        If a happening cannot be stored, such as one with an amount below 0.
    """
    ensure(path)
    with writing(path) as connection:
        stored = last(connection, ENTRIES)
        if stored < known:
            raise unavailable(path, f"{known} entries were read, now it has {stored}")
        if check:
            check(entries(rows_after(connection, ENTRIES, known)))
        if as_batch:
            batch = _free_batch(connection)
            happenings = [replace(what, batch=batch) for what in happenings]
        written = tuple(
            Entry(number=number, written=in_utc(now), what=what)
            for number, what in enumerate(happenings, stored + 1)
        )
        add_entries(connection, written)
    return written


def read(path: Path) -> tuple[Entry, ...]:
    """All entries, in the order in which they were written; none without a file.

    Raises
    ------
    DamagedLogbook, LogbookUnavailable
    """
    with told(path):
        if not path.exists():
            return ()
        with reading(path) as connection:
            return entries(rows_after(connection, ENTRIES, 0))


def add_entries(connection: sqlite3.Connection, written: Iterable[Entry]) -> None:
    """Write entries in the transaction that is open.

    Raises
    ------
    InvalidRequest
        If one cannot be stored, or does not carry the next number.
    """
    try:
        add(connection, ENTRIES, map(row, written))
    except (sqlite3.IntegrityError, UnicodeEncodeError, OverflowError) as error:
        raise InvalidRequest(f"cannot be written down: {error}") from error


def _free_batch(connection: sqlite3.Connection) -> str:
    taken = {
        name for (name,) in connection.execute("SELECT DISTINCT batch FROM entries")
    }
    return next(name for n in count(1) if (name := f"import-{n}") not in taken)
