"""A garage in a folder: garage.toml and CSV tables."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from partsplan.errors import InvalidGarage, Problem
from partsplan.intake.columns import TABLES
from partsplan.intake.commas import has_commas, settings_with_points, sheet_with_points
from partsplan.intake.document import Document
from partsplan.intake.schema import Table
from partsplan.intake.settings import FILE
from partsplan.intake.suggest import Suggester
from partsplan.intake.toml import read_toml
from partsplan.sheets.quoting import one_line
from partsplan.sheets.tables import Sheet, read_sheet


@dataclass(frozen=True, slots=True)
class Folder:
    """A ``Source``; each table is read when it is asked for.

    Attributes
    ----------
    document
        What garage.toml says.
    """

    path: Path
    document: Document

    def settings(self) -> Document:
        """What garage.toml says."""
        return self.document

    def sheet(self, table: Table) -> Sheet | Problem | None:
        """The rows of a CSV file."""
        path = self.path / table.file
        if not path.exists() and not path.is_symlink():
            return None
        sheet = read_sheet(path, [column.name for column in table.columns])
        if isinstance(sheet, Sheet) and has_commas(self.document):
            return sheet_with_points(sheet, table)
        return sheet

    def file(self, table: Table) -> str:
        """The name of a table's file."""
        return table.file

    def strange(self) -> list[str]:
        """CSV files that are no tables."""
        known = {table.file for table in TABLES}
        return sorted(
            path.name
            for path in self.path.iterdir()
            if path.suffix.lower() == ".csv" and path.name not in known
        )

    def problems(self) -> tuple[Problem, ...]:
        """None: whatever else lies in a folder is its owner's."""
        return ()

    def warnings(self) -> Iterator[Problem]:
        """Files that are no tables, but nearly have the name of one that is absent."""
        absent = Suggester(
            table.file for table in TABLES if not (self.path / table.file).exists()
        )
        for name in self.strange():
            if near := absent.hint(name):
                yield Problem(one_line(name), 0, "", f"not read{near}")

    def placed(self, problem: Problem) -> Problem:
        """As it is: file and line."""
        return problem


def open_folder(path: Path) -> Folder:
    """The garage in a folder that is there and can be listed.

    Raises
    ------
    InvalidGarage
    """
    try:
        next(path.iterdir(), None)
        document = read_toml(path / FILE)
        if has_commas(document):
            document = settings_with_points(document)
        return Folder(path, document)
    except FileNotFoundError:
        message = "no such folder"
    except NotADirectoryError:
        message = "expected a folder, got a file"
    except OSError as error:
        message = f"cannot be read: {error.strerror}"
    except ValueError as error:
        message = f"cannot be read: {error}"
    raise InvalidGarage([Problem(one_line(str(path)), 0, "", message)])
