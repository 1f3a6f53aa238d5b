"""How much a fault hampers driving."""

from fractions import Fraction

from partsplan.domain import DrivabilityGrade, Fault, Score, Use

GRADE_POINTS = (0, 10, 35, 70, 100)
USE_FACTOR = dict(zip(Use, map(Fraction, ("1", "0.6", "0.3", "0.1")), strict=True))
NOT_DRIVABLE = 4


def drivability(fault: Fault, use: Use) -> Score:
    """Points for the grade of the fault and the use of its vehicle. [0-100]"""
    reasons = (DrivabilityGrade(grade=fault.drivability, use=use),)
    points = GRADE_POINTS[fault.drivability] * USE_FACTOR[use]
    return Score(points, reasons if points else ())


def stops_driving(fault: Fault) -> bool:
    """Whether a vehicle with this fault cannot be driven."""
    return fault.drivability == NOT_DRIVABLE
