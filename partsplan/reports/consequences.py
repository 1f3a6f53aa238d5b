"""What follows from an entry, as sentences."""

from collections.abc import Iterable, Iterator

from partsplan.domain import (
    Due,
    DueKind,
    Entered,
    EntryKind,
    Garage,
    Happening,
    Part,
    Standing,
)
from partsplan.reports.figures import day_name, listed, month_name, price
from partsplan.reports.names import fault_name, of_workshop, option_is_flagged


def consequences(entered: Entered) -> Iterator[str]:
    """What is owed, to be done or known now."""
    standing, what = entered.now.standing, entered.entry.what
    part = standing.ledger.parts.get(what.subject)
    match what.kind:
        case EntryKind.ORDERED if part:
            yield from _ordered(standing, part)
        case EntryKind.ARRIVED if part:
            if part.warranty_until:
                yield f"Its warranty ends on {day_name(part.warranty_until)}."
        case EntryKind.FITTED if part:
            yield from _fitted(standing.garage, part)
        case EntryKind.DUD if part:
            yield _dud(part)
        case EntryKind.SENT_BACK | EntryKind.CREDITED | EntryKind.REFUSED if part:
            yield from _deposit(standing.garage, part, what)
        case EntryKind.PAID:
            yield from _paid(entered, what)
        case EntryKind.CHECKED:
            yield from _checked(standing, what)


def _ordered(standing: Standing, part: Part) -> Iterator[str]:
    garage = standing.garage
    if part.replaces:
        charge = "no charge" if not part.price else "charged nevertheless"
        yield f"{part.option} has come under warranty, {charge}."
    if part.arrived is None and part.fitted is None:
        come = "be done" if of_workshop(garage, part.option) else "arrive"
        yield f"It should {come} by {day_name(part.expected)}."
    supplier = garage.option[part.option].supplier
    if supplier and garage.supplier[supplier].shipping and not part.replaces:
        yield (
            "Shipping is not in it; enter it by itself: "
            f'"paid {supplier} --amount AMOUNT".'
        )
    owed = [due for due in standing.ledger.dues if due.option == part.option]
    yield from _still_to_pay(garage, owed)


def _fitted(garage: Garage, part: Part) -> Iterator[str]:
    deposit = part.deposit
    if deposit and deposit.send_by and deposit.open and deposit.sent is None:
        lost = price(garage.currency, deposit.out)
        yield f"Send the old unit back by {day_name(deposit.send_by)} or lose {lost}."
    if option_is_flagged(garage, part.option):
        yield "Work for a licensed person, or to be checked by one."


def _dud(part: Part) -> str:
    until = day_name(part.warranty_until) if part.warranty_until else ""
    if part.to_be_replaced:
        return (
            f"It is under warranty until {until}: claim it. Ordered again, it is taken "
            "to cost nothing unless an amount is given."
        )
    return f"Its warranty ended on {until}." if until else "It has no warranty."


def _deposit(garage: Garage, part: Part, what: Happening) -> Iterator[str]:
    deposit = part.deposit
    if deposit is None:
        return
    out = price(garage.currency, deposit.out)
    if what.kind is EntryKind.SENT_BACK:
        yield f"{out} should come back."
    elif what.kind is EntryKind.REFUSED:
        yield f"{out} of the deposit are lost."
    elif deposit.out:
        yield f"{out} of the deposit are still out."
    else:
        yield "All of the deposit is back."


def _paid(entered: Entered, what: Happening) -> Iterator[str]:
    standing = entered.now.standing
    instalments = [
        [
            due
            for due in ledger.dues
            if due.option == what.subject and due.kind is DueKind.INSTALMENT
        ]
        for ledger in (entered.before, standing.ledger)
    ]
    before, after = instalments
    if before and not after:
        yield f"All instalments of {what.subject} are paid."
    if before:
        yield from _still_to_pay(standing.garage, after)
    if what.subject in standing.ledger.tools - entered.before.tools:
        yield f"{what.subject} is yours now."


def _checked(standing: Standing, what: Happening) -> Iterator[str]:
    garage, checked = standing.garage, standing.ledger.checked
    suspected = [one for one in garage.causes if one.fault == what.subject]
    if what.found:
        cures = [one.cure for one in suspected if one.cause == what.cause and one.cure]
        yield from (f"Its cure: {cure}." for cure in cures)
        return
    seen = {one.cause for one in checked if one.fault == what.subject}
    left = [f'"{one.cause}"' for one in suspected if one.cause not in seen]
    if left:
        fault = fault_name(garage.fault[what.subject])
        yield f"Not yet checked of {fault}: {listed(left)}."


def _still_to_pay(garage: Garage, owed: Iterable[Due]) -> Iterator[str]:
    said = [
        f"{price(garage.currency, due.amount)} in {month_name(due.month)} ({due.kind})"
        for due in owed
    ]
    if said:
        yield f"Still to pay: {listed(said)}."
