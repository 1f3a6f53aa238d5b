"""Better estimates, offered where enough cases stand behind them."""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil, floor

from partsplan.domain import (
    Delays,
    Duds,
    Grouping,
    Lesson,
    Norm,
    NormColumn,
    Ratio,
)

FEWEST = 3
"""Nothing is offered from fewer cases; ours, no source."""
PRICE_OFF = Fraction(1, 100)
"""Prices nearer to their quotes are as quoted; ours."""
HOURS_OFF = Fraction(1, 10)
"""Hours nearer to their estimates are as estimated; ours."""
_THOUSAND = 1000


def norms(lesson: Lesson) -> Iterator[Norm]:
    """What the cases of a supplier or a route say against its estimates.

    Own hours depend on who works, not on who sells, so they are offered by route only.
    """
    if lesson.delays and lesson.delays.cases >= FEWEST:
        yield from _lead_days(lesson, lesson.delays)
    if lesson.duds and lesson.duds.cases >= FEWEST:
        yield from _dud_chance(lesson, lesson.duds)
    if lesson.prices and lesson.prices.cases >= FEWEST:
        yield from _factor(lesson, NormColumn.PRICE, lesson.prices, PRICE_OFF)
    by_route = lesson.grouping is Grouping.ROUTE
    if by_route and lesson.hours and lesson.hours.cases >= FEWEST:
        yield from _factor(lesson, NormColumn.HOURS, lesson.hours, HOURS_OFF)


def _lead_days(lesson: Lesson, delays: Delays) -> Iterator[Norm]:
    """The mean delay in whole days on top of what was said."""
    more = round(delays.mean)
    if more:
        yield Norm(
            grouping=lesson.grouping,
            name=lesson.name,
            column=NormColumn.LEAD_DAYS,
            said=delays.said,
            found=delays.said + delays.mean,
            value=delays.said + more if delays.same else None,
            more=more,
            cases=delays.cases,
        )


def _dud_chance(lesson: Lesson, duds: Duds) -> Iterator[Norm]:
    """The nearest chance that the cases do not speak against, if that said is not."""
    value = duds.said
    if duds.said < duds.low:
        value = Fraction(floor(duds.low * _THOUSAND), _THOUSAND)
    elif duds.said > duds.high:
        value = Fraction(ceil(duds.high * _THOUSAND), _THOUSAND)
    moved = (value - duds.said) * (duds.share - duds.said)
    if moved > 0:  # not where rounding leads back or past it
        yield Norm(
            grouping=lesson.grouping,
            name=lesson.name,
            column=NormColumn.DUD_CHANCE,
            said=duds.said,
            found=duds.share,
            value=value,
            more=0,
            cases=duds.cases,
        )


def _factor(
    lesson: Lesson, column: NormColumn, ratio: Ratio, off: Fraction
) -> Iterator[Norm]:
    """The mean ratio, to the hundredth."""
    if abs(ratio.mean - 1) >= off:
        yield Norm(
            grouping=lesson.grouping,
            name=lesson.name,
            column=column,
            said=Fraction(1),
            found=ratio.mean,
            value=Fraction(round(ratio.mean * 100), 100),
            more=0,
            cases=ratio.cases,
        )
