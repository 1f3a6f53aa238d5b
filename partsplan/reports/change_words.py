"""What is changed, or said differently, as words."""

from collections.abc import Mapping
from enum import Enum
from fractions import Fraction
from typing import Any

from partsplan.catalogue import currencies
from partsplan.domain import (
    LONG_AGO,
    AvoidOption,
    Change,
    ChangeBudget,
    ChangeHours,
    ChangeMonths,
    ChangePrice,
    ChangeReserve,
    Cure,
    Currency,
    Fitted,
    Flow,
    Garage,
    GiveUpVehicle,
    Input,
    Instalment,
    LeaveFault,
    Month,
    Option,
    ParkVehicle,
    Purchase,
    RefuseRoute,
    Supplier,
    TakeFault,
    UseOption,
    Weights,
)
from partsplan.reports.break_evens import quoted_in
from partsplan.reports.figures import count, money, month_name, number, percent, price
from partsplan.reports.names import fault_name

ROWS = {
    "vehicles": "vehicle",
    "faults": "fault",
    "options": "option",
    "suppliers": "supplier",
    "access": "access group",
    "tools": "tool",
    "milestones": "milestone",
}
MONEY = frozenset(
    {"budget", "reserve", "opening_cash", "hour_value", "price", "shipping"}
    | {"core_deposit", "core_return_cost", "coding_cost", "consumables", "free_over"}
    | {"loss_per_month", "damage_cost"}
)
"""Settings and columns that hold money."""
CALLED = {
    "grown": "months for which points have grown",
    "promised": "promised for what was bought before",
    "fitted": "what was fitted before",
    "bought": "what is bought",
}
"""Columns that nobody writes: they come from the logbook."""
IN_OWN_CURRENCY = frozenset({"price", "core_deposit", "shipping", "free_over"})
"""Those that are in the currency of their option or supplier."""


def change_words(garage: Garage, change: Change) -> str:
    """A change against the garage as it is, as the end of "What if ...?"."""
    currency = garage.currency
    match change:
        case ChangeBudget(amount=amount, month=month):
            now = _span(garage, garage.budget, month, currency)
            each = "a month" if month is None else f"in {month_name(month)}"
            return f"{price(currency, amount)} {each} instead of {now}"
        case ChangeHours(hours=hours, month=month):
            now = _span(garage, garage.hours, month, None)
            each = "a month" if month is None else f"in {month_name(month)}"
            return f"{number(hours)} own hours {each} instead of {now}"
        case ChangePrice(option=name, price=amount):
            option = garage.option[name]
            own = quoted_in(garage, option)
            return (
                f"{option_name(garage, name)} at {price(own, amount)} a piece instead "
                f"of {money(own, option.price)}"
            )
        case ChangeReserve(reserve=amount):
            now = money(currency, garage.reserve)
            return f"a reserve of {price(currency, amount)} instead of {now}"
        case ChangeMonths(months=months):
            return f"a plan of {count(months, 'month')} instead of {garage.months}"
        case ParkVehicle(vehicle=name, until=until):
            long = f"until {month_name(until)}" if until else "for good"
            return f"{garage.vehicle[name].name} is parked {long}"
        case GiveUpVehicle(vehicle=name, month=month):
            return f"{garage.vehicle[name].name} is given up in {month_name(month)}"
    return _forced_words(garage, change)


def input_words(garage: Garage, one: Input) -> str:
    """What two garages say differently; sums are in the garage's currency."""
    if not one.column:
        there = "only the first has" if one.after is None else "only the second has"
        return f"{there} the {ROWS[one.table]} {one.row}"
    what = CALLED.get(one.column) or one.column.replace("_", " ")
    if one.row:
        what += f" of the {ROWS[one.table]} {one.row}"
    before, after = (_value(garage, one, value) for value in (one.before, one.after))
    return f"{what}: {before} in the first, {after} in the second"


