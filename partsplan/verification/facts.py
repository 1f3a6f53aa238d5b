"""What follows from choices, worked out anew from the garage alone."""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from partsplan.domain import (
    Choices,
    Fault,
    FaultStatus,
    Garage,
    Option,
    Price,
    Vehicle,
)
from partsplan.domain.numbers import CURED, ZERO
from partsplan.pricing import price
from partsplan.scoring import worth


@dataclass(frozen=True)
class Facts:
    """A garage and what was chosen in it; everything else is worked out."""

    garage: Garage
    choices: Choices

    @cached_property
    def chosen(self) -> tuple[Option, ...]:
        """The chosen options that the garage knows, in file order."""
        return tuple(o for o in self.garage.options if o.id in self.choices.orders)

    @cached_property
    def prices(self) -> Mapping[str, Price]:
        """All costs of each chosen option."""
        return {option.id: price(self.garage, option) for option in self.chosen}

    @cached_property
    def naming(self) -> Mapping[str, tuple[Option, ...]]:
        """The chosen options that name each fault, in file order."""
        found: dict[str, list[Option]] = defaultdict(list)
        for option in self.chosen:
            for cure in option.fixes:
                found[cure.fault].append(option)
        return {fault: tuple(options) for fault, options in found.items()}

    def ordered(self, option: Option) -> int:
        """Ordering month."""
        return self.choices.orders[option.id]

    def fitted(self, option: Option) -> int:
        """Fitting month: in hand by the middle of the month."""
        return self.ordered(option) + (option.lead_days + 15) // 30

    def vehicle(self, option: Option) -> Vehicle:
        """The vehicle that an option is for."""
        fault = self.garage.fault[option.fixes[0].fault]
        return self.garage.vehicle[fault.vehicle]

    def end(self, option: Option) -> int:
        """First month in which a chosen option is no longer in force."""
        keep = self.vehicle(option).keep_months
        life = option.life
        return keep if life is None else min(keep, self.fitted(option) + life)

    def counted_until(self, option: Option) -> int:
        """First month in which it no longer counts."""
        looked = self.garage.months + self.garage.look_beyond
        return min(self.end(option), looked)

    def charge(self, option: Option) -> int:
        """The share of the expected cost that the plan bears. [minor units]"""
        fitted = self.fitted(option)
        share = Fraction(self.counted_until(option) - fitted, self.end(option) - fitted)
        return round(self.prices[option.id].expected * share)

    def cured(self, fault: str, month: int) -> bool:
        """Whether the fault is cured in that month."""
        fact = self.garage.fault[fault]
        if fact.status is not FaultStatus.OPEN:
            return fact.status is FaultStatus.FIXED
        if self.garage.relieved(fact, month) >= CURED:
            return True
        return any(
            self.fitted(option) <= month < self.end(option)
            and option.relief(fault) >= CURED
            for option in self.naming.get(fault, ())
        )

    def relief(self, fault: str, month: int) -> Fraction:
        """The greatest relief among the chosen options that are in force. [0-1]

        A watched fault gets none; a fixed one needs none.
        """
        if self.garage.fault[fault].status is not FaultStatus.OPEN:
            return ZERO
        reliefs = (
            option.relief(fault)
            for option in self.naming.get(fault, ())
            if self.fitted(option) <= month < self.counted_until(option)
        )
        return max(reliefs, default=ZERO)

    def goods(self) -> dict[tuple[int, str], int]:
        """Goods by ordering month and supplier. [minor units]"""
        found: dict[tuple[int, str], int] = defaultdict(int)
        for option in self.chosen:
            if option.supplier is not None:
                key = self.ordered(option), option.supplier
                found[key] += self.prices[option.id].goods
        return dict(sorted(found.items()))

    def shipping(self, supplier: str, goods: int) -> int:
        """What one order's shipping costs. [minor units]"""
        one = self.garage.supplier[supplier]
        rate = self.garage.rate(one.currency)
        if one.free_over is not None and goods >= round(one.free_over * rate):
            return 0
        return round(one.shipping * rate)

    def money(self) -> tuple[list[int], list[int]]:
        """Money out and back by month. [minor units]"""
        out, back = defaultdict[int, int](int), defaultdict[int, int](int)
        for flow in self.garage.promised_within:
            out[flow.month] += flow.out
            back[flow.month] += flow.back
        for option in self.chosen:
            self._pay(option, out, back)
        for (month, supplier), goods in self.goods().items():
            out[month] += self.shipping(supplier, goods)
        for tool, month in self.choices.tools.items():
            out[month] += self.garage.tool[tool].price
        months = range(self.garage.months)
        return [out[month] for month in months], [back[month] for month in months]

    def _pay(self, option: Option, out: dict[int, int], back: dict[int, int]) -> None:
        paid, ordered = self.prices[option.id], self.ordered(option)
        shares = sorted((one.months, one.share) for one in option.instalments)
        left = paid.landed
        for months, share in shares[:-1]:
            due = round(paid.landed * share)
            out[ordered + months] += due
            left -= due
        out[ordered + shares[-1][0]] += left
        out[ordered] += 0 if option.bought else paid.deposit
        fitted = self.fitted(option)
        out[fitted] += paid.coding + paid.consumables
        credited = fitted + -(-option.core_days // 30)
        out[credited] += paid.core_return
        if option.core_chance >= self.garage.core_trust:
            back[credited] += paid.deposit

    def balances(self) -> list[int]:
        """Money at each month's end. [minor units]"""
        found, before = [], self.garage.opening_cash
        for budget, out, back in zip(
            self.garage.monthly_budget, *self.money(), strict=True
        ):
            before = before + budget - out + back
            found.append(before)
            before = before if self.garage.carry_over else 0
        return found

    def hours(self) -> list[Fraction]:
        """Own hours by month. [h]"""
        found = [Fraction(0)] * self.garage.months
        for option in self.chosen:
            found[self.fitted(option)] += option.hours
        opened = {
            (group, self.fitted(option))
            for option in self.chosen
            for group in option.access
        }
        for group, month in opened:
            found[month] += self.garage.access_group[group].hours
        return found

    def net_worth(self) -> int:
        """What the choices gain less what they cost. [minor units]"""
        gained = sum(
            gain
            for fault in self.garage.faults
            if fault.status is FaultStatus.OPEN
            for gain in self._gains(fault)
        )
        costs = sum(self.charge(option) for option in self.chosen)
        for (_, supplier), goods in self.goods().items():
            costs += self.shipping(supplier, goods)
        costs += sum(self.garage.tool[tool].price for tool in self.choices.tools)
        return gained - costs

    def _gains(self, fault: Fault) -> Iterator[int]:
        if fault.id not in self.naming:
            return
        for month, value in enumerate(worth(self.garage, fault)):
            had = self.garage.relieved(fault, month)
            if (relief := self.relief(fault.id, month)) > had:
                yield round(relief * value) - round(had * value)
