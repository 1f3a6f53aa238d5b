"""How far settings may move before other parts are bought next."""

from collections.abc import Iterator
from fractions import Fraction

from partsplan.domain import End, Garage, Sensitivity, Setting, SteadyRange
from partsplan.reports.figures import count, listed, month_name, number, price
from partsplan.reports.page import Page
from partsplan.reports.tables import Column, figure, text
from partsplan.reports.words import option_name

NAMES = {
    Setting.MONEY_PER_POINT: "Worth of a point-month",
    Setting.SAFETY: "Weight of safety",
    Setting.DRIVABILITY: "Weight of drivability",
    Setting.ENJOYMENT: "Weight of enjoyment",
    Setting.RESERVE: "Reserve",
}
MONEY = (Setting.MONEY_PER_POINT, Setting.RESERVE)
DECIMALS = 4


def steady_tables(
    garage: Garage, found: Sensitivity, *, width: int = 100, colour: bool = False
) -> str:
    """The ranges of the settings, and what would be bought beyond them."""
    page = Page(width, colour)
    page.title(
        f"How steady the purchases of {month_name(garage.start)} are: {garage.name}"
    )
    names = listed(option_name(garage, one) for one in found.purchases)
    page.paragraph(f"To buy in {month_name(garage.start)}: {names or 'nothing'}.")
    page.gap()
    page.paragraph(" ".join(_how(found)))
    page.gap()
    page.table(
        "settings",
        [text("Setting"), figure("Now"), Column("Same purchases")],
        [
            (
                NAMES[one.setting],
                _value(garage, one.setting, one.now),
                _range(garage, one),
            )
            for one in found.ranges
        ],
    )
    if beyond := [line for one in found.ranges for line in _beyond(garage, one)]:
        page.heading("What would change them")
        page.bullets(beyond)
    return str(page)


def _how(found: Sensitivity) -> Iterator[str]:
    yield (
        "Each setting was moved alone, the others kept, farther and farther away until "
        "other parts would be bought; both sides of each end were planned "
        f"({count(found.plans, 'plan')}). Between two values that were tried and keep "
        "the purchases, others may hide."
    )
    if not found.proven:
        yield "Not every plan is proven best in the time."
    if found.interrupted:
        yield "The search was stopped: this is what was known by then."


def _range(garage: Garage, one: SteadyRange) -> str:
    low = _value(garage, one.setting, one.low.holds)
    high = _value(garage, one.setting, one.high.holds)
    if one.low.breaks is None or one.high.breaks is None:
        return f"at least from {low} to {high} tried"
    return f"from {low} to {high}"


def _beyond(garage: Garage, one: SteadyRange) -> Iterator[str]:
    for end in (one.low, one.high):
        if end.breaks is not None:
            value = _value(garage, one.setting, end.breaks)
            yield f"{NAMES[one.setting]} at {value}: {_instead(garage, end)}."


def _instead(garage: Garage, end: End) -> str:
    if not end.possible:
        return "no plan can hold it"
    adds = listed(option_name(garage, one) for one in end.adds)
    drops = listed(option_name(garage, one) for one in end.drops)
    if not drops:
        return f"{adds} besides"
    return f"{adds} instead of {drops}" if adds else f"not {drops}"


def _value(garage: Garage, setting: Setting, value: Fraction) -> str:
    if setting not in MONEY:
        return number(value, DECIMALS)
    currency = garage.currency
    if value == round(value):
        return price(currency, value)
    return f"{number(value / currency.unit, currency.digits + 2)} {currency.code}"