def option_name(garage: Garage, name: str) -> str:
    """An option with its route."""
    return f"{name} ({garage.option[name].route.value})"


def _forced_words(garage: Garage, change: Change) -> str:
    match change:
        case TakeFault(fault=fault):
            return f"{fault_name(garage.fault[fault])} is taken on"
        case LeaveFault(fault=fault):
            return f"{fault_name(garage.fault[fault])} is left alone"
        case UseOption(option=option):
            return f"{option_name(garage, option)} is used"
        case AvoidOption(option=option):
            return f"{option_name(garage, option)} is not used"
        case RefuseRoute(route=route, vehicle=None):
            return f'nothing comes by the route "{route.value}"'
        case RefuseRoute(route=route, vehicle=str() as vehicle):
            name = garage.vehicle[vehicle].name
            return f'nothing for {name} comes by the route "{route.value}"'
    raise TypeError(f"no words for {type(change).__name__}")


def _span(
    garage: Garage,
    values: tuple[int, ...] | tuple[Fraction, ...],
    month: Month | None,
    currency: Currency | None,
) -> str:
    """The value of one month, or the least and the most of all; the last repeats."""

    def shown(value: int | Fraction) -> str:
        return number(value) if currency is None else money(currency, value)

    if month is not None:
        return shown(values[min(garage.index(month), len(values) - 1)])
    low, high = min(values[: garage.months]), max(values[: garage.months])
    return shown(low) if low == high else f"{shown(low)} to {shown(high)}"


def _value(garage: Garage, one: Input, value: Any) -> str:
    """A value as people write it."""
    if one.column == "driven_from" and value is None:
        return "no"
    if value is None or value in ((), {}, ""):
        return "none"
    if isinstance(value, tuple) and not isinstance(value, Month):
        return ", ".join(_value(garage, one, part) for part in value)
    if one.column in MONEY and isinstance(value, int):
        return money(_currency(garage, one), value)
    if isinstance(value, Flow):
        return _flow(garage, value)
    return _plain(value)


def _flow(garage: Garage, flow: Flow) -> str:
    """Money of a month, which counts from the start of the garage that has it."""
    sums = [(flow.out, "to pay"), (flow.back, "back")]
    parts = [f"{money(garage.currency, sum_)} {what}" for sum_, what in sums if sum_]
    return f"{' and '.join(parts) or 'nothing'} in month {flow.month + 1}"


def _plain(value: Any) -> str:
    match value:
        case bool():
            return "yes" if value else "no"
        case Month():
            return "the start" if value == LONG_AGO else month_name(value)
        case Enum():
            return str(value.value)
        case int() | Fraction():
            return number(value, 4)
        case Cure(fault=fault, relief=relief):
            return fault if relief == 1 else f"{fault} ({percent(relief)})"
        case Instalment(months=months, share=share):
            return f"{percent(share)} after {count(months, 'month')}"
        case Fitted(option=option, relief=relief, until=until):
            partly = "" if relief == 1 else f" ({percent(relief)})"
            return f"{option}{partly} until {month_name(until.plus(-1))}"
        case Purchase(month=month, supplier=supplier):
            return f"in {month_name(month)}" + (f" from {supplier}" if supplier else "")
        case Weights(safety=safety, drivability=driving, enjoyment=enjoyment):
            parts = (number(one) for one in (safety, driving, enjoyment))
            return " / ".join(parts)
        case Mapping():
            return ", ".join(
                f"{code} {number(rate, 6)}" for code, rate in value.items()
            )
    return str(value)


def _currency(garage: Garage, one: Input) -> Currency:
    """The currency of a sum: what is quoted stays as it was quoted."""
    if one.column not in IN_OWN_CURRENCY:
        return garage.currency
    row: Option | Supplier = (
        garage.option[one.row] if one.table == "options" else garage.supplier[one.row]
    )
    return Currency(row.currency, currencies()[row.currency])
