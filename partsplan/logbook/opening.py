"""The logbook file is opened: to read, to write, or as a new one."""

import os
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path
from tempfile import TemporaryDirectory

from partsplan.logbook import schema
from partsplan.logbook.failures import TIMEOUT, Unsound, told, unavailable

_PRAGMAS = (
    "PRAGMA synchronous = EXTRA",  # the end of the journal is on the disk, too
    "PRAGMA recursive_triggers = ON",
    "PRAGMA cell_size_check = ON",
)


@contextmanager
def reading(path: Path) -> Iterator[sqlite3.Connection]:
    """A file checked page by page, in a state that no writer changes meanwhile.

    Raises
    ------
    DamagedLogbook, LogbookUnavailable
    """
    with _opened(path) as connection, _transaction(connection, "BEGIN"):
        _check_definitions(connection)
        _check_pages(connection)
        yield connection


@contextmanager
def writing(path: Path) -> Iterator[sqlite3.Connection]:
    """A transaction: all of it is kept, or nothing if anything is raised inside.

    No other process writes meanwhile. Pages that it does not touch are not checked,
    since that takes the longer the more the file holds.

    Raises
    ------
    DamagedLogbook, LogbookUnavailable
    """
    with _opened(path) as connection, _transaction(connection, "BEGIN IMMEDIATE"):
        _check_definitions(connection)
        yield connection


def ensure(path: Path) -> None:
    """Make an empty logbook if there is no file.

    Raises
    ------
    LogbookUnavailable
        If the folder cannot be written.
    """
    with told(path):
        if not path.exists():
            create(path, lambda connection: None)


def create(path: Path, fill: Callable[[sqlite3.Connection], None]) -> bool:
    """Make a new file with the rows that ``fill`` adds; False if there is one already.

    It appears whole or not at all. Were it made in its place, a process killed early
    would leave an empty file, and nobody could tell that from one that lost everything.

    Raises
    ------
    LogbookUnavailable
        If the folder cannot be written, or a journal is left in it.
    """
    # It would be rolled back into the new file. Another process that is just writing
    # has made its file before its journal.
    journal = path.with_name(f"{path.name}-journal")
    if journal.exists() and not path.exists():
        raise unavailable(
            path, f"move {journal.name} away first, it is of another file"
        )
    with told(path), TemporaryDirectory(prefix=".logbook-", dir=path.parent) as folder:
        new = Path(folder) / path.name
        with (
            _connected(new, "rwc") as connection,
            _transaction(connection, "BEGIN IMMEDIATE"),
        ):
            schema.migrate(connection)
            fill(connection)
        return _published(new, path)


@contextmanager
def _opened(path: Path) -> Iterator[sqlite3.Connection]:
    """A logbook file, brought up to date."""
    with told(path):
        _check_application(path)
        with _connected(path, "rw") as connection:
            _check_header(connection)
            found = schema.version(connection)
            if found > schema.VERSION:
                raise unavailable(
                    path,
                    f"written by a newer partsplan (format {found}, this one knows "
                    f"{schema.VERSION})",
                )
            if found < 1:
                raise Unsound(f"its format is {found}")
            if found < schema.VERSION:
                _update(connection)
            yield connection


@contextmanager
def _connected(path: Path, mode: str) -> Iterator[sqlite3.Connection]:
    """A connection that begins no transaction by itself.

    Modes are those of SQLite's URIs; rw can only read what may not be written.
    """
    uri = f"{path.absolute().as_uri()}?mode={mode}"
    with closing(
        sqlite3.connect(uri, uri=True, timeout=TIMEOUT, isolation_level=None)
    ) as connection:
        for pragma in _PRAGMAS:
            connection.execute(pragma)
        yield connection


@contextmanager
def _transaction(connection: sqlite3.Connection, begin: str) -> Iterator[None]:
    """What fails in it is rolled back when the connection is closed."""
    connection.execute(begin)
    yield
    connection.execute("COMMIT")


def _check_application(path: Path) -> None:
    """Opens nothing but logbooks for writing, since that alone may change a file.

    This looks past the journal of a process that was killed, or is just writing. So
    failures mean nothing yet; they come again unless the journal explains them.
    """
    with (
        suppress(sqlite3.DatabaseError, UnicodeDecodeError),
        _connected(path, "ro&immutable=1") as connection,
    ):
        _check_header(connection)


def _check_header(connection: sqlite3.Connection) -> None:
    (found,) = connection.execute("PRAGMA application_id").fetchone()
    if found != schema.APPLICATION_ID:
        raise Unsound("not a logbook of partsplan")
    # Another mode would keep what was confirmed in a second file.
    (mode,) = connection.execute("PRAGMA journal_mode").fetchone()
    if mode != "delete":
        raise Unsound(f"its journal mode is {mode}")


def _update(connection: sqlite3.Connection) -> None:
    with _transaction(connection, "BEGIN IMMEDIATE"):
        _check_definitions(connection)
        _check_pages(connection)
        schema.migrate(connection)


def _check_definitions(connection: sqlite3.Connection) -> None:
    """The tables and triggers are word for word what this program made."""
    expected = schema.expected_definitions(schema.version(connection))
    if schema.definitions(connection) != expected:
        raise Unsound("its tables or triggers were changed")


def _check_pages(connection: sqlite3.Connection) -> None:
    (found,) = connection.execute("PRAGMA quick_check(1)").fetchone()
    if found != "ok":
        raise Unsound(found)


def _published(new: Path, path: Path) -> bool:
    try:
        os.link(new, path)
    except FileExistsError:
        return False
    except OSError:  # a file system without links
        if path.exists():
            return False
        new.rename(path)
    if os.name == "posix":
        folder = os.open(path.parent, os.O_RDONLY)
        try:
            os.fsync(folder)
        finally:
            os.close(folder)
    return True
