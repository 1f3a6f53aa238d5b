"""Why each open fault that no job touches is left alone."""

from collections import defaultdict

from partsplan.domain import (
    CrowdedOut,
    DearerThanAllMoney,
    FaultStatus,
    Garage,
    LongerThanAllHours,
    NoOption,
    Offer,
    Plan,
    Reason,
    Skip,
    WorthLessThanCost,
)
from partsplan.planning import reach
from partsplan.planning.benefits import Benefits
from partsplan.planning.demands import demands
from partsplan.pricing import bars, offers


def skips(garage: Garage, plan: Plan) -> tuple[Skip, ...]:
    """A reason for every open fault without a job, once each, in file order.

    What rules its options out alone comes first; the rest is crowded out.
    """
    touched = {fault for job in plan.jobs for fault in job.faults}
    every = offers(garage)
    by_fault: dict[str, list[Offer]] = defaultdict(list)
    for offer in every:
        for fault in offer.faults:
            by_fault[fault].append(offer)
    in_reach = {id(offer) for offer in reach.reachable(garage, every)}
    asked = {fault for demand in demands(garage) for fault in demand.faults}
    return tuple(
        _skip(
            garage,
            fault.id,
            by_fault[fault.id],
            [one for one in by_fault[fault.id] if id(one) in in_reach],
            every,
            demanded=fault.id in asked,
        )
        for fault in garage.faults
        if fault.status is FaultStatus.OPEN and fault.id not in touched
    )


def _skip(
    garage: Garage,
    fault: str,
    made: list[Offer],
    in_reach: list[Offer],
    every: tuple[Offer, ...],
    *,
    demanded: bool,
) -> Skip:
    if not made:
        ruled_out = [
            bar for option in garage.options_for[fault] for bar in bars(garage, option)
        ]
        if not ruled_out:
            return Skip(fault=fault, reason=NoOption())
        return Skip(fault=fault, reason=ruled_out[0], also=tuple(ruled_out[1:]))
    if not in_reach:
        return Skip(fault=fault, reason=_out_of_reach(garage, made, every))
    gains = Benefits(garage)
    best = max(in_reach, key=lambda one: gains.total(one) - _cost(garage, one))
    worth, cost = gains.total(best), _cost(garage, best)
    option = best.option.id
    if worth <= cost and not demanded:
        reason: Reason = WorthLessThanCost(option=option, worth=worth, cost=cost)
    else:
        reason = CrowdedOut(option=option, worth=worth, cost=cost)
    return Skip(fault=fault, reason=reason)


def _out_of_reach(
    garage: Garage, made: list[Offer], every: tuple[Offer, ...]
) -> Reason:
    able = reach.within_hours(garage, tuple(made))
    if not able:
        least = min(made, key=lambda offer: reach.hours_needed(garage, offer))
        return LongerThanAllHours(
            option=least.option.id,
            needed=reach.hours_needed(garage, least),
            hours=max(garage.monthly_hours[offer.fitted] for offer in made),
        )
    most = reach.most_money(garage, every)
    short = [
        (need - have, need, have, offer.option.id)
        for offer in able
        for need, have in [_worst_month(reach.money_needed(garage, offer), most)]
    ]
    _, need, have, option = min(short)
    return DearerThanAllMoney(option=option, needed=need, money=have)


def _worst_month(needed: tuple[int, ...], have: tuple[int, ...]) -> tuple[int, int]:
    """Money needed and there in the month that lacks the most."""
    return max(zip(needed, have, strict=True), key=lambda one: one[0] - one[1])


def _cost(garage: Garage, offer: Offer) -> int:
    """What an offer costs alone: its charge, shipping and tools. [minor units]"""
    tools = sum(
        garage.tool[tool].price
        for tool in set(offer.option.tools)
        if not garage.tool[tool].owned
    )
    if offer.option.supplier is None:
        return offer.charge + tools
    supplier = garage.supplier[offer.option.supplier]
    rate = garage.rate(supplier.currency)
    limit = supplier.free_over
    free = limit is not None and offer.price.goods >= round(limit * rate)
    return offer.charge + tools + (0 if free else round(supplier.shipping * rate))
