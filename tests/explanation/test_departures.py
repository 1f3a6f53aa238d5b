"""Why a plan does not keep what was intended: every told cost is that of a plan."""

from fractions import Fraction

import pytest

from partsplan.domain import (
    CostsMore,
    Garage,
    Intentions,
    LeavesParts,
    NotThatMonth,
    Plan,
    Stage,
)
from partsplan.explanation import departures, wishes
from partsplan.explanation.ties import parts_fitted
from partsplan.planning import Force, Limits, Planner
from tests.support.building import bought, fault, garage, option
from tests.support.carried_garages import carried_garage
from tests.support.small_garages import small_garage

LIMITS = Limits(seconds=30.0, gap=0.0)


@pytest.mark.parametrize(
    "made",
    [*map(small_garage, range(40)), *map(carried_garage, range(40))],
    ids=lambda made: made.name,
)
def test_what_keeping_it_costs_is_what_a_plan_with_it_lacks(made: Garage) -> None:
    planner = Planner(made)
    plan = planner.best(LIMITS)
    if not isinstance(plan, Plan):
        return
    orders = {
        offer.option.id: made.month(offer.ordered) for offer in planner.offers[::2]
    }
    meant = Intentions(number=1, start=made.start, orders=orders)
    for one in departures(planner, plan, meant, LIMITS, lambda: 1.0):
        month = made.index(orders[one.option])
        assert plan.choices.orders.get(one.option) != month
        held = planner.best(LIMITS, force=Force(order=frozenset({(one.option, month)})))
        if isinstance(one.reason, NotThatMonth):
            assert held is None
            continue
        if not isinstance(one.reason, LeavesParts | CostsMore):
            continue
        assert isinstance(held, Plan)
        left = parts_fitted(made, plan.choices) - parts_fitted(made, held.choices)
        assert isinstance(one.reason, LeavesParts) == (left > 0)
        if isinstance(one.reason, CostsMore):
            assert held.choices.orders[one.option] == month
            stage = one.reason.stage
            lost = plan.stages.of(stage) - held.stages.of(stage)
            assert one.reason.by == (lost if stage is Stage.WORTH else -lost)


def test_time_that_is_up_is_told_and_nothing_more_is_planned() -> None:
    made = small_garage(3)
    planner = Planner(made)
    plan = planner.best(LIMITS)
    assert isinstance(plan, Plan)
    orders = {one.option.id: made.month(one.ordered) for one in planner.offers[::2]}
    meant = Intentions(number=1, start=made.start, orders=orders)
    told = departures(planner, plan, meant, LIMITS, lambda: 0.0)
    assert {one.reason.code for one in told} <= {
        "not_worked_out",
        "nothing_left",
        "ruled_out",
        "overdue",
    }
    assert any(one.reason.code == "not_worked_out" for one in told)


def test_wishes_of_the_past_are_for_the_first_month() -> None:
    made = small_garage(3)
    name = made.options[0].id
    meant = Intentions(
        number=1,
        start=made.start.plus(-2),
        orders={name: made.start.plus(-1), "gone": made.start},
    )
    assert wishes(made, meant) == {name: 0}


def test_an_intention_may_give_way_to_a_part_that_waits() -> None:
    made = garage(
        hours=(Fraction(3), Fraction(0)),
        faults=(fault(), fault("f2")),
        options=(
            bought(hours=Fraction(2)),
            option("o2", "f2", hours=Fraction(2)),
        ),
    )
    planner = Planner(made)
    plan = planner.best(LIMITS)
    assert isinstance(plan, Plan)
    meant = Intentions(number=1, start=made.start, orders={"o2": made.start})
    (told,) = departures(planner, plan, meant, LIMITS, lambda: 1.0)
    assert told.reason == LeavesParts(parts=("o1",))
