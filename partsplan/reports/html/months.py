"""What each month brings: steps, money and own hours."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from partsplan.domain import Garage, Plan
from partsplan.reports.buying import payments
from partsplan.reports.figures import money, month_name, number, price
from partsplan.reports.html.leaf import Table
from partsplan.reports.schedule import in_words, month_money, steps
from partsplan.reports.suspicions import unchecked
from partsplan.reports.tables import figure, text


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One thing to do; blank where there is nothing to say."""

    do: str
    name: str
    target: str
    place: str
    price: str
    hours: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthPage:
    """A month.

    Attributes
    ----------
    sums
        Its money and own hours, as sentences.
    suspected
        What is ordered in it on a suspicion only.
    to_pay
        What goes out; None if nothing does.
    """

    name: str
    steps: tuple[Step, ...]
    sums: str
    suspected: tuple[str, ...]
    to_pay: Table | None


def months(garage: Garage, plan: Plan) -> tuple[MonthPage, ...]:
    """Every month of the plan."""
    return tuple(_month(garage, plan, month) for month in range(garage.months))


def to_pay(garage: Garage, plan: Plan, month: int) -> Table | None:
    """What goes out in a month, by what it is for, and in all."""
    due = [(what, sum_) for what, sum_ in payments(garage, plan, month) if sum_]
    if not due:
        return None
    total = ("Total", plan.ledger[month].out)
    return Table(
        (text("For"), figure(garage.currency.code)),
        [(what, money(garage.currency, sum_)) for what, sum_ in (*due, total)],
    )


def suspected(garage: Garage, plan: Plan, month: int) -> tuple[str, ...]:
    """What is ordered in a month on a suspicion only."""
    jobs = (job for job in plan.jobs if job.ordered == month and not job.bought)
    return tuple(unchecked(garage, replace(plan, jobs=tuple(jobs))))


def sums(garage: Garage, plan: Plan, month: int) -> str:
    """The money and the own hours of a month, as sentences."""
    line, currency = plan.ledger[month], garage.currency
    before, *_ = month_money(garage, plan, line)
    there = f"{price(currency, line.budget)} come in"
    if before > 0:
        there = f"{money(currency, before)} are left over, {there}"
    if before < 0:
        there = f"{money(currency, -before)} are owed, {there}"
    back = f", {money(currency, line.back)} come back" if line.back else ""
    own = number(garage.monthly_hours[month])
    return (
        f"{there}{back}, {money(currency, line.out)} go out: "
        f"{price(currency, line.balance)} at the end. "
        f"Own hours: {number(line.hours)} of {own}."
    )


def _month(garage: Garage, plan: Plan, month: int) -> MonthPage:
    return MonthPage(
        name=month_name(garage.month(month)),
        steps=tuple(_steps(garage, plan, month)),
        sums=sums(garage, plan, month),
        suspected=suspected(garage, plan, month),
        to_pay=to_pay(garage, plan, month),
    )


def _steps(garage: Garage, plan: Plan, month: int) -> Iterator[Step]:
    here = (step for step in steps(garage, plan) if step.month == month)
    for step in here:
        do, name, target, place, cost, hours = in_words(garage, step)
        yield Step(
            do=do, name=name, target=target, place=place, price=cost, hours=hours
        )
    for buy in plan.tools:
        if buy.month == month:
            yield Step(
                do="buy tool",
                name=garage.tool[buy.tool].name,
                target="",
                place="",
                price=money(garage.currency, buy.price),
                hours="",
            )
