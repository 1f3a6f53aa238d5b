"""Figures of the reference, worked out by hand."""

from fractions import Fraction

import pytest

from partsplan.domain import (
    FaultStatus,
    Inspection,
    Milestone,
    Vehicle,
)
from tests.support.reference import judge
from tests.support.tiny_garage import START, fixes, tiny_fault, tiny_garage, tiny_option

HALF = Fraction(1, 2)


def test_figures_of_one_job() -> None:
    option = tiny_option(price=360, hours=Fraction(2))
    judged = judge(tiny_garage(options=(option,)), {"o1": 1}, {})
    assert judged.broken == ()
    assert judged.stages.net_worth == -1  # 2 x 10 gained, 360 x 2 / 35 = 20.57 paid
    assert judged.out == (0, 360, 0)
    assert judged.balances == (1000, 1640, 2640)
    assert list(judged.hours) == [0, 2, 0]
    assert judged.orders == {}


def test_reliefs_never_add_up() -> None:
    options = (
        tiny_option(id="o1", fixes=fixes("f1", relief=HALF), price=0),
        tiny_option(id="o2", fixes=fixes("f1", "f2", relief=Fraction("0.8")), price=0),
    )
    garage = tiny_garage(faults=(tiny_fault(), tiny_fault(id="f2")), options=options)
    # f1: 5 in month 0, 8 in months 1 and 2; f2: 8 in months 1 and 2.
    assert judge(garage, {"o1": 0, "o2": 1}, {}).stages.net_worth == 37


def test_an_order_without_an_offer_is_broken_and_not_counted() -> None:
    judged = judge(tiny_garage(), {"o1": 3, "o9": 0}, {"t9": 0})
    assert len(judged.broken) == 3
    assert judged.stages.net_worth == 0


@pytest.mark.parametrize(
    ("orders", "unsafe", "undrivable"),
    [
        ({}, 2, 2),  # driven in months 1 and 2 only; two faults count once
        ({"both": 2}, 1, 1),
        ({"both": 1}, 0, 0),
        ({"one": 1}, 2, 2),  # the other fault keeps it off the road
        ({"both": 0}, 1, 1),  # worn out in month 2
    ],
)
def test_vehicle_months(orders: dict[str, int], unsafe: int, undrivable: int) -> None:
    bad = {"inspection": Inspection.DANGEROUS, "drivability": 4}
    garage = tiny_garage(
        vehicles=(
            Vehicle(id="v1", name="v1", driven_from=START.plus(1)),
            Vehicle(id="v2", name="v2", driven_from=None),
        ),
        faults=(
            tiny_fault(**bad),
            tiny_fault(id="f2", **bad),
            tiny_fault(id="f3", status=FaultStatus.FIXED, **bad),
            tiny_fault(id="f4", vehicle="v2", **bad),
        ),
        options=(
            tiny_option(id="one"),
            tiny_option(id="both", fixes=fixes("f1", "f2"), life_months=2),
        ),
    )
    stages = judge(garage, orders, {}).stages
    assert stages.unsafe_vehicle_months == unsafe
    assert stages.undrivable_vehicle_months == undrivable


def test_a_watched_fault_is_never_cured() -> None:
    watched = tiny_fault(
        id="f2", status=FaultStatus.WATCH, drivability=4, fix_by=START.plus(1)
    )
    garage = tiny_garage(
        faults=(tiny_fault(), watched),
        options=(tiny_option(fixes=fixes("f1", "f2"), price=0),),
    )
    stages = judge(garage, {"o1": 0}, {}).stages
    assert stages.undrivable_vehicle_months == 3
    assert stages.missed_deadlines == 1
    assert stages.net_worth == 30


@pytest.mark.parametrize(
    ("fix_by", "fitted", "missed"),
    [
        (-4, 0, 0),  # counts in month 0
        (-4, 1, 1),
        (1, 1, 0),
        (1, 2, 1),
        (2, 0, 1),  # worn out by then
        (3, None, 0),  # past the horizon
    ],
)
def test_deadlines(fix_by: int, fitted: int | None, missed: int) -> None:
    options = (tiny_option(life_months=2),)
    orders = {} if fitted is None else {"o1": fitted}
    by_fault = tiny_garage(
        faults=(tiny_fault(fix_by=START.plus(fix_by)),), options=options
    )
    by_milestone = tiny_garage(
        faults=(tiny_fault(), tiny_fault(id="f2", status=FaultStatus.FIXED)),
        options=options,
        milestones=(Milestone(id="m1", month=START.plus(fix_by), faults=("f1", "f2")),),
    )
    assert judge(by_fault, orders, {}).stages.missed_deadlines == missed
    assert judge(by_milestone, orders, {}).stages.missed_deadlines == missed


def test_a_vehicle_that_is_gone_has_no_deadline() -> None:
    garage = tiny_garage(
        vehicles=(Vehicle(id="v1", name="v1", keep_months=2),),
        faults=(tiny_fault(fix_by=START.plus(2), drivability=4),),
    )
    stages = judge(garage, {}, {}).stages
    assert (stages.missed_deadlines, stages.undrivable_vehicle_months) == (0, 2)
