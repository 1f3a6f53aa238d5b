"""Two plans side by side: what is different, and which inputs make it so."""

from dataclasses import dataclass
from enum import StrEnum

from partsplan.domain.garage import Garage
from partsplan.domain.months import Month
from partsplan.domain.plan import Job, LedgerLine, Needs, Plan, Skip, ToolBuy
from partsplan.domain.scales import Stage
from partsplan.domain.whatif import Change, Parking


class JobFact(StrEnum):
    """What can differ in a job that both plans have."""

    OPTION = "option"
    ROUTE = "route"
    SUPPLIER = "supplier"
    ORDERED = "ordered"
    FITTED = "fitted"
    PRICE = "landed"
    DEPOSIT = "deposit"
    CHARGE = "charge"
    HOURS = "hours"


@dataclass(frozen=True, slots=True, kw_only=True)
class JobShift:
    """The same faults mended in both plans, but not in the same way."""

    before: Job
    after: Job
    facts: tuple[JobFact, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StageDifference:
    """What both plans reach in one stage; net worth in minor units.

    Attributes
    ----------
    certain
        Whether the difference is larger than what may be missing in the two plans.
    """

    stage: Stage
    before: int
    after: int
    certain: bool

    @property
    def change(self) -> int:
        """What the second plan has more."""
        return self.after - self.before


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthDifference:
    """Money of one calendar month in both plans; None where a plan has it not."""

    month: Month
    before: LedgerLine | None
    after: LedgerLine | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanDifference:
    """How a second plan differs from a first; its jobs count months by its garage.

    Attributes
    ----------
    enter, leave
        Jobs, and likewise tools, that only the second or only the first has.
    shifts
        Jobs of both that differ.
    stages
        All stages, in the order of the first garage.
    left
        Faults that only the second leaves alone.
    taken_up
        Faults that only the first leaves alone, and that are still open.
    otherwise_worth
        Faults of some job whose months count for more in one garage than in the other:
        as long as there are any, the two net worths are counted from different starts.
    """

    enter: tuple[Job, ...]
    leave: tuple[Job, ...]
    shifts: tuple[JobShift, ...]
    tools_enter: tuple[ToolBuy, ...]
    tools_leave: tuple[ToolBuy, ...]
    stages: tuple[StageDifference, ...]
    money: tuple[MonthDifference, ...]
    left: tuple[Skip, ...]
    taken_up: tuple[Skip, ...]
    otherwise_worth: tuple[str, ...]

    @property
    def empty(self) -> bool:
        """Whether both plans do the same and reach the same."""
        return not (
            self.enter
            or self.leave
            or self.shifts
            or self.tools_enter
            or self.tools_leave
            or self.left
            or self.taken_up
            or any(one.change for one in self.stages)
            or any(_without_place(one) for one in self.money)
        )

    @property
    def same_jobs(self) -> bool:
        """Whether both do the same jobs, in the same months and by the same option."""
        moved = {JobFact.OPTION, JobFact.ORDERED, JobFact.FITTED}
        return not (
            self.enter
            or self.leave
            or any(moved.intersection(one.facts) for one in self.shifts)
        )


def _without_place(one: MonthDifference) -> bool:
    """Whether a month's money differs."""
    if one.before is None or one.after is None:
        return True
    sums = [
        (line.budget, line.out, line.back, line.balance)
        for line in (one.before, one.after)
    ]
    return sums[0] != sums[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class Input:
    """One thing that two garages say differently.

    Attributes
    ----------
    table
        ``garage`` for a setting, else the table's name.
    row
        Id of the row; empty for a setting.
    column
        The setting or column; empty where only one garage has the row.
    before, after
        The values; None where a garage has not got the row.
    """

    table: str
    row: str = ""
    column: str = ""
    before: object = None
    after: object = None


class Found(StrEnum):
    """What a search for the cheapest explanation came to."""

    ALIKE = "alike"
    """Neither needed: the first garage's plan could as well be the second plan."""
    EXPLAINED = "explained"
    """These inputs alone lead to the second plan's jobs."""
    UNEXPLAINED = "unexplained"
    """Every input was tried alone, and none does."""
    CUT_SHORT = "cut_short"
    """Time or tries ran out before every input had been tried alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Why:
    """Which few of the differing inputs make the difference.

    Attributes
    ----------
    parts
        The inputs that explain it, as few as were found; empty if none do.
    among
        How many inputs differ.
    tries
        How many times a plan was made to find out.
    """

    found: Found
    parts: tuple[Change | Input, ...]
    among: int
    tries: int


@dataclass(frozen=True, slots=True, kw_only=True)
class TwoPlans:
    """Two garages, their plans, and how these differ.

    Attributes
    ----------
    plan, other_plan
        A sound plan, or the money it needs; None where no plan does all that is asked.
    difference
        None unless both have a plan.
    why
        None where there was nothing to explain, or no time.
    parking, other_parking
        Vehicles that the plans leave unsafe to drive.
    spared
        What the second plan would leave unsafe if it parked no more vehicles than the
        first garage does.
    """

    garage: Garage
    plan: Plan | Needs | None
    other_garage: Garage
    other_plan: Plan | Needs | None
    difference: PlanDifference | None = None
    why: Why | None = None
    parking: tuple[Parking, ...] = ()
    other_parking: tuple[Parking, ...] = ()
    spared: tuple[Parking, ...] = ()
