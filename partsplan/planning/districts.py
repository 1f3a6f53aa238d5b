"""A first plan for a very wide program, district by district.

A district is a number of blocks with its share of money and hours. What one leaves
over the next may use; an order or a tool that one has paid for is free for the next.
With more threads than one the districts go in as many lanes, each with its own share,
and what the lanes leave over waits for the search that follows.
"""

from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from functools import partial

import numpy as np

from partsplan.domain import PlanStatus
from partsplan.planning.limits import LOOSE
from partsplan.planning.matrix import Flags, Floats
from partsplan.planning.parts import solve_part
from partsplan.planning.relaxation import Relaxation
from partsplan.planning.rounding import unsure
from partsplan.planning.sampling import first_columns, shrunk
from partsplan.planning.solver import Tuning
from partsplan.planning.stopwatch import Stopwatch

SEED = 1
OFFERS = 16_000
"""Offers of a district."""
UNSURE = 1200
"""Columns of a district that are solved whole."""
SECONDS = 3.0
"""Longest search in a district. [s]"""


def settled(
    whole: Relaxation,
    prices: Floats | None,
    figures: Floats,
    slack: float,
    watch: Stopwatch,
    told: Callable[[], object],
    *,
    threads: int = 1,
) -> Floats:
    """The plan with the jobs of one district after the other, as the time allows.

    ``figures`` are a plan to begin with, one that buys nothing, say; ``prices`` and
    ``slack`` say which columns may matter.
    """
    districts = tuple(_districts(whole))
    lanes = [districts[first::threads] for first in range(threads)]
    lane = partial(_lane, whole, prices, figures, slack, watch, told)
    if threads == 1:
        return lane(districts)
    with ThreadPoolExecutor(threads) as executor:
        found = tuple(executor.map(lane, lanes))
    together = figures.copy()
    common = whole.matrix.common_columns
    for plan, own in zip(found, lanes, strict=True):
        for district in own:
            together[district] = plan[district]
        together[common] = np.maximum(together, plan)[common]
    return together


def _lane(
    whole: Relaxation,
    prices: Floats | None,
    figures: Floats,
    slack: float,
    watch: Stopwatch,
    told: Callable[[], object],
    districts: Sequence[Flags],
) -> Floats:
    """The plan with the jobs of these districts, within their share of all rows."""
    offers = whole.offers.are
    share = 0.0
    for district in districts:
        own = float((district & offers).sum() / offers.sum())
        share = min(1.0, share + own)
        part = Relaxation(
            matrix=shrunk(whole.matrix, own),
            objective=whole.objective,
            offers=whole.offers,
            free_rows=whole.free_rows,
            blocks=(),
            allowed=district | whole.matrix.common_columns,
            active=np.zeros(len(figures), dtype=bool),
        )
        part.admit(first_columns(part, prices, slack) & part.allowed)
        if not part.sift(watch).solved:
            break
        tuning = Tuning(seconds=min(SECONDS, watch.left), gap=1e-4, tolerance=LOOSE)
        found, run = solve_part(
            shrunk(whole.matrix, share),
            whole.objective,
            _beside(figures, part, district),
            unsure(part, UNSURE),
            tuning,
            begun=False,
            heard=lambda _: told(),
        )
        watch.tell(run.seconds)
        figures = figures if found is None else found
        if run.interrupted or (run.status is PlanStatus.FAILED and not watch.left):
            break
    return figures


def _districts(whole: Relaxation) -> Iterator[Flags]:
    """The columns of each district, blocks with offers drawn by lot."""
    offers = whole.offers.are
    count = np.array([offers[block.columns].sum() for block in whole.blocks])
    order = np.random.default_rng(SEED).permutation(np.flatnonzero(count))
    before = np.cumsum(count[order]) - count[order]
    number = before * max(1, round(count.sum() / OFFERS)) // max(1, count.sum())
    for district in np.unique(number):
        columns = np.zeros(len(offers), dtype=bool)
        for block in order[number == district]:
            columns[whole.blocks[block].columns] = True
        yield columns & ~whole.matrix.common_columns


def _beside(figures: Floats, part: Relaxation, district: Flags) -> Floats:
    """The plan so far, with what the relaxation of the district would do."""
    wished = np.round(part.values)
    common = part.matrix.common_columns
    beside = np.where(district, wished, figures)
    return np.where(common, np.maximum(figures, wished), beside)
