"""Payments, money that came in, checks, readings and notes."""

from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest

from partsplan.domain import CheckedCause, Month, MonthMoney, Tool
from tests.support.small_logbook import GARAGE, flags, folded

JANUARY, FEBRUARY = Month(2027, 1), Month(2027, 2)
ORDER = "2027-01-05 ordered radiator amount=10000"
"""2500 at once, 2500 in February, 5000 in April."""


@pytest.mark.parametrize(
    ("amount", "left"),
    [
        (0, [2500, 5000]),
        (1000, [1500, 5000]),
        (2500, [5000]),
        (4000, [3500]),
        (7500, []),
        (9000, []),
    ],
)
def test_a_payment_settles_instalments_earliest_first(
    amount: int, left: list[int]
) -> None:
    ledger = folded(ORDER, f"2027-02-01 paid radiator amount={amount}")
    instalments = [due.amount for due in ledger.dues if due.amount != 600]
    assert instalments == left
    assert ledger.money.get(FEBRUARY, MonthMoney()) == MonthMoney(spent=amount)
    assert flags(ledger) == []


def test_a_payment_settles_the_instalments_of_two_orders_by_month() -> None:
    ledger = folded(
        ORDER,
        "2027-01-06 arrived radiator",
        "2027-01-07 fitted radiator",
        "2027-02-01 ordered radiator amount=4000",
        "2027-02-02 dud radiator",
        "2027-02-03 paid radiator amount=3000",
    )
    left = [(str(due.month), due.amount) for due in ledger.dues]
    assert left == [("2027-03", 500), ("2027-04", 5000), ("2027-05", 2000)]


def test_an_instalment_of_an_option_buys_no_tool_of_the_same_name() -> None:
    made = replace(GARAGE, tools=(Tool(id="radiator", name="press"),))
    paid = "2027-02-01 paid radiator amount=7500"
    assert folded(ORDER, paid, made=made).tools == frozenset()
    assert folded(ORDER, paid, paid, made=made).tools == {"radiator"}


def test_a_tool_that_was_paid_for_is_owned() -> None:
    ledger = folded(
        "2027-01-05 paid puller amount=3900", "2027-01-06 paid van amount=9"
    )
    assert ledger.tools == {"puller"}
    assert ledger.money == {JANUARY: MonthMoney(spent=3909)}


def test_money_comes_in() -> None:
    ledger = folded("2027-01-05 money-in - amount=5000")
    assert ledger.money == {JANUARY: MonthMoney(received=5000)}


@pytest.mark.parametrize(
    ("fields", "spent", "hours"),
    [("", 1500, "0.5"), ("amount=0 hours=2", 0, "2")],
)
def test_a_check_costs_what_the_cause_says_unless_said_otherwise(
    fields: str, spent: int, hours: str
) -> None:
    line = f"2027-01-05 checked charging cause=worn_brushes found=no {fields}"
    ledger = folded(line)
    assert ledger.checked == (
        CheckedCause(
            fault="charging", cause="worn brushes", found=False, day=date(2027, 1, 5)
        ),
    )
    assert ledger.money == {JANUARY: MonthMoney(spent=spent, hours=Fraction(hours))}
    assert flags(ledger) == []


def test_a_check_of_something_else_costs_what_was_given() -> None:
    ledger = folded("2027-01-05 checked charging cause=rust found=yes amount=700")
    assert ledger.checked[0].found
    assert ledger.money == {JANUARY: MonthMoney(spent=700)}
    message = '"rust" is none of the causes suspected of charging'
    assert flags(ledger) == [(1, message)]


def test_the_last_reading_holds() -> None:
    ledger = folded(
        "2027-01-09 odometer van reading=1200",
        "2027-01-05 odometer van reading=1100",
        "2027-01-12 odometer van reading=1150",
        "2027-01-12 odometer coupe reading=7",
    )
    assert ledger.odometer == {"van": 1150, "coupe": 7}
    assert flags(ledger) == [(3, "expected a reading of van from 1200 on, got 1150")]


def test_a_note_only_has_a_day() -> None:
    ledger = folded("2027-01-05 note van text=squeaks_again")
    assert (ledger.last, ledger.money, ledger.flags) == (date(2027, 1, 5), {}, ())


def test_nothing_happened() -> None:
    ledger = folded()
    assert (ledger.money, ledger.parts, ledger.dues, ledger.last) == ({}, {}, (), None)


def test_a_day_that_had_not_come_when_it_was_written_down_is_flagged() -> None:
    ledger = folded("2031-01-02 money-in - amount=1", "2031-01-03 money-in - amount=1")
    message = "it was written down on 2031-01-01, before 2031-01-03"
    assert flags(ledger) == [(2, message)]
