"""The plain garage as a workbook, to be spoiled cell by cell."""

import csv
import io
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook

from partsplan.domain import Garage
from partsplan.errors import InvalidGarage
from partsplan.intake import read_garage
from partsplan.intake.book import book_of
from partsplan.intake.reading import garage_in
from partsplan.sheets.contents import Content
from partsplan.sheets.workbooks import Grid, GridRow
from tests.intake.plain_garage import PLAIN, Files

Rows = list[list[Any]]
Sheets = dict[str, Rows]

SETTINGS: Rows = [
    ["key", "value"],
    ["name", "Plain"],
    ["currency", "EUR"],
    ["start", "2027-01"],
    ["months", "6"],
    ["budget", "200;250.50"],
    ["hours", "10"],
    ["rates.JPY", "0.006"],
]


def sheets(files: Files = PLAIN) -> Sheets:
    """The plain settings, and the tables of these files; every cell is text."""
    tables = {
        name.removesuffix(".csv"): [list(row) for row in csv.reader(io.StringIO(text))]
        for name, text in files.items()
        if name.endswith(".csv")
    }
    return {"garage": [list(row) for row in SETTINGS], **tables}


def with_setting(key: str, value: Any) -> Sheets:
    """The plain garage with another setting."""
    made = sheets()
    made["garage"] = [row for row in made["garage"] if row[0] != key]
    made["garage"].append([key, value])
    return made


def with_cell(sheet: str, line: int, column: str, value: Any) -> Sheets:
    """The plain garage with something else in one cell; the header is line 1."""
    made = sheets()
    made[sheet][line - 1][made[sheet][0].index(column)] = value
    return made


def garage(made: Mapping[str, Sequence[Sequence[Content | None]]]) -> Garage:
    """The garage in these sheets, without a file in between."""
    return garage_in(book_of(tuple(_grid(title, rows) for title, rows in made.items())))


def problems(made: Mapping[str, Sequence[Sequence[Content | None]]]) -> list[str]:
    """What is said to be wrong with these sheets."""
    with pytest.raises(InvalidGarage) as caught:
        garage(made)
    return [str(problem) for problem in caught.value.problems]


def book(made: Sheets) -> Workbook:
    """A workbook of these sheets, to be spoiled further."""
    found = Workbook()
    found.remove(found.worksheets[0])
    for title, rows in made.items():
        sheet = found.create_sheet(title)
        for row in rows:
            sheet.append(row)
    return found


def save(folder: Path, found: Workbook) -> Path:
    """The workbook as a file."""
    path = folder / "plain.xlsx"
    found.save(path)
    return path


def told(path: Path) -> list[str]:
    """What is said to be wrong with the garage in a file."""
    with pytest.raises(InvalidGarage) as caught:
        read_garage(path)
    return [str(problem) for problem in caught.value.problems]


def _grid(title: str, rows: Sequence[Sequence[Content | None]]) -> Grid:
    filled = [
        GridRow(line, tuple(one if one != "" else None for one in row))
        for line, row in enumerate(rows, 1)
        if any(one not in ("", None) for one in row)
    ]
    return Grid(title=title, hidden=False, rows=tuple(filled))
