"""What a plan reaches for the counted stages is held for those that follow."""

from math import ceil, inf

import numpy as np

from partsplan.domain import Stage
from partsplan.planning.limits import COUNT_GAP, ROUNDING
from partsplan.planning.matrix import at_most
from partsplan.planning.search import Search

SETTLE_SHARE = 0.1
"""Most of the time for the bound of each stage."""


def settle(search: Search, stage: Stage, *, bounded: bool) -> None:
    """Hold what the plan reaches for a counted stage, and find its bound.

    Unless it is to be ``bounded``, nothing better is known than what no plan can meet.
    """
    search.stage, columns = stage, search.model.unmet_of(stage)
    hopeless = bound = search.model.hopeless_of(stage)
    if columns:
        counted = np.zeros(search.width)
        counted[columns] = -1
        search.aim(counted)
        seconds = search.limits.seconds * SETTLE_SHARE
        watch = search.watch.part(seconds)
        if bounded and search.relaxation.sift(watch).solved:
            bound += max(0, ceil(-search.relaxation.bound - ROUNDING))
        if bounded and search.reached(stage) > bound:
            run = search.search_whole(seconds, absolute_gap=COUNT_GAP)
            if run.bound < inf:
                bound = max(bound, hopeless + ceil(-run.bound - ROUNDING))
    reached = search.reached(stage)
    search.found.bounds[stage] = min(reached, bound)
    search.found.proven &= reached <= bound
    if columns:
        held = at_most(((one, 1.0) for one in columns), float(reached - hopeless))
        search.relaxation.add([held], common=True)
