"""The options of each fault that something is bought for, by landed price."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from partsplan.domain import Candidate, Comparison, Garage, Report
from partsplan.reports.figures import count, money
from partsplan.reports.html.drawing import TEXTS, down, svg, values, whole
from partsplan.reports.html.figure import Figure
from partsplan.reports.html.inks import DEEP, MIDDLE, WARM
from partsplan.reports.html.leaf import Table
from partsplan.reports.names import fault_name
from partsplan.reports.tables import figure, text
from partsplan.reports.words import option_name, sentence

MOST = 14
"""Options in one chart, where they are not all for one fault."""
MOST_DRAWN = 12
"""Charts that are drawn; of those that follow there are the tables."""
TITLE, ROW, GAP = 20, 30, 8
"""Room for a fault's title, for an option, and between faults. [px]"""
LABEL, BAR, THICK = 9, 21, 4
"""Middle of an option's name, middle of its bar and half its thickness. [px]"""

CHOSEN, OPEN, BARRED = "chosen", "open", "barred"
MARKS = {
    CHOSEN: ("full", CHOSEN),
    OPEN: ("hollow", "could be chosen"),
    BARRED: ("dashed", BARRED),
}


def routes_figures(report: Report) -> Iterator[Figure]:
    """Charts vehicle by vehicle, in them a bar an option, the chosen one marked."""
    place = 0
    for vehicle in report.garage.vehicles:
        of_vehicle = [
            one
            for one in report.comparisons
            if report.garage.fault[one.fault].vehicle == vehicle.id
        ]
        parts = _parts(of_vehicle)
        for number, part in enumerate(parts, 1):
            place += 1
            which = f", {number} of {len(parts)}" if len(parts) > 1 else ""
            yield _figure(report, f"{vehicle.name}{which}", part, place)


def _figure(
    report: Report, of: str, comparisons: Sequence[Comparison], place: int
) -> Figure:
    name = f"routes-{place}"
    drawn = place <= MOST_DRAWN
    options = {one.option.id for one in _candidates(comparisons)}
    chosen = options & report.plan.choices.orders.keys()
    missing = "" if drawn else " Not drawn."
    return Figure(
        name=name,
        title=f"Ways to mend: {of} [{report.garage.currency.code}]",
        summary=(
            f"Landed prices of {count(len(options), 'option')} for "
            f"{count(len(comparisons), 'fault')}; {len(chosen)} chosen.{missing}"
        ),
        key=tuple(
            mark
            for state, mark in MARKS.items()
            if any(_state(report, one) == state for one in _candidates(comparisons))
        ),
        svg=_drawn(report, comparisons, name) if drawn else "",
        table=_table(report, comparisons),
    )


def _parts(comparisons: Iterable[Comparison]) -> list[list[Comparison]]:
    """Faults in rows, each as long as there is room in a chart."""
    parts: list[list[Comparison]] = []
    room = 0
    for one in comparisons:
        room -= len(one.candidates)
        if not parts or room < 0:
            parts.append([])
            room = MOST - len(one.candidates)
        parts[-1].append(one)
    return parts


def _candidates(comparisons: Iterable[Comparison]) -> Iterator[Candidate]:
    return (one for comparison in comparisons for one in comparison.candidates)


def _drawn(report: Report, comparisons: Sequence[Comparison], name: str) -> str:
    import altair as alt

    titles, bars, height = _places(report, comparisons)
    across = alt.X(
        "zero:Q",
        axis=alt.Axis(
            title=f"landed price [{report.garage.currency.code}]",
            format=",~f",
            tickCount=4,
        ),
    )

    def drawn_as(state: str, **mark: Any) -> "alt.Chart":
        these = values(bar for bar in bars if bar["state"] == state)
        drawn: alt.Chart = these.mark_rect(**mark).encode(
            x=across, x2="landed", y=down("top", height), y2="foot"
        )
        return drawn

    def written(rows: Sequence[dict[str, Any]], **mark: Any) -> "alt.Chart":
        texts: alt.Chart = (
            values(rows)
            .mark_text(align="left", baseline="middle", limit=TEXTS, x=0, **mark)
            .encode(y=down("label", height), text="name:N")
        )
        return texts

    return svg(
        [
            drawn_as(OPEN, filled=False, stroke=MIDDLE.light, strokeWidth=1.5),
            drawn_as(
                BARRED,
                filled=False,
                stroke=WARM.light,
                strokeWidth=1.5,
                strokeDash=[3, 3],
            ),
            drawn_as(CHOSEN, color=DEEP.light, opacity=1),
            written(titles, fontWeight="bold"),
            written(bars),
        ],
        height=height,
        name=name,
        labelled=False,
    )


def _places(
    report: Report, comparisons: Sequence[Comparison]
) -> tuple[list[dict[str, Any]], list[dict[str, Any]], int]:
    """Titles, bars, and how far down they reach. [px]"""
    garage, top = report.garage, 0
    titles, bars = [], []
    for comparison in comparisons:
        title = garage.fault[comparison.fault].title
        titles.append({"name": title, "label": top + TITLE / 2})
        top += TITLE
        for one in comparison.candidates:
            bars.append(_bar(report, one, top))
            top += ROW
        top += GAP
    return titles, bars, top


def _bar(report: Report, one: Candidate, top: int) -> dict[str, Any]:
    garage, state = report.garage, _state(report, one)
    told = "" if state == OPEN else f", {state}"
    landed = money(garage.currency, one.price.landed)
    return {
        "name": f"{landed}{told}: {option_name(garage, one.option.id)}",
        "state": state,
        "zero": 0,
        "landed": whole(garage.currency, one.price.landed),
        "label": top + LABEL,
        "top": top + BAR - THICK,
        "foot": top + BAR + THICK,
    }


def _state(report: Report, one: Candidate) -> str:
    if one.option.id in report.plan.choices.orders:
        return CHOSEN
    return BARRED if one.fitted is None else OPEN


def _table(report: Report, comparisons: Sequence[Comparison]) -> Table:
    columns = (
        text("Option"),
        text("For", share=2),
        figure("Landed"),
        figure("Deposit", optional=True),
        figure("Cost a month of service"),
        text("Remark", share=2, optional=True),
    )
    rows = [
        _row(report, comparison, one)
        for comparison in comparisons
        for one in comparison.candidates
    ]
    return Table.of(columns, rows)


def _row(report: Report, comparison: Comparison, one: Candidate) -> tuple[str, ...]:
    garage = report.garage
    currency = garage.currency
    remark = {
        CHOSEN: CHOSEN,
        OPEN: "",
        BARRED: _barred(garage, one),
    }
    return (
        option_name(garage, one.option.id),
        fault_name(garage.fault[comparison.fault]),
        money(currency, one.price.landed),
        money(currency, one.price.deposit) if one.price.deposit else "",
        "" if one.per_month is None else money(currency, one.per_month),
        remark[_state(report, one)],
    )


def _barred(garage: Garage, one: Candidate) -> str:
    return " ".join(sentence(garage, reason) for reason in one.bars)
