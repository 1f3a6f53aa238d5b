"""Faults that are there, planned or only watched."""

from partsplan.domain import CURED, Fault, FaultStatus, Garage


def present(garage: Garage) -> tuple[Fault, ...]:
    """Every fault that is not fixed, nor cured for now by what was fitted.

    In file order.
    """
    return tuple(
        one
        for one in garage.faults
        if one.status is not FaultStatus.FIXED and garage.relieved(one, 0) < CURED
    )
