"""Sums, months and days as readers write them, against Babel and its Unicode CLDR."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

import babel
import pytest
from babel.dates import format_skeleton
from babel.numbers import format_decimal
from hypothesis import given
from hypothesis import strategies as st

from partsplan.domain import Currency, Month
from partsplan.reports import figures
from partsplan.reports.locales import BARE, LOCALES, PLAIN, written_in

EUR = Currency("EUR", 2)
NAMED = ("en-GB", "en-US")
HARD = "\N{NO-BREAK SPACE}"

codes = st.sampled_from(sorted(LOCALES))
days = st.dates(date(1900, 1, 1), date(2999, 12, 31))


@given(codes, days)
def test_months_and_days_are_those_of_the_cldr(code: str, day: date) -> None:
    known = babel.Locale.parse(code, sep="-")
    month_form, day_form = ("yMMM", "yMMMd") if code in NAMED else ("yM", "yMd")
    with written_in(LOCALES[code]):
        month = figures.month_name(Month(day.year, day.month))
        whole = figures.day_name(day)
    assert month.replace(HARD, " ") == format_skeleton(month_form, day, locale=known)
    assert whole.replace(HARD, " ") == format_skeleton(day_form, day, locale=known)


@given(codes, st.integers(-(10**12), 10**12))
def test_sums_are_those_of_the_cldr(code: str, amount: int) -> None:
    known = babel.Locale.parse(code, sep="-")
    theirs = format_decimal(Decimal(abs(amount)) / 100, format="#,##0.00", locale=known)
    with written_in(LOCALES[code]):
        ours = figures.money(EUR, amount)
    # some write another minus, which a reader's spreadsheet would not take for one
    assert ours == ("-" if amount < 0 else "") + theirs


def test_without_a_locale_months_and_days_are_those_of_iso_8601() -> None:
    assert figures.month_name(Month(2027, 3)) == "2027-03"
    assert figures.day_name(date(2027, 3, 5)) == "2027-03-05"
    assert figures.money(EUR, -123456780) == "-1,234,567.80"


def test_bare_figures_have_no_groups() -> None:
    with written_in(BARE):
        assert figures.money(EUR, -123456780) == "-1234567.80"
        assert figures.month_name(Month(2027, 3)) == "2027-03"


def test_numbers_and_shares_have_the_same_decimal_sign() -> None:
    with written_in(LOCALES["de"]):
        assert figures.number(Fraction(5, 2)) == "2,5"
        assert figures.percent(Fraction(123, 10000)) == "1,2 %"
        assert figures.number(0) == "0"


def test_afterwards_all_is_plain_again() -> None:
    with pytest.raises(KeyError), written_in(LOCALES["de"]):
        raise KeyError
    assert figures.money(EUR, 123456) == "1,234.56"


def test_no_locale_breaks_a_line_within_a_figure() -> None:
    for locale in (PLAIN, *LOCALES.values()):
        with written_in(locale):
            shown = [
                figures.money(EUR, 123456789),
                figures.month_name(Month(2027, 3)),
                figures.day_name(date(2027, 3, 5)),
            ]
        assert not any(" " in one for one in shown)
