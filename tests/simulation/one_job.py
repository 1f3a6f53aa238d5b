"""One job in many futures, worked out by hand."""

from typing import Any

from partsplan.domain import Garage, Plan, RiskSettings, RiskSource
from partsplan.planning import plan
from partsplan.simulation import Futures, drawn
from partsplan.simulation.arrays import Counts
from tests.support.building import garage, option

FUTURES = 20_000
SIGMAS = 4
"""Means may lie that many standard errors off."""


def settings(**changes: Any) -> RiskSettings:
    """Many futures without late parts, unless changed."""
    facts: dict[str, Any] = {"futures": FUTURES, "seed": 7, "late_chance": 0.0}
    return RiskSettings(**facts | changes)


def planned(made: Garage) -> Plan:
    """The best plan, which there must be."""
    found = plan(made)
    assert isinstance(found, Plan)
    return found


def one_job(
    facts: dict[str, Any] | None = None,
    drawn_with: RiskSettings | None = None,
    **changes: Any,
) -> tuple[Garage, Plan, Futures]:
    """A garage of plenty with one option ``o1``, its plan, and the futures of that."""
    usual: dict[str, Any] = {"budget": (10**6,), "money_per_point": 10**6, "months": 36}
    made = garage(**usual | (facts or {}) | {"options": (option(**changes),)})
    found = planned(made)
    assert [job.option for job in found.jobs] == ["o1"]
    return made, found, drawn(made, found, drawn_with or settings())


def cost(futures: Futures) -> Counts:
    """What the job costs in each future. [minor units]"""
    return futures.costs[RiskSource.OPTION, "o1"]
