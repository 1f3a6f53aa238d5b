"""Sums and months as readers of some countries write them; common practice."""

from fractions import Fraction

import pytest

from partsplan.domain import Currency, Month
from partsplan.reports import figures
from partsplan.reports.locales import LOCALES, PLAIN, written_in

EUR = Currency("EUR", 2)


@pytest.mark.parametrize(
    ("code", "sum_", "month"),
    [
        ("", "-1,234,567.80", "2027-03"),
        ("de", "-1.234.567,80", "März 2027"),
        ("en", "-1,234,567.80", "March 2027"),
        ("es", "-1.234.567,80", "marzo 2027"),
        ("fr", "-1\u202f234\u202f567,80", "mars 2027"),
        ("it", "-1.234.567,80", "marzo 2027"),
        ("nl", "-1.234.567,80", "maart 2027"),
    ],
)
def test_sums_and_months_are_written_as_their_readers_do(
    code: str, sum_: str, month: str
) -> None:
    with written_in(LOCALES.get(code, PLAIN)):
        assert figures.money(EUR, -123456780) == sum_
        assert figures.month_name(Month(2027, 3)) == month


def test_numbers_and_shares_have_the_same_decimal_sign() -> None:
    with written_in(LOCALES["de"]):
        assert figures.number(Fraction(5, 2)) == "2,5"
        assert figures.percent(Fraction(123, 10000)) == "1,2 %"
        assert figures.number(0) == "0"


def test_afterwards_all_is_plain_again() -> None:
    with pytest.raises(KeyError), written_in(LOCALES["de"]):
        raise KeyError
    assert figures.money(EUR, 123456) == "1,234.56"


def test_every_locale_names_twelve_months() -> None:
    for code, locale in LOCALES.items():
        assert (locale.code, len(set(locale.months))) == (code, 12)
