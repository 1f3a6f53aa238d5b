"""Options priced for every month in which they can be ordered."""

from collections.abc import Iterator

from partsplan.domain import FaultStatus, Garage, Offer, Option, Vehicle
from partsplan.domain.numbers import rounded_ratio
from partsplan.pricing.cash import flows_after_order, from_order
from partsplan.pricing.landed import price
from partsplan.pricing.months import Slot, slots


def offers(garage: Garage) -> tuple[Offer, ...]:
    """Every offer of a garage, in file order and then by ordering month.

    An option whose faults are all fixed or watched makes none.
    """
    return tuple(offer for option in garage.options for offer in of(garage, option))


def of(garage: Garage, option: Option) -> tuple[Offer, ...]:
    """The offers of one option, by ordering month."""
    faults = tuple(
        cure.fault
        for cure in option.fixes
        if garage.fault[cure.fault].status is FaultStatus.OPEN
    )
    found = slots(garage, option) if faults else ()
    return tuple(_offers(garage, option, found, faults)) if found else ()


def service_months(garage: Garage, option: Option, fitted: int) -> int:
    """Months of service while the vehicle is kept. [months]"""
    return _service(_vehicle(garage, option).keep_months - fitted, option.life)


def _offers(
    garage: Garage, option: Option, found: tuple[Slot, ...], faults: tuple[str, ...]
) -> Iterator[Offer]:
    """An offer for each slot; what is the same in every month is worked out once."""
    priced = price(garage, option)
    wait = found[0].fitted - found[0].ordered
    later = flows_after_order(garage, option, priced, wait)
    vehicle, life = _vehicle(garage, option), option.life
    end = garage.counted_end(vehicle)
    for slot in found:
        service = _service(vehicle.keep_months - slot.fitted, life)
        until = min(end, slot.fitted + service)
        yield Offer(
            option=option,
            price=priced,
            ordered=slot.ordered,
            fitted=slot.fitted,
            until=until,
            charge=rounded_ratio(priced.expected * (until - slot.fitted), service),
            flows=from_order(later, slot.ordered, garage.months),
            faults=faults,
        )


def _vehicle(garage: Garage, option: Option) -> Vehicle:
    return garage.vehicle[garage.fault[option.fixes[0].fault].vehicle]


def _service(left: int, life: int | None) -> int:
    return left if life is None else min(life, left)
