"""Which columns a column needs beside it to mean what it means."""

import numpy as np
from scipy import sparse

from partsplan.planning.matrix import Flags, Matrix


def with_company(matrix: Matrix, wanted: Flags, offers: Flags) -> Flags:
    """The wanted columns with all without which they could not be chosen.

    An offer brings what it needs (an earlier job, a follow-up, its like on the other
    side of a pair), and every column that is no offer of the rows that it stands in
    (shipping, access, tools, the months that it serves).
    """
    own = np.flatnonzero(~matrix.common_rows)
    rows = matrix.rows[own]
    signs = sparse.csr_array(
        (np.sign(rows.data), rows.indices, rows.indptr), rows.shape
    )
    upper = np.isfinite(matrix.high[own]).astype(float)
    lower = np.isfinite(matrix.low[own]).astype(float)
    some, plus, minus = (_where(signs, sign) for sign in (0, 1, -1))
    found, fresh = wanted.copy(), wanted & offers
    while fresh.any():
        ones = fresh.astype(float)
        eased = (plus @ ones > 0) * upper, (minus @ ones > 0) * lower
        needed = minus.T @ eased[0] + plus.T @ eased[1] > 0
        near = (some.T @ ((some @ ones) > 0).astype(float) > 0) & ~offers
        more = (needed | near) & ~found
        found |= more
        fresh = more & offers
    return found


def followers(matrix: Matrix, chosen: Flags, offers: Flags) -> Flags:
    """The columns that are no offers and stand in a row with a chosen one.

    Balances follow from everything.
    """
    rows = abs(matrix.rows[np.flatnonzero(~matrix.common_rows)])
    touched = (rows @ chosen.astype(float) > 0).astype(float)
    balances = matrix.common_columns & ~matrix.whole
    found: Flags = balances | ((rows.T @ touched > 0) & ~offers)
    return found


def _where(signs: sparse.csr_array, sign: int) -> sparse.csr_array:
    """1 where entries have that sign, or any."""
    data = np.ones_like(signs.data) if sign == 0 else (signs.data == sign).astype(float)
    return sparse.csr_array((data, signs.indices, signs.indptr), signs.shape)
