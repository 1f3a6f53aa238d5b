"""Cuts on free shipping: an order that is not large enough alone needs the others.

The row of the model asks for enough goods, so half of the goods would buy half of the
free shipping. If some jobs are ordered anyway and are worth less than it takes, the
rest must come from other jobs: knapsack cover inequalities (R. D. Carr, L. K.
Fleischer, V. J. Leung and C. A. Phillips, Strengthening integrality gaps for
capacitated network design and covering problems, SODA 2000; from memory).
"""

from collections.abc import Iterator

import numpy as np

from partsplan.planning.matrix import Cut, Floats, Matrix, Places

CLEAR = 1e-3
"""Least by which a row is broken before it is worth adding. [share of a shipping]"""
SOME = 1e-6
"""Least share of a job that counts as ordered. [0-1]"""


def goods_cuts(
    matrix: Matrix, free_rows: dict[int, int], bundle_of: Places, values: Floats
) -> Iterator[Cut]:
    """The most broken such row of each order with a share of free shipping."""
    for free, row in free_rows.items():
        if values[free] > CLEAR:
            yield from _of_order(matrix, free, row, bundle_of, values)


def _of_order(
    matrix: Matrix, free: int, row: int, bundle_of: Places, values: Floats
) -> Iterator[Cut]:
    at = slice(matrix.rows.indptr[row], matrix.rows.indptr[row + 1])
    columns, figures = matrix.rows.indices[at], matrix.rows.data[at]
    enough = -float(figures[columns == free][0])
    columns, goods = columns[columns != free], figures[columns != free]
    shares, bundle = values[columns], bundle_of[columns]
    most, worst = CLEAR, None
    left = enough
    covered = np.zeros(len(columns))
    for one in _bundles_by_share(bundle, shares):
        inside = bundle == one
        anyway = goods[inside & (shares > SOME)].max()
        if anyway >= left:
            continue
        left -= anyway
        covered[inside] = anyway
        rest = np.clip(goods - covered, 0, left) / left
        broken = values[free] - rest @ shares
        if broken > most:
            most, worst = broken, rest
    if worst is not None:
        asked = worst > 0
        yield Cut(
            columns=np.append(columns[asked], free),
            figures=np.append(-worst[asked], 1.0),
            high=0.0,
        )


def _bundles_by_share(bundle: Places, shares: Floats) -> list[int]:
    """Bundles with any share in the order, the largest share first."""
    named, place = np.unique(bundle, return_inverse=True)
    total = np.bincount(place, weights=shares)
    order = np.argsort(-total, kind="stable")
    return [int(named[one]) for one in order if total[one] > SOME]
