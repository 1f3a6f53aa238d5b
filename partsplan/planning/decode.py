"""From the columns at 1 to choices, and from choices to all their figures."""

from collections import defaultdict
from collections.abc import Iterable
from fractions import Fraction

from partsplan.domain import (
    Choices,
    Garage,
    Job,
    LedgerLine,
    Month,
    Offer,
    Order,
    Stage,
    Stages,
    ToolBuy,
)
from partsplan.domain.numbers import CURED
from partsplan.planning.benefits import Benefits
from partsplan.planning.demands import Demand
from partsplan.planning.model import Model


def decode(model: Model, ones: Iterable[int]) -> tuple[tuple[Offer, ...], Choices]:
    """The chosen offers and choices; tools that no job needs are not bought.

    Where money moves on, a tool is bought no earlier than it is needed: that never
    costs another month anything.
    """
    at_one = set(ones)
    chosen = tuple(
        offer
        for column, offer in zip(model.take, model.offers, strict=True)
        if column in at_one
    )
    first_use: dict[str, int] = {}
    for offer in chosen:
        for tool in offer.option.tools:
            first_use[tool] = min(offer.fitted, first_use.get(tool, offer.fitted))
    bought = {
        tool: first_use[tool] if model.garage.carry_over else month
        for (tool, month), column in model.buy.items()
        if column in at_one and tool in first_use
    }
    orders = {offer.option.id: offer.ordered for offer in chosen}
    return chosen, Choices(orders=orders, tools=bought)


def encode(model: Model, choices: Choices) -> tuple[int, ...]:
    """The columns at 1 of choices, as far as the model knows them."""
    garage = model.garage
    taken = [
        (column, offer)
        for column, offer in zip(model.take, model.offers, strict=True)
        if choices.orders.get(offer.option.id) == offer.ordered
    ]
    chosen = tuple(offer for _, offer in taken)
    columns = [column for column, _ in taken]
    for offer in chosen:
        for group in set(offer.option.access):
            columns.append(model.opened.get((group, offer.fitted), -1))
    for order in orders(garage, chosen):
        key = order.supplier, order.month
        paid = model.ship.get(key, -1)
        columns.append(paid if order.shipping else model.free.get(key, -1))
    columns += [model.buy.get(bought, -1) for bought in choices.tools.items()]
    return tuple(sorted({column for column in columns if column >= 0}))


def jobs(start: Month, chosen: tuple[Offer, ...]) -> tuple[Job, ...]:
    """A job for each chosen offer, by ordering month."""
    return tuple(
        Job(
            option=offer.option.id,
            faults=tuple(cure.fault for cure in offer.option.fixes),
            route=offer.option.route,
            supplier=_supplier(offer),
            ordered=_ordered(start, offer),
            fitted=offer.fitted,
            landed=offer.price.landed,
            deposit=offer.price.deposit,
            charge=offer.charge,
            hours=offer.option.hours,
            bought=offer.option.bought is not None,
        )
        for offer in sorted(chosen, key=lambda one: (_ordered(start, one), one.fitted))
    )


def _ordered(start: Month, offer: Offer) -> int:
    """The month in which the part is ordered, or was."""
    bought = offer.option.bought
    return bought.month.since(start) if bought else offer.ordered


def _supplier(offer: Offer) -> str | None:
    bought = offer.option.bought
    return bought.supplier if bought else offer.option.supplier


def tool_buys(garage: Garage, choices: Choices) -> tuple[ToolBuy, ...]:
    """The tools that are bought, by month."""
    return tuple(
        ToolBuy(tool=tool, month=month, price=garage.tool[tool].price)
        for tool, month in sorted(choices.tools.items(), key=lambda one: one[::-1])
    )


def orders(garage: Garage, chosen: tuple[Offer, ...]) -> tuple[Order, ...]:
    """What is ordered together, by month and supplier, with its shipping."""
    goods: dict[tuple[int, str], int] = defaultdict(int)
    for offer in chosen:
        if offer.option.supplier is not None:
            goods[offer.ordered, offer.option.supplier] += offer.price.goods
    found = []
    for (month, name), worth in sorted(goods.items()):
        supplier = garage.supplier[name]
        rate = garage.rate(supplier.currency)
        limit = supplier.free_over
        free = limit is not None and worth >= round(limit * rate)
        shipping = 0 if free else round(supplier.shipping * rate)
        found.append(Order(supplier=name, month=month, goods=worth, shipping=shipping))
    return tuple(found)


def ledger_of(model: Model, ones: Iterable[int]) -> tuple[LedgerLine, ...]:
    """Money and own hours of every month for the columns at 1."""
    chosen, choices = decode(model, ones)
    garage = model.garage
    return ledger(garage, chosen, orders(garage, chosen), tool_buys(garage, choices))


def ledger(
    garage: Garage,
    chosen: tuple[Offer, ...],
    ordered: tuple[Order, ...],
    bought: tuple[ToolBuy, ...],
) -> tuple[LedgerLine, ...]:
    """Money and own hours of every month."""
    out, back = [0] * garage.months, [0] * garage.months
    for flow in garage.promised_within:
        out[flow.month] += flow.out
        back[flow.month] += flow.back
    hours = [Fraction(0)] * garage.months
    opened: set[tuple[str, int]] = set()
    for offer in chosen:
        for flow in offer.flows:
            out[flow.month] += flow.out
            back[flow.month] += flow.back
        hours[offer.fitted] += offer.option.hours
        opened |= {(group, offer.fitted) for group in offer.option.access}
    for group, month in opened:
        hours[month] += garage.access_group[group].hours
    for order in ordered:
        out[order.month] += order.shipping
    for tool in bought:
        out[tool.month] += tool.price
    lines, carried = [], garage.opening_cash
    for month, budget in enumerate(garage.monthly_budget):
        before = carried if garage.carry_over or month == 0 else 0
        carried = before + budget - out[month] + back[month]
        lines.append(
            LedgerLine(
                month=month,
                budget=budget,
                out=out[month],
                back=back[month],
                balance=carried,
                hours=hours[month],
            )
        )
    return tuple(lines)


def stages(
    garage: Garage,
    chosen: tuple[Offer, ...],
    choices: Choices,
    demands: tuple[Demand, ...],
) -> Stages:
    """The figures that the stages optimise."""
    benefits = Benefits(garage)
    cured: dict[str, list[Offer]] = defaultdict(list)
    best: dict[tuple[str, int], int] = defaultdict(int)
    for offer in chosen:
        for fault in offer.faults:
            months = benefits.of(offer, fault)
            for month, benefit in enumerate(months, start=offer.fitted):
                best[fault, month] = max(best[fault, month], benefit)
            if offer.option.relief(fault) >= CURED:
                cured[fault].append(offer)
    unmet = dict.fromkeys(Stage, 0)
    for demand in demands:
        unmet[demand.stage] += not all(
            any(one.fitted <= demand.month < one.until for one in cured[fault])
            for fault in demand.faults
        )
    costs = sum(offer.charge for offer in chosen)
    costs += sum(order.shipping for order in orders(garage, chosen))
    costs += sum(garage.tool[tool].price for tool in choices.tools)
    return Stages(
        missed_deadlines=unmet[Stage.DEADLINES],
        unsafe_vehicle_months=unmet[Stage.SAFETY],
        undrivable_vehicle_months=unmet[Stage.MOBILITY],
        net_worth=sum(best.values()) - costs,
    )
