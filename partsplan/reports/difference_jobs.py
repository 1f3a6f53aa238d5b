"""The jobs that differ between two plans, as tables."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from partsplan.domain import (
    Garage,
    Job,
    JobShift,
    PlanDifference,
    ToolBuy,
    TwoPlans,
)
from partsplan.reports.difference_text import another_cost, another_way, moved
from partsplan.reports.figures import money, month_name
from partsplan.reports.names import job_target
from partsplan.reports.page import Page
from partsplan.reports.tables import Column, figure, text


@dataclass(frozen=True, slots=True)
class Labels:
    """How the two plans and their differences are called."""

    before: str
    after: str
    leave: str
    enter: str


def one_sided(
    page: Page,
    title: str,
    garage: Garage,
    jobs: Sequence[Job],
    tools: Sequence[ToolBuy],
) -> None:
    """Jobs and tools that only one plan has."""
    rows = [
        (
            f"{job.option} ({job.route.value})",
            job_target(garage, job),
            _when(garage, job),
            money(garage.currency, job.landed),
        )
        for job in jobs
    ]
    rows += [
        (
            f"tool {buy.tool}",
            garage.tool[buy.tool].name,
            month_name(garage.month(buy.month)),
            money(garage.currency, buy.price),
        )
        for buy in tools
    ]
    if rows:
        page.heading(f"{title} [{garage.currency.code}]")
        columns = [
            text("Job"),
            text("For", share=2),
            text("Ordered"),
            figure("Price", unit=garage.currency.code),
        ]
        page.table("in-or-out", columns, rows, of=("Change", title))


def other_ways(
    page: Page, plans: TwoPlans, labels: Labels, difference: PlanDifference
) -> None:
    """The same faults by another option, route or supplier."""
    shifts = list(filter(another_way, difference.shifts))
    if not shifts:
        return
    page.heading(f"Done another way [{plans.other_garage.currency.code}]")
    columns = [
        text("For", share=2),
        text(labels.before, share=2),
        figure("Price", unit=plans.garage.currency.code),
        text(labels.after, share=2),
        figure("Price", unit=plans.other_garage.currency.code),
    ]
    page.table(
        "another-way",
        columns,
        [
            (
                job_target(plans.other_garage, shift.after),
                *_way(plans.garage, shift.before),
                *_way(plans.other_garage, shift.after),
            )
            for shift in shifts
        ],
    )


def moves(
    page: Page, plans: TwoPlans, labels: Labels, difference: PlanDifference
) -> None:
    """The same option in another month."""
    shifts = list(filter(moved, difference.shifts))
    if shifts:
        page.heading("Moves to another month")
        columns = [
            text("Job"),
            text("For", share=2),
            text(labels.before),
            text(labels.after),
        ]
        page.table(
            "moves",
            columns,
            [
                (
                    shift.after.option,
                    job_target(plans.other_garage, shift.after),
                    _when(plans.garage, shift.before),
                    _when(plans.other_garage, shift.after),
                )
                for shift in shifts
            ],
        )


def costs(
    page: Page, plans: TwoPlans, labels: Labels, difference: PlanDifference
) -> None:
    """Another price, deposit or charge."""
    shifts = list(filter(another_cost, difference.shifts))
    if shifts:
        page.heading(f"Costs otherwise [{plans.other_garage.currency.code}]")
        columns = [
            Column("Job", wraps=True, once=True),
            text("What"),
            figure(labels.before, unit=plans.garage.currency.code),
            figure(labels.after, unit=plans.other_garage.currency.code),
        ]
        page.table(
            "costs",
            columns,
            [row for shift in shifts for row in _cost_rows(plans, shift)],
        )


def _cost_rows(plans: TwoPlans, shift: JobShift) -> Iterator[tuple[str, ...]]:
    name = shift.after.option
    for what, before, after in (
        ("price", shift.before.landed, shift.after.landed),
        ("deposit", shift.before.deposit, shift.after.deposit),
        ("charge to this plan", shift.before.charge, shift.after.charge),
    ):
        if before != after:
            sums = (money(plans.garage.currency, one) for one in (before, after))
            yield name, what, *sums


def _way(garage: Garage, job: Job) -> tuple[str, str]:
    way = f"{job.option} ({job.route.value}), {_when(garage, job)}"
    return way, money(garage.currency, job.landed)


def _when(garage: Garage, job: Job) -> str:
    ordered = month_name(garage.month(job.ordered))
    if job.fitted == job.ordered:
        return ordered
    return f"{ordered}, fitted {month_name(garage.month(job.fitted))}"
