"""Tables that fit the width at hand."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from tabulate import tabulate

from partsplan.reports import wrapping

BETWEEN = 2  # blanks that tabulate puts between two columns
NARROWEST = 8
NARROW_PAGE = 60
"""A page that is narrower has no room for cut words. [characters]"""
_BREAKS = re.compile(r"[ \n\t]|(?<=-)")


@dataclass(frozen=True, slots=True)
class Column:
    """One column.

    Attributes
    ----------
    right
        Whether it is set flush right, as figures are.
    wraps
        Whether long cells may be broken into lines.
    optional
        Whether it goes when all its cells are blank.
    share
        How much room it gets beside others that may be broken.
    unit
        Of its figures, for a table that stands alone; a text has it in its headings.
    once
        Whether a cell that says what the one above it says is shown blank.
    """

    title: str
    right: bool = False
    wraps: bool = False
    optional: bool = False
    share: int = 1
    unit: str = ""
    once: bool = False


def figure(title: str, *, unit: str = "", optional: bool = False) -> Column:
    """A column of figures."""
    return Column(title, right=True, unit=unit, optional=optional)


def text(title: str, *, share: int = 1, optional: bool = False) -> Column:
    """A column of words that may be broken into lines."""
    return Column(title, wraps=True, share=share, optional=optional)


def table(
    columns: Sequence[Column], rows: Sequence[Sequence[str]], *, width: int
) -> str:
    """The rows under their titles, no line longer than ``width`` where that can be.

    Cells that may wrap share what the others leave. Where there is no room for that,
    each row becomes lines of its own. [characters]
    """
    columns, rows = told(columns, rows)
    widths = _widths(columns, rows, width)
    if widths is None:
        return "\n".join(line for row in rows for line in _lines(columns, row, width))
    rows = _each_once(columns, rows)
    # tabulate pads its own headers; as rows they take no more room than they need
    lines = [[column.title for column in columns], ["-" * room for room in widths]]
    lines += [
        [_broken(cell, room) for cell, room in zip(row, widths, strict=True)]
        for row in rows
    ]
    drawn = tabulate(
        lines,
        tablefmt="plain",
        disable_numparse=True,
        colalign=["right" if column.right else "left" for column in columns],
    )
    return "\n".join(line.rstrip() for line in drawn.splitlines())


def told(
    columns: Sequence[Column], rows: Sequence[Sequence[str]]
) -> tuple[list[Column], list[list[str]]]:
    """The columns that say anything, and their cells."""
    shown = [
        place
        for place, column in enumerate(columns)
        if not column.optional or any(row[place] for row in rows)
    ]
    return (
        [columns[place] for place in shown],
        [[row[place] for place in shown] for row in rows],
    )


def _each_once(
    columns: Sequence[Column], rows: Sequence[Sequence[str]]
) -> list[list[str]]:
    """The rows, blank where a column says each thing only once."""
    return [
        [
            "" if column.once and above and above[place] == row[place] else row[place]
            for place, column in enumerate(columns)
        ]
        for above, row in zip((None, *rows), rows, strict=False)
    ]


def _lines(columns: Sequence[Column], row: Sequence[str], width: int) -> list[str]:
    """A row below its first cell, each other one beside its title."""
    first, *others = row
    lines = wrapping.prose(first, width) or [""]
    for column, cell in zip(columns[1:], others, strict=True):
        if cell:
            told = f"{column.title}: {cell}" if column.title else cell
            lines += wrapping.prose(told, width, hanging="  ")
    return lines


def _widths(
    columns: Sequence[Column], rows: Sequence[Sequence[str]], width: int
) -> list[int] | None:
    """Characters for each column; None if there is too little room for all.

    Words are cut only where nothing else helps, and never on a narrow page.
    """
    cells = [
        [column.title, *(row[place] for row in rows)]
        for place, column in enumerate(columns)
    ]
    widths = [max(map(len, column)) for column in cells]
    ways = (_longest_piece, lambda _: NARROWEST)
    for shortest in ways if width >= NARROW_PAGE else ways[:1]:
        floors = [
            max(len(column.title), shortest(cells[place]))
            if column.wraps
            else widths[place]
            for place, column in enumerate(columns)
        ]
        widths = _narrowed(columns, widths, floors, width)
        if sum(widths) + BETWEEN * (len(widths) - 1) <= width:
            return widths
    return None


def _narrowed(
    columns: Sequence[Column], widths: Sequence[int], floors: Sequence[int], width: int
) -> list[int]:
    """The widths that fit; the widest for its share gives way first."""
    found = list(widths)
    over = sum(found) + BETWEEN * (len(found) - 1) - width
    for _ in range(over):
        able = [place for place, floor in enumerate(floors) if found[place] > floor]
        if not able:
            break
        found[max(able, key=lambda place: found[place] / columns[place].share)] -= 1
    return found


def _longest_piece(cells: Sequence[str]) -> int:
    """The longest part of a word that a line break leaves whole."""
    return max(len(piece) for cell in cells for piece in _BREAKS.split(cell))


def _broken(cell: str, width: int) -> str:
    return cell if len(cell) <= width else "\n".join(wrapping.cell(cell, width))
