"""Sections as data that a template lays out."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import ClassVar

from partsplan.reports import tables
from partsplan.reports.tables import Column


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Sentences."""

    kind: ClassVar[str] = "paragraph"
    text: str


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list in no order that counts."""

    kind: ClassVar[str] = "bullets"
    items: list[str]


@dataclass(frozen=True, slots=True)
class Table:
    """Rows under titles; the first cell of a row names it."""

    columns: Sequence[Column]
    rows: Sequence[Sequence[str]]

    @classmethod
    def of(cls, columns: Sequence[Column], rows: Sequence[Sequence[str]]) -> "Table":
        """A table without the columns that say nothing."""
        return cls(*tables.told(columns, rows))

    @property
    def wordy(self) -> bool:
        """Whether a row reads better as lines of its own where there is little room."""
        return len(self.columns) > 3 and any(one.wraps for one in self.columns)


@dataclass(frozen=True, slots=True)
class Section:
    """A heading and what stands under it."""

    heading: str
    alarm: bool = False
    blocks: list[Paragraph | Bullets] = field(default_factory=list)


@dataclass(slots=True)
class Leaf:
    """Collects sections; a paper like a text."""

    sections: list[Section] = field(default_factory=list)

    def heading(self, text: str, *, alarm: bool = False) -> None:
        """Opens a section."""
        self.sections.append(Section(text, alarm))

    def paragraph(self, text: str) -> None:
        """Sentences."""
        self.sections[-1].blocks.append(Paragraph(text))

    def bullets(self, items: Iterable[str]) -> None:
        """Sentences of a list; they join the list that was just written."""
        found, blocks = list(items), self.sections[-1].blocks
        if found and blocks and isinstance(blocks[-1], Bullets):
            blocks[-1].items.extend(found)
        elif found:
            blocks.append(Bullets(found))
