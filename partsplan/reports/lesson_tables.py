"""How good estimates were, for a person in the garage."""

from collections.abc import Sequence
from fractions import Fraction

from partsplan.domain import (
    Duds,
    Garage,
    Grouping,
    Lesson,
    Lessons,
    Norm,
    NormColumn,
    Ratio,
)
from partsplan.reports.figures import count, day_name, fixed, listed, number, percent
from partsplan.reports.names import supplier_name
from partsplan.reports.page import Page
from partsplan.reports.tables import figure, text


def lesson_tables(
    garage: Garage, found: Lessons, *, width: int = 100, colour: bool = False
) -> str:
    """Delays, bad parts, prices and hours, and what had better be written down."""
    page = Page(width, colour)
    page.title(
        f"What the logbook of {garage.name} says of its quotes, {day_name(found.today)}"
    )
    if not found.lessons:
        page.paragraph("No part was ordered yet, so there is nothing to learn from.")
        return str(page)
    page.paragraph(
        "Quotes as they stand now. An entry without a price or hours took those of the "
        "quote and counts as a hit. Days late: beyond lead_days, below 0 if earlier. "
        "Billed and hours: the mean of what was by what was quoted or estimated."
    )
    for grouping, title in (
        (Grouping.SUPPLIER, "By supplier"),
        (Grouping.ROUTE, "By route"),
    ):
        together = [one for one in found.lessons if one.grouping is grouping]
        if together:
            page.heading(title)
            _table(page, grouping, together)
    _norms(page, garage, found)
    return str(page)


def _table(page: Page, grouping: Grouping, together: Sequence[Lesson]) -> None:
    columns = [
        text(grouping.value.capitalize()),
        figure("Parts"),
        figure("Overdue", optional=True),
        figure("Days late"),
        figure("At worst"),
        figure("Bad"),
        figure("Chance, 90 %"),
        figure("Billed"),
        figure("Hours"),
    ]
    page.table(f"by-{grouping.value}", columns, [_row(one) for one in together])


def _row(one: Lesson) -> tuple[str, ...]:
    delays, duds = one.delays, one.duds
    return (
        one.name,
        str(one.cases),
        str(one.overdue) if one.overdue else "",
        number(delays.mean, 1) if delays else "",
        str(delays.worst) if delays else "",
        f"{duds.duds} of {duds.cases}" if duds else "",
        _interval(duds) if duds else "",
        _ratio(one.prices),
        _ratio(one.hours),
    )


def _interval(duds: Duds) -> str:
    low, high = (number(100 * end, 0) for end in (duds.low, duds.high))
    return f"{low} to {high} %"


def _ratio(ratio: Ratio | None) -> str:
    return f"x {fixed(ratio.mean, 2)}" if ratio else ""


def _norms(page: Page, garage: Garage, found: Lessons) -> None:
    page.heading("To consider")
    if found.norms:
        page.bullets(_norm(garage, one) for one in found.norms)
        page.paragraph("Nothing was changed: write down what you believe.")
    else:
        page.paragraph("Nothing that happened speaks against the quotes.")
    few = [one.name for one in found.lessons if one.cases < found.fewest]
    if few:
        page.paragraph(
            f"Nothing is offered from fewer than {found.fewest} cases, so nothing for "
            f"{listed(few)}."
        )


def _norm(garage: Garage, norm: Norm) -> str:
    """What was found, from how many cases, and what to write."""
    name = _name(garage, norm.grouping, norm.name)
    return f"{name}: {_finding(norm)}, {count(norm.cases, 'case')}. {_advice(norm)}"


def _finding(norm: Norm) -> str:
    match norm.column:
        case NormColumn.LEAD_DAYS:
            days = count(abs(norm.more), "day")
            when = "later" if norm.more > 0 else "earlier"
            return f"arrives {days} {when} than it says"
        case NormColumn.DUD_CHANCE:
            found, said = percent(norm.found), percent(norm.said)
            return f"{found} of the parts are bad where the quotes say {said}"
        case NormColumn.PRICE:
            return f"bills {_off(norm.found)} than it quotes"
        case NormColumn.HOURS:
            return f"takes {_off(norm.found)} own hours than estimated"


def _advice(norm: Norm) -> str:
    if norm.column is NormColumn.LEAD_DAYS and norm.value is None:
        side = "more" if norm.more > 0 else "fewer"
        return f"Consider {abs(norm.more)} {side} lead_days."
    assert norm.value is not None  # only lead times go without
    times = "x " if norm.column in (NormColumn.PRICE, NormColumn.HOURS) else ""
    return f"Consider {norm.column} {times}{number(norm.value, 3)}."


def _off(ratio: Fraction) -> str:
    return f"{percent(abs(ratio - 1))} {'more' if ratio > 1 else 'less'}"


def _name(garage: Garage, grouping: Grouping, name: str) -> str:
    if grouping is Grouping.ROUTE:
        return name
    return f"{supplier_name(garage, name)} ({name})"
