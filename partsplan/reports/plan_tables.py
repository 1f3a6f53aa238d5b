"""A plan as people read it: what must not be driven and what to buy come first."""

from collections.abc import Iterator, Sequence

from partsplan.domain import (
    Faithfulness,
    Garage,
    Needs,
    Plan,
    PlanStatus,
    Shortfall,
    Skip,
    Stage,
)
from partsplan.reports.assumptions import assumptions, cautions, warnings
from partsplan.reports.buying import buying
from partsplan.reports.by_vehicle import money_by_vehicle
from partsplan.reports.departures import since_kept
from partsplan.reports.figures import count, month_name, number, percent, price
from partsplan.reports.page import Page
from partsplan.reports.plan_notes import (
    do_not_drive,
    left_alone,
    missed_deadlines,
    not_drivable,
)
from partsplan.reports.schedule import (
    cash_and_hours,
    month_by_month,
    old_units,
    tools,
)
from partsplan.reports.suspicions import check_first

FEWER = {
    Stage.DEADLINES: "missed deadlines",
    Stage.SAFETY: "months with a vehicle that must not be driven",
    Stage.MOBILITY: "months with a vehicle that cannot be driven",
}
WIDE_GAP = 0.5  # a larger share says less than the two sums


def plan_tables(
    garage: Garage,
    plan: Plan,
    skips: Sequence[Skip],
    shortfalls: Sequence[Shortfall],
    faith: Faithfulness | None = None,
    *,
    width: int = 100,
    colour: bool = False,
) -> str:
    """The whole plan as text. ``width`` is the longest line. [characters]"""
    page = Page(width, colour)
    last = month_name(garage.month(garage.months - 1))
    page.title(f"Plan for {garage.name}, {month_name(garage.start)} to {last}")
    page.paragraph(" ".join(certainty(garage, plan)))
    page.paragraph(outcome(garage, plan))
    do_not_drive(page, garage, plan, shortfalls)
    buying(page, garage, plan, 0)
    since_kept(page, garage, faith)
    check_first(page, garage, plan)
    month_by_month(page, garage, plan)
    cash_and_hours(page, garage, plan)
    money_by_vehicle(page, garage, plan)
    old_units(page, garage, plan)
    tools(page, garage, plan)
    left_alone(page, garage, skips)
    missed_deadlines(page, garage, plan, shortfalls)
    not_drivable(page, garage, plan, shortfalls)
    warnings(page, garage.warnings)
    assumptions(page, garage)
    cautions(page, garage, plan)
    return str(page)


def needs_tables(
    garage: Garage, needs: Needs, *, width: int = 100, colour: bool = False
) -> str:
    """Why no plan is possible, and what would make one possible."""
    page = Page(width, colour)
    page.title(f"No plan for {garage.name}")
    month = month_name(needs.month)
    page.paragraph(
        f"Without any job the balance of {month} lies below what it must hold "
        f"({price(garage.currency, garage.reserve)}). The least that would do: "
        f"{price(garage.currency, needs.money)} more by {month}."
    )
    return str(page)


def certainty(garage: Garage, plan: Plan) -> Iterator[str]:
    """How sure it is that no plan is better, as sentences."""
    if plan.status is PlanStatus.PROVEN:
        if plan.gap <= 0:
            yield "Proven: no plan is better."
        else:
            yield f"Proven: no plan is better by more than {percent(plan.gap)}."
        return
    held = ""
    for stage, what in FEWER.items():
        reached, bound = plan.stages.of(stage), plan.stage_bounds.of(stage)
        if bound < reached:
            held = ", with these counts held"
            yield f"Not proven: {reached} {what}; as few as {bound} are not ruled out."
    if plan.gap > WIDE_GAP:
        bound_sum = price(garage.currency, plan.bound)
        yield f"Not proven: a net worth of up to {bound_sum} is not ruled out{held}."
    else:
        yield f"Within {percent(plan.gap)} of the best possible{held}."
    ended = "was stopped after" if plan.interrupted else "had"
    seconds = number(plan.seconds, 1)
    yield f"The solver {ended} {seconds} s; more may find a better plan."


def outcome(garage: Garage, plan: Plan) -> str:
    """What it reaches, as sentences."""
    stages = plan.stages
    gained = price(garage.currency, stages.net_worth)
    return (
        f"{count(len(plan.jobs), 'job')}. "
        f"Missed deadlines: {stages.missed_deadlines}. "
        f"Months with a vehicle that must not be driven: "
        f"{stages.unsafe_vehicle_months}; "
        f"that cannot be driven: {stages.undrivable_vehicle_months}. "
        f"Net worth, what is gained less what it costs: {gained}."
    )
