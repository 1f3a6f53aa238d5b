"""A plan: what is ordered when, and what follows from that."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from partsplan.domain.months import Month
from partsplan.domain.reasons import Reason
from partsplan.domain.scales import PlanStatus, Route, Stage


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """All that is decided; months count from the start of the garage.

    Attributes
    ----------
    orders
        Ordering month of each chosen option.
    tools
        Month in which each tool is bought.
    """

    orders: Mapping[str, int]
    tools: Mapping[str, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """One chosen option. [minor units], [h]

    ``bought`` says that it was ordered before the plan, so that only its fitting is
    planned; ``ordered`` may then lie before the start.
    """

    option: str
    faults: tuple[str, ...]
    route: Route
    supplier: str | None
    ordered: int
    fitted: int
    landed: int
    deposit: int
    charge: int
    hours: Fraction
    bought: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolBuy:
    """A tool that is bought. [minor units]"""

    tool: str
    month: int
    price: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """All that is ordered from one supplier in one month. [minor units]"""

    supplier: str
    month: int
    goods: int
    shipping: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LedgerLine:
    """Money and own hours of one month. [minor units], [h]"""

    month: int
    budget: int
    out: int
    back: int
    balance: int
    hours: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Stages:
    """What is optimised, one after the other."""

    missed_deadlines: int
    unsafe_vehicle_months: int
    undrivable_vehicle_months: int
    net_worth: int

    def of(self, stage: Stage) -> int:
        """The figure of one stage."""
        return {
            Stage.DEADLINES: self.missed_deadlines,
            Stage.SAFETY: self.unsafe_vehicle_months,
            Stage.MOBILITY: self.undrivable_vehicle_months,
            Stage.WORTH: self.net_worth,
        }[stage]


@dataclass(frozen=True, slots=True, kw_only=True)
class Skip:
    """An open fault that no job touches, and why.

    Attributes
    ----------
    also
        What rules its other options out, where every option is barred.
    """

    fault: str
    reason: Reason
    also: tuple[Reason, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Needs:
    """The least extra money that would make a plan possible, and when."""

    month: Month
    money: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Shortfall:
    """A demand that the plan cannot meet, and what it would take.

    Attributes
    ----------
    stage
        Deadlines, safety or mobility.
    subject
        Id of the fault, milestone or vehicle.
    faults
        The faults that stand in the way.
    months
        The months in which it is not met.
    money
        Least extra money in the first month that would do; None if no sum would, or,
        where that is not exact, if it was not worked out in the time. [minor units]
    hours
        Least extra own hours that it takes besides; 0 if money alone would do, None
        if no number would. [h]
    exact
        Whether the figures are proven least.
    """

    stage: Stage
    subject: str
    faults: tuple[str, ...]
    months: tuple[int, ...]
    money: int | None
    hours: Fraction | None
    exact: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """Choices with all their figures; months count from ``start``.

    Attributes
    ----------
    gap
        (bound - net worth) / max(1, |net worth|), earlier stages held.
    bound
        No plan with these earlier stages has a higher net worth. [minor units]
    stage_bounds
        The same for every stage.
    seconds
        Solver time. [s]
    solver
        Name and version.
    interrupted
        Whether somebody stopped the search; the best plan so far is kept.
    """

    status: PlanStatus
    start: Month
    choices: Choices
    stages: Stages
    stage_bounds: Stages
    gap: float
    bound: int
    jobs: tuple[Job, ...]
    tools: tuple[ToolBuy, ...]
    orders: tuple[Order, ...]
    ledger: tuple[LedgerLine, ...]
    seconds: float
    solver: str
    interrupted: bool = False
