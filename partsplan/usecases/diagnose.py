"""Tells what to check before anything is bought."""

from pathlib import Path

from partsplan.domain import Diagnosis, FaultStatus, Garage, Lamp, SharedCause


def diagnose(
    folder: Path, fault: str | None = None
) -> tuple[Garage, tuple[Diagnosis, ...], tuple[SharedCause, ...], tuple[Lamp, ...]]:
    """One fault, or every one that is not fixed and has suspected causes.

    With the causes that these share with other faults, and the lamps they light.

    Raises
    ------
    InvalidGarage
    InvalidRequest
        If the garage has no fault of that id.
    """
    from partsplan.diagnosis import diagnose as in_best_order
    from partsplan.diagnosis import lamps, shared_causes
    from partsplan.usecases.opening import opening_garage
    from partsplan.usecases.unknown import unknown

    garage = opening_garage(folder)
    if fault is None:
        asked = _suspected(garage)
    elif fault in garage.fault:
        asked = (fault,)
    else:
        raise unknown("fault", fault, garage.fault)
    return (
        garage,
        tuple(in_best_order(garage, one) for one in asked),
        tuple(one for one in shared_causes(garage) if {*asked} & {*one.faults}),
        tuple(one for one in lamps(garage) if {*asked} & {*one.lit_by}),
    )


def _suspected(garage: Garage) -> tuple[str, ...]:
    named = {cause.fault for cause in garage.causes}
    return tuple(
        fault.id
        for fault in garage.faults
        if fault.id in named and fault.status is not FaultStatus.FIXED
    )
