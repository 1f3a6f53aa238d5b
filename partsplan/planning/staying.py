"""Of all plans that are as good, the one nearest to what was intended."""

from collections.abc import Iterable, Mapping

from partsplan.domain import PlanStatus, Stage, Stages
from partsplan.planning import decode
from partsplan.planning.covers import cover
from partsplan.planning.force import Held
from partsplan.planning.limits import COUNT_GAP, Limits
from partsplan.planning.model import Model
from partsplan.planning.solver import Solver, Tuning

SAME_MONTH, OTHER_MONTH = 2, 1
"""What an intended job counts that is ordered in its month, or in another."""


def nearest(
    model: Model,
    reached: Stages,
    start: Iterable[int],
    wishes: Mapping[str, int],
    spare: int,
    limits: Limits,
    rows: Iterable[Held] = (),
) -> tuple[int, ...] | None:
    """The columns at 1 that keep most of ``wishes`` (ordering month of each option).

    Counted stages stay as ``reached``, and net worth gives up no more than ``spare``.
    None if the time was up before any were found. [minor units]

    Raises
    ------
    SolverFailed
    """
    wanted = [
        (column, float(_points(offer.ordered, wishes[offer.option.id])))
        for column, offer in zip(model.take, model.offers, strict=True)
        if offer.option.id in wishes
    ]
    if not wanted:
        return None
    solver = Solver(model.program)
    for terms, low, high in rows:
        solver.hold(terms, low=low, high=high)
    for stage in model.garage.priority:
        if stage is Stage.WORTH:
            solver.hold(model.worth, low=reached.net_worth - spare - 0.5)
        elif columns := model.unmet_of(stage):
            most = reached.of(stage) - model.hopeless_of(stage)
            solver.hold([(one, 1.0) for one in columns], high=most)
    run = solver.maximise(
        wanted,
        Tuning(seconds=limits.seconds, gap=0.0, absolute_gap=COUNT_GAP),
        start=start,
    )
    if run.status not in (PlanStatus.PROVEN, PlanStatus.FEASIBLE) or not run.values:
        return None
    ones = model.at_one(run.values)
    overspent = cover(model, ones, decode.ledger_of(model, ones))
    return None if overspent else ones


def _points(ordered: int, wished: int) -> int:
    return SAME_MONTH if ordered == wished else OTHER_MONTH
