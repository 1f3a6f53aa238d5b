"""A vehicle and the milestones that wait for it."""

from dataclasses import dataclass

from partsplan.domain.months import Month
from partsplan.domain.scales import Use

LONG_AGO = Month(1900, 1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Vehicle:
    """One vehicle; it is gone from month ``keep_months`` on, counted from the start.

    Attributes
    ----------
    driven_from
        First month in which it is driven; None if it is not driven at all.
    value
        What it would fetch as it stands. [minor units]
    """

    id: str
    name: str
    year: int | None = None
    use: Use = Use.DAILY
    keep_months: int = 36
    driven_from: Month | None = LONG_AGO
    value: int | None = None
    notes: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Milestone:
    """A month in which all of these faults are to be cured."""

    id: str
    month: Month
    faults: tuple[str, ...]
    title: str = ""
