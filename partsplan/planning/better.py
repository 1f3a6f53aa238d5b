"""Better plans for a wide program: parts of the best one, and wider roundings."""

import numpy as np

from partsplan.domain import PlanStatus
from partsplan.planning.aside import Aside
from partsplan.planning.bounding import cut_down
from partsplan.planning.first_plan import FIRST, FIRST_SHARE, MORE
from partsplan.planning.limits import LOOSE
from partsplan.planning.matrix import Floats, Places
from partsplan.planning.neighbours import Neighbours
from partsplan.planning.rounding import unsure
from partsplan.planning.search import Search
from partsplan.planning.solver import Tuning

WHOLE_SHARE = 0.2
"""Most of the time for the first search of the whole program."""
ROUND_SHARE, ROUNDED_A_SECOND = 0.3, 60_000
"""Most of the time left for a wider rounding, which is begun only if that is a second
for so many columns of the program."""
STALE = 12
"""Parts solved in vain before something wider is tried."""
PART, MOST_PART, PARTS = 400, 2500, 40
"""Offers of the first parts: so many, or that share of the columns."""
PART_SECONDS = 2.0
"""Longest search of a part. [s]"""


def search_parts_and_whole(search: Search) -> None:
    """For a program that can be searched whole, which lowers the bound."""
    neighbours = _neighbours(search)
    if search.limits.threads > 1:
        _search_beside(search, neighbours)
    else:
        search.search_whole(search.limits.seconds * WHOLE_SHARE)
        _improve(search, neighbours, search.watch.left / 2)
        search.search_whole(search.watch.left)


def search_parts(search: Search) -> None:
    """Parts of the plan, and by turns or beside them wider and wider roundings."""
    neighbours = _neighbours(search)
    if search.relaxation.prices is None:
        _round(search, FIRST, search.limits.seconds * FIRST_SHARE)
    count = MORE * FIRST
    while search.going_on:
        if search.limits.threads > 1:
            _round_beside(search, neighbours, count)
        else:
            _improve(search, neighbours, ROUND_SHARE * search.watch.left)
            if seconds := _room(search):
                _round(search, count, seconds)
        count = min(MORE * count, search.width)


def _neighbours(search: Search) -> Neighbours:
    size = min(max(PART, search.width // PARTS), MOST_PART)
    return Neighbours(search.relaxation, size)


def _improve(
    search: Search,
    neighbours: Neighbours,
    seconds: float,
    *,
    beside: Aside | None = None,
) -> None:
    """Solve parts of the best plan again until that helps no more.

    It ends, too, when a search beside it does.
    """
    watch = search.watch.part(seconds)
    vain = 0
    while (
        search.going_on and watch.left and vain < STALE and search.figures is not None
    ):
        if beside is not None and beside.done:
            break
        before = search.value
        columns = neighbours.part(
            search.figures, search.relaxation.bound - search.value
        )
        run = search.solve(columns, min(PART_SECONDS, watch.left), begun=True)
        neighbours.learn(solved=run.status is PlanStatus.PROVEN)
        vain = 0 if search.value > before else vain + 1


def _round(search: Search, count: int, seconds: float) -> None:
    """A plan near the relaxation; if there is none, one between it and the best."""
    columns = unsure(search.relaxation, count)
    run = search.solve(columns, seconds, begun=False)
    if run.status is PlanStatus.INFEASIBLE:
        columns = unsure(search.relaxation, count, search.figures)
        search.solve(columns, seconds, begun=True)


def round_and_cut(search: Search) -> None:
    """Round the relaxation in another thread while it is cut down."""
    aside = _rounding(search, MORE * FIRST)
    cut_down(search)
    if aside is not None:
        _rounded(search, *aside)


def _round_beside(search: Search, neighbours: Neighbours, count: int) -> None:
    """Round in another thread while parts are solved."""
    aside = _rounding(search, count)
    if aside is None:
        _improve(search, neighbours, search.watch.left)
        return
    while search.going_on and not aside[0].done:
        _improve(search, neighbours, search.watch.left, beside=aside[0])
    _rounded(search, *aside)


def _room(search: Search) -> float:
    """Seconds for a wider rounding; 0 if there are too few left to begin one."""
    seconds = ROUND_SHARE * search.watch.left
    return seconds if seconds * ROUNDED_A_SECOND >= search.width else 0.0


def _rounding(search: Search, count: int) -> tuple[Aside, Floats, Places] | None:
    """A rounding between the relaxation and the best plan, begun in another thread.

    With the figures beside it and the columns that it solves; None if there is no time
    for one.
    """
    figures, seconds = search.figures, _room(search)
    if figures is None or not seconds:
        return None
    columns = unsure(search.relaxation, count, figures)
    aside = Aside(
        search.matrix.beside(figures, columns),
        search.objective[columns],
        Tuning(
            seconds=seconds,
            gap=search.limits.gap,
            tolerance=LOOSE,
        ),
        frozenset(np.flatnonzero(figures[columns] > 0.5).tolist()),
    )
    return aside, figures, columns


def _rounded(search: Search, aside: Aside, figures: Floats, columns: Places) -> None:
    """Take what a rounding in another thread has found."""
    solved = aside.stop()
    if solved is not None:
        found = figures.copy()
        found[columns] = solved
        search.take(search.rounded(found))


def _search_beside(search: Search, neighbours: Neighbours) -> None:
    """Search the whole program in another thread while parts are solved."""
    if search.figures is None:
        return
    aside = Aside(
        search.uncut(),
        search.objective,
        Tuning(
            seconds=search.watch.left,
            gap=search.limits.gap,
            tolerance=LOOSE,
            careful=True,
        ),
        frozenset(search.ones(search.figures)),
    )
    search.aside = aside
    _round(search, FIRST, search.limits.seconds * FIRST_SHARE)
    while search.going_on and not aside.done:
        _improve(search, neighbours, search.watch.left, beside=aside)
    solved = aside.stop()
    search.bound = min(search.bound, aside.bound)
    if solved is not None:
        search.take(search.rounded(solved))
