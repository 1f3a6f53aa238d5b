"""A garage as a workbook, and back as a folder."""

from dataclasses import dataclass
from pathlib import Path

from partsplan.domain import Month
from partsplan.errors import InvalidRequest


@dataclass(frozen=True, slots=True)
class AsWorkbook:
    """A garage as a workbook.

    Attributes
    ----------
    sheets
        Those that are read.
    logbook
        The logbook that stays where it is; None if there is none.
    """

    content: bytes
    sheets: tuple[str, ...]
    logbook: Path | None = None


@dataclass(frozen=True, slots=True)
class AsFolder:
    """What became of a workbook.

    Attributes
    ----------
    files
        Those that were written.
    left_out
        Sheets for which a folder has no place.
    logbook
        The logbook that stays where it is; None if there is none.
    """

    files: tuple[str, ...]
    left_out: tuple[str, ...]
    logbook: Path | None = None


def starter_workbook(first: Month) -> AsWorkbook:
    """A small garage to start from, which begins in ``first``."""
    from partsplan.intake import SHEETS, starter_workbook

    return AsWorkbook(starter_workbook(first), SHEETS)


def as_workbook(garage: Path) -> AsWorkbook:
    """The garage in a folder as a workbook.

    Raises
    ------
    InvalidGarage
    InvalidRequest
        If a text is too long for a cell.
    """
    from partsplan.intake import SHEETS, workbook_of

    return AsWorkbook(workbook_of(garage), SHEETS, _logbook(garage))


def as_folder(workbook: Path, folder: Path, *, force: bool) -> AsFolder:
    """Write the garage in a workbook into a folder, made if it is not there.

    Raises
    ------
    InvalidGarage
    InvalidRequest
        If a file is there already that ``force`` would overwrite, or cannot be written.
    """
    from partsplan.intake import folder_of, write_texts

    found = folder_of(workbook)
    there = [name for name in found.texts if (folder / name).exists()]
    if there and not force:
        message = f"{folder / there[0]} is there already; --force overwrites it"
        raise InvalidRequest(message)
    write_texts(folder, found.texts)
    files = tuple(sorted(found.texts))
    return AsFolder(files, found.left_out, _logbook(workbook))


def _logbook(garage: Path) -> Path | None:
    from partsplan.logbook import beside

    path = beside(garage)
    return path if path.exists() else None
