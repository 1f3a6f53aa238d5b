"""Why a plan does not keep what was intended: every told cost is that of a plan."""

import pytest

from partsplan.domain import CostsMore, Intentions, NotThatMonth, Plan, Stage
from partsplan.explanation import departures, wishes
from partsplan.planning import Force, Limits, Planner
from tests.support.small_garages import small_garage

LIMITS = Limits(seconds=30.0, gap=0.0)


@pytest.mark.parametrize("seed", range(40))
def test_what_keeping_it_costs_is_what_a_plan_with_it_lacks(seed: int) -> None:
    garage = small_garage(seed)
    planner = Planner(garage)
    plan = planner.best(LIMITS)
    if not isinstance(plan, Plan):
        return
    orders = {
        offer.option.id: garage.month(offer.ordered) for offer in planner.offers[::2]
    }
    meant = Intentions(number=1, start=garage.start, orders=orders)
    for one in departures(planner, plan, meant, LIMITS, lambda: 1.0):
        month = garage.index(orders[one.option])
        assert plan.choices.orders.get(one.option) != month
        held = planner.best(LIMITS, force=Force(order=frozenset({(one.option, month)})))
        if isinstance(one.reason, NotThatMonth):
            assert held is None
        elif isinstance(one.reason, CostsMore):
            assert isinstance(held, Plan)
            assert held.choices.orders[one.option] == month
            stage = one.reason.stage
            lost = plan.stages.of(stage) - held.stages.of(stage)
            assert one.reason.by == (lost if stage is Stage.WORTH else -lost)


def test_time_that_is_up_is_told_and_nothing_more_is_planned() -> None:
    garage = small_garage(3)
    planner = Planner(garage)
    plan = planner.best(LIMITS)
    assert isinstance(plan, Plan)
    orders = {one.option.id: garage.month(one.ordered) for one in planner.offers[::2]}
    meant = Intentions(number=1, start=garage.start, orders=orders)
    told = departures(planner, plan, meant, LIMITS, lambda: 0.0)
    assert {one.reason.code for one in told} <= {
        "not_worked_out",
        "nothing_left",
        "ruled_out",
        "overdue",
    }
    assert any(one.reason.code == "not_worked_out" for one in told)


def test_wishes_of_the_past_are_for_the_first_month() -> None:
    garage = small_garage(3)
    name = garage.options[0].id
    meant = Intentions(
        number=1,
        start=garage.start.plus(-2),
        orders={name: garage.start.plus(-1), "gone": garage.start},
    )
    assert wishes(garage, meant) == {name: 0}
