"""The confirmation of an entry: what was written down, and what follows from it."""

from collections.abc import Iterator, Sequence

from partsplan.domain import Entered, Entry, EntryKind, Garage, Month
from partsplan.reports.changed_by import Changed, changed_by
from partsplan.reports.consequences import consequences
from partsplan.reports.entry_words import deed, remark
from partsplan.reports.figures import day_name, listed, month_name, number, price
from partsplan.reports.page import Page

MOST_NAMED = 3
"""More entries than these are counted. [entries]"""

_AMOUNTS = {
    EntryKind.ORDERED: "price",
    EntryKind.ARRIVED: "paid at the door",
    EntryKind.FITTED: "coding and consumables",
    EntryKind.CHECKED: "the check",
    EntryKind.SENT_BACK: "freight",
    EntryKind.CREDITED: "credit",
    EntryKind.REFUSED: "credit",
}


def entered_text(entered: Entered, *, width: int = 100) -> str:
    """What was written down, its sums, and what follows."""
    garage = entered.now.standing.garage
    entry, changed = entered.entry, changed_by(entered)
    page = Page(width)
    what, said = entry.what, remark(entry.what)
    told = deed(what) + (f" ({said})" if said else "")
    page.paragraph(f"Entry {entry.number} of {day_name(what.day)}: {told}.")
    page.bullets(_figures(garage, entered))
    page.bullets(_moved(garage, entry, changed))
    page.bullets(consequences(entered))
    page.bullets(_others(changed))
    page.bullets(f"Taken although {message}." for message in entered.lifted)
    page.bullets(_left(entered, changed))
    return str(page)


def _figures(garage: Garage, entered: Entered) -> Iterator[str]:
    """Amount, deposit and hours, and which of them the quote says."""
    what, quoted = entered.entry.what, entered.quoted
    all_of_it = what.kind is EntryKind.CREDITED
    source = "all that was out" if all_of_it else "as quoted"
    figures = [
        (_AMOUNTS.get(what.kind, "amount"), "amount", what.amount),
        ("deposit", "deposit", what.deposit),
    ]
    told = [
        (label, price(garage.currency, sum_), name)
        for label, name, sum_ in figures
        if sum_ or (sum_ == 0 and name not in quoted)
    ]
    if what.hours:
        told.append(("own hours", number(what.hours), "hours"))
    if told:
        said = listed(
            f"{label} {sum_}{f' ({source})' * (name in quoted)}"
            for label, sum_, name in told
        )
        yield f"{said[0].upper()}{said[1:]}."


def _moved(garage: Garage, entry: Entry, changed: Changed) -> Iterator[str]:
    """What was spent and received, where that is not just the amount."""
    amount = entry.what.amount or 0
    for verb, moved in (("spent", changed.spent), ("received", changed.received)):
        if moved and moved != amount:
            less = " less" if moved < 0 else ""
            yield f"{price(garage.currency, abs(moved))}{less} {verb}."
    moved = changed.spent or changed.received
    if moved and Month.of(entry.what.day) < garage.start:
        yield (
            f"It is older than {month_name(garage.start)}, so it is taken to be in the "
            "opening cash already."
        )


def _others(changed: Changed) -> Iterator[str]:
    """What it does to earlier entries."""
    if changed.silenced:
        yield f"{_named(changed.silenced, 'says', 'say')} nothing any more."
    if changed.revived:
        yield f"{_named(changed.revived, 'holds', 'hold')} again."
    for flag in changed.doubts:
        yield f"Entry {flag.entry} is doubtful now: {flag.message}."


def _named(entries: Sequence[Entry], one: str, many: str) -> str:
    if len(entries) > MOST_NAMED:
        return f"{len(entries)} entries {many}"
    names = listed(
        f"{entry.number} ({deed(entry.what)}, {day_name(entry.what.day)})"
        for entry in entries
    )
    return f"Entry {names} {one}" if len(entries) == 1 else f"Entries {names} {many}"


def _left(entered: Entered, changed: Changed) -> Iterator[str]:
    """What there is to spend, if the entry has changed that."""
    now = entered.now
    owed = now.standing.ledger.dues != entered.before.dues
    if now.money is not None and (changed.spent or changed.received or owed):
        currency = now.standing.garage.currency
        month, free = month_name(now.money.month), price(currency, now.money.free)
        yield f"Free to spend in {month}: {free}."
