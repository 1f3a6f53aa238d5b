"""Orders, shipping and tools of plans that can be worked out by hand."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import (
    Coding,
    Month,
    Order,
    Plan,
    Route,
    Supplier,
    Tool,
    ToolBuy,
)
from partsplan.planning import plan
from partsplan.verification import violations
from tests.support.building import fault, garage, option

FEBRUARY = Month(2027, 2)
SHOP = Supplier(
    id="s1", name="Mill Lane Spares", currency="EUR", shipping=690, free_over=20000
)


def planned(**changes: Any) -> Plan:
    made = garage(**changes)
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    assert violations(made, found) == ()
    return found


@pytest.mark.parametrize(
    ("second", "free_over", "shipping"),
    [
        (10000, 20000, 0),  # just as much as it takes
        (10000, 20001, 690),
        (10000, None, 690),
        (10000, 0, 0),
    ],
)
def test_shipping_is_free_from_a_sum_of_goods_on(
    second: int, free_over: int | None, shipping: int
) -> None:
    found = planned(
        budget=(30000,),
        suppliers=(replace(SHOP, free_over=free_over),),
        faults=(fault(), fault("f2")),
        options=(
            option("o1", "f1", supplier="s1"),
            option("o2", "f2", supplier="s1", price=second),
        ),
    )
    goods = 10000 + second
    order = Order(supplier="s1", month=0, goods=goods, shipping=shipping)
    assert found.orders == (order,)
    assert found.ledger[0].out == goods + shipping


@pytest.mark.parametrize(
    ("shipping", "ordered"), [(690, {"o1": 1, "o2": 1}), (0, {"o1": 0, "o2": 1})]
)
def test_a_job_waits_for_another_to_save_shipping(
    shipping: int, ordered: dict[str, int]
) -> None:
    # January has the money for one. A month of waiting loses 5.00 and saves 2.62 of
    # the charge; ordered apart, both pay shipping
    found = planned(
        budget=(10690, 20690),
        suppliers=(replace(SHOP, shipping=shipping, free_over=None),),
        faults=(fault(points=Fraction(5)), fault("f2", points=Fraction(5))),
        options=(
            option("o1", "f1", supplier="s1"),
            option("o2", "f2", supplier="s1", not_before=FEBRUARY),
        ),
    )
    assert found.choices.orders == ordered


def test_a_tool_is_bought_in_a_month_that_can_pay_for_it() -> None:
    # unspent money is lost: February pays the coding, so January pays the tool
    part = option(
        lead_days=30,
        coding=Coding.PAID,
        coding_cost=19000,
        tools=("t1",),
        route=Route.EXCHANGE,
        price=5000,
    )
    found = planned(
        months=2,
        carry_over=False,
        options=(part,),
        tools=(Tool(id="t1", name="Puller", price=3000),),
        money_per_point=Fraction(2000),
    )
    assert found.tools == (ToolBuy(tool="t1", month=0, price=3000),)
    assert [line.balance for line in found.ledger] == [12000, 1000]


def test_a_shared_tool_is_bought_once() -> None:
    found = planned(
        faults=(fault(), fault("f2")),
        options=(
            option("o1", "f1", price=4000, tools=("t1",)),
            option("o2", "f2", price=5000, tools=("t1",)),
        ),
        tools=(Tool(id="t1", name="Puller", price=3000),),
    )
    assert len(found.jobs) == 2
    assert found.tools == (ToolBuy(tool="t1", month=0, price=3000),)
    assert found.ledger[0].out == 12000
