"""What each option could do alone: offers, reach, gain and cost."""

from collections import defaultdict
from functools import cached_property

from partsplan.domain import (
    DearerThanAllMoney,
    FaultStatus,
    Garage,
    LongerThanAllHours,
    Offer,
    Option,
    OptionReason,
    Reason,
    WorthLessThanCost,
)
from partsplan.planning import Planner, reach
from partsplan.planning.benefits import Benefits
from partsplan.pricing import bars


class Prospects:
    """The options of a garage, each looked at as if it were the only one."""

    def __init__(self, planner: Planner) -> None:
        self.garage: Garage = planner.garage
        self.offers = planner.offers
        self._in_reach = {id(one) for one in reach.reachable(self.garage, self.offers)}
        self._benefits = Benefits(self.garage)
        self._extras: dict[str, int] = {}  # shipping and tools by option
        self._demanded = {fault for one in planner.demands for fault in one.faults}

    @cached_property
    def of_option(self) -> dict[str, list[Offer]]:
        """Offers by option."""
        found: dict[str, list[Offer]] = defaultdict(list)
        for offer in self.offers:
            found[offer.option.id].append(offer)
        return found

    @cached_property
    def of_fault(self) -> dict[str, list[Offer]]:
        """Offers by open fault."""
        found: dict[str, list[Offer]] = defaultdict(list)
        for offer in self.offers:
            for fault in offer.faults:
                found[fault].append(offer)
        return found

    @cached_property
    def _most_money(self) -> tuple[int, ...]:
        return reach.most_money(self.garage, self.offers)

    def in_reach(self, made: list[Offer]) -> list[Offer]:
        """The offers that some month's money and hours can hold."""
        return [one for one in made if id(one) in self._in_reach]

    def gain(self, offer: Offer) -> int:
        """What it gains if nothing else touches its faults. [minor units]"""
        return self._benefits.total(offer)

    def cost(self, offer: Offer) -> int:
        """What it costs alone: its charge, shipping and tools. [minor units]"""
        option = offer.option.id
        if option not in self._extras:
            self._extras[option] = self._shipping(offer) + self._tools(offer)
        return offer.charge + self._extras[option]

    def _shipping(self, offer: Offer) -> int:
        if offer.option.supplier is None:
            return 0
        supplier = self.garage.supplier[offer.option.supplier]
        rate = self.garage.rate(supplier.currency)
        limit = supplier.free_over
        free = limit is not None and offer.price.goods >= round(limit * rate)
        return 0 if free else round(supplier.shipping * rate)

    def _tools(self, offer: Offer) -> int:
        tools = [self.garage.tool[tool] for tool in set(offer.option.tools)]
        return sum(tool.price for tool in tools if not tool.owned)

    def best(self, made: list[Offer]) -> Offer:
        """The offer that gains the most above its cost."""
        return max(made, key=lambda one: self.gain(one) - self.cost(one))

    def demanded(self, fault: str) -> bool:
        """Whether a deadline, safety or mobility asks for the fault."""
        return fault in self._demanded

    def obstacle(self, option: Option) -> Reason | None:
        """What rules an option out alone; None if nothing does.

        A part that is bought is fitted whatever it is worth.
        """
        made = self.of_option.get(option.id, [])
        if not made:
            return next(iter(bars(self.garage, option)), None)
        near = self.in_reach(made)
        if not near:
            return self.out_of_reach(made)
        return None if option.bought else self.not_worth_it(self.best(near))

    def not_worth_it(self, offer: Offer) -> WorthLessThanCost | None:
        """That an offer gains less than it costs, if nothing but worth asks for it."""
        worth, cost = self.gain(offer), self.cost(offer)
        if worth > cost or any(self.demanded(fault) for fault in offer.faults):
            return None
        return WorthLessThanCost(option=offer.option.id, worth=worth, cost=cost)

    def out_of_reach(self, made: list[Offer]) -> OptionReason:
        """What the nearest of these offers lacks: hours, or money."""
        garage = self.garage
        able = reach.within_hours(garage, tuple(made))
        if not able:
            least = min(made, key=lambda offer: reach.hours_needed(garage, offer))
            return LongerThanAllHours(
                option=least.option.id,
                needed=reach.hours_needed(garage, least),
                hours=max(garage.monthly_hours[offer.fitted] for offer in made),
            )
        short = [
            (need - have, need, have, offer.option.id)
            for offer in able
            for need, have in [
                _worst_month(reach.money_needed(garage, offer), self._most_money)
            ]
        ]
        _, need, have, option = min(short)
        return DearerThanAllMoney(option=option, needed=need, money=have)


def open_without_job(garage: Garage, touched: set[str]) -> list[str]:
    """Open faults that no job touches, in file order."""
    return [
        fault.id
        for fault in garage.faults
        if fault.status is FaultStatus.OPEN and fault.id not in touched
    ]


def _worst_month(needed: tuple[int, ...], have: tuple[int, ...]) -> tuple[int, int]:
    """Money needed and there in the month that lacks the most."""
    return max(zip(needed, have, strict=True), key=lambda one: one[0] - one[1])
