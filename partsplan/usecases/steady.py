"""Asks how far settings may move before other parts are bought next."""

from concurrent.futures import Executor
from dataclasses import dataclass
from pathlib import Path

from partsplan.domain import Garage, Needs, Plan, Sensitivity
from partsplan.usecases.many import Tell, asker
from partsplan.usecases.opening import opening_garage
from partsplan.usecases.plan import asked


@dataclass(frozen=True, slots=True, kw_only=True)
class SteadyAnswer:
    """A garage as it was planned, its plan, and how steady the next purchases are.

    Attributes
    ----------
    plan
        Either a plan that passed its verification, or the money it needs.
    sensitivity
        None if there is no plan.
    """

    garage: Garage
    plan: Plan | Needs
    sensitivity: Sensitivity | None


def steady(
    folder: Path,
    *,
    executor: Executor,
    from_month: str | None = None,
    months: int | None = None,
    budget: str | None = None,
    seconds: float = 30.0,
    gap: float = 1e-4,
    threads: int = 1,
    tell: Tell | None = None,
) -> SteadyAnswer:
    """In which range of each setting the orders of the first month stay the same.

    Raises
    ------
    InvalidGarage, InvalidRequest, SolverFailed, UnsoundPlan
    KeyboardInterrupt
        If it came before there was a plan.
    """
    from partsplan.explanation import sensitivity
    from partsplan.planning import Limits

    garage = asked(opening_garage(folder, from_month), months=months, budget=budget)
    limits = Limits(seconds=seconds, gap=gap, threads=threads)
    plan, found = sensitivity(garage, asker(executor, tell), limits=limits)
    return SteadyAnswer(garage=garage, plan=plan, sensitivity=found)
