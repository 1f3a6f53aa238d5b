"""From a garage to the best plan for it."""

from partsplan.domain import (
    Garage,
    Needs,
    Plan,
    PlanStatus,
    Stage,
    Stages,
)
from partsplan.planning import decode, reach, remedies
from partsplan.planning.demands import Demand, demands
from partsplan.planning.model import Model, build
from partsplan.planning.solver import solver_name
from partsplan.planning.stages import Limits, Optimum, Progress, optimise
from partsplan.pricing import offers


def plan(
    garage: Garage,
    *,
    seconds: float = 30.0,
    gap: float = 1e-4,
    threads: int = 1,
    progress: Progress | None = None,
) -> Plan | Needs:
    """The best plan within the time, or the money without which there is none.

    Parameters
    ----------
    seconds
        Longest solver time. [s]
    gap
        Relative gap at which a plan counts as proven. [fraction]

    Raises
    ------
    SolverFailed
        If the solver refused the model, or found nothing in time.
    """
    every = offers(garage)
    empty: tuple[int, ...] | None = ()
    if needs := reach.needs(garage):
        # A deposit that comes back can only mend a month that loses unspent money.
        needs = (
            needs if garage.carry_over else remedies.least_money(garage, every, seconds)
        )
        if needs:
            return needs
        empty = None
    wanted = demands(garage)
    model = build(garage, reach.reachable(garage, every), wanted)
    limits = Limits(seconds=seconds, gap=gap, threads=threads)
    found = optimise(model, wanted, Optimum(ones=empty), limits, progress)
    return _plan(model, wanted, found, gap)


def _plan(model: Model, wanted: tuple[Demand, ...], found: Optimum, gap: float) -> Plan:
    garage = model.garage
    chosen, choices = decode.decode(model, found.ones or ())
    figures = decode.stages(garage, chosen, choices, wanted)
    ordered = decode.orders(garage, chosen)
    bought = decode.tool_buys(garage, choices)
    bound = found.bounds[Stage.WORTH]
    reached = (bound - figures.net_worth) / max(1, abs(figures.net_worth))
    proven = found.proven and reached <= gap
    return Plan(
        status=PlanStatus.PROVEN if proven else PlanStatus.FEASIBLE,
        start=garage.start,
        choices=choices,
        stages=figures,
        stage_bounds=Stages(
            missed_deadlines=found.bounds[Stage.DEADLINES],
            unsafe_vehicle_months=found.bounds[Stage.SAFETY],
            undrivable_vehicle_months=found.bounds[Stage.MOBILITY],
            net_worth=bound,
        ),
        gap=reached,
        bound=bound,
        jobs=decode.jobs(chosen),
        tools=bought,
        orders=ordered,
        ledger=decode.ledger(garage, chosen, ordered, bought),
        seconds=found.seconds,
        solver=solver_name(),
        interrupted=found.interrupted,
    )
