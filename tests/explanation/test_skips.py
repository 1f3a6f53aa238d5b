"""Why a fault is left alone: every reason by a garage of its own."""

from collections import Counter
from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import (
    Access,
    AfterWatched,
    Coding,
    CrowdedOut,
    DearerThanAllMoney,
    FaultStatus,
    Garage,
    Inspection,
    LongerThanAllHours,
    Month,
    NoCodingTool,
    NoOption,
    NotRoadLegal,
    OutsideWindow,
    Plan,
    QuoteOver,
    Reason,
    Route,
    RouteRule,
    Skip,
    Supplier,
    System,
    TooCold,
    Tool,
    VehicleGone,
    WorthLessThanCost,
)
from partsplan.explanation import skips
from partsplan.planning import plan
from tests.support.building import fault, garage, instalments, option, vehicle
from tests.support.small_garages import small_garage

COLD = (Fraction(5),) * 12
JANUARY = Month(2027, 1)


def told(made: Garage) -> tuple[Skip, ...]:
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    return skips(made, found)


def one(**changes: Any) -> dict[str, Any]:
    """Changes to the only option of a garage."""
    return {"options": (option(**changes),)}


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({"options": ()}, NoOption()),
        (
            {"faults": (fault(system=System.TYRES),)} | one(route=Route.USED),
            RouteRule(option="o1", route=Route.USED, system=System.TYRES),
        ),
        (one(road_legal=False), NotRoadLegal(option="o1")),
        (one(coding=Coding.SELF), NoCodingTool(option="o1")),
        (
            {"mean_temperature": COLD} | one(min_temp=Fraction(12)),
            TooCold(option="o1", needed=Fraction(12), warmest=Fraction(5)),
        ),
        (
            one(valid_until=Month(2026, 12)),
            QuoteOver(option="o1", valid_until=Month(2026, 12)),
        ),
        (
            one(lead_days=120),
            OutsideWindow(
                option="o1", earliest=Month(2027, 5), not_before=None, not_after=None
            ),
        ),
        (
            one(not_after=JANUARY, lead_days=30),
            OutsideWindow(
                option="o1",
                earliest=Month(2027, 2),
                not_before=None,
                not_after=JANUARY,
            ),
        ),
        (
            {"vehicles": (vehicle(keep_months=1),)} | one(lead_days=30),
            VehicleGone(option="o1"),
        ),
        (
            {
                "faults": (
                    fault(after=("f2",)),
                    fault("f2", status=FaultStatus.WATCH),
                )
            },
            AfterWatched(option="o1", fault="f2"),
        ),
        (
            {"budget": (3000,)},  # 90.00 by the last month
            DearerThanAllMoney(option="o1", needed=10000, money=9000),
        ),
        (
            {"budget": (9999,), "carry_over": False},
            DearerThanAllMoney(option="o1", needed=10000, money=9999),
        ),
        (
            {"budget": (0,), "opening_cash": 29999, "reserve": 20000},
            DearerThanAllMoney(option="o1", needed=10000, money=9999),
        ),
        (
            one(hours=Fraction("8.5")),
            LongerThanAllHours(option="o1", needed=Fraction("8.5"), hours=Fraction(8)),
        ),
        (
            {"access": (Access(id="dash", hours=Fraction(3)),)}
            | one(hours=Fraction(6), access=("dash",)),
            LongerThanAllHours(option="o1", needed=Fraction(9), hours=Fraction(8)),
        ),
        (
            # 1 of 36 months is charged: 2.78
            {"months": 1, "faults": (fault(points=Fraction("2.77")),)},
            WorthLessThanCost(option="o1", worth=277, cost=278),
        ),
        (
            # 2.78 and all of the shipping and the tool
            {
                "months": 1,
                "suppliers": (
                    Supplier(
                        id="s1",
                        name="Mill Lane Spares",
                        currency="EUR",
                        shipping=5000,
                        free_over=10001,
                    ),
                ),
                "tools": (Tool(id="t1", name="Puller", price=4000),),
                "faults": (fault(points=Fraction("92.77")),),
            }
            | one(supplier="s1", tools=("t1",)),
            WorthLessThanCost(option="o1", worth=9277, cost=9278),
        ),
    ],
)
def test_reason_that_rules_an_only_option_out(
    changes: dict[str, Any], reason: Reason
) -> None:
    assert told(garage(**changes)) == (Skip(fault="f1", reason=reason),)


