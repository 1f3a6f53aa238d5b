"""What is to be bought in a month, order by order."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from partsplan.domain import Coding, Garage, Job, Plan
from partsplan.pricing import flagged
from partsplan.reports.figures import money, number, price
from partsplan.reports.names import job_target, supplier_name

NOWHERE = "No supplier named"
TOOLS = "Tools"


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One line to tick.

    Attributes
    ----------
    name
        What is asked for at the counter.
    target
        What it is for.
    remarks
        What else to know before it is bought.
    price
        Written out.
    """

    name: str
    target: str
    remarks: tuple[str, ...]
    price: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """All that is bought in one place; shipping is written out, or empty."""

    place: str
    items: tuple[Item, ...]
    shipping: str = ""


def shopping(garage: Garage, plan: Plan, month: int) -> tuple[Order, ...]:
    """The orders of a month, by supplier, and the tools."""
    by_supplier: dict[str | None, list[Job]] = {}
    for job in plan.jobs:
        if job.ordered == month and not job.bought:
            by_supplier.setdefault(job.supplier, []).append(job)
    orders = [
        Order(
            place=supplier_name(garage, supplier) or NOWHERE,
            items=tuple(_item(garage, job) for job in jobs),
            shipping=_shipping(garage, plan, supplier, month),
        )
        for supplier, jobs in by_supplier.items()
    ]
    if tools := tuple(_tools(garage, plan, month)):
        orders.append(Order(place=TOOLS, items=tools))
    return tuple(orders)


def _item(garage: Garage, job: Job) -> Item:
    option = garage.option[job.option]
    pieces = "" if option.quantity == 1 else f"{number(option.quantity)} x "
    part = f", part {option.part_no}" if option.part_no else ""
    return Item(
        name=f"{pieces}{job.option}{part}",
        target=job_target(garage, job),
        remarks=(f"Route: {job.route}.", *_remarks(garage, job)),
        price=money(garage.currency, job.landed),
    )


def _remarks(garage: Garage, job: Job) -> Iterator[str]:
    option = garage.option[job.option]
    if job.deposit:
        yield f"Deposit on top: {price(garage.currency, job.deposit)}."
    if option.coding is Coding.PAID:
        yield f"Coding, to be paid: {price(garage.currency, option.coding_cost)}."
    if option.coding is Coding.SELF:
        yield "To be coded by yourself."
    if flagged(garage, option):
        yield "Work for a licensed person, or to be checked by one."


def _tools(garage: Garage, plan: Plan, month: int) -> Iterator[Item]:
    for buy in plan.tools:
        if buy.month == month:
            users = [
                job for job in plan.jobs if buy.tool in garage.option[job.option].tools
            ]
            yield Item(
                name=garage.tool[buy.tool].name,
                target=_jobs(users),
                remarks=(),
                price=money(garage.currency, buy.price),
            )


def _jobs(jobs: Iterable[Job]) -> str:
    return "For " + ", ".join(job.option for job in jobs)


def _shipping(garage: Garage, plan: Plan, supplier: str | None, month: int) -> str:
    sums = (
        order.shipping
        for order in plan.orders
        if order.supplier == supplier and order.month == month
    )
    cost = sum(sums)
    return money(garage.currency, cost) if cost else ""
