"""What was bought, fitted and promised before the first month, worked out by hand."""

from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import (
    FaultStatus,
    Fitted,
    Flow,
    Inspection,
    Option,
    Purchase,
    Route,
)
from tests.support.reference import best, judge, offers, refusals
from tests.support.reference_prices import points
from tests.support.tiny_garage import START, fixes, tiny_fault, tiny_garage, tiny_option

HALF = Fraction(1, 2)
PURCHASE = Purchase(month=START.plus(-1))


def bought(**fields: Any) -> Option:
    return tiny_option(**{"price": 0, "bought": PURCHASE} | fields)


def fitted(relief: Fraction | int, months: int) -> Fitted:
    """Something that relieves a fault for so many months of the plan."""
    return Fitted(option="old", relief=Fraction(relief), until=START.plus(months))


def test_what_is_bought_is_fitted_in_the_month_of_its_order() -> None:
    garage = tiny_garage(options=(bought(lead_days=45, not_before=START.plus(1)),))
    assert {key: offer.fitted for key, offer in offers(garage).items()} == {
        ("o1", 1): 1,
        ("o1", 2): 2,
    }


def test_its_deposit_is_not_paid_again_and_comes_back() -> None:
    option = bought(core_deposit=50, core_return_cost=7, consumables=3)
    judged = judge(tiny_garage(options=(option,)), {"o1": 1}, {})
    assert judged.out == (0, 3, 7)
    assert judged.back == (0, 0, 50)
    # 2 x 10 gained; 10 paid for 35 months of service, of which 2 count
    assert judged.stages.net_worth == 19


@pytest.mark.parametrize(
    ("waiting", "barred"),
    [
        (bought(id="o2", fixes=fixes("f1")), {"alone"}),
        (bought(id="o2", fixes=fixes("f1", "f2")), {"alone", "both"}),
        (bought(id="o2", fixes=fixes("f1", relief=HALF)), set[str]()),
        (bought(id="o2", route=Route.STAND_IN, followup_within=3), set[str]()),
    ],
)
def test_a_part_that_waits_bars_lasting_ones_for_all_that_it_will_cure(
    waiting: Option, barred: set[str]
) -> None:
    garage = tiny_garage(
        faults=(tiny_fault(), tiny_fault(id="f2")),
        options=(
            waiting,
            tiny_option(id="alone"),
            tiny_option(id="both", fixes=fixes("f1", "f2")),
            tiny_option(id="stopgap", route=Route.STAND_IN, followup_within=3),
        ),
    )
    told = {option for (option, _), why in refusals(garage).items()}
    assert told == barred
    assert set(refusals(garage).values()) <= {"already bought"}


def test_only_more_than_what_was_fitted_is_gained() -> None:
    garage = tiny_garage(
        faults=(tiny_fault(points=Fraction(15), fitted=(fitted(HALF, 2),)),),
        options=(bought(),),
    )
    # 15 x 1/2 = 7.5 is 8 to the nearest even: 15 - 8 while it lasts, then 15
    assert judge(garage, {"o1": 0}, {}).stages.net_worth == 7 + 7 + 15
    assert judge(garage, {}, {}).stages.net_worth == 0


def test_less_than_what_was_fitted_gains_nothing() -> None:
    garage = tiny_garage(
        faults=(tiny_fault(fitted=(fitted(HALF, 1), fitted(Fraction("0.9"), 2))),),
        options=(bought(fixes=fixes("f1", relief=Fraction("0.8"))),),
    )
    assert judge(garage, {"o1": 0}, {}).stages.net_worth == 8


@pytest.mark.parametrize(
    ("relief", "months", "missed", "unsafe"),
    [("0.8", 2, 0, 1), ("0.8", 1, 1, 2), ("0.79", 3, 1, 3), ("1", 0, 1, 3)],
)
def test_a_cure_in_force_meets_demands(
    relief: str, months: int, missed: int, unsafe: int
) -> None:
    grave = tiny_fault(
        fix_by=START.plus(1),
        inspection=Inspection.DANGEROUS,
        fitted=(fitted(Fraction(relief), months),),
    )
    stages = judge(tiny_garage(faults=(grave,)), {}, {}).stages
    assert stages.missed_deadlines == missed
    assert stages.unsafe_vehicle_months == unsafe


@pytest.mark.parametrize(("relief", "broken"), [("0.8", 0), ("0.79", 1)])
def test_a_cure_that_has_run_out_was_before_what_comes_after_it(
    relief: str, broken: int
) -> None:
    before = tiny_fault(id="f2", fitted=(fitted(Fraction(relief), -2),))
    garage = tiny_garage(faults=(tiny_fault(after=("f2",)), before))
    assert len(judge(garage, {"o1": 0}, {}).broken) == broken


def test_a_watched_fault_is_not_cured_by_what_was_fitted() -> None:
    watched = tiny_fault(status=FaultStatus.WATCH, fix_by=START, fitted=(fitted(1, 3),))
    assert judge(tiny_garage(faults=(watched,)), {}, {}).stages.missed_deadlines == 1


def test_promised_money_moves_whatever_is_planned() -> None:
    garage = tiny_garage(
        promised=(
            Flow(month=1, out=300),
            Flow(month=1, out=5, back=40),
            Flow(month=3, out=10**6),
        ),
    )
    judged = judge(garage, {"o1": 1}, {})
    assert judged.out == (0, 317, 0)
    assert judged.back == (0, 40, 0)
    assert judged.balances == (1000, 1723, 2723)


def test_points_go_on_growing() -> None:
    garage = tiny_garage(grown=2)
    fault = tiny_fault(growth=Fraction(1, 2))
    assert [points(garage, fault, month) for month in range(4)] == [
        Fraction("22.5"),
        Fraction("33.75"),
        Fraction("50.625"),
        Fraction("75.9375"),
    ]
    assert points(garage, fault, 4) == 100


def test_what_is_bought_is_fitted_though_it_gains_less_than_it_costs() -> None:
    dear = bought(consumables=100, not_after=START)
    found = best(tiny_garage(options=(dear,)))
    assert found is not None
    assert found.orders == {"o1": 0}


def test_as_many_parts_are_fitted_as_can_be() -> None:
    two = (
        bought(id="cheap", consumables=100),
        bought(id="dear", consumables=200),
        bought(id="far", fixes=fixes("f2"), consumables=500, not_after=START),
        bought(id="late", fixes=fixes("f2"), not_before=START.plus(3)),
    )
    garage = tiny_garage(faults=(tiny_fault(), tiny_fault(id="f2")), options=two)
    found = best(garage)
    assert found is not None
    assert found.orders == {"cheap": 0, "far": 0}


def test_a_deposit_that_comes_back_pays_a_debt() -> None:
    option = bought(core_deposit=50, core_days=0)
    garage = tiny_garage(opening_cash=-1030, options=(option,))
    found = best(garage)
    assert found is not None
    assert found.orders == {"o1": 0}
