"""A kept plan against life, for a person in the garage."""

from collections.abc import Iterator
from fractions import Fraction

from partsplan.domain import (
    Garage,
    JobAgainst,
    JobDone,
    Month,
    PlanAgainst,
)
from partsplan.reports.figures import (
    count,
    day_name,
    listed,
    money,
    month_name,
    number,
    price,
)
from partsplan.reports.page import Page
from partsplan.reports.tables import Column, figure, text


def against_tables(
    garage: Garage, found: PlanAgainst, *, width: int = 100, colour: bool = False
) -> str:
    """When, for how much and with how many hours each job was done, and the months."""
    page = Page(width, colour)
    plan = found.plan
    page.title(
        f"Plan {plan.number} of {garage.name}, {month_name(plan.start)} to "
        f"{month_name(plan.end)}, against what happened by {day_name(found.today)}"
    )
    page.paragraph(
        f"Kept on {day_name(plan.kept)}. {_standing(found)} {_totals(garage, found)}"
    )
    if found.jobs:
        _when(page, found)
        _money(page, garage, found)
        _hours(page, found)
    _not_planned(page, garage, found)
    _months(page, garage, found)
    return str(page)


def _standing(found: PlanAgainst) -> str:
    """How many jobs stand where."""
    done = [job for job in found.jobs if job.done and job.done.on_the_car]
    waiting = [job for job in found.jobs if not job.done]
    under_way = len(found.jobs) - len(done) - len(waiting)
    return (
        f"{count(len(found.jobs), 'job')} planned: {len(done)} done, {under_way} under "
        f"way, {len(waiting)} not begun, {sum(job.late > 0 for job in found.jobs)} "
        f"late. Begun without being planned: {len(found.unplanned)}."
    )


def _totals(garage: Garage, found: PlanAgainst) -> str:
    """Money and hours of the months that have come."""
    if not found.begun:
        return f"The plan begins in {month_name(found.plan.start)}."
    currency = garage.currency
    more = found.spent - found.planned_out
    last = month_name(found.begun[-1].planned.month)
    meant, spent = price(currency, found.planned_out), price(currency, found.spent)
    return (
        f"Up to {last} {meant} were to be spent and {spent} were: "
        f"{money(currency, abs(more))} {'more' if more >= 0 else 'less'}. "
        f"Own hours: {number(found.planned_hours)} planned, "
        f"{number(found.hours)} spent."
    )


def _when(page: Page, found: PlanAgainst) -> None:
    page.heading("When")
    page.table(
        "when",
        [
            text("Job"),
            Column("To order"),
            Column("Ordered"),
            Column("To fit"),
            Column("Fitted"),
            figure("Months late"),
            text("State"),
        ],
        [_when_row(job) for job in found.jobs],
    )
    page.bullets(
        f"{job.planned.option}: {listed(job.instead)} instead, which was not planned."
        for job in found.jobs
        if job.instead
    )


def _when_row(job: JobAgainst) -> tuple[str, ...]:
    done = job.done
    fitted = done.fitted if done and done.on_the_car else None
    return (
        job.planned.option,
        month_name(job.planned.ordered),
        month_name(Month.of(done.ordered)) if done else "",
        month_name(job.planned.fitted),
        month_name(Month.of(fitted)) if fitted else "",
        number(job.late) if job.late else "",
        done.state.value if done else "not begun",
    )


def _money(page: Page, garage: Garage, found: PlanAgainst) -> None:
    """Prices and deposits; deposits only where there are any."""
    page.heading(f"Money [{garage.currency.code}]")
    unit = garage.currency.code
    page.table(
        "money",
        [
            text("Job"),
            figure("Planned", unit=unit),
            figure("Billed", unit=unit),
            figure("More", unit=unit),
            figure("Deposit planned", unit=unit, optional=True),
            figure("Paid", unit=unit, optional=True),
        ],
        [*(_money_row(garage, job) for job in found.jobs), _money_sum(garage, found)],
    )
    twice = [job.done for job in found.jobs if job.done and job.done.orders > 1]
    page.bullets(f"{one.option} was ordered {one.orders} times." for one in twice)


