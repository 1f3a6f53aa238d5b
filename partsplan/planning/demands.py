"""What a plan should reach before it counts money: deadlines, safety, mobility."""

from collections import defaultdict
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from partsplan.domain import Fault, FaultStatus, Garage, Stage
from partsplan.domain.numbers import CURED
from partsplan.scoring import forbids_driving, stops_driving


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """These faults are all to be cured in that month; unmet it counts one.

    Attributes
    ----------
    subject
        Id of the fault, milestone or vehicle that asks for it.
    """

    stage: Stage
    subject: str
    month: int
    faults: tuple[str, ...]


def demands(garage: Garage) -> tuple[Demand, ...]:
    """All that a garage asks for within its horizon; fixed faults ask nothing."""
    return (
        *_deadlines(garage),
        *_milestones(garage),
        *_driven_months(garage, Stage.SAFETY, forbids_driving),
        *_driven_months(garage, Stage.MOBILITY, stops_driving),
    )


def _deadlines(garage: Garage) -> Iterator[Demand]:
    for fault in garage.faults:
        if fault.fix_by is None:
            continue
        month = max(0, garage.index(fault.fix_by))
        if month < garage.months and _asks(garage, fault, month):
            yield Demand(
                stage=Stage.DEADLINES,
                subject=fault.id,
                month=month,
                faults=(fault.id,),
            )


def _milestones(garage: Garage) -> Iterator[Demand]:
    for milestone in garage.milestones:
        month = max(0, garage.index(milestone.month))
        asked = tuple(
            fault
            for fault in milestone.faults
            if _asks(garage, garage.fault[fault], month)
        )
        if month < garage.months and asked:
            yield Demand(
                stage=Stage.DEADLINES,
                subject=milestone.id,
                month=month,
                faults=asked,
            )


def _asks(garage: Garage, fault: Fault, month: int) -> bool:
    """Whether the fault is there, uncured, on a vehicle that is not gone by then."""
    gone = month >= garage.vehicle[fault.vehicle].keep_months
    stands = garage.relieved(fault, month) >= CURED
    return fault.status is not FaultStatus.FIXED and not gone and not stands


def _driven_months(
    garage: Garage, stage: Stage, bad: Callable[[Fault], bool]
) -> Iterator[Demand]:
    found: dict[str, list[Fault]] = defaultdict(list)
    for fault in garage.faults:
        if fault.status is not FaultStatus.FIXED and bad(fault):
            found[fault.vehicle].append(fault)
    for vehicle in garage.vehicles:
        for month in range(garage.months) if found[vehicle.id] else ():
            faults = tuple(
                fault.id
                for fault in found[vehicle.id]
                if garage.relieved(fault, month) < CURED
            )
            if faults and garage.driven(vehicle, month):
                yield Demand(
                    stage=stage, subject=vehicle.id, month=month, faults=faults
                )
