"""The garage of the next month in plain figures."""

from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest

from partsplan.domain import (
    CURED,
    Cause,
    FaultStatus,
    Fitted,
    Flow,
    Garage,
    Month,
    Purchase,
)
from partsplan.ledger import next_garage
from tests.support.small_logbook import GARAGE, folded

JANUARY, FEBRUARY, MARCH, APRIL = (Month(2027, month) for month in (1, 2, 3, 4))
ON_THE_CAR = (
    "2027-01-05 ordered alternator amount=25000 deposit=9000",
    "2027-01-28 arrived alternator",
    "2027-02-10 fitted alternator hours=3",
)


def later(month: Month, *lines: str, made: Garage = GARAGE) -> Garage:
    """The garage after these entries, seen on the first day of a month."""
    ledger = folded(*lines, made=made)
    today = max(date(*month, 1), ledger.last or date.min)
    return next_garage(made, ledger, month, today)


def test_nothing_that_happened_leaves_the_garage_as_it_is() -> None:
    moved = later(JANUARY)
    assert replace(moved, budget=GARAGE.budget, hours=GARAGE.hours) == GARAGE
    assert moved.monthly_budget == GARAGE.monthly_budget
    assert moved.monthly_hours == GARAGE.monthly_hours


@pytest.mark.parametrize(
    ("carry_over", "opening"),
    [
        (True, -14000 - 2800),  # 200.00 came in January, 340.00 went
        (False, -14000 - 2800),  # a debt moves on
    ],
)
def test_money_is_what_is_left_of_the_months_before(
    carry_over: bool, opening: int
) -> None:
    made = replace(GARAGE, carry_over=carry_over)
    february = later(FEBRUARY, *ON_THE_CAR, made=made)
    # 28.00 for coding and consumables left in February already
    assert february.opening_cash == opening
    assert february.monthly_budget == (20000,) * 6


def test_unspent_money_moves_on_or_is_lost() -> None:
    lines = ("2027-01-03 paid counter amount=3000", "2027-01-09 money-in - amount=500")
    assert later(FEBRUARY, *lines).opening_cash == 17500
    lost = replace(GARAGE, carry_over=False)
    assert later(FEBRUARY, *lines, made=lost).opening_cash == 0


def test_lists_go_on_from_that_month_and_repeat_their_last_value() -> None:
    made = replace(
        GARAGE, budget=(100, 200, 300), hours=(Fraction(1), Fraction(2)), months=3
    )
    march = later(MARCH, made=made)
    assert march.start == MARCH
    assert march.monthly_budget == (300, 300, 300)
    assert list(march.monthly_hours) == [2, 2, 2]
    assert march.opening_cash == 300
    assert march.grown == 2
    assert [one.keep_months for one in march.vehicles] == [34, 34]


def test_hours_that_were_worked_are_off_the_month() -> None:
    february = later(FEBRUARY, *ON_THE_CAR)
    assert list(february.monthly_hours) == [5, 8, 8, 8, 8, 8]
    busy = (*ON_THE_CAR[:2], "2027-02-10 fitted alternator hours=9.5")
    assert later(FEBRUARY, *busy).monthly_hours[0] == 0
    assert list(later(MARCH, *ON_THE_CAR).monthly_hours) == [8] * 6


def test_what_is_fitted_for_good_is_fixed_and_its_old_unit_brings_money() -> None:
    february = later(FEBRUARY, *ON_THE_CAR)
    assert february.fault["charging"].status is FaultStatus.FIXED
    assert february.option["alternator"] == GARAGE.option["alternator"]
    # 45 days are two months: in April the freight goes and 90.00 come back
    assert february.promised == (Flow(month=2, out=900, back=9000),)
    # its last day was 2027-03-27
    assert later(APRIL, *ON_THE_CAR).promised == ()


def test_a_part_on_the_way_waits_for_its_month_and_its_instalments_go_on() -> None:
    # 25.00 in January, 25.00 in February, the rest of 100.01 in April
    lines = ("2027-01-20 ordered radiator amount=10001",)
    february = later(FEBRUARY, *lines)
    radiator = february.option["radiator"]
    assert radiator.bought == Purchase(month=JANUARY)
    assert (radiator.price, radiator.lead_days) == (0, 0)
    assert radiator.consumables == 600
    assert radiator.hours == 2
    assert radiator.not_before == FEBRUARY
    assert february.promised == (Flow(month=0, out=2500), Flow(month=2, out=5001))
    assert february.opening_cash == 20000 - 2500
    paid = later(FEBRUARY, *lines, "2027-02-02 paid radiator amount=2500")
    assert paid.promised == (Flow(month=2, out=5001),)
    assert paid.opening_cash == 20000 - 2500 - 2500
    overdue = later(MARCH, *lines)
    assert overdue.promised == (Flow(month=0, out=2500), Flow(month=1, out=5001))


def test_a_part_keeps_the_deposit_that_was_paid_for_it() -> None:
    ordered = "2027-01-25 ordered alternator amount=25000 deposit=9000"
    january = later(JANUARY, ordered).option["alternator"]
    assert january.core_deposit == 9000
    assert january.core_return_cost == 900
    assert january.not_before == FEBRUARY  # 20 days: by the middle of February
    # freight and deposit are the job's, as soon as it is fitted
    assert later(JANUARY, ordered).promised == ()
    in_hand = later(JANUARY, ordered, "2027-01-28 arrived alternator")
    assert in_hand.option["alternator"].not_before == JANUARY


