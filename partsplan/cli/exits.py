"""Exit codes, and what is said on the way out."""

import os
import sys
import traceback
from collections.abc import Callable

import click

from partsplan.errors import (
    DamagedLogbook,
    InvalidFile,
    InvalidRequest,
    LogbookUnavailable,
    PartsplanError,
    RefusedEntry,
    SolverFailed,
    UnsoundPlan,
)

DONE = 0
BUG = 1
USAGE = 2
BAD_INPUT = 3
IMPOSSIBLE = 4
SOLVER_FAILED = 5
INTERRUPTED = 130

_CODES: tuple[tuple[type[PartsplanError], int], ...] = (
    (InvalidFile, BAD_INPUT),
    (RefusedEntry, BAD_INPUT),
    (DamagedLogbook, BAD_INPUT),
    (LogbookUnavailable, BAD_INPUT),
    (InvalidRequest, USAGE),
    (SolverFailed, SOLVER_FAILED),
)


def guarded(command: Callable[[], int | None]) -> int:
    """The exit code of a command; what goes wrong is one message on stderr.

    Nobody sees a traceback unless PARTSPLAN_DEBUG is set.
    """
    try:
        return command() or DONE
    except click.ClickException as error:
        error.show()
        return error.exit_code
    except (click.Abort, KeyboardInterrupt):
        _say("Stopped before there was anything to tell.")
        return INTERRUPTED
    except UnsoundPlan as error:
        return _bug(error)
    except PartsplanError as error:
        listed = isinstance(error, InvalidFile | RefusedEntry)
        _say(str(error) if listed else f"Error: {error}")
        if isinstance(error, InvalidFile) and len(error.problems) > 1:
            _say(f"{len(error.problems)} problems; nothing was written.")
        if isinstance(error, RefusedEntry):
            way = "; --anyway writes it down all the same, flagged"
            _say(f"Nothing was written{way if error.liftable else ''}.")
        return next((code for kind, code in _CODES if isinstance(error, kind)), BUG)
    except OSError as error:
        _say(f"Error: {error.strerror or error}: {error.filename or ''}".rstrip(": "))
        return BAD_INPUT
    except Exception as error:
        return _bug(error)


def _bug(error: Exception) -> int:
    if os.environ.get("PARTSPLAN_DEBUG"):
        traceback.print_exc()
    what = " ".join(f"{type(error).__name__}: {error}".split())
    _say(f"This is a bug in partsplan; please report it with this line: {what}")
    return BUG


def _say(message: str) -> None:
    print(message, file=sys.stderr)
