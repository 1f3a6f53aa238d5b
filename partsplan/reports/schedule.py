"""What is done month by month, what it does to cash and hours, and what comes back."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from partsplan.domain import Garage, Job, LedgerLine, Plan
from partsplan.pricing import flagged, price
from partsplan.reports.buying import credited_in
from partsplan.reports.figures import money, month_name, number
from partsplan.reports.names import LICENSED, LICENSED_NOTE, job_target, supplier_name
from partsplan.reports.page import Page
from partsplan.reports.tables import Column, figure, text

SUMS = ("Before", "Budget", "Out", "Back", "Balance")
"""What the ledger says of a month's money."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """What is done for one job in one month. [minor units], [h]

    The price is None where nothing is ordered; ``licensed`` says that it is work for a
    licensed person, or to be checked by one.
    """

    month: int
    do: str
    job: str
    target: str
    supplier: str = ""
    price: int | None = None
    hours: Fraction
    licensed: bool = False


def month_by_month(page: Page, garage: Garage, plan: Plan) -> None:
    """Every order and every fitting in the order of the months."""
    page.heading(f"Month by month [{garage.currency.code}]")
    if not plan.jobs:
        page.paragraph("No job is done in these months.")
        return
    columns = [
        Column("Month", once=True),
        Column("Do"),
        text("Job"),
        text("For", share=2),
        text("From", optional=True),
        figure("Price", unit=garage.currency.code),
        figure("Hours"),
    ]
    page.table("months", columns, list(_rows(garage, plan)))
    if any(flagged(garage, garage.option[job.option]) for job in plan.jobs):
        page.paragraph(LICENSED_NOTE)


def cash_and_hours(page: Page, garage: Garage, plan: Plan) -> None:
    """The ledger, a line a month."""
    page.heading(f"Cash [{garage.currency.code}] and own hours")
    columns = [
        Column("Month"),
        *(figure(one, unit=garage.currency.code) for one in SUMS),
        figure("Hours used"),
        figure("of"),
    ]
    rows = [
        (
            month_name(garage.month(line.month)),
            *(money(garage.currency, one) for one in month_money(garage, plan, line)),
            number(line.hours),
            number(garage.monthly_hours[line.month]),
        )
        for line in plan.ledger
    ]
    page.table("ledger", columns, rows)
    if not garage.carry_over:
        page.paragraph("Unspent money does not move on to the next month.")


def month_money(garage: Garage, plan: Plan, line: LedgerLine) -> tuple[int, ...]:
    """The money of a month, in the order of ``SUMS``. [minor units]"""
    before = garage.opening_cash
    if line.month:
        before = plan.ledger[line.month - 1].balance if garage.carry_over else 0
    return before, line.budget, line.out, line.back, line.balance


def old_units(page: Page, garage: Garage, plan: Plan) -> None:
    """Old units that go back, by when, and the sum at stake; nothing if none."""
    jobs = [job for job in plan.jobs if job.deposit]
    if not jobs:
        return
    page.heading(f"Old units to send back [{garage.currency.code}]")
    columns = [
        text("Job"),
        text("To", optional=True),
        Column("Fitted"),
        Column("Send within"),
        figure("At stake", unit=garage.currency.code),
        figure("To return", unit=garage.currency.code, optional=True),
        Column("Counted on in"),
    ]
    page.table("old-units", columns, [_old_unit(garage, job) for job in jobs])


def tools(page: Page, garage: Garage, plan: Plan) -> None:
    """Tools to buy; nothing if none."""
    if not plan.tools:
        return
    page.heading(f"Tools to buy [{garage.currency.code}]")
    used_by: dict[str, list[str]] = defaultdict(list)
    for job in plan.jobs:
        for tool in dict.fromkeys(garage.option[job.option].tools):
            used_by[tool].append(job.option)
    rows = [
        (
            garage.tool[buy.tool].name,
            month_name(garage.month(buy.month)),
            money(garage.currency, buy.price),
            ", ".join(used_by[buy.tool]),
        )
        for buy in plan.tools
    ]
    columns = [
        text("Tool"),
        Column("Month"),
        figure("Price", unit=garage.currency.code),
        text("For"),
    ]
    page.table("tools", columns, rows)


def steps(garage: Garage, plan: Plan) -> Iterator[Step]:
    """Every order and every fitting in the order of the months, with shared work."""
    for month in range(garage.months):
        for job in plan.jobs:
            yield from _steps_of(garage, job, month)
        yield from _access(garage, plan, month)


def _rows(garage: Garage, plan: Plan) -> Iterator[tuple[str, ...]]:
    for step in steps(garage, plan):
        yield month_name(garage.month(step.month)), *in_words(garage, step)


def in_words(garage: Garage, step: Step) -> tuple[str, str, str, str, str, str]:
    """What is done, for which job, on what, from where, its price and hours."""
    return (
        step.do,
        f"{step.job}{LICENSED if step.licensed else ''}",
        step.target,
        step.supplier,
        "" if step.price is None else money(garage.currency, step.price),
        number(step.hours) if step.hours else "",
    )


def _steps_of(garage: Garage, job: Job, month: int) -> Iterator[Step]:
    ordered = job.ordered == month and not job.bought
    fitted = job.fitted == month
    if not ordered and not fitted:
        return
    yield Step(
        month=month,
        do="order, fit" if ordered and fitted else "order" if ordered else "fit",
        job=job.option,
        target=job_target(garage, job),
        supplier=supplier_name(garage, job.supplier) if ordered else "",
        price=job.landed if ordered else None,
        hours=job.hours if fitted else Fraction(0),
        licensed=flagged(garage, garage.option[job.option]),
    )


def _access(garage: Garage, plan: Plan, month: int) -> Iterator[Step]:
    """Work shared by jobs behind the same panel, once a month."""
    opened = {
        group
        for job in plan.jobs
        if job.fitted == month
        for group in garage.option[job.option].access
    }
    for group in garage.access:
        if group.id in opened:
            yield Step(
                month=month,
                do="open up",
                job=group.id,
                target=group.title,
                hours=group.hours,
            )


def _old_unit(garage: Garage, job: Job) -> tuple[str, ...]:
    option = garage.option[job.option]
    returning = price(garage, option).core_return
    trusted = option.core_chance >= garage.core_trust
    return (
        job.option,
        supplier_name(garage, job.supplier),
        month_name(garage.month(job.fitted)),
        f"{option.core_days} days",
        money(garage.currency, job.deposit),
        money(garage.currency, returning) if returning else "",
        month_name(garage.month(credited_in(garage, job)))
        if trusted
        else "not counted on",
    )
