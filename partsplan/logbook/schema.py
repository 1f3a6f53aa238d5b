"""What the logbook file holds, version by version."""

import sqlite3
from functools import cache

APPLICATION_ID = int.from_bytes(b"PPLB")
"""Marks a SQLite file as a logbook of this program."""

Definition = tuple[str, ...]
"""A name in the file, and the SQL that made it."""


def _append_only(table: str) -> tuple[str, ...]:
    """Triggers that let a table grow by its next number, and nothing else.

    A replacing INSERT deletes without firing triggers for it unless the connection asks
    for that, so it is refused by its number, which is taken.
    """
    return (
        f"""CREATE TRIGGER {table}_in_order BEFORE INSERT ON {table}
        WHEN NEW.number IS NOT (SELECT coalesce(max(number), 0) + 1 FROM {table})
        BEGIN SELECT RAISE(ABORT, '{table}: expected the next number'); END""",
        f"""CREATE TRIGGER {table}_not_changed BEFORE UPDATE ON {table}
        BEGIN SELECT RAISE(ABORT, '{table}: nothing is ever changed'); END""",
        f"""CREATE TRIGGER {table}_not_deleted BEFORE DELETE ON {table}
        BEGIN SELECT RAISE(ABORT, '{table}: nothing is ever deleted'); END""",
    )


_ENTRIES = """CREATE TABLE entries (
    number INTEGER PRIMARY KEY,
    written TEXT NOT NULL,
    kind TEXT NOT NULL CHECK (kind <> ''),
    day TEXT NOT NULL CHECK (day IS date(day)),
    subject TEXT NOT NULL,
    amount INTEGER CHECK (amount >= 0),
    deposit INTEGER CHECK (deposit >= 0),
    hours TEXT CHECK (hours NOT GLOB '*[^0-9/]*'),
    cause TEXT NOT NULL,
    found INTEGER CHECK (found IN (0, 1)),
    reading INTEGER CHECK (reading >= 0),
    who TEXT NOT NULL,
    text TEXT NOT NULL,
    anyway INTEGER NOT NULL CHECK (anyway IN (0, 1)),
    batch TEXT NOT NULL,
    seal INTEGER NOT NULL
) STRICT"""

_PLANS = """CREATE TABLE plans (
    number INTEGER PRIMARY KEY,
    written TEXT NOT NULL,
    start TEXT NOT NULL CHECK (start GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]'),
    text TEXT NOT NULL,
    seal INTEGER NOT NULL
) STRICT"""

MIGRATIONS: tuple[tuple[str, ...], ...] = (
    (
        f"PRAGMA application_id = {APPLICATION_ID}",
        _ENTRIES,
        *_append_only("entries"),
    ),
    (_PLANS, *_append_only("plans")),
)
"""Each leads from one version of the file to the next; they are never edited.

New tables rather than ALTER TABLE: versions of SQLite may word that differently, and
``definitions`` are compared word for word.
"""

VERSION = len(MIGRATIONS)


def migrate(connection: sqlite3.Connection, *, to: int = VERSION) -> None:
    """Bring a file to a version, in the transaction that is open."""
    for migration in MIGRATIONS[version(connection) : to]:
        for statement in migration:
            connection.execute(statement)
    connection.execute(f"PRAGMA user_version = {to}")


def version(connection: sqlite3.Connection) -> int:
    """How many migrations a file has behind it."""
    found: int = connection.execute("PRAGMA user_version").fetchone()[0]
    return found


def definitions(connection: sqlite3.Connection) -> frozenset[Definition]:
    """The tables and triggers of a file."""
    return frozenset(connection.execute("SELECT name, sql FROM sqlite_schema"))


@cache
def expected_definitions(version: int) -> frozenset[Definition]:
    """The tables and triggers that a file of a version has."""
    connection = sqlite3.connect(":memory:", isolation_level=None)
    try:
        migrate(connection, to=version)
        return definitions(connection)
    finally:
        connection.close()
