"""What is bought in one month, and what has to be paid for it."""

from collections.abc import Iterator

from partsplan.domain import Coding, Garage, Job, Plan, instalments
from partsplan.pricing import flagged, price
from partsplan.reports.figures import money, month_name, number
from partsplan.reports.names import LICENSED_NOTE, job_name, job_target, supplier_name
from partsplan.reports.page import Page
from partsplan.reports.tables import Column, figure, text


def buying(page: Page, garage: Garage, plan: Plan, month: int) -> None:
    """The shopping list of one month: parts, shipping, and all that has to be paid."""
    page.heading(
        f"To buy this month, {month_name(garage.month(month))} [{garage.currency.code}]"
    )
    ordered = [one for one in plan.jobs if one.ordered == month and not one.bought]
    if ordered:
        columns = [
            text("Buy"),
            text("For", share=2),
            text("From", optional=True),
            Column("Route"),
            figure("Price", unit=garage.currency.code),
            figure("Deposit", unit=garage.currency.code, optional=True),
            Column("Coding", optional=True),
        ]
        page.table("to-buy", columns, [_row(garage, job) for job in ordered])
        if any(flagged(garage, garage.option[job.option]) for job in ordered):
            page.paragraph(LICENSED_NOTE)
    else:
        page.paragraph("Nothing to order this month.")
    due = [(what, sum_) for what, sum_ in payments(garage, plan, month) if sum_]
    page.gap()
    if due:
        page.table(
            "to-pay",
            [text("To pay"), figure(garage.currency.code)],
            [
                *((what, money(garage.currency, sum_)) for what, sum_ in due),
                ("Total", money(garage.currency, plan.ledger[month].out)),
            ],
        )
    else:
        page.paragraph("Nothing to pay this month.")


def payments(garage: Garage, plan: Plan, month: int) -> Iterator[tuple[str, int]]:
    """What goes out in a month, by what it is for. [minor units]"""
    goods = earlier = deposits = at_fitting = returned = 0
    for job in plan.jobs:
        option = garage.option[job.option]
        priced = price(garage, option)
        for after, due in instalments(option, priced.landed):
            if job.ordered + after == month:
                if after:
                    earlier += due
                else:
                    goods += due
        if job.ordered == month and not job.bought:
            deposits += job.deposit
        if job.fitted == month:
            at_fitting += priced.coding + priced.consumables
        if job.deposit and credited_in(garage, job) == month:
            returned += priced.core_return
    yield "Parts and work ordered this month, as far as due", goods
    yield "Core deposits", deposits
    for order in plan.orders:
        if order.month == month:
            yield f"Shipping, {supplier_name(garage, order.supplier)}", order.shipping
    for tool in plan.tools:
        if tool.month == month:
            yield f"Tool: {garage.tool[tool.tool].name}", tool.price
    promised = sum(one.out for one in garage.promised if one.month == month)
    yield "Promised for what was bought before", promised
    yield "Coding and consumables at fitting", at_fitting
    yield "Instalments of earlier orders", earlier
    yield "Sending old units back", returned


def credited_in(garage: Garage, job: Job) -> int:
    """The month in which the deposit of a job's old unit would be credited."""
    return job.fitted - (-garage.option[job.option].core_days // 30)


def _row(garage: Garage, job: Job) -> tuple[str, ...]:
    option, currency = garage.option[job.option], garage.currency
    pieces = "" if option.quantity == 1 else f"{number(option.quantity)} x "
    part = f", part {option.part_no}" if option.part_no else ""
    coding = {
        Coding.NONE: "",
        Coding.SELF: "self",
        Coding.PAID: money(currency, option.coding_cost),
    }
    return (
        f"{pieces}{job_name(garage, job)}{part}",
        job_target(garage, job),
        supplier_name(garage, job.supplier),
        job.route,
        money(currency, job.landed),
        money(currency, job.deposit) if job.deposit else "",
        coding[option.coding],
    )
