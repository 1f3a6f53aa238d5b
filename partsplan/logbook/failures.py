"""What SQLite and the system say, in words for the logbook's owner."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from partsplan.errors import DamagedLogbook, LogbookUnavailable
from partsplan.sheets import one_line

TIMEOUT = 5.0
"""How long to wait for another process. [s]"""

WAY_BACK = "partsplan restore GARAGE EXPORT.json"
"""The command that makes a logbook from an export."""

_PRIMARY = 0xFF  # the part of an extended result code that names its kind

_HINDRANCES = {
    sqlite3.SQLITE_BUSY: f"another program has kept it busy for {TIMEOUT:g} s",
    sqlite3.SQLITE_FULL: "the disk is full",
    sqlite3.SQLITE_READONLY: "it can only be read here",
    sqlite3.SQLITE_CANTOPEN: "it, or its journal beside it, cannot be opened",
    sqlite3.SQLITE_PERM: "access is not allowed",
    sqlite3.SQLITE_IOERR: "the disk reports an error",
}


class Unsound(Exception):
    """What is wrong with the content of a logbook file."""


@contextmanager
def told(path: Path) -> Iterator[None]:
    """Turns failures inside it into one message that names the file.

    Raises
    ------
    DamagedLogbook
        If the file does not hold what was written into it.
    LogbookUnavailable
        If it cannot be read or written as things are.
    """
    try:
        yield
    except (Unsound, UnicodeDecodeError) as error:
        # SQLite's messages quote names as they stand in the file, legible or not.
        raise damaged(path, str(error)) from error
    except OSError as error:
        raise unavailable(path, error.strerror or str(error)) from error
    except sqlite3.ProgrammingError:
        raise
    except sqlite3.DatabaseError as error:
        # Text that is no UTF-8 comes without a code.
        code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_CORRUPT) & _PRIMARY
        if code in _HINDRANCES:
            raise unavailable(path, _HINDRANCES[code]) from error
        raise damaged(path, str(error)) from error


def damaged(path: Path, what: str) -> DamagedLogbook:
    """The error for a file that does not hold what was written into it."""
    return DamagedLogbook(
        f"{one_line(str(path))}: damaged ({one_line(what)}), and left as it is; move "
        f"it away and make it anew from your last export: {WAY_BACK}"
    )


def unavailable(path: Path, why: str) -> LogbookUnavailable:
    """The error for a file that is not to blame."""
    return LogbookUnavailable(
        f"{one_line(str(path))}: {one_line(why)}; nothing was written"
    )
