"""Two garages planned one after the other, and set side by side."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from partsplan.domain import (
    Choices,
    Garage,
    Needs,
    Plan,
    PlanDifference,
    TwoPlans,
    Why,
)
from partsplan.errors import UnsoundPlan
from partsplan.usecases.live import Progress, in_units
from partsplan.usecases.plan import LONGEST_WHY, WHY

if TYPE_CHECKING:
    from partsplan.planning import Force

WhyAsked = Callable[[PlanDifference, Plan], Why | None]
"""Finds out what a difference is due to, given the second plan."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Solving:
    """How long and how closely each of the two is planned.

    Attributes
    ----------
    seconds
        Longest solver time for each plan. [s]
    gap
        Relative gap at which a plan counts as proven. [fraction]
    """

    seconds: float = 30.0
    gap: float = 1e-4
    threads: int = 1
    progress: Progress | None = None

    @property
    def seconds_for_why(self) -> float:
        """Longest solver time to explain the difference. [s]"""
        return min(self.seconds, LONGEST_WHY)


def two_plans(
    first: "tuple[Garage, Force]",
    second: "tuple[Garage, Force]",
    solving: Solving,
    why: WhyAsked,
) -> TwoPlans:
    """Both plans, the second begun from the first, both checked.

    Raises
    ------
    SolverFailed, UnsoundPlan
    KeyboardInterrupt
        If the first search was stopped: then there is nothing to compare.
    """
    from partsplan.explanation import compare_plans, parkings, spared

    garage, other_garage = first[0], second[0]
    plan = _sound(*first, None, solving)
    if isinstance(plan, Plan) and plan.interrupted:
        raise KeyboardInterrupt
    begin = plan.choices if isinstance(plan, Plan) else None
    same_start = garage.start == other_garage.start
    other_plan = _sound(*second, begin if same_start else None, solving)
    difference = reason = None
    if isinstance(plan, Plan) and isinstance(other_plan, Plan):
        difference = compare_plans(garage, plan, other_garage, other_plan)
        if not difference.same_jobs and not other_plan.interrupted:
            if solving.progress:
                solving.progress(WHY, plan.seconds + other_plan.seconds, None, None)
            reason = why(difference, other_plan)
    return TwoPlans(
        garage=garage,
        plan=plan,
        other_garage=other_garage,
        other_plan=other_plan,
        difference=difference,
        why=reason,
        parking=parkings(garage, plan) if isinstance(plan, Plan) else (),
        other_parking=parkings(other_garage, other_plan)
        if isinstance(other_plan, Plan)
        else (),
        spared=spared(garage, other_garage, other_plan)
        if isinstance(other_plan, Plan)
        else (),
    )


def _sound(
    garage: Garage, force: "Force", start: Choices | None, solving: Solving
) -> Plan | Needs | None:
    """A plan that passed its verification and does what is forced."""
    from partsplan.explanation import disobeyed
    from partsplan.planning import replan
    from partsplan.verification import violations

    found = replan(
        garage,
        force=force,
        start=start,
        seconds=solving.seconds,
        gap=solving.gap,
        threads=solving.threads,
        progress=in_units(solving.progress, garage.currency),
    )
    if isinstance(found, Plan):
        broken = (*violations(garage, found), *disobeyed(force, found))
        if broken:
            raise UnsoundPlan(broken)
    return found
