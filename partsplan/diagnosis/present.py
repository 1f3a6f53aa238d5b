"""Faults that are there, planned or only watched."""

from partsplan.domain import Fault, FaultStatus, Garage


def present(garage: Garage) -> tuple[Fault, ...]:
    """Every fault that is not fixed, in file order."""
    return tuple(one for one in garage.faults if one.status is not FaultStatus.FIXED)
