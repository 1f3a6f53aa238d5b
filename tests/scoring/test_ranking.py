"""Every figure of a fault at once, and which fault comes first."""

from fractions import Fraction

from partsplan.domain import (
    FaultStatus,
    Fitted,
    Inspection,
    Likelihood,
    Month,
    Severity,
)
from partsplan.scoring import ranking, scores
from tests.support.building import START, fault, garage, vehicle


def test_all_figures_of_a_fault_agree_with_its_worth() -> None:
    worn = fault(
        points=None,
        severity=Severity.CATASTROPHIC,
        likelihood=Likelihood.REMOTE,
        drivability=4,
        enjoyment=Fraction(5),
        loss_per_month=5000,
    )
    found = scores(garage(faults=(worn,)), worn)
    assert found.safety.points == 25
    assert found.drivability.points == 100
    assert found.enjoyment.points == 50
    assert found.waiting.points == 25  # 50.00 of 200.00 a month
    assert found.loss == 5000
    assert found.points.points == 50  # 0.6 x 25 + 0.3 x 100 + 0.1 x 50
    assert found.worth == 10000
    assert (found.do_not_drive, found.not_drivable) == (False, True)


def test_a_parked_vehicle_is_neither_unsafe_nor_stranded() -> None:
    bad = fault(inspection=Inspection.DANGEROUS, drivability=4)
    made = garage(vehicles=(vehicle(driven_from=Month(2027, 2)),), faults=(bad,))
    states = [
        (one.do_not_drive, one.not_drivable)
        for one in (scores(made, bad, month) for month in range(2))
    ]
    assert states == [(False, False), (True, True)]


def test_do_not_drive_comes_first_then_not_drivable_then_worth() -> None:
    made = garage(
        faults=(
            fault("dear", points=Fraction(90)),
            fault("dearer", points=Fraction(95)),
            fault("stranded", points=Fraction(2), drivability=4),
            fault("unsafe", points=Fraction(1), inspection=Inspection.DANGEROUS),
            fault("watched", points=Fraction(92), status=FaultStatus.WATCH),
            fault("fixed", points=Fraction(99), status=FaultStatus.FIXED),
        ),
        options=(),
    )
    order = [one.fault for one in ranking(made)]
    assert order == ["unsafe", "stranded", "dearer", "watched", "dear"]


def test_what_is_cured_for_a_while_is_no_danger_meanwhile() -> None:
    tape = Fitted(option="o9", relief=Fraction("0.8"), until=START.plus(1))
    bad = fault(inspection=Inspection.DANGEROUS, drivability=4, fitted=(tape,))
    states = [
        (one.do_not_drive, one.not_drivable)
        for one in (scores(garage(faults=(bad,)), bad, month) for month in range(2))
    ]
    assert states == [(False, False), (True, True)]


def test_what_is_relieved_ranks_by_what_is_left_of_its_worth() -> None:
    half = Fitted(option="o9", relief=Fraction("0.5"), until=START.plus(1))
    made = garage(
        faults=(
            fault("relieved", points=Fraction(90), fitted=(half,)),
            fault("less", points=Fraction(44)),
            fault("more", points=Fraction(46)),
        ),
        options=(),
    )
    assert [one.fault for one in ranking(made)] == ["more", "relieved", "less"]
    assert [one.fault for one in ranking(made, 1)] == ["relieved", "more", "less"]
