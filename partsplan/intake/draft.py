"""A garage on the way: rows of values, before they are checked against each other."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from partsplan.errors import Problem
from partsplan.intake.rows import Row, Rows
from partsplan.intake.schema import Table
from partsplan.intake.settings import Settings
from partsplan.intake.settings_file import SettingsFile


@dataclass(frozen=True, slots=True)
class Draft:
    """Settings and tables as they were read; wrong values are left out.

    Attributes
    ----------
    tables
        All tables by name, also those that are empty or could not be read.
    """

    file: SettingsFile
    tables: Mapping[str, Rows]

    @property
    def settings(self) -> Settings:
        """The settings, with stand-ins for wrong ones."""
        return self.file.settings

    def rows(self, table: Table) -> tuple[Row, ...]:
        """The rows of a table."""
        return self.tables[table.name].rows

    def values(self, table: Table, column: str) -> dict[str, Any]:
        """One column by id; of a repeated id the first, without wrong or blank ones."""
        return {
            row.key[0]: row.values[column]
            for row in reversed(self.rows(table))
            if column in row.values
        }

    def having(self, table: Table, *columns: str) -> Iterator[tuple[Row, list[Any]]]:
        """Rows in which all these cells are there, and their values."""
        for row in self.rows(table):
            if all(column in row.values for column in columns):
                yield row, [row.values[column] for column in columns]

    def at(self, table: Table, row: Row, column: str, message: str) -> Problem:
        """Something wrong in one cell."""
        return Problem(self.tables[table.name].file, row.line, column, message)
