"""Plans a garage and gathers what is told about it on one page."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from partsplan.domain import Choices, Comparison, Garage, Needs, Plan, Report
from partsplan.usecases.countdown import Clock
from partsplan.usecases.curve import CurveAnswer
from partsplan.usecases.live import Progress
from partsplan.usecases.now import now
from partsplan.usecases.plan import plan

CURVE_STEPS = 12
"""Monthly sums that the curve on such a page is made of, beside the garage's own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReportAnswer:
    """A garage as it was planned, with all that its page tells.

    Attributes
    ----------
    found
        Either a report on a plan that passed its verification, or the money without
        which there is no plan.
    """

    garage: Garage
    found: Report | Needs


def report(
    folder: Path,
    today: date,
    *,
    from_month: str | None = None,
    months: int | None = None,
    budget: str | None = None,
    seconds: float = 30.0,
    gap: float = 1e-4,
    threads: int = 1,
    progress: Progress | None = None,
    clock: Clock | None = None,
    curve: CurveAnswer | None = None,
) -> ReportAnswer:
    """The best plan for the garage in ``folder``, and what is to be seen beside it.

    A ``curve`` that was made for the same garage is told too.

    Raises
    ------
    InvalidGarage, InvalidRequest, SolverFailed, UnsoundPlan
    DamagedLogbook, LogbookUnavailable, NoKeptPlan
    """
    from partsplan.explanation import points_borne

    answer = plan(
        folder,
        from_month=from_month,
        months=months,
        budget=budget,
        seconds=seconds,
        gap=gap,
        threads=threads,
        progress=progress,
        clock=clock,
    )
    garage, found = answer.garage, answer.plan
    if isinstance(found, Needs):
        return ReportAnswer(garage=garage, found=found)
    nothing = Choices(orders={}, tools={})
    told = Report(
        garage=garage,
        plan=found,
        skips=answer.skips,
        shortfalls=answer.shortfalls,
        faithfulness=answer.faithfulness,
        now=now(folder, today),
        comparisons=tuple(_comparisons(garage, found)),
        borne=points_borne(garage, found.choices),
        borne_without=points_borne(garage, nothing),
        curve=curve.curve if curve else None,
        usual=curve.usual if curve else None,
    )
    return ReportAnswer(garage=garage, found=told)


def _comparisons(garage: Garage, plan: Plan) -> Iterator[Comparison]:
    """The options of each fault that something is bought for, in the jobs' order."""
    from partsplan.pricing import compare

    bought_for = (fault for job in plan.jobs if not job.bought for fault in job.faults)
    for fault in dict.fromkeys(bought_for):
        yield compare(garage, fault)
