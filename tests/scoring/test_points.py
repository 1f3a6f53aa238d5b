"""Points of a fault and worth of a month without it, worked out by hand."""

from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import (
    FaultStatus,
    Fitted,
    Grows,
    Likelihood,
    Month,
    OwnersPoints,
    Severity,
    Use,
    Weights,
)
from partsplan.scoring import benefit, points, worth
from tests.support.building import START, fault, garage, vehicle

WORN: dict[str, Any] = {  # safety 35, drivability 35 (daily), enjoyment 40
    "points": None,
    "severity": Severity.CRITICAL,
    "likelihood": Likelihood.OCCASIONAL,
    "drivability": 2,
    "enjoyment": Fraction(4),
}


def test_base_is_the_weighted_sum_of_the_scores() -> None:
    worn = fault(**WORN)
    # 0.6 x 35 + 0.3 x 35 + 0.1 x 40
    assert points(garage(faults=(worn,)), worn, 0).points == Fraction("35.5")


def test_weights_are_the_owners() -> None:
    worn = fault(**WORN)
    weights = Weights(
        safety=Fraction(1, 2), drivability=Fraction(1, 2), enjoyment=Fraction(1)
    )
    assert points(garage(faults=(worn,), weights=weights), worn, 0).points == 75


def test_owners_figure_replaces_the_scores() -> None:
    worn = fault(**WORN | {"points": Fraction(12)})
    score = points(garage(faults=(worn,)), worn, 0)
    assert score.points == 12
    assert score.reasons == (OwnersPoints(points=Fraction(12)),)


def test_safety_counts_from_the_month_in_which_the_vehicle_is_driven() -> None:
    worn = fault(**WORN)
    car = vehicle(driven_from=Month(2027, 3), use=Use.DAILY)
    made = garage(vehicles=(car,), faults=(worn,), look_beyond=1)
    # 0.3 x 35 + 0.1 x 40 while it is parked
    assert worth(made, worn) == tuple(map(Fraction, (1450, 1450, 3550, 3550)))


def test_points_grow_by_month_and_stop_at_100() -> None:
    rust = fault(points=Fraction(60), growth=Fraction(1, 4))
    made = garage(faults=(rust,), look_beyond=1)
    grown = [points(made, rust, month).points for month in range(4)]
    assert grown == [60, 75, Fraction("93.75"), 100]
    assert worth(made, rust) == tuple(map(Fraction, (6000, 7500, 9375, 10000)))
    assert Grows(growth=Fraction(1, 4)) in points(made, rust, 0).reasons


def test_points_that_have_grown_go_on_growing() -> None:
    rust = fault(points=Fraction(60), growth=Fraction(1, 4))
    made = garage(faults=(rust,), look_beyond=1, grown=1)
    assert worth(made, rust) == tuple(map(Fraction, (7500, 9375, 10000, 10000)))
    assert points(made, rust, 1).points == Fraction("93.75")
    still = fault(points=Fraction(60))
    assert worth(made, still) == (Fraction(6000),) * 4


def test_waiting_counts_as_money_only() -> None:
    leak = fault(points=Fraction(3), loss_per_month=250)
    assert worth(garage(faults=(leak,)), leak) == (Fraction(550),) * 3


@pytest.mark.parametrize(
    ("look_beyond", "keep_months", "months"), [(0, 36, 3), (6, 36, 9), (6, 2, 2)]
)
def test_months_that_count(look_beyond: int, keep_months: int, months: int) -> None:
    car = vehicle(keep_months=keep_months)
    made = garage(vehicles=(car,), look_beyond=look_beyond)
    assert len(worth(made, made.faults[0])) == months


@pytest.mark.parametrize(
    ("points_", "relief", "gain"),
    [("5", "1", 5), ("5", "0.5", 2), ("7", "0.5", 4), ("5", "0.3", 2), ("9", "1/3", 3)],
)
def test_gain_is_rounded_half_to_even(points_: str, relief: str, gain: int) -> None:
    one = fault(points=Fraction(points_))
    made = garage(faults=(one,), money_per_point=Fraction(1))
    assert benefit(made, one, Fraction(relief)) == (gain, gain, gain)


@pytest.mark.parametrize(
    ("relief", "gain"),
    [
        ("1", (2, 7, 15)),  # 15 - 13, 15 - 8, 15
        ("0.9", (1, 6, 14)),  # 13.5 is 14
        ("0.85", (0, 5, 13)),
        ("0.5", (0, 0, 8)),  # less than what is fitted loses nothing
    ],
)
def test_only_what_is_more_than_fitted_is_gained(
    relief: str, gain: tuple[int, ...]
) -> None:
    # 0.85 x 15 = 12.75 in the first month, 0.5 x 15 = 7.5 in the second: 13 and 8
    worn = fault(
        points=Fraction(15),
        fitted=(
            Fitted(option="o8", relief=Fraction("0.85"), until=START.plus(1)),
            Fitted(option="o9", relief=Fraction("0.5"), until=START.plus(2)),
        ),
    )
    made = garage(faults=(worn,), money_per_point=Fraction(1))
    assert benefit(made, worn, Fraction(relief)) == gain


@pytest.mark.parametrize("status", [FaultStatus.FIXED, FaultStatus.WATCH])
def test_fixed_and_watched_faults_earn_nothing(status: FaultStatus) -> None:
    one = fault(status=status)
    assert benefit(garage(faults=(one,)), one, Fraction(1)) == (0, 0, 0)
