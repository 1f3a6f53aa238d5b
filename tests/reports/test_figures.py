from fractions import Fraction

import pytest

from partsplan.domain import Currency
from partsplan.reports.figures import (
    count,
    listed,
    money,
    month_spans,
    number,
    percent,
    price,
)
from tests.reports.made import EUR, GARAGE


@pytest.mark.parametrize(
    ("amount", "text"),
    [(0, "0.00"), (5, "0.05"), (123456789, "1,234,567.89"), (-1250, "-12.50")],
)
def test_money_keeps_its_decimals_and_groups_thousands(amount: int, text: str) -> None:
    assert money(EUR, amount) == text


def test_money_follows_the_digits_of_its_currency() -> None:
    assert price(Currency("JPY", 0), 12500) == "12,500 JPY"
    assert price(Currency("KWD", 3), 12500) == "12.500 KWD"


@pytest.mark.parametrize(
    ("share", "text"),
    [
        (Fraction(0), "0 %"),
        (Fraction(1), "100 %"),
        (Fraction(31, 100), "31 %"),
        (0.0849, "8.5 %"),
        (0.00006, "0.006 %"),
        (0.00672, "0.67 %"),
        (12.5, "1250 %"),
        (-0.02, "-2 %"),
    ],
)
def test_small_shares_keep_the_digits_that_tell_them_from_none(
    share: Fraction, text: str
) -> None:
    assert percent(share) == text


def test_numbers_lose_the_zeros_that_say_nothing() -> None:
    assert [number(one) for one in (Fraction(2), Fraction(3, 2), 100, 0.125)] == [
        "2",
        "1.5",
        "100",
        "0.12",
    ]
    assert number(-0.001) == "0"


def test_months_in_a_row_become_a_span() -> None:
    assert month_spans(GARAGE, [5, 0, 1, 2]) == "2027-01 to 2027-03, 2027-06"


def test_counts_and_lists_read_as_words() -> None:
    assert count(1, "job") == "1 job"
    assert count(0, "job") == "0 jobs"
    assert listed(["a", "b", "c"]) == "a, b and c"
    assert listed(["a"]) == "a"
    assert listed([]) == ""
