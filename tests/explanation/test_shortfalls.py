"""Demands that a plan cannot meet, and the least that would meet them."""

from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import (
    Access,
    Garage,
    Inspection,
    Milestone,
    Month,
    Plan,
    Shortfall,
    Stage,
)
from partsplan.explanation import shortfalls
from partsplan.planning import plan, remedies
from partsplan.reports.plan_notes import shortfall_line
from tests.support.building import fault, garage, longer, option, richer, vehicle

JANUARY, FEBRUARY = Month(2027, 1), Month(2027, 2)


def planned(made: Garage) -> Plan:
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    return found


def told(made: Garage) -> tuple[Shortfall, ...]:
    return shortfalls(made, planned(made))


POOR: dict[str, dict[str, Any]] = {
    "a deadline": {
        "budget": (3000,),
        "faults": (fault(fix_by=FEBRUARY),),
    },
    "a milestone of two faults": {
        "budget": (3000,),
        "faults": (fault(), fault("f2")),
        "options": (option("o1", "f1"), option("o2", "f2", price=7777)),
        "milestones": (Milestone(id="trip", month=FEBRUARY, faults=("f1", "f2")),),
    },
    "an unsafe vehicle": {
        "budget": (3000,),
        "faults": (fault(inspection=Inspection.DANGEROUS),),
    },
    "a vehicle that cannot be driven": {
        "budget": (3000,),
        "faults": (fault(drivability=4),),
        "options": (option("o1", price=12345, core_deposit=4000),),
    },
    "ten digits": {
        "budget": (3000,),
        "faults": (fault(fix_by=JANUARY),),
        "options": (option("o1", price=10**10 + 1),),
    },
}


@pytest.mark.parametrize(
    ("name", "shortfall"),
    [
        (
            "a deadline",  # 60.00 by February
            Shortfall(
                stage=Stage.DEADLINES,
                subject="f1",
                faults=("f1",),
                months=(1,),
                money=4000,
                hours=Fraction(0),
                exact=True,
            ),
        ),
        (
            "a milestone of two faults",  # 100.00 and 77.77
            Shortfall(
                stage=Stage.DEADLINES,
                subject="trip",
                faults=("f1", "f2"),
                months=(1,),
                money=11777,
                hours=Fraction(0),
                exact=True,
            ),
        ),
        (
            "an unsafe vehicle",
            Shortfall(
                stage=Stage.SAFETY,
                subject="v1",
                faults=("f1",),
                months=(0, 1, 2),
                money=7000,
                hours=Fraction(0),
                exact=True,
            ),
        ),
        (
            "a vehicle that cannot be driven",  # with the deposit 163.45
            Shortfall(
                stage=Stage.MOBILITY,
                subject="v1",
                faults=("f1",),
                months=(0, 1, 2),
                money=13345,
                hours=Fraction(0),
                exact=True,
            ),
        ),
        (
            "ten digits",
            Shortfall(
                stage=Stage.DEADLINES,
                subject="f1",
                faults=("f1",),
                months=(0,),
                money=10**10 - 2999,
                hours=Fraction(0),
                exact=True,
            ),
        ),
    ],
)
def test_money_that_would_do(name: str, shortfall: Shortfall) -> None:
    assert told(garage(**POOR[name])) == (shortfall,)


@pytest.mark.parametrize("name", POOR)
def test_that_much_money_meets_it_and_one_less_does_not(name: str) -> None:
    poor = garage(**POOR[name])
    (short,) = told(poor)
    assert short.money is not None
    assert told(richer(poor, short.money)) == ()
    (still,) = told(richer(poor, short.money - 1))
    assert (still.subject, still.money) == (short.subject, 1)


def test_vehicle_months_that_more_money_shortens_are_told_with_those_left() -> None:
    # in the second month 60.00 are there, in the fourth the part can be had
    poor = garage(months=5, budget=(3000,), faults=(fault(drivability=4),))
    (short,) = told(poor)
    assert (short.months, short.money) == ((0, 1, 2), 7000)


@pytest.mark.parametrize(
    ("changes", "hours"),
    [
        ({"options": (option(hours=Fraction("8.25")),)}, Fraction("0.25")),
        (
            {
                "options": (option(hours=Fraction(8), access=("dash",)),),
                "access": (Access(id="dash", hours=Fraction("1.5")),),
            },
            Fraction("1.5"),
        ),
        (
            {"options": (option(hours=Fraction(9), price=70000),)},
            Fraction(1),
        ),
    ],
)
def test_hours_that_would_do(changes: dict[str, Any], hours: Fraction) -> None:
    busy = garage(faults=(fault(fix_by=FEBRUARY),), **changes)
    (short,) = told(busy)
    money = short.money
    assert money is not None
    assert (short.hours, short.exact) == (hours, True)
    assert told(longer(richer(busy, money), hours)) == ()
    (still,) = told(longer(richer(busy, money), hours - Fraction(1, 100)))
    assert still.hours == Fraction(1, 100)


