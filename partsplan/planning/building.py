"""A first plan from prices, some blocks at a time."""

from collections.abc import Iterator

import numpy as np

from partsplan.planning.company import followers
from partsplan.planning.matrix import Floats, Places
from partsplan.planning.parts import solve_part
from partsplan.planning.relaxation import Relaxation
from partsplan.planning.solver import Tuning, Watch
from partsplan.planning.stopwatch import Stopwatch

SEED = 0
CHUNK = 2500
"""Offers that are decided together."""
CHUNK_SECONDS = 2.0
CHUNK_GAP = 1e-3


def built(
    relaxation: Relaxation, figures: Floats, watch: Stopwatch, told: Watch
) -> Floats:
    """The plan with more jobs: chunk by chunk those that pay at the prices.

    Since money and hours cost what they are worth, early chunks take no more of them
    than is good; since none is left when it is gone, the plan stays legal.
    """
    prices = relaxation.worths[relaxation.common]
    earned = relaxation.objective - relaxation.matrix.rows[relaxation.common].T @ prices
    for columns in _chunks(relaxation):
        if not watch.left:
            break
        tuning = Tuning(
            seconds=min(CHUNK_SECONDS, watch.left), gap=CHUNK_GAP, tolerance=1e-6
        )
        found, run = solve_part(
            relaxation.matrix,
            earned,
            figures,
            columns,
            tuning,
            begun=True,
            watch=told,
        )
        watch.tell(run.seconds)
        figures = figures if found is None else found
        if run.interrupted:
            break
    return figures


def _chunks(relaxation: Relaxation) -> Iterator[Places]:
    """The active columns, by chunks of whole blocks, with what follows from them."""
    offers = relaxation.active & relaxation.offers.are
    count = np.array([offers[block.columns].sum() for block in relaxation.blocks])
    order = np.random.default_rng(SEED).permutation(len(count))
    order = order[count[order] > 0]
    number = np.cumsum(count[order]) // CHUNK
    for chunk in np.unique(number):
        chosen = np.zeros(len(offers), dtype=bool)
        for block in order[number == chunk]:
            chosen[relaxation.blocks[block].columns] = True
        chosen &= offers
        follow = followers(relaxation.matrix, chosen, relaxation.offers.are)
        yield np.flatnonzero(chosen | (follow & relaxation.active))
