"""What is to be done about faults that are still there."""

from collections.abc import Iterator, Set
from datetime import date

from partsplan.domain import (
    CureFault,
    DoNotDrive,
    Duty,
    FaultStatus,
    Garage,
    Ledger,
    Month,
    PartState,
    QuoteEnds,
)
from partsplan.ledger.days import days_after
from partsplan.ledger.uncured import cures_of, uncured

DEADLINE_DAYS = 30
"""Deadlines are told that long before. [days]"""

QUOTE_DAYS = 14
"""Ends of quotes are told that long before. [days]"""


def not_to_be_driven(
    garage: Garage, ledger: Ledger, today: date, do_not_drive: Set[str]
) -> Iterator[Duty]:
    """Vehicles that are driven and have a fault that forbids it."""
    month = Month.of(today)
    faults = uncured(garage, ledger, month)
    for vehicle in garage.vehicles:
        forbid = tuple(
            fault.id
            for fault in faults
            if fault.vehicle == vehicle.id and fault.id in do_not_drive
        )
        if forbid and garage.driven(vehicle, garage.index(month)):
            yield DoNotDrive(vehicle=vehicle.id, day=today, faults=forbid)


def cures_by_a_day(garage: Garage, ledger: Ledger, today: date) -> Iterator[Duty]:
    """Faults with a deadline or milestone that is past or near."""
    until = days_after(today, DEADLINE_DAYS)
    waiting = {fault.id: fault for fault in uncured(garage, ledger, Month.of(today))}
    for fault in waiting.values():
        if fault.fix_by is not None and fault.fix_by.last_day <= until:
            yield CureFault(fault=fault.id, milestone=None, day=fault.fix_by.last_day)
    for milestone in garage.milestones:
        day = milestone.month.last_day
        for name in milestone.faults:
            if name in waiting and day <= until:
                yield CureFault(fault=name, milestone=milestone.id, day=day)


def quotes_that_end(garage: Garage, ledger: Ledger, today: date) -> Iterator[Duty]:
    """Quotes about to end of options not bought, for open faults nothing comes for."""
    until = days_after(today, QUOTE_DAYS)
    month = Month.of(today)
    coming = {*cures_of(garage, ledger, month, PartState.ON_THE_WAY, PartState.IN_HAND)}
    open_faults = {
        fault.id
        for fault in uncured(garage, ledger, month)
        if fault.status is FaultStatus.OPEN and fault.id not in coming
    }
    for option in garage.options:
        ends = option.valid_until.last_day if option.valid_until else None
        if ends is None or not today <= ends <= until or option.id in ledger.parts:
            continue
        fixes = (cure.fault for cure in option.fixes)
        if faults := tuple(name for name in fixes if name in open_faults):
            yield QuoteEnds(option=option.id, day=ends, faults=faults)
