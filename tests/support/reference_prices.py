"""What options cost and gain by ordering month, in slow and plain code.

Written apart from the program, so that the two can be held against each other.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from partsplan.domain import (
    Coding,
    Fault,
    FaultStatus,
    Garage,
    Inspection,
    Likelihood,
    Month,
    Option,
    Route,
    Severity,
    System,
    Tax,
    Use,
)

FaultMonth = tuple[str, int]

SEVERITY_POINTS = {1: 100, 2: 70, 3: 30, 4: 5}
LIKELIHOOD_SHARE = {
    Likelihood.FREQUENT: Fraction(1),
    Likelihood.PROBABLE: Fraction("0.8"),
    Likelihood.OCCASIONAL: Fraction("0.5"),
    Likelihood.REMOTE: Fraction("0.25"),
    Likelihood.IMPROBABLE: Fraction("0.1"),
    Likelihood.ELIMINATED: Fraction(0),
}
HIGH_CELLS = {"A1", "B1", "C1", "A2", "B2"}  # MIL-STD-882E, 11 May 2012, table III
DRIVABILITY_POINTS = (0, 10, 35, 70, 100)
USE_SHARE = {
    Use.DAILY: Fraction(1),
    Use.WEEKEND: Fraction("0.6"),
    Use.PROJECT: Fraction("0.3"),
    Use.STORED: Fraction("0.1"),
}
ROAD_HOLDING = {System.BRAKES, System.STEERING, System.TYRES, System.FUEL}
CURED = Fraction("0.8")
SHORT_CUTS = {Route.USED, Route.ECONOMY, Route.STAND_IN}


@dataclass(frozen=True, slots=True, kw_only=True)
class Priced:
    """An option for one ordering month; months count from the start.

    Attributes
    ----------
    until
        First month in which it is not in force any more, or no longer counts.
    goods, landed, deposit, expected, charge
        [minor units]
    out, back
        Money of the option by month of the horizon, shipping and tools apart.
        [minor units]
    gains
        By fault and month, beyond what was fitted before, if nothing else of the plan
        touches the fault. [minor units]
    cured
        The faults and months in which it makes a fault count as cured.
    """

    option: Option
    ordered: int
    fitted: int
    until: int
    goods: int
    landed: int
    deposit: int
    expected: int
    charge: int
    out: tuple[int, ...]
    back: tuple[int, ...]
    gains: Mapping[FaultMonth, int]
    cured: frozenset[FaultMonth]


def offers(garage: Garage) -> dict[tuple[str, int], Priced]:
    """Every option and ordering month that is allowed."""
    return {
        (option.id, ordered): _priced(garage, option, ordered)
        for option in garage.options
        for ordered in range(garage.months)
        if not _refusal(garage, option, ordered)
    }


def refusals(garage: Garage) -> dict[tuple[str, int], str]:
    """Every option and ordering month that is not allowed, and why."""
    return {
        (option.id, ordered): reason
        for option in garage.options
        for ordered in range(garage.months)
        if (reason := _refusal(garage, option, ordered))
    }


def worth(garage: Garage, fault: Fault, month: int) -> Fraction:
    """What a month without the fault is worth. [minor units]"""
    return garage.money_per_point * points(garage, fault, month) + (
        fault.loss_per_month + fault.damage_chance * fault.damage_cost
    )


def points(garage: Garage, fault: Fault, month: int) -> Fraction:
    """How much the fault matters in that month. [0-100]"""
    vehicle = garage.vehicle[fault.vehicle]
    base = fault.points
    if base is None:
        safety = Fraction(0)
        if fault.severity and garage.driven(vehicle, month):
            share = LIKELIHOOD_SHARE[fault.likelihood]
            safety = SEVERITY_POINTS[fault.severity] * share
        drivability = DRIVABILITY_POINTS[fault.drivability] * USE_SHARE[vehicle.use]
        base = (
            garage.weights.safety * safety
            + garage.weights.drivability * drivability
            + garage.weights.enjoyment * fault.enjoyment * 10
        )
    return min(Fraction(100), base * (1 + fault.growth) ** (garage.grown + month))


def relief_before(garage: Garage, fault: Fault, month: int) -> Fraction:
    """The share of its trouble that parts fitted before the plan take away. [0-1]

    None of it if the fault is only watched.
    """
    open_, now = fault.status is FaultStatus.OPEN, garage.month(month)
    reliefs = (one.relief for one in fault.fitted if open_ and now < one.until)
    return max(reliefs, default=Fraction(0))


def do_not_drive(fault: Fault) -> bool:
    """Whether the vehicle must not be driven with it."""
    cell = f"{fault.likelihood}{Severity(fault.severity)}" if fault.severity else ""
    return cell in HIGH_CELLS or fault.inspection is Inspection.DANGEROUS


def fitting_month(option: Option, ordered: int) -> int:
    """The month by whose middle it is in hand; of a bought part that of its order."""
    return ordered if option.bought else ordered + (option.lead_days + 15) // 30


def in_garage_money(garage: Garage, amount: Fraction | int, currency: str) -> int:
    """An amount of minor units of any currency in the garage's. [minor units]"""
    if currency == garage.currency.code:
        return round(amount)
    return round(amount * garage.rates[currency])


