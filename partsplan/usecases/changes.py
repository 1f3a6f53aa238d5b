"""Changes as people write them, such as ``("price", "hose-new=19.50")``."""

from collections.abc import Callable, Iterable, Mapping

from partsplan.catalogue import currencies
from partsplan.domain import (
    AvoidOption,
    Change,
    ChangeBudget,
    ChangeHours,
    ChangeMonths,
    ChangePrice,
    ChangeReserve,
    Currency,
    FaultStatus,
    Garage,
    GiveUpVehicle,
    LeaveFault,
    Month,
    ParkVehicle,
    RefuseRoute,
    Route,
    TakeFault,
    UseOption,
)
from partsplan.errors import InvalidRequest
from partsplan.explanation import changed
from partsplan.intake.cells import number, whole
from partsplan.usecases.unknown import unknown

Asked = tuple[str, str]
"""What is to change, and into what."""

LONGEST_PLAN = 36
"""[months]"""
MOST_HOURS = 10_000
"""[h a month]"""


def read_changes(garage: Garage, asked: Iterable[Asked]) -> tuple[Change, ...]:
    """The changes of a garage that are asked for, each once.

    Raises
    ------
    InvalidRequest
        If a kind, a name or a value is none, or two changes contradict each other.
    """
    wanted = list(asked)
    for kind, text in wanted:  # which months there are depends on it
        if kind == "months":
            garage, _ = changed(garage, [_read(garage, kind, text)])
    found: dict[tuple[object, ...], tuple[str, Change]] = {}
    for kind, text in wanted:
        written, change = f"{kind} {text}", _read(garage, kind, text)
        earlier, other = found.setdefault(_about(change), (written, change))
        if other != change:
            raise InvalidRequest(f'"{earlier}" and "{written}" contradict each other')
    return tuple(change for _, change in found.values())


def _read(garage: Garage, kind: str, text: str) -> Change:
    if kind not in READERS:
        raise unknown("change", kind, READERS)
    try:
        return READERS[kind](garage, text)
    except ValueError as error:
        raise InvalidRequest(f"{kind}: {error}") from error


def _budget(garage: Garage, text: str) -> ChangeBudget:
    month, amount = _in_month(garage, text)
    return ChangeBudget(amount=_amount(garage, amount), month=month)


def _hours(garage: Garage, text: str) -> ChangeHours:
    month, hours = _in_month(garage, text)
    value = number(0, MOST_HOURS).read(hours, garage.currency)
    return ChangeHours(hours=value, month=month)


def _price(garage: Garage, text: str) -> ChangePrice:
    name, amount = _two(text, "OPTION=AMOUNT")
    option = garage.option[_known("option", name, garage.option)]
    if option.bought:
        raise ValueError(f"{name} is bought already")
    own = Currency(option.currency, currencies()[option.currency])
    return ChangePrice(option=name, price=_not_below_0(own.parse(amount), amount))


def _reserve(garage: Garage, text: str) -> ChangeReserve:
    return ChangeReserve(reserve=_amount(garage, text))


def _months(garage: Garage, text: str) -> ChangeMonths:
    value = whole(1, LONGEST_PLAN).read(text, garage.currency)
    return ChangeMonths(months=value)


def _park(garage: Garage, text: str) -> ParkVehicle:
    if text in garage.vehicle or "=" not in text:
        return ParkVehicle(vehicle=_known("vehicle", text, garage.vehicle))
    name, month = _two(text, "VEHICLE or VEHICLE=MONTH")
    vehicle = _known("vehicle", name, garage.vehicle)
    return ParkVehicle(vehicle=vehicle, until=_from_start(garage, month))


def _give_up(garage: Garage, text: str) -> GiveUpVehicle:
    name, written = _two(text, "VEHICLE=MONTH")
    vehicle = _known("vehicle", name, garage.vehicle)
    return GiveUpVehicle(vehicle=vehicle, month=_from_start(garage, written))


def _from_start(garage: Garage, text: str) -> Month:
    month = Month.parse(text)
    if month < garage.start:
        raise ValueError(f"expected {garage.start} or later, got {month}")
    return month


def _take(garage: Garage, text: str) -> TakeFault:
    return TakeFault(fault=_open_fault(garage, text))


def _leave(garage: Garage, text: str) -> LeaveFault:
    return LeaveFault(fault=_open_fault(garage, text))


def _use(garage: Garage, text: str) -> UseOption:
    return UseOption(option=_known("option", text, garage.option))


def _avoid(garage: Garage, text: str) -> AvoidOption:
    return AvoidOption(option=_known("option", text, garage.option))


def _refuse(garage: Garage, text: str) -> RefuseRoute:
    name, colon, vehicle = text.partition(":")
    route = Route(_known("route", name, tuple(Route)))
    if not colon:
        return RefuseRoute(route=route)
    return RefuseRoute(route=route, vehicle=_known("vehicle", vehicle, garage.vehicle))


READERS: Mapping[str, Callable[[Garage, str], Change]] = {
    "budget": _budget,
    "hours": _hours,
    "price": _price,
    "take": _take,
    "leave": _leave,
    "use": _use,
    "avoid": _avoid,
    "refuse": _refuse,
    "park": _park,
    "give-up": _give_up,
    "reserve": _reserve,
    "months": _months,
}


def _open_fault(garage: Garage, text: str) -> str:
    fault = garage.fault[_known("fault", text, garage.fault)]
    if fault.status is not FaultStatus.OPEN:
        raise ValueError(f'expected an open fault, "{text}" is {fault.status.value}')
    return text


def _known(what: str, name: str, known: Iterable[str]) -> str:
    if name not in known:
        raise unknown(what, name, known)
    return name


def _in_month(garage: Garage, text: str) -> tuple[Month | None, str]:
    """A month of the plan, if one is named, and the rest."""
    named, equals, value = text.partition("=")
    if not equals:
        return None, text
    month = Month.parse(named)
    last = garage.month(garage.months - 1)
    if not garage.start <= month <= last:
        raise ValueError(f"expected a month from {garage.start} to {last}, got {month}")
    return month, value


def _two(text: str, form: str) -> tuple[str, str]:
    """A name, which may hold ``=`` itself, and a value."""
    name, _, value = text.rpartition("=")
    if not name or not value:
        raise ValueError(f'expected {form}, got "{text}"')
    return name, value


def _amount(garage: Garage, text: str) -> int:
    return _not_below_0(garage.currency.parse(text), text)


def _not_below_0(amount: int, text: str) -> int:
    if amount < 0:
        raise ValueError(f'expected 0 or more, got "{text}"')
    return amount


def _about(change: Change) -> tuple[object, ...]:
    """What a change settles; two that settle the same must be the same."""
    match change:
        case ChangeBudget(month=month) | ChangeHours(month=month):
            return type(change), month
        case TakeFault(fault=fault) | LeaveFault(fault=fault):
            return "fault", fault
        case UseOption(option=option) | AvoidOption(option=option):
            return "option", option
        case ChangePrice(option=option):
            return "price", option
        case ParkVehicle(vehicle=vehicle) | GiveUpVehicle(vehicle=vehicle):
            return type(change), vehicle
        case RefuseRoute():
            return (change,)
    return (type(change),)
