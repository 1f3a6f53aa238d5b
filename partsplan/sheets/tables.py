"""CSV files as rows of text, each with its line.

The standard csv module, not pandas: it knows the line of every row, which every message
names, and a check of a garage must not wait for pandas to be imported.
"""

import csv
import io
from collections import Counter
from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace
from itertools import chain, islice
from pathlib import Path

from partsplan.errors import Problem
from partsplan.sheets.files import read_text
from partsplan.sheets.quoting import shown

SEPARATORS = ",;\t"

_END = "\0"
"""A last row of our own: a cell that is never closed swallows it."""


@dataclass(frozen=True, slots=True)
class Record:
    """The cells of one row, spaces around them gone, and the line it starts in."""

    line: int
    cells: list[str]


@dataclass(frozen=True, slots=True)
class Sheet:
    """One table as text; the names of its columns are in small letters.

    Attributes
    ----------
    stray
        Cells of rows that have another number of cells than the header.
    whole
        Whether it could be read to its end.
    """

    file: str
    header: Record
    records: tuple[Record, ...]
    problems: tuple[Problem, ...] = ()
    stray: frozenset[str] = frozenset()
    whole: bool = True


def read_sheet(path: Path, known: Collection[str]) -> Sheet | Problem:
    """The rows of a CSV file whose columns have about the ``known`` names.

    Comma, semicolon or tab separate; the header tells which. Blank rows are left out,
    rows with another number of cells than the header are problems.
    """
    text = read_text(path)
    if isinstance(text, Problem):
        return text
    first, *rest = (*_records(text, separator(text, known)), None)
    if first is None:
        named = ", ".join([*islice(known, 3), "..."])
        return Problem(path.name, 0, "", f"empty; expected a header like {named}")
    if isinstance(first, Problem):
        return replace(first, file=path.name)
    header = Record(first.line, [name.lower() for name in first.cells])
    records: list[Record] = []
    stray: set[str] = set()
    problems = list(_check_header(path.name, header))
    for row in rest:
        if isinstance(row, Problem):
            problems.append(replace(row, file=path.name))
        elif row and len(row.cells) != len(header.cells):
            message = f"expected {len(header.cells)} cells, got {len(row.cells)}"
            if len(row.cells) > len(header.cells):
                message += "; a cell with a separator in it needs quotes"
            problems.append(Problem(path.name, row.line, "", message))
            stray.update(row.cells)
        elif row:
            records.append(row)
    return Sheet(
        path.name,
        header,
        tuple(records),
        tuple(problems),
        frozenset(stray),
        whole=not any(isinstance(row, Problem) for row in rest),
    )


def separator(text: str, known: Collection[str]) -> str:
    """The separator that finds most known names in the first line with text."""
    first = next((line for line in io.StringIO(text) if line.strip()), "")

    def found(separator: str) -> tuple[int, int]:
        names = [name.strip().strip('"').lower() for name in first.split(separator)]
        return len(set(names) & set(known)), len(names)

    return max(SEPARATORS, key=found)


def _records(text: str, separator: str) -> Iterator[Record | Problem]:
    """Rows that are not blank; a problem, its file not named yet, ends them."""
    lines = chain(io.StringIO(text), (_END,))
    reader = csv.reader(lines, delimiter=separator, skipinitialspace=True)
    line = 1
    try:
        for cells in reader:
            if cells == [_END]:
                return
            if cells and cells[-1].endswith(_END):
                yield Problem("", line, "", "a quoted cell of this row never ends")
                return
            cells = [cell.strip() for cell in cells]
            if any(cells):
                yield Record(line, cells)
            line = reader.line_num + 1
    except csv.Error:
        longest = f"{csv.field_size_limit():,}"
        message = f"expected cells of at most {longest} characters; a missing quote?"
        yield Problem("", line, "", message)


def _check_header(file: str, header: Record) -> Iterator[Problem]:
    for name, times in Counter(header.cells).items():
        if not name:
            yield Problem(file, header.line, "", "a column has no name")
        elif times > 1:
            message = f"expected each column once, got {times} named {shown(name)}"
            yield Problem(file, header.line, "", message)
