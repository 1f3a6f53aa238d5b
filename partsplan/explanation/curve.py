"""What each monthly sum would buy, and where one more changes the plan."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise

from partsplan.domain import (
    Bought,
    BudgetCurve,
    BudgetPoint,
    Choices,
    FaultStatus,
    Garage,
    Needs,
    Plan,
    PlanStatus,
    Stay,
)
from partsplan.explanation.questions import AskAll, Question
from partsplan.explanation.steps import middle
from partsplan.explanation.ties import as_good, fits_as_many, missing
from partsplan.planning import Limits, must_be
from partsplan.verification import Facts

STRIDES = (4, 2, 1)
"""Every fourth sum is planned first, so that those between have a plan below them."""


def curve(
    garage: Garage,
    budgets: Sequence[int],
    ask: AskAll,
    *,
    limits: Limits,
    resolution: int | None = None,
    most_plans: int = 0,
) -> BudgetCurve:
    """The best plan for each monthly sum, and for sums between where plans differ.

    Each sum stands for the budget of every month; the worth of a point stays as it is.
    Each plan starts from the choices of the one below, which more money never forbids,
    and those are kept where they are as good as can be proven.

    Parameters
    ----------
    budgets
        Sums to try in any case. [minor units a month]
    resolution
        How closely to place each change; None leaves it at ``budgets``.
        [minor units a month]
    most_plans
        No sum between is tried once there are that many.

    Raises
    ------
    SolverFailed
    """
    search = _Search(garage, ask, limits)
    for level in _levels(sorted(set(budgets))):
        search.plan(level)
    while resolution and (room := most_plans - len(search.found)) > 0:
        between = _between(search.points(), resolution)
        if search.stopped or not between:
            break
        search.plan(sorted(between[:room]))
    points = search.points()
    return BudgetCurve(
        points=points,
        stays=_stays(garage, points),
        resolution=resolution,
        finished=resolution is not None and not _between(points, resolution),
        interrupted=search.stopped,
    )


@dataclass(slots=True)
class _Search:
    """The plans found so far, by their monthly sums."""

    garage: Garage
    ask: AskAll
    limits: Limits
    found: dict[int, Plan | Needs] = field(default_factory=dict)
    stopped: bool = False

    def plan(self, budgets: Sequence[int]) -> None:
        """Plan for each sum, all at once."""
        if self.stopped or not budgets:
            return
        replies = self.ask(
            [
                Question(
                    garage=replace(self.garage, budget=(budget,)),
                    limits=self.limits,
                    start=self._start(budget),
                )
                for budget in budgets
            ]
        )
        for place, found in replies.items():
            self.found[budgets[place]] = must_be(found)
        self.stopped = len(replies) < len(budgets)

    def points(self) -> tuple[BudgetPoint, ...]:
        """What each sum buys, by sums."""
        return tuple(self._points())

    def _points(self) -> Iterator[BudgetPoint]:
        kept: Plan | None = None  # its figures do not depend on the budget
        for budget, found in sorted(self.found.items()):
            if isinstance(found, Needs):
                yield BudgetPoint(budget=budget, found=found)
                continue
            if kept is None or not self._stays(kept, found):
                kept = found
            yield BudgetPoint(budget=budget, found=_bought(self.garage, kept, found))

    def _stays(self, kept: Plan, found: Plan) -> bool:
        as_many = fits_as_many(self.garage, kept.choices, found.choices)
        return as_many and as_good(kept.stages, found, self.limits.gap)

    def _start(self, budget: int) -> Choices | None:
        below = max((one for one in self.found if one < budget), default=None)
        found = None if below is None else self.found[below]
        return found.choices if isinstance(found, Plan) else None


def _levels(budgets: Sequence[int]) -> Iterator[list[int]]:
    planned: set[int] = set()
    for stride in STRIDES:
        level = [one for one in budgets[::stride] if one not in planned]
        planned.update(level)
        yield level


def _between(points: Sequence[BudgetPoint], resolution: int) -> list[int]:
    """A sum in the middle wherever plans differ, the widest gap first."""
    wide = [
        (low.budget, high.budget)
        for low, high in pairwise(points)
        if high.budget - low.budget > resolution and not low.same_plan(high)
    ]
    wide.sort(key=lambda pair: pair[0] - pair[1])
    return [int(middle(low, high, resolution)) for low, high in wide]


def _bought(garage: Garage, kept: Plan, found: Plan) -> Bought:
    """The outcome of a plan that is as good as the one found."""
    return Bought(
        stages=kept.stages,
        jobs=tuple(one.id for one in garage.options if one.id in kept.choices.orders),
        open_faults=tuple(_open_faults(garage, kept)),
        gap=max(0.0, missing(kept.stages.net_worth, found.bound)),
        proven=found.status is PlanStatus.PROVEN,
    )


def _open_faults(garage: Garage, plan: Plan) -> Iterator[str]:
    facts = Facts(garage, plan.choices)
    for fault in garage.faults:
        end = min(garage.months, garage.vehicle[fault.vehicle].keep_months)
        if fault.status is not FaultStatus.OPEN or not end:
            continue
        if not facts.cured(fault.id, end - 1):
            yield fault.id


def _stays(garage: Garage, points: Sequence[BudgetPoint]) -> tuple[Stay, ...]:
    found = [stay for option in garage.options for stay in _stays_of(option.id, points)]
    return tuple(sorted(found, key=lambda stay: stay.first))


def _stays_of(option: str, points: Sequence[BudgetPoint]) -> Iterator[Stay]:
    first: int | None = None
    below: int | None = None
    last: int | None = None
    for point in points:
        inside = isinstance(point.found, Bought) and option in point.found.jobs
        if inside and first is None:
            first, below = point.budget, last
        elif not inside and first is not None and last is not None:
            yield Stay(
                option=option, first=first, last=last, below=below, above=point.budget
            )
            first = None
        last = point.budget
    if first is not None and last is not None:
        yield Stay(option=option, first=first, last=last, below=below, above=None)
