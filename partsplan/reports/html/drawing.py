"""Charts become SVG that can stand inside a page."""

import json
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Any
from xml.etree import ElementTree

from partsplan.domain import Currency, Garage
from partsplan.reports.html.inks import RULE, SOFT, TEXT
from partsplan.reports.html.safe import safe
from partsplan.reports.locales import current

if TYPE_CHECKING:
    import altair as alt
    from vl_convert import FormatLocale

FONTS = "Liberation Sans, Arial, Helvetica, sans-serif"
"""Fonts that are equally wide; with others labels may be cut off."""
WIDTH = 300
"""Of a drawing without its edges, so that a phone shows it as large as it is. [px]"""
LABELS = 45
"""Room for the labels of an axis that goes up. [px]"""
TEXTS = 245
"""Longest text that begins at the left; a wider font than measured has room. [px]"""
LETTERS = 12
"""Size of letters. [px]"""
MOST_LABELS = 12
"""Months that have room for their numbers."""
CROWDED = 18
"""Months from which on dots are smaller."""
SVG = "http://www.w3.org/2000/svg"


def svg(
    layers: "Sequence[alt.Chart]", *, height: int, name: str, labelled: bool = True
) -> str:
    """The layers on top of each other; the same bytes on every run.

    ``name`` is that of the figure, whose title and summary describe the drawing;
    ``labelled`` says that an axis with labels goes up. [px]
    """
    import altair as alt
    import vl_convert

    chart = (
        alt.layer(*layers)
        .properties(width=WIDTH - LABELS * labelled, height=height)
        .configure(background="transparent", font=FONTS, padding=4, aria=False)
        .configure_view(stroke=None)
        .configure_axis(
            labelColor=SOFT.light,
            titleColor=SOFT.light,
            gridColor=RULE.light,
            domainColor=SOFT.light,
            tickColor=SOFT.light,
            labelFontSize=LETTERS,
            titleFontSize=LETTERS,
            titleFontWeight="normal",
        )
        .configure_text(fontSize=LETTERS, color=TEXT.light)
    )
    return _described(
        vl_convert.vegalite_to_svg(chart.to_dict(), format_locale=_numbers()), name
    )


def values(rows: Iterable[Mapping[str, Any]]) -> "alt.Chart":
    """A layer of rows to be marked; texts in it do no harm."""
    import altair as alt

    made_safe = [
        {key: safe(one) if isinstance(one, str) else one for key, one in row.items()}
        for row in rows
    ]
    return alt.Chart(alt.InlineData(values=made_safe))


def whole(currency: Currency, amount: int) -> float:
    """Minor units as a place on an axis of whole units."""
    return amount / currency.unit


def months_across(garage: Garage, field: str) -> "alt.X":
    """Months from left to right; the first one lies between 0 and 1."""
    import altair as alt

    labels = _month_labels(garage)
    return alt.X(
        f"{field}:Q",
        scale=alt.Scale(domain=[0, garage.months], nice=False),
        axis=alt.Axis(
            title="month",
            values=[float(place) for place in labels],
            labelExpr=f"({json.dumps(labels)})[datum.value]",
            ticks=False,
            grid=False,
        ),
    )


def dot(garage: Garage) -> int:
    """Size of a dot above each month. [px^2]"""
    return 50 if garage.months < CROWDED else 20


def down(field: str, height: int) -> "alt.Y":
    """Places from the top. [px]"""
    import altair as alt

    scale = alt.Scale(domain=[0, height], nice=False, reverse=True)
    return alt.Y(f"{field}:Q", scale=scale, axis=None)


def _numbers() -> "FormatLocale":
    """How numbers on axes are written."""
    locale = current()
    return {
        "decimal": locale.decimal,
        "thousands": locale.group,
        "grouping": [3],
        "currency": ["", ""],
    }


def _month_labels(garage: Garage) -> dict[str, list[str]]:
    """At most twelve months by their places, with the year where that is new.

    The first one has none if the next is a January.
    Every second or third month of more is one that begins with January.
    """
    step = -(-garage.months // MOST_LABELS)
    shown = [
        (place, month)
        for place in range(garage.months)
        if ((month := garage.month(place)).month - 1) % step == 0
    ]
    # two years side by side would touch
    late = len(shown) > 1 and shown[1][1].month == 1
    first = shown[late][0] if shown else 0
    return {
        str(place + 0.5): [
            f"{month.month:02d}",
            str(month.year) if place == first or month.month == 1 else "",
        ]
        for place, month in shown
    }


def _described(drawn: str, name: str) -> str:
    """One picture for whoever cannot see it, as large as there is room for."""
    ElementTree.register_namespace("", SVG)
    root = ElementTree.fromstring(drawn)
    for element in root.iter():
        for attribute in ("class", "role", "pointer-events", *element.attrib):
            if attribute in ("class", "role", "pointer-events") or attribute.startswith(
                "aria-"
            ):
                element.attrib.pop(attribute, None)
    for size in ("width", "height"):
        del root.attrib[size]
    root.set("role", "img")
    root.set("aria-labelledby", f"{name}-title")
    root.set("aria-describedby", f"{name}-summary")
    return ElementTree.tostring(root, encoding="unicode")
