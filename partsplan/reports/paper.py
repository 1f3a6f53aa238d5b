"""What sections are written on: lines of text, or a page for a browser."""

from collections.abc import Iterable
from typing import Protocol


class Paper(Protocol):
    """Takes headings and sentences in the order in which they are read."""

    def heading(self, text: str, *, alarm: bool = False) -> None:
        """Opens a section; an alarm stands out."""

    def paragraph(self, text: str) -> None:
        """Sentences."""

    def bullets(self, items: Iterable[str]) -> None:
        """A list of sentences, in no order that counts."""
