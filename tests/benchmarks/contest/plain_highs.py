"""A rival: the same model by PuLP and HiGHS as anybody would call them.

No start, the tolerances HiGHS comes with, one stage after the other, each of which may
take all the time that is left. Stages of counts may stop at an absolute gap below 1.
"""

from typing import Any

import highspy
import numpy as np

from partsplan.domain import Garage, Stage
from partsplan.planning import Planner
from tests.benchmarks.contest.cell import Task
from tests.benchmarks.contest.goals import COUNT_GAP, OUT_OF_TIME, PROVEN, Goal, goal
from tests.benchmarks.contest.pulp_problem import PlainHighs, PulpProblem
from tests.benchmarks.contest.telling import Teller

FEASIBLE = int(highspy.SolutionStatus.kSolutionStatusFeasible)
KINDS = highspy.cb.HighsCallbackType


def compete(garage: Garage, task: Task, teller: Teller) -> str:
    """Plan the garage; returns how it ended."""
    teller.start()
    model = Planner(garage).model
    whole = np.array([column.integer for column in model.program.columns])
    problem = PulpProblem(model.program)
    for stage in garage.priority:
        wanted = goal(model, stage)
        if not wanted.terms:
            teller.tell(stage.value, wanted.constant, wanted.constant)
            continue
        left = task.seconds - teller.seconds
        if left <= 0:
            return OUT_OF_TIME
        watcher = _Watcher(wanted, whole, teller)
        solver = PlainHighs(
            msg=False,
            timeLimit=left,
            gapRel=task.gap,
            gapAbs=None if stage is Stage.WORTH else COUNT_GAP,
            threads=task.threads,
            callbackTuple=(watcher, None),
            callbacksToActivate=[
                KINDS.kCallbackMipInterrupt,
                KINDS.kCallbackMipImprovingSolution,
            ],
        )
        highs = problem.solve(wanted.terms, solver, highest=wanted.highest)
        info = highs.getInfo()
        if info.primal_solution_status == FEASIBLE:
            watcher.told(info.objective_function_value, info.mip_dual_bound)
            watcher.showed(highs.getSolution().col_value)
        if highs.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            return OUT_OF_TIME
        problem.at_most(wanted.terms, round(info.objective_function_value))
    return PROVEN


class _Watcher:
    """Passes on what HiGHS knows. PuLP hands a maximum over as a negated minimum."""

    def __init__(self, wanted: Goal, whole: Any, teller: Teller) -> None:
        self.wanted = wanted
        self.whole = whole
        self.teller = teller

    def __call__(self, kind: Any, _: str, told: Any, *__: Any) -> None:
        self.told(told.mip_primal_bound, told.mip_dual_bound)
        if kind == KINDS.kCallbackMipImprovingSolution:
            self.showed(told.mip_solution)

    def told(self, value: float, bound: float) -> None:
        """A figure and a bound, in HiGHS's sense."""
        self.teller.tell(
            self.wanted.stage.value, self._figure(value), self._figure(bound)
        )

    def showed(self, values: Any) -> None:
        """One figure a column."""
        at_one = np.flatnonzero((np.asarray(values) > 0.5) & self.whole)
        self.teller.show(tuple(map(int, at_one)))

    def _figure(self, told: float) -> float | None:
        if abs(told) >= highspy.kHighsInf:
            return None
        return self.wanted.constant + (-told if self.wanted.highest else told)
