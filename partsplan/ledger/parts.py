"""What is said of a part from its order to its fitting, and if it is bad."""

from dataclasses import replace
from datetime import date

from partsplan.domain import (
    DepositState,
    DueKind,
    Happening,
    Month,
    PartDeposit,
    PartState,
    instalments,
)
from partsplan.ledger.book import Book
from partsplan.ledger.days import days_after
from partsplan.ledger.open_part import OpenPart


def ordered(book: Book, what: Happening) -> None:
    """A part begins; what is due at once and the deposit are spent, the rest is owed.

    After a dud under warranty it is a replacement, free unless said otherwise. What is
    still owed for the part before it, and what is still out of that one's deposit,
    stays so. If the part is there although nothing was known of its order, the order
    is taken to be that of this part: for one in hand, and one fitted on the same day.
    """
    option, quote = book.option(what.subject), book.quote(what.subject)
    before = book.parts.get(option.id)
    replaces = before is not None and before.to_be_replaced
    price = _given(what.amount, 0 if replaces else quote.landed)
    deposit = _given(what.deposit, 0 if replaces else quote.deposit)
    month = Month.of(what.day)
    fitting = month.plus(option.months_to_fitting)

    part = before
    if part is None or not _lacks_order(part, what.day):
        part = OpenPart(terms=option, ordered=what.day)
    part.ordered, part.order_known = what.day, True
    part.price, part.replaces = price, replaces
    part.deposit = _deposit(before, deposit, quote.core_return)
    book.begin(part)

    book.spend(what.day, deposit)
    for later, amount in instalments(option, price):
        if later:
            book.owe(option.id, DueKind.INSTALMENT, month.plus(later), amount)
        else:
            book.spend(what.day, amount)
    book.settle(option.id, DueKind.FITTING)
    if part.fitted is None:
        book.owe(option.id, DueKind.FITTING, fitting, quote.fitting)
    if deposit:
        back = fitting.plus(option.core_months)
        book.owe(option.id, DueKind.RETURN, back, quote.core_return)
    _old_unit_off(book, part)


def arrived(book: Book, what: Happening) -> None:
    """A part is in hand, and its warranty begins.

    Without an order it is one of which nothing was paid; after a dud that had arrived
    it is another one. Otherwise a second arrival changes nothing but the money.
    """
    book.spend(what.day, what.amount or 0)
    part = _part(book, what)
    if part.state is PartState.DUD and part.arrived is not None:
        part = OpenPart(terms=part.terms, ordered=what.day, deposit=part.deposit)
        book.begin(part)
    if part.arrived is None:
        part.arrived = what.day
    if part.state is PartState.ON_THE_WAY:
        part.state = PartState.IN_HAND


def fitted(book: Book, what: Happening) -> None:
    """A part is on the car: coding and consumables are paid, the old unit is off.

    Without an order it is one of which nothing was paid; after a dud it is another one
    that is on the car now. Fitted again it keeps its first day.
    """
    part, quote = _part(book, what), book.quote(what.subject)
    hours = part.terms.hours if what.hours is None else what.hours
    book.spend(what.day, _given(what.amount, quote.fitting))
    book.work(what.day, hours)
    book.settle(what.subject, DueKind.FITTING)
    part.hours += hours
    if part.state is not PartState.FITTED:
        part.state, part.fitted, part.failed = PartState.FITTED, what.day, None
    _old_unit_off(book, part)


def dud(book: Book, what: Happening) -> None:
    """A part is bad; if it was not fitted, its fitting costs nothing any more."""
    part = _part(book, what)
    book.settle(what.subject, DueKind.FITTING)
    part.state = PartState.DUD
    part.failed = part.failed or what.day


def _given(amount: int | None, otherwise: int) -> int:
    return otherwise if amount is None else amount


def _part(book: Book, what: Happening) -> OpenPart:
    """The part that an entry names; one without an order if there is none."""
    part = book.parts.get(what.subject)
    if part is None:
        part = OpenPart(terms=book.option(what.subject), ordered=what.day)
        book.parts[what.subject] = part
    return part


def _lacks_order(part: OpenPart, day: date) -> bool:
    """Whether an order on that day is the missing one of a part that is there."""
    if part.order_known:
        return False
    return part.state is PartState.IN_HAND or (
        part.state is PartState.FITTED and part.fitted == day
    )


def _deposit(
    before: OpenPart | None, amount: int, return_cost: int
) -> PartDeposit | None:
    """The deposit of an order, with what is still out of the one before it."""
    old = before.deposit if before is not None else None
    if old is not None and not old.open:
        old = None
    if not amount:
        return old
    return PartDeposit(
        amount=amount + (old.out if old else 0),
        state=DepositState.PAID,
        send_by=old.send_by if old else None,
        return_cost=return_cost + (old.return_cost if old else 0),
    )


def _old_unit_off(book: Book, part: OpenPart) -> None:
    """Once a part is fitted, the days count in which its old unit may be sent back."""
    deposit, option = part.deposit, part.terms
    if part.fitted is None or deposit is None or deposit.send_by is not None:
        return
    send_by = days_after(part.fitted, option.core_days)
    part.deposit = replace(deposit, send_by=send_by)
    back = Month.of(part.fitted).plus(option.core_months)
    book.put_off(option.id, DueKind.RETURN, back)
