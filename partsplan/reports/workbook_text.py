"""What became of a garage that was made a workbook or a folder."""

from collections.abc import Sequence
from pathlib import Path

from partsplan.reports.figures import listed
from partsplan.reports.page import Page
from partsplan.reports.plain_data import SCHEMA, dumped


def as_workbook_text(
    workbook: str,
    sheets: Sequence[str],
    garage: str,
    logbook: Path | None,
    *,
    width: int = 100,
) -> str:
    """A garage is in a workbook now."""
    page = Page(width)
    page.paragraph(f"{workbook} now holds the garage: {listed(sheets)}.")
    _about_logbook(page, logbook, garage, workbook)
    return str(page)


def as_folder_text(
    folder: str,
    garage: str,
    files: Sequence[str],
    left_out: Sequence[str],
    logbook: Path | None,
    *,
    width: int = 100,
) -> str:
    """A garage is in a folder now."""
    page = Page(width)
    page.paragraph(f"{folder} now holds {listed(files)}.")
    if left_out:
        page.paragraph(
            f"Left out, as a folder has no place for it: {listed(left_out)}."
        )
    _about_logbook(page, logbook, garage, folder)
    return str(page)


def as_workbook_json(
    workbook: str, sheets: Sequence[str], logbook: Path | None = None
) -> str:
    """The same as JSON."""
    return dumped(
        {
            "schema": SCHEMA,
            "workbook": workbook,
            "sheets": list(sheets),
            "logbook": _path(logbook),
        }
    )


def as_folder_json(
    folder: str, files: Sequence[str], left_out: Sequence[str], logbook: Path | None
) -> str:
    """The same as JSON."""
    return dumped(
        {
            "schema": SCHEMA,
            "folder": folder,
            "files": list(files),
            "left_out": list(left_out),
            "logbook": _path(logbook),
        }
    )


def _about_logbook(page: Page, logbook: Path | None, old: str, new: str) -> None:
    if logbook:
        page.paragraph(
            f'The logbook stays where it is, {logbook}; "partsplan export {old} -o '
            f'logbook.json" and "partsplan restore {new} logbook.json" make another.'
        )


def _path(logbook: Path | None) -> str | None:
    return None if logbook is None else str(logbook)
