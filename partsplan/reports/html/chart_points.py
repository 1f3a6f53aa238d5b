"""Points borne by month, with the plan and with nothing done."""

from partsplan.domain import Report
from partsplan.reports.figures import month_name, number
from partsplan.reports.html.drawing import dot, months_across, svg, values
from partsplan.reports.html.figure import Figure
from partsplan.reports.html.inks import DEEP, PAPER, WARM
from partsplan.reports.html.leaf import Table
from partsplan.reports.tables import Column, figure

HEIGHT = 170


def points_figure(report: Report) -> Figure:
    """Two lines; the room between them is what the plan spares."""
    spared = sum(report.borne_without) - sum(report.borne)
    last = month_name(report.garage.month(report.garage.months - 1))
    return Figure(
        name="points",
        title="Points borne by month",
        summary=(
            "Points of all faults that are not cured, weighted for safety, driving and "
            f"enjoyment. In {last} they are {number(report.borne[-1], 0)} instead of "
            f"{number(report.borne_without[-1], 0)}; in all {number(spared, 0)} "
            "point-months are spared."
        ),
        key=(("squares", "with nothing done"), ("dots", "with the plan")),
        svg=_drawn(report),
        table=_table(report),
    )


def _drawn(report: Report) -> str:
    import altair as alt

    garage = report.garage
    rows = [
        {"middle": month + 0.5, "with": float(borne), "without": float(without)}
        for month, (borne, without) in enumerate(
            zip(report.borne, report.borne_without, strict=True)
        )
    ]
    up = alt.Axis(title="points", format=",~f", tickCount=5)
    base = values(rows)
    layers = []
    for field, ink, dash, shape in (
        ("without", WARM.light, [5, 3], "square"),
        ("with", DEEP.light, [1, 0], "circle"),
    ):
        across, y = months_across(garage, "middle"), alt.Y(f"{field}:Q", axis=up)
        layers += [
            base.mark_line(color=ink, strokeWidth=2, strokeDash=dash).encode(
                x=across, y=y
            ),
            base.mark_point(
                color=ink,
                filled=True,
                stroke=PAPER.light,
                opacity=1,
                shape=shape,
                size=dot(garage),
            ).encode(x=across, y=y),
        ]
    return svg(layers, height=HEIGHT, name="points")


def _table(report: Report) -> Table:
    columns = (Column("Month"), figure("Nothing done"), figure("With the plan"))
    return Table.of(
        columns,
        [
            (
                month_name(report.garage.month(month)),
                number(without, 1),
                number(borne, 1),
            )
            for month, (borne, without) in enumerate(
                zip(report.borne, report.borne_without, strict=True)
            )
        ],
    )
