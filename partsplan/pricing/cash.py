"""When an option's money goes out and comes back."""

from collections import defaultdict

from partsplan.domain import Flow, Garage, Option, Price, instalments


def flows(
    garage: Garage, option: Option, price: Price, ordered: int, fitted: int
) -> tuple[Flow, ...]:
    """Money by month within the horizon, in month order. [minor units]"""
    later = flows_after_order(garage, option, price, fitted - ordered)
    return from_order(later, ordered, garage.months)


def flows_after_order(
    garage: Garage, option: Option, price: Price, wait: int
) -> tuple[Flow, ...]:
    """Money by months after ordering, if fitted ``wait`` months after it.

    The deposit counts as coming back, whole, where its chance can be trusted.
    """
    out, back = defaultdict[int, int](int), defaultdict[int, int](int)
    for month, amount in instalments(option, price.landed):
        out[month] += amount
    if not option.bought:
        out[0] += price.deposit
    out[wait] += price.coding + price.consumables
    if option.core_deposit:
        credited = wait + option.core_months
        out[credited] += price.core_return
        if option.core_chance >= garage.core_trust:
            back[credited] += price.deposit
    return tuple(
        Flow(month=month, out=out[month], back=back[month])
        for month in sorted(out)
        if out[month] or back[month]
    )


def from_order(later: tuple[Flow, ...], ordered: int, months: int) -> tuple[Flow, ...]:
    """Flows after ordering as those of a horizon of so many months."""
    return tuple(
        Flow(month=ordered + flow.month, out=flow.out, back=flow.back)
        for flow in later
        if ordered + flow.month < months
    )
