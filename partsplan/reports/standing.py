"""In which months a plan leaves a vehicle unsafe or not drivable, and by what."""

from collections import defaultdict
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from partsplan.domain import CURED, Fault, FaultStatus, Garage, Plan, Vehicle
from partsplan.scoring import forbids_driving, stops_driving
from partsplan.verification import Facts


@dataclass(frozen=True, slots=True)
class Trouble:
    """One fault that keeps its vehicle off the road.

    Attributes
    ----------
    months
        The driven months in which it is not cured; empty if it is cured in the first
        of them, and so lasts until that job is done.
    cured_in
        The first month in which it is, by more than what was fitted before; None if
        the plan never cures it.
    """

    fault: Fault
    months: tuple[int, ...]
    cured_in: int | None


def unsafe(garage: Garage, plan: Plan) -> dict[str, tuple[Trouble, ...]]:
    """What forbids driving, by vehicle."""
    return _troubles(garage, plan, forbids_driving)


def undrivable(garage: Garage, plan: Plan) -> dict[str, tuple[Trouble, ...]]:
    """What leaves a vehicle not drivable, by vehicle."""
    return _troubles(garage, plan, stops_driving)


def _troubles(
    garage: Garage, plan: Plan, grave: Callable[[Fault], bool]
) -> dict[str, tuple[Trouble, ...]]:
    facts = Facts(garage, plan.choices)
    suspects: dict[str, list[Fault]] = defaultdict(list)
    for fault in garage.faults:
        if fault.status is not FaultStatus.FIXED and grave(fault):
            suspects[fault.vehicle].append(fault)
    found = {
        vehicle.id: tuple(_of_vehicle(facts, vehicle, suspects[vehicle.id]))
        for vehicle in garage.vehicles
    }
    return {vehicle: troubles for vehicle, troubles in found.items() if troubles}


def _of_vehicle(
    facts: Facts, vehicle: Vehicle, suspects: list[Fault]
) -> Iterator[Trouble]:
    garage = facts.garage
    driven = [month for month in range(garage.months) if garage.driven(vehicle, month)]
    if not driven:
        return
    for fault in suspects:
        mended = [
            month for month in range(garage.months) if facts.cured(fault.id, month)
        ]
        months = tuple(month for month in driven if month not in mended)
        first = min(
            (month for month in mended if garage.relieved(fault, month) < CURED),
            default=None,
        )
        if months or first == driven[0]:
            yield Trouble(fault, months, first)
