"""What somebody would write down who follows a plan to the letter."""

from collections.abc import Iterator
from datetime import UTC, date, datetime

from partsplan.domain import (
    Entry,
    EntryKind,
    Garage,
    Happening,
    Job,
    Month,
    Plan,
    Quote,
)
from partsplan.pricing import price


def quotes(garage: Garage) -> dict[str, Quote]:
    """The quote of every option."""
    found = {}
    for option in garage.options:
        priced = price(garage, option)
        found[option.id] = Quote(
            landed=priced.landed,
            deposit=priced.deposit,
            fitting=priced.coding + priced.consumables,
            core_return=priced.core_return,
        )
    return found


def entries_until(garage: Garage, plan: Plan, month: int) -> tuple[Entry, ...]:
    """Everything that the plan does in the months before ``month``.

    Orders on the first of a month, fittings on its last day.
    """
    what = [one for job in plan.jobs for one in _of_job(garage, job)]
    for order in plan.orders:
        what.append(_paid(garage.month(order.month), order.supplier, order.shipping))
    for buy in plan.tools:
        what.append(_paid(garage.month(buy.month), buy.tool, buy.price))
    before = date(*garage.month(month), 1)
    kept = sorted((one for one in what if one.day < before), key=lambda one: one.day)
    written = datetime(2099, 1, 1, tzinfo=UTC)
    return tuple(
        Entry(number=number, written=written, what=one)
        for number, one in enumerate(kept, start=1)
    )


def _of_job(garage: Garage, job: Job) -> Iterator[Happening]:
    option = garage.option[job.option]
    ordered, fitted = garage.month(job.ordered), garage.month(job.fitted)
    yield _part(EntryKind.ORDERED, date(*ordered, 1), job.option)
    for one in option.instalments:
        if one.months:
            due = ordered.plus(one.months)
            yield _paid(due, job.option, _instalment(garage, job, one.months))
    yield _part(EntryKind.ARRIVED, date(*fitted, 1), job.option)
    yield _part(EntryKind.FITTED, fitted.last_day, job.option)
    if job.deposit:
        credited = fitted.plus(option.core_months).last_day
        yield _part(EntryKind.SENT_BACK, credited, job.option)
        if option.core_chance >= garage.core_trust:
            yield _part(EntryKind.CREDITED, credited, job.option)


def _instalment(garage: Garage, job: Job, months: int) -> int:
    from partsplan.domain.option import instalments

    option = garage.option[job.option]
    return dict(instalments(option, job.landed))[months]


def _part(kind: EntryKind, day: date, option: str) -> Happening:
    return Happening(kind=kind, day=day, subject=option)


def _paid(month: Month, subject: str, amount: int) -> Happening:
    day = date(*month, 1)
    return Happening(kind=EntryKind.PAID, day=day, subject=subject, amount=amount)
