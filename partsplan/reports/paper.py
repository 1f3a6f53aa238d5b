"""What sections are written on: lines of text, or a page for a browser."""

from collections.abc import Iterable, Sequence
from typing import Protocol

from partsplan.reports.tables import Column


class Paper(Protocol):
    """Takes headings, sentences and tables in the order in which they are read."""

    def heading(self, text: str, *, alarm: bool = False) -> None:
        """Opens a section; an alarm stands out."""

    def paragraph(self, text: str) -> None:
        """Sentences."""

    def bullets(self, items: Iterable[str]) -> None:
        """A list of sentences, in no order that counts."""

    def table(self, columns: Sequence[Column], rows: Sequence[Sequence[str]]) -> None:
        """Rows under titles."""
