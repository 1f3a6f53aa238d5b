"""The rules of a plan and its four figures, in slow and plain code."""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from partsplan.domain import Fault, FaultStatus, Garage, Stages
from tests.support.reference_prices import (
    CURED,
    FaultMonth,
    Priced,
    do_not_drive,
    in_garage_money,
    relief_before,
)

Need = frozenset[FaultMonth]
"""Faults that must count as cured in a month; unmet if one of them does not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Demands:
    """What each stage but the worth counts when it is unmet."""

    deadlines: tuple[Need, ...]
    safety: tuple[Need, ...]
    mobility: tuple[Need, ...]


def demanded(garage: Garage) -> Demands:
    """One need for each deadline, milestone and driven vehicle-month."""
    asked = [([fault.id], fault.fix_by) for fault in garage.faults if fault.fix_by]
    asked += [(list(one.faults), one.month) for one in garage.milestones]
    return Demands(
        deadlines=tuple(
            _need(garage, faults, max(0, garage.index(month)))
            for faults, month in asked
            if garage.index(month) < garage.months
        ),
        safety=_driving_needs(garage, do_not_drive),
        mobility=_driving_needs(garage, lambda fault: fault.drivability == 4),
    )


def figures(demands: Demands, garage: Garage, chosen: Sequence[Priced]) -> Stages:
    """The four figures of a choice of offers, tools bought for them included."""
    cured: set[FaultMonth] = set()
    gains: dict[FaultMonth, int] = {}
    for offer in chosen:
        cured |= offer.cured
        for key, gain in offer.gains.items():
            gains[key] = max(gain, gains.get(key, 0))  # reliefs never add up
    costs = sum(offer.charge for offer in chosen)
    costs += sum(shipping for _, shipping in supplier_orders(garage, chosen).values())
    costs += sum(garage.tool[tool].price for tool in tools_needed(garage, chosen))
    return Stages(
        missed_deadlines=sum(not need <= cured for need in demands.deadlines),
        unsafe_vehicle_months=sum(not need <= cured for need in demands.safety),
        undrivable_vehicle_months=sum(not need <= cured for need in demands.mobility),
        net_worth=sum(gains.values()) - costs,
    )


def supplier_orders(
    garage: Garage, chosen: Sequence[Priced]
) -> dict[tuple[str, int], tuple[int, int]]:
    """Goods and shipping of each supplier and month. [minor units]"""
    goods: Counter[tuple[str, int]] = Counter()
    for offer in chosen:
        if offer.option.supplier:
            goods[offer.option.supplier, offer.ordered] += offer.goods
    orders = {}
    for (name, month), value in goods.items():
        supplier = garage.supplier[name]
        shipping = in_garage_money(garage, supplier.shipping, supplier.currency)
        if supplier.free_over is not None:
            free = in_garage_money(garage, supplier.free_over, supplier.currency)
            shipping = 0 if value >= free else shipping
        orders[name, month] = (value, shipping)
    return orders


def tools_needed(garage: Garage, chosen: Sequence[Priced]) -> dict[str, int]:
    """Tools that are not owned yet, and the first fitting month that needs each."""
    first: dict[str, int] = {}
    for offer in chosen:
        for tool in offer.option.tools:
            if not garage.tool[tool].owned:
                first[tool] = min(offer.fitted, first.get(tool, offer.fitted))
    return first


def cash(
    garage: Garage, chosen: Sequence[Priced], tools: Mapping[str, int]
) -> tuple[list[int], list[int], list[int]]:
    """Money out, money back and the balance, by month. [minor units]"""
    out, back = promised(garage)
    for month in range(garage.months):
        out[month] += sum(offer.out[month] for offer in chosen)
        back[month] += sum(offer.back[month] for offer in chosen)
    for (_, month), (_, shipping) in supplier_orders(garage, chosen).items():
        out[month] += shipping
    for tool, month in tools.items():
        out[month] += garage.tool[tool].price
    return out, back, balances(garage, out, back)


def promised(garage: Garage) -> tuple[list[int], list[int]]:
    """Money out and back by month whatever is chosen. [minor units]"""
    out, back = [0] * garage.months, [0] * garage.months
    for flow in garage.promised:
        if flow.month < garage.months:
            out[flow.month] += flow.out
            back[flow.month] += flow.back
    return out, back


def balances(garage: Garage, out: Sequence[int], back: Sequence[int]) -> list[int]:
    """What is left at each month's end. [minor units]"""
    found = []
    before = garage.opening_cash
    for month, budget in enumerate(garage.monthly_budget):
        balance = before + budget - out[month] + back[month]
        found.append(balance)
        before = balance if garage.carry_over else 0
    return found


