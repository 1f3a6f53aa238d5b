"""From futures to chances."""

from collections.abc import Iterator
from math import sqrt

import numpy as np

from partsplan.domain import (
    KEPT,
    QUANTILES,
    Garage,
    MonthRisk,
    Plan,
    Risk,
    RiskSettings,
    RiskShare,
    RiskSource,
)
from partsplan.pricing import flows, price
from partsplan.simulation.arrays import Counts, Flags
from partsplan.simulation.futures import Futures, Source, drawn
from partsplan.simulation.promises import promises

ROUNDING = 1e-9
"""Sums of hours in floating point are right to this. [h]"""


def simulate(garage: Garage, plan: Plan, settings: RiskSettings) -> Risk:
    """How a plan of this garage fares in many futures.

    The same seed gives the same answer, in whatever order the garage's tables are.
    """
    return summary(garage, plan, settings, drawn(garage, plan, settings))


def summary(
    garage: Garage, plan: Plan, settings: RiskSettings, futures: Futures
) -> Risk:
    """Chances, quantiles and shares of drawn futures."""
    lowest: Counts = futures.balance.min(axis=1)
    cost = _total(futures)
    have = np.array([float(one) for one in garage.monthly_hours])
    over = futures.hours > have + ROUNDING
    return Risk(
        settings=settings,
        months=tuple(_months(garage, plan, futures, over)),
        promises=tuple(promises(garage, plan, futures)),
        shares=tuple(_shares(garage, plan, futures, cost)),
        holds=_chance(lowest >= garage.reserve),
        solvent=_chance(lowest >= 0),
        in_hours=_chance(np.logical_not(np.logical_or.reduce(over, axis=1))),
        extra_reserve=extra_reserve(lowest),
        planned_cost=sum(line.out - line.back for line in plan.ledger),
        mean_cost=float(cost.mean()) + _never_varies(garage, plan),
        deviation=float(cost.std()),
    )


def extra_reserve(lowest: Counts) -> int:
    """Least sum that lifts ``KEPT`` of the futures to 0 or more in all their months.

    An order statistic of the lowest balance of each future: at most a share of
    1 - KEPT may stay below. [minor units]
    """
    may_fail = int(len(lowest) * (1 - KEPT))
    return max(0, -int(np.sort(lowest)[may_fail]))


def _months(
    garage: Garage, plan: Plan, futures: Futures, over: Flags
) -> Iterator[MonthRisk]:
    quantiles = np.quantile(
        futures.balance,
        [one / 100 for one in QUANTILES],
        axis=0,
        method="inverted_cdf",
    )
    for line in plan.ledger:
        balance = futures.balance[:, line.month]
        yield MonthRisk(
            month=line.month,
            planned=line.balance,
            mean=float(balance.mean()),
            quantiles=tuple(int(one) for one in quantiles[:, line.month]),
            holds=_chance(balance >= garage.reserve),
            solvent=_chance(balance >= 0),
            planned_hours=line.hours,
            mean_hours=float(futures.hours[:, line.month].mean()),
            hours_over=_chance(over[:, line.month]),
        )


def _shares(
    garage: Garage, plan: Plan, futures: Futures, total: Counts
) -> list[RiskShare]:
    """Covariance of each source's cost with the sum, over the variance of the sum.

    Unlike turning one source at a time, these shares sum to 1, take no further run,
    and count what moves together, such as a price that earns free shipping.
    """
    planned = _planned(garage, plan)
    fitted = {job.option: job.fitted for job in plan.jobs}
    spread = total - total.mean()
    variance = float((spread**2).mean())
    found = []
    for (source, subject), cost in futures.costs.items():
        if not cost.any() and not planned.get((source, subject)):
            continue
        share = float((spread * (cost - cost.mean())).mean()) / (variance or 1.0)
        late = 0.0
        if source is RiskSource.OPTION and subject is not None:
            late = _chance(futures.good[subject] > fitted[subject])
        found.append(
            RiskShare(
                source=source,
                subject=subject,
                share=share,
                deviation=sqrt(float(cost.var())),
                planned=planned.get((source, subject), 0),
                mean=float(cost.mean()),
                later=late,
            )
        )
    return sorted(found, key=lambda one: (-one.share, one.source, one.subject or ""))


def _planned(garage: Garage, plan: Plan) -> dict[Source, int]:
    """What each source costs within the horizon, in the plan. [minor units]"""
    found: dict[Source, int] = {
        (RiskSource.SHIPPING, None): sum(order.shipping for order in plan.orders)
    }
    for job in plan.jobs:
        option = garage.option[job.option]
        moved = flows(garage, option, price(garage, option), job.ordered, job.fitted)
        found[RiskSource.OPTION, option.id] = sum(one.out - one.back for one in moved)
    return found


def _total(futures: Futures) -> Counts:
    """Money out less money back, as far as it may vary."""
    return sum(futures.costs.values(), start=np.zeros(1, np.int64))


def _never_varies(garage: Garage, plan: Plan) -> int:
    """What tools cost, and what was promised before. [minor units]"""
    tools = sum(buy.price for buy in plan.tools)
    return tools + sum(flow.out - flow.back for flow in garage.promised_within)


def _chance(flags: Flags) -> float:
    return float(flags.mean())
