"""A garage in a workbook: a sheet of keys and values, and a sheet for each table."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from partsplan.errors import InvalidGarage, Problem
from partsplan.intake.book_settings import SHEET, VALUE, settings_document
from partsplan.intake.book_tables import header_names, table_sheet
from partsplan.intake.columns import TABLES
from partsplan.intake.document import Document
from partsplan.intake.schema import Table
from partsplan.intake.suggest import hint
from partsplan.sheets.letters import letters
from partsplan.sheets.quoting import plain
from partsplan.sheets.tables import Sheet
from partsplan.sheets.workbooks import Grid, read_workbook

NOTES = "notes"
"""Sheets whose names begin so are their owner's."""

NAMES = (SHEET, *(table.name for table in TABLES))
"""Sheets that are read, in the order in which they are written."""


@dataclass(frozen=True, slots=True)
class Book:
    """A ``Source``.

    Attributes
    ----------
    grids
        All sheets.
    named
        Those that are read, by name in small letters.
    """

    grids: tuple[Grid, ...]
    named: Mapping[str, Grid]

    def settings(self) -> Document:
        """What the sheet of keys and values says."""
        return settings_document(self.named.get(SHEET))

    def sheet(self, table: Table) -> Sheet | Problem | None:
        """The rows of a sheet."""
        grid = self.named.get(table.name)
        return None if grid is None else table_sheet(grid, table)

    def file(self, table: Table) -> str:
        """The name of a table's sheet."""
        return table.name

    def strange(self) -> tuple[str, ...]:
        """None: each unknown sheet is a problem, and says for itself what it may be."""
        return ()

    def problems(self) -> Iterator[Problem]:
        """Sheets that are hidden, unknown, there twice or too big, and merged cells."""
        seen = set()
        for grid in self.grids:
            title, name = plain(grid.title), _name(grid.title)
            if grid.hidden:
                message = "expected no hidden sheet; unhide it or delete it"
                yield Problem(title, 0, "", message)
            if not _is_read(grid.title):
                if not name.startswith(NOTES):
                    yield Problem(title, 0, "", _unknown(name))
                continue
            if name in seen:
                yield Problem(title, 0, "", "expected each sheet once")
            seen.add(name)
            if not grid.whole:
                yield Problem(
                    title, 0, "", "more cells than are read; delete blank ones"
                )
            for one in grid.merged:
                message = (
                    f"expected no merged cells, got some up to {one.last}; unmerge"
                )
                yield Problem(name, one.line, "", message, one.column)

    def warnings(self) -> tuple[Problem, ...]:
        """None."""
        return ()

    def placed(self, problem: Problem) -> Problem:
        """A problem with the column of its cell; the first one if it has none."""
        grid = self.named.get(problem.file)
        if grid is None or problem.column or not problem.line:
            return problem
        names = header_names(grid.rows[0])
        field = VALUE if problem.file == SHEET else problem.field
        column = names.index(field) + 1 if field in names else 1
        return replace(problem, column=letters(column))

    def notes(self) -> tuple[str, ...]:
        """The titles of their owner's own sheets."""
        return tuple(grid.title for grid in self.grids if not _is_read(grid.title))


def open_book(path: Path) -> Book:
    """The garage in a workbook.

    Raises
    ------
    InvalidGarage
        If the file cannot be read as one.
    """
    grids = read_workbook(path, _is_read)
    if isinstance(grids, Problem):
        raise InvalidGarage([grids])
    return book_of(grids)


def book_of(grids: tuple[Grid, ...]) -> Book:
    """The garage in these sheets; of several with one name it is in the first."""
    named = {_name(one.title): one for one in reversed(grids) if _is_read(one.title)}
    return Book(grids, named)


def _name(title: str) -> str:
    """A sheet's name; capitals do not matter, as in a spreadsheet."""
    return title.strip().lower()


def _is_read(title: str) -> bool:
    return _name(title) in NAMES


def _unknown(name: str) -> str:
    return f"no such table{hint(name, NAMES)}; sheets of your own begin with {NOTES}"
