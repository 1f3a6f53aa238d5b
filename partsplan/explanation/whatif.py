"""A what-if as another garage, and as demands on what the plan chooses."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import TypeVar

from partsplan.domain import (
    AvoidOption,
    Change,
    ChangeBudget,
    ChangeHours,
    ChangeMonths,
    ChangePrice,
    ChangeReserve,
    Garage,
    GiveUpVehicle,
    LeaveFault,
    Month,
    ParkVehicle,
    Plan,
    RefuseRoute,
    TakeFault,
    UseOption,
    Vehicle,
)
from partsplan.planning import Force

_T = TypeVar("_T")


def changed(garage: Garage, changes: Iterable[Change]) -> tuple[Garage, Force]:
    """The garage with these changes, and what its plan has to do or to leave.

    The worth of a point stays as it is, whatever the budget. What is said of one month
    goes before what is said of all; such a month is none before the start.

    Raises
    ------
    KeyError
        If a change names a vehicle, a fault or an option that is not there.
    """
    asked = sorted(changes, key=_of_one_month)
    for change in asked:
        garage = _garage(garage, change)
    forces = [_force(garage, change) for change in asked]
    return garage, Force(
        take=frozenset().union(*(one.take for one in forces)),
        leave=frozenset().union(*(one.leave for one in forces)),
        use=frozenset().union(*(one.use for one in forces)),
        avoid=frozenset().union(*(one.avoid for one in forces)),
    )


def disobeyed(force: Force, plan: Plan) -> Iterator[str]:
    """The demands that a plan does not meet, as sentences; none if it does them all."""
    named = {fault for job in plan.jobs for fault in job.faults}
    used = {job.option for job in plan.jobs}
    for what, wanted, there in (
        ("no job names the fault", force.take - named, False),
        ("a job names the fault", force.leave & named, True),
        ("the plan leaves out the option", force.use - used, False),
        ("the plan uses the option", force.avoid & used, True),
    ):
        for one in sorted(wanted):
            yield f"{what} {one}, which was to be {'left' if there else 'taken'}"


def _of_one_month(change: Change) -> bool:
    return isinstance(change, ChangeBudget | ChangeHours) and change.month is not None


def _garage(garage: Garage, change: Change) -> Garage:
    match change:
        case ChangeMonths(months=months):
            return replace(garage, months=months)
        case ChangeReserve(reserve=reserve):
            return replace(garage, reserve=reserve)
        case ChangeBudget(amount=amount, month=None):
            return replace(garage, budget=(amount,))
        case ChangeBudget(amount=amount, month=Month() as month):
            budget = _in_month(garage.budget, garage.index(month), amount)
            return replace(garage, budget=budget)
        case ChangeHours(hours=hours, month=None):
            return replace(garage, hours=(hours,))
        case ChangeHours(hours=hours, month=Month() as month):
            each = _in_month(garage.hours, garage.index(month), hours)
            return replace(garage, hours=each)
        case ChangePrice(option=name, price=price):
            place = garage.options.index(garage.option[name])
            dearer = replace(garage.option[name], price=price)
            return replace(garage, options=_with(garage.options, place, dearer))
        case ParkVehicle(vehicle=name, until=until):
            parked = replace(garage.vehicle[name], driven_from=until)
            return _with_vehicle(garage, parked)
        case GiveUpVehicle(vehicle=name, month=month):
            given = replace(garage.vehicle[name], keep_months=garage.index(month))
            return _with_vehicle(garage, given)
    return garage


def _force(garage: Garage, change: Change) -> Force:
    match change:
        case TakeFault(fault=fault):
            return Force(take=frozenset({garage.fault[fault].id}))
        case LeaveFault(fault=fault):
            return Force(leave=frozenset({garage.fault[fault].id}))
        case UseOption(option=option):
            return Force(use=frozenset({garage.option[option].id}))
        case AvoidOption(option=option):
            return Force(avoid=frozenset({garage.option[option].id}))
        case RefuseRoute(route=route, vehicle=vehicle):
            return Force(
                avoid=frozenset(
                    option.id
                    for option in garage.options
                    if option.route is route
                    and vehicle in (None, garage.fault[option.fixes[0].fault].vehicle)
                )
            )
    return Force()


def _with_vehicle(garage: Garage, vehicle: Vehicle) -> Garage:
    place = [one.id for one in garage.vehicles].index(vehicle.id)
    return replace(garage, vehicles=_with(garage.vehicles, place, vehicle))


def _in_month(values: tuple[_T, ...], month: int, value: _T) -> tuple[_T, ...]:
    """The values of a list whose last one repeats, with another in one month."""
    longer = values + values[-1:] * (month + 2 - len(values))
    return _with(longer, month, value)


def _with(values: tuple[_T, ...], place: int, value: _T) -> tuple[_T, ...]:
    return (*values[:place], value, *values[place + 1 :])
