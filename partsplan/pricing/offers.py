"""Options priced for every month in which they can be ordered."""

from fractions import Fraction

from partsplan.domain import FaultStatus, Garage, Offer, Option, Price
from partsplan.pricing.cash import flows
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
    if not found:
        return ()
    priced = price(garage, option)
    return tuple(_offer(garage, option, priced, slot, faults) for slot in found)


def service_months(garage: Garage, option: Option, fitted: int) -> int:
    """Months of service while the vehicle is kept. [months]"""
    fault = garage.fault[option.fixes[0].fault]
    left = garage.vehicle[fault.vehicle].keep_months - fitted
    return left if option.life is None else min(option.life, left)


def _offer(
    garage: Garage,
    option: Option,
    priced: Price,
    slot: Slot,
    faults: tuple[str, ...],
) -> Offer:
    service = service_months(garage, option, slot.fitted)
    end = garage.counted_end(garage.vehicle[garage.fault[faults[0]].vehicle])
    until = min(end, slot.fitted + service)
    share = Fraction(until - slot.fitted, service)
    return Offer(
        option=option,
        price=priced,
        ordered=slot.ordered,
        fitted=slot.fitted,
        until=until,
        charge=round(priced.expected * share),
        flows=flows(garage, option, priced, slot.ordered, slot.fitted),
        faults=faults,
    )
