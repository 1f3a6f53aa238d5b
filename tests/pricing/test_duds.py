"""Bad parts: the geometric distribution, from the data file and from scipy."""

from fractions import Fraction
from typing import Any

import pytest
from scipy.stats import geom

from partsplan.pricing import price
from tests.support.building import garage, option
from tests.support.published import published

CASES: Any = published("duds.json")["cases"]
PRICE = 10**9


@pytest.mark.parametrize("case", CASES, ids=lambda one: str(float(one["dud_chance"])))
def test_expected_duds_before_a_good_part(case: Any) -> None:
    # S. M. Ross, A First Course in Probability, chapter 4
    part = option(price=PRICE, dud_chance=case["dud_chance"])
    extra = price(garage(options=(part,)), part).duds / PRICE
    assert float(extra) == pytest.approx(
        float(case["expected_extra_fittings"]), abs=0.51e-6
    )
    fittings = geom(float(1 - case["dud_chance"]))
    assert float(extra) == pytest.approx(fittings.mean() - 1, rel=1e-9)


@pytest.mark.parametrize(
    ("warranty", "duds"), [(0, Fraction(12000, 4)), (1, Fraction(2000, 4))]
)
def test_a_dud_costs_the_hours_again_and_the_part_without_warranty(
    warranty: int, duds: Fraction
) -> None:
    part = option(
        dud_chance=Fraction(1, 5), warranty_months=warranty, hours=Fraction(2)
    )
    priced = price(garage(hour_value=1000, options=(part,)), part)
    assert priced.duds == duds
    assert priced.expected == 10000 + 2000 + duds


def test_good_parts_cost_nothing_more() -> None:
    part = option()
    assert price(garage(), part).duds == 0
