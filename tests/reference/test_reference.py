"""Rules of the reference, worked out by hand."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest

from partsplan.domain import (
    Access,
    FaultStatus,
    Garage,
    Route,
    Supplier,
    Tool,
)
from tests.support.reference import judge
from tests.support.tiny_garage import fixes, tiny_fault, tiny_garage, tiny_option

HALF = Fraction(1, 2)


def broken(
    garage: Garage, orders: Mapping[str, int], tools: Mapping[str, int] | None = None
) -> int:
    return len(judge(garage, orders, tools or {}).broken)


@pytest.mark.parametrize(
    ("status", "orders", "count"),
    [
        (FaultStatus.OPEN, {"o2": 1}, 1),
        (FaultStatus.OPEN, {"o2": 1, "o1": 2}, 1),
        (FaultStatus.OPEN, {"o2": 1, "o1": 1}, 0),
        (FaultStatus.OPEN, {"o2": 2, "o1": 0}, 0),  # worn out by then, cured before
        (FaultStatus.OPEN, {"o2": 1, "half": 0}, 1),
        (FaultStatus.OPEN, {"both": 1}, 0),  # the same job
        (FaultStatus.FIXED, {"o2": 0}, 0),
        (FaultStatus.WATCH, {"o2": 1}, 1),
        (FaultStatus.WATCH, {"both": 1}, 1),
    ],
)
def test_after(status: FaultStatus, orders: dict[str, int], count: int) -> None:
    garage = tiny_garage(
        faults=(tiny_fault(status=status), tiny_fault(id="f2", after=("f1",))),
        options=(
            tiny_option(id="o1", life_months=1),
            tiny_option(id="half", fixes=fixes("f1", relief=HALF)),
            tiny_option(id="o2", fixes=fixes("f2")),
            tiny_option(id="both", fixes=fixes("f1", "f2")),
        ),
    )
    assert broken(garage, orders) == count


@pytest.mark.parametrize(
    ("orders", "count"),
    [
        ({"new1": 0, "new2": 0}, 0),
        ({"new1": 0, "new2": 1}, 4),  # both months, by number and by route
        ({"new1": 0}, 2),
        ({"new1": 0, "used2": 0}, 1),  # alike by number, not by the route of both
        ({"uprated1": 0, "used2": 0}, 0),  # routes of one fault only
        ({"joint": 0}, 0),
        ({"joint": 0, "new1": 0, "new2": 0}, 0),
        ({"stand-in": 2}, 0),  # no lasting option
    ],
)
def test_pairs(orders: dict[str, int], count: int) -> None:
    garage = tiny_garage(
        faults=(tiny_fault(), tiny_fault(id="f2", pair_with=("f1",))),
        options=(
            tiny_option(id="new1"),
            tiny_option(id="uprated1", route=Route.UPRATED),
            tiny_option(id="new2", fixes=fixes("f2")),
            tiny_option(id="used2", fixes=fixes("f2"), route=Route.USED),
            tiny_option(id="joint", fixes=fixes("f1", "f2"), route=Route.EXCHANGE),
            tiny_option(id="stand-in", route=Route.STAND_IN, followup_within=1),
        ),
    )
    assert broken(garage, orders) == count
    fixed = replace(garage.faults[1], status=FaultStatus.FIXED)
    single = replace(garage, faults=(garage.faults[0], fixed))
    assert broken(single, {"new1": 0}) == 0


@pytest.mark.parametrize(
    ("orders", "count"),
    [
        ({"stand-in": 0}, 2),  # one for each fault
        ({"stand-in": 0, "o1": 1}, 1),
        ({"stand-in": 0, "o1": 1, "o2": 1}, 0),
        ({"stand-in": 0, "o1": 2, "o2": 1}, 1),  # too late
        ({"stand-in": 0, "o1": 0, "o2": 1}, 1),  # not after it
        ({"stand-in": 2}, 0),  # ends past the horizon
        ({"stand-in": 0, "o1": 1, "other": 1}, 1),  # by a stand-in again
        ({"stand-in": 1, "o1": 0, "half": 2, "o2": 2}, 0),
    ],
)
def test_follow_ups(orders: dict[str, int], count: int) -> None:
    garage = tiny_garage(
        faults=(tiny_fault(), tiny_fault(id="f2")),
        options=(
            tiny_option(
                id="stand-in",
                fixes=fixes("f1", "f2"),
                route=Route.STAND_IN,
                followup_within=1,
            ),
            tiny_option(id="o1"),
            tiny_option(id="half", fixes=fixes("f1", "f2", relief=HALF)),
            tiny_option(id="o2", fixes=fixes("f2")),
            tiny_option(
                id="other",
                fixes=fixes("f2"),
                route=Route.STAND_IN,
                followup_within=2,
            ),
        ),
    )
    assert broken(garage, orders) == count


def test_one_lasting_option_for_a_fault_alone() -> None:
    garage = tiny_garage(
        faults=(tiny_fault(), tiny_fault(id="f2")),
        options=(
            tiny_option(id="o1"),
            tiny_option(id="o2", fixes=fixes("f1", relief=HALF)),
            tiny_option(id="both", fixes=fixes("f1", "f2")),
            tiny_option(id="stand-in", route=Route.STAND_IN, followup_within=1),
        ),
    )
    assert broken(garage, {"o1": 0, "o2": 1}) == 1
    assert broken(garage, {"o1": 1, "both": 1, "stand-in": 0}) == 0


def test_access_is_shared_within_a_month() -> None:
    options = tuple(
        tiny_option(id=f"o{n}", fixes=fixes(f"f{n}"), hours=HALF, access=("dash",))
        for n in (1, 2)
    )
    garage = tiny_garage(
        faults=(tiny_fault(), tiny_fault(id="f2")),
        options=options,
        access=(Access(id="dash", hours=Fraction(3)),),
        hours=(Fraction(4), Fraction(3)),
    )
    assert judge(garage, {"o1": 0, "o2": 0}, {}).hours[0] == 4
    assert broken(garage, {"o1": 0, "o2": 0}) == 0
    assert broken(garage, {"o1": 1, "o2": 2}) == 2  # 3.5 h of 3 h, twice


@pytest.mark.parametrize(
    ("tools", "count"), [({}, 1), ({"t1": 0}, 0), ({"t1": 1}, 0), ({"t1": 2}, 1)]
)
def test_tools_are_there_when_needed(tools: dict[str, int], count: int) -> None:
    garage = tiny_garage(
        options=(tiny_option(price=0, tools=("t1", "t2")),),
        tools=(Tool(id="t1", name="t1", price=7), Tool(id="t2", name="", owned=True)),
    )
    assert broken(garage, {"o1": 1}, tools) == count
    assert judge(garage, {"o1": 1}, {"t1": 1}).stages.net_worth == 13
    assert broken(garage, {}, {"t1": 1}) == 1  # no job needs it
    assert broken(garage, {"o1": 1}, {"t1": 1, "t2": 0}) == 1  # owned already


@pytest.mark.parametrize(
    ("months", "orders"),
    [
        ((0, 0), {("s1", 0): (60, 0)}),  # 60 reach 0.6 x 100
        ((0, 1), {("s1", 0): (29, 4), ("s1", 1): (31, 4)}),  # 7 x 0.6 = 4.2
    ],
)
def test_shipping_is_paid_for_each_order_that_is_not_free(
    months: tuple[int, int], orders: dict[tuple[str, int], tuple[int, int]]
) -> None:
    garage = tiny_garage(
        faults=(tiny_fault(), tiny_fault(id="f2")),
        options=(
            tiny_option(id="o1", price=29, supplier="s1", lead_days=15),
            tiny_option(id="o2", fixes=fixes("f2"), price=31, supplier="s1"),
        ),
        suppliers=(
            Supplier(id="s1", name="", currency="USD", shipping=7, free_over=100),
        ),
        rates={"USD": Fraction("0.6")},
    )
    judged = judge(garage, dict(zip(("o1", "o2"), months, strict=True)), {})
    assert judged.orders == orders
    shipping = sum(cost for _, cost in orders.values())
    assert sum(judged.out) == 60 + shipping


@pytest.mark.parametrize(
    ("carry_over", "balances"), [(True, (2, -2, 4)), (False, (2, -4, 6))]
)
def test_balances(carry_over: bool, balances: tuple[int, ...]) -> None:
    garage = tiny_garage(
        options=(tiny_option(price=10),),
        budget=(7, 6),
        opening_cash=-5,
        carry_over=carry_over,
        reserve=1,
    )
    judged = judge(garage, {"o1": 1}, {})
    assert judged.balances == balances
    assert len(judged.broken) == 1
