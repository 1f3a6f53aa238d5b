"""What is written in a logbook, for people and as lines for other programs."""

from collections.abc import Iterator, Sequence

from partsplan.domain import Entry, Flag, Standing
from partsplan.ledger import holding
from partsplan.reports.entry_words import happened, remark
from partsplan.reports.figures import count, day_name, money
from partsplan.reports.page import Page
from partsplan.reports.records import record_lines
from partsplan.reports.tables import Column, figure, text
from partsplan.sheets import decimal


def entries_tables(
    standing: Standing, *, width: int = 100, colour: bool = False
) -> str:
    """All entries in the order in which they were written, and what is doubtful."""
    currency = standing.garage.currency
    page = Page(width, colour)
    entries = count(len(standing.entries), "entry", "entries")
    page.title(f"Logbook of {standing.garage.name}: {entries}")
    if not standing.entries:
        page.paragraph('Nothing is written down yet; "partsplan enter" does.')
        return str(page)
    hold = {entry.number for entry in holding(standing.entries)[0]}
    page.gap()
    page.table(
        "entries",
        [figure("No"), Column("Day"), text("What"), figure(currency.code)],
        [
            (
                str(entry.number),
                day_name(entry.what.day),
                _told(standing, entry, undone=entry.number not in hold),
                _amount(standing, entry),
            )
            for entry in standing.entries
        ],
    )
    doubts(page, standing.ledger.flags)
    return str(page)


def entries_plain(standing: Standing) -> str:
    """The same as records: ``entry`` and ``doubt``."""
    return record_lines(_records(standing))


def doubts(page: Page, flags: Sequence[Flag]) -> None:
    """Entries that do not fit what was known before them; nothing without any."""
    if flags:
        page.heading("Doubtful")
        page.bullets(f"Entry {flag.entry}: {flag.message}." for flag in flags)


def _told(standing: Standing, entry: Entry, *, undone: bool) -> str:
    what = entry.what
    parts = [happened(standing.garage.currency, what)]
    if said := remark(what):
        parts.append(f"({said})")
    if what.batch:
        parts.append(f"[{what.batch}]")
    if what.anyway:
        parts.append("TAKEN ANYWAY")
    if undone:
        parts.append("UNDONE")
    return " ".join(parts)


def _amount(standing: Standing, entry: Entry) -> str:
    amount = entry.what.amount
    return "" if amount is None else money(standing.garage.currency, amount)


def _records(standing: Standing) -> Iterator[Sequence[str]]:
    hold = {entry.number for entry in holding(standing.entries)[0]}
    sums = standing.garage.currency.format
    for entry in standing.entries:
        what = entry.what
        yield (
            "entry",
            str(entry.number),
            what.day.isoformat(),
            str(what.kind),
            what.subject,
            "" if what.amount is None else sums(what.amount),
            "" if what.deposit is None else sums(what.deposit),
            "" if what.hours is None else decimal(what.hours),
            what.cause,
            {None: "", True: "found", False: "ruled out"}[what.found],
            "" if what.reading is None else str(what.reading),
            what.who,
            what.text,
            what.batch,
            "anyway" if what.anyway else "",
            "" if entry.number in hold else "undone",
        )
    for flag in standing.ledger.flags:
        yield "doubt", str(flag.entry), flag.message
