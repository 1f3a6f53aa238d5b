"""Where a garage is read from: a folder or a workbook; no reader tells them apart."""

from collections.abc import Iterable
from typing import Protocol

from partsplan.errors import Problem
from partsplan.intake.document import Document
from partsplan.intake.schema import Table
from partsplan.sheets.tables import Sheet


class Source(Protocol):
    """The settings and tables of a garage as text."""

    def settings(self) -> Document:
        """The settings as they were written."""

    def sheet(self, table: Table) -> Sheet | Problem | None:
        """The rows of a table, or what keeps them from being read; None without it."""

    def file(self, table: Table) -> str:
        """What the file or sheet of a table is called."""

    def strange(self) -> Iterable[str]:
        """Names of files or sheets that could have been meant for a table."""

    def problems(self) -> Iterable[Problem]:
        """What is wrong with it as a whole."""

    def warnings(self) -> Iterable[Problem]:
        """What is odd about it as a whole."""

    def placed(self, problem: Problem) -> Problem:
        """A problem with the place at which its owner finds it."""
