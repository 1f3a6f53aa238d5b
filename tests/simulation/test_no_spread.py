"""Without anything to draw, every future is the plan."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest

from partsplan.domain import ZERO, Garage, Option, RiskSettings
from partsplan.simulation import drawn, simulate
from partsplan.verification import violations
from tests.benchmarks.generator import made_up_garage
from tests.simulation.one_job import planned

CERTAIN = RiskSettings(futures=50, late_chance=0.0)


def certain(option: Option) -> Option:
    """No price range, no bad parts, and old units that go back or do not."""
    return replace(
        option,
        price_low=None,
        price_high=option.price,
        dud_chance=ZERO,
        core_chance=Fraction(round(option.core_chance)),
    )


def certain_garage(seed: int, *, carry_over: bool) -> Garage:
    made = made_up_garage(8, 6, seed)
    return replace(
        made,
        options=tuple(map(certain, made.options)),
        budget=tuple(3 * one for one in made.budget),
        carry_over=carry_over,
        reserve=100,
        opening_cash=200,
    )


@pytest.mark.parametrize("carry_over", [True, False])
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_every_future_is_the_plans_own_ledger(seed: int, carry_over: bool) -> None:
    garage = certain_garage(seed, carry_over=carry_over)
    plan = planned(garage)
    assert plan.jobs
    assert not violations(garage, plan)
    futures = drawn(garage, plan, CERTAIN)
    assert futures.balance.shape == (50, 6)
    assert (futures.balance == [line.balance for line in plan.ledger]).all()
    hours = [float(line.hours) for line in plan.ledger]
    np.testing.assert_allclose(futures.hours, [hours] * 50, atol=1e-9)
    for job in plan.jobs:
        assert (futures.good[job.option] == job.fitted).all()


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_nothing_is_uncertain(seed: int) -> None:
    garage = certain_garage(seed, carry_over=True)
    plan = planned(garage)
    risk = simulate(garage, plan, CERTAIN)
    assert (risk.holds, risk.solvent, risk.in_hours) == (1, 1, 1)
    assert risk.extra_reserve == 0
    assert risk.deviation == 0
    assert risk.mean_cost == risk.planned_cost
    assert all(one.chance == one.planned for one in risk.promises)
    assert all(one.planned == one.mean for one in risk.shares)
    assert all(one.share == one.deviation == one.later == 0 for one in risk.shares)
    for line, month in zip(plan.ledger, risk.months, strict=True):
        assert month.planned == month.mean == line.balance
        assert set(month.quantiles) == {line.balance}


def test_a_plan_without_jobs_only_bears_new_faults() -> None:
    made = replace(made_up_garage(4, 3, 1), options=())
    plan = planned(made)
    risk = simulate(made, plan, CERTAIN)
    assert risk.shares == ()
    assert risk.in_hours == 1
    with_new = simulate(made, plan, replace(CERTAIN, new_faults=1.0))
    assert {one.source.value for one in with_new.shares} == {"new_faults"}
    assert with_new.mean_cost > 0
