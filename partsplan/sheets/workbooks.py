"""Workbooks as grids of what stands in their cells."""

import re
import warnings
from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import dataclass
from io import BytesIO
from itertools import repeat
from pathlib import Path
from typing import Any
from zipfile import ZipFile

from partsplan.errors import Problem
from partsplan.sheets.archive import objection
from partsplan.sheets.contents import Content, content
from partsplan.sheets.files import read_bytes

MOST_CELLS = 4_000_000
"""Most cells of one sheet, with the blank ones that its rows count."""

MOST_ROWS = 1_048_576
"""Most rows of a sheet, by ECMA-376."""

_FORMULA = re.compile(rb"<(?:\w+:)?f[ />]")
_MERGED = re.compile(rb"<(?:\w+:)?mergeCell\b[^>]*\bref=[\"']([A-Z]+)([0-9]+):(\w+)")


@dataclass(frozen=True, slots=True)
class GridRow:
    """The cells of one row up to its last that is not blank."""

    line: int
    cells: tuple[Content | None, ...]


@dataclass(frozen=True, slots=True)
class Merged:
    """Cells from one in a column and a line to another one, shown as one."""

    column: str
    line: int
    last: str


@dataclass(frozen=True, slots=True)
class Grid:
    """One sheet of a workbook.

    Attributes
    ----------
    rows
        Those that are not blank; none if nobody wants to read the sheet.
    whole
        Whether these are all of its rows; no if it is too big.
    """

    title: str
    hidden: bool
    rows: tuple[GridRow, ...] = ()
    merged: tuple[Merged, ...] = ()
    whole: bool = True


def read_workbook(
    path: Path, wanted: Callable[[str], bool]
) -> tuple[Grid, ...] | Problem:
    """The sheets of a workbook, with the rows of those whose titles are ``wanted``.

    Of a formula the value counts that the workbook holds for it; nothing is computed.
    """
    found = read_bytes(path)
    message = found if isinstance(found, str) else objection(found)
    if message or isinstance(found, str):
        return Problem(path.name, 0, "", message)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # openpyxl names what it will not save
            return tuple(_grids(found, wanted))
    except Exception:  # a damaged part makes openpyxl raise nearly anything
        message = (
            "expected an .xlsx workbook, got a damaged one; open and save it in a "
            "spreadsheet program"
        )
        return Problem(path.name, 0, "", message)


def _grids(found: bytes, wanted: Callable[[str], bool]) -> Iterator[Grid]:
    # One open file would be shared by all that are read from it.
    with (
        ZipFile(BytesIO(found)) as archive,
        closing(_opened(found, data_only=True)) as values,
    ):
        sheets = list(values.worksheets)
        parts = [
            archive.read(one._worksheet_path) if wanted(one.title) else b""
            for one in sheets
        ]
        formulas: Any = repeat(None)
        if any(map(_FORMULA.search, parts)):
            formulas = _opened(found, data_only=False).worksheets
        for sheet, part, twin in zip(sheets, parts, formulas, strict=False):
            rows: list[GridRow] = []
            whole = not part or _read(sheet, twin, rows)
            yield Grid(
                title=sheet.title,
                hidden=sheet.sheet_state != "visible",
                rows=tuple(rows),
                merged=tuple(
                    Merged(column.decode(), int(line), last.decode())
                    for column, line, last in _MERGED.findall(part)
                ),
                whole=whole,
            )


def _opened(found: bytes, *, data_only: bool) -> Any:
    from openpyxl import load_workbook

    return load_workbook(
        BytesIO(found), read_only=True, data_only=data_only, keep_links=False
    )


def _read(sheet: Any, twin: Any, rows: list[GridRow]) -> bool:
    """Add the rows of a sheet; tell whether all of them are there.

    ``twin`` is the sheet with formulas in place of their values, if it has any.
    """
    others = repeat(())
    if twin is not None:
        twin.reset_dimensions()
        others = twin.iter_rows()
    sheet.reset_dimensions()  # the size that a file states may be anything
    seen = 0
    for line, (row, other) in enumerate(
        zip(sheet.iter_rows(), others, strict=False), 1
    ):
        seen += len(row)
        if line > MOST_ROWS or seen > MOST_CELLS:
            return False
        cells = [
            content(cell, formula=bool(other) and other[place].data_type == "f")
            for place, cell in enumerate(row)
        ]
        while cells and cells[-1] is None:
            del cells[-1]
        if cells:
            rows.append(GridRow(line, tuple(cells)))
    return True
