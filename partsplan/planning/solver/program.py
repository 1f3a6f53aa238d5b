"""A program written with PuLP and solved by HiGHS, one objective after another.

PuLP 3.3 calls a run "Optimal" that the clock cut short, prints HiGHS's banner, and
hands the model over column by column; the subclass here mends that.
"""

from collections.abc import Iterable
from typing import Any

import highspy
import numpy as np
import pulp

from partsplan.domain import PlanStatus
from partsplan.planning.program import Program, Terms
from partsplan.planning.solver.highs import Search, searched
from partsplan.planning.solver.run import SolverRun, Tuning, Watch


class Solver:
    """One program, solved for one objective after another."""

    def __init__(self, program: Program) -> None:
        self._problem = pulp.LpProblem("plan", pulp.LpMaximize)
        self._variables = [
            self._problem.add_variable(
                f"x{index:07d}",
                0,
                column.high,
                pulp.LpInteger if column.integer else pulp.LpContinuous,
            )
            for index, column in enumerate(program.columns)
        ]
        for index, variable in enumerate(self._variables):
            variable.index = index
        for row in program.rows:
            terms = zip(row.columns, row.coefficients, strict=True)
            self.hold(terms, low=row.low, high=row.high)

    def hold(
        self, terms: Terms, *, low: float | None = None, high: float | None = None
    ) -> None:
        """Add a row: low <= terms <= high, at least one side given."""
        known = list(terms)
        if low is not None and low == high:
            self._add(known, pulp.LpConstraintEQ, low)
            return
        if low is not None:
            self._add(known, pulp.LpConstraintGE, low)
        if high is not None:
            self._add(known, pulp.LpConstraintLE, high)

    def maximise(
        self,
        objective: Terms,
        tuning: Tuning,
        *,
        start: Iterable[int] | None = None,
        watch: Watch | None = None,
        stopped: bool = False,
    ) -> SolverRun:
        """Solve for one objective; ``start`` names the whole columns that begin at 1.

        A run that is ``stopped`` before its start knows nothing.

        Raises
        ------
        SolverFailed
            If HiGHS refuses the model or an option.
        """
        if stopped:
            return SolverRun(
                status=PlanStatus.FAILED, values=(), bound=np.inf, seconds=0.0
            )
        self._problem.setObjective(self._expression(objective))
        begun = None if start is None else frozenset(start)
        return searched(self._run, tuning, begun, watch)

    def _run(self, search: Search) -> None:
        _Runner(self._variables, search).actualSolve(self._problem)

    def _add(self, terms: list[tuple[int, float]], sense: int, side: float) -> None:
        row = pulp.LpConstraint(self._expression(terms), sense, rhs=side)
        self._problem.addConstraint(row)

    def _expression(self, terms: Terms) -> Any:
        return pulp.LpAffineExpression(
            [(self._variables[column], value) for column, value in terms]
        )


class _Runner(pulp.HiGHS):  # type: ignore[misc]  # PuLP has no types
    """PuLP's HiGHS with one hand-over, checked options and true answers."""

    def __init__(self, variables: list[Any], search: Search) -> None:
        super().__init__(msg=True)
        self.variables = variables
        self.search = search

    def createAndConfigureSolver(self, lp: Any) -> None:
        lp.solverModel = self.search.configured()

    def buildSolverModel(self, lp: Any) -> None:
        variables = self.variables
        rows = list(lp._constraints.values())
        starts = np.zeros(len(rows) + 1, dtype=np.int32)
        starts[1:] = np.cumsum([len(row) for row in rows])
        indexes = np.fromiter((v.index for row in rows for v in row), dtype=np.int32)
        entries = np.fromiter((c for row in rows for c in row.values()), dtype=float)
        costs = np.zeros(len(variables))
        for variable, cost in lp.objective.items():
            costs[variable.index] = cost
        inf = highspy.kHighsInf
        self.search.load(
            costs,
            np.array([inf if v.upBound is None else v.upBound for v in variables]),
            np.array([-inf if row.getLb() is None else row.getLb() for row in rows]),
            np.array([inf if row.getUb() is None else row.getUb() for row in rows]),
            (starts, indexes, entries),
            np.array([variable.cat == pulp.LpInteger for variable in variables]),
        )

    def callSolver(self, lp: Any) -> None:
        self.search.run()

    def findSolutionValues(self, lp: Any) -> tuple[int, int]:
        return pulp.LpStatusNotSolved, pulp.LpSolutionNoSolutionFound
