"""The lists that ship with the program: kinds of faults and words for cells."""

from collections.abc import Mapping, Sequence

from partsplan.catalogue import FaultKind, Word
from partsplan.domain import Inspection
from partsplan.reports.page import Page
from partsplan.reports.plain_data import SCHEMA, dumped, plain
from partsplan.reports.tables import Column, figure, text


def kinds_tables(
    kinds: Sequence[FaultKind], *, width: int = 100, colour: bool = False
) -> str:
    """Fault kinds with what they usually mean."""
    page = Page(width, colour)
    if not kinds:
        page.paragraph("No kind of fault has all these words.")
        return str(page)
    page.paragraph(
        "A kind in the table of faults fills the blank cells of its fault with rough "
        "figures; --json shows them all. Risk: severity 1-4 and likelihood A-F."
    )
    columns = [
        Column("Kind"),
        text("What"),
        Column("Risk"),
        Column("Inspection"),
        figure("Driving"),
    ]
    for system in dict.fromkeys(kind.system for kind in kinds):
        page.heading(system)
        page.table(columns, [_kind(kind) for kind in kinds if kind.system is system])
    return str(page)


def words_tables(
    scales: Mapping[str, Sequence[Word]], *, width: int = 100, colour: bool = False
) -> str:
    """What the words of each list mean."""
    page = Page(width, colour)
    for name, words in scales.items():
        page.heading(name)
        page.table(
            [Column("Word"), text("Name"), text("Meaning")],
            [(word.value, word.name, word.meaning) for word in words],
        )
    return str(page)


def kinds_json(kinds: Sequence[FaultKind]) -> str:
    """Fault kinds as JSON; money in EUR."""
    return dumped({"schema": SCHEMA, "currency": "EUR", "kinds": plain(list(kinds))})


def words_json(scales: Mapping[str, Sequence[Word]]) -> str:
    """The lists of words as JSON."""
    return dumped({"schema": SCHEMA, "words": plain(scales)})


def _kind(kind: FaultKind) -> tuple[str, ...]:
    risk = "" if kind.severity is None else f"{int(kind.severity)}{kind.likelihood}"
    inspected = kind.inspection is not Inspection.NONE
    return (
        kind.key,
        kind.title,
        risk,
        kind.inspection if inspected else "",
        str(kind.drivability or ""),
    )
