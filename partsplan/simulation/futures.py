"""A whole plan in many futures: money, own hours and cures of every month."""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np

from partsplan.domain import Garage, Order, Plan, RiskSettings, RiskSource
from partsplan.simulation.arrays import Counts, Figures, Flags, add
from partsplan.simulation.jobs import JobFutures, job_futures
from partsplan.simulation.new_faults import new_faults

Source: TypeAlias = tuple[RiskSource, str | None]


@dataclass(frozen=True, slots=True)
class Futures:
    """Arrays with a row a future, and a column a month where they have two axes.

    Attributes
    ----------
    balance
        Money at the month's end. [minor units]
    hours
        Own hours. [h]
    good
        Month in which the part that works is fitted, by option.
    costs
        Money out less money back within the horizon, by source. [minor units]
    """

    balance: Counts
    hours: Figures
    good: Mapping[str, Counts]
    costs: Mapping[Source, Counts]


def drawn(garage: Garage, plan: Plan, settings: RiskSettings) -> Futures:
    """Carry the plan out in every future, whatever happens on the way.

    Nothing is planned anew: no job waits for a late one, none is put off for want of
    money, and what slips into a month that is too cold is fitted all the same.
    """
    jobs = {job.option: job_futures(garage, job, settings) for job in plan.jobs}
    money = np.zeros((settings.futures, garage.months), np.int64)
    costs: dict[Source, Counts] = {}
    for option, job in jobs.items():
        money += job.money
        costs[RiskSource.OPTION, option] = -job.money.sum(axis=1)
    costs[RiskSource.SHIPPING, None] = np.zeros(settings.futures, np.int64)
    for order in plan.orders:
        sent = _shipping(garage, plan, order, jobs)
        add(money, order.month, -sent)
        costs[RiskSource.SHIPPING, None] += sent
    for buy in plan.tools:
        money[:, buy.month] -= buy.price
    for vehicle in garage.vehicles:
        cost = new_faults(garage, vehicle, settings)
        money -= cost
        costs[RiskSource.NEW_FAULTS, vehicle.id] = cost.sum(axis=1)
    return Futures(
        balance=_balance(garage, money),
        hours=_hours(garage, jobs),
        good={option: job.good for option, job in jobs.items()},
        costs=costs,
    )


def _balance(garage: Garage, money: Counts) -> Counts:
    change = money + np.array(garage.monthly_budget, np.int64)
    change[:, 0] += garage.opening_cash
    for flow in garage.promised_within:
        change[:, flow.month] += flow.back - flow.out
    return np.cumsum(change, axis=1) if garage.carry_over else change


def _shipping(
    garage: Garage, plan: Plan, order: Order, jobs: Mapping[str, JobFutures]
) -> Counts:
    """Shipping of one order, free where its drawn goods reach the supplier's limit."""
    supplier = garage.supplier[order.supplier]
    rate = garage.rate(supplier.currency)
    cost = round(supplier.shipping * rate)
    goods = sum(
        jobs[job.option].goods
        for job in plan.jobs
        if (job.supplier, job.ordered) == (order.supplier, order.month)
        and not job.bought
    )
    limit = None if supplier.free_over is None else round(supplier.free_over * rate)
    paid = np.ones_like(goods, bool) if limit is None else np.less(goods, limit)
    return np.where(paid, cost, 0)


def _hours(garage: Garage, jobs: Mapping[str, JobFutures]) -> Figures:
    """Hours of every fitting, bad parts included; shared access once a month."""
    shape = next((job.fittings.shape for job in jobs.values()), (1, garage.months))
    hours = np.zeros(shape)
    opened: dict[str, Flags] = defaultdict(lambda: np.zeros(shape, bool))
    for name, job in jobs.items():
        option = garage.option[name]
        hours += job.fittings * float(option.hours)
        for group in option.access:
            opened[group] |= job.fittings
    for group, months in opened.items():
        hours += months * float(garage.access_group[group].hours)
    return hours
