"""Prices of money and hours at which the relaxation promises least.

With the common rows priced, a garage falls into blocks that only orders and tools tie
together, and the linear program is solved many times faster than with those rows. Any
prices give a bound; the best are found by cutting planes within a box around the best
so far, which grows where it helps and shrinks where it does not (the boxstep method, R.
E. Marsten, W. W. Hogan and J. W. Blankenship, Operations Research 23(3) 1975; from
memory).
"""

import numpy as np
from scipy import sparse

from partsplan.planning.matrix import Floats, Matrix
from partsplan.planning.relaxation import Relaxation
from partsplan.planning.solver import LinearRun, solve_linear
from partsplan.planning.stopwatch import Stopwatch

BOX = 0.004
"""Half the width of the first box. [share of a price]"""
LEAST = 0.01
"""Half the width of the first box where a price is nothing."""
CLOSE = 2e-4
"""Where the cutting planes promise no more than that, the search ends. [fraction]"""


def descend(relaxation: Relaxation, watch: Stopwatch, steps: int) -> LinearRun:
    """Better prices from ``relaxation.prices`` on.

    It ends with the best prices, solved.
    """
    run = relaxation.sift(watch)
    if not run.solved:
        return run
    planes = [_plane(relaxation)]
    best = relaxation.worths[relaxation.common]
    lowest = _value(planes[0], best)
    half = LEAST + BOX * np.maximum(np.abs(best), 0.05 * np.abs(best).max())
    for _ in range(steps):
        prices, promised = _lowest(planes, best, half, _free(relaxation.matrix), watch)
        if not watch.left or lowest - promised <= CLOSE * max(1.0, abs(lowest)):
            break
        relaxation.prices = prices
        if not relaxation.sift(watch).solved:
            break
        planes.append(_plane(relaxation))
        value = _value(planes[-1], prices)
        if value < lowest:
            half = half * (1.5 if lowest - value > 0.5 * (lowest - promised) else 1.0)
            best, lowest = prices, value
        else:
            half = half / 2
    relaxation.prices = best
    last = relaxation.solve(watch)
    return last if last.solved else run


Plane = tuple[float, Floats]
"""Worth of a solution by itself, and what it leaves of each common row."""


def _plane(relaxation: Relaxation) -> Plane:
    matrix, values = relaxation.matrix, relaxation.values
    common = relaxation.common
    left = matrix.high[common] - matrix.rows[common] @ values
    return float(relaxation.objective @ values), left


def _value(plane: Plane, prices: Floats) -> float:
    return plane[0] + float(plane[1] @ prices)


def _free(matrix: Matrix) -> Floats:
    """The least price of each common row: nothing, or less if it is an equation."""
    common = np.flatnonzero(matrix.common_rows)
    return np.where(np.isfinite(matrix.low[common]), -np.inf, 0.0)


def _lowest(
    planes: list[Plane], best: Floats, half: Floats, least: Floats, watch: Stopwatch
) -> tuple[Floats, float]:
    """The prices in the box at which the highest plane is lowest, and its height.

    Columns: for each price what it is above the box's lower side, then the height.
    """
    low = np.maximum(best - half, least)
    width = best + half - low
    figures = np.array([np.append(left, -1.0) for _, left in planes])
    floor = max(
        _value(plane, low) + float(np.minimum(plane[1], 0) @ width) for plane in planes
    )
    sides = np.array([-_value(plane, low) for plane in planes]) + floor
    count = len(low) + 1
    part = Matrix(
        rows=sparse.csr_array(figures),
        low=np.full(len(planes), -np.inf),
        high=sides,
        upper=np.append(width, np.inf),
        whole=np.zeros(count, dtype=bool),
        common_rows=np.zeros(len(planes), dtype=bool),
        common_columns=np.zeros(count, dtype=bool),
    )
    run = solve_linear(part, np.append(np.zeros(len(low)), -1.0), seconds=np.inf)
    watch.tell(run.seconds)
    if not run.solved:
        return best, -np.inf
    return low + run.values[:-1], floor + float(run.values[-1])
