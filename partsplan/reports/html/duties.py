"""Days to keep: returns of old units, and what the logbook asks for."""

from collections.abc import Iterator

from partsplan.domain import (
    AskForCredit,
    AskForPart,
    ClaimWarranty,
    CureFault,
    DoNotDrive,
    FitPart,
    Garage,
    Job,
    PayInstalment,
    Report,
    ReturnDay,
    ReturnMissed,
    SendBack,
)
from partsplan.pricing import price
from partsplan.reports.buying import credited_in
from partsplan.reports.calendar_days import occasions
from partsplan.reports.duty_words import duty_line
from partsplan.reports.figures import day_name, money, month_name
from partsplan.reports.html.leaf import Table
from partsplan.reports.names import supplier_name
from partsplan.reports.standing import unsafe
from partsplan.reports.tables import Column, figure, text

OF_DEPOSITS = (SendBack, ReturnMissed, AskForCredit)
OTHERS = (AskForPart, FitPart, ClaimWarranty, PayInstalment, CureFault)
"""What a plan leaves to be done; quotes that end are the plan's own business."""


def not_driven_now(report: Report) -> tuple[str, ...]:
    """What must not be driven on the day of the report, unless the plan tells it."""
    told = unsafe(report.garage, report.plan)
    return tuple(
        duty_line(report.now.standing.garage, duty, report.now.today)
        for duty in report.now.duties
        if isinstance(duty, DoNotDrive) and duty.vehicle not in told
    )


def deposits_due(report: Report) -> tuple[str, ...]:
    """What the logbook knows of old units and their credits, by day."""
    return _lines(report, OF_DEPOSITS)


def others_due(report: Report) -> tuple[str, ...]:
    """All else that has a day, of the logbook and of the garage's deadlines."""
    return _lines(report, OTHERS)


def planned_returns(report: Report) -> Table | None:
    """Old units that will go back; None if there are none."""
    garage = report.garage
    jobs = [job for job in report.plan.jobs if job.deposit]
    if not jobs:
        return None
    days = {
        one.option: day_name(one.day)
        for one in occasions(
            garage, report.plan, report.now.standing.ledger, report.now.today
        )
        if isinstance(one, ReturnDay)
    }
    columns = (
        text("Old unit of"),
        text("To", optional=True),
        Column("Fitted"),
        Column("Back by", optional=True),
        figure("At stake"),
        figure("Freight", optional=True),
        Column("Comes back in"),
    )
    return Table.of(
        columns, [tuple(_return(garage, job, days.get(job.option, ""))) for job in jobs]
    )


def _return(garage: Garage, job: Job, day: str) -> Iterator[str]:
    option = garage.option[job.option]
    freight = price(garage, option).core_return
    yield job.option
    yield supplier_name(garage, job.supplier)
    yield month_name(garage.month(job.fitted))
    yield day
    yield money(garage.currency, job.deposit)
    yield money(garage.currency, freight) if freight else ""
    trusted = option.core_chance >= garage.core_trust
    yield (
        month_name(garage.month(credited_in(garage, job)))
        if trusted
        else "not counted on"
    )


def _lines(report: Report, kinds: tuple[type, ...]) -> tuple[str, ...]:
    return tuple(
        duty_line(report.now.standing.garage, duty, report.now.today)
        for duty in report.now.duties
        if isinstance(duty, kinds)
    )
