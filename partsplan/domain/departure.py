"""Where a plan departs from the one that its owner meant to follow, and why."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar

from partsplan.domain.months import Month
from partsplan.domain.reasons import Reason
from partsplan.domain.scales import Stage


@dataclass(frozen=True, slots=True, kw_only=True)
class Intentions:
    """What a plan that was kept still has to order.

    Attributes
    ----------
    number
        Of the kept plan.
    start
        Its first month.
    orders
        Ordering month of each of its options that is not bought yet.
    """

    number: int
    start: Month
    orders: Mapping[str, Month]


@dataclass(frozen=True, slots=True, kw_only=True)
class DepartureReason:
    """Why an intention is not kept."""

    code: ClassVar[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Overdue(DepartureReason):
    """It was not ordered in its month, which is past."""

    code = "overdue"


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingLeft(DepartureReason):
    """Its faults are fixed or watched, or the garage has it no more."""

    code = "nothing_left"


@dataclass(frozen=True, slots=True, kw_only=True)
class RuledOut(DepartureReason):
    """It can be ordered in no month any more."""

    code = "ruled_out"
    reason: Reason


@dataclass(frozen=True, slots=True, kw_only=True)
class NotThatMonth(DepartureReason):
    """No plan can order it in that month any more."""

    code = "not_that_month"


@dataclass(frozen=True, slots=True, kw_only=True)
class CostsMore(DepartureReason):
    """Keeping it would cost so much of the first stage in which plans differ.

    Net worth in minor units; 0 where as good a plan keeps it, but fewer of the others.
    """

    code = "costs_more"
    stage: Stage
    by: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LeavesParts(DepartureReason):
    """Keeping it would leave these on the shelf, which are bought."""

    code = "leaves_parts"
    parts: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NotWorkedOut(DepartureReason):
    """There was no time to find out."""

    code = "not_worked_out"


@dataclass(frozen=True, slots=True, kw_only=True)
class Departure:
    """An intention that a plan does not keep.

    Attributes
    ----------
    planned
        The ordering month that was intended.
    now
        That of the plan; None if it leaves the option out.
    """

    option: str
    planned: Month
    now: Month | None
    reason: DepartureReason


@dataclass(frozen=True, slots=True, kw_only=True)
class Faithfulness:
    """How a plan treats the one that was kept before it.

    Attributes
    ----------
    kept
        Options ordered in the month that was intended.
    given_up
        Net worth given up to stay with it. [minor units]
    """

    intentions: Intentions
    kept: tuple[str, ...]
    departures: tuple[Departure, ...]
    given_up: int
