"""What is said of money that is no part's order, fitting or deposit."""

from partsplan.domain import DueKind, Happening
from partsplan.ledger.book import Book


def paid(book: Book, what: Happening) -> None:
    """Money left: for an option's instalments, earliest first, as far as it goes.

    Whoever pays for a tool owns it now. Anything else is plain spending.
    """
    amount = what.amount or 0
    book.spend(what.day, amount)
    owed = book.owed(what.subject, DueKind.INSTALMENT)
    book.settle(what.subject, DueKind.INSTALMENT)
    for due in owed:
        covered = min(amount, due.amount)
        amount -= covered
        left = due.amount - covered
        book.owe(due.option, DueKind.INSTALMENT, due.month, left)
    if not owed and what.subject in book.garage.tool:
        book.tools.add(what.subject)


def money_in(book: Book, what: Happening) -> None:
    """Money came in besides the budget."""
    book.receive(what.day, what.amount or 0)
