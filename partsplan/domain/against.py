"""A plan that was kept, held against what happened."""

from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from partsplan.domain.ledger import PartState
from partsplan.domain.months import Month
from partsplan.domain.numbers import ZERO


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedJob:
    """A job as it was planned, in calendar months. [minor units], [h]"""

    option: str
    faults: tuple[str, ...]
    ordered: Month
    fitted: Month
    landed: int
    deposit: int
    hours: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedMonth:
    """What was to leave and to come back in a month, besides the budget.

    [minor units], [h]
    """

    month: Month
    out: int
    back: int
    hours: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanOnPaper:
    """A plan as its owner kept it.

    Attributes
    ----------
    number
        Its place among the kept plans, from 1 on.
    kept
        The day on which it was kept.
    months
        Each of its months; there is one or more.
    """

    number: int
    kept: date
    jobs: tuple[PlannedJob, ...]
    months: tuple[PlannedMonth, ...]

    @property
    def start(self) -> Month:
        """Its first month."""
        return self.months[0].month

    @property
    def end(self) -> Month:
        """Its last month."""
        return self.months[-1].month


@dataclass(frozen=True, slots=True, kw_only=True)
class JobDone:
    """What became of an option since a plan was kept. [minor units], [h]

    Attributes
    ----------
    state
        Of the last part that was ordered.
    ordered
        Day of the first order.
    fitted
        Day on which the last part was fitted.
    billed
        Prices of all orders since then, without deposit and shipping.
    deposit
        Paid with the last order, with what was still out of those before it.
    hours
        Own hours spent on fitting it, however often.
    orders
        How often it was ordered.
    """

    option: str
    faults: tuple[str, ...]
    state: PartState
    ordered: date
    fitted: date | None
    billed: int
    deposit: int
    hours: Fraction
    orders: int

    @property
    def on_the_car(self) -> bool:
        """Whether it is fitted."""
        return self.state is PartState.FITTED


@dataclass(frozen=True, slots=True, kw_only=True)
class JobAgainst:
    """A planned job beside what became of it.

    Attributes
    ----------
    done
        None if it was not begun.
    late
        Months from planned to real fitting, below 0 if it was earlier. Of what is not
        fitted: from the planned fitting to today, of what is not even ordered from
        the planned order; 0 if that is still to come. [months]
    instead
        Options that were not planned and were bought for the same faults.
    """

    planned: PlannedJob
    done: JobDone | None
    late: int
    instead: tuple[str, ...] = ()

    @property
    def more_money(self) -> int | None:
        """Billed beyond what was planned; None if nothing was. [minor units]"""
        return self.done.billed - self.planned.landed if self.done else None

    @property
    def more_hours(self) -> Fraction | None:
        """Spent beyond what was planned; None if it is not fitted. [h]"""
        if self.done is None or not self.done.on_the_car:
            return None
        return self.done.hours - self.planned.hours


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthAgainst:
    """A planned month beside the real one. [minor units], [h]

    Attributes
    ----------
    received
        Deposits that came back and any other money that came in.
    begun
        Whether the month has come; until then nothing can be said of it.
    """

    planned: PlannedMonth
    spent: int
    received: int
    hours: Fraction
    begun: bool

    @property
    def more_money(self) -> int:
        """Spent beyond what was planned. [minor units]"""
        return self.spent - self.planned.out


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanAgainst:
    """A whole plan against life.

    Attributes
    ----------
    today
        The day as of which it was looked at.
    unplanned
        What was ordered in the months of the plan without being in it.
    """

    plan: PlanOnPaper
    today: date
    jobs: tuple[JobAgainst, ...]
    unplanned: tuple[JobDone, ...]
    months: tuple[MonthAgainst, ...]

    @property
    def begun(self) -> tuple[MonthAgainst, ...]:
        """The months that have come."""
        return tuple(one for one in self.months if one.begun)

    @property
    def planned_out(self) -> int:
        """Of the months that have come. [minor units]"""
        return sum(one.planned.out for one in self.begun)

    @property
    def spent(self) -> int:
        """In the months that have come. [minor units]"""
        return sum(one.spent for one in self.begun)

    @property
    def planned_hours(self) -> Fraction:
        """Of the months that have come. [h]"""
        return sum((one.planned.hours for one in self.begun), ZERO)

    @property
    def hours(self) -> Fraction:
        """Spent in the months that have come. [h]"""
        return sum((one.hours for one in self.begun), ZERO)
