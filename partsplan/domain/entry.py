"""What somebody writes down as it happens, one fact at a time."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from fractions import Fraction


class EntryKind(StrEnum):
    """What an entry says has happened."""

    ORDERED = "ordered"
    ARRIVED = "arrived"
    FITTED = "fitted"
    CHECKED = "checked"
    DUD = "dud"
    SENT_BACK = "sent-back"
    CREDITED = "credited"
    REFUSED = "refused"
    PAID = "paid"
    MONEY_IN = "money-in"
    ODOMETER = "odometer"
    UNDONE = "undone"
    NOTE = "note"


OF_PARTS = (
    EntryKind.ORDERED,
    EntryKind.ARRIVED,
    EntryKind.FITTED,
    EntryKind.DUD,
    EntryKind.SENT_BACK,
    EntryKind.CREDITED,
    EntryKind.REFUSED,
)
"""Kinds of entries that name an option."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Happening:
    """One thing that happened, before it has a place in the logbook.

    Attributes
    ----------
    subject
        An option's id for entries of parts; a fault's id for ``checked``; a vehicle's
        for ``odometer``; for ``undone`` an entry's number, or the batch of an import.
        ``paid``, ``money-in`` and ``note`` may name an option, a tool, a vehicle, a
        fault or a supplier, or nothing.
    amount
        Money; None where the quote's own figure holds. [minor units]

        - ``ordered``: price as billed, duty and tax included, all instalments,
          without deposit and shipping (quote: landed)
        - ``fitted``: coding and consumables (quote: the same)
        - ``sent-back``: freight (quote: core_return_cost)
        - ``credited``: deposit that came back (None: all of it)
        - ``refused``: the part of the deposit that was credited nevertheless (None: 0)
        - ``checked``: what the check cost (None: check_cost of the cause)
        - ``paid``, ``money-in``: needed
    deposit
        Of ``ordered``: core deposit as billed (quote: the same). [minor units]
    hours
        Own hours spent, with ``fitted`` and ``checked``. [h]
    cause
        With ``checked``: the suspected cause.
    found
        With ``checked``: True if it was the cause, False if it is ruled out.
    reading
        With ``odometer``. [as the instrument counts]
    who
        Who did it or wrote it down.
    anyway
        Taken although it contradicts what was known.
    batch
        Entries that were imported together.
    """

    kind: EntryKind
    day: date
    subject: str = ""
    amount: int | None = None
    deposit: int | None = None
    hours: Fraction | None = None
    cause: str = ""
    found: bool | None = None
    reading: int | None = None
    who: str = ""
    text: str = ""
    anyway: bool = False
    batch: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A happening with its place in the logbook.

    Attributes
    ----------
    number
        From 1 on, in the order in which entries were written down.
    written
        When it was written down. [UTC]
    """

    number: int
    written: datetime
    what: Happening
