"""A chart as it stands on the page."""

from dataclasses import dataclass

from partsplan.reports.html.leaf import Table


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A drawing, what it shows in words, and its figures.

    Attributes
    ----------
    name
        Tells it from the others; of a-z and hyphens.
    summary
        What is to be seen, for whoever does not see it.
    key
        What each mark means: the mark's name in the template, and words.
    svg
        The drawing; empty where there is nothing to draw.
    table
        The same figures, and those of what did not fit.
    """

    name: str
    title: str
    summary: str
    key: tuple[tuple[str, str], ...]
    svg: str
    table: Table
