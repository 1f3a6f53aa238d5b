"""A text of headings, sentences and tables for one width, with little colour."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from partsplan.reports.csv_tables import keep
from partsplan.reports.tables import Column, table
from partsplan.reports.wrapping import prose

BOLD = "\x1b[1m"
BOLD_RED = "\x1b[1;31m"
PLAIN = "\x1b[0m"
PROSE = 100  # longer lines of prose are hard to read


@dataclass(slots=True)
class Page:
    """Collects the parts of a text; ``str`` gives it.

    Attributes
    ----------
    width
        Longest line. [characters]
    colour
        Whether headings may be bold and warnings red.
    """

    width: int = 100
    colour: bool = False
    parts: list[str] = field(default_factory=list)

    def title(self, text: str) -> None:
        """What the text is about, broken into lines."""
        lines = prose(text, min(self.width, PROSE))
        self.parts += [self._inked(line, BOLD) for line in lines]

    def heading(self, text: str, *, alarm: bool = False) -> None:
        """A line that opens a section; an alarm is red."""
        lines = prose(text, self.width)
        self.gap()
        self.parts += [self._inked(one, BOLD_RED if alarm else BOLD) for one in lines]
        self.parts.append("=" * max(map(len, lines)))

    def paragraph(self, text: str) -> None:
        """Sentences, broken into lines."""
        self.parts += prose(text, min(self.width, PROSE))

    def bullets(self, items: Iterable[str]) -> None:
        """One item a line, broken with a hanging indent."""
        for item in items:
            self.parts += prose(item, min(self.width, PROSE), hanging="- ")

    def numbered(self, items: Iterable[str]) -> None:
        """The same in an order that counts."""
        for place, item in enumerate(items, 1):
            self.parts += prose(item, min(self.width, PROSE), hanging=f"{place}. ")

    def table(
        self,
        name: str,
        columns: Sequence[Column],
        rows: Sequence[Sequence[str]],
        *,
        of: tuple[str, str] | None = None,
    ) -> None:
        """Rows under titles.

        Tables of one ``name`` are parts of one table; ``of`` is the column that tells
        this part from the others, and its value in all of these rows.
        """
        keep(name, columns, rows, of)
        self.drawn(columns, rows)

    def drawn(self, columns: Sequence[Column], rows: Sequence[Sequence[str]]) -> None:
        """Rows under titles that are only looked at."""
        self.parts.append(table(columns, rows, width=self.width))

    def gap(self) -> None:
        """One blank line, but none at the top."""
        if self.parts:
            self.parts.append("")

    def _inked(self, text: str, ink: str) -> str:
        return f"{ink}{text}{PLAIN}" if self.colour else text

    def __str__(self) -> str:
        return "\n".join(self.parts)
