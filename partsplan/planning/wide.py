"""Plans for programs that are too wide to be solved at once.

1. The relaxation (``relaxation``) is solved with a penalty on every unmet demand, so
   high that no money outweighs it, and tightened by cuts.
2. The columns that it is sure about are held where they are, and the rest is solved
   with whole columns (``rounding``). That gives the first plan.
3. What this plan reaches for each counted stage is held, and the penalties go.
4. The relaxation of net worth gives the bound. The best plan gets better by solving
   parts of it again while the rest stands still (``neighbours``), and by wider and
   wider roundings.
5. A program that is not too wide is searched whole, too, which lowers the bound.

With two threads, what is wide is searched in one of them and parts in the other.

A very wide program has its first plan district by district (``districts``), and money
and hours are priced instead of being rows of one relaxation (``prices``).
"""

from math import floor

import numpy as np

from partsplan.domain import Stage
from partsplan.errors import SolverFailed
from partsplan.planning.better import (
    round_and_cut,
    search_parts,
    search_parts_and_whole,
)
from partsplan.planning.bounding import cut_down, relax
from partsplan.planning.demands import Demand
from partsplan.planning.first_plan import first_plan
from partsplan.planning.force import Held
from partsplan.planning.interrupts import Interrupts
from partsplan.planning.limits import ROUNDING, Limits, Optimum, Progress
from partsplan.planning.model import Model
from partsplan.planning.parts import completed
from partsplan.planning.search import Search
from partsplan.planning.settle import settle

WHOLE_SEARCH = 12_000
"""Programs with more columns are never searched whole. [columns]"""
PRICED = 60_000
"""With more offers the common rows are priced instead of solved with."""


def optimise(
    model: Model,
    demands: tuple[Demand, ...],
    found: Optimum,
    limits: Limits,
    *,
    rows: tuple[Held, ...] = (),
    hint: tuple[int, ...] | None = None,
    progress: Progress | None = None,
) -> Optimum | None:
    """The best columns that the time allows, as ``stages.optimise``; worth comes last.

    Raises
    ------
    SolverFailed
        If the time was up before anything was found.
    KeyboardInterrupt
        If the search was stopped before that.
    """
    with Interrupts() as interrupts:
        search = Search(model, demands, found, limits, rows, interrupts, progress)
        for known in (found.ones, hint):
            if known is not None:
                search.take(completed(search.matrix, search.objective, known))
        very_wide = int(search.relaxation.offers.are.sum()) > PRICED
        if not first_plan(search, very_wide=very_wide):
            return None
        if search.figures is None:
            if search.stopped:
                raise KeyboardInterrupt
            raise SolverFailed("the time was up before any plan was found")
        searchable = search.width <= WHOLE_SEARCH
        begun = search.relaxation.basis
        for stage in model.garage.priority[:-1]:
            settle(search, stage, bounded=searchable)
        search.relaxation.basis = begun
        search.stage = Stage.WORTH
        search.aim(search.worth)
        relaxed = relax(search, very_wide=very_wide)
        if limits.threads > 1 and not searchable and (relaxed or very_wide):
            round_and_cut(search)
        elif relaxed:
            cut_down(search)
        (search_parts_and_whole if searchable else search_parts)(search)
        return _ended(search)


def _ended(search: Search) -> Optimum:
    """Where the search ended, in our own words."""
    found = search.found
    found.ones = None if search.figures is None else search.ones(search.figures)
    reached = search.reached(Stage.WORTH)
    most = float(np.maximum(search.worth, 0) @ search.matrix.upper)
    found.bounds[Stage.WORTH] = max(reached, floor(min(search.bound, most) + ROUNDING))
    found.seconds = search.watch.passed
    found.interrupted = search.stopped
    return found
