"""Prices of money and hours at which the relaxation promises least.

With the common rows priced, a garage falls into blocks that only orders and tools tie
together, and the linear program is solved many times faster than with those rows. Any
prices give a bound. Each solution gives a plane that is nowhere above it; the next
prices are the nearest ones at which all planes lie a step lower (the level method, C.
Lemarechal, A. Nemirovskii and Y. Nesterov, Mathematical Programming 69, 1995; from
memory). What a plan is worth says how low it can go at most.
"""

import numpy as np
from scipy.optimize import nnls

from partsplan.planning.matrix import Floats
from partsplan.planning.relaxation import Relaxation
from partsplan.planning.solver import LinearRun
from partsplan.planning.stopwatch import Stopwatch

STEP = 0.1
"""How far down the next prices should lead. [share of the way to the plan]"""
UNIT = 1e-3
"""Prices are changed in units of themselves and this share of the bound, spread over
the row's side."""
CLOSE = 2e-4
"""A bound this near to the plan is not bettered. [fraction]"""


def descend(
    relaxation: Relaxation, watch: Stopwatch, steps: int, *, floor: float
) -> LinearRun:
    """Better prices from ``relaxation.prices`` on; no prices promise less than floor.

    It ends with the best prices, solved.
    """
    run = relaxation.sift(watch)
    if not run.solved:
        return run
    best = relaxation.worths[relaxation.common]
    planes = [_plane(relaxation)]
    lowest = _value(planes[0], best)
    for _ in range(steps):
        if not watch.left or lowest - floor <= CLOSE * abs(lowest):
            break
        step = STEP * (lowest - floor)
        prices = _nearest(relaxation, planes, best, lowest, step)
        if prices is None:  # the planes say so themselves
            floor = lowest - step
            continue
        relaxation.prices = prices
        if not relaxation.sift(watch).solved:
            break
        planes.append(_plane(relaxation))
        value = _value(planes[-1], prices)
        if value < lowest:
            best, lowest = prices, value
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


def _nearest(
    relaxation: Relaxation,
    planes: list[Plane],
    best: Floats,
    lowest: float,
    step: float,
) -> Floats | None:
    """The prices nearest to the best at which no plane is higher than a step below.

    None if there are none. Prices are never below nothing, but for equations.
    """
    common = relaxation.common
    sides = np.maximum(np.abs(relaxation.matrix.high[common]), 1)
    unit = np.abs(best) + UNIT * abs(lowest) / sides
    bounded = np.flatnonzero(np.isinf(relaxation.matrix.low[common]))
    falls = [-left * unit for _, left in planes]
    heights = [_value(plane, best) - lowest + step for plane in planes]
    rows = np.vstack([*falls, np.diag(unit)[bounded]])
    least = np.append(heights, -best[bounded])
    size = np.maximum(np.abs(rows).max(axis=1), 1e-12)
    moved = _least_distance(rows / size[:, None], least / size)
    return None if moved is None else best + unit * moved


def _least_distance(rows: Floats, least: Floats) -> Floats | None:
    """The shortest vector x with rows @ x >= least, None if there is none.

    C. L. Lawson and R. J. Hanson, Solving Least Squares Problems, chapter 23: least
    distance programming; from memory.
    """
    target = np.zeros(rows.shape[1] + 1)
    target[-1] = 1
    stacked = np.vstack([rows.T, least])
    weights, _ = nnls(stacked, target)
    rest = stacked @ weights - target
    if abs(rest[-1]) < 1e-9:
        return None
    found: Floats = -rest[:-1] / rest[-1]
    return found if (rows @ found >= least - 1e-6).all() else None
