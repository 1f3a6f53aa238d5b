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
    whole: Relaxation,
    slack: float,
    watch: Stopwatch,
    *,
    most: int,
    figures: Floats | None = None,
) -> Floats | None:
    """Prices of the common rows by samples of up to so many offers, growing in size.

    None if that is not worth it, or the time is up before. With the ``figures`` of a
    plan a sample has the money and hours that its jobs take in it, so that what the
    plan reaches can be reached in the sample, if need be with all that orders cost.
    """
    count = int(whole.offers.are.sum())
    if count <= SMALLEST:
        return None
    sizes = [size for size in _sizes(count) if size <= most]
    order = np.random.default_rng(SEED).permutation(len(whole.blocks))
    prices: Floats | None = None
    for size in sizes:
        share = size / count
        for orders in (share, 1.0) if figures is not None else (share,):
            sample = _sample(whole, order, share, figures, orders)
            if prices is None:
                sample.active = sample.allowed.copy()
            else:
                sample.admit(first_columns(sample, prices, slack) & sample.allowed)
            if sample.sift(watch).solved:
                prices = sample.worths[sample.common]
                break
        if not watch.left:
            return None
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


def _sample(
    whole: Relaxation,
    order: Places,
    share: float,
    figures: Floats | None,
    orders: float,
) -> Relaxation:
    """About that share of the offers, by whole blocks, and of the plan's ``orders``."""
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
    part = shrunk(matrix, share)
    if figures is not None:
        common = np.where(matrix.whole, orders, share) * figures
        taken = np.where(matrix.common_columns, common, allowed * figures)
        part = _with_room(part, matrix, taken - share * figures)
    return Relaxation(
        matrix=part,
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


def _with_room(part: Matrix, whole: Matrix, more: Floats) -> Matrix:
    """A shrunk program with the money and hours that ``more`` of a plan take."""
    room = np.where(whole.common_rows, whole.rows @ more, 0)
    return replace(part, low=part.low + room, high=part.high + room)
