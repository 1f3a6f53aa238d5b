"""What is said of old units and of the deposits paid for them."""

from dataclasses import replace

from partsplan.domain import DepositState, DueKind, Happening, PartDeposit
from partsplan.ledger.book import Book


def sent_back(book: Book, what: Happening) -> None:
    """The old unit is under way; without a deposit only the freight counts."""
    freight = what.amount
    if freight is None:
        freight = book.quote(what.subject).core_return
    book.spend(what.day, freight)
    deposit = _deposit(book, what.subject)
    if deposit is None:
        return
    waiting = deposit.state is DepositState.PAID
    deposit = replace(
        deposit,
        state=DepositState.SENT_BACK if waiting else deposit.state,
        sent=deposit.sent or what.day,
        return_cost=0,
    )
    _keep(book, what.subject, deposit)


def credited(book: Book, what: Happening) -> None:
    """Deposit came back: all that was out of it, unless said otherwise.

    More than was out, or without a deposit, is money received nevertheless; so is what
    comes after a refusal.
    """
    deposit = _deposit(book, what.subject)
    out = deposit.out if deposit else 0
    amount = out if what.amount is None else what.amount
    book.receive(what.day, amount)
    if deposit is None:
        return
    whole = amount >= out
    deposit = replace(
        deposit,
        credited=deposit.credited + amount,
        state=DepositState.CREDITED if whole else deposit.state,
        return_cost=0 if whole else deposit.return_cost,
    )
    _keep(book, what.subject, deposit)


def refused(book: Book, what: Happening) -> None:
    """What the supplier did not credit of a deposit is lost."""
    amount = what.amount or 0
    book.receive(what.day, amount)
    deposit = _deposit(book, what.subject)
    if deposit is None:
        return
    whole = deposit.state is DepositState.CREDITED
    deposit = replace(
        deposit,
        credited=deposit.credited + amount,
        state=DepositState.CREDITED if whole else DepositState.REFUSED,
        return_cost=0,
    )
    _keep(book, what.subject, deposit)


def _deposit(book: Book, option: str) -> PartDeposit | None:
    part = book.parts.get(option)
    return part.deposit if part else None


def _keep(book: Book, option: str, deposit: PartDeposit) -> None:
    book.parts[option].deposit = deposit
    if not deposit.return_cost:
        book.settle(option, DueKind.RETURN)
