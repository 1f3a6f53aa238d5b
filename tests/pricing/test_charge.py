"""A plan pays for the months it counts: charge = C x n / L, by hand."""

from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import FaultStatus, Route
from partsplan.pricing import offers
from tests.support.building import fault, garage, option, vehicle


@pytest.mark.parametrize(
    ("part", "look_beyond", "keep_months", "until", "charge"),
    [
        ({}, 6, 36, 9, 2500),  # 9 of 36 months
        ({}, 0, 36, 3, 833),  # 3 of 36: 833.33
        ({"lead_days": 30}, 6, 36, 9, 2286),  # 8 of the 35 that are left: 2285.71
        ({"life_months": 4}, 6, 36, 4, 10000),  # ends within the months that count
        ({"life_months": 12}, 6, 36, 9, 7500),
        ({"life_months": 60}, 6, 36, 9, 2500),  # outlives the vehicle
        ({}, 6, 5, 5, 10000),  # the vehicle goes first
        ({"life_months": 3, "lead_days": 60}, 6, 36, 5, 10000),
        ({"price": 6}, 6, 36, 9, 2),  # 1.5 to the even 2
        ({"price": 10}, 6, 36, 9, 2),  # 2.5 to the even 2
        ({"price": 14}, 6, 36, 9, 4),  # 3.5 to the even 4
        ({"route": Route.STAND_IN, "followup_within": 2}, 6, 36, 2, 10000),
        ({"route": Route.STAND_IN, "followup_within": 12}, 6, 36, 9, 7500),
    ],
)
def test_share_of_the_expected_cost(
    part: dict[str, Any], look_beyond: int, keep_months: int, until: int, charge: int
) -> None:
    made = garage(
        look_beyond=look_beyond,
        vehicles=(vehicle(keep_months=keep_months),),
        options=(option(**part),),
    )
    first = offers(made)[0]
    assert (first.until, first.charge) == (until, charge)


def test_charge_is_taken_from_the_rounded_cost() -> None:
    # C = 5 + 0.5 of a dud's hours, half to even 6 (not 5.5); 9 of 36 months are 1.5
    part = option(
        price=5, dud_chance=Fraction(1, 3), warranty_months=1, hours=Fraction(1)
    )
    made = garage(look_beyond=6, hour_value=1, options=(part,))
    first = offers(made)[0]
    assert first.price.expected == 6  # 5 + 1 + 0.5
    assert first.charge == 2


def test_an_offer_names_the_open_faults_only() -> None:
    watched = fault("f3", status=FaultStatus.WATCH)
    part = option("o1", "f3", "f2:0.3", "f1")
    made = garage(faults=(fault(), fault("f2"), watched), options=(part,))
    assert [offer.faults for offer in offers(made)] == [("f2", "f1")] * 3


@pytest.mark.parametrize("status", [FaultStatus.FIXED, FaultStatus.WATCH])
def test_nothing_is_offered_for_faults_that_are_not_open(status: FaultStatus) -> None:
    made = garage(faults=(fault(status=status),))
    assert offers(made) == ()
