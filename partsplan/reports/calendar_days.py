"""Which days a plan and the logbook put into a calendar."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta
from itertools import chain

from partsplan.domain import (
    DeadlineDay,
    DepositState,
    FaultStatus,
    FittingDay,
    Garage,
    Job,
    Ledger,
    MilestoneDay,
    Month,
    Occasion,
    OrderDay,
    Part,
    PartState,
    Plan,
    QuoteDay,
    ReturnDay,
    ToolDay,
)
from partsplan.ledger import uncured

FITTING_DAY = 15
"""A part is in hand by the middle of the month in which it is fitted."""

_UNDER_WAY = (PartState.ON_THE_WAY, PartState.IN_HAND)


def occasions(
    garage: Garage, plan: Plan, ledger: Ledger, today: date
) -> tuple[Occasion, ...]:
    """All days, in order; what the logbook knows goes before the plan.

    What should have been done by now stands on today. What is past for good, such as
    the last day of a quote or of a return, is left out.
    """
    jobs = tuple(job for job in plan.jobs if not _done(plan, ledger, job))
    fittings = _fittings(garage, jobs, ledger, today)
    found: Iterable[Occasion] = chain(
        _orders(garage, jobs, ledger, today),
        _tools(garage, plan, ledger, today),
        (FittingDay(option=name, day=day) for name, day in fittings.items()),
        _returns(garage, jobs, ledger, fittings, today),
        _quotes(garage, jobs, ledger, today),
        _deadlines(garage, ledger, today),
    )
    return tuple(sorted(found, key=lambda one: one.day))


def _done(plan: Plan, ledger: Ledger, job: Job) -> bool:
    """Whether the plan began before its part was ordered and fitted."""
    part = ledger.parts.get(job.option)
    return (
        part is not None
        and part.state is PartState.FITTED
        and Month.of(part.ordered) >= plan.start
    )


def _orders(
    garage: Garage, jobs: Iterable[Job], ledger: Ledger, today: date
) -> Iterator[OrderDay]:
    together: dict[tuple[str | None, int, str], list[str]] = {}
    for job in jobs:
        if not _under_way(ledger, job.option):
            alone = "" if job.supplier else job.option
            order = (job.supplier, job.ordered, alone)
            together.setdefault(order, []).append(job.option)
    for (supplier, month, _), options in together.items():
        day = max(_first(garage, month), today)
        yield OrderDay(day=day, supplier=supplier, options=tuple(options))


def _tools(
    garage: Garage, plan: Plan, ledger: Ledger, today: date
) -> Iterator[ToolDay]:
    for buy in plan.tools:
        if buy.tool not in ledger.tools:
            day = max(_first(garage, buy.month), today)
            yield ToolDay(tool=buy.tool, day=day, price=buy.price)


def _fittings(
    garage: Garage, jobs: Sequence[Job], ledger: Ledger, today: date
) -> Mapping[str, date]:
    """The day by which each option is to be fitted, as soon as it can be there."""
    months = {job.option: garage.month(job.fitted) for job in jobs}
    days = {name: _middle(month) for name, month in months.items()}
    for job in jobs:
        if _first(garage, job.ordered) < today:  # to be ordered today
            there = today + timedelta(garage.option[job.option].lead_days)
            days[job.option] = max(days[job.option], there)
    for part in ledger.parts.values():
        if part.state in _UNDER_WAY:
            month = months.get(part.option) or _month_of_fitting(garage, part)
            days[part.option] = max(_middle(month), part.expected, today)
    return days


def _returns(
    garage: Garage,
    jobs: Sequence[Job],
    ledger: Ledger,
    fittings: Mapping[str, date],
    today: date,
) -> Iterator[ReturnDay]:
    """Old units that are off go back by a day that is known, others as planned."""
    deposits = {job.option: job.deposit for job in jobs if job.deposit}
    known: dict[str, date] = {}
    for part in ledger.parts.values():
        if part.deposit is None or part.deposit.state is not DepositState.PAID:
            continue
        deposits[part.option] = part.deposit.out
        if part.deposit.send_by is not None:
            known[part.option] = part.deposit.send_by
    for name, amount in deposits.items():
        day = known.get(name)
        if day is None and name in fittings and name in garage.option:
            day = fittings[name] + timedelta(garage.option[name].core_days)
        if day is not None and day >= today and amount:
            yield ReturnDay(option=name, day=day, deposit=amount, certain=name in known)


def _quotes(
    garage: Garage, jobs: Iterable[Job], ledger: Ledger, today: date
) -> Iterator[QuoteDay]:
    """Ends of quotes of what is to be ordered for faults that are still there."""
    waiting = {
        fault.id
        for fault in uncured(garage, ledger, Month.of(today))
        if fault.status is FaultStatus.OPEN
    }
    for job in jobs:
        ends = garage.option[job.option].valid_until
        bought = job.option in ledger.parts
        if ends is None or ends.last_day < today or bought:
            continue
        if waiting & {*job.faults}:
            yield QuoteDay(option=job.option, day=ends.last_day)


def _deadlines(
    garage: Garage, ledger: Ledger, today: date
) -> Iterator[DeadlineDay | MilestoneDay]:
    """Deadlines and milestones of faults that are still there."""
    waiting = {fault.id: fault for fault in uncured(garage, ledger, Month.of(today))}
    for fault in waiting.values():
        if fault.fix_by is not None:
            yield DeadlineDay(fault=fault.id, day=max(fault.fix_by.last_day, today))
    for milestone in garage.milestones:
        if faults := tuple(name for name in milestone.faults if name in waiting):
            day = max(milestone.month.last_day, today)
            yield MilestoneDay(milestone=milestone.id, day=day, faults=faults)


def _under_way(ledger: Ledger, option: str) -> bool:
    part = ledger.parts.get(option)
    return part is not None and part.state in _UNDER_WAY


def _month_of_fitting(garage: Garage, part: Part) -> Month:
    """When a part can be fitted that no plan speaks of."""
    option = garage.option.get(part.option)
    wait = option.months_to_fitting if option else 0
    return Month.of(part.ordered).plus(wait)


def _first(garage: Garage, month: int) -> date:
    return date(*garage.month(month), 1)


def _middle(month: Month) -> date:
    return date(*month, FITTING_DAY)
