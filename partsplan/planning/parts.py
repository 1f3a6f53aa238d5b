"""Solves a part of a program while the rest stands still."""

import numpy as np

from partsplan.planning.matrix import Floats, Matrix, Places
from partsplan.planning.solver import (
    SolverRun,
    Tuning,
    Watch,
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
    watch: Watch | None = None,
) -> tuple[Floats | None, SolverRun]:
    """The best figures for these columns beside the others, None if none were found.

    Where they have ``begun``, the figures are a plan, and the search starts from it.
    """
    start = None
    if begun:
        at_one = matrix.whole[columns] & (figures[columns] > 0.5)
        start = frozenset(np.flatnonzero(at_one).tolist())
    part = matrix.beside(figures, columns)
    run = solve_whole(part, objective[columns], tuning, start=start, watch=watch)
    if not run.values:
        return None, run
    found = figures.copy()
    found[columns] = run.values
    found[matrix.whole] = np.round(found[matrix.whole])
    return found, run


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
