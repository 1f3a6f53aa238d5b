"""Points of a fault, and what a month without it is worth."""

from fractions import Fraction

from partsplan.domain import (
    EnjoymentGiven,
    Fault,
    FaultStatus,
    Garage,
    Grows,
    OwnersPoints,
    Reason,
    Score,
)
from partsplan.domain.numbers import ONE
from partsplan.scoring.drivability import drivability
from partsplan.scoring.safety import safety
from partsplan.scoring.waiting import loss

FULL = Fraction(100)


def enjoyment(fault: Fault) -> Score:
    """Points for a cosmetic wish. [0-100]"""
    points = 10 * fault.enjoyment
    reasons = (EnjoymentGiven(enjoyment=fault.enjoyment),) if points else ()
    return Score(points, reasons)


def points(garage: Garage, fault: Fault, month: int) -> Score:
    """Points borne in a month: min(100, base x (1 + growth)^month). [0-100]

    The base is the owner's own figure, else the weighted sum of safety in that month,
    drivability and enjoyment.
    """
    reasons: list[Reason] = []
    if fault.points is not None:
        base = fault.points
        reasons.append(OwnersPoints(points=base))
    else:
        base = _weighted(garage, fault, month)
    if fault.growth and base:
        reasons.append(Grows(growth=fault.growth))
    return Score(min(FULL, base * (1 + fault.growth) ** month), tuple(reasons))


def worth(garage: Garage, fault: Fault) -> tuple[Fraction, ...]:
    """Worth of each month without the fault, while it counts. [minor units]

    Shape: one figure a month up to the end of counting of its vehicle; not rounded.
    """
    end = garage.counted_end(garage.vehicle[fault.vehicle])
    if fault.growth:
        months = [points(garage, fault, month).points for month in range(end)]
    else:  # points change only where the vehicle comes onto the road
        vehicle = garage.vehicle[fault.vehicle]
        driven = [garage.driven(vehicle, month) for month in range(end)]
        figure = {
            state: points(garage, fault, driven.index(state)).points
            for state in set(driven)
        }
        months = [figure[state] for state in driven]
    lost = loss(fault)
    figures = {one: garage.money_per_point * one + lost for one in set(months)}
    return tuple(figures[one] for one in months)


def benefit(garage: Garage, fault: Fault, relief: Fraction) -> tuple[int, ...]:
    """What that relief gains in each month, rounded half to even. [minor units]

    A fault that is fixed or only watched earns nothing.
    """
    if fault.status is not FaultStatus.OPEN:
        return (0,) * garage.counted_end(garage.vehicle[fault.vehicle])
    months = worth(garage, fault)
    rounded = {
        one: round(one if relief == ONE else relief * one) for one in set(months)
    }
    return tuple(rounded[one] for one in months)


def _weighted(garage: Garage, fault: Fault, month: int) -> Fraction:
    vehicle = garage.vehicle[fault.vehicle]
    weights = garage.weights
    harm = safety(fault, driven=garage.driven(vehicle, month)).points
    return (
        weights.safety * harm
        + weights.drivability * drivability(fault, vehicle.use).points
        + weights.enjoyment * enjoyment(fault).points
    )
