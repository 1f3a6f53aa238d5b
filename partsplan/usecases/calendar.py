"""Plans a garage and hands out what a calendar is made from."""

from dataclasses import dataclass
from pathlib import Path

from partsplan.domain import Garage, Ledger, Needs, Plan
from partsplan.usecases.countdown import Clock
from partsplan.usecases.live import Progress
from partsplan.usecases.plan import plan
from partsplan.usecases.where_it_stands import where_it_stands


@dataclass(frozen=True, slots=True, kw_only=True)
class CalendarAnswer:
    """A garage as it was planned, its plan, and what happened so far.

    Attributes
    ----------
    plan
        Either a plan that passed its verification, or the money it needs.
    """

    garage: Garage
    plan: Plan | Needs
    ledger: Ledger


def calendar(
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
) -> CalendarAnswer:
    """The best plan for the garage in ``folder``, beside what its logbook says.

    Raises
    ------
    InvalidGarage, InvalidRequest, SolverFailed, UnsoundPlan
    DamagedLogbook, LogbookUnavailable
    """
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
    return CalendarAnswer(
        garage=answer.garage, plan=answer.plan, ledger=where_it_stands(folder).ledger
    )
