"""What each monthly sum would buy."""

from dataclasses import dataclass

from partsplan.domain.plan import Needs, Stages


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """The outcome of the best plan for one monthly sum.

    Attributes
    ----------
    jobs
        The chosen options, in file order.
    open_faults
        Open faults that are not cured in the last month that counts for them.
    gap
        What may be missing of the net worth. [fraction]
    proven
        Whether no plan is better by more than the gap that was asked for.
    """

    stages: Stages
    jobs: tuple[str, ...]
    open_faults: tuple[str, ...]
    gap: float
    proven: bool

    def same_jobs(self, other: "Bought") -> bool:
        """Whether the jobs and all that is counted agree; months may have moved."""
        return self._told == other._told

    @property
    def _told(self) -> tuple[object, ...]:
        stages = self.stages
        return (
            self.jobs,
            self.open_faults,
            stages.missed_deadlines,
            stages.unsafe_vehicle_months,
            stages.undrivable_vehicle_months,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class BudgetPoint:
    """One monthly sum that was tried. [minor units a month]

    Attributes
    ----------
    found
        What it buys, or the money without which there is no plan.
    """

    budget: int
    found: Bought | Needs

    def same_plan(self, other: "BudgetPoint") -> bool:
        """Whether both sums do the same jobs, or both allow no plan."""
        mine, theirs = self.found, other.found
        if isinstance(mine, Needs) or isinstance(theirs, Needs):
            return isinstance(mine, Needs) and isinstance(theirs, Needs)
        return mine.same_jobs(theirs)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stay:
    """Monthly sums over which a job stays in the plan. [minor units a month]

    Attributes
    ----------
    first, last
        The smallest and the largest sum tried that has it.
    below, above
        The nearest sums tried that do without; None where it has no end within reach.
    """

    option: str
    first: int
    last: int
    below: int | None
    above: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class BudgetCurve:
    """The best plans for growing monthly sums, each found by planning.

    Attributes
    ----------
    points
        Every sum that was tried, ascending.
    stays
        Where each job enters and leaves, by its first sum; a job that leaves and comes
        back has several.
    resolution
        How closely the changes were to be placed; None if the sums were given.
        [minor units a month]
    finished
        Whether every change lies within the resolution.
    interrupted
        Whether somebody stopped the search; what was known by then is here.
    """

    points: tuple[BudgetPoint, ...]
    stays: tuple[Stay, ...]
    resolution: int | None
    finished: bool
    interrupted: bool

    @property
    def changes(self) -> tuple[BudgetPoint, ...]:
        """The first point and each that does other jobs than the one before it."""
        before = (None, *self.points[:-1])
        return tuple(
            point
            for point, last in zip(self.points, before, strict=True)
            if last is None or not point.same_plan(last)
        )
