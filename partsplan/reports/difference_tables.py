"""Two plans side by side as people read them: a sentence, then tables."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from partsplan.domain import (
    Change,
    Garage,
    MonthDifference,
    Needs,
    Plan,
    PlanDifference,
    Stage,
    StageDifference,
    TwoPlans,
)
from partsplan.reports.assumptions import cautions
from partsplan.reports.change_words import change_words
from partsplan.reports.difference_jobs import (
    Labels,
    costs,
    moves,
    one_sided,
    other_ways,
)
from partsplan.reports.difference_notes import (
    left_alone,
    nothing_does_it,
    off_the_road,
    what_it_is_due_to,
    worth_notes,
)
from partsplan.reports.difference_text import in_one_sentence
from partsplan.reports.figures import money, month_name, month_spans, price
from partsplan.reports.page import Page
from partsplan.reports.plan_tables import certainty
from partsplan.reports.tables import Column, figure, text

STAGES = {
    Stage.DEADLINES: "Missed deadlines",
    Stage.SAFETY: "Months with a vehicle that must not be driven",
    Stage.MOBILITY: "Months with a vehicle that cannot be driven",
    Stage.WORTH: "Net worth",
}


WHAT_IF = Labels("As it is", "Then", "Jobs that leave", "Jobs that enter")
BESIDE = Labels("First", "Second", "Only in the first plan", "Only in the second plan")


def whatif_tables(
    changes: Sequence[Change],
    plans: TwoPlans,
    *,
    width: int = 100,
    colour: bool = False,
) -> str:
    """What becomes of a plan with some changes. ``width`` is the longest line."""
    page = Page(width, colour)
    page.title(f"What if, for {plans.garage.name}")
    page.bullets(f"{change_words(plans.garage, change)}?" for change in changes)
    page.gap()
    _body(page, plans, WHAT_IF, changes)
    return str(page)


def beside_tables(plans: TwoPlans, *, width: int = 100, colour: bool = False) -> str:
    """Two garages' plans side by side. ``width`` is the longest line."""
    page = Page(width, colour)
    page.title("Two plans side by side")
    page.bullets(
        f"{label}: {garage.name}, {month_spans(garage, range(garage.months))}"
        for label, garage in (
            (BESIDE.before, plans.garage),
            (BESIDE.after, plans.other_garage),
        )
    )
    page.gap()
    _body(page, plans, BESIDE, ())
    return str(page)


def _body(
    page: Page, plans: TwoPlans, labels: Labels, changes: Sequence[Change]
) -> None:
    difference, other = plans.difference, plans.other_plan
    if difference is None:
        _no_plan(page, plans, labels, changes)
        return
    currency = plans.other_garage.currency
    page.paragraph(in_one_sentence(currency, difference))
    for label, garage, plan in _both(plans, labels):
        if isinstance(plan, Plan):
            page.paragraph(f"{label}: {' '.join(certainty(garage, plan))}")
    off_the_road(page, plans, changes)
    one_sided(
        page, labels.leave, plans.garage, difference.leave, difference.tools_leave
    )
    one_sided(
        page, labels.enter, plans.other_garage, difference.enter, difference.tools_enter
    )
    other_ways(page, plans, labels, difference)
    moves(page, plans, labels, difference)
    costs(page, plans, labels, difference)
    if not difference.empty:
        _stages(page, plans, labels, difference)
        _money(page, plans, labels, difference.money)
    left_alone(page, plans, changes)
    worth_notes(page, plans)
    what_it_is_due_to(page, plans)
    if isinstance(other, Plan):
        fresh = (*difference.enter, *(shift.after for shift in difference.shifts))
        cautions(page, plans.other_garage, replace(other, jobs=fresh))


def _both(
    plans: TwoPlans, labels: Labels
) -> Iterator[tuple[str, Garage, Plan | Needs | None]]:
    yield labels.before, plans.garage, plans.plan
    yield labels.after, plans.other_garage, plans.other_plan


def _no_plan(
    page: Page, plans: TwoPlans, labels: Labels, changes: Sequence[Change]
) -> None:
    """Which of the two has no plan, and what would make one possible."""
    for label, garage, plan in _both(plans, labels):
        if isinstance(plan, Needs):
            lacks = price(garage.currency, plan.money)
            page.paragraph(
                f"{label}: there is no plan. The least that would do: {lacks} more by "
                f"{month_name(plan.month)}."
            )
        elif plan is None:
            page.paragraph(f"{label}: no plan does all that is asked.")
        else:
            page.paragraph(
                f"{label}: there is a plan. {' '.join(certainty(garage, plan))}"
            )
    nothing_does_it(page, plans, changes)


def _stages(
    page: Page, plans: TwoPlans, labels: Labels, difference: PlanDifference
) -> None:
    page.heading("What the plans reach")
    columns = [
        text("Count, or sum"),
        figure(labels.before),
        figure(labels.after),
        figure("Difference"),
    ]
    page.table(
        "reached",
        columns,
        [_stage(plans, difference, one) for one in difference.stages],
    )


def _stage(
    plans: TwoPlans, difference: PlanDifference, one: StageDifference
) -> tuple[str, ...]:
    worth = one.stage is Stage.WORTH
    currency = plans.garage.currency
    figures = [
        money(currency, value) if worth else str(value)
        for value in (one.before, one.after, one.change)
    ]
    name = f"{STAGES[one.stage]} [{currency.code}]" if worth else STAGES[one.stage]
    plus = "+" if one.change > 0 else ""
    told = f"{plus}{figures[2]}" if one.certain else "cannot be told"
    if worth and difference.otherwise_worth:
        told = "see below"
    return name, *figures[:2], told


def _money(
    page: Page, plans: TwoPlans, labels: Labels, months: Sequence[MonthDifference]
) -> None:
    page.heading(f"Money by month [{plans.garage.currency.code}]")
    columns = [
        Column("Month"),
        *(
            figure(f"{what}, {label.lower()}", unit=plans.garage.currency.code)
            for what in ("Out", "Balance")
            for label in (labels.before, labels.after)
        ),
    ]
    page.table("money-by-month", columns, [_month(plans, one) for one in months])


def _month(plans: TwoPlans, one: MonthDifference) -> tuple[str, ...]:
    lines = (one.before, one.after)
    sums = (
        *(None if line is None else line.out for line in lines),
        *(None if line is None else line.balance for line in lines),
    )
    currency = plans.garage.currency
    shown = ("" if sum_ is None else money(currency, sum_) for sum_ in sums)
    return month_name(one.month), *shown
