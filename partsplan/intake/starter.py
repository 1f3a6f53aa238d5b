"""A small garage to start from, with its columns explained."""

import re
from pathlib import Path

from partsplan.domain import Month
from partsplan.errors import InvalidRequest
from partsplan.intake.guide import columns_page
from partsplan.intake.writing import write_texts

GUIDE = "COLUMNS.md"

FIRST_MONTH = Month(2027, 1)
"""Where the starter begins, unless somebody asks for another month."""

_FILES = Path(__file__).with_name("starter_garage")
_MONTH = re.compile(r"\{([+-][0-9]+)\}")


def write_starter(folder: Path, start: Month = FIRST_MONTH) -> None:
    """Write a starter garage into a new or empty folder.

    Its dates follow from ``start``, its first month.

    Raises
    ------
    InvalidRequest
        If there is anything in the folder, or it cannot be written.
    """
    _check_empty(folder)
    texts = {
        path.name: _MONTH.sub(
            lambda found: str(start.plus(int(found[1]))), path.read_text("utf-8")
        )
        for path in sorted(_FILES.iterdir())
    }
    write_texts(folder, {**texts, GUIDE: columns_page()})


def _check_empty(folder: Path) -> None:
    try:
        first = min((path.name for path in folder.iterdir()), default=None)
    except FileNotFoundError:
        return
    except NotADirectoryError:
        raise InvalidRequest(f"{folder}: expected a folder, got a file") from None
    except OSError as error:
        message = f"{folder}: cannot be read: {error.strerror}"
        raise InvalidRequest(message) from error
    if first is not None:
        message = f"{folder}: expected an empty or a new folder, it holds {first}"
        raise InvalidRequest(message)
