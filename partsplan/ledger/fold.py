"""From entries to where things stand."""

from collections.abc import Callable, Iterable, Mapping

from partsplan.domain import Entry, EntryKind, Flag, Garage, Happening, Ledger, Quote
from partsplan.ledger.book import Book
from partsplan.ledger.core_deposits import credited, refused, sent_back
from partsplan.ledger.findings import checked, odometer
from partsplan.ledger.parts import arrived, dud, fitted, ordered
from partsplan.ledger.payments import money_in, paid
from partsplan.ledger.steps import out_of_step
from partsplan.ledger.subjects import unknown_cause, unknown_subject
from partsplan.ledger.undoing import holding

_TAKE: Mapping[EntryKind, Callable[[Book, Happening], None]] = {
    EntryKind.ORDERED: ordered,
    EntryKind.ARRIVED: arrived,
    EntryKind.FITTED: fitted,
    EntryKind.DUD: dud,
    EntryKind.SENT_BACK: sent_back,
    EntryKind.CREDITED: credited,
    EntryKind.REFUSED: refused,
    EntryKind.PAID: paid,
    EntryKind.MONEY_IN: money_in,
    EntryKind.CHECKED: checked,
    EntryKind.ODOMETER: odometer,
}


def fold(
    garage: Garage, quotes: Mapping[str, Quote], entries: Iterable[Entry]
) -> Ledger:
    """What the entries that hold say together.

    They are taken day by day, those of one day as they were written down, so that a
    corrected entry falls where the undone one was. What does not fit what was known on
    its day is taken as far as it makes sense, and flagged. ``quotes`` has the figures
    of options, which hold where an entry does not name its own.
    """
    book = Book(garage, quotes)
    kept, flags = holding(entries)
    book.flags.extend(flags)
    said = [entry for entry in kept if entry.what.kind is not EntryKind.UNDONE]
    for entry in sorted(said, key=lambda entry: entry.what.day):
        what = entry.what
        for message in _doubts(book, entry):
            book.flags.append(Flag(entry=entry.number, message=message))
        if take := _TAKE.get(what.kind):
            take(book, what)
        book.last = what.day
    return book.ledger()


def _doubts(book: Book, entry: Entry) -> Iterable[str]:
    """What does not fit; a day ahead may only be a clock of another time zone."""
    what = entry.what
    if what.day.toordinal() > entry.written.toordinal() + 1:
        yield f"it was written down on {entry.written.date()}, before {what.day}"
    if message := unknown_cause(book.garage, what):
        yield message
    if message := unknown_subject(book.garage, what):
        yield message
    else:
        yield from out_of_step(book.garage, book.parts, book.odometer, what)
