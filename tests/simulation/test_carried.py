"""The futures of plans that carry something from before."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest

from partsplan.domain import (
    ONE,
    ZERO,
    Fitted,
    Flow,
    Garage,
    Inspection,
    Month,
    Option,
    Plan,
    Promise,
    Purchase,
    RiskSettings,
)
from partsplan.planning import plan
from partsplan.simulation import drawn, simulate
from tests.simulation.one_job import planned, settings
from tests.support.building import START, bought, fault, garage
from tests.support.carried_garages import carried_garage

CERTAIN = RiskSettings(futures=5, late_chance=0.0)
CHUNK = 25


def certain(option: Option) -> Option:
    """No price range, no bad parts, and old units that go back or do not."""
    return replace(
        option,
        price_low=None,
        price_high=None,
        dud_chance=ZERO,
        core_chance=Fraction(round(option.core_chance)),
    )


def certain_plan(seed: int) -> tuple[Garage, Plan] | None:
    made = carried_garage(seed)
    made = replace(made, options=tuple(map(certain, made.options)))
    found = plan(made)
    return (made, found) if isinstance(found, Plan) else None


@pytest.mark.parametrize("first", range(0, 100, CHUNK))
def test_without_spread_every_future_is_the_plans_own_ledger(first: int) -> None:
    for seed in range(first, first + CHUNK):
        if (made := certain_plan(seed)) is None:
            continue
        futures = drawn(*made, CERTAIN)
        balances = [line.balance for line in made[1].ledger]
        assert (futures.balance == balances).all(), f"carried garage {seed}"
        hours = [float(line.hours) for line in made[1].ledger]
        assert np.allclose(futures.hours, hours, atol=1e-9), f"carried garage {seed}"


@pytest.mark.parametrize("first", range(0, 100, CHUNK))
def test_without_spread_everything_comes_as_planned(first: int) -> None:
    for seed in range(first, first + CHUNK):
        if (made := certain_plan(seed)) is None:
            continue
        risk = simulate(*made, CERTAIN)
        assert risk.mean_cost == risk.planned_cost, f"carried garage {seed}"
        assert all(one.planned == one.mean for one in risk.shares)
        kept = [one.chance == one.planned for one in risk.promises]
        assert all(kept), f"carried garage {seed}"


def test_what_was_fitted_before_keeps_a_promise_while_it_lasts() -> None:
    made = garage(
        options=(),
        faults=(
            fault(
                fix_by=START.plus(1),
                inspection=Inspection.DANGEROUS,
                fitted=(Fitted(option="o9", relief=ONE, until=START.plus(2)),),
            ),
            fault(
                "f2",
                fix_by=START.plus(2),
                fitted=(Fitted(option="o9", relief=ONE, until=START.plus(2)),),
            ),
        ),
    )
    found = {
        (one.promise, one.subject): (one.planned, one.chance)
        for one in simulate(made, planned(made), settings()).promises
    }
    assert found == {
        (Promise.DEADLINE, "f1"): (True, 1.0),
        (Promise.DEADLINE, "f2"): (False, 0.0),
        (Promise.CURE, "f1"): (True, 1.0),
    }


def test_promised_money_is_in_what_the_plan_costs() -> None:
    made = garage(options=(), promised=(Flow(month=1, out=700, back=200),))
    risk = simulate(made, planned(made), settings())
    assert risk.planned_cost == risk.mean_cost == 500
    assert [month.mean for month in risk.months] == [20000, 39500, 59500]


def test_a_bad_part_that_was_bought_long_ago_is_replaced_in_the_month_after() -> None:
    long_ago = bought(
        bought=Purchase(month=Month(2026, 6)),
        dud_chance=Fraction(1, 2),
        warranty_months=24,
    )
    made = garage(options=(long_ago,), months=12)
    good = drawn(made, planned(made), settings()).good["o1"]
    months, futures = np.unique(good[good < 3], return_counts=True)
    assert months.tolist() == [0, 1, 2]
    assert futures[0] / len(good) == pytest.approx(0.5, abs=0.02)
    assert futures[1] / len(good) == pytest.approx(0.25, abs=0.02)
