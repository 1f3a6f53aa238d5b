"""A garage after all that has happened, and what one more entry changes in it."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from partsplan.domain.duty import Duty
from partsplan.domain.entry import Entry
from partsplan.domain.garage import Garage
from partsplan.domain.ledger import Due, Ledger, Quote
from partsplan.domain.month_money import MoneyNow


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """A garage and what happened.

    Attributes
    ----------
    entries
        All of the logbook, undone ones too, by number.
    quotes
        By option.
    ledger
        What the entries say together.
    """

    garage: Garage
    entries: tuple[Entry, ...]
    quotes: Mapping[str, Quote]
    ledger: Ledger


@dataclass(frozen=True, slots=True, kw_only=True)
class Now:
    """Where things stand on a day, and what is to be done.

    Attributes
    ----------
    money
        Of the month; None before the garage's first.
    dues
        What is still to be paid.
    """

    standing: Standing
    today: date
    duties: tuple[Duty, ...]
    money: MoneyNow | None
    dues: tuple[Due, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Entered:
    """An entry that was written down, and what stood before it.

    Attributes
    ----------
    quoted
        Its fields that were left out and taken from the quote.
    lifted
        What spoke against it.
    """

    entry: Entry
    quoted: tuple[str, ...]
    lifted: tuple[str, ...]
    before: Ledger
    now: Now


@dataclass(frozen=True, slots=True, kw_only=True)
class BroughtIn:
    """Past spending that was written down as one batch."""

    garage: Garage
    batch: str
    entries: tuple[Entry, ...]