def _refusal(garage: Garage, option: Option, ordered: int) -> str:
    """Why there is no offer; empty if there is one."""
    faults = [garage.fault[cure.fault] for cure in option.fixes]
    vehicle = garage.vehicle[faults[0].vehicle]
    fitted = fitting_month(option, ordered)

    def place(month: Month | None, if_blank: int) -> int:
        return if_blank if month is None else garage.index(month)

    if all(fault.status is not FaultStatus.OPEN for fault in faults):
        return "nothing open"
    if _is_bought_otherwise(garage, option):
        return "already bought"
    if any(_route_forbidden(garage, option, fault.system) for fault in faults):
        return "route rule"
    if not option.road_legal and vehicle.driven_from is not None:
        return "not road legal"
    if option.coding is Coding.SELF and not garage.coding_tool:
        return "no coding tool"
    if ordered > place(option.valid_until, ordered):
        return "quote over"
    if fitted >= garage.months:
        return "past the horizon"
    if fitted < place(option.not_before, fitted):
        return "too early"
    if fitted > place(option.not_after, fitted):
        return "too late"
    if fitted >= vehicle.keep_months:
        return "vehicle gone"
    if option.min_temp is not None and garage.mean_temperature is not None:
        calendar = garage.month(fitted).month
        if garage.mean_temperature[calendar - 1] < option.min_temp:
            return "too cold"
    return ""


def _is_bought_otherwise(garage: Garage, option: Option) -> bool:
    """Whether lasting parts that wait to be fitted will cure all that it is for."""
    if option.bought or option.route is Route.STAND_IN:
        return False
    will_be_cured = {
        cure.fault
        for other in garage.options
        if other.bought and other.route is not Route.STAND_IN
        for cure in other.fixes
        if cure.relief >= CURED
    }
    return {cure.fault for cure in option.fixes} <= will_be_cured


def _route_forbidden(garage: Garage, option: Option, system: System) -> bool:
    if system is System.RESTRAINT:
        return option.route in SHORT_CUTS or option.route is Route.REFINISH
    if system in ROAD_HOLDING:
        if option.route is Route.REFINISH:
            return True
        return option.route in SHORT_CUTS and not garage.allow_risky_routes
    return False


def _priced(garage: Garage, option: Option, ordered: int) -> Priced:
    supplier = garage.supplier[option.supplier] if option.supplier else None
    vehicle = garage.vehicle[garage.fault[option.fixes[0].fault].vehicle]
    fitted = fitting_month(option, ordered)

    pieces = option.price * option.quantity
    goods = in_garage_money(garage, pieces, option.currency)
    duty = round(goods * supplier.duty_rate) if supplier else 0
    taxed = supplier is not None and supplier.tax is Tax.ADDED
    tax = round((goods + duty) * garage.tax_rate) if taxed else 0
    landed = goods + duty + tax
    cores = option.core_deposit * option.quantity
    deposit = in_garage_money(garage, cores, option.currency)
    core_return = option.core_return_cost if option.core_deposit > 0 else 0
    coding = option.coding_cost if option.coding is Coding.PAID else 0

    own_hours = option.hours * garage.hour_value
    again = own_hours + (landed if option.warranty_months == 0 else 0)
    duds = option.dud_chance / (1 - option.dud_chance) * again
    lost = (1 - option.core_chance) * deposit
    expected = round(
        landed + coding + option.consumables + own_hours + lost + core_return + duds
    )

    kept = vehicle.keep_months - fitted
    life = kept if option.life is None else option.life
    until = min(garage.counted_end(vehicle), fitted + life)
    charge = round(Fraction(expected * (until - fitted), min(life, kept)))

    out = [0] * garage.months
    back = [0] * garage.months

    def book(side: list[int], month: int, amount: int) -> None:
        if month < garage.months:
            side[month] += amount

    unpaid = landed
    for instalment in option.instalments[:-1]:
        part = round(landed * instalment.share)
        book(out, ordered + instalment.months, part)
        unpaid -= part
    book(out, ordered + option.instalments[-1].months, unpaid)
    if not option.bought:
        book(out, ordered, deposit)
    book(out, fitted, coding + option.consumables)
    returned = fitted + ceil(Fraction(option.core_days, 30))
    book(out, returned, core_return)
    if option.core_chance >= garage.core_trust:
        book(back, returned, deposit)

    gains = {}
    cured = set()
    for cure in option.fixes:
        fault = garage.fault[cure.fault]
        if fault.status is not FaultStatus.OPEN:
            continue
        for month in range(fitted, until):
            key = (fault.id, month)
            month_worth = worth(garage, fault, month)
            had = round(relief_before(garage, fault, month) * month_worth)
            gains[key] = max(0, round(cure.relief * month_worth) - had)
            if cure.relief >= CURED:
                cured.add(key)

    return Priced(
        option=option,
        ordered=ordered,
        fitted=fitted,
        until=until,
        goods=goods,
        landed=landed,
        deposit=deposit,
        expected=expected,
        charge=charge,
        out=tuple(out),
        back=tuple(back),
        gains=gains,
        cured=frozenset(cured),
    )
