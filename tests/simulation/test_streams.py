"""The same seed gives the same answer, in whatever order things stand."""

from dataclasses import replace
from functools import cache

import numpy as np

from partsplan.domain import Garage, Plan, RiskSettings
from partsplan.simulation import drawn, simulate
from partsplan.simulation.streams import stream
from tests.benchmarks.generator import made_up_garage
from tests.simulation.one_job import planned

SETTINGS = RiskSettings(futures=400, seed=3, late_chance=0.1, new_faults=0.1)


@cache
def risky() -> tuple[Garage, Plan]:
    garage = made_up_garage(10, 6, 5)
    return garage, planned(garage)


def test_the_same_seed_gives_the_same_answer() -> None:
    garage, plan = risky()
    first, again = (simulate(garage, plan, SETTINGS) for _ in range(2))
    assert first == again
    assert first.deviation > 0
    other = simulate(garage, plan, replace(SETTINGS, seed=4))
    assert other.months != first.months


def test_the_order_of_rows_and_jobs_changes_nothing() -> None:
    garage, plan = risky()
    turned = replace(
        garage,
        options=garage.options[::-1],
        faults=garage.faults[::-1],
        vehicles=garage.vehicles[::-1],
        suppliers=garage.suppliers[::-1],
    )
    moved = replace(plan, jobs=plan.jobs[::-1], orders=plan.orders[::-1])
    first, second = drawn(garage, plan, SETTINGS), drawn(turned, moved, SETTINGS)
    assert (first.balance == second.balance).all()
    np.testing.assert_allclose(first.hours, second.hours, atol=1e-9)
    assert simulate(turned, moved, SETTINGS).shares == (
        simulate(garage, plan, SETTINGS).shares
    )


def test_an_option_draws_the_same_whatever_else_is_chosen() -> None:
    garage, plan = risky()
    whole = drawn(garage, plan, SETTINGS)
    for job in plan.jobs:
        alone = drawn(garage, replace(plan, jobs=(job,), orders=()), SETTINGS)
        assert (alone.good[job.option] == whole.good[job.option]).all()


def test_streams_of_other_names_and_seeds_differ() -> None:
    seen = {
        float(stream(seed, *names).random())
        for seed in (0, 1, 2**40)
        for names in (("dud", "a"), ("dud", "b"), ("price", "a"), ("duda",))
    }
    assert len(seen) == 12
