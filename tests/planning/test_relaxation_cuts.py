"""The relaxation of larger garages: what cuts and prices do to its bound."""

from time import monotonic

import numpy as np
import pytest

from partsplan.domain import Plan, PlanStatus
from partsplan.planning import Planner, plan
from partsplan.planning.demands import demands
from partsplan.planning.interrupts import Interrupts
from partsplan.planning.limits import Limits, Optimum
from partsplan.planning.prices import descend
from partsplan.planning.relaxation import Relaxation
from partsplan.planning.search import Search
from partsplan.planning.stopwatch import Stopwatch
from tests.benchmarks.generator import made_up_garage
from tests.support.larger_garages import larger_garage


def long() -> Stopwatch:
    """Time enough, from now on."""
    return Stopwatch(60.0, monotonic)


def relaxed(seed: int) -> tuple[Relaxation, float]:
    """A relaxation with all columns, and the best net worth that a plan has."""
    garage = made_up_garage(12, 6, seed)
    proven = plan(garage, gap=0.0)
    assert isinstance(proven, Plan)
    assert proven.status is PlanStatus.PROVEN
    limits = Limits(seconds=60.0, gap=0.0, clock=monotonic)
    with Interrupts() as interrupts:
        search = Search(
            Planner(garage).model,
            demands(garage),
            Optimum(ones=()),
            limits,
            (),
            interrupts,
            None,
        )
    search.aim(search.worth)
    search.relaxation.active[:] = True
    return search.relaxation, float(proven.stages.net_worth)


@pytest.mark.parametrize("seed", [2, 3])
def test_cuts_lower_the_bound_and_never_below_a_plan(seed: int) -> None:
    relaxation, best = relaxed(seed)
    assert relaxation.sift(long()).solved
    bounds = [relaxation.bound]
    while relaxation.tighten(long()):
        assert relaxation.sift(long()).solved
        bounds.append(relaxation.bound)
    assert bounds == sorted(bounds, reverse=True)
    assert bounds[-1] < bounds[0]
    assert best <= bounds[-1]


@pytest.mark.parametrize("seed", [2, 3])
def test_priced_rows_bound_as_rows_do(seed: int) -> None:
    relaxation, best = relaxed(seed)
    assert relaxation.sift(long()).solved
    with_rows = relaxation.bound
    relaxation.prices = relaxation.worths[relaxation.common]
    assert relaxation.sift(long()).solved
    assert relaxation.priced_bound() == pytest.approx(with_rows, rel=1e-6)
    relaxation.prices = relaxation.prices * 1.3
    relaxation.aim(relaxation.objective)
    assert relaxation.sift(long()).solved
    worse = relaxation.bound
    assert best <= with_rows <= worse
    assert descend(relaxation, long(), 30, floor=best).solved
    closer = (worse - relaxation.bound) / (worse - with_rows)
    assert closer > 0.5
    assert with_rows * (1 - 1e-6) <= relaxation.bound < worse


def test_columns_that_were_left_out_come_in_where_they_pay() -> None:
    relaxation, _ = relaxed(1)
    assert relaxation.sift(long()).solved
    whole = relaxation.bound
    relaxation.active[:] = False
    relaxation.admit(np.arange(len(relaxation.active)) % 7 == 0)
    relaxation.basis = np.zeros(len(relaxation.active), dtype=np.int8), None
    relaxation.aim(relaxation.objective)
    assert relaxation.sift(long()).solved
    assert relaxation.bound == pytest.approx(whole, rel=1e-4)


def test_a_search_of_two_seconds_gives_a_plan_and_a_bound() -> None:
    garage = larger_garage(1, faults=60, months=12)
    found = plan(garage, seconds=2.0, clock=monotonic)
    assert isinstance(found, Plan)
    assert found.jobs
    assert found.stages.net_worth <= found.bound