def test_hours_come_with_the_money_that_they_take() -> None:
    part = option(hours=Fraction(9), price=70000)
    (short,) = told(garage(faults=(fault(fix_by=FEBRUARY),), options=(part,)))
    assert (short.money, short.hours) == (
        30000,
        Fraction(1),
    )  # 400.00 are there by February


@pytest.mark.parametrize(
    "changes",
    [
        {"options": ()},
        {"options": (option(lead_days=60),)},  # fitted a month too late
        {"options": (option("o1", "f1:0.79"),)},  # no cure
        {"options": (option(road_legal=False),)},
        {"options": (option(life_months=1, not_after=JANUARY),)},  # worn out by then
    ],
)
def test_what_no_sum_would_mend(changes: dict[str, Any]) -> None:
    made = garage(faults=(fault(fix_by=FEBRUARY),), **changes)
    assert told(made) == (
        Shortfall(
            stage=Stage.DEADLINES,
            subject="f1",
            faults=("f1",),
            months=(1,),
            money=None,
            hours=None,
            exact=True,
        ),
    )


def test_months_that_no_sum_would_mend_come_apart_from_the_others() -> None:
    part = option(lead_days=30, price=50000)
    made = garage(faults=(fault(drivability=4),), options=(part,))
    found = {one.months: (one.money, one.hours) for one in told(made)}
    # 400.00 are there in February, when it would have to be ordered for March
    assert found == {(0,): (None, None), (1, 2): (30000, 0)}


def test_only_the_faults_that_are_left_stand_in_the_way() -> None:
    made = garage(
        budget=(10000,),
        faults=(fault(), fault("f2", points=Fraction(40))),
        options=(option("o1", "f1"), option("o2", "f2", price=90000)),
        milestones=(Milestone(id="trip", month=JANUARY, faults=("f1", "f2")),),
    )
    (short,) = told(made)
    assert (short.subject, short.faults, short.money) == ("trip", ("f2",), 90000)


def test_money_of_a_month_that_loses_what_is_unspent() -> None:
    made = garage(
        budget=(3000,),
        carry_over=False,
        faults=(fault(fix_by=FEBRUARY),),
    )
    (short,) = told(made)
    assert (short.money, short.hours) == (7000, Fraction(0))


def test_a_plan_that_meets_everything_is_short_of_nothing() -> None:
    made = garage(faults=(fault(fix_by=JANUARY, drivability=4),))
    assert told(made) == ()


def test_nothing_is_asked_of_a_vehicle_that_is_parked_or_gone() -> None:
    made = garage(
        vehicles=(
            vehicle(driven_from=None),
            vehicle("v2", keep_months=1),
        ),
        faults=(
            fault(drivability=4, inspection=Inspection.DANGEROUS),
            fault("f2", vehicle="v2", fix_by=FEBRUARY),
        ),
        options=(),
    )
    assert told(made) == ()


@pytest.mark.parametrize(
    "limits", [{"seconds": 0.0}, {"left": lambda: 0.0}], ids=["solver", "clock"]
)
def test_what_there_is_no_time_for_is_not_told_to_be_impossible(
    limits: dict[str, Any],
) -> None:
    made = garage(budget=(3000,), faults=(fault(fix_by=FEBRUARY),))
    (short,) = shortfalls(made, planned(made), **limits)
    assert (short.money, short.hours, short.exact) == (None, None, False)
    assert shortfall_line(made, short).endswith("not worked out in the time.")


def test_of_too_many_offers_no_sum_is_worked_out(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    made = garage(budget=(3000,), faults=(fault(fix_by=FEBRUARY),))
    monkeypatch.setattr(remedies, "MOST_OFFERS", 1)
    (short,) = told(made)
    assert (short.money, short.hours, short.exact) == (None, None, False)


def test_what_no_sum_would_mend_takes_no_time_to_tell() -> None:
    made = garage(faults=(fault(fix_by=FEBRUARY),), options=())
    (short,) = shortfalls(made, planned(made), left=lambda: 0.0)
    assert short.exact
