"""Options priced for every month in which they can be ordered."""

from fractions import Fraction

from partsplan.domain import FaultStatus, Garage, Offer, Option, Price
from partsplan.pricing.cash import flows
from partsplan.pricing.landed import price
from partsplan.pricing.months import Slot, slots
from partsplan.scoring import benefit


def offers(garage: Garage) -> tuple[Offer, ...]:
    """Every offer of a garage, in file order and then by ordering month.

    An option whose faults are all fixed or watched makes none.
    """
    return tuple(offer for option in garage.options for offer in of(garage, option))


def of(garage: Garage, option: Option) -> tuple[Offer, ...]:
    """The offers of one option, by ordering month."""
    open_faults = [
        (cure, garage.fault[cure.fault])
        for cure in option.fixes
        if garage.fault[cure.fault].status is FaultStatus.OPEN
    ]
    found = slots(garage, option) if open_faults else ()
    if not found:
        return ()
    priced = price(garage, option)
    gains = [
        (fault.id, benefit(garage, fault, cure.relief)) for cure, fault in open_faults
    ]
    return tuple(_offer(garage, option, priced, slot, gains) for slot in found)


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
    gains: list[tuple[str, tuple[int, ...]]],
) -> Offer:
    service = service_months(garage, option, slot.fitted)
    end = len(gains[0][1])
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
        benefits=tuple((fault, months[slot.fitted : until]) for fault, months in gains),
    )
