"""All figures of a fault together, and faults in the order of their urgency."""

from fractions import Fraction

from partsplan.domain import CURED, Fault, FaultScores, FaultStatus, Garage
from partsplan.scoring.drivability import drivability, stops_driving
from partsplan.scoring.points import enjoyment, points
from partsplan.scoring.safety import forbids_driving, safety
from partsplan.scoring.waiting import loss, waiting


def scores(garage: Garage, fault: Fault, month: int = 0) -> FaultScores:
    """Every figure of a fault in one month, each with its reasons."""
    vehicle = garage.vehicle[fault.vehicle]
    driven = garage.driven(vehicle, month)
    borne = points(garage, fault, month)
    endangers = driven and garage.relieved(fault, month) < CURED
    return FaultScores(
        fault=fault.id,
        month=month,
        safety=safety(fault, driven=driven),
        drivability=drivability(fault, vehicle.use),
        waiting=waiting(fault, garage.mean_budget),
        enjoyment=enjoyment(fault),
        loss=loss(fault),
        points=borne,
        worth=garage.money_per_point * borne.points + loss(fault),
        do_not_drive=endangers and forbids_driving(fault),
        not_drivable=endangers and stops_driving(fault),
    )


def ranking(garage: Garage, month: int = 0) -> tuple[FaultScores, ...]:
    """Open and watched faults: do-not-drive first, then by worth of a month.

    Of what something relieves for now only what is left counts.
    """
    found = [
        scores(garage, fault, month)
        for fault in garage.faults
        if fault.status is not FaultStatus.FIXED
    ]

    def turn(one: FaultScores) -> tuple[bool, bool, Fraction]:
        left = 1 - garage.relieved(garage.fault[one.fault], month)
        return not one.do_not_drive, not one.not_drivable, -one.worth * left

    return tuple(sorted(found, key=turn))
