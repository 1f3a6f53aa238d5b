"""Deadlines missed, and months unsafe or not drivable: what each would take."""

from collections import defaultdict

from partsplan.domain import Garage, Offer, Plan, Shortfall, Stage
from partsplan.planning.demands import Demand, demands
from partsplan.planning.remedies import NO_REMEDY, Remedy, least_help, meetable
from partsplan.pricing import offers
from partsplan.verification import cured


def shortfalls(
    garage: Garage, plan: Plan, *, seconds: float = 10.0
) -> tuple[Shortfall, ...]:
    """Every demand that the plan does not meet, those of one subject together.

    Months of a vehicle that no sum could mend come apart from those that money or
    hours could. ``seconds`` is the most time for all the sums together. [s]
    """
    missed: dict[tuple[Stage, str, bool], list[Demand]] = defaultdict(list)
    every = offers(garage)
    for demand in demands(garage):
        met = all(
            cured(garage, plan.choices, fault, demand.month) for fault in demand.faults
        )
        if not met:
            key = demand.stage, demand.subject, meetable(every, demand)
            missed[key].append(demand)
    share = seconds / max(1, len(missed))
    return tuple(
        _shortfall(
            garage,
            plan,
            tuple(asked),
            _remedy(garage, every, tuple(asked), plan, share) if able else NO_REMEDY,
        )
        for (_, _, able), asked in missed.items()
    )


def _remedy(
    garage: Garage,
    every: tuple[Offer, ...],
    asked: tuple[Demand, ...],
    plan: Plan,
    seconds: float,
) -> Remedy:
    return least_help(garage, every, asked, plan.stages, seconds=seconds)


def _shortfall(
    garage: Garage, plan: Plan, asked: tuple[Demand, ...], remedy: Remedy
) -> Shortfall:
    faults = dict.fromkeys(fault for demand in asked for fault in demand.faults)
    return Shortfall(
        stage=asked[0].stage,
        subject=asked[0].subject,
        faults=tuple(
            fault
            for fault in faults
            if not all(
                cured(garage, plan.choices, fault, demand.month) for demand in asked
            )
        ),
        months=tuple(demand.month for demand in asked),
        money=remedy.money,
        hours=remedy.hours,
        exact=remedy.exact,
    )
