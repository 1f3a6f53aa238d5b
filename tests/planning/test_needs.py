"""The least extra money without which a debt or reserve leaves no plan."""

from dataclasses import replace
from fractions import Fraction

import pytest

from partsplan.domain import Garage, Month, Needs, Plan
from partsplan.planning import plan
from tests.support.building import garage, option
from tests.support.reference import best
from tests.support.small_garages import small_garage

SEEDS = range(400)
INFEASIBLE = [seed for seed in SEEDS if best(small_garage(seed)) is None]


def richer(poor: Garage, month: Month, money: int) -> Garage:
    """The same garage with that much more in that month's budget."""
    budget = list(poor.monthly_budget)
    budget[poor.index(month)] += money
    return replace(poor, budget=tuple(budget))


def test_some_small_garages_have_no_plan() -> None:
    carry_over = [small_garage(seed).carry_over for seed in INFEASIBLE]
    assert carry_over.count(True) > 5
    assert carry_over.count(False) > 5


@pytest.mark.parametrize("seed", INFEASIBLE)
def test_that_money_makes_a_plan_and_one_less_does_not(seed: int) -> None:
    poor = small_garage(seed)
    needs = plan(poor)
    assert isinstance(needs, Needs)
    assert isinstance(plan(richer(poor, needs.month, needs.money)), Plan)
    too_little = richer(poor, needs.month, needs.money - 1)
    assert plan(too_little) == Needs(month=needs.month, money=1)
    assert best(too_little) is None


def test_debt_is_carried_to_the_worst_month() -> None:
    # 100 in debt, reserve 30: short of 110, 90 and 70; 110 in the first month will do
    poor = garage(budget=(20,), opening_cash=-100, reserve=30)
    assert plan(poor) == Needs(month=Month(2027, 1), money=110)


def test_month_is_the_first_that_breaks_the_reserve() -> None:
    poor = garage(budget=(40, 20, 40), reserve=30, carry_over=False)
    assert plan(poor) == Needs(month=Month(2027, 2), money=10)


def test_months_that_lose_unspent_money_are_each_short() -> None:
    poor = garage(budget=(20, 30, 25), reserve=30, carry_over=False)
    assert plan(poor) == Needs(month=Month(2027, 1), money=15)


def test_a_deposit_that_comes_back_mends_a_month_that_loses_unspent_money() -> None:
    # 5.00 short of the reserve in the second month; a deposit of 20.00 comes back then
    core = option(price=100, core_deposit=2000)
    poor = garage(
        budget=(5000, 500, 5000), reserve=1000, carry_over=False, options=(core,)
    )
    found = plan(poor)
    assert isinstance(found, Plan)
    assert found.choices.orders == {"o1": 0}
    hopeless = replace(poor, options=(replace(core, core_chance=Fraction(1, 2)),))
    assert plan(hopeless) == Needs(month=Month(2027, 2), money=500)
