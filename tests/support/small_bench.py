"""Dice and money that the parts of a small garage share."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from random import Random

from partsplan.domain import Month


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """What is settled of a small garage before its rows are drawn.

    Attributes
    ----------
    scale
        Size of all money: 1 makes halves that need rounding common. [minor units]
    rates
        Minor units of the garage's currency for one of a named one.
    """

    dice: Random
    start: Month
    months: int
    scale: int
    currency: str
    rates: Mapping[str, Fraction]

    def some(self, share: float) -> bool:
        """True in about that share of all calls."""
        return self.dice.random() < share

    def money(self, low: int, high: int) -> int:
        """An amount of the garage's money. [minor units]"""
        return self.dice.randint(low * self.scale, high * self.scale)

    def abroad(self, amount: int, currency: str) -> int:
        """About the same amount in that currency. [minor units]"""
        return round(amount / self.rates.get(currency, Fraction(1)))

    def at_home(self, amount: Fraction | int, currency: str) -> int:
        """About the same amount in the garage's currency. [minor units]"""
        return round(amount * self.rates.get(currency, Fraction(1)))

    def fraction(self, *texts: str) -> Fraction:
        """One of these numbers."""
        return Fraction(self.dice.choice(texts))

    def month(self, first: int, last: int) -> Month:
        """A month between these two, counted from the start."""
        return self.start.plus(self.dice.randint(first, last))
