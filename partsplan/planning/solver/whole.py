"""Whole columns of a part of a program, straight from arrays.

Parts are solved by the hundred; writing each with PuLP would take longer than solving
it.
"""

from partsplan.planning.matrix import Floats, Matrix
from partsplan.planning.solver.highs import Search, searched
from partsplan.planning.solver.run import Found, SolverRun, Tuning, Watch


def solve_whole(
    matrix: Matrix,
    objective: Floats,
    tuning: Tuning,
    *,
    start: frozenset[int] | None = None,
    watch: Watch | None = None,
    found: Found | None = None,
) -> SolverRun:
    """The best whole columns; ``start`` names those that begin at 1.

    Raises
    ------
    SolverFailed
        If HiGHS refuses the model or an option.
    """
    rows = matrix.rows

    def run(search: Search) -> None:
        search.configured()
        search.load(
            objective,
            matrix.upper,
            matrix.low,
            matrix.high,
            (rows.indptr, rows.indices, rows.data),
            matrix.whole,
        )
        search.run(found)

    return searched(run, tuning, start, watch)
