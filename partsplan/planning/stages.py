"""Optimises one stage after the other, each held for those that follow."""

from math import ceil, floor, isfinite

from partsplan.domain import PlanStatus, Stage
from partsplan.errors import SolverFailed
from partsplan.planning import decode
from partsplan.planning.covers import cover
from partsplan.planning.demands import Demand
from partsplan.planning.force import Held
from partsplan.planning.interrupts import Interrupts
from partsplan.planning.limits import COUNT_GAP, ROUNDING, Limits, Optimum, Progress
from partsplan.planning.model import Model
from partsplan.planning.solver import Solver, Tuning, Watch

EARLY_SHARE = 0.4
"""An early stage gets this share of the time that is left."""
MOST_COVERS = 50
"""Runs of one stage that may end overspent by a tolerance before it is given up."""

Objective = list[tuple[int, float]]


def optimise(
    model: Model,
    demands: tuple[Demand, ...],
    found: Optimum,
    limits: Limits,
    *,
    rows: tuple[Held, ...] = (),
    hint: tuple[int, ...] | None = None,
    progress: Progress | None = None,
) -> Optimum | None:
    """The best columns for the stages, in the garage's order, from ``found`` on.

    ``rows`` hold besides; None if no columns keep them. ``hint`` are columns at 1 to
    begin from where ``found`` has none or only knows how to buy nothing.

    Raises
    ------
    SolverFailed
        If the time was up before anything was found.
    KeyboardInterrupt
        If the search was stopped before that.
    """
    with Interrupts() as interrupts:
        solver = Solver(model.program)
        for terms, low, high in rows:
            solver.hold(terms, low=low, high=high)
        for stage in model.garage.priority:
            found.interrupted |= interrupts.asked
            objective, constant = _objective(model, stage)
            if not objective:
                found.bounds[stage] = constant
                continue
            watch = _watch(progress, stage, constant)
            bound = _solve(model, solver, stage, objective, found, limits, watch, hint)
            if bound is None:
                return None
            _hold(model, solver, stage, demands, found, bound)
    return found


def _hold(
    model: Model,
    solver: Solver,
    stage: Stage,
    demands: tuple[Demand, ...],
    found: Optimum,
    bound: float,
) -> None:
    """Keeps what a stage has reached, and notes its bound."""
    if found.ones is None:
        if found.interrupted:
            raise KeyboardInterrupt
        raise SolverFailed("the time was up before any plan was found")
    objective, constant = _objective(model, stage)
    chosen, choices = decode.decode(model, found.ones)
    figure = decode.stages(model.garage, chosen, choices, demands).of(stage)
    if stage is Stage.WORTH:
        found.bounds[stage] = max(figure, floor(bound + ROUNDING))
        solver.hold(objective, low=figure - 0.5)
    else:
        found.bounds[stage] = min(figure, constant + ceil(-bound - ROUNDING))
        solver.hold(objective, low=constant - figure)


def _solve(
    model: Model,
    solver: Solver,
    stage: Stage,
    objective: Objective,
    found: Optimum,
    limits: Limits,
    watch: Watch | None,
    hint: tuple[int, ...] | None,
) -> float | None:
    """The bound of one stage, None if nothing is possible.

    What is best goes into ``found``.
    """
    last = stage is model.garage.priority[-1]
    counts = stage is not Stage.WORTH
    until = limits.seconds
    if not last:
        until = found.seconds + (limits.seconds - found.seconds) * EARLY_SHARE
    for _ in range(MOST_COVERS):
        run = solver.maximise(
            objective,
            Tuning(
                seconds=max(0.0, until - found.seconds),
                gap=0.0 if counts else limits.gap,
                absolute_gap=COUNT_GAP if counts else 0.0,
                threads=limits.threads,
            ),
            start=found.ones or hint or found.ones,
            watch=watch,
            stopped=found.interrupted,
        )
        if run.status is PlanStatus.INFEASIBLE and found.ones is None:
            return None
        found.seconds += run.seconds
        found.interrupted |= run.interrupted
        ones = model.at_one(run.values) if run.values else None
        cut = (
            None if ones is None else cover(model, ones, decode.ledger_of(model, ones))
        )
        if cut is None:
            break
        terms, most = cut
        solver.hold(terms, high=most)
    else:
        raise SolverFailed("the solver could not keep to the last unit of money")
    found.ones = found.ones if ones is None else ones
    found.proven &= run.status is PlanStatus.PROVEN
    return run.bound if isfinite(run.bound) else _trivial_bound(objective)


def _objective(model: Model, stage: Stage) -> tuple[Objective, int]:
    """What to maximise, and what the stage's figure holds besides."""
    if stage is Stage.WORTH:
        return list(model.worth), 0
    counted = [(column, -1.0) for column in model.unmet_of(stage)]
    return counted, model.hopeless_of(stage)


def _trivial_bound(objective: Objective) -> float:
    """Every column that adds at 1, the others at 0."""
    return sum(max(0.0, value) for _, value in objective)


def _watch(progress: Progress | None, stage: Stage, constant: int) -> Watch | None:
    """Turns a run's figures, which are maximised, into those of the stage."""
    if progress is None:
        return None
    sign = 1 if stage is Stage.WORTH else -1

    def watch(seconds: float, best: float | None, bound: float | None) -> None:
        figures = [
            None if one is None else constant + sign * one for one in (best, bound)
        ]
        progress(stage.value, seconds, figures[0], figures[1])

    return watch