def test_a_cost_holds_no_shipping_that_is_free() -> None:
    shop = Supplier(
        id="s1",
        name="Mill Lane Spares",
        currency="EUR",
        shipping=5000,
        free_over=10000,
    )
    made = garage(
        months=1,
        suppliers=(shop,),
        faults=(fault(points=Fraction(2)),),
        options=(option(supplier="s1"),),
    )
    reason = WorthLessThanCost(option="o1", worth=200, cost=278)
    assert told(made) == (Skip(fault="f1", reason=reason),)


def test_a_job_that_is_worth_it_alone_is_crowded_out_by_a_better_one() -> None:
    made = garage(
        months=1,
        budget=(10000,),
        faults=(fault(), fault("f2", points=Fraction(49))),
        options=(option("o1", "f1"), option("o2", "f2")),
    )
    reason = CrowdedOut(option="o2", worth=4900, cost=278)  # 1 of 36 months
    assert told(made) == (Skip(fault="f2", reason=reason),)


def test_a_demand_that_costs_more_than_it_is_worth_is_crowded_out() -> None:
    unsafe = fault(points=Fraction(0), inspection=Inspection.DANGEROUS)
    also = fault("f2", points=Fraction(0), inspection=Inspection.DANGEROUS)
    made = garage(
        months=1,
        budget=(10000,),
        faults=(unsafe, also),
        options=(option("o1", "f1"), option("o2", "f2")),
    )
    # one job leaves the vehicle as unsafe as none does
    assert told(made) == (
        Skip(fault="f1", reason=CrowdedOut(option="o1", worth=0, cost=278)),
        Skip(fault="f2", reason=CrowdedOut(option="o2", worth=0, cost=278)),
    )


def test_every_barred_option_says_why() -> None:
    made = garage(
        faults=(fault(system=System.BRAKES),),
        options=(
            option("worn", route=Route.USED),
            option("painted", route=Route.REFINISH),
            option("late", lead_days=200),
        ),
    )
    used = RouteRule(option="worn", route=Route.USED, system=System.BRAKES)
    refinish = RouteRule(option="painted", route=Route.REFINISH, system=System.BRAKES)
    late = OutsideWindow(
        option="late", earliest=Month(2027, 8), not_before=None, not_after=None
    )
    assert told(made) == (Skip(fault="f1", reason=used, also=(refinish, late)),)


def test_a_job_that_is_told_of_is_the_best_of_those_in_reach() -> None:
    made = garage(
        months=1,
        budget=(10000,),
        faults=(fault("f0", points=Fraction(100)), fault(points=Fraction(30))),
        options=(
            option("first", "f0"),
            option("dear", price=9000),
            option("cheap", price=3600),
            option("out of reach", price=10001),
        ),
    )
    reason = CrowdedOut(option="cheap", worth=3000, cost=100)
    assert told(made) == (Skip(fault="f1", reason=reason),)


def test_money_that_comes_too_late_is_no_money() -> None:
    # all is due with the order, which must come first; money is there by March
    part = option(valid_until=JANUARY, instalments=instalments("0:1"))
    made = garage(budget=(9999, 20000), options=(part,))
    reason = DearerThanAllMoney(option="o1", needed=10000, money=9999)
    assert told(made) == (Skip(fault="f1", reason=reason),)


def test_watched_fixed_and_served_faults_are_not_skipped() -> None:
    made = garage(
        faults=(
            fault(),
            fault("f2", status=FaultStatus.WATCH),
            fault("f3", status=FaultStatus.FIXED),
            fault("f4"),
        )
    )
    assert told(made) == (Skip(fault="f4", reason=NoOption()),)


@pytest.mark.parametrize("first", range(0, 120, 40))
def test_every_open_fault_without_a_job_is_named_once_in_file_order(
    first: int,
) -> None:
    codes: Counter[str] = Counter()
    for seed in range(first, first + 40):
        made = small_garage(seed)
        found = plan(made, gap=0.0)
        if not isinstance(found, Plan):
            continue
        touched = {name for job in found.jobs for name in job.faults}
        expected = [
            fault.id
            for fault in made.faults
            if fault.status is FaultStatus.OPEN and fault.id not in touched
        ]
        skipped = skips(made, found)
        assert [skip.fault for skip in skipped] == expected
        codes.update(skip.reason.code for skip in skipped)
    assert len(codes) >= 4
