"""Deadlines missed, and months unsafe or not drivable: what each would take."""

from collections import defaultdict
from collections.abc import Callable
from math import inf

from partsplan.domain import Garage, Plan, Shortfall, Stage
from partsplan.planning.demands import Demand, demands
from partsplan.planning.remedies import (
    NO_REMEDY,
    NOT_WORKED_OUT,
    Remedies,
    Remedy,
    curing,
    meetable,
)
from partsplan.pricing import offers
from partsplan.verification import Facts

Left = Callable[[], float]
"""Tells the time that is left. [s]"""


def shortfalls(
    garage: Garage, plan: Plan, *, seconds: float = 10.0, left: Left = lambda: inf
) -> tuple[Shortfall, ...]:
    """Every demand that the plan does not meet, those of one subject together.

    Months of a vehicle that no sum could mend come apart from those that money or
    hours could. ``seconds`` is the most solver time for all the sums together, and
    none is begun once ``left`` tells that no time is left. [s]
    """
    facts = Facts(garage, plan.choices)
    missed: dict[tuple[Stage, str, bool], list[Demand]] = defaultdict(list)
    every = offers(garage)
    cures = curing(every)
    for demand in demands(garage):
        if not all(facts.cured(fault, demand.month) for fault in demand.faults):
            key = demand.stage, demand.subject, meetable(cures, demand)
            missed[key].append(demand)
    share = seconds / max(1, len(missed))
    remedies = Remedies(garage, every, plan)

    def remedy(asked: tuple[Demand, ...]) -> Remedy:
        return remedies.least(asked, seconds=share) if left() > 0 else NOT_WORKED_OUT

    return tuple(
        _shortfall(
            facts,
            tuple(asked),
            remedy(tuple(asked)) if able else NO_REMEDY,
        )
        for (_, _, able), asked in missed.items()
    )


def _shortfall(facts: Facts, asked: tuple[Demand, ...], remedy: Remedy) -> Shortfall:
    faults = dict.fromkeys(fault for demand in asked for fault in demand.faults)
    return Shortfall(
        stage=asked[0].stage,
        subject=asked[0].subject,
        faults=tuple(
            fault
            for fault in faults
            if not all(facts.cured(fault, demand.month) for demand in asked)
        ),
        months=tuple(demand.month for demand in asked),
        money=remedy.money,
        hours=remedy.hours,
        exact=remedy.exact,
    )
