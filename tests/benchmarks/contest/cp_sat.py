"""A rival: the same rows and columns by the CP-SAT solver of OR-Tools.

It knows whole numbers only. Shares may be whole there: with whole offers, the best
share is 0 or 1. Stages go as for plain HiGHS, without a hint from one to the next.
"""

from typing import Any

from ortools.sat.python import cp_model

from partsplan.domain import Garage, Stage
from partsplan.planning import Planner
from partsplan.planning.program import Program
from tests.benchmarks.contest.cell import Task
from tests.benchmarks.contest.goals import COUNT_GAP, OUT_OF_TIME, PROVEN, Goal, goal
from tests.benchmarks.contest.telling import Teller
from tests.benchmarks.contest.whole_rows import highest_values, whole_row


def compete(garage: Garage, task: Task, teller: Teller) -> str:
    """Plan the garage; returns how it ended."""
    teller.start()
    model = Planner(garage).model
    whole = [place for place, one in enumerate(model.program.columns) if one.integer]
    problem, variables = _problem(model.program)
    for stage in garage.priority:
        wanted = goal(model, stage)
        if not wanted.terms:
            teller.tell(stage.value, wanted.constant, wanted.constant)
            continue
        left = task.seconds - teller.seconds
        if left <= 0:
            return OUT_OF_TIME
        terms = cp_model.LinearExpr.weighted_sum(
            [variables[column] for column, _ in wanted.terms],
            [int(value) for _, value in wanted.terms],
        )
        (problem.maximize if wanted.highest else problem.minimize)(terms)
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = task.threads
        solver.parameters.max_time_in_seconds = left
        solver.parameters.relative_gap_limit = task.gap
        if stage is not Stage.WORTH:
            solver.parameters.absolute_gap_limit = COUNT_GAP
        watcher = _Watcher(wanted, whole, teller)
        solver.best_bound_callback = watcher.bounded
        if solver.solve(problem, watcher) != cp_model.OPTIMAL:
            return OUT_OF_TIME
        watcher.told(solver.objective_value, solver.best_objective_bound)
        problem.add(terms <= round(solver.objective_value))
    return PROVEN


def _problem(program: Program) -> tuple[Any, list[Any]]:
    problem = cp_model.CpModel()
    variables = [problem.new_int_var(0, high, "") for high in highest_values(program)]
    for row in program.rows:
        coefficients, low, high = whole_row(row)
        problem.add_linear_constraint(
            cp_model.LinearExpr.weighted_sum(
                [variables[column] for column in row.columns], coefficients
            ),
            cp_model.INT_MIN if low is None else low,
            cp_model.INT_MAX if high is None else high,
        )
    return problem, variables


# Where OR-Tools is not installed, the class it is made from has no type.
class _Watcher(
    cp_model.CpSolverSolutionCallback  # type: ignore[misc, unused-ignore]
):
    """Passes on what CP-SAT knows."""

    def __init__(self, wanted: Goal, whole: list[int], teller: Teller) -> None:
        super().__init__()
        self.wanted = wanted
        self.whole = whole
        self.teller = teller
        self.best: float | None = None

    def on_solution_callback(self) -> None:
        """A better solution, as OR-Tools calls it."""
        self.told(self.objective_value, self.best_objective_bound)
        values = self.response_proto.solution
        self.teller.show(tuple(place for place in self.whole if values[place]))

    def bounded(self, bound: float) -> None:
        """A better bound."""
        self.teller.tell(self.wanted.stage.value, self.best, self._figure(bound))

    def told(self, value: float, bound: float) -> None:
        """A figure and a bound."""
        self.best = self._figure(value)
        self.teller.tell(self.wanted.stage.value, self.best, self._figure(bound))

    def _figure(self, told: float) -> float:
        return self.wanted.constant + told
