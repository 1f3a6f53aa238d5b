"""Points of a fault, and what a month without it is worth."""

from collections.abc import Iterator
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
from partsplan.domain.numbers import rounded_ratio
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
        reasons.append(OwnersPoints(points=fault.points))
    driven = garage.driven(garage.vehicle[fault.vehicle], month)
    base = _base(garage, fault, driven=driven)
    if fault.growth and base:
        reasons.append(Grows(growth=fault.growth))
    return Score(_grown(fault, base, month + garage.grown), tuple(reasons))


def worth(garage: Garage, fault: Fault) -> tuple[Fraction, ...]:
    """Worth of each month without the fault, while it counts. [minor units]

    Shape: one figure a month up to the end of counting of its vehicle; not rounded.
    """
    vehicle = garage.vehicle[fault.vehicle]
    end = garage.counted_end(vehicle)
    driven = [garage.driven(vehicle, month) for month in range(end)]
    base = {one: _base(garage, fault, driven=one) for one in set(driven)}
    lost = loss(fault)
    if fault.growth:
        borne = (
            _grown(fault, base[one], month)
            for month, one in enumerate(driven, start=garage.grown)
        )
        return tuple(garage.money_per_point * one + lost for one in borne)
    same = {
        one: garage.money_per_point * _grown(fault, base[one], 0) + lost for one in base
    }  # it changes only where the vehicle comes onto the road
    return tuple(same[one] for one in driven)


def benefit(garage: Garage, fault: Fault, relief: Fraction) -> tuple[int, ...]:
    """What that relief gains in each month, rounded half to even. [minor units]

    A fault that is fixed or only watched earns nothing, and what relieves it already
    is not gained again.
    """
    if fault.status is not FaultStatus.OPEN:
        return (0,) * garage.counted_end(garage.vehicle[fault.vehicle])
    gained = _relieved(relief, worth(garage, fault))
    if not fault.fitted:
        return tuple(gained)
    return tuple(
        max(0, more - round(garage.relieved(fault, month) * one))
        for month, (more, one) in enumerate(
            zip(gained, worth(garage, fault), strict=True)
        )
    )


def _relieved(relief: Fraction, months: tuple[Fraction, ...]) -> Iterator[int]:
    share, whole = relief.numerator, relief.denominator
    for one in months:
        yield rounded_ratio(share * one.numerator, whole * one.denominator)


def _base(garage: Garage, fault: Fault, *, driven: bool) -> Fraction:
    """The owner's own figure, else the weighted sum."""
    if fault.points is not None:
        return fault.points
    use = garage.vehicle[fault.vehicle].use
    weights = garage.weights
    return (
        weights.safety * safety(fault, driven=driven).points
        + weights.drivability * drivability(fault, use).points
        + weights.enjoyment * enjoyment(fault).points
    )


def _grown(fault: Fault, base: Fraction, month: int) -> Fraction:
    return min(FULL, base * (1 + fault.growth) ** month)
