"""When money goes out and comes back, worked out by hand."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.domain import Coding, Instalment, Offer, Supplier, Tax, instalments
from partsplan.pricing import offers
from tests.support import building
from tests.support.building import bought, garage, option

EXCHANGE: dict[str, Any] = {
    "price": 20000,
    "core_deposit": 8000,
    "core_return_cost": 1200,
    "core_days": 31,  # credited two months after the fitting
    "lead_days": 20,  # fitted one month after the order
    "coding": Coding.PAID,
    "coding_cost": 4000,
    "consumables": 500,
}


def first_offer(part: Any, **changes: Any) -> Offer:
    return offers(garage(options=(part,), **changes))[0]


def flows(part: Any, **changes: Any) -> dict[int, tuple[int, int]]:
    """Out and back by month if ordered as early as can be."""
    return {
        flow.month: (flow.out, flow.back) for flow in first_offer(part, **changes).flows
    }


def test_an_exchange_part_pays_its_deposit_and_gets_it_back() -> None:
    assert flows(option(**EXCHANGE), months=5) == {
        0: (28000, 0),
        1: (4500, 0),
        3: (1200, 8000),
    }


def test_a_bought_part_only_pays_its_fitting_and_brings_its_deposit_back() -> None:
    part = bought(**EXCHANGE | {"price": 0, "lead_days": 0})
    assert flows(part, months=5) == {0: (4500, 0), 2: (1200, 8000)}
    offer = first_offer(part, months=5)
    assert offer.price.expected == 4000 + 500 + 1200
    untrusted = replace(part, core_chance=Fraction("0.79"))
    assert flows(untrusted, months=5) == {0: (4500, 0), 2: (1200, 0)}


@pytest.mark.parametrize(("core_days", "month"), [(0, 0), (1, 1), (30, 1), (31, 2)])
def test_month_of_the_credit(core_days: int, month: int) -> None:
    part = option(core_deposit=8000, core_days=core_days)
    assert flows(part)[month][1] == 8000


def test_a_credit_past_the_horizon_is_in_no_month() -> None:
    assert flows(option(**EXCHANGE), months=3) == {0: (28000, 0), 1: (4500, 0)}


@pytest.mark.parametrize(
    ("core_chance", "back"), [("0.8", 8000), ("0.79", 0), ("1", 8000), ("0", 0)]
)
def test_a_deposit_counts_whole_or_not_at_all(core_chance: str, back: int) -> None:
    part = option(**EXCHANGE, core_chance=Fraction(core_chance))
    found = flows(part, months=5)
    assert found[3] == (1200, back)


def test_trust_is_the_owners() -> None:
    part = option(**EXCHANGE, core_chance=Fraction("0.9"))
    assert flows(part, months=5, core_trust=Fraction("0.95"))[3] == (1200, 0)


@pytest.mark.parametrize(
    ("landed", "plan", "sums"),
    [
        (1000, "0:0.25;1:0.75", [(0, 250), (1, 750)]),
        (1001, "0:0.5;1:0.5", [(0, 500), (1, 501)]),  # 500.5 to the even 500
        (1003, "0:0.5;1:0.5", [(0, 502), (1, 501)]),  # 501.5 to the even 502
        (100, "0:1/3;1:1/3;2:1/3", [(0, 33), (1, 33), (2, 34)]),
        (200, "0:1/3;1:1/3;2:1/3", [(0, 67), (1, 67), (2, 66)]),
        (1, "1:0.5;4:0.5", [(1, 0), (4, 1)]),
        (777, "2:1", [(2, 777)]),
    ],
)
def test_the_last_instalment_takes_the_rounding(
    landed: int, plan: str, sums: list[tuple[int, int]]
) -> None:
    part = option(instalments=building.instalments(plan))
    assert list(instalments(part, landed)) == sums


@given(
    st.integers(0, 10**9),
    st.lists(st.integers(1, 50), min_size=1, max_size=6).map(list),
)
def test_instalments_sum_to_the_landed_price(landed: int, parts: list[int]) -> None:
    shares = tuple(
        Instalment(months=month, share=Fraction(part, sum(parts)))
        for month, part in enumerate(parts)
    )
    sums = [due for _, due in instalments(option(instalments=shares), landed)]
    assert sum(sums) == landed
    assert all(
        abs(due - landed * one.share) <= Fraction(len(parts), 2)
        for due, one in zip(sums, shares, strict=True)
    )


def test_duty_and_tax_are_paid_by_instalments_too_and_the_deposit_at_once() -> None:
    shop = Supplier(id="s1", name="Mill Lane Spares", currency="EUR", tax=Tax.ADDED)
    part = option(
        supplier="s1",
        core_deposit=3000,
        core_chance=Fraction(0),
        instalments=building.instalments("1:0.5;3:0.5"),
    )
    found = flows(part, suppliers=(shop,), tax_rate=Fraction("0.2"), months=3)
    assert found == {0: (3000, 0), 1: (6000, 0)}  # the rest is past the horizon
