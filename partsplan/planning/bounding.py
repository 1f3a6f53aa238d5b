"""The bound of a wide program: its relaxation, priced or not, and cut down."""

import numpy as np

from partsplan.planning.prices import descend
from partsplan.planning.sampling import first_columns, sampled_prices
from partsplan.planning.search import Search
from partsplan.planning.solver import LinearRun
from partsplan.planning.stopwatch import Stopwatch

SLACK = 600.0
"""By how much an offer may seem worse than the best of its bundle, and still be in
the first relaxation; it only bears on how long that takes. [minor units]"""
SAMPLE = 20_000
"""Most offers of a sample for first prices."""
STEPS = 8
"""Better prices are looked for so often."""
ROUNDS = 8
"""Most rounds of cuts."""
SLOW = 1e-4
"""Rounds end when one lowers the bound by less. [fraction]"""
TIGHTEN_SHARE = 0.2
"""Most of the time for cuts."""


def relax(search: Search, *, very_wide: bool) -> bool:
    """Solve the relaxation of net worth; whether that came to an end."""
    if very_wide:
        _price(search)
    solved = solve_relaxation(search, search.watch).solved
    search.bound = min(search.bound, search.relaxation.bound)
    search.tell()
    return solved


def cut_down(search: Search) -> None:
    """Cut a solved relaxation down, as far as it pays."""
    watch = search.watch.part(search.limits.seconds * TIGHTEN_SHARE)
    for _ in range(ROUNDS):
        if not (search.going_on and watch.left):
            break
        before = search.bound
        if not search.relaxation.tighten(watch):
            break
        solved = solve_relaxation(search, watch).solved
        search.bound = min(search.bound, search.relaxation.bound)
        search.tell()
        if not solved or before - search.bound < SLOW * abs(before):
            break


def solve_relaxation(search: Search, watch: Stopwatch) -> LinearRun:
    """The relaxation, with the best prices where it has any."""
    if search.relaxation.prices is None:
        return search.relaxation.sift(watch)
    return descend(search.relaxation, watch, STEPS, floor=search.value)


def _price(search: Search) -> None:
    """Price the common rows from now on, at first as a sample does."""
    relaxation = search.relaxation
    sampled = sampled_prices(
        relaxation, SLACK, search.watch, most=SAMPLE, figures=search.figures
    )
    relaxation.admit(first_columns(relaxation, sampled, SLACK))
    nothing = np.zeros(len(relaxation.common))
    relaxation.prices = nothing if sampled is None else sampled
