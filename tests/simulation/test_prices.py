"""Prices: the triangular distribution, and what follows from a drawn price."""

from dataclasses import replace
from fractions import Fraction
from math import sqrt

import numpy as np
import pytest
from scipy.stats import triang

from partsplan.domain import RiskSource, Supplier, Tax
from partsplan.domain import instalments as planned_dues
from partsplan.pricing import price
from partsplan.simulation import drawn
from partsplan.simulation.prices import drawn_price, landed_prices, price_range
from tests.simulation.one_job import FUTURES, SIGMAS, cost, one_job, planned, settings
from tests.support.building import fault, garage, instalments, option


@pytest.mark.parametrize(
    ("low", "high"), [(8000, 15000), (10000, 18000), (4000, 10000), (9900, 10100)]
)
def test_mean_and_variance_are_those_of_the_triangle(low: int, high: int) -> None:
    # closed form as in scipy.stats.triang (reference library)
    _, _, futures = one_job(price_low=low, price_high=high)
    told = triang((10000 - low) / (high - low), low, high - low)
    assert told.mean() == pytest.approx((low + 10000 + high) / 3)
    paid = cost(futures)
    assert low <= paid.min() <= paid.max() <= high
    assert abs(paid.mean() - told.mean()) < SIGMAS * sqrt(told.var() / FUTURES)
    # kurtosis of a triangle is 2.4 whatever its mode: var(s^2) = var^2 (2.4 - 1) / n
    error = told.var() * sqrt(1.4 / FUTURES)
    assert abs(paid.var() - told.var()) < SIGMAS * error + 1 / 12  # whole minor units


def test_the_draws_follow_the_triangle() -> None:
    _, _, futures = one_job(price_low=8000, price_high=15000)
    told = triang(2 / 7, 8000, 7000).cdf(np.arange(8000, 15001) + 0.5)
    seen = np.searchsorted(np.sort(cost(futures)), np.arange(8000, 15001), "right")
    # Dvoretzky, Kiefer and Wolfowitz with Massart's constant, at 0.1 %
    assert np.abs(seen / FUTURES - told).max() < sqrt(np.log(2000) / (2 * FUTURES))


@pytest.mark.parametrize(
    ("low", "high", "span"),
    [
        (None, None, (10000, 10000)),
        (9000, None, (9000, 10000)),
        (None, 12000, (10000, 12000)),
    ],
)
def test_a_blank_end_is_the_quote(
    low: int | None, high: int | None, span: tuple[int, int]
) -> None:
    assert price_range(option(price_low=low, price_high=high)) == span


def test_every_drawn_price_is_landed_as_the_plan_would() -> None:
    part = option(supplier="s1", currency="USD", quantity=Fraction(3))
    made = garage(
        options=(part,),
        suppliers=(
            Supplier(
                id="s1",
                name="Quay Parts",
                currency="USD",
                tax=Tax.ADDED,
                duty_rate=Fraction("0.045"),
            ),
        ),
        tax_rate=Fraction("0.19"),
        rates={"USD": Fraction("0.9137")},
    )
    pieces = np.arange(9000, 9500)
    goods, landed = landed_prices(made, part, pieces)
    exact = [price(made, replace(part, price=int(one))) for one in pieces]
    assert goods.tolist() == [one.goods for one in exact]
    assert landed.tolist() == [one.landed for one in exact]


def test_instalments_sum_to_the_drawn_price() -> None:
    part = option(
        price_low=9001, price_high=13001, instalments=instalments("0:0.3;2:0.3;1:0.4")
    )
    made = garage(options=(part,))
    drawn = drawn_price(made, part, 500, 1)
    assert [month for month, _ in drawn.dues] == [0, 1, 2]
    for place, landed in enumerate(drawn.landed):
        told = [(month, int(due[place])) for month, due in drawn.dues]
        assert tuple(told) == planned_dues(part, int(landed))


def test_shipping_is_free_where_the_drawn_goods_reach_the_limit() -> None:
    supplier = Supplier(
        id="s1", name="Quay Parts", currency="EUR", shipping=700, free_over=10000
    )
    made = garage(
        faults=(fault(),),
        options=(option(supplier="s1", price_low=8000, price_high=12000),),
        suppliers=(supplier,),
    )
    plan = planned(made)
    assert [order.shipping for order in plan.orders] == [0]
    futures = drawn(made, plan, settings())
    goods = futures.costs[RiskSource.OPTION, "o1"]
    shipping = futures.costs[RiskSource.SHIPPING, None]
    assert set(shipping) == {0, 700}
    assert ((shipping == 0) == (goods >= 10000)).all()
