"""Scores of the reference, worked out by hand."""

from fractions import Fraction

import pytest

from partsplan.domain import (
    Inspection,
    Likelihood,
    Severity,
    Use,
    Vehicle,
)
from tests.support.reference import offers
from tests.support.reference_prices import do_not_drive, points, worth
from tests.support.tiny_garage import START, fixes, tiny_fault, tiny_garage, tiny_option


@pytest.mark.parametrize(
    ("month", "expected"),
    [
        (0, "16.6"),  # not driven: drivability 70 x 0.6 x 0.3, enjoyment 40 x 0.1
        (1, "56.4"),  # and safety 70 x 0.5 x 0.6 = 21: 37.6, grown to 1.5 of it
        (2, "84.6"),
        (3, "100"),  # 126.9
    ],
)
def test_points_are_weighted_grown_and_capped(month: int, expected: str) -> None:
    fault = tiny_fault(
        severity=Severity.CRITICAL,
        likelihood=Likelihood.OCCASIONAL,
        drivability=3,
        enjoyment=Fraction(4),
        points=None,
        growth=Fraction("0.5"),
    )
    later = Vehicle(id="v1", name="v1", use=Use.WEEKEND, driven_from=START.plus(1))
    garage = tiny_garage(vehicles=(later,), faults=(fault,))
    assert points(garage, fault, month) == Fraction(expected)


def test_worth_is_points_in_money_and_the_loss() -> None:
    fault = tiny_fault(
        points=Fraction(20),
        growth=Fraction("0.5"),
        loss_per_month=10,
        damage_chance=Fraction("0.1"),
        damage_cost=305,
    )
    option = tiny_option(fixes=fixes("f1", relief=Fraction("0.5")))
    garage = tiny_garage(
        faults=(fault,), options=(option,), money_per_point=Fraction(2)
    )
    assert worth(garage, fault, 1) == Fraction("100.5")  # 2 x 30 + 10 + 30.5
    offer = offers(garage)["o1", 0]
    assert offer.gains == {("f1", 0): 40, ("f1", 1): 50, ("f1", 2): 65}  # 65.25
    assert offer.cured == frozenset()


def test_high_risk_cells_and_dangerous_deficiencies_forbid_driving() -> None:
    """MIL-STD-882E, 11 May 2012, table III: columns are severity 1 to 4."""
    rows = {"A": "HHSM", "B": "HHSM", "C": "HSML", "D": "SMML", "E": "MMML"}
    for row, cells in rows.items():
        for severity, cell in zip(Severity, cells, strict=True):
            fault = tiny_fault(severity=severity, likelihood=Likelihood(row))
            assert do_not_drive(fault) == (cell == "H")
    assert do_not_drive(tiny_fault(inspection=Inspection.DANGEROUS))
    assert not do_not_drive(tiny_fault(inspection=Inspection.MAJOR))
