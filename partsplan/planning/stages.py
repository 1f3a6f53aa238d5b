"""Optimises one stage after the other, each held for those that follow."""

from collections.abc import Callable
from dataclasses import dataclass, field
from math import ceil, floor, isfinite

from partsplan.domain import PlanStatus, Stage, Stages
from partsplan.errors import SolverFailed
from partsplan.planning.model import Model
from partsplan.planning.solver import Solver, SolverRun, Watch

COUNT_GAP = 0.99
"""Counts are whole, so a bound closer than one proves them."""
EARLY_SHARE = 0.4
"""An early stage gets this share of the time that is left."""
ROUNDING = 1e-6
"""What a bound may be off by for the solver's tolerances."""

Progress = Callable[[str, float, float | None, float | None], None]
"""Told the stage, seconds, best figure and bound while a stage is solved."""
Measure = Callable[[tuple[int, ...]], Stages]
"""Tells the true figures of the whole columns at 1."""


@dataclass(slots=True, kw_only=True)
class Optimum:
    """Where the stages ended.

    Attributes
    ----------
    ones
        The whole columns at 1; None before anything was found.
    bounds
        No plan with the earlier stages as held does better.
    proven
        Whether every stage reached its gap.
    """

    ones: tuple[int, ...] | None
    bounds: dict[Stage, int] = field(default_factory=dict)
    proven: bool = True
    seconds: float = 0.0
    interrupted: bool = False


def optimise(
    model: Model,
    measure: Measure,
    found: Optimum,
    *,
    seconds: float,
    gap: float,
    threads: int = 1,
    progress: Progress | None = None,
) -> Optimum:
    """The best columns for the stages, in the garage's order, from ``found`` on.

    Raises
    ------
    SolverFailed
        If the time was up before anything was found.
    """
    solver = Solver(model.program)
    stages = model.garage.priority
    for stage in stages:
        objective, constant = _objective(model, stage)
        if not objective:
            found.bounds[stage] = constant
            continue
        left = max(0.0, seconds - found.seconds)
        run = solver.maximise(
            objective,
            seconds=left if stage is stages[-1] else left * EARLY_SHARE,
            gap=gap if stage is Stage.WORTH else 0.0,
            absolute_gap=0.0 if stage is Stage.WORTH else COUNT_GAP,
            threads=threads,
            start=found.ones or (),
            watch=_watch(progress, stage, constant),
            stopped=found.interrupted,
        )
        if run.values:
            found.ones = _ones(model, run)
        if found.ones is None:
            raise SolverFailed("the time was up before any plan was found")
        found.seconds += run.seconds
        found.interrupted |= run.interrupted
        found.proven &= run.status is PlanStatus.PROVEN
        figure = measure(found.ones).of(stage)
        best = run.bound if isfinite(run.bound) else _trivial_bound(objective)
        if stage is Stage.WORTH:
            found.bounds[stage] = max(figure, floor(best + ROUNDING))
            solver.hold(objective, low=figure - 0.5)
        else:
            found.bounds[stage] = min(figure, constant + ceil(-best - ROUNDING))
            solver.hold(objective, low=constant - figure)
    return found


def _objective(model: Model, stage: Stage) -> tuple[list[tuple[int, float]], int]:
    """What to maximise, and what the stage's figure holds besides."""
    if stage is Stage.WORTH:
        return list(model.worth), 0
    counted = [(column, -1.0) for column in model.unmet_of(stage)]
    return counted, model.hopeless_of(stage)


def _ones(model: Model, run: SolverRun) -> tuple[int, ...]:
    return tuple(
        place
        for place, column in enumerate(model.program.columns)
        if column.integer and run.values[place] > 0.5
    )


def _trivial_bound(objective: list[tuple[int, float]]) -> float:
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
