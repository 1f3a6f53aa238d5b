"""An option with its price, and the same for one ordering month."""

from dataclasses import dataclass
from fractions import Fraction

from partsplan.domain.option import Option


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """What an option costs, in the garage's currency. [minor units]

    Attributes
    ----------
    goods
        Price times quantity, before duty and tax.
    landed
        Goods, duty and tax.
    deposit
        Core deposits of all pieces, paid with the order.
    core_return
        Sending the old units back.
    coding
        Paid coding.
    own_hours
        Own hours at the worth of an hour; not rounded.
    lost_deposit
        Deposit times the chance that it is lost; not rounded.
    duds
        Expected cost of bad parts; not rounded.
    expected
        The expected cost of all that.
    """

    goods: int
    duty: int
    tax: int
    landed: int
    deposit: int
    core_return: int
    coding: int
    consumables: int
    own_hours: Fraction
    lost_deposit: Fraction
    duds: Fraction
    expected: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Flow:
    """Money of one month. [minor units]"""

    month: int
    out: int = 0
    back: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """An option priced for one ordering month; months count from the start.

    Attributes
    ----------
    ordered, fitted
        Ordering and fitting month.
    until
        First month in which it is no longer in force or no longer counts.
    charge
        The share of its expected cost that the plan bears. [minor units]
    flows
        Money out and back within the horizon, by month.
    faults
        The open faults it names.
    """

    option: Option
    price: Price
    ordered: int
    fitted: int
    until: int
    charge: int
    flows: tuple[Flow, ...]
    faults: tuple[str, ...]