def _money_row(garage: Garage, job: JobAgainst) -> tuple[str, ...]:
    currency, planned, done = garage.currency, job.planned, job.done
    return (
        planned.option,
        money(currency, planned.landed),
        money(currency, done.billed) if done else "",
        money(currency, job.more_money) if job.more_money is not None else "",
        money(currency, planned.deposit) if planned.deposit else "",
        money(currency, done.deposit) if done and done.deposit else "",
    )


def _money_sum(garage: Garage, found: PlanAgainst) -> tuple[str, ...]:
    """The jobs that were begun, together."""
    begun = [(job.planned, job.done) for job in found.jobs if job.done]
    sums = (
        sum(planned.landed for planned, _ in begun),
        sum(done.billed for _, done in begun),
        sum(done.billed - planned.landed for planned, done in begun),
    )
    return ("Begun", *(money(garage.currency, one) for one in sums), "", "")


def _hours(page: Page, found: PlanAgainst) -> None:
    page.heading("Own hours")
    page.table(
        "hours",
        [text("Job"), figure("Planned"), figure("Spent"), figure("More")],
        [_hours_row(job) for job in found.jobs],
    )


def _hours_row(job: JobAgainst) -> tuple[str, ...]:
    spent = job.done.hours if job.done and job.done.hours else None
    more = job.more_hours
    return (
        job.planned.option,
        number(job.planned.hours),
        _number(spent),
        _number(more),
    )


def _not_planned(page: Page, garage: Garage, found: PlanAgainst) -> None:
    if not found.unplanned:
        return
    page.heading(f"Not planned [{garage.currency.code}]")
    page.table(
        "not-planned",
        [
            text("Job"),
            Column("Ordered"),
            Column("Fitted"),
            figure("Billed", unit=garage.currency.code),
            figure("Hours", optional=True),
            text("State"),
        ],
        [_not_planned_row(garage, one) for one in found.unplanned],
    )


def _not_planned_row(garage: Garage, one: JobDone) -> tuple[str, ...]:
    return (
        one.option,
        month_name(Month.of(one.ordered)),
        month_name(Month.of(one.fitted)) if one.fitted and one.on_the_car else "",
        money(garage.currency, one.billed),
        number(one.hours) if one.hours else "",
        one.state.value,
    )


def _months(page: Page, garage: Garage, found: PlanAgainst) -> None:
    page.heading(f"Month by month [{garage.currency.code}]")
    unit = garage.currency.code
    page.table(
        "months",
        [
            Column("Month"),
            figure("To spend", unit=unit),
            figure("Spent", unit=unit),
            figure("More", unit=unit),
            figure("To come", unit=unit),
            figure("Came in", unit=unit),
            figure("Hours"),
            figure("Used"),
        ],
        [*_month_rows(garage, found), *_month_sum(garage, found)],
    )
    page.paragraph(
        "Spent is all that the logbook knows of, planned or not; what came in are "
        "deposits and any other money besides the budget."
    )


def _month_rows(garage: Garage, found: PlanAgainst) -> Iterator[tuple[str, ...]]:
    currency = garage.currency
    for one in found.months:
        yield (
            month_name(one.planned.month),
            money(currency, one.planned.out),
            money(currency, one.spent) if one.begun else "",
            money(currency, one.more_money) if one.begun else "",
            money(currency, one.planned.back),
            money(currency, one.received) if one.begun else "",
            number(one.planned.hours),
            number(one.hours) if one.begun else "",
        )


def _month_sum(garage: Garage, found: PlanAgainst) -> Iterator[tuple[str, ...]]:
    """The months that have come, if there are several."""
    if len(found.begun) < 2:
        return
    currency = garage.currency
    yield (
        "So far",
        money(currency, found.planned_out),
        money(currency, found.spent),
        money(currency, found.spent - found.planned_out),
        money(currency, sum(one.planned.back for one in found.begun)),
        money(currency, sum(one.received for one in found.begun)),
        number(found.planned_hours),
        number(found.hours),
    )


def _number(value: Fraction | None) -> str:
    return "" if value is None else number(value)
