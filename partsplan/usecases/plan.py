"""Plans a garage, checks the plan, and says why."""

from dataclasses import dataclass, replace
from math import inf
from pathlib import Path
from typing import Any

from partsplan.domain import Faithfulness, Garage, Needs, Plan, Shortfall, Skip
from partsplan.usecases.amounts import amount_from_zero
from partsplan.usecases.countdown import Clock, countdown
from partsplan.usecases.faithful import faithful
from partsplan.usecases.intentions import intentions
from partsplan.usecases.live import Progress, in_units
from partsplan.usecases.opening import opened
from partsplan.usecases.sound import sound
from partsplan.usecases.where_it_stands import where_it_stands

WHY = "reasons"
"""The stage in which a plan is explained."""
LONGEST_WHY = 10.0
"""Most time to find what the missed demands would take. [s]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanAnswer:
    """A garage as it was planned, with a sound plan or what it would need.

    Attributes
    ----------
    garage
        With the months and the budget that were asked for.
    plan
        Either a plan that passed its verification, or the money it needs.
    faithfulness
        How it treats the plan that was kept last; None if none was.
    """

    garage: Garage
    plan: Plan | Needs
    skips: tuple[Skip, ...] = ()
    shortfalls: tuple[Shortfall, ...] = ()
    faithfulness: Faithfulness | None = None


def plan(
    folder: Path,
    *,
    from_month: str | None = None,
    months: int | None = None,
    budget: str | None = None,
    seconds: float = 30.0,
    gap: float = 1e-4,
    threads: int = 1,
    progress: Progress | None = None,
    clock: Clock | None = None,
    stay: str = "0",
    afresh: bool = False,
) -> PlanAnswer:
    """The best plan for the garage in ``folder``, with what is left alone and why.

    ``months`` and ``budget`` (one amount for every month, decimal text) stand instead
    of the garage's own; the worth of a point stays what the garage's own budget makes
    it. Of plans that are as good, the nearest to the plan kept last is taken, unless it
    is to be made ``afresh``; ``stay`` is net worth that may be given up for that, as
    decimal text. With a ``clock``, what the missed demands would take is worked out for
    no longer than ``LONGEST_WHY`` seconds. A search that was stopped gives its best
    plan, without what it would take to meet the demands that it misses.

    Raises
    ------
    InvalidGarage, InvalidRequest, SolverFailed, UnsoundPlan
    """
    from partsplan.planning import Limits, Planner, must_be

    stands = where_it_stands(folder)
    garage = asked(opened(stands, from_month), months=months, budget=budget)
    spare = amount_from_zero(garage, "--stay", stay)
    planner = Planner(garage)
    limits = Limits(seconds=seconds, gap=gap, threads=threads, clock=clock)
    told = in_units(progress, garage.currency)
    found = sound(garage, must_be(planner.best(limits, progress=told)))
    if isinstance(found, Needs):
        return PlanAnswer(garage=garage, plan=found)
    meant = None if afresh else intentions(folder, stands)
    faith = None
    if meant is not None and not found.interrupted:
        found, faith = faithful(
            planner, found, meant, spare, gap=gap, seconds=seconds, clock=clock
        )
    answer = _explained(garage, found, seconds, progress, clock)
    return replace(answer, faithfulness=faith)


def asked(garage: Garage, *, months: int | None, budget: str | None) -> Garage:
    """The garage with the months and the budget of the request.

    Raises
    ------
    InvalidRequest
        If the budget is no amount of the garage's currency, or below 0.
    """
    changes: dict[str, Any] = {}
    if months is not None:
        changes["months"] = months
    if budget is not None:
        changes["budget"] = (amount_from_zero(garage, "budget", budget),)
    return replace(garage, **changes)


def _explained(
    garage: Garage,
    found: Plan,
    seconds: float,
    progress: Progress | None,
    clock: Clock | None,
) -> PlanAnswer:
    from partsplan.explanation import shortfalls, skips

    if progress:
        progress(WHY, found.seconds, None, None)
    missed: tuple[Shortfall, ...] = ()
    longest = min(seconds, LONGEST_WHY)
    left = countdown(clock, longest) if clock else lambda: inf
    if not found.interrupted:
        try:
            missed = shortfalls(garage, found, seconds=longest, left=left)
        except KeyboardInterrupt:  # the plan is there, what it would take is not
            found = replace(found, interrupted=True)
    return PlanAnswer(
        garage=garage, plan=found, skips=skips(garage, found), shortfalls=missed
    )
