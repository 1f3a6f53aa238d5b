"""What is said of causes that were checked, and of instruments that were read."""

from partsplan.domain import ZERO, Cause, CheckedCause, Happening
from partsplan.ledger.book import Book

_NOT_SUSPECTED = Cause(fault="", cause="", chance=ZERO)


def checked(book: Book, what: Happening) -> None:
    """A cause is found or ruled out, for money and hours as its check takes."""
    cause = book.garage.cause.get((what.subject, what.cause)) or _NOT_SUSPECTED
    book.spend(what.day, cause.check_cost if what.amount is None else what.amount)
    book.work(what.day, cause.check_hours if what.hours is None else what.hours)
    shown = CheckedCause(
        fault=what.subject, cause=what.cause, found=bool(what.found), day=what.day
    )
    book.checked.append(shown)


def odometer(book: Book, what: Happening) -> None:
    """The last reading holds, even below the one before it."""
    if what.reading is not None:
        book.odometer[what.subject] = what.reading
