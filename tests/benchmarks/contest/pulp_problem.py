"""The model as an ordinary PuLP problem."""

from typing import Any

import pulp

from partsplan.planning.program import Program, Terms


class PulpProblem:
    """Columns and rows as they are; continuous all of them if ``relaxed``."""

    def __init__(self, program: Program, *, relaxed: bool = False) -> None:
        self.problem = pulp.LpProblem("rival", pulp.LpMaximize)
        self.variables = [
            self.problem.add_variable(
                f"x{index:07d}",
                0,
                column.high,
                pulp.LpInteger if column.integer and not relaxed else "Continuous",
            )
            for index, column in enumerate(program.columns)
        ]
        for row in program.rows:
            terms = tuple(zip(row.columns, row.coefficients, strict=True))
            if row.low is not None and row.low == row.high:
                self._add(terms, pulp.LpConstraintEQ, row.low)
                continue
            if row.low is not None:
                self._add(terms, pulp.LpConstraintGE, row.low)
            if row.high is not None:
                self.at_most(terms, row.high)

    def at_most(self, terms: Terms, high: float) -> None:
        """Add the row: terms <= high."""
        self._add(terms, pulp.LpConstraintLE, high)

    def solve(self, terms: Terms, solver: Any, *, highest: bool) -> Any:
        """Solve for the terms; returns the ``Highs`` that did it."""
        self.problem.sense = pulp.LpMaximize if highest else pulp.LpMinimize
        self.problem.setObjective(self._expression(terms))
        self.problem.solve(solver)
        return self.problem.solverModel

    def _add(self, terms: Terms, sense: int, side: float) -> None:
        row = pulp.LpConstraint(self._expression(terms), sense, rhs=side)
        self.problem.addConstraint(row)

    def _expression(self, terms: Terms) -> Any:
        return pulp.LpAffineExpression(
            [(self.variables[column], value) for column, value in terms]
        )


class PlainHighs(pulp.HiGHS):  # type: ignore[misc]  # PuLP has no types
    """PuLP's HiGHS as it is, but for the answer.

    PuLP reads the columns even where there is no solution, and fails; the answer is
    asked of HiGHS instead.
    """

    def findSolutionValues(self, lp: Any) -> tuple[int, int]:
        return pulp.LpStatusNotSolved, pulp.LpSolutionNoSolutionFound
