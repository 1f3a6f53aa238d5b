"""Money out against the budget, with what is left at each month's end."""

from partsplan.domain import Garage, Plan
from partsplan.reports.figures import money, month_name, number, price
from partsplan.reports.html.drawing import dot, months_across, svg, values, whole
from partsplan.reports.html.figure import Figure
from partsplan.reports.html.inks import DEEP, MIDDLE, PAPER, WARM
from partsplan.reports.html.leaf import Table
from partsplan.reports.tables import Column, figure

HEIGHT = 190


def money_figure(garage: Garage, plan: Plan) -> Figure:
    """Bars for what goes out, lines for the budget, a dotted line for the balance."""
    currency = garage.currency
    return Figure(
        name="money",
        title=f"Money by month [{currency.code}]",
        summary=_summary(garage, plan),
        key=(
            ("bar", "money out"),
            ("level", "budget"),
            ("dotted", "balance at the month's end"),
        ),
        svg=_drawn(garage, plan),
        table=_table(garage, plan),
    )


def _summary(garage: Garage, plan: Plan) -> str:
    currency = garage.currency
    lowest = min(plan.ledger, key=lambda line: line.balance)
    most = max(plan.ledger, key=lambda line: line.out)
    held = (
        f"; the reserve is {money(currency, garage.reserve)}" if garage.reserve else ""
    )
    return (
        f"Most goes out in {month_name(garage.month(most.month))}: "
        f"{price(currency, most.out)} of a budget of {money(currency, most.budget)}. "
        f"Least is left at the end of {month_name(garage.month(lowest.month))}: "
        f"{price(currency, lowest.balance)}{held}."
    )


def _drawn(garage: Garage, plan: Plan) -> str:
    import altair as alt

    currency = garage.currency
    rows = [
        {
            "middle": line.month + 0.5,
            "bar": line.month + 0.2,
            "bar_end": line.month + 0.8,
            "level": line.month + 0.08,
            "level_end": line.month + 0.92,
            "zero": 0,
            "out": whole(currency, line.out),
            "budget": whole(currency, line.budget),
            "balance": whole(currency, line.balance),
        }
        for line in plan.ledger
    ]
    up = alt.Axis(title=currency.code, format=",~f", tickCount=5)
    base = values(rows)
    return svg(
        [
            base.mark_rect(color=MIDDLE.light).encode(
                x=months_across(garage, "bar"),
                x2="bar_end",
                y=alt.Y("zero:Q", axis=up),
                y2="out",
            ),
            base.mark_rule(color=DEEP.light, strokeWidth=3).encode(
                x=months_across(garage, "level"), x2="level_end", y="budget:Q"
            ),
            base.mark_line(color=WARM.light, strokeWidth=2, strokeDash=[2, 3]).encode(
                x=months_across(garage, "middle"), y="balance:Q"
            ),
            base.mark_point(
                color=WARM.light,
                filled=True,
                stroke=PAPER.light,
                opacity=1,
                shape="circle",
                size=dot(garage),
            ).encode(x=months_across(garage, "middle"), y="balance:Q"),
        ],
        height=HEIGHT,
        name="money",
    )


def _table(garage: Garage, plan: Plan) -> Table:
    columns = (
        Column("Month"),
        figure("Budget"),
        figure("Out"),
        figure("Back"),
        figure("Balance"),
        figure("Own hours"),
        figure("of"),
    )
    return Table.of(
        columns,
        [
            (
                month_name(garage.month(line.month)),
                *(
                    money(garage.currency, one)
                    for one in (line.budget, line.out, line.back, line.balance)
                ),
                number(line.hours),
                number(garage.monthly_hours[line.month]),
            )
            for line in plan.ledger
        ],
    )
