"""Vehicles that had better be parked until a plan has made them safe."""

from collections import defaultdict
from dataclasses import replace

from partsplan.domain import Garage, Parking, Plan, Stage
from partsplan.planning.demands import demands
from partsplan.verification import Facts


def spared(garage: Garage, other: Garage, other_plan: Plan) -> tuple[Parking, ...]:
    """The unsafe months of vehicles that the second garage parks and the first drives.

    These are the months in which, with the second plan's jobs, a vehicle that is driven
    as in the first garage would have to stay where it is.
    """
    driven_from = {one.id: one.driven_from for one in garage.vehicles}
    driven = replace(
        other,
        vehicles=tuple(
            replace(one, driven_from=driven_from.get(one.id, one.driven_from))
            for one in other.vehicles
        ),
    )
    still = {one.vehicle: one.months for one in parkings(other, other_plan)}
    return tuple(
        replace(one, months=months)
        for one in parkings(driven, other_plan)
        if (
            months := tuple(
                month for month in one.months if month not in still.get(one.vehicle, ())
            )
        )
    )


def parkings(garage: Garage, plan: Plan) -> tuple[Parking, ...]:
    """The vehicles that are driven in months in which they must not be.

    Parked until ``until``, the same jobs leave no such month: nothing forbids driving
    from then on, and before it nobody drives.
    """
    facts = Facts(garage, plan.choices)
    unsafe: dict[str, list[int]] = defaultdict(list)
    for demand in demands(garage):
        if demand.stage is Stage.SAFETY and not all(
            facts.cured(fault, demand.month) for fault in demand.faults
        ):
            unsafe[demand.subject].append(demand.month)
    return tuple(
        Parking(
            vehicle=vehicle,
            months=tuple(months),
            until=garage.month(months[-1] + 1)
            if garage.driven(garage.vehicle[vehicle], months[-1] + 1)
            and months[-1] + 1 < garage.months
            else None,
        )
        for vehicle, months in unsafe.items()
    )
