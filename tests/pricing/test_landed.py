"""What an option costs, worked out by hand in several currencies."""

from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import Coding, Currency, Price, Supplier, Tax
from partsplan.pricing import price
from tests.support.building import garage, option

ABROAD = Supplier(
    id="s1",
    name="Harbour Spares",
    currency="EUR",
    tax=Tax.ADDED,
    duty_rate=Fraction("0.045"),
)


def priced(part: Any, **changes: Any) -> Price:
    return price(garage(options=(part,), **changes), part)


@pytest.mark.parametrize(
    ("own", "currency", "rate", "amount", "goods"),
    [
        # 12,345 yen at 0.0061 euro: 75.3045 euro
        (Currency("EUR", 2), "JPY", "0.0061", 12345, 7530),
        # 12.345 dinars at 3.05 euro: 37.65225 euro
        (Currency("EUR", 2), "KWD", "3.05", 12345, 3765),
        # 12.34 euro at 164 yen: 2023.76 yen
        (Currency("JPY", 0), "EUR", "164", 1234, 2024),
        # 12.34 euro at 0.328 dinars: 4.04752 dinars
        (Currency("KWD", 3), "EUR", "0.328", 1234, 4048),
        # 12,345 yen at 0.002 dinars: 24.690 dinars
        (Currency("KWD", 3), "JPY", "0.002", 12345, 24690),
    ],
)
def test_foreign_prices_are_converted_and_rounded_once(
    own: Currency, currency: str, rate: str, amount: int, goods: int
) -> None:
    foreign = {"EUR": 100, "JPY": 1, "KWD": 1000}[currency]
    minor_rate = Fraction(rate) * own.unit / foreign
    part = option(price=amount, currency=currency)
    found = priced(part, currency=own, rates={currency: minor_rate})
    assert (found.goods, found.landed, found.expected) == (goods, goods, goods)


@pytest.mark.parametrize(
    ("amount", "quantity", "goods"),
    [
        (5, "0.5", 2),  # 2.5 to the even 2
        (7, "0.5", 4),  # 3.5 to the even 4
        (1, "3", 3),
        (333, "1.5", 500),  # 499.5 to the even 500
    ],
)
def test_goods_are_rounded_half_to_even(amount: int, quantity: str, goods: int) -> None:
    assert priced(option(price=amount, quantity=Fraction(quantity))).goods == goods


def test_conversion_comes_after_the_quantity() -> None:
    part = option(price=1, currency="JPY", quantity=Fraction(10))
    # 10 x 0.61 = 6.1; rounding each piece would make 10
    assert priced(part, rates={"JPY": Fraction("0.61")}).goods == 6


def test_tax_is_taken_on_goods_and_duty() -> None:
    part = option(supplier="s1")
    found = priced(part, tax_rate=Fraction("0.19"), suppliers=(ABROAD,))
    # 100.00, duty 4.5 % = 4.50, tax 19 % of 104.50 = 19.855
    assert (found.goods, found.duty, found.tax) == (10000, 450, 1986)
    assert found.landed == 12436


def test_each_sum_is_rounded_before_the_next() -> None:
    part = option(price=1011, supplier="s1")
    found = priced(part, tax_rate=Fraction("0.5"), suppliers=(ABROAD,))
    # duty 45.495 is 45; tax half of 1056 is 528
    assert (found.duty, found.tax) == (45, 528)


@pytest.mark.parametrize(("tax", "sum_"), [(Tax.ADDED, 1900), (Tax.INCLUDED, 0)])
def test_tax_is_added_only_where_the_supplier_left_it_out(tax: Tax, sum_: int) -> None:
    shop = Supplier(id="s1", name="Mill Lane Spares", currency="EUR", tax=tax)
    part = option(supplier="s1")
    found = priced(part, tax_rate=Fraction("0.19"), suppliers=(shop,))
    assert found.tax == sum_
    assert priced(option(), tax_rate=Fraction("0.19")).tax == 0


def test_expected_cost_of_an_exchange_part() -> None:
    part = option(
        price=20000,
        quantity=Fraction(2),
        core_deposit=4000,
        core_chance=Fraction("0.85"),
        core_return_cost=1250,
        coding=Coding.PAID,
        coding_cost=3000,
        consumables=700,
        hours=Fraction("1.5"),
        dud_chance=Fraction("0.2"),
    )
    found = priced(part, hour_value=1500)
    assert found.landed == 40000
    assert found.deposit == 8000
    assert found.lost_deposit == 1200  # 0.15 x 80.00
    assert found.own_hours == 2250
    assert found.duds == Fraction(42250, 4)  # a quarter of part and hours
    # 400 + 30 + 7 + 22.50 + 12 + 12.50 + 105.625, half to even
    assert found.expected == 58962


def test_no_deposit_no_return() -> None:
    found = priced(option(core_return_cost=1250, core_chance=Fraction(0)))
    assert found.core_return == 0
    assert found.lost_deposit == 0
    assert found.expected == 10000


@pytest.mark.parametrize("coding", [Coding.NONE, Coding.SELF])
def test_only_paid_coding_costs(coding: Coding) -> None:
    assert priced(option(coding=coding, coding_cost=3000)).coding == 0


def test_deposits_are_in_the_currency_of_the_option() -> None:
    part = option(
        price=1000, currency="JPY", core_deposit=333, quantity=Fraction("1.5")
    )
    # 333 x 1.5 x 0.61 = 304.695
    assert priced(part, rates={"JPY": Fraction("0.61")}).deposit == 305
