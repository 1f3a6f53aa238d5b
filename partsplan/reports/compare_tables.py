"""The options of one fault side by side, and where the choice would turn."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from partsplan.domain import (
    Candidate,
    Coding,
    Comparison,
    Garage,
)
from partsplan.reports.assumptions import filled
from partsplan.reports.break_evens import (
    break_even_sentence,
    quoted_in,
)
from partsplan.reports.csv_tables import keep
from partsplan.reports.figures import money, month_name, number, percent, price
from partsplan.reports.names import fault_name, supplier_name
from partsplan.reports.page import Page
from partsplan.reports.tables import Column, text
from partsplan.reports.words import sentence

LABELS = 24  # room for the names of the lines
OPTION = 16  # room an option needs


@dataclass(frozen=True, slots=True)
class _Line:
    """What is told of each option; ``sums`` are in the garage's currency."""

    label: str
    cell: Callable[[Garage, Candidate], str]
    sums: bool = False


def compare_tables(
    garage: Garage, comparison: Comparison, *, width: int = 100, colour: bool = False
) -> str:
    """Every option of one fault side by side, as text."""
    page = Page(width, colour)
    fault = garage.fault[comparison.fault]
    vehicle = garage.vehicle[fault.vehicle].name
    page.title(f"Options for {fault_name(fault)}, {vehicle}")
    if not comparison.candidates:
        page.paragraph("Nobody has quoted for it yet: ask for a quote.")
        return str(page)
    page.paragraph(f"Cheapest month of service first; sums in {garage.currency.code}.")
    abreast = max(1, (width - LABELS) // OPTION)
    for first in range(0, len(comparison.candidates), abreast):
        page.gap()
        _side_by_side(page, garage, comparison.candidates[first : first + abreast])
    _notes(page, garage, comparison.candidates)
    if comparison.break_evens:
        page.heading("Where the choice would turn")
        page.bullets(
            break_even_sentence(garage, comparison, one)
            for one in comparison.break_evens
        )
    return str(page)


def _side_by_side(page: Page, garage: Garage, candidates: Sequence[Candidate]) -> None:
    """A column for each option; in a file of its own a row for each."""
    rows = [
        (line.label, *(line.cell(garage, one) for one in candidates)) for line in _LINES
    ]
    columns = [Column(""), *(text(one.option.id) for one in candidates)]
    page.drawn(columns, [row for row in rows if any(row[1:])])
    unit = garage.currency.code
    keep(
        "options",
        [
            text("Option"),
            *(Column(one.label, unit=unit if one.sums else "") for one in _LINES),
        ],
        [
            [one.option.id, *(line.cell(garage, one) for line in _LINES)]
            for one in candidates
        ],
    )


def _money(label: str, sum_of: Callable[[Candidate], float | None]) -> _Line:
    def cell(garage: Garage, one: Candidate) -> str:
        amount = sum_of(one)
        return "" if amount is None else money(garage.currency, amount)

    return _Line(label, cell, sums=True)


def _coding(garage: Garage, one: Candidate) -> str:
    if one.option.coding is Coding.PAID:
        return f"paid, {money(garage.currency, one.price.coding)}"
    return "" if one.option.coding is Coding.NONE else "by yourself"


def _core_chance(garage: Garage, one: Candidate) -> str:
    if not one.price.deposit:
        return ""
    counted = one.option.core_chance >= garage.core_trust
    return percent(one.option.core_chance) + ("" if counted else ", not counted on")


def _price_range(garage: Garage, one: Candidate) -> str:
    option = one.option
    if option.price_low is None and option.price_high is None:
        return ""
    currency = quoted_in(garage, option)
    low, high = (
        option.price if bound is None else bound
        for bound in (option.price_low, option.price_high)
    )
    return f"{money(currency, low)} to {price(currency, high)}"


def _unless(usual: int, value: Fraction) -> str:
    return "" if value == usual else number(value)


def _relief(garage: Garage, one: Candidate) -> str:
    """What part of its faults' trouble it takes away, where that is not all."""
    partly = [
        percent(cure.relief) + ("" if cure.cures else ", no cure")
        for cure in one.option.fixes
        if cure.relief != 1
    ]
    return "; ".join(partly)


def _service(garage: Garage, one: Candidate) -> str:
    return "" if one.service is None else str(one.service)


def _earliest(garage: Garage, one: Candidate) -> str:
    return "barred" if one.fitted is None else month_name(garage.month(one.fitted))


_LINES = (
    _Line("Route", lambda garage, one: one.option.route.value),
    _Line("Supplier", lambda garage, one: supplier_name(garage, one.option.supplier)),
    _Line("Takes away", _relief),
    _Line("Pieces", lambda garage, one: _unless(1, one.option.quantity)),
    _money("Landed price", lambda one: one.price.landed),
    _money("Core deposit", lambda one: one.price.deposit or None),
    _money("Cash now", lambda one: one.cash_now),
    _money("Cash back", lambda one: one.cash_back or None),
    _money("Expected cost", lambda one: one.price.expected),
    _Line("Months of service", _service),
    _money("Cost a month of service", lambda one: one.per_month),
    _Line("Own hours", lambda garage, one: number(one.option.hours)),
    _Line("Coding", _coding),
    _Line("Chance of a bad part", lambda garage, one: percent(one.option.dud_chance)),
    _Line("Old unit accepted", _core_chance),
    _Line("Price range, a piece", _price_range),
    _Line("Days to deliver", lambda garage, one: str(one.option.lead_days)),
    _Line("Earliest fitting", _earliest),
    _Line("Licensed work", lambda garage, one: "yes" if one.flagged else ""),
    _Line(
        "Assumed", lambda garage, one: ", ".join(part.column for part in one.assumed)
    ),
)


def _notes(page: Page, garage: Garage, candidates: Sequence[Candidate]) -> None:
    barred = [bar for one in candidates for bar in one.bars]
    if barred:
        page.heading("Barred, and why")
        page.bullets(sentence(garage, bar) for bar in barred)
    assumed = [part for one in candidates for part in one.assumed]
    if assumed:
        page.heading("Assumed")
        page.bullets(filled(assumed))
