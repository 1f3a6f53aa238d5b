"""What the money and hours of a garage can hold at the very most."""

from fractions import Fraction
from operator import le

from partsplan.domain import Garage, Needs, Offer


def money(garage: Garage) -> tuple[int, ...]:
    """Money above the reserve at each month's end if nothing more is bought.

    Shape: one figure a month. [minor units]
    """
    left: list[int] = []
    carried = garage.opening_cash
    for month, income in enumerate(garage.monthly_budget):
        carried += income + sum(
            flow.back - flow.out
            for flow in garage.promised_within
            if flow.month == month
        )
        left.append(carried - garage.reserve)
        carried = carried if garage.carry_over else 0
    return tuple(left)


def needs(garage: Garage) -> Needs | None:
    """The first month that breaks the reserve if no job is done.

    With it the least extra money, in hand by then, that would do if no job is done.
    """
    short = [max(0, -left) for left in money(garage)]
    first = next((month for month, sum_ in enumerate(short) if sum_), None)
    if first is None:
        return None
    least = max(short) if garage.carry_over else sum(short)
    return Needs(month=garage.month(first), money=least)


def jobs_may_help(garage: Garage) -> bool:
    """Whether a job can bring a month more money than it took before.

    Where unspent money is lost, a deposit comes back into another month than it went
    out of. That of a part that is bought went out before the first.
    """
    return not garage.carry_over or any(one.bought for one in garage.options)


def reachable(garage: Garage, offers: tuple[Offer, ...]) -> tuple[Offer, ...]:
    """The offers that some plan could hold; the others are left out of the model."""
    most = [max(have, 0) for have in most_money(garage, offers)]
    return tuple(
        offer
        for offer in within_hours(garage, offers)
        if all(map(le, money_needed(garage, offer), most))
    )


def within_hours(garage: Garage, offers: tuple[Offer, ...]) -> tuple[Offer, ...]:
    """The offers that the hours of their fitting month can hold."""
    needed = {}
    for offer in offers:
        if offer.option.id not in needed:
            need = hours_needed(garage, offer)
            needed[offer.option.id] = [need <= have for have in garage.monthly_hours]
    return tuple(offer for offer in offers if needed[offer.option.id][offer.fitted])


def most_money(garage: Garage, offers: tuple[Offer, ...]) -> tuple[int, ...]:
    """The most that each month can hold, above the reserve. [minor units]

    Deposits of other jobs that come back are in it, see ``jobs_may_help``.
    """
    left = money(garage)
    best: dict[tuple[str, int], int] = {}
    for offer in offers if jobs_may_help(garage) else ():
        if garage.carry_over and not offer.option.bought:
            continue
        for month, need in enumerate(money_needed(garage, offer)):
            key = offer.option.id, month
            best[key] = max(best.get(key, 0), -need)
    return tuple(
        have + sum(back for (_, at), back in best.items() if at == month)
        for month, have in enumerate(left)
    )


def money_needed(garage: Garage, offer: Offer) -> tuple[int, ...]:
    """Money that the offer with its tools takes of each month. [minor units]

    Cumulative where unspent money moves on. Shipping is left out, since a shared order
    may be free of it; so are tools where unspent money is lost, since they may have
    been bought in any earlier month.
    """
    taken = [0] * garage.months
    for flow in offer.flows:
        taken[flow.month] += flow.out - flow.back
    if not garage.carry_over:
        return tuple(taken)
    taken[offer.fitted] += sum(
        garage.tool[tool].price
        for tool in set(offer.option.tools)
        if not garage.tool[tool].owned
    )
    for month in range(1, garage.months):
        taken[month] += taken[month - 1]
    return tuple(taken)


def hours_needed(garage: Garage, offer: Offer) -> Fraction:
    """Own hours of the fitting month, with the access it takes alone. [h]"""
    groups = set(offer.option.access)
    shared = sum((garage.access_group[one].hours for one in groups), Fraction(0))
    return offer.option.hours + shared
