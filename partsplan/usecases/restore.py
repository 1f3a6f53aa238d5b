"""Makes a logbook anew from what was handed out of it."""

from pathlib import Path
from typing import TYPE_CHECKING

from partsplan.errors import InvalidFile, InvalidRequest, Problem

if TYPE_CHECKING:
    from partsplan.logbook import Export


def restore(folder: Path, export: Path) -> "tuple[Path, Export]":
    """Make the logbook of a garage from an export; tell its path and what it holds.

    Raises
    ------
    InvalidGarage
    InvalidFile
        If the file is no export, or one of a garage with another currency.
    InvalidRequest
        If there is a logbook already; it is never overwritten.
    LogbookUnavailable
    """
    from partsplan import logbook
    from partsplan.intake import read_garage

    currency = read_garage(folder).currency.code
    try:
        found = logbook.restored(export.read_text(encoding="utf-8"))
    except (InvalidRequest, UnicodeDecodeError) as error:
        raise InvalidFile([Problem(export.name, 0, "", str(error))]) from error
    if found.currency != currency:
        message = f"expected amounts in {currency}, got {found.currency}"
        raise InvalidFile([Problem(export.name, 0, "", message)])
    path = logbook.beside(folder)
    logbook.restore(path, found)
    return path, found
