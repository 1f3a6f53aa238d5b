"""Solves a part of a program while the rest stands still."""

from collections import deque
from collections.abc import Callable

import numpy as np

from partsplan.planning.matrix import Floats, Matrix, Places
from partsplan.planning.solver import (
    SolverRun,
    Tuning,
    solve_linear,
    solve_whole,
)


def solve_part(
    matrix: Matrix,
    objective: Floats,
    figures: Floats,
    columns: Places,
    tuning: Tuning,
    *,
    begun: bool,
    heard: Callable[[Floats | None], object] | None = None,
) -> tuple[Floats | None, SolverRun]:
    """The best figures for these columns beside the others, None if none were found.

    Where they have ``begun``, the figures are a plan, and the search starts from it.
    ``heard`` is told again and again while it goes on, each time with the best figures
    so far if there are new ones; it may raise KeyboardInterrupt, as a ``Watch`` may.
    """

    def whole(solved: Floats) -> Floats:
        all_figures = figures.copy()
        all_figures[columns] = solved
        all_figures[matrix.whole] = np.round(all_figures[matrix.whole])
        return all_figures

    newest: deque[Floats] = deque(maxlen=1)  # filled in the solver's own thread

    def watch(*_: float | None) -> None:
        if heard is not None:
            heard(whole(newest.pop()) if newest else None)

    start = None
    if begun:
        at_one = matrix.whole[columns] & (figures[columns] > 0.5)
        start = frozenset(np.flatnonzero(at_one).tolist())
    part = matrix.beside(figures, columns)
    run = solve_whole(
        part,
        objective[columns],
        tuning,
        start=start,
        watch=watch,
        found=newest.append,
    )
    return whole(np.array(run.values)) if run.values else None, run


def completed(
    matrix: Matrix, objective: Floats, ones: tuple[int, ...]
) -> Floats | None:
    """A plan's whole columns with the best shares for them; None if it breaks a row."""
    figures = np.zeros(len(objective))
    figures[list(ones)] = 1
    shares = np.flatnonzero(~matrix.whole)
    if not len(shares):
        return figures
    run = solve_linear(
        matrix.beside(figures, shares), objective[shares], seconds=np.inf
    )
    if not run.solved:
        return None
    figures[shares] = run.values
    return figures
