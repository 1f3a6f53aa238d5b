"""The money of a logbook, counted once more without looking at the ledger.

Orders and credits must name their sums, since what they cost otherwise depends on what
was before them; everything else follows from each entry alone.
"""

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from fractions import Fraction

from partsplan.domain import (
    Cause,
    Entry,
    EntryKind,
    Garage,
    Happening,
    Month,
    MonthMoney,
    Quote,
)

K = EntryKind
ALL_SPENT = (K.ARRIVED, K.FITTED, K.SENT_BACK, K.PAID, K.CHECKED)
ALL_RECEIVED = (K.CREDITED, K.REFUSED, K.MONEY_IN)


def holds(entries: Sequence[Entry], entry: Entry) -> bool:
    """Whether no later entry that holds itself undoes this one."""
    return not any(
        other.number > entry.number
        and other.what.kind is K.UNDONE
        and other.what.subject in (str(entry.number), entry.what.batch or None)
        and holds(entries, other)
        for other in entries
    )


def said(entries: Sequence[Entry]) -> list[Happening]:
    """What holds, by day."""
    kept = [entry for entry in entries if holds(entries, entry)]
    kept.sort(key=lambda entry: (entry.what.day, entry.number))
    return [entry.what for entry in kept]


def money(
    garage: Garage, quotes: Mapping[str, Quote], entries: Sequence[Entry]
) -> dict[Month, MonthMoney]:
    """What moved in each month."""
    spent, received = Counter[Month](), Counter[Month]()
    hours = defaultdict[Month, Fraction](Fraction)
    for what in said(entries):
        month = Month(what.day.year, what.day.month)
        spent[month] += _spent(garage, quotes, what)
        received[month] += (what.amount or 0) if what.kind in ALL_RECEIVED else 0
        hours[month] += _hours(garage, what)
    return {
        month: MonthMoney(
            spent=spent[month], received=received[month], hours=hours[month]
        )
        for month in sorted(spent)
        if spent[month] or received[month] or hours[month]
    }


def instalments_left(garage: Garage, entries: Sequence[Entry], option: str) -> int:
    """Instalments of an option that are still to be paid. [minor units]"""
    left = 0
    for what in said(entries):
        if what.kind is K.ORDERED and what.subject == option:
            left += (what.amount or 0) - _at_once(garage, what)
        if what.kind is K.PAID and what.subject == option:
            left = max(0, left - (what.amount or 0))
    return left


def _spent(garage: Garage, quotes: Mapping[str, Quote], what: Happening) -> int:
    if what.kind is K.ORDERED:
        return _at_once(garage, what) + (what.deposit or 0)
    if what.kind not in ALL_SPENT:
        return 0
    if what.amount is not None:
        return what.amount
    if what.kind is K.FITTED:
        return quotes[what.subject].fitting
    if what.kind is K.SENT_BACK:
        return quotes[what.subject].core_return
    return sum(cause.check_cost for cause in garage.causes if _is_of(what, cause))


def _hours(garage: Garage, what: Happening) -> Fraction:
    if what.hours is not None:
        return what.hours
    if what.kind is K.FITTED:
        return garage.option[what.subject].hours
    checks = (cause.check_hours for cause in garage.causes if _is_of(what, cause))
    return sum(checks, Fraction(0))


def _at_once(garage: Garage, what: Happening) -> int:
    """What of an order's price is due on its day; no option of these pays it last."""
    price, shares = what.amount or 0, garage.option[what.subject].instalments
    if len(shares) == 1:
        return price
    return round(price * sum(one.share for one in shares if one.months == 0))


def _is_of(what: Happening, cause: Cause) -> bool:
    named = (what.subject, what.cause) == (cause.fault, cause.cause)
    return what.kind is K.CHECKED and named
