"""Everything somebody writes down about their vehicles, as one frozen fact."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from typing import TypeVar

from partsplan.domain.fault import Cause, Fault
from partsplan.domain.money import Currency
from partsplan.domain.months import Month
from partsplan.domain.numbers import CURED, ONE, ZERO
from partsplan.domain.offer import Flow
from partsplan.domain.option import Access, Option, Supplier, Tool
from partsplan.domain.scales import FaultStatus, Stage
from partsplan.domain.vehicle import Milestone, Vehicle

_T = TypeVar("_T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """How much each score counts in a fault's points."""

    safety: Fraction = Fraction(6, 10)
    drivability: Fraction = Fraction(3, 10)
    enjoyment: Fraction = Fraction(1, 10)


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumed:
    """A blank cell that was filled, and where the value came from."""

    table: str
    row: str
    column: str
    value: str
    source: str


@dataclass(frozen=True, kw_only=True)
class Garage:
    """All that a plan is made from.

    Attributes
    ----------
    budget, hours
        One value a month; the last repeats. [minor units], [h]
    opening_cash, reserve
        [minor units]
    money_per_point
        Worth of one point-month, resolved when the garage was read. [minor units]
    hour_value
        Worth of an own hour. [minor units]
    rates
        Minor units of the garage's currency for one minor unit of a named one.
    mean_temperature
        By calendar month, January first; None in a heated workshop. [C]
    discount_rate
        A year; used by comparisons only. [0-1]
    promised
        Money that moves whatever is planned, for what was bought before. [minor units]
    grown
        Months for which the points of faults have grown before the first one.
    """

    name: str
    currency: Currency
    start: Month
    months: int = 6
    budget: tuple[int, ...]
    hours: tuple[Fraction, ...]
    opening_cash: int = 0
    carry_over: bool = True
    reserve: int = 0
    money_per_point: Fraction
    hour_value: int = 0
    tax_rate: Fraction = ZERO
    look_beyond: int = 6
    core_trust: Fraction = CURED
    allow_risky_routes: bool = False
    discount_rate: Fraction = ZERO
    weights: Weights = Weights()
    rates: Mapping[str, Fraction] = field(default_factory=dict)
    mean_temperature: tuple[Fraction, ...] | None = None
    coding_tool: bool = False
    priority: tuple[Stage, ...] = tuple(Stage)
    vehicles: tuple[Vehicle, ...]
    faults: tuple[Fault, ...]
    options: tuple[Option, ...]
    suppliers: tuple[Supplier, ...] = ()
    access: tuple[Access, ...] = ()
    tools: tuple[Tool, ...] = ()
    causes: tuple[Cause, ...] = ()
    milestones: tuple[Milestone, ...] = ()
    promised: tuple[Flow, ...] = ()
    grown: int = 0
    assumed: tuple[Assumed, ...] = field(default=(), compare=False)
    warnings: tuple[str, ...] = field(default=(), compare=False)

    @cached_property
    def vehicle(self) -> Mapping[str, Vehicle]:
        """Vehicles by id."""
        return {one.id: one for one in self.vehicles}

    @cached_property
    def fault(self) -> Mapping[str, Fault]:
        """Faults by id."""
        return {one.id: one for one in self.faults}

    @cached_property
    def option(self) -> Mapping[str, Option]:
        """Options by id."""
        return {one.id: one for one in self.options}

    @cached_property
    def supplier(self) -> Mapping[str, Supplier]:
        """Suppliers by id."""
        return {one.id: one for one in self.suppliers}

    @cached_property
    def tool(self) -> Mapping[str, Tool]:
        """Tools by id."""
        return {one.id: one for one in self.tools}

    @cached_property
    def cause(self) -> Mapping[tuple[str, str], Cause]:
        """Suspected causes by fault and cause."""
        return {(one.fault, one.cause): one for one in self.causes}

    @cached_property
    def access_group(self) -> Mapping[str, Access]:
        """Access groups by id."""
        return {one.id: one for one in self.access}

    @cached_property
    def options_for(self) -> Mapping[str, tuple[Option, ...]]:
        """The options that name each fault, in file order."""
        found: dict[str, list[Option]] = {fault.id: [] for fault in self.faults}
        for option in self.options:
            for cure in option.fixes:
                found[cure.fault].append(option)
        return {fault: tuple(options) for fault, options in found.items()}

    @cached_property
    def monthly_budget(self) -> tuple[int, ...]:
        """Money that comes in, for each month of the horizon. [minor units]"""
        return _each_month(self.budget, self.months)

    @cached_property
    def promised_within(self) -> tuple[Flow, ...]:
        """What is promised for the months of the horizon. [minor units]"""
        return tuple(one for one in self.promised if one.month < self.months)

    @cached_property
    def monthly_hours(self) -> tuple[Fraction, ...]:
        """Own hours, for each month of the horizon. [h]"""
        return _each_month(self.hours, self.months)

    @cached_property
    def mean_budget(self) -> Fraction:
        """[minor units a month]"""
        return Fraction(sum(self.monthly_budget), self.months)

    @cached_property
    def bought_for(self) -> Mapping[str, str]:
        """The lasting option, bought but not fitted, that will cure each fault."""
        return {
            cure.fault: option.id
            for option in self.options
            if option.bought and option.lasting
            for cure in option.fixes
            if cure.cures
        }

    def relieved(self, fault: Fault, month: int) -> Fraction:
        """The relief that a fault has in a month from what was fitted before. [0-1]

        One that is only watched has none, as nothing cures it.
        """
        if fault.status is FaultStatus.WATCH:
            return ZERO
        reliefs = (one.relief for one in fault.fitted if month < self.index(one.until))
        return max(reliefs, default=ZERO)

    def rate(self, currency: str) -> Fraction:
        """Own minor units for one minor unit of a currency; 1 for its own."""
        return ONE if currency == self.currency.code else self.rates[currency]

    def index(self, month: Month) -> int:
        """The place of a month on this garage's time line; the first month is 0."""
        return month.since(self.start)

    def month(self, index: int) -> Month:
        """The calendar month at a place on this garage's time line."""
        return self.start.plus(index)

    def driven(self, vehicle: Vehicle, month: int) -> bool:
        """Whether the vehicle is on the road in that month."""
        if vehicle.driven_from is None:
            return False
        return self.index(vehicle.driven_from) <= month < vehicle.keep_months

    def counted_end(self, vehicle: Vehicle) -> int:
        """First month that no longer counts for the vehicle's faults."""
        return min(self.months + self.look_beyond, vehicle.keep_months)


def _each_month(values: tuple[_T, ...], months: int) -> tuple[_T, ...]:
    return (values + values[-1:] * months)[:months]
