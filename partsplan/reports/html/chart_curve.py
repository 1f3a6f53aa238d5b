"""What other monthly sums would buy."""

from partsplan.domain import Bought, BudgetCurve, Garage
from partsplan.reports.curve_tables import curve_columns, curve_row
from partsplan.reports.figures import count, money, price
from partsplan.reports.html.drawing import svg, values, whole
from partsplan.reports.html.figure import Figure
from partsplan.reports.html.inks import DEEP, PAPER, WARM
from partsplan.reports.html.leaf import Table

HEIGHT = 190


def curve_figure(garage: Garage, curve: BudgetCurve, usual: int | None) -> Figure:
    """Net worth over monthly sums; ``usual`` is the garage's own. [minor units]"""
    key = [("dots", "net worth of the best plan")]
    if usual is not None:
        key.append(("upright", "the sum as it is"))
    return Figure(
        name="curve",
        title=f"What a monthly sum buys [{garage.currency.code}]",
        summary=_summary(garage, curve),
        key=tuple(key),
        svg=_drawn(garage, curve, usual),
        table=Table.of(
            curve_columns(garage),
            [
                curve_row(garage, point, now=point.budget == usual)
                for point in curve.points
            ],
        ),
    )


def _summary(garage: Garage, curve: BudgetCurve) -> str:
    currency = garage.currency
    first, last = curve.points[0].budget, curve.points[-1].budget
    stopped = "The search was stopped. " if curve.interrupted else ""
    return (
        f"{stopped}Planned for {count(len(curve.points), 'sum')} from "
        f"{money(currency, first)} to {price(currency, last)} a month; what happens "
        "between two of them is not known. Missed deadlines, unsafe months and months "
        "not drivable come before net worth, which may fall where a bigger sum first "
        "mends one of them."
    )


def _drawn(garage: Garage, curve: BudgetCurve, usual: int | None) -> str:
    import altair as alt

    currency = garage.currency
    rows = [
        {
            "sum": whole(currency, point.budget),
            "worth": whole(currency, point.found.stages.net_worth),
        }
        for point in curve.points
        if isinstance(point.found, Bought)
    ]
    across = alt.X(
        "sum:Q",
        scale=alt.Scale(zero=False, padding=10),
        axis=alt.Axis(
            title=f"{currency.code} a month", format=",~f", tickCount=5, grid=False
        ),
    )
    up = alt.Y(
        "worth:Q",
        scale=alt.Scale(zero=False, padding=10),
        axis=alt.Axis(title=f"net worth [{currency.code}]", format=",~f", tickCount=5),
    )
    base = values(rows)
    layers = [
        base.mark_line(color=DEEP.light, strokeWidth=2).encode(x=across, y=up),
        base.mark_point(
            color=DEEP.light,
            filled=True,
            stroke=PAPER.light,
            shape="circle",
            size=50,
            opacity=1,
        ).encode(x=across, y=up),
    ]
    if usual is not None:
        own = values([{"sum": whole(currency, usual)}])
        layers.append(
            own.mark_rule(color=WARM.light, strokeWidth=2, strokeDash=[5, 3]).encode(
                x=across
            )
        )
    return svg(layers, height=HEIGHT, name="curve")
