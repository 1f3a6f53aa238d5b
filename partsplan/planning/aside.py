"""A search of a whole program in a thread of its own, while parts are solved."""

import atexit
from math import inf
from threading import Thread

import numpy as np

from partsplan.planning.matrix import Floats, Matrix
from partsplan.planning.solver import SolverRun, Tuning, solve_whole

PATIENCE = 2.0
"""Longest wait for a search that is to end. [s]"""


class Aside:
    """Begins at once; ``bound`` falls while it goes on, ``stop`` ends it.

    ``newest`` is the best solution that it has found so far.

    HiGHS leaves Python alone while it searches, so the thread has a core of its own.
    """

    def __init__(
        self, matrix: Matrix, objective: Floats, tuning: Tuning, start: frozenset[int]
    ) -> None:
        self.bound = inf
        self.newest: Floats | None = None
        self._stopping = False
        self._run: SolverRun | None = None
        self._error: Exception | None = None

        def watch(_: float, __: float | None, bound: float | None) -> None:
            if bound is not None:
                self.bound = bound
            if self._stopping:
                raise KeyboardInterrupt

        def found(figures: Floats) -> None:
            self.newest = figures

        def work() -> None:
            try:
                self._run = solve_whole(
                    matrix, objective, tuning, start=start, watch=watch, found=found
                )
                self.bound = min(self.bound, self._run.bound)
            except Exception as error:  # told to whoever asks for the result
                self._error = error

        self._thread = Thread(target=work, daemon=True)
        self._thread.start()

    @property
    def done(self) -> bool:
        """Whether it came to an end by itself."""
        return not self._thread.is_alive()

    def stop(self) -> Floats | None:
        """End it; the best solution that it has found.

        Where HiGHS does not look up for a while, as in the first steps of a wide
        program, it ends by itself later, at the latest before this process does.

        Raises
        ------
        SolverFailed
        """
        self._stopping = True
        self._thread.join(PATIENCE)
        if not self.done:
            atexit.register(self._thread.join)
        if self._error is not None:
            raise self._error
        if self._run is not None and self._run.values:
            return np.array(self._run.values)
        return self.newest
