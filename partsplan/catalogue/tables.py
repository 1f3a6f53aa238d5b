"""The tables that ship with the program: where they lie, and how a row is read."""

import csv
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from pathlib import Path
from typing import TypeVar

from partsplan.errors import PartsplanError, Problem

_Fact = TypeVar("_Fact")
_Word = TypeVar("_Word", bound=Enum)

_PACKAGE = Path(__file__).resolve().parents[1]
_NUMBER = re.compile(r"[0-9]+(?:\.[0-9]+)?")


class BrokenCatalogue(PartsplanError):
    """A table of the catalogue is missing or damaged; the message says where."""


def read_table(table: str, fact: Callable[["Row"], _Fact]) -> tuple[_Fact, ...]:
    """The facts of all rows of a table, in file order.

    Raises
    ------
    BrokenCatalogue
        If the table is missing, is no CSV, or has a cell that is not as expected.
    """
    path = data_folder() / table
    try:
        with path.open(encoding="utf-8", newline="") as file:
            reader = csv.reader(file, strict=True)
            header = next(reader, [])
            lines = [(reader.line_num, cells) for cells in reader]
    except (OSError, UnicodeDecodeError, csv.Error) as error:
        reason = error.strerror if isinstance(error, OSError) else error
        raise BrokenCatalogue(
            f"the catalogue's table {path} cannot be read ({reason}); "
            "install the program again"
        ) from error
    if not lines:
        raise Row(table, 1, {}).broken("", "expected a header and rows, got none")
    return tuple(fact(_row(table, line, header, cells)) for line, cells in lines)


def data_folder() -> Path:
    """Where the tables lie: inside an installed package, else beside the package."""
    packaged = _PACKAGE / "data"
    return packaged if packaged.is_dir() else _PACKAGE.parent / "data"


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a table; the header is line 1.

    Every reader raises BrokenCatalogue when the cell is not as it expects.
    """

    table: str
    line: int
    cells: Mapping[str, str]

    def text(self, column: str) -> str:
        """The cell as it stands, blank or not."""
        if column not in self.cells:
            raise self.broken(column, "expected this column, but it is not there")
        return self.cells[column]

    def words(self, column: str) -> tuple[str, ...]:
        """The words of a list that ``;`` separates."""
        return tuple(word for word in self.text(column).split(";") if word)

    def number(self, column: str, *, most: int | None = None) -> Fraction:
        """A plain decimal number from 0 to ``most``."""
        text = self.text(column)
        number = Fraction(text) if _NUMBER.fullmatch(text) else None
        if number is None or (most is not None and number > most):
            limits = "0 or more" if most is None else f"0-{most}"
            raise self.broken(column, f'expected a number {limits}, got "{text}"')
        return number

    def whole(self, column: str, *, most: int | None = None) -> int:
        """A whole number from 0 to ``most``."""
        number = self.number(column, most=most)
        if number.denominator != 1:
            raise self.broken(
                column, f'expected a whole number, got "{self.text(column)}"'
            )
        return int(number)

    def member(self, column: str, kind: type[_Word]) -> _Word:
        """A word from a closed list."""
        return self._named(column, kind, self.text(column))

    def members(self, column: str, kind: type[_Word]) -> tuple[_Word, ...]:
        """A list of words from a closed list."""
        return tuple(self._named(column, kind, word) for word in self.words(column))

    def optional(self, column: str, read: Callable[[str], _Fact]) -> _Fact | None:
        """What ``read`` makes of the cell; None if it is blank."""
        return read(column) if self.text(column) else None

    def broken(self, column: str, message: str) -> BrokenCatalogue:
        """The error that names this row and the column."""
        return BrokenCatalogue(str(Problem(self.table, self.line, column, message)))

    def _named(self, column: str, kind: type[_Word], word: str) -> _Word:
        known = {str(one.value): one for one in kind}
        if word not in known:
            listed = ", ".join(known)
            raise self.broken(column, f'expected one of {listed}, got "{word}"')
        return known[word]


def _row(table: str, line: int, header: list[str], cells: list[str]) -> Row:
    row = Row(table, line, dict(zip(header, cells, strict=False)))
    if len(cells) != len(header):
        raise row.broken("", f"expected {len(header)} cells, got {len(cells)}")
    return row
