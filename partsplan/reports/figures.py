"""Numbers as people write them."""

import re
from collections.abc import Iterable
from datetime import date
from fractions import Fraction
from math import floor, log10

from partsplan.domain import Currency, Garage, Month
from partsplan.reports.locales import current

_PLAIN = re.compile(r"-?[0-9]+\.[0-9]+")


def money(currency: Currency, amount: int | float | Fraction) -> str:
    """An amount with its decimals, grouped by thousands, without the currency's code.

    [minor units]
    """
    text = currency.format(abs(round(amount)))
    whole, point, decimals = text.partition(".")
    sign = "-" if round(amount) < 0 else ""
    return current().number(f"{sign}{int(whole):,}{point}{decimals}")


def price(currency: Currency, amount: int | float | Fraction) -> str:
    """An amount followed by the currency's code. [minor units]"""
    return f"{money(currency, amount)} {currency.code}"


def number(value: int | float | Fraction, decimals: int = 2) -> str:
    """A number without the zeros that say nothing."""
    text = f"{float(value):.{decimals}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in ("-0", "") else current().number(text)


def written(cell: str) -> str:
    """What stands in a cell as its reader writes it, if it is a number."""
    return current().number(cell) if _PLAIN.fullmatch(cell) else cell


def many(how_many: int) -> str:
    """A large whole number, grouped by thousands."""
    return current().number(f"{how_many:,}")


def fixed(value: float | Fraction, decimals: int) -> str:
    """A number with all its decimals, for figures that stand below each other."""
    return current().number(f"{float(value):.{decimals}f}")


def percent(share: float | Fraction) -> str:
    """A share in per cent: whole from 10 % on, two digits that count below."""
    value = float(share) * 100
    size = floor(log10(abs(value))) if value else 0
    decimals = max(0, 1 - size)
    return f"{number(value, decimals)} %"


def count(how_many: int, one: str, many: str = "") -> str:
    """A count with its noun."""
    return f"{how_many} {one if how_many == 1 else many or one + 's'}"


def month_name(month: Month) -> str:
    """A calendar month as its reader writes it."""
    return current().month(month)


def day_name(day: date) -> str:
    """A day as its reader writes it."""
    return current().day(day)


def month_spans(garage: Garage, months: Iterable[int]) -> str:
    """Months as spans: ``2027-01 to 2027-03, 2027-06``."""
    spans: list[list[int]] = []
    for month in sorted(months):
        if spans and spans[-1][1] == month - 1:
            spans[-1][1] = month
        else:
            spans.append([month, month])
    return ", ".join(
        month_name(garage.month(first))
        if first == last
        else f"{month_name(garage.month(first))} to {month_name(garage.month(last))}"
        for first, last in spans
    )


def listed(words: Iterable[str]) -> str:
    """Words in a row: ``a, b and c``."""
    *most, last = list(words) or [""]
    return f"{', '.join(most)} and {last}" if most else last