def test_a_part_is_not_fitted_before_its_owner_wants_it() -> None:
    made = replace(
        GARAGE,
        options=tuple(replace(one, not_before=APRIL) for one in GARAGE.options),
    )
    lines = ("2027-01-20 ordered radiator", "2027-01-22 arrived radiator")
    assert later(FEBRUARY, *lines, made=made).option["radiator"].not_before == APRIL


DUD = (
    "2027-01-05 ordered alternator",
    "2027-01-25 arrived alternator",
    "2027-02-01 fitted alternator",
    "2027-03-01 dud alternator",
)


@pytest.mark.parametrize(
    ("month", "price"), [(Month(2029, 1), 0), (Month(2029, 2), 24000)]
)
def test_a_dud_costs_nothing_until_the_month_in_which_its_warranty_ends(
    month: Month, price: int
) -> None:
    alternator = later(month, *DUD).option["alternator"]
    assert alternator.price == price
    assert alternator.bought is None
    claimed = [one.row for one in later(month, *DUD).assumed]
    if price:
        assert alternator == GARAGE.option["alternator"]
        assert claimed == []
    else:
        assert alternator.valid_until == Month(2029, 1)
        assert claimed == ["alternator"]


def test_a_dud_without_a_warranty_is_bought_again() -> None:
    lines = (
        "2027-01-20 ordered radiator",
        "2027-01-22 arrived radiator",
        "2027-02-01 dud radiator",
    )
    february = later(FEBRUARY, *lines)
    assert february.option["radiator"] == GARAGE.option["radiator"]
    assert february.fault["cooling"].status is FaultStatus.OPEN
    assert february.fault["cooling"].fitted == ()


STAND_IN = (
    "2027-01-10 ordered reseal",
    "2027-01-11 arrived reseal",
    "2027-01-12 fitted reseal",
)


def test_a_stand_in_relieves_its_fault_and_asks_for_a_cure_by_its_end() -> None:
    cooling = later(FEBRUARY, *STAND_IN).fault["cooling"]
    assert cooling.status is FaultStatus.OPEN
    assert cooling.fitted == (
        Fitted(option="reseal", relief=Fraction(1, 2), until=MARCH),
    )
    assert cooling.fix_by == MARCH


@pytest.mark.parametrize(
    ("wanted", "fix_by"), [(FEBRUARY, FEBRUARY), (APRIL, MARCH), (None, MARCH)]
)
def test_the_earlier_deadline_holds(wanted: Month | None, fix_by: Month) -> None:
    made = replace(
        GARAGE, faults=tuple(replace(one, fix_by=wanted) for one in GARAGE.faults)
    )
    assert later(FEBRUARY, *STAND_IN, made=made).fault["cooling"].fix_by == fix_by


@pytest.mark.parametrize(
    ("life", "fixed", "until"),
    [
        (None, True, None),
        (2, False, MARCH),
        (13, True, None),  # six months and six beyond are all that counts
        (12, False, Month(2028, 1)),
    ],
)
def test_a_part_that_wears_out_relieves_for_its_life_and_sets_no_deadline(
    life: int | None, fixed: bool, until: Month | None
) -> None:
    options = tuple(replace(one, life_months=life) for one in GARAGE.options)
    made = replace(GARAGE, options=options, look_beyond=6)
    lines = ("2027-01-07 ordered bulb", "2027-01-08 arrived bulb")
    lamp = later(FEBRUARY, *lines, "2027-01-09 fitted bulb", made=made).fault["lamp"]
    assert (lamp.status is FaultStatus.FIXED) == fixed
    assert [one.until for one in lamp.fitted] == ([until] if until else [])
    assert all(one.relief >= CURED for one in lamp.fitted)
    assert lamp.fix_by is None


def test_a_tool_that_was_paid_is_owned() -> None:
    february = later(FEBRUARY, "2027-01-09 paid puller amount=3500")
    assert february.tool["puller"].owned
    assert february.opening_cash == 16500
    assert not later(FEBRUARY).tool["puller"].owned


CAUSES = tuple(
    Cause(fault="charging", cause=name, chance=Fraction(chance))
    for name, chance in (("brushes", "0.5"), ("belt", "0.3"), ("wire", "0.1"))
)


@pytest.mark.parametrize(
    ("checks", "chances"),
    [
        ((), {"brushes": "0.5", "belt": "0.3", "wire": "0.1"}),
        # half of all is out: what is left is twice as likely
        (("brushes found=no",), {"belt": "0.6", "wire": "0.2"}),
        (("brushes found=no", "belt found=no"), {"wire": "0.5"}),
        (("belt found=yes",), {"belt": "1"}),
        (("brushes found=no", "belt found=yes"), {"belt": "1"}),
        (("belt found=yes", "belt found=no"), {"brushes": "5/7", "wire": "1/7"}),
    ],
)
def test_causes_are_what_checks_have_left(
    checks: tuple[str, ...], chances: dict[str, str]
) -> None:
    made = replace(GARAGE, causes=CAUSES)
    lines = [f"2027-01-05 checked charging cause={check}" for check in checks]
    found = later(FEBRUARY, *lines, made=made).causes
    assert {one.cause: one.chance for one in found} == {
        cause: Fraction(chance) for cause, chance in chances.items()
    }
