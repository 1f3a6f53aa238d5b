"""The cost of waiting: money a month, and its share of a month's budget."""

from fractions import Fraction

import pytest

from partsplan.domain import DamageRisk, LossPerMonth
from partsplan.scoring import loss, waiting
from tests.support.building import fault


@pytest.mark.parametrize(
    ("per_month", "chance", "cost", "lost"),
    [
        (0, "0", 0, "0"),
        (1200, "0", 0, "1200"),
        (0, "0.05", 30000, "1500"),
        (1200, "0.05", 30000, "2700"),
        (0, "1/3", 100, "100/3"),  # not rounded
        (0, "0.05", 0, "0"),
    ],
)
def test_expected_loss_of_a_month(
    per_month: int, chance: str, cost: int, lost: str
) -> None:
    leak = fault(
        loss_per_month=per_month, damage_chance=Fraction(chance), damage_cost=cost
    )
    assert loss(leak) == Fraction(lost)


@pytest.mark.parametrize(
    ("per_month", "budget", "points"),
    [
        (0, 20000, 0),
        (5000, 20000, 25),
        (20000, 20000, 100),
        (20001, 20000, 100),  # capped
        (1, 0, 100),  # more than no money at all
        (0, 0, 0),
    ],
)
def test_share_of_the_mean_budget(per_month: int, budget: int, points: int) -> None:
    leak = fault(loss_per_month=per_month)
    assert waiting(leak, Fraction(budget)).points == points


def test_reasons_name_what_is_lost() -> None:
    leak = fault(loss_per_month=300, damage_chance=Fraction(1, 20), damage_cost=900)
    assert waiting(leak, Fraction(20000)).reasons == (
        LossPerMonth(amount=300),
        DamageRisk(chance=Fraction(1, 20), cost=900),
    )
    assert waiting(fault(damage_cost=900), Fraction(20000)).reasons == ()