def own_hours(garage: Garage, chosen: Sequence[Priced], month: int) -> Fraction:
    """Own hours in a month, each access group once. [h]"""
    fitted = [offer.option for offer in chosen if offer.fitted == month]
    groups = {group for option in fitted for group in option.access}
    jobs = sum((option.hours for option in fitted), Fraction(0))
    return jobs + sum(garage.access_group[group].hours for group in groups)


def too_many_alone(chosen: Sequence[Priced]) -> Iterator[str]:
    """Faults with two lasting options that fix nothing else."""
    alone = Counter(o.option.alone for o in chosen if o.option.lasting)
    for fault, count in alone.items():
        if fault is not None and count > 1:
            yield f"{fault}: {count} lasting options for it alone"


def broken_links(garage: Garage, chosen: Sequence[Priced]) -> Iterator[str]:
    """Links between jobs that a choice of offers breaks."""
    yield from _broken_afters(garage, chosen)
    yield from _broken_pairs(garage, chosen)
    yield from _broken_followups(garage, chosen)


def _need(garage: Garage, faults: Sequence[str], month: int) -> Need:
    """Without the faults that are cured already, or gone with their vehicle."""
    return frozenset(
        (name, month)
        for name in faults
        if garage.fault[name].status is not FaultStatus.FIXED
        and relief_before(garage, garage.fault[name], month) < CURED
        and month < garage.vehicle[garage.fault[name].vehicle].keep_months
    )


def _driving_needs(
    garage: Garage, matters: Callable[[Fault], bool]
) -> tuple[Need, ...]:
    return tuple(
        _need(
            garage,
            [f.id for f in garage.faults if f.vehicle == vehicle.id and matters(f)],
            month,
        )
        for vehicle in garage.vehicles
        for month in range(garage.months)
        if garage.driven(vehicle, month)
    )


def _broken_afters(garage: Garage, chosen: Sequence[Priced]) -> Iterator[str]:
    cured = {key for offer in chosen for key in offer.cured}
    for offer in chosen:
        for cure in offer.option.fixes:
            for name in garage.fault[cure.fault].after:
                if not _was_cured(garage.fault[name]) and not any(
                    (name, month) in cured for month in range(offer.fitted + 1)
                ):
                    yield f"{offer.option.id}: {name} is not cured before it"


def _was_cured(fault: Fault) -> bool:
    """Whether it is fixed, or something fitted before the plan cured it."""
    if fault.status is not FaultStatus.OPEN:
        return fault.status is FaultStatus.FIXED
    return any(one.relief >= CURED for one in fault.fitted)


def _broken_pairs(garage: Garage, chosen: Sequence[Priced]) -> Iterator[str]:
    pairs = {
        frozenset((fault.id, other))
        for fault in garage.faults
        for other in fault.pair_with
    }
    for one, other in sorted(sorted(pair) for pair in pairs):
        if any(
            garage.fault[name].status is not FaultStatus.OPEN for name in (one, other)
        ):
            continue
        routes = [
            {option.route for option in garage.options_for[name] if option.lasting}
            for name in (one, other)
        ]
        fitted = [
            [o for o in chosen if o.option.lasting and name in _faults(o)]
            for name in (one, other)
        ]
        for month in range(garage.months):
            counts = [sum(o.fitted == month for o in offers) for offers in fitted]
            if counts[0] != counts[1]:
                yield f"{one} and {other}: not fitted alike in month {month}"
            for route in sorted(routes[0] & routes[1]):
                counts = [
                    sum(o.fitted == month and o.option.route is route for o in offers)
                    for offers in fitted
                ]
                if counts[0] != counts[1]:
                    yield f"{one} and {other}: not alike by {route} in month {month}"


def _broken_followups(garage: Garage, chosen: Sequence[Priced]) -> Iterator[str]:
    for offer in chosen:
        within = offer.option.followup_within
        if offer.option.lasting or within is None:
            continue
        last = offer.fitted + within
        for name in _faults(offer):
            followed = any(
                o.option.lasting
                and name in _faults(o)
                and offer.fitted < o.fitted <= last
                for o in chosen
            )
            if last < garage.months and not followed:
                yield f"{offer.option.id}: {name} has no lasting job by month {last}"


def _faults(offer: Priced) -> list[str]:
    return [cure.fault for cure in offer.option.fixes]
