"""A program without whole columns: its best value, and what each row is worth."""

from dataclasses import dataclass
from typing import Any

import highspy
import numpy as np

from partsplan.planning.matrix import Floats, Matrix
from partsplan.planning.solver.highs import (
    MAXIMISE,
    ROW_WISE,
    configured,
    expect_ok,
    run_aside,
    use_threads,
)

BASIC = int(highspy.HighsBasisStatus.kBasic)
PRIMAL = 4
AT_LOW = int(highspy.HighsBasisStatus.kLower)


@dataclass(frozen=True)
class Basis:
    """Where a linear program ended, to begin a like one from.

    Attributes
    ----------
    columns, rows
        HiGHS's status of each, as a number.
    """

    columns: np.ndarray[tuple[int], np.dtype[np.int8]]
    rows: np.ndarray[tuple[int], np.dtype[np.int8]]


@dataclass(frozen=True)
class LinearRun:
    """How it ended; ``values`` and ``worths`` are empty unless it is ``solved``.

    It is ``infeasible`` only if HiGHS has shown that.

    Attributes
    ----------
    values
        One figure a column.
    worths
        What one more unit of each row's side would gain.
    seconds
        [s]
    """

    solved: bool
    infeasible: bool
    values: Floats
    worths: Floats
    basis: Basis | None
    seconds: float


def solve_linear(
    matrix: Matrix,
    objective: Floats,
    *,
    seconds: float,
    basis: Basis | None = None,
    keeps_rows: bool = False,
) -> LinearRun:
    """The best columns, whole or not, within the time.

    Where the basis still ``keeps_rows``, since only the objective is new or columns
    came in, the primal simplex method goes on from it.

    Raises
    ------
    SolverFailed
        If HiGHS refuses the model or an option.
    """
    use_threads(1)
    highs = configured(
        time_limit=max(0.0, seconds), threads=1, random_seed=0, output_flag=False
    )
    rows = matrix.rows
    passed = highs.passModel(
        len(objective),
        len(matrix.low),
        rows.nnz,
        ROW_WISE,
        MAXIMISE,
        0.0,
        objective,
        np.zeros(len(objective)),
        matrix.upper,
        matrix.low,
        matrix.high,
        rows.indptr.astype(np.int32),
        rows.indices.astype(np.int32),
        rows.data,
        np.zeros(len(objective), dtype=np.int32),
    )
    expect_ok(passed, "the model")
    if basis is not None:
        if keeps_rows:
            highs.setOptionValue("simplex_strategy", PRIMAL)
        begun = highspy.HighsBasis()
        begun.col_status = [_STATUS[one] for one in basis.columns]
        begun.row_status = [_STATUS[one] for one in basis.rows]
        highs.setBasis(begun)
    stopping = False

    def poll(asked: bool) -> None:
        nonlocal stopping
        stopping |= asked

    def on_interrupt(event: Any) -> None:
        if stopping:
            event.interrupt()

    highs.cbSimplexInterrupt += on_interrupt
    run_aside(highs, poll)
    told = highs.getRunTime()
    if highs.getModelStatus() != highspy.HighsModelStatus.kOptimal:
        nothing = np.empty(0)
        infeasible = highs.getModelStatus() == highspy.HighsModelStatus.kInfeasible
        return LinearRun(False, infeasible, nothing, nothing, None, told)
    solution, ended = highs.getSolution(), highs.getBasis()
    return LinearRun(
        solved=True,
        infeasible=False,
        values=np.array(solution.col_value),
        worths=np.array(solution.row_dual),
        basis=Basis(
            np.fromiter((int(one) for one in ended.col_status), np.int8),
            np.fromiter((int(one) for one in ended.row_status), np.int8),
        ),
        seconds=told,
    )


_STATUS = tuple(highspy.HighsBasisStatus(number) for number in range(5))
