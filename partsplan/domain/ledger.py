"""Where things stand, folded from what happened."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from fractions import Fraction

from partsplan.domain.months import Month


@dataclass(frozen=True, slots=True, kw_only=True)
class Quote:
    """What entries of an option cost where they do not say it. [minor units]

    Attributes
    ----------
    landed
        The order, duty and tax included, without deposit and shipping.
    fitting
        Coding, if it is paid, and consumables.
    core_return
        Sending the old unit back; 0 without a deposit.
    """

    landed: int = 0
    deposit: int = 0
    fitting: int = 0
    core_return: int = 0


class PartState(StrEnum):
    """How far a part that was ordered has come."""

    ON_THE_WAY = "on the way"
    IN_HAND = "in hand"
    FITTED = "fitted"
    DUD = "dud"


class DepositState(StrEnum):
    """What has become of a core deposit."""

    PAID = "paid"  # the old unit is still on the car, or on the bench
    SENT_BACK = "sent back"
    CREDITED = "credited"
    REFUSED = "refused"


@dataclass(frozen=True, slots=True, kw_only=True)
class PartDeposit:
    """The core deposit of a part. [minor units]

    Attributes
    ----------
    send_by
        Last day on which the old unit may be sent back; None until the part is fitted.
    sent
        Day on which it was sent back.
    return_cost
        Freight still to be paid; 0 once it was sent.
    credited
        What came back so far.
    """

    amount: int
    state: DepositState
    send_by: date | None
    return_cost: int
    credited: int = 0
    sent: date | None = None

    @property
    def out(self) -> int:
        """What did not come back yet, whether or not it still can. [minor units]"""
        return max(0, self.amount - self.credited)

    @property
    def open(self) -> bool:
        """Whether money may still come back without anybody relenting."""
        return self.state in (DepositState.PAID, DepositState.SENT_BACK)


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One option that was ordered, the last time it was.

    Attributes
    ----------
    price
        As billed. [minor units]
    expected
        Day on which it should arrive, or did.
    warranty_until
        Last day under warranty, counted from the day it arrived, else from the day it
        was ordered; None without a warranty.
    hours
        Own hours it took. [h]
    failed
        Day on which it was found to be a dud.
    replaces
        Whether it was ordered under warranty for a dud.
    order_known
        False if no entry of its order holds; it is then dated by the first thing that
        was heard of it.
    """

    option: str
    state: PartState
    ordered: date
    expected: date
    arrived: date | None
    fitted: date | None
    failed: date | None
    price: int
    warranty_until: date | None
    hours: Fraction
    deposit: PartDeposit | None
    replaces: bool = False
    order_known: bool = True

    @property
    def to_be_replaced(self) -> bool:
        """Whether it is a dud that failed while it was under warranty."""
        if self.failed is None or self.warranty_until is None:
            return False
        return self.failed <= self.warranty_until


class DueKind(StrEnum):
    """For what money is still to be paid."""

    INSTALMENT = "instalment"
    FITTING = "coding and consumables"
    RETURN = "return of the old unit"


@dataclass(frozen=True, slots=True, kw_only=True)
class Due:
    """Money that will leave for what was ordered already. [minor units]

    Attributes
    ----------
    month
        When; for fittings and returns the month in which they are expected.
    """

    option: str
    kind: DueKind
    month: Month
    amount: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthMoney:
    """What really moved in a month. [minor units], [h]"""

    spent: int = 0
    received: int = 0
    hours: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedCause:
    """What a check showed."""

    fault: str
    cause: str
    found: bool
    day: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Flag:
    """An entry that does not fit what was known before it, and why."""

    entry: int
    message: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Objection:
    """What is wrong with a new entry.

    Attributes
    ----------
    message
        One sentence that says what was expected.
    liftable
        Whether it may be entered anyway.
    """

    message: str
    liftable: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Ledger:
    """Everything that entries say together; undone ones say nothing.

    Attributes
    ----------
    money
        By calendar month, of months in which anything moved.
    parts
        By option, the last one of each.
    earlier
        Parts after which another one of their option was ordered, in the order in which
        that happened. What was still out of their deposits went on to the next one.
    dues
        Not yet paid, by month.
    tools
        Tools that were paid for.
    odometer
        Last reading of each vehicle.
    last
        Day of the latest entry that holds; None without any.
    """

    money: Mapping[Month, MonthMoney]
    parts: Mapping[str, Part]
    dues: tuple[Due, ...]
    checked: tuple[CheckedCause, ...]
    tools: frozenset[str]
    odometer: Mapping[str, int]
    flags: tuple[Flag, ...]
    last: date | None
    earlier: tuple[Part, ...] = ()
