"""What there is to spend in a month that has begun, worked out by hand."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.domain import DepositBack, Ledger, Month, MonthMoney
from partsplan.ledger import deposits_back, fold, money_now, owed
from tests.support.small_logbook import GARAGE, folded

JANUARY = Month(2027, 1)
MADE = replace(GARAGE, budget=(20000, 10000), opening_cash=500, reserve=300)
FITTED = (
    "2027-01-05 ordered alternator",
    "2027-01-25 arrived alternator",
    "2027-02-01 fitted alternator",
)
EMPTY = fold(GARAGE, {}, ())


def moved(*months: tuple[int, int]) -> Ledger:
    """Money that left and came in, from January on."""
    money = {
        JANUARY.plus(place): MonthMoney(spent=spent, received=received)
        for place, (spent, received) in enumerate(months)
    }
    return replace(EMPTY, money=money)


def test_a_month_is_told_from_what_was_left_before_it() -> None:
    ledger = folded(
        "2026-12-20 money-in - amount=77777",
        "2027-01-05 ordered radiator amount=10000",
        "2027-01-20 money-in - amount=1000",
        "2027-02-01 paid - amount=400",
    )
    now = money_now(MADE, ledger, Month(2027, 2), date(2027, 2, 2))
    assert now.opening == 500 + 20000 + 1000 - 2500
    assert (now.budget, now.spent, now.received) == (10000, 400, 0)
    # the radiator's fitting, expected in January, and its second instalment
    assert now.promised == 600 + 2500
    assert now.balance == 19000 + 10000 - 400
    assert now.free == 28600 - 3100 - 300
    assert now.reserve == 300


@pytest.mark.parametrize(
    ("carry_over", "openings"),
    [(True, [500, 15500, 23500, -6500]), (False, [500, 0, 0, -20000])],
)
def test_what_is_left_moves_on_or_only_what_is_owed(
    carry_over: bool, openings: list[int]
) -> None:
    made = replace(MADE, carry_over=carry_over)
    ledger = moved((5000, 0), (3000, 1000), (40000, 0 if carry_over else 10000))
    found = [
        money_now(made, ledger, JANUARY.plus(place), date(2027, 1, 1)).opening
        for place in range(4)
    ]
    assert found == openings


def test_the_first_month_opens_with_the_debt_of_the_garage() -> None:
    made = replace(MADE, opening_cash=-700, carry_over=False)
    assert money_now(made, EMPTY, JANUARY, date(2027, 1, 1)).opening == -700
    # a debt is paid off from the budget first
    later = money_now(replace(made, opening_cash=-25000), EMPTY, Month(2027, 2), TODAY)
    assert later.opening == -5000


def test_the_last_budget_holds_past_the_horizon() -> None:
    now = money_now(MADE, EMPTY, Month(2028, 1), date(2028, 1, 1))
    assert (now.budget, now.opening) == (10000, 500 + 20000 + 11 * 10000)


def test_a_month_before_the_garage_is_refused() -> None:
    with pytest.raises(ValueError, match="expected a month from 2027-01 on"):
        money_now(MADE, EMPTY, Month(2026, 12), date(2026, 12, 1))


TODAY = date(2027, 2, 1)


def back(month: Month, amount: int = 8000) -> DepositBack:
    return DepositBack(option="alternator", month=month, amount=amount)


@pytest.mark.parametrize(
    ("lines", "today", "expected"),
    [
        # fitted in February, 45 days: April
        (FITTED, date(2027, 3, 18), [back(Month(2027, 4))]),
        (FITTED, date(2027, 3, 19), []),
        (FITTED[:2], TODAY, []),
        (
            [*FITTED, "2027-02-10 sent-back alternator"],
            date(2027, 6, 1),
            [back(Month(2027, 4))],
        ),
        (
            [
                *FITTED,
                "2027-02-10 sent-back alternator",
                "2027-02-11 credited alternator amount=3000",
            ],
            TODAY,
            [back(Month(2027, 4), 5000)],
        ),
        ([*FITTED, "2027-02-10 credited alternator"], TODAY, []),
        ([*FITTED, "2027-02-10 refused alternator"], TODAY, []),
        (
            [*FITTED, "2027-02-10 dud alternator", "2027-02-11 ordered alternator"],
            TODAY,
            [back(Month(2027, 3))],  # the month of the last day to send it back
        ),
    ],
)
def test_deposits_that_should_come_back(
    lines: Sequence[str], today: date, expected: list[DepositBack]
) -> None:
    ledger = folded(*lines)
    assert list(deposits_back(GARAGE, ledger, Month(2027, 2), today)) == expected


def test_a_deposit_that_is_late_is_expected_in_the_month_that_has_begun() -> None:
    ledger = folded(*FITTED, "2027-02-10 sent-back alternator")
    for month in (Month(2027, 4), Month(2027, 6)):
        now = money_now(GARAGE, ledger, month, date(2027, 6, 1))
        assert now.expected_back == 8000
    early = money_now(GARAGE, ledger, Month(2027, 3), date(2027, 3, 1))
    assert early.expected_back == 0
    assert early.free == early.balance - early.promised


def test_a_deposit_that_is_not_trusted_is_not_expected() -> None:
    ledger = folded(*FITTED)
    trust = replace(GARAGE, core_trust=Fraction("0.9"))
    assert len(deposits_back(trust, ledger, Month(2027, 2), TODAY)) == 1
    doubt = replace(GARAGE, core_trust=Fraction("0.91"))
    assert deposits_back(doubt, ledger, Month(2027, 2), TODAY) == ()


SUMS = st.integers(0, 100_000)


@given(
    st.lists(st.tuples(SUMS, SUMS), max_size=5),
    st.integers(-50_000, 50_000),
    st.booleans(),
)
def test_a_month_opens_with_the_balance_of_the_one_before(
    sums: list[tuple[int, int]], opening: int, carry_over: bool
) -> None:
    made = replace(MADE, opening_cash=opening, carry_over=carry_over)
    ledger = moved(*sums)
    months = [
        money_now(made, ledger, JANUARY.plus(place), TODAY)
        for place in range(len(sums) + 2)
    ]
    assert months[0].opening == opening
    for before, after in pairwise(months):
        left = before.opening + before.budget + before.received - before.spent
        assert after.opening == (left if carry_over else min(0, left))


def test_the_freight_of_a_return_that_was_missed_is_no_longer_promised() -> None:
    ledger = folded(
        "2027-01-05 ordered alternator",
        "2027-01-25 arrived alternator",
        "2027-01-30 fitted alternator",
    )
    part = ledger.parts["alternator"]
    assert part.deposit is not None
    assert part.deposit.send_by is not None
    in_time, late = part.deposit.send_by, part.deposit.send_by + timedelta(days=1)
    assert [due.amount for due in owed(ledger, in_time)] == [900]
    assert owed(ledger, late) == ()
