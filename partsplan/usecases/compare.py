"""Sets the options of one fault side by side."""

from pathlib import Path

from partsplan.domain import Comparison, Garage


def compare(folder: Path, fault: str) -> tuple[Garage, Comparison]:
    """The options of a fault, with the break-evens against the best rival.

    Raises
    ------
    InvalidGarage
    InvalidRequest
        If the garage has no fault of that id.
    """
    from partsplan.intake import read_garage
    from partsplan.pricing import compare as side_by_side
    from partsplan.usecases.unknown import unknown

    garage = read_garage(folder)
    if fault not in garage.fault:
        raise unknown("fault", fault, garage.fault)
    return garage, side_by_side(garage, fault)


def fault_ids(folder: Path) -> tuple[str, ...]:
    """The ids of a garage's faults, in file order.

    Raises
    ------
    InvalidGarage
    """
    from partsplan.intake import read_garage

    return tuple(fault.id for fault in read_garage(folder).faults)


def option_ids(folder: Path) -> tuple[str, ...]:
    """The ids of a garage's options, in file order.

    Raises
    ------
    InvalidGarage
    """
    from partsplan.intake import read_garage

    return tuple(option.id for option in read_garage(folder).options)


def vehicle_ids(folder: Path) -> tuple[str, ...]:
    """The ids of a garage's vehicles, in file order.

    Raises
    ------
    InvalidGarage
    """
    from partsplan.intake import read_garage

    return tuple(vehicle.id for vehicle in read_garage(folder).vehicles)
