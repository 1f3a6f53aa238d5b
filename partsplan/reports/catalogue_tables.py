"""The lists that ship with the program: kinds of faults and words for cells."""

from collections.abc import Mapping, Sequence
from typing import Any

from partsplan.catalogue import (
    FaultKind,
    Word,
    codes_for,
    kind_checks,
    kind_links,
)
from partsplan.domain import Inspection
from partsplan.reports.kind_tables import kind_page
from partsplan.reports.page import Page
from partsplan.reports.plain_data import SCHEMA, dumped, plain
from partsplan.reports.tables import Column, figure, text


def kinds_tables(
    kinds: Sequence[FaultKind], *, width: int = 100, colour: bool = False
) -> str:
    """Fault kinds with what they usually mean; a single one in detail."""
    page = Page(width, colour)
    if not kinds:
        page.paragraph("No kind of fault has all these words.")
        return str(page)
    if len(kinds) == 1:
        kind_page(kinds[0], page)
        return str(page)
    page.paragraph(
        "A kind in the table of faults fills the blank cells of its fault with rough "
        "figures; one kind by name is shown with all of them. Risk: severity 1-4 and "
        "likelihood A-F."
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
        page.table(
            "kinds",
            columns,
            [_kind(kind) for kind in kinds if kind.system is system],
            of=("System", system.value),
        )
    return str(page)


def words_tables(
    scales: Mapping[str, Sequence[Word]], *, width: int = 100, colour: bool = False
) -> str:
    """What the words of each list mean."""
    page = Page(width, colour)
    for name, words in scales.items():
        page.heading(name)
        page.table(
            "words",
            [Column("Word"), text("Name"), text("Meaning")],
            [(word.value, word.name, word.meaning) for word in words],
            of=("List", name),
        )
    return str(page)


def kinds_json(kinds: Sequence[FaultKind]) -> str:
    """Fault kinds as JSON, with their links, checks and codes; money in EUR."""
    found = [_kind_data(kind) for kind in kinds]
    return dumped({"schema": SCHEMA, "currency": "EUR", "kinds": found})


def words_json(scales: Mapping[str, Sequence[Word]]) -> str:
    """The lists of words as JSON."""
    return dumped({"schema": SCHEMA, "words": plain(scales)})


def _kind_data(kind: FaultKind) -> dict[str, Any]:
    links = [one for one in kind_links() if kind.key in (one.kind, one.other)]
    return {
        **plain(kind),
        "links": plain(links),
        "checks": plain(kind_checks().get(kind.key, ())),
        "codes": plain(codes_for(kind.key)),
    }


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
