"""Months as text, and steps between them."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.domain import Month

MONTHS = st.builds(Month, st.integers(1900, 9000), st.integers(1, 12))


@pytest.mark.parametrize(
    ("text", "month"),
    [("2027-01", (2027, 1)), ("1900-12", (1900, 12)), ("9999-10", (9999, 10))],
)
def test_text_reads_and_writes(text: str, month: tuple[int, int]) -> None:
    assert Month.parse(text) == month
    assert str(Month.parse(text)) == text


@pytest.mark.parametrize(
    "text",
    ["", "2027", "2027-1", "2027-00", "2027-13", "27-01", "1899-12", "2027-01-01", "x"],
)
def test_anything_else_is_refused_with_its_text(text: str) -> None:
    with pytest.raises(ValueError, match=f'expected a month YYYY-MM, got "{text}"'):
        Month.parse(text)


@pytest.mark.parametrize(
    ("start", "months", "end"),
    [
        ("2027-01", 0, "2027-01"),
        ("2027-11", 1, "2027-12"),
        ("2027-12", 1, "2028-01"),
        ("2027-01", -1, "2026-12"),
        ("2027-05", 36, "2030-05"),
        ("2027-05", -29, "2024-12"),
    ],
)
def test_steps_cross_the_end_of_a_year(start: str, months: int, end: str) -> None:
    assert Month.parse(start).plus(months) == Month.parse(end)
    assert Month.parse(end).since(Month.parse(start)) == months


@given(MONTHS, st.integers(-10000, 10000))
def test_a_step_and_its_length_agree(month: Month, months: int) -> None:
    assert month.plus(months).since(month) == months


@given(MONTHS, MONTHS)
def test_months_order_as_they_follow_each_other(one: Month, other: Month) -> None:
    assert (one < other) == (one.since(other) < 0)


@pytest.mark.parametrize(
    ("day", "last"),
    [
        (date(2027, 1, 31), date(2027, 1, 31)),
        (date(2028, 2, 1), date(2028, 2, 29)),
        (date(2027, 2, 14), date(2027, 2, 28)),
        (date(2027, 12, 5), date(2027, 12, 31)),
    ],
)
def test_a_day_is_in_the_month_that_ends_after_it(day: date, last: date) -> None:
    assert Month.of(day).last_day == last
