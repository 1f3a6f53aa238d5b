"""Whether deadlines, milestones and do-not-drive cures hold in each future."""

from collections.abc import Iterator, Sequence

import numpy as np

from partsplan.domain import (
    CURED,
    Fault,
    FaultStatus,
    Garage,
    Plan,
    Promise,
    PromiseRisk,
)
from partsplan.scoring import forbids_driving
from partsplan.simulation.arrays import Counts, Flags
from partsplan.simulation.futures import Futures
from partsplan.verification import Facts


def promises(garage: Garage, plan: Plan, futures: Futures) -> Iterator[PromiseRisk]:
    """Every deadline and milestone that this plan is asked for, then its cures."""
    facts = Facts(garage, plan.choices)
    for fault in garage.faults:
        if fault.fix_by is not None:
            month = max(0, garage.index(fault.fix_by))
            if _asked(garage, fault, month):
                yield _kept(facts, futures, Promise.DEADLINE, fault.id, month, [fault])
    for milestone in garage.milestones:
        month = max(0, garage.index(milestone.month))
        faults = [garage.fault[one] for one in milestone.faults]
        if waited := [one for one in faults if _asked(garage, one, month)]:
            yield _kept(facts, futures, Promise.MILESTONE, milestone.id, month, waited)
    yield from _cures(facts, futures)


def _kept(
    facts: Facts,
    futures: Futures,
    promise: Promise,
    subject: str,
    month: int,
    faults: Sequence[Fault],
) -> PromiseRisk:
    """All of these faults are cured in that month."""
    held = [cured(facts.garage, futures, fault, month) for fault in faults]
    return PromiseRisk(
        promise=promise,
        subject=subject,
        month=month,
        planned=all(facts.cured(fault.id, month) for fault in faults),
        chance=float(np.mean(np.logical_and.reduce(held))),
    )


def _cures(facts: Facts, futures: Futures) -> Iterator[PromiseRisk]:
    """What forbids driving is cured in every driven month that the plan cures it."""
    garage = facts.garage
    for fault in garage.faults:
        if fault.status is not FaultStatus.OPEN or not forbids_driving(fault):
            continue
        vehicle = garage.vehicle[fault.vehicle]
        months = [
            month
            for month in range(garage.months)
            if garage.driven(vehicle, month) and facts.cured(fault.id, month)
        ]
        if months:
            held = [cured(garage, futures, fault, month) for month in months]
            yield PromiseRisk(
                promise=Promise.CURE,
                subject=fault.id,
                month=months[0],
                planned=True,
                chance=float(np.mean(np.logical_and.reduce(held))),
            )


def cured(garage: Garage, futures: Futures, fault: Fault, month: int) -> Flags:
    """Whether the fault is cured in that month, one answer a future."""
    number = len(futures.balance)
    if fault.status is not FaultStatus.OPEN:
        return np.full(number, fault.status is FaultStatus.FIXED)
    if garage.relieved(fault, month) >= CURED:
        return np.ones(number, bool)
    found = np.zeros(number, bool)
    for name, good in futures.good.items():
        option = garage.option[name]
        if option.relief(fault.id) >= CURED:
            found |= (good <= month) & (month < _end(option.life, good))
    return found & (month < garage.vehicle[fault.vehicle].keep_months)


def _end(life: int | None, good: Counts) -> Counts | float:
    return np.inf if life is None else good + life


def _asked(garage: Garage, fault: Fault, month: int) -> bool:
    """Past the horizon, or once its vehicle is gone, nothing is asked."""
    return month < min(garage.months, garage.vehicle[fault.vehicle].keep_months)
