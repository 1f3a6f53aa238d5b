"""What carries the risk of a plan's money, in words."""

from collections.abc import Iterator

from partsplan.domain import Garage, Job, Plan, Risk, RiskShare, RiskSource
from partsplan.reports.break_evens import quoted_in
from partsplan.reports.buying import credited_in
from partsplan.reports.figures import listed, money, percent, price
from partsplan.reports.page import Page
from partsplan.reports.risk_model import price_span
from partsplan.reports.tables import figure, text

MOST = 5
"""Most sources that are shown."""
LEAST = 0.01
"""Smaller shares are left out."""


def sources(page: Page, garage: Garage, plan: Plan, risk: Risk) -> None:
    """The largest shares of the spread of the money, and where each comes from."""
    page.heading("What carries the risk")
    shown = [one for one in risk.shares if one.share >= LEAST][:MOST]
    if not shown:
        page.paragraph("Nothing: the money is the same in every future.")
        return
    columns = [
        text("What"),
        figure("Share"),
        figure("Planned", unit=garage.currency.code),
        figure("Average", unit=garage.currency.code),
        figure("Spread", unit=garage.currency.code),
        text("Since", share=2),
    ]
    page.table("sources", columns, [_row(garage, plan, risk, one) for one in shown])
    deviation = price(garage.currency, risk.deviation)
    page.paragraph(
        "Share: of the variance of all money, whose standard deviation is "
        f"{deviation}; spread is that of the source alone."
    )


def _row(garage: Garage, plan: Plan, risk: Risk, one: RiskShare) -> tuple[str, ...]:
    sums = (one.planned, one.mean, one.deviation)
    return (
        _name(garage, one),
        percent(one.share),
        *(money(garage.currency, amount) for amount in sums),
        _since(garage, plan, risk, one),
    )


def _name(garage: Garage, one: RiskShare) -> str:
    if one.source is RiskSource.SHIPPING or one.subject is None:
        return "Shipping"
    if one.source is RiskSource.NEW_FAULTS:
        return f"New faults, {garage.vehicle[one.subject].name}"
    return one.subject


def _since(garage: Garage, plan: Plan, risk: Risk, one: RiskShare) -> str:
    if one.source is RiskSource.NEW_FAULTS:
        return f"{percent(risk.settings.new_faults)} a driven month"
    if one.source is RiskSource.SHIPPING or one.subject is None:
        return "free or not by what the order costs"
    job = next(job for job in plan.jobs if job.option == one.subject)
    found = list(_causes(garage, job))
    return listed(found) or "costs slip past the last month"


def _causes(garage: Garage, job: Job) -> Iterator[str]:
    """What can change its money within the horizon, late parts apart."""
    option = garage.option[job.option]
    low, high = price_span(option)
    if low < high:
        currency = quoted_in(garage, option)
        yield f"price {money(currency, low)} to {price(currency, high)}"
    bought_again = job.fitted + 1 < garage.months and not option.warranty_months
    if option.dud_chance and bought_again:
        yield f"bad part {percent(option.dud_chance)}, no warranty"
    credited = credited_in(garage, job) < garage.months
    if option.core_deposit and option.core_chance < 1 and credited:
        stake = money(garage.currency, job.deposit)
        refused = percent(1 - option.core_chance)
        yield f"old unit refused {refused}, {stake} at stake"
