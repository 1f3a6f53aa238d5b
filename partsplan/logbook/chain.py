"""Rows that follow each other, each sealed with the one before it.

SQLite notices torn pages, but not a flipped bit inside of a text or a sum. The seal is
a checksum of a row and of the seal before it, so it finds changed, swapped and missing
rows. It guards against accidents, not against forgery.
"""

import sqlite3
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any
from zlib import crc32

from partsplan.logbook.failures import Unsound

Row = tuple[Any, ...]
"""The values of a table's columns; the first is the row's number."""


@dataclass(frozen=True, slots=True)
class Table:
    """A table of numbered rows, and its columns but for the seal."""

    name: str
    columns: tuple[str, ...]


def add(connection: sqlite3.Connection, table: Table, rows: Iterable[Row]) -> None:
    """Write rows that carry the next numbers.

    Raises
    ------
    Unsound
        If the row before them is not what was written.
    sqlite3.IntegrityError
        If a row has another number, or breaks a rule of its table.
    UnicodeEncodeError, OverflowError
        If a value cannot be stored.
    """
    number = last(connection, table)
    for _ in rows_after(connection, table, max(0, number - 1)):
        pass  # reading it checks it
    seal = _seal(connection, table, number)
    places = ", ".join("?" * (len(table.columns) + 1))
    command = f"INSERT INTO {table.name} ({_names(table)}) VALUES ({places})"
    for row in rows:
        seal = _sealed(row, seal)
        connection.execute(command, (*row, seal))


def last(connection: sqlite3.Connection, table: Table) -> int:
    """The number of the last row; 0 if there is none."""
    query = f"SELECT coalesce(max(number), 0) FROM {table.name}"
    number: int = connection.execute(query).fetchone()[0]
    return number


def rows_after(
    connection: sqlite3.Connection, table: Table, number: int
) -> Iterator[Row]:
    """The rows behind a number, in order.

    Raises
    ------
    Unsound
        If a row is missing or is not what was written.
    """
    seal = _seal(connection, table, number)
    query = f"SELECT {_names(table)} FROM {table.name} WHERE number > ? ORDER BY number"
    stored = connection.execute(query, (number,))
    for expected, sealed in enumerate(stored, number + 1):
        row = sealed[:-1]
        seal = _sealed(row, seal)
        if row[0] != expected or sealed[-1] != seal:
            raise Unsound(f"{table.name}: {expected} is not what was written")
        yield row


def _names(table: Table) -> str:
    return ", ".join((*table.columns, "seal"))


def _seal(connection: sqlite3.Connection, table: Table, number: int) -> int:
    """The seal of a row; 0 before the first."""
    query = f"SELECT seal FROM {table.name} WHERE number = ?"
    found = connection.execute(query, (number,)).fetchone()
    if number and found is None:
        raise Unsound(f"{table.name}: {number} is missing")
    return found[0] if found else 0


def _sealed(row: Row, before: int) -> int:
    return crc32("\n".join(map(str, row)).encode(), before)
