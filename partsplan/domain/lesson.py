"""What the logbook says of the estimates that plans are made from."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from fractions import Fraction


class Grouping(StrEnum):
    """By what parts are taken together."""

    SUPPLIER = "supplier"
    ROUTE = "route"


@dataclass(frozen=True, slots=True, kw_only=True)
class Delays:
    """How late parts arrived. [days]

    Attributes
    ----------
    cases
        Parts that were ordered and arrived.
    mean, worst
        Beyond the lead time of their quotes; below 0 if they came earlier.
    said
        Mean lead time of their quotes.
    same
        Whether all of these lead times are the same.
    """

    cases: int
    mean: Fraction
    worst: int
    said: Fraction
    same: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Duds:
    """How many parts were bad. [0-1]

    Attributes
    ----------
    cases
        Parts that arrived, were fitted or were found to be bad.
    low, high
        Ends of the Wilson interval at 90 % for the chance of a bad part.
    said
        Mean chance of a bad part by their quotes.
    """

    cases: int
    duds: int
    low: float
    high: float
    said: Fraction

    @property
    def share(self) -> Fraction:
        """Bad parts among all. [0-1]"""
        return Fraction(self.duds, self.cases)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ratio:
    """What was, by what was quoted or estimated: the mean over the cases."""

    cases: int
    mean: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """All that is known of the parts of one supplier or one route.

    Attributes
    ----------
    name
        Id of the supplier, or the route.
    cases
        Parts that were ordered.
    overdue
        Those still on the way that should have arrived; no other figure counts them.
    delays, duds, prices, hours
        None without a case.
    prices
        Billed by quoted, of parts that were not replaced under warranty.
    hours
        Own hours spent by estimated, of parts that were fitted.
    """

    grouping: Grouping
    name: str
    cases: int
    overdue: int
    delays: Delays | None
    duds: Duds | None
    prices: Ratio | None
    hours: Ratio | None


class NormColumn(StrEnum):
    """The column of options.csv that a norm is for."""

    LEAD_DAYS = "lead_days"
    DUD_CHANCE = "dud_chance"
    PRICE = "price"
    HOURS = "hours"


@dataclass(frozen=True, slots=True, kw_only=True)
class Norm:
    """Something to consider writing into the garage; nothing is done by itself.

    Attributes
    ----------
    said
        What the quotes say in the mean; 1 for ratios. [days], [0-1]
    found
        What happened in the mean, in the same unit.
    value
        What to write: a lead time, a chance, or by how much to multiply prices or
        hours; None for lead times that differ, where ``more`` is to be added.
    more
        Days to add; 0 unless it is a lead time. [days]
    cases
        How many cases are behind it.
    """

    grouping: Grouping
    name: str
    column: NormColumn
    said: Fraction
    found: Fraction
    value: Fraction | None
    more: int
    cases: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Lessons:
    """What can be learned, as of a day.

    Attributes
    ----------
    fewest
        Nothing is offered from fewer cases than this.
    """

    today: date
    lessons: tuple[Lesson, ...]
    norms: tuple[Norm, ...]
    fewest: int
