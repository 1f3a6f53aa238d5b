"""What a column and a table of a garage are."""

from dataclasses import dataclass
from typing import Any

from partsplan.intake.cells import IDENT, NOTES, Kind

MOST_MONTHS = 600
"""Longest time that a cell may hold. [months]"""

MOST_DAYS = 3650
"""Longest delivery or return that a cell may hold. [days]"""


@dataclass(frozen=True, slots=True)
class Column:
    """One column.

    Attributes
    ----------
    meaning
        With its unit in brackets, for its reader.
    default
        What a blank cell means, as text that could stand in it; "" if it means nothing.
    blank
        What a blank cell means, in words, where no text says it.
    refers
        Table whose ids it names.
    own_money
        Whether its amounts are in the currency of the row, not of the garage.
    """

    name: str
    kind: Kind
    meaning: str
    default: str = ""
    blank: str = ""
    needed: bool = False
    refers: str = ""
    own_money: bool = False


@dataclass(frozen=True, slots=True)
class Table:
    """One table; ``key`` names the columns that tell its rows apart."""

    name: str
    meaning: str
    makes: type[Any]
    columns: tuple[Column, ...]
    needed: bool = False
    key: tuple[str, ...] = ("id",)

    @property
    def file(self) -> str:
        """The file it stands in."""
        return f"{self.name}.csv"


ID = Column("id", IDENT, "name of the row; other tables use it", needed=True)
NOTE = Column("notes", NOTES, "anything worth knowing")
