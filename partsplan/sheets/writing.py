"""Sheets become a workbook, as bytes.

Text stays text, whatever it begins with; a formula is never written.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from io import BytesIO
from typing import Any

from partsplan.errors import InvalidRequest
from partsplan.sheets.escapes import escaped
from partsplan.sheets.letters import letters

GENERAL = "General"
TEXT = "@"

LONGEST = 32_767
"""Most characters of a cell, counted as UTF-16 does; by ECMA-376."""

WIDEST = 48
NARROWEST = 9
"""Widths of columns. [characters]"""

_COMMENT_WIDTH = 300
_LINE_HEIGHT = 18
_COMMENT_LINE = 40
"""Size of a comment. [pixels, pixels, characters]"""


@dataclass(frozen=True, slots=True)
class Choices:
    """What a cell offers in a drop-down.

    Attributes
    ----------
    words
        What to choose from; or else
    place
        cells that hold it, such as ``vehicles!$A$2:$A$99``.
    only
        Whether nothing else may be typed.
    """

    words: tuple[str, ...] = ()
    place: str = ""
    only: bool = True


@dataclass(frozen=True, slots=True)
class Filled:
    """What stands in a cell, where its column does not say all about it."""

    value: str | Decimal | None
    number_format: str = GENERAL
    choices: Choices | None = None


Value = str | Decimal | Filled | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OutColumn:
    """The header of a column, and what is the same in all of its cells."""

    title: str
    comment: str = ""
    number_format: str = GENERAL
    choices: Choices | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OutSheet:
    """One sheet; its header stays in sight.

    ``more`` is how many blank rows below the others are to have its choices, too.
    """

    title: str
    columns: tuple[OutColumn, ...]
    rows: Sequence[Sequence[Value]]
    more: int = 0


def workbook_bytes(sheets: Iterable[OutSheet]) -> bytes:
    """The workbook of these sheets.

    Raises
    ------
    InvalidRequest
        If a text is too long for a cell.
    """
    from openpyxl import Workbook

    book = Workbook()
    book.properties.creator = "partsplan"
    book.remove(book.worksheets[0])
    for sheet in sheets:
        _write(book.create_sheet(sheet.title), sheet)
    file = BytesIO()
    book.save(file)
    return file.getvalue()


def _write(into: Any, sheet: OutSheet) -> None:
    for place, column in enumerate(sheet.columns, 1):
        _head(into, place, column)
    for line, row in enumerate(sheet.rows, 2):
        for place, (value, column) in enumerate(
            zip(row, sheet.columns, strict=True), 1
        ):
            if isinstance(value, Filled):
                _put(into, line, place, value.value, value.number_format)
                if value.choices:
                    _offer(into, value.choices, line, line, place)
            elif value is not None and value != "":
                _put(into, line, place, value, column.number_format)
    last = len(sheet.rows) + 1
    for place, column in enumerate(sheet.columns, 1):
        into.column_dimensions[letters(place)].width = _width(sheet, place - 1)
        if column.choices:
            _offer(into, column.choices, 2, last + sheet.more, place)
    into.freeze_panes = "B2"


def _head(into: Any, place: int, column: OutColumn) -> None:
    from openpyxl.comments import Comment
    from openpyxl.styles import Font

    cell = _put(into, 1, place, column.title, TEXT)
    cell.font = Font(bold=True)
    if column.comment:
        lines = sum(
            1 + len(line) // _COMMENT_LINE for line in column.comment.split("\n")
        )
        cell.comment = Comment(
            column.comment,
            "partsplan",
            height=(lines + 1) * _LINE_HEIGHT,
            width=_COMMENT_WIDTH,
        )
    # What is typed into a cell below is taken as the column says.
    into.column_dimensions[letters(place)].number_format = column.number_format


def _put(
    into: Any, line: int, place: int, value: str | Decimal | None, number_format: str
) -> Any:
    from openpyxl.styles import Alignment

    cell = into.cell(line, place)
    if isinstance(value, str):
        text = escaped(value)
        _check_length(f"{into.title}!{letters(place)}{line}", text)
        cell.value = text
        if "\n" in value:
            cell.alignment = Alignment(wrap_text=True)
        cell.data_type = "s"  # or "=1+1" would be a formula, and "#N/A" an error
    elif value is not None:
        cell.value = f"{value:f}"
        cell.data_type = "n"  # a float would be written with noise in its 16th digit
    if number_format != GENERAL:
        cell.number_format = number_format
    return cell


def _check_length(where: str, value: str) -> None:
    if len(value.encode("utf-16-le")) > 2 * LONGEST:
        raise InvalidRequest(
            f"{where}: a text of over {LONGEST:,} characters, which no cell holds"
        )


def _offer(into: Any, choices: Choices, first: int, last: int, place: int) -> None:
    from openpyxl.worksheet.datavalidation import DataValidation

    listed = ",".join(choices.words)
    validation = DataValidation(
        type="list",
        formula1=f'"{listed}"' if choices.words else choices.place,
        allow_blank=True,
        showErrorMessage=choices.only,
    )
    above = letters(place)
    validation.add(f"{above}{first}:{above}{last}")
    into.add_data_validation(validation)


def _width(sheet: OutSheet, place: int) -> int:
    """Wide enough for the header, and for most of what stands below it."""
    values = [row[place] for row in sheet.rows]
    texts = [one.value if isinstance(one, Filled) else one for one in values]
    longest = max(
        (len(line) for text in texts for line in str(text or "").split("\n")), default=0
    )
    needed = max(longest, len(sheet.columns[place].title)) + 2
    return min(max(needed, NARROWEST), WIDEST)
