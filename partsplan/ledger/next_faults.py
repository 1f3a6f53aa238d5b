"""Faults as they stand after what was fitted."""

from collections import defaultdict
from dataclasses import replace

from partsplan.domain import (
    Fault,
    FaultStatus,
    Fitted,
    Garage,
    Ledger,
    Month,
    Option,
    Part,
    PartState,
)
from partsplan.domain.numbers import CURED


def next_faults(garage: Garage, ledger: Ledger, month: Month) -> tuple[Fault, ...]:
    """The faults from that month on.

    One that is cured for as long as it counts is fixed. One that is cured for a time or
    in part keeps what relieves it, or did until it ran out: what had to wait for its
    cure may go on. A stand-in asks for a cure by the month in which it runs out.
    """
    fitted: dict[str, list[tuple[Option, Fitted]]] = defaultdict(list)
    for part in ledger.parts.values():
        option = garage.option.get(part.option)
        if option is None or part.state is not PartState.FITTED:
            continue
        for one, fault in _reliefs(garage, option, part):
            fitted[fault].append((option, one))
    return tuple(
        _after(garage, fault, month, fitted[fault.id]) for fault in garage.faults
    )


def _reliefs(garage: Garage, option: Option, part: Part) -> list[tuple[Fitted, str]]:
    """What a fitted part does for each of its faults."""
    if part.fitted is None:
        return []
    found = []
    for cure in option.fixes:
        vehicle = garage.vehicle[garage.fault[cure.fault].vehicle]
        until = garage.month(vehicle.keep_months)
        if option.life is not None:
            until = min(until, Month.of(part.fitted).plus(option.life))
        fact = Fitted(option=option.id, relief=cure.relief, until=until)
        found.append((fact, cure.fault))
    return found


def _after(
    garage: Garage, fault: Fault, month: Month, fitted: list[tuple[Option, Fitted]]
) -> Fault:
    if not fitted or fault.status is not FaultStatus.OPEN:
        return fault
    vehicle = garage.vehicle[fault.vehicle]
    counted = month.plus(garage.months + garage.look_beyond)
    end = min(counted, garage.month(vehicle.keep_months))
    if any(
        option.lasting and one.relief >= CURED and one.until >= end
        for option, one in fitted
    ):
        return replace(fault, status=FaultStatus.FIXED)
    runs_out = [one.until for option, one in fitted if not option.lasting]
    deadlines = [*runs_out, *([fault.fix_by] if fault.fix_by else [])]
    return replace(
        fault,
        fitted=tuple(one for _, one in fitted),
        fix_by=min(deadlines, default=None),
    )
