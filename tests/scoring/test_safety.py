"""Risk levels and safety points: MIL-STD-882E, 11 May 2012, tables I to III."""

from fractions import Fraction
from itertools import pairwise, product
from typing import Any

import pytest

from partsplan.domain import (
    Inspection,
    InspectionClass,
    Likelihood,
    NoExposure,
    RiskCell,
    RiskLevel,
    Score,
    Severity,
)
from partsplan.scoring import forbids_driving, risk_level, safety
from tests.support.building import fault
from tests.support.published import published

STANDARD: Any = published("risk_matrix_mil_std_882e.json")
CELLS = list(product(Likelihood, Severity))


def level(likelihood: Likelihood, severity: Severity) -> str:
    """The level that the standard prints for a cell."""
    return str(STANDARD["matrix"][f"{likelihood}{severity}"])


def points(wanted: str) -> list[float]:
    return [
        float(safety(fault(severity=s, likelihood=one), driven=True).points)
        for one, s in CELLS
        if level(one, s) == wanted
    ]


@pytest.mark.parametrize(("likelihood", "severity"), CELLS)
def test_every_cell_has_its_level(likelihood: Likelihood, severity: Severity) -> None:
    printed = level(likelihood, severity).lower()
    assert risk_level(severity, likelihood) is RiskLevel(printed)


@pytest.mark.parametrize(
    ("worse", "milder"), list(pairwise(["High", "Serious", "Medium", "Low"]))
)
def test_every_worse_cell_outranks_every_milder_one(worse: str, milder: str) -> None:
    assert min(points(worse)) > max(points(milder))


@pytest.mark.parametrize(
    ("level", "least", "most"),
    [("High", 50, 100), ("Serious", 24, 35), ("Medium", 3, 17.5), ("Low", 0.5, 2.5)],
)
def test_levels_span_these_points(level: str, least: float, most: float) -> None:
    # computed from (100, 70, 30, 5) x (1, .8, .5, .25, .1)
    assert (min(points(level)), max(points(level))) == (least, most)


def test_the_older_index_ranks_no_cell_of_a_milder_level_higher() -> None:
    # second witness: risk index of MIL-STD-882D, table A-III, 1 worst
    index = STANDARD["older_risk_index_1_to_20"]["cells"]
    order = list(RiskLevel)
    ranked = sorted(index, key=index.__getitem__)
    levels = [
        order.index(risk_level(Severity(int(cell[1])), Likelihood(cell[0])))
        for cell in ranked
    ]
    assert levels == sorted(levels)


def test_an_eliminated_hazard_has_no_points() -> None:
    assert points("Eliminated") == [0, 0, 0, 0]


@pytest.mark.parametrize(("likelihood", "severity"), CELLS)
def test_no_exposure_no_points(likelihood: Likelihood, severity: Severity) -> None:
    parked = safety(fault(severity=severity, likelihood=likelihood), driven=False)
    assert parked == Score(Fraction(0), (NoExposure(),))


def test_a_fault_that_can_do_no_harm_has_no_points_and_no_reason() -> None:
    harmless = safety(fault(likelihood=Likelihood.FREQUENT), driven=True)
    assert harmless == Score(Fraction(0))


def test_reasons_name_the_cell_and_the_inspection_class() -> None:
    worn = fault(
        severity=Severity.CRITICAL,
        likelihood=Likelihood.OCCASIONAL,
        inspection=Inspection.MAJOR,
    )
    score = safety(worn, driven=True)
    assert score.points == 35
    assert score.reasons == (
        RiskCell(
            severity=Severity.CRITICAL,
            likelihood=Likelihood.OCCASIONAL,
            level=RiskLevel.SERIOUS,
        ),
        InspectionClass(inspection=Inspection.MAJOR),
    )


@pytest.mark.parametrize(("likelihood", "severity"), CELLS)
def test_high_risks_forbid_driving(likelihood: Likelihood, severity: Severity) -> None:
    one = fault(severity=severity, likelihood=likelihood)
    assert forbids_driving(one) == (level(likelihood, severity) == "High")


@pytest.mark.parametrize("inspection", list(Inspection))
def test_dangerous_deficiencies_forbid_driving(inspection: Inspection) -> None:
    # Directive 2014/47/EU, article 14(3)
    assert forbids_driving(fault(inspection=inspection)) == (inspection == "dangerous")
