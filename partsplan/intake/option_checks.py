"""What must hold within and between options, and what is odd about them."""

from collections.abc import Iterator

from partsplan.domain import Coding, Month, Route, Tax
from partsplan.errors import Problem
from partsplan.intake.columns import FAULTS, SUPPLIERS
from partsplan.intake.currency import currency
from partsplan.intake.draft import Draft
from partsplan.intake.option_columns import OPTIONS
from partsplan.sheets.quoting import shown

OLD_QUOTE = 6
"""[months before the start]"""


def one_vehicle(draft: Draft) -> Iterator[Problem]:
    """All faults of an option are on one vehicle."""
    vehicle = draft.values(FAULTS, "vehicle")
    for row, (cures,) in draft.having(OPTIONS, "fixes"):
        faults = [cure.fault for cure in cures]
        vehicles = dict.fromkeys(vehicle[one] for one in faults if one in vehicle)
        if len(vehicles) > 1:
            got = ", ".join(map(shown, vehicles))
            message = f"expected faults of one vehicle, got {got}"
            yield draft.at(OPTIONS, row, "fixes", message)


def price_range(draft: Draft) -> Iterator[Problem]:
    """The price lies between its low and its high."""
    columns = ("currency", "price")
    for row, (code, price, low) in draft.having(OPTIONS, *columns, "price_low"):
        if low > price:
            own = currency(code)
            message = (
                f"expected at most the price {own.format(price)}, got {own.format(low)}"
            )
            yield draft.at(OPTIONS, row, "price_low", message)
    for row, (code, price, high) in draft.having(OPTIONS, *columns, "price_high"):
        if high < price:
            own = currency(code)
            message = (
                f"expected at least the price {own.format(price)}, "
                f"got {own.format(high)}"
            )
            yield draft.at(OPTIONS, row, "price_high", message)


def stand_ins(draft: Draft) -> Iterator[Problem]:
    """A stand-in says how long it holds."""
    for row, (route,) in draft.having(OPTIONS, "route"):
        given = row.values.keys() | row.wrong
        if route is Route.STAND_IN and "followup_within" not in given:
            message = "expected the months that a stand-in holds, got a blank cell"
            yield draft.at(OPTIONS, row, "followup_within", message)


def fitting_window(draft: Draft) -> Iterator[Problem]:
    """The first fitting month is not after the last."""
    for row, (first, last) in draft.having(OPTIONS, "not_before", "not_after"):
        if first > last:
            message = f"expected a month from not_before {first} on, got {last}"
            yield draft.at(OPTIONS, row, "not_after", message)


def rates_known(draft: Draft) -> Iterator[Problem]:
    """Every currency has a rate; an option does not repeat what its supplier lacks."""
    if draft.file.unsure & {"currency", "rates"}:
        return
    rates, document = draft.settings.minor_rates, draft.file.document
    place = f"under {document.section('rates')} in {document.file}"
    of_supplier = draft.values(SUPPLIERS, "currency")
    for table in (SUPPLIERS, OPTIONS):
        for row, (code,) in draft.having(table, "currency"):
            inherited = of_supplier.get(row.values.get("supplier", ""))
            if code not in rates and code != inherited:
                yield draft.at(table, row, "currency", f"no rate for {code} {place}")


def idle_costs(draft: Draft) -> Iterator[Problem]:
    """Figures that another cell keeps from counting."""
    for row in draft.rows(OPTIONS):
        cells = row.values
        if cells.get("coding_cost") and cells.get("coding") is not Coding.PAID:
            yield draft.at(
                OPTIONS, row, "coding_cost", "not counted unless coding is paid"
            )
        if cells.get("core_return_cost") and not cells.get("core_deposit"):
            message = "not counted without a core_deposit"
            yield draft.at(OPTIONS, row, "core_return_cost", message)
        if "followup_within" in cells and cells.get("route") is not Route.STAND_IN:
            message = "not used unless the route is stand-in"
            yield draft.at(OPTIONS, row, "followup_within", message)


def tax_left_out(draft: Draft) -> Iterator[Problem]:
    """Tax is to be added, but at no rate."""
    for row, (tax,) in draft.having(SUPPLIERS, "tax"):
        if tax is Tax.ADDED and not draft.settings.tax_rate:
            message = f"added, but tax_rate in {draft.file.document.file} is 0"
            yield draft.at(SUPPLIERS, row, "tax", message)


def old_quotes(draft: Draft) -> Iterator[Problem]:
    """Prices that were asked long before the start."""
    for row, (day,) in draft.having(OPTIONS, "quoted_on"):
        if draft.settings.start.since(Month.parse(day[:7])) > OLD_QUOTE:
            message = f"{day} is over {OLD_QUOTE} months before the start; ask again"
            yield draft.at(OPTIONS, row, "quoted_on", message)
