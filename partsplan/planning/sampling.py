"""First prices of money and hours, from a sample of the jobs with its share of both."""

from dataclasses import replace

import numpy as np

from partsplan.planning.matrix import Flags, Floats, Matrix, Places
from partsplan.planning.promising import promising
from partsplan.planning.relaxation import Relaxation
from partsplan.planning.stopwatch import Stopwatch

SMALLEST = 4000
"""Offers of the smallest sample."""
STEP = 4
"""Each sample is so many times as large as the one before."""
SEED = 0


def sampled_prices(
    whole: Relaxation, slack: float, watch: Stopwatch, *, most: int
) -> Floats | None:
    """Prices of the common rows by samples of up to so many offers, growing in size.

    None if that is not worth it, or the time is up before.
    """
    count = int(whole.offers.are.sum())
    if count <= SMALLEST:
        return None
    sizes = [size for size in _sizes(count) if size <= most]
    order = np.random.default_rng(SEED).permutation(len(whole.blocks))
    prices: Floats | None = None
    for size in sizes:
        sample = _sample(whole, order, size / count)
        if prices is None:
            sample.active = sample.allowed.copy()
        else:
            sample.admit(first_columns(sample, prices, slack) & sample.allowed)
        if not sample.sift(watch).solved:
            return None
        prices = sample.worths[sample.common]
    return prices


def first_columns(relaxation: Relaxation, prices: Floats | None, slack: float) -> Flags:
    """The columns to begin with at these prices, all where there are none.

    Those that count unmet demands, balances, and the offers that promise something.
    """
    matrix, offers = relaxation.matrix, relaxation.offers
    if prices is None:
        return relaxation.allowed
    loose = matrix.common_columns & ~matrix.whole
    penalties = (relaxation.objective < 0) & ~matrix.whole
    return (
        loose
        | penalties
        | promising(matrix, relaxation.objective, offers, prices, slack)
    )


def _sizes(count: int) -> list[int]:
    sizes = [SMALLEST]
    while sizes[-1] * STEP * STEP <= count:
        sizes.append(sizes[-1] * STEP)
    return sizes


def _sample(whole: Relaxation, order: Places, share: float) -> Relaxation:
    """About that share of the offers, by whole blocks."""
    matrix, offers = whole.matrix, whole.offers
    allowed = matrix.common_columns.copy()
    wanted = share * offers.are.sum()
    for number in order:
        if wanted <= 0:
            break
        columns = whole.blocks[number].columns
        allowed[columns] = True
        wanted -= offers.are[columns].sum()
    share = float((allowed & offers.are).sum() / offers.are.sum())
    return Relaxation(
        matrix=shrunk(matrix, share),
        objective=whole.objective,
        offers=offers,
        free_rows=whole.free_rows,
        blocks=(),
        allowed=allowed,
        active=np.zeros(len(allowed), dtype=bool),
    )


def shrunk(matrix: Matrix, share: float) -> Matrix:
    """The same program with that share of money and hours."""
    rows, balances = matrix.common_rows, matrix.common_columns & ~matrix.whole
    return replace(
        matrix,
        low=np.where(rows, matrix.low * share, matrix.low),
        high=np.where(rows, matrix.high * share, matrix.high),
        upper=np.where(balances, matrix.upper * share, matrix.upper),
    )
