"""Plans a garage and carries the plan out in many futures."""

from dataclasses import dataclass
from pathlib import Path

from partsplan.domain import Garage, Needs, Plan, Risk, RiskSettings
from partsplan.usecases.live import Progress, in_units
from partsplan.usecases.opening import opening_garage
from partsplan.usecases.plan import asked
from partsplan.usecases.sound import sound


@dataclass(frozen=True, slots=True, kw_only=True)
class RiskAnswer:
    """A garage as it was planned, its plan, and how that may turn out.

    Attributes
    ----------
    plan
        Either a plan that passed its verification, or the money it needs.
    risk
        None if there is no plan.
    """

    garage: Garage
    plan: Plan | Needs
    risk: Risk | None = None


def risk(
    folder: Path,
    settings: RiskSettings,
    *,
    from_month: str | None = None,
    months: int | None = None,
    budget: str | None = None,
    seconds: float = 30.0,
    gap: float = 1e-4,
    threads: int = 1,
    progress: Progress | None = None,
) -> RiskAnswer:
    """How the best plan for the garage in ``folder`` fares in many futures.

    A search that was stopped gives the risk of its best plan.

    Raises
    ------
    InvalidGarage, InvalidRequest, SolverFailed, UnsoundPlan
    """
    from partsplan.planning import plan as best_plan
    from partsplan.simulation import simulate

    garage = asked(opening_garage(folder, from_month), months=months, budget=budget)
    found = sound(
        garage,
        best_plan(
            garage,
            seconds=seconds,
            gap=gap,
            threads=threads,
            progress=in_units(progress, garage.currency),
        ),
    )
    if isinstance(found, Needs):
        return RiskAnswer(garage=garage, plan=found)
    return RiskAnswer(garage=garage, plan=found, risk=simulate(garage, found, settings))
