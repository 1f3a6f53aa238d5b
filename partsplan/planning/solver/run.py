"""What is asked of a search for whole columns, and how it ended."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from partsplan.domain import PlanStatus

Watch = Callable[[float, float | None, float | None], None]
"""Told seconds, best value and bound while a run goes on.

It may raise KeyboardInterrupt to stop the run and keep the best so far.
"""


Found = Callable[[NDArray[np.float64]], None]
"""Told the figures of each better solution, from the solver's own thread."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tuning:
    """How long, how closely and how to search.

    Attributes
    ----------
    seconds
        Longest run. [s]
    gap, absolute_gap
        The run ends when either is reached. [fraction], [objective]
    tolerance
        By how much rows and whole columns may be off. With sums of millions of minor
        units the usual 1e-6 lets a month overspend, so plans found with it are counted
        again.
    careful
        Branch and restart as HiGHS does by itself, for searches of minutes.
    """

    seconds: float
    gap: float
    absolute_gap: float = 0.0
    threads: int = 1
    tolerance: float = 1e-9
    careful: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SolverRun:
    """How a run ended.

    Attributes
    ----------
    status
        Proven only if the gap asked for was reached.
    values
        One figure a column; empty without a solution.
    bound
        No solution has a higher objective; infinite if nothing is known.
    seconds
        [s]
    """

    status: PlanStatus
    values: tuple[float, ...]
    bound: float
    seconds: float
    interrupted: bool = False
