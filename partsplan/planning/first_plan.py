"""The first plan of a wide program, with a penalty on every unmet demand."""

from partsplan.domain import PlanStatus
from partsplan.planning.bounding import SAMPLE, SLACK, solve_relaxation
from partsplan.planning.districts import settled
from partsplan.planning.matrix import Floats
from partsplan.planning.rounding import unsure
from partsplan.planning.sampling import first_columns, sampled_prices
from partsplan.planning.search import Search
from partsplan.planning.solver import LinearRun

FIRST, MORE = 1200, 2
"""Columns that are solved whole at first, and how many times as many next."""
FIRST_SHARE, COLUMNS_A_SECOND = 0.1, 6000
"""Most of the time for a rounding: a share, or a second for so many columns."""
DISTRICTS_SHARE = 0.6
"""Most of the time for a plan by districts."""


def first_plan(search: Search, *, very_wide: bool) -> bool:
    """Look for a plan; False if there is none."""
    if very_wide and search.figures is not None:
        _by_districts(search, search.figures)
        return True
    relaxed = _relax(search)
    if relaxed.solved:
        _first_round(search)
    return not relaxed.infeasible


def _relax(search: Search) -> LinearRun:
    """The first relaxation, tightened once."""
    relaxation = search.relaxation
    prices = sampled_prices(relaxation, SLACK, search.watch, most=SAMPLE)
    relaxation.admit(first_columns(relaxation, prices, SLACK))
    run = solve_relaxation(search, search.watch)
    if run.infeasible and not relaxation.active.all():
        relaxation.active[:] = True
        run = relaxation.solve(search.watch)
    if run.solved and relaxation.tighten(search.watch):
        again = solve_relaxation(search, search.watch)
        run = again if again.solved else run
    return run


def _first_round(search: Search) -> None:
    """A plan from the relaxation, but for the columns that it is unsure of.

    More of them where the others leave no room for a plan; all the time that is left
    where there is no plan at all.
    """
    count = FIRST
    seconds = search.limits.seconds * FIRST_SHARE
    watch = search.watch.part(min(seconds, search.width / COLUMNS_A_SECOND))
    while not search.stopped:
        left = watch.left or (search.watch.left if search.figures is None else 0.0)
        if not left:
            break
        run = search.solve(unsure(search.relaxation, count), left, begun=False)
        solved = run.status is not PlanStatus.INFEASIBLE
        if (solved and search.figures is not None) or count > search.width:
            break
        count *= MORE


def _by_districts(search: Search, figures: Floats) -> None:
    """A first plan where one relaxation of everything would take too long."""
    relaxation = search.relaxation
    prices = sampled_prices(relaxation, SLACK, search.watch, most=SAMPLE)
    watch = search.watch.part(search.limits.seconds * DISTRICTS_SHARE)
    threads = search.limits.threads
    found = settled(
        relaxation, prices, figures, SLACK, watch, search.heard, threads=threads
    )
    search.take(found)
